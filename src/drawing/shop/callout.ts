/** What is cut at a hole, as the drawing calls it out. */
import type { LabelUnits } from '../length-text.ts';
import { angleText, diameter, limitTexts, sizeText } from './size-text.ts';
import type { SetToDraw } from './to-draw.ts';

/** Usual classes of tapped holes: 6H for metric threads (ISO 965-1), 2B for inch threads (ASME B1.1). */
const threadClass = (thread: string): string => (/^M\d/i.test(thread) ? `${thread}-6H` : `${thread}-2B`);

const deep = (depth: number | null, units: LabelUnits): string =>
  depth === null ? 'through' : `${sizeText(depth, units)} deep`;

/** One line for each thing that has a size of its own. */
export function calloutLines(set: SetToDraw, units: LabelUnits): string[] {
  const { cuts, holes, limits } = set;
  const lines: string[] = [];
  const count = `${holes.length} x `;
  const tap = cuts.find((cut) => cut.op === 'tap');
  const ream = cuts.find((cut) => cut.op === 'ream');
  const drill = cuts.find((cut) => cut.op === 'drill');
  const head = cuts.find((cut) => cut.op === 'counterbore' || cut.op === 'countersink');
  const drilled = drill?.op === 'drill' ? drill : null;
  const through = drilled?.depth === null ? 'through' : '';
  const bored = drilled
    ? `${diameter(drilled.diameter, units)} ${deep(drilled.depth, units)}${drilled.depth === null ? '' : `, point ${angleText(drilled.point)}`}`
    : '';
  if (tap?.op === 'tap') {
    lines.push(`${count}${threadClass(tap.thread)} ${deep(tap.depth, units)}, mouth to the thread's diameter`);
    lines.push(`drill ${bored}`);
  } else if (ream?.op === 'ream' && limits) {
    const [high, low] = limitTexts(limits.lower, limits.upper, units);
    lines.push(`${count}ream ${ream.zone} \u00d8${high} / \u00d8${low} ${deep(ream.depth, units)}`);
    lines.push(`drill ${bored}`);
  } else {
    lines.push(`${count}${drilled ? diameter(drilled.diameter, units) : ''} ${through}`.trim());
  }
  if (head?.op === 'counterbore')
    lines.push(`counterbore ${diameter(head.diameter, units)} x ${sizeText(head.depth, units)} deep`);
  if (head?.op === 'countersink')
    lines.push(`countersink ${diameter(head.diameter, units)} x ${angleText(head.angle)}`);
  if (set.below > 0) lines.push("on the wheel's shoulder; depths from there");
  return lines;
}
