/**
 * Shafts in a row with joints between them: joint angles, their planes, and how unevenly the last shaft turns.
 *
 * A universal joint at the angle b speeds its output up and slows it down twice per turn, by b^2 / 2 of the speed (b in radians). Each is an
 * arrow of length b^2 at twice the angle between its input fork and the plane of its bend; arrows of several joints add. A quarter turn from one
 * fork of a joint to the other turns the next arrow by half a turn: two equal joints in one plane with their forks in line cancel.
 * Source: second-order rule of joint makers' annexes (in one plane: b_R^2 = sum of +- b^2); the form for planes that differ is derived from
 * the exact kinematics and proven against them. First neglected terms: b^4.
 */
import { type Arrow, angleOf, arrow, noArrow, plus, sizeOf } from './arrows.ts';
import { angleBetween, less, type Vector } from './vectors.ts';

/** A joint between two shafts. */
export interface TrainJoint {
  /** A constant-velocity joint passes the turn on evenly at any angle. */
  readonly kind: 'universal' | 'constant velocity';
  /**
   * How far its input fork is turned against the output fork of the universal joint before it, degrees, clockwise looking along the line;
   * 0 when the forks are in line. Of no account for the first universal joint and for constant-velocity joints.
   */
  readonly yokes: number;
}

/** Directions of the shafts, one more than joints. Unit arrows; see shaft-direction. */
export interface Train {
  readonly shafts: readonly Vector[];
  readonly joints: readonly TrainJoint[];
}

/** Angle of each joint, degrees. */
export function jointAngles({ shafts, joints }: Train): number[] {
  return joints.map((_, i) => angleBetween(shafts[i] as Vector, shafts[i + 1] as Vector));
}

/** Plane of each joint's bend, degrees from the horizontal (plus y) towards up (plus z), 0 to 360; 0 for a joint without angle. */
export function jointPlanes({ shafts, joints }: Train): number[] {
  return joints.map((_, i) => {
    const [, y, z] = less(shafts[i + 1] as Vector, shafts[i] as Vector);
    return angleOf({ x: y, y: z });
  });
}

/**
 * Each joint's arrow: b^2 in square degrees, at its second-order phase. Constant-velocity joints have none.
 * Turning all forks together turns all arrows together, so only their differences mean something.
 */
export function secondOrderArrows(train: Train): Arrow[] {
  const angles = jointAngles(train);
  const planes = jointPlanes(train);
  let fork = 0;
  let first = true;
  return train.joints.map(({ kind, yokes }, i) => {
    if (kind === 'constant velocity') return noArrow;
    fork += first ? 0 : yokes;
    first = false;
    const b = angles[i] as number;
    const at = arrow(b * b, 2 * (fork - (planes[i] as number)));
    fork += 90;
    return at;
  });
}

/** The angle of the one joint that would be as uneven as several together, degrees. */
export function equivalentAngle(arrows: readonly Arrow[]): number {
  return Math.sqrt(sizeOf(arrows.reduce(plus, noArrow)));
}

/** Angle of the one joint that runs as unevenly as the whole train, from the first shaft to the last, degrees. */
export function residualAngle(train: Train): number {
  return equivalentAngle(secondOrderArrows(train));
}

/** How unevenly each shaft turns, as an equivalent angle, degrees: with the first shaft turning evenly, and with the last one. */
export function shaftUnevenness(train: Train): { readonly fromFirst: number; readonly fromLast: number }[] {
  const arrows = secondOrderArrows(train);
  return train.shafts.map((_, i) => ({
    fromFirst: equivalentAngle(arrows.slice(0, i)),
    fromLast: equivalentAngle(arrows.slice(i)),
  }));
}

const perRadian = Math.PI / 180;

/**
 * Greatest angular acceleration behind a joint at an angle, rad/s2: (pi n / 30)^2 b^2.
 * @param speed rpm
 * @param degrees joint angle or equivalent angle; small-angle form, 0.2 % low at 6 degrees, 4.3 % low at 25
 * Source: textbook.
 */
export function accelerationOf(speed: number, degrees: number): number {
  return ((speed * Math.PI) / 30) ** 2 * (degrees * perRadian) ** 2;
}

/** The angle at which a speed gives an acceleration, degrees: the inverse of `accelerationOf`. speed > 0, rpm; rad/s2. */
export function angleFor(speed: number, acceleration: number): number {
  return Math.sqrt(acceleration) / ((speed * Math.PI) / 30) / perRadian;
}

/** The speed at which an angle gives an acceleration, rpm; Infinity for no angle. */
export function speedFor(degrees: number, acceleration: number): number {
  return degrees <= 0 ? Infinity : (Math.sqrt(acceleration) / (degrees * perRadian)) * (30 / Math.PI);
}
