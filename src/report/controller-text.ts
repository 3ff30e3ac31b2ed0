/** What to tell the controller, and the tooth counts, as titled paragraphs for the terminal. */
import type { TitledList } from './alternatives-text.ts';
import type { ControllerReport, CountLine } from './controller.ts';

function countText({ teeth, isChosen, verdict, tooth, valley, pitch, reads, reason }: CountLine): string {
  const why = reason === '' ? '' : `; ${reason}`;
  return `- ${teeth} teeth${isChosen ? ' (this wheel)' : ''}: ${verdict}${why}; tooth ${tooth}, valley ${valley}, pitch ${pitch}; ${reads}`;
}

/** The sections that there is something to say in. */
export function controllerAsText(report: ControllerReport | null): TitledList[] {
  if (report === null) return [];
  const { lines, ratios, ratioNote, counts } = report;
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
            title: 'Tooth counts that the wheel may have',
            paragraphs: ['On this outside, height and ratio; the best first.', ...counts.map(countText)],
          },
        ]
      : []),
  ];
}
