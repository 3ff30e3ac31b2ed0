/** What to tell the controller, and the tooth counts, as titled paragraphs for the terminal. */

import type { ToothWords } from '../job/wheel-form.ts';
import type { TitledList } from './alternatives-text.ts';
import type { ControllerReport, CountLine } from './controller.ts';

function countText(
  { teeth, isChosen, verdict, tooth, valley, pitch, reads, reason }: CountLine,
  words: ToothWords,
): string {
  const why = reason === '' ? '' : `; ${reason}`;
  return `- ${teeth} ${words.teeth}${isChosen ? ' (this wheel)' : ''}: ${verdict}${why}; ${words.tooth} ${tooth}, ${words.valley} ${valley}, pitch ${pitch}; ${reads}`;
}

/** "Tooth counts that the wheel may have". */
export const countsTitle = ({ tooth }: ToothWords): string =>
  `${tooth === 'tooth' ? 'Tooth counts' : `Counts of ${tooth}s`} that the wheel may have`;

/** The sections that there is something to say in. */
export function controllerAsText(report: ControllerReport | null): TitledList[] {
  if (report === null) return [];
  const { lines, ratios, ratioNote, counts, words } = report;
  const told = lines.map(({ label, value, note }) => `${label}: ${value}${note === '' ? '' : ` (${note})`}`);
  const boxes = ratios.map(({ ratio, reads }) => `- ${ratio}: ${reads}`);
  return [
    {
      title: 'What to tell the controller',
      paragraphs: [...told, ...(boxes.length > 0 ? [ratioNote, ...boxes] : [])],
    },
    ...(counts.length > 0
      ? [
          {
            title: countsTitle(words),
            paragraphs: [
              'On this outside, height and ratio; the best first.',
              ...counts.map((one) => countText(one, words)),
            ],
          },
        ]
      : []),
  ];
}
