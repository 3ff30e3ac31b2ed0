/** The ways round in which a joint can be bolted up, and how far off centre each leaves the driven shaft. mm, degrees. */
import { type Arrow, arrow } from '../formulas/arrows.ts';
import { type BoltUp, type Phasing, phasing } from '../formulas/phasing.ts';
import { symmetryTurns } from '../geometry/symmetry.ts';
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import { tan } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { screwPlay } from './plays.ts';

type Side = 'driving' | 'driven';

const radians = Math.PI / 180;
/** How far apart two angles lie, degrees. */
const apart = (a: number, b: number): number => Math.abs(withinTurn(a - b + 180) - 180);
/** Holes may always miss each other by this, mm: what coordinates rounded to a hundredth do. */
const leastMiss = 0.02;
/** A typed turn this near to one that fits is that one, degrees. */
const near = 0.5;

/** A flange's holes are the same in every way of holding it that a search tries; the turns hang on them and on what they may miss by. */
const knownTurns = new WeakMap<ResolvedFlange['holes'], Map<number, readonly number[]>>();

/** Turns that bring the holes of a side onto each other, within half the play of the screws in them. Degrees, ascending from 0. */
export function fittingTurns(joint: Joint, side: Side): readonly number[] {
  const screws = joint.screws.find((group) => group.side === side) ?? joint.screws[0];
  const play = screws ? screwPlay(joint, screws, side) : 0;
  const { holes } = joint[side];
  const miss = Math.max(leastMiss, play / 2);
  const byMiss = knownTurns.get(holes) ?? new Map<number, readonly number[]>();
  const turns = byMiss.get(miss) ?? symmetryTurns(holesThere(holes), miss);
  knownTurns.set(holes, byMiss.set(miss, turns));
  return turns;
}

/** The fitting turn that a typed one means; null when it means none. */
export function meantTurn(turns: readonly number[], typed: number): number | null {
  return turns.find((turn) => apart(turn, typed) <= near) ?? null;
}

/** What was measured between the adapter's own two sides, in adapter coordinates; nothing when it is not known. */
export interface AdapterRunout {
  /** Middle of the driven register off that of the driving one, mm. */
  readonly offset?: Arrow;
  /** Slope of the driven face against the driving one towards the thickest place, mm in mm. */
  readonly slope?: Arrow;
}

export type PhasingStudy =
  | {
      readonly ok: true;
      readonly result: Phasing;
      /** Whether the faces' tilt is counted, and how far from the driven face, mm. */
      readonly faces: boolean;
      readonly arm: number;
    }
  /** Some side's direction is not known, or the chosen turn does not fit. */
  | { readonly ok: false; readonly lacking: readonly Side[] };

/** Ways round that differ: with an adapter of unknown run-out only the whole turn of the driven flange counts. */
function waysOf(turns: Record<Side, readonly number[]>, chosen: BoltUp, adapterKnown: boolean): BoltUp[] {
  const all = turns.driving.flatMap((driving) => turns.driven.map((driven) => ({ driving, driven })));
  if (adapterKnown) return all;
  // What need not be turned is left as it is, the adapter first.
  const rank = (way: BoltUp): number =>
    way.driving === chosen.driving ? -2 : way.driven === chosen.driven ? -1 : way.driving;
  const kept: BoltUp[] = [];
  for (const way of [...all].sort((a, b) => rank(a) - rank(b) || a.driven - b.driven)) {
    const whole = way.driving + way.driven;
    if (!kept.some((other) => apart(other.driving + other.driven, whole) < near)) kept.push(way);
  }
  return kept;
}

/** The ways round of a joint, and the one that the job chose; null where that one does not bring holes onto holes. */
export function boltUps(joint: Joint, adapterKnown = false): { ways: BoltUp[]; chosen: BoltUp } | null {
  const turns = { driving: fittingTurns(joint, 'driving'), driven: fittingTurns(joint, 'driven') };
  const typed = joint.job.adapter.bolt_up ?? { driving: 0, driven: 0 };
  const [driving, driven] = [meantTurn(turns.driving, typed.driving), meantTurn(turns.driven, typed.driven)];
  if (driving === null || driven === null) return null;
  return { ways: waysOf(turns, { driving, driven }, adapterKnown), chosen: { driving, driven } };
}

const slopeOf = ({ runout: { faceTilt } }: ResolvedFlange, turn: number): Arrow | null =>
  faceTilt ? arrow(tan(faceTilt.degrees * radians), faceTilt.high + turn) : null;

/**
 * Every way round, ranked. The driven flange's own directions are turned by the clocking, as its holes are. A lean of the axis counts
 * as far out as the driven flange is from its middle to its rim: about there the shaft's joint has its centre (common practice).
 */
export function studyPhasing(joint: Joint, adapter: AdapterRunout = {}): PhasingStudy {
  const { driving, driven, clocking } = joint;
  const [e1, e2] = [driving.runout.rimEccentricity, driven.runout.rimEccentricity];
  const known = adapter.offset !== undefined || adapter.slope !== undefined;
  const bolted = boltUps(joint, known);
  const lacking = (['driving', 'driven'] as const).filter((side) => !joint[side].runout.rimEccentricity);
  if (!e1 || !e2 || !bolted) return { ok: false, lacking };
  const [s1, s2] = [slopeOf(driving, 0), slopeOf(driven, clocking.angle)];
  const arm = driven.outside.value / 2;
  const faces = s1 !== null && s2 !== null;
  // The four readings err independently. A doubtful lean counts over the adapter and the arm for the driving face, over the arm for the driven one.
  const thickness = joint.adapterSpec.thickness;
  const leanDoubt = ({ runout }: ResolvedFlange, over: number): number =>
    over * tan((runout.faceTilt?.doubt ?? 0) * radians);
  const result = phasing(
    {
      offsets: {
        driving: arrow(e1.size, e1.angle),
        driven: arrow(e2.size, e2.angle + clocking.angle),
        adapter: adapter.offset,
      },
      slopes: faces ? { driving: s1, driven: s2, adapter: adapter.slope } : null,
      thickness,
      arm,
      doubt: Math.hypot(
        e1.doubt,
        e2.doubt,
        ...(faces ? [leanDoubt(driving, thickness + arm), leanDoubt(driven, arm)] : []),
      ),
    },
    bolted.ways,
    bolted.chosen,
  );
  return { ok: true, result, faces, arm };
}
