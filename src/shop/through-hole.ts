/** After the part is turned over: a hole of the first side that comes through, by which the turn about the axis is found again. */
import type { Joint } from '../job/joint.ts';
import { formatLength } from '../units/format.ts';
import { levelsOf } from './drill-levels.ts';
import type { DrillingPlan } from './drilling-plan.ts';
import { seenFrom, type WorkFace } from './hole-table.ts';

/**
 * Where the outermost hole that comes through is seen from the other side, in a sentence; empty where none does.
 * @param before the drilling of the side that was worked first
 */
export function throughHole(joint: Joint, before: DrillingPlan, up: WorkFace): string {
  const holes = before.steps
    .filter(({ cut }) => cut.op === 'drill')
    .flatMap((step) => step.holes)
    .filter((hole) => levelsOf(joint, before.face, hole).exit !== null);
  const [far] = [...holes].sort((a, b) => b.radius - a.radius || a.angle - b.angle);
  const drilling = joint.adapter.drillings.find(({ id }) => id === far?.drilling);
  if (!far || !drilling) return '';
  const { x, y } = seenFrom(up, drilling);
  const { units } = joint.job;
  const at = `X ${formatLength(x, units)}, Y ${formatLength(y, units)}`;
  return `Turn the part until hole ${far.tag}, which comes through, stands at ${at}: a pin in it, the dial on the pin, the read-out at that place. Then clamp, and sweep the bore once more.`;
}
