/**
 * How far off centre the driven flange can end up, and what that does to balance. Worst case is a plain sum; the likely case adds
 * independent errors as squares. The fuller chain (heat, tilt, what was measured on the finished part) comes later.
 */
import { permissibleSpecificUnbalance, permissibleUnbalance } from '../formulas/balance.ts';
import { eccentricityOf } from '../formulas/fit.ts';
import { firstCrossing } from '../geometry/nesting.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { balanceGrade } from '../standards/balance-grades.ts';
import { must } from '../standards/table.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { playAt } from './holes-clear.ts';
import { registerClearance } from './registers.ts';
import { mm } from './words.ts';

/** One thing that can push the axis aside. */
export interface Shift {
  readonly what: string;
  /** mm, worst case. */
  readonly size: number;
  /** What to do about it. */
  readonly cure: string;
}

/** What stands between one flange's axis and the adapter's: the register's fit, or the play of the screws where there is none. */
function seat(joint: Joint, side: 'driving' | 'driven'): Shift {
  const play = registerClearance(joint, side);
  if (play) {
    const own = joint.adapterSpec.registers[side];
    const cure = `a closer fit (adapter.${side}.fit: ${own?.gender === 'male' ? 'h5' : 'H6'}), or a mate measured with a micrometer`;
    return { what: `${side} register fit`, size: eccentricityOf(play.greatest), cure };
  }
  const screws = joint.screws.find((group) => group.side === side) ?? joint.screws[0];
  return {
    what: `play of the ${side} screws`,
    size: screws ? playAt(joint, screws, side) / 2 : 0,
    cure: `a register on the ${side} flange, or dowels`,
  };
}

/**
 * The shifts between the shaft that drives and the adapter's axis, and between the adapter's and the shaft that is driven.
 * Lengths in mm, radial. Source: sum of the links; half of a total indicator reading is the eccentricity.
 */
export function shifts(joint: Joint): { readonly adapter: Shift[]; readonly driven: Shift[] } {
  const rim = (side: 'driving' | 'driven'): Shift[] => {
    const tir = joint[side].runout.rim;
    return tir === null
      ? []
      : [{ what: `run-out of the ${side} flange`, size: tir / 2, cure: `the ${side} flange trued up` }];
  };
  const turnOver = {
    what: 'turning the part over',
    size: joint.turnOver.tir / 2,
    cure: 'both registers in one chucking (adapter.setup: one chucking)',
  };
  return {
    adapter: [...rim('driving'), seat(joint, 'driving')],
    driven: [turnOver, seat(joint, 'driven'), ...rim('driven')],
  };
}

const worst = (list: readonly Shift[]) => list.reduce((sum, shift) => sum + shift.size, 0);
const likely = (list: readonly Shift[]) => Math.hypot(...list.map((shift) => shift.size));

/** What rides on the joint, and how far off the driving axis each thing can be. Masses in g. */
function ridersOf(joint: Joint, onAdapter: readonly Shift[], all: readonly Shift[]) {
  const half =
    joint.job.shaft?.mass === undefined
      ? []
      : [{ what: 'half the shaft', mass: joint.job.shaft.mass / 2, offset: all }];
  const wheel = joint.wheelMass ? [{ what: 'wheel', mass: joint.wheelMass.mass, offset: onAdapter }] : [];
  return [{ what: 'adapter', mass: joint.adapterMass.mass, offset: onAdapter }, ...wheel, ...half];
}

function centringUnbalance(joint: Joint, onAdapter: readonly Shift[], all: readonly Shift[], cure: string): Finding {
  const { duty, shaft } = joint.job;
  const common = {
    code: 'centring-unbalance',
    feature: 'body',
    title: 'unbalance made by riding off centre',
    source: 'U = m e (definition); half of the shaft rides on each end (statics); ISO 21940-11',
  };
  const crossing = firstCrossing(joint.adapter);
  if (crossing) {
    const why = `The adapter's mass is not known: ${crossing.a} and ${crossing.b} run into each other.`;
    return notAssessed({ ...common, why, missing: 'Part the holes first: see the webs and walls that fail.' });
  }
  const riders = ridersOf(joint, onAdapter, all);
  const total = riders.reduce((sum, rider) => sum + rider.mass, 0);
  const sum = (of: (offset: readonly Shift[]) => number) =>
    riders.reduce((u, rider) => u + rider.mass * of(rider.offset), 0);
  const list = riders.map((rider) => `${rider.what} ${(rider.mass / 1000).toFixed(2)} kg`).join(', ');
  const unknown = shaft?.mass === undefined ? ' The shaft is not counted: give shaft.mass.' : '';
  if (duty?.speed === undefined) {
    const why = `At worst ${sum(worst).toFixed(0)} g.mm, likely ${sum(likely).toFixed(0)} g.mm (${list}).${unknown}`;
    return notAssessed({ ...common, why, missing: 'Give duty.speed: how much is too much hangs on the speed.' });
  }
  const limit = permissibleUnbalance(total, must(balanceGrade(duty.grade)).G, duty.speed);
  const why = `${list} off centre at worst; likely ${sum(likely).toFixed(0)} g.mm.${unknown}`;
  // Meeting the limit in the likely case only is a caution: a dial indicator at assembly settles it.
  return judged({ ...common, unit: 'g.mm', why, cure }, sum(worst), {
    limit,
    sense: 'at most',
    worst: sum(likely) <= limit ? 'caution' : 'fail',
  });
}

function concentric(joint: Joint): Finding[] {
  const { adapter, driven } = shifts(joint);
  const all = [...adapter, ...driven];
  const list = all.map((shift) => `${shift.what} ${mm(shift.size, 3)}`).join(', ');
  const biggest = all.reduce((a, b) => (b.size > a.size ? b : a));
  const { duty } = joint.job;
  const common = {
    code: 'concentricity',
    feature: 'driven-register',
    title: 'how far the driven flange can be off centre',
    source: 'sum of the fits (ISO 286) and the turn-over; specific unbalance by ISO 21940-11',
  };
  const cure = `Start with the biggest, ${biggest.what}: ${biggest.cure}. Then have the shaft balanced in place.`;
  const unbalance = centringUnbalance(joint, adapter, all, cure);
  if (duty?.speed === undefined) {
    const why = `At worst ${mm(worst(all), 3)}, likely ${mm(likely(all), 3)} (${list}).`;
    return [
      notAssessed({ ...common, why, missing: 'Give duty.speed: how much is too much hangs on the speed.' }),
      unbalance,
    ];
  }
  const grade = must(balanceGrade(duty.grade));
  const allowed = permissibleSpecificUnbalance(grade.G, duty.speed) / 1000;
  const why = `Worst case is the sum; likely ${mm(likely(all), 3)}. ${list}. ${grade.name} at ${duty.speed} rpm allows ${mm(allowed, 3)}.`;
  const verdict = likely(all) <= allowed ? 'caution' : 'fail';
  return [
    judged({ ...common, unit: 'mm', why, cure }, worst(all), { limit: allowed, sense: 'at most', worst: verdict }),
    unbalance,
  ];
}

export const concentricity: Check = {
  id: 'concentricity',
  title: 'Concentricity',
  source: 'ISO 286; ISO 21940-11; statics',
  run: concentric,
};
