/**
 * What happens to a train of shafts when a wedge is put under the axle, a mount or a centre bearing is raised, or the axle travels.
 *
 * The first shaft and the last one are held in direction by what carries them; the ones between go from joint centre to joint centre. So every
 * move shifts joint centres or turns an end, and the rest follows. Axes as in shaft-direction; lengths mm, angles degrees.
 */
import { hypot } from '../units/hypot.ts';
import { asin, atan2 } from '../units/trig.ts';
import type { Train, TrainJoint } from './joint-train.ts';
import { add, cross, lengthOf, less, stretched, turnedAbout, unit, type Vector } from './vectors.ts';

/** A train with places: joint centres in order, and the directions of the first and the last shaft. */
export interface PlacedTrain {
  readonly first: Vector;
  readonly centres: readonly Vector[];
  readonly last: Vector;
  readonly joints: readonly TrainJoint[];
}

/** A train set out from its first joint centre. `lengths`: of the shafts between joints, mm, one less than joints. */
export function placed({ shafts, joints }: Train, lengths: readonly number[]): PlacedTrain {
  const centres: Vector[] = [[0, 0, 0]];
  lengths.forEach((length, i) => {
    centres.push(add(centres[i] as Vector, stretched(shafts[i + 1] as Vector, length)));
  });
  return { first: shafts[0] as Vector, centres, last: shafts[shafts.length - 1] as Vector, joints };
}

/** Directions of all shafts of a placed train. */
export function trainOf({ first, centres, last, joints }: PlacedTrain): Train {
  const between = centres.slice(1).map((centre, i) => unit(less(centre, centres[i] as Vector)));
  return { shafts: [first, ...between, last], joints };
}

/** Length of the last shaft between joints, mm; 0 where there is only one joint. */
export function lastLength({ centres }: PlacedTrain): number {
  const [a, b] = centres.slice(-2);
  return a && b ? lengthOf(less(b, a)) : 0;
}

const across: Vector = [0, 1, 0];

/** The level axis square to a shaft: axle tube and mounts lie along it, and what they carry tips about it. */
const levelAcross = (shaft: Vector): Vector => unit(cross([0, 0, 1], shaft));

const withCentre = (train: PlacedTrain, index: number, by: Vector): PlacedTrain => ({
  ...train,
  centres: train.centres.map((centre, i) => (i === index ? add(centre, by) : centre)),
});

/**
 * The last shaft turned in the side view by a wedge between spring and axle.
 * @param degrees plus: its side angle grows, so that its near end, the nose, goes up
 * @param arm from the last joint centre on to the middle of the axle, mm: the axle turns about its own middle
 */
export function wedged(train: PlacedTrain, degrees: number, arm: number): PlacedTrain {
  const last = turnedAbout(train.last, levelAcross(train.last), degrees);
  const shift = less(stretched(train.last, arm), stretched(last, arm));
  return { ...withCentre(train, train.centres.length - 1, shift), last };
}

/**
 * The first joint raised by a taller mount under the gearbox, which tips about its front mounts.
 * @param height mm, plus is up
 * @param pivot from the front mounts to the first joint centre, mm, > 0
 */
export function mountRaised(train: PlacedTrain, height: number, pivot: number): PlacedTrain {
  const tip = (asin(Math.max(-1, Math.min(1, height / pivot))) * 180) / Math.PI;
  return { ...withCentre(train, 0, [0, 0, height]), first: turnedAbout(train.first, levelAcross(train.first), -tip) };
}

/** A centre bearing raised, and with it the joint behind it. The shaft ahead of it runs from the joint before. `height` mm, plus is up. */
export function bearingRaised(train: PlacedTrain, joint: number, height: number): PlacedTrain {
  return withCentre(train, joint, [0, 0, height]);
}

/** How the axle goes up and down. */
export interface AxlePath {
  /** From the last joint centre on to the middle of the axle, mm. */
  readonly arm: number;
  /** The place about which the axle swings: how far ahead of the last joint centre and how far above it, mm; null: straight up and down. */
  readonly pivot: { readonly ahead: number; readonly above: number } | null;
}

/**
 * The train with its axle moved up (bump, plus) or down (droop, minus) by so many mm; null where the swing does not reach that far.
 * About a pivot the axle and the last shaft turn together; without one they keep their slope.
 */
export function travelled(train: PlacedTrain, up: number, { arm, pivot }: AxlePath): PlacedTrain | null {
  const index = train.centres.length - 1;
  if (pivot === null) return withCentre(train, index, [0, 0, up]);
  // The axle's middle seen from the pivot, in the side view: x along, z up.
  const axle = stretched(train.last, arm);
  const [x, z] = [pivot.ahead + axle[0], axle[2] - pivot.above];
  const sine = (z + up) / hypot(x, z);
  if (Math.abs(sine) > 1) return null;
  const swing = ((asin(sine) - atan2(z, x)) * 180) / Math.PI;
  // Far end up is a turn against the side angle's sense.
  const from: Vector = [pivot.ahead, 0, -pivot.above];
  const shift = less(turnedAbout(from, across, -swing), from);
  return { ...withCentre(train, index, shift), last: turnedAbout(train.last, across, -swing) };
}
