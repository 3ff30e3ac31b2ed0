/** Arrows in space: sums, products and turns. Any unit. */
import { hypot3 } from '../units/hypot.ts';
import { atan2, cos, sin } from '../units/trig.ts';

/** x, y, z. */
export type Vector = readonly [number, number, number];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const stretched = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const lengthOf = (a: Vector): number => hypot3(a[0], a[1], a[2]);

/** The arrow square to both, by the right-hand rule. */
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The same direction, one long; the arrow must have a length. */
export const unit = (a: Vector): Vector => stretched(a, 1 / lengthOf(a));

/** Angle between two arrows, degrees, 0 to 180. Exact for small angles too. */
export const angleBetween = (a: Vector, b: Vector): number => (atan2(lengthOf(cross(a, b)), dot(a, b)) * 180) / Math.PI;

/** `a` turned about the unit arrow `axis` by the right-hand rule, degrees. Source: Rodrigues' formula. */
export function turnedAbout(a: Vector, axis: Vector, degrees: number): Vector {
  const angle = (degrees * Math.PI) / 180;
  const [c, s] = [cos(angle), sin(angle)];
  const along = stretched(axis, dot(axis, a) * (1 - c));
  return add(add(stretched(a, c), stretched(cross(axis, a), s)), along);
}
