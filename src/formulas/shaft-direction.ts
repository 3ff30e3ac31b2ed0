/**
 * Which way a shaft lies, from an inclinometer and a plan angle.
 *
 * Axes: x along the line from the driving end on, y to the left, z up. Looking along the line, from the driving end.
 * Side angle: what an inclinometer shows when it is laid along the shaft, plus when the far end of that shaft is the lower one.
 * Plan angle: seen from above, plus when the far end lies farther to the left. Both are right-handed turns, about y and about z.
 */
import { hypot } from '../units/hypot.ts';
import { atan, atan2, cos, sin, tan } from '../units/trig.ts';
import { unit, type Vector } from './vectors.ts';

/** Readings of one shaft, degrees. */
export interface ShaftReading {
  readonly side: number;
  readonly plan: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Unit arrow along a shaft. The side angle is a true slope, the plan angle one of the shaft's shadow on the floor. Geometry.
 * @param reading degrees, -90 to 90
 */
export function directionOf({ side, plan }: ShaftReading): Vector {
  const [s, t] = [radians(side), radians(plan)];
  return [cos(s) * cos(t), cos(s) * sin(t), -sin(s)];
}

/** The readings that a direction would give, degrees. The inverse of `directionOf` for shafts that point along the line. */
export function readingOf(direction: Vector): ShaftReading {
  const [x, y, z] = unit(direction);
  const degrees = (angle: number) => (angle * 180) / Math.PI;
  return { side: -degrees(atan2(z, hypot(x, y))), plan: degrees(atan2(y, x)) };
}

/**
 * Joint angle from a side view and a plan view drawn square to each other, both as shadows: tan C = sqrt(tan^2 S + tan^2 T).
 * @param side difference of the side angles, degrees, under 90
 * @param plan difference of the plan angles, degrees, under 90
 * Source: geometry; a joint maker's manual prints sqrt(S^2 + T^2), 0.1 % more at 5 degrees.
 */
export function compoundAngle(side: number, plan: number): number {
  const tangent = hypot(tan(radians(side)), tan(radians(plan)));
  return (atan(tangent) * 180) / Math.PI;
}
