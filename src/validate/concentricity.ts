/**
 * How far off centre the driven flange can end up, and what that does to balance. Worst case is a plain sum; the likely case adds
 * independent errors as squares. The fuller chain (run-out of both flanges, heat, what was measured on the finished part) comes later.
 */
import { permissibleSpecificUnbalance, permissibleUnbalance } from '../formulas/balance.ts';
import { eccentricityOf } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { registerClearance } from './registers.ts';
import { mm } from './words.ts';

/** One thing that can push the axis aside. */
export interface Shift {
  readonly what: string;
  /** mm, worst case. */
  readonly size: number;
}

/**
 * How far a side can shift where nothing but its screws centres it, mm radial. A bolt between two clear holes has the play of
 * both; a screw in a thread only that of the one it passes.
 */
function screwPlay(joint: Joint, side: 'driving' | 'driven'): number {
  const screws = joint.screws.find((group) => group.side === side) ?? joint.screws[0];
  if (!screws) return 0;
  const shape = joint.adapterSpec.groups.find((candidate) => candidate.id === screws.id)?.shape;
  const { holes } = joint[side];
  const room = (hole: number) => Math.max(0, hole - screws.major) / 2;
  return (shape?.kind === 'passing' ? room(shape.diameter) : 0) + (holes.kind === 'clear' ? room(holes.diameter.value) : 0);
}

/** The shifts between the driving flange's axis and the adapter's, and between the adapter's and the driven flange's. */
export function shifts(joint: Joint): { readonly adapter: Shift[]; readonly driven: Shift[] } {
  const at = (side: 'driving' | 'driven'): Shift => {
    const play = registerClearance(joint, side);
    return play
      ? { what: `${side} register fit`, size: eccentricityOf(play.greatest) }
      : { what: `play of the ${side} screws`, size: screwPlay(joint, side) };
  };
  const rim = (side: 'driving' | 'driven'): Shift[] => {
    const tir = joint[side].runout.rim;
    return tir === null ? [] : [{ what: `run-out of the ${side} flange`, size: tir / 2 }];
  };
  const turnOver = { what: 'turning the part over', size: joint.turnOver.tir / 2 };
  return { adapter: [...rim('driving'), at('driving')], driven: [turnOver, at('driven')] };
}

const worst = (list: readonly Shift[]) => list.reduce((sum, shift) => sum + shift.size, 0);
const likely = (list: readonly Shift[]) => Math.hypot(...list.map((shift) => shift.size));

function concentric(joint: Joint): Finding[] {
  const { adapter, driven } = shifts(joint);
  const all = [...adapter, ...driven];
  const list = all.map((shift) => `${shift.what} ${mm(shift.size, 3)}`).join(', ');
  const biggest = all.reduce((a, b) => (b.size > a.size ? b : a));
  const { duty, shaft } = joint.job;
  const grade = duty?.speed === undefined ? null : must(balanceGrade(duty.grade));
  const common = {
    code: 'concentricity',
    feature: 'driven-register',
    title: 'how far the driven flange can be off centre',
    source: 'sum of the fits (ISO 286) and the turn-over; specific unbalance by ISO 21940-11',
  };
  if (!grade || duty?.speed === undefined) {
    return [
      notAssessed({
        ...common,
        why: `At worst ${mm(worst(all), 3)}, likely ${mm(likely(all), 3)} (${list}).`,
        missing: 'Give duty.speed: how much is too much hangs on the speed.',
      }),
    ];
  }
  const allowed = permissibleSpecificUnbalance(grade.G, duty.speed) / 1000;
  const cure = `Start with the biggest: ${biggest.what}. A register made to the measured size of its mate, a closer fit, or both registers in one chucking; then have the shaft balanced in place.`;
  const centre = judged(
    {
      ...common,
      unit: 'mm',
      why: `Worst case is the sum; likely ${mm(likely(all), 3)}. ${list}. ${grade.name} at ${duty.speed} rpm allows ${mm(allowed, 3)}.`,
      cure,
    },
    worst(all),
    // Meeting the limit in the likely case only is a caution: half-caution is what a dial indicator is for.
    { limit: allowed, sense: 'at most', hard: worst(all) * (allowed / Math.max(likely(all), 1e-12)) },
  );
  const riders: { what: string; mass: number; offset: readonly Shift[] }[] = [
    { what: 'adapter', mass: joint.adapterMass.mass, offset: adapter },
    ...(joint.wheelMass ? [{ what: 'wheel', mass: joint.wheelMass.mass, offset: adapter }] : []),
    ...(shaft?.mass === undefined ? [] : [{ what: 'half the shaft', mass: shaft.mass / 2, offset: all }]),
  ];
  const total = riders.reduce((sum, rider) => sum + rider.mass, 0);
  const sum = (of: (offset: readonly Shift[]) => number) => riders.reduce((u, rider) => u + rider.mass * of(rider.offset), 0);
  const limit = permissibleUnbalance(total, grade.G, duty.speed);
  const unbalance = judged(
    {
      code: 'centring-unbalance',
      feature: 'body',
      title: 'unbalance made by riding off centre',
      unit: 'g.mm',
      why: `${riders.map((r) => `${r.what} ${(r.mass / 1000).toFixed(2)} kg`).join(', ')} off centre at worst; likely ${sum(likely).toFixed(0)} g.mm.${shaft?.mass === undefined ? ' The shaft is not counted: give shaft.mass.' : ''}`,
      cure,
      source: 'U = m e (definition); half of the shaft rides on each end (statics); ISO 21940-11',
    },
    sum(worst),
    { limit, sense: 'at most', hard: sum(worst) * (limit / Math.max(sum(likely), 1e-12)) },
  );
  return [centre, unbalance];
}

export const concentricity: Check = {
  id: 'concentricity',
  title: 'Concentricity',
  source: 'ISO 286; ISO 21940-11; statics',
  run: concentric,
};
