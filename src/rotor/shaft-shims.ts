/** What to shim so that the train runs evenly: the wedge under the axle, the height of the gearbox mount or of a centre bearing. */
import { angleFor, jointAngles, residualAngle, type Train } from '../formulas/joint-train.ts';
import { leastOf, type Setting } from '../formulas/least-of.ts';
import {
  bearingRaised,
  mountRaised,
  type PlacedTrain,
  placed as setOut,
  trainOf,
  wedged,
} from '../formulas/train-moves.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { type AngleStudy, evenAngle, stancesOf, trainsOfTravel } from './shaft-angles.ts';
import type { JointWithShaft } from './shaft-line.ts';

/** One thing that may be set. mm or degrees, as it lies; plus: nose up, or raised. */
export interface Shim {
  readonly what: 'wedge' | 'mount' | 'bearing';
  readonly by: number;
}

export interface ShimStudy {
  /** As best, to the last digit; and in steps that can be had. */
  readonly exact: readonly Shim[];
  readonly shims: readonly Shim[];
  /** Equivalent angle of the train at ride height, degrees: now, exactly at best, and in steps. */
  readonly before: number;
  readonly best: number;
  readonly after: number;
  /** The train with the shims in, and the angles of its joints, degrees. */
  readonly train: Train;
  readonly angles: readonly number[];
  /** Equivalent angle at bump and droop with the shims in; empty where the travel is not known. */
  readonly travel: readonly { readonly what: string; readonly residual: number }[];
  /** A joint's own shift by the wedge was not counted, for want of lengths. */
  readonly shiftLeftOut: boolean;
  /** What was asked for and cannot be worked out: sentences. */
  readonly left: readonly string[];
}

/** A length that stands in for one that is not known: with no arm nothing hangs on it. */
const anyLength = 1000;
/** Steps of a height that is packed up, mm. Common practice. */
const heightStep = 1;
/** Weight of bump and droop together against ride height, where the train spends its life. Common practice. */
const travelWeight = 0.2;
/** Weight of a joint that is too steep or too straight. */
const jointWeight = 10;

interface Way extends Setting {
  readonly what: Shim['what'];
  readonly step: number;
  readonly apply: (train: PlacedTrain, by: number) => PlacedTrain;
}

function waysOf(joint: JointWithShaft, study: AngleStudy): { ways: Way[]; left: string[] } {
  const shim = joint.job.shaft?.angles?.shim ?? {};
  const left: string[] = [];
  const ways: Way[] = [];
  const count = study.angles.length;
  const steepest = shim.wedge ?? shaftRule('wedge-most').limit;
  const arm = study.placed ? (joint.job.shaft?.travel?.arm ?? 0) : 0;
  const step = shaftRule('wedge-step').limit;
  if (steepest > 0 && count > 1) {
    ways.push({ what: 'wedge', least: -steepest, most: steepest, step, apply: (t, by) => wedged(t, by, arm) });
  }
  if (shim.mount !== undefined) {
    const pivot = shim.mount_pivot;
    if (pivot !== undefined && study.placed) {
      ways.push({
        what: 'mount',
        least: -shim.mount,
        most: shim.mount,
        step: heightStep,
        apply: (t, by) => mountRaised(t, by, pivot),
      });
    } else {
      left.push(
        'Raising the mount was not tried: it needs shaft.angles.shim.mount_pivot and the length of every shaft.',
      );
    }
  }
  if (shim.bearing !== undefined) {
    if (count > 2 && study.placed) {
      // The bearing carries the shaft ahead of the last one: the joint right behind it goes with it.
      const at = count - 2;
      ways.push({
        what: 'bearing',
        least: -shim.bearing,
        most: shim.bearing,
        step: heightStep,
        apply: (t, by) => bearingRaised(t, at, by),
      });
    } else {
      left.push(
        'Raising the centre bearing was not tried: it needs three joints and the length of every shaft (shaft.angles.line).',
      );
    }
  }
  return {
    ways: ways.slice(0, 2),
    left: ways.length > 2 ? [...left, 'More than two things to shim: the centre bearing was left out.'] : left,
  };
}

/** Joints that are steeper than their limit or straighter than needles bear, as shares beyond. */
function jointTrouble(train: Train, steepest: number): number {
  const least = shaftRule('needles').limit;
  return jointAngles(train).reduce((sum, angle, i) => {
    if (train.joints[i]?.kind !== 'universal') return sum;
    return sum + Math.max(0, (angle / steepest) ** 2 - 1) + Math.max(0, 1 - angle / least);
  }, 0);
}

/** Checks, report and order sheet ask for the same shims; trying every setting takes its time. */
const known = new WeakMap<object, ShimStudy | null>();

/** The best shims; null where there is nothing that a shim could change: one joint, or no universal joint. */
export function studyShims(joint: JointWithShaft, study: AngleStudy): ShimStudy | null {
  const before = known.get(joint);
  if (before !== undefined) return before;
  const shims = searchShims(joint, study);
  known.set(joint, shims);
  return shims;
}

function searchShims(joint: JointWithShaft, study: AngleStudy): ShimStudy | null {
  const { line, limits, speed } = study;
  const { ways, left } = waysOf(joint, study);
  if (ways.length === 0 || !line.train.joints.some(({ kind }) => kind === 'universal')) return null;
  const start =
    study.placed ??
    setOut(
      line.train,
      line.lengths.slice(1, -1).map(() => anyLength),
    );
  const allowed = speed === null ? evenAngle : angleFor(speed, limits.torsional);
  const steepest = speed === null ? Infinity : angleFor(speed, limits.inertial);
  const moved = (at: readonly number[]): PlacedTrain =>
    ways.reduce((train, way, i) => way.apply(train, at[i] as number), start);
  const uneven = (train: Train) => (residualAngle(train) / allowed) ** 2;
  const cost = (at: readonly number[]): number => {
    const there = moved(at);
    const train = trainOf(there);
    const ends = study.placed ? trainsOfTravel(joint, there) : [];
    const travel = ends.reduce((sum, end) => sum + uneven(end.train), 0);
    return (
      uneven(train) + (travelWeight * travel) / Math.max(1, ends.length) + jointWeight * jointTrouble(train, steepest)
    );
  };
  const exact = leastOf(cost, ways);
  // Steps that can be had: of the places round the best one, the one that costs least; nothing at all where that is as good.
  const rounded = roundings(exact, ways).reduce((a, b) => (cost(b) < cost(a) ? b : a));
  const none = ways.map(() => 0);
  const taken = cost(none) <= cost(rounded) ? none : rounded;
  const train = trainOf(moved(taken));
  const named = (at: readonly number[]) => ways.map(({ what }, i) => ({ what, by: at[i] as number }));
  return {
    exact: named(exact),
    shims: named(taken),
    before: study.residual,
    best: residualAngle(trainOf(moved(exact))),
    after: residualAngle(train),
    train,
    angles: jointAngles(train),
    travel: study.placed ? stancesOf(joint, moved(taken)).map(({ what, residual }) => ({ what, residual })) : [],
    shiftLeftOut:
      ways.some(({ what }) => what === 'wedge') &&
      (study.placed === null || joint.job.shaft?.travel?.arm === undefined),
    left,
  };
}

/** The steps below and above each setting, in every combination, within the range. */
function roundings(at: readonly number[], ways: readonly Way[]): number[][] {
  let places: number[][] = [[]];
  at.forEach((value, i) => {
    const { step, least, most } = ways[i] as Way;
    const near = [Math.floor(value / step) * step, Math.ceil(value / step) * step].map((one) =>
      Math.min(most, Math.max(least, one)),
    );
    places = places.flatMap((place) => near.map((one) => [...place, one + 0]));
  });
  return places;
}
