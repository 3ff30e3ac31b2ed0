/** What to tell the controller, and the tooth counts, as sections of the page. */

import { escaped } from '../units/markup.ts';
import { capital } from '../units/sentence.ts';
import type { ControllerReport, CountLine } from './controller.ts';
import { countsTitle } from './controller-text.ts';

function countRow({ teeth, isChosen, verdict, tooth, valley, pitch, reads, reason }: CountLine): string {
  const word = `${escaped(verdict)}${reason === '' ? '' : `<p class="source">${escaped(reason)}</p>`}`;
  const name = `${teeth}${isChosen ? ' <span class="source">this wheel</span>' : ''}`;
  const cells = [tooth, valley, pitch].map((size) => `<td class="number">${escaped(size)}</td>`).join('');
  return `<tr><th scope="row">${name}</th>${cells}<td>${word}</td><td>${escaped(reads)}</td></tr>`;
}

function countTable(counts: readonly CountLine[], words: ControllerReport['words']): string {
  if (counts.length === 0) return '';
  const head = [words.teeth, words.tooth, words.valley]
    .map(capital)
    .concat(['Pitch', 'Verdict', 'What the controller reads'])
    .map((title) => `<th scope="col">${title}</th>`)
    .join('');
  return `<section><h2>${escaped(countsTitle(words))}</h2><p>On this outside, height and ratio; the best first.</p><div class="wide"><table><thead><tr>${head}</tr></thead><tbody>${counts.map(countRow).join('\n')}</tbody></table></div></section>`;
}

/** "What to tell the controller" and "Tooth counts"; empty without a sensor. */
export function controllerSection(report: ControllerReport | null): string {
  if (report === null) return '';
  const { lines, ratios, ratioNote, counts, words } = report;
  const rows = lines.map(
    ({ label, value, note }) =>
      `<tr><th scope="row">${escaped(label)}</th><td>${escaped(value)}</td><td>${escaped(note)}</td></tr>`,
  );
  const boxes = ratios.map(({ ratio, reads }) => `<li>${escaped(ratio)}: ${escaped(reads)}</li>`).join('');
  const box = boxes === '' ? '' : `<p>${escaped(ratioNote)}</p><ul>${boxes}</ul>`;
  return `<section><h2>What to tell the controller</h2><div class="wide"><table><tbody>${rows.join('\n')}</tbody></table></div>${box}</section>${countTable(counts, words)}`;
}
