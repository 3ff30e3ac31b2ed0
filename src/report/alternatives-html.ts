/** Other ways, and why nothing passes, as sections of the page. */

import { escaped } from '../units/markup.ts';
import type { OtherWays } from './alternatives.ts';
import type { TubesReport } from './tubes.ts';

/** "Why nothing passes"; empty when something does. */
export function whyNothingPasses(ways: OtherWays | null): string {
  if (ways === null || ways.impossible.length === 0) return '';
  const [lead = '', ...rest] = ways.impossible;
  const cure = rest.pop() ?? '';
  const facts = rest.map((fact) => `<li>${escaped(fact)}</li>`).join('');
  return `<section class="together"><h2>Why nothing passes</h2><p>${escaped(lead)}</p><ul>${facts}</ul><p>${escaped(cure)}</p></section>`;
}

/** "Other ways"; empty when none was found. */
export function otherWaysSection(ways: OtherWays | null): string {
  if (ways === null || ways.others.length === 0) return '';
  const items = ways.others.map(({ what, trades, sizes, keys }) => {
    const write = keys === '' ? '' : ` To have it, write <code>${escaped(keys)}</code>.`;
    return `<li><strong>${escaped(what)}</strong>: ${escaped(trades)} (${escaped(sizes)}).${write}</li>`;
  });
  return `<section><h2>Other ways</h2><p>${escaped(ways.chosen)} These pass too; what each trades against it:</p><ol>${items.join('\n')}</ol></section>`;
}

/** "Tubes that would do"; empty where the job describes no tube. */
export function tubesSection(tubes: TubesReport | null): string {
  if (tubes === null) return '';
  const items = tubes.tubes.map((tube) => `<li>${escaped(tube)}</li>`).join('\n');
  return `<section><h2>Tubes that would do</h2><p>${escaped(tubes.lead)}</p>${items === '' ? '' : `<ol>${items}</ol>`}<p>${escaped(tubes.note)}</p></section>`;
}
