/** Arrows in a plane, for things that have a size and an angle: unbalance, weights on a shaft, vibration with its phase. */
import { hypot } from '../units/hypot.ts';
import { atan2, cos, sin } from '../units/trig.ts';

/** Components of an arrow; any unit. Multiplying turns and stretches, as complex numbers do. */
export interface Arrow {
  readonly x: number;
  readonly y: number;
}

/** An arrow by its size (>= 0) and its angle, degrees. */
export function arrow(size: number, degrees: number): Arrow {
  const angle = (degrees * Math.PI) / 180;
  return { x: size * cos(angle), y: size * sin(angle) };
}

export const noArrow: Arrow = { x: 0, y: 0 };

export function sizeOf({ x, y }: Arrow): number {
  return hypot(x, y);
}

/** Angle of an arrow, degrees, from 0 up to 360; 0 for an arrow without size. */
export function angleOf({ x, y }: Arrow): number {
  const degrees = (atan2(y, x) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees + 0;
}

export function plus(a: Arrow, b: Arrow): Arrow {
  return { x: a.x + b.x, y: a.y + b.y };
}

export function minus(a: Arrow, b: Arrow): Arrow {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** Sizes multiplied, angles added. */
export function times(a: Arrow, b: Arrow): Arrow {
  return { x: a.x * b.x - a.y * b.y, y: a.x * b.y + a.y * b.x };
}

/** Sizes divided, angles subtracted; b must have a size. */
export function over(a: Arrow, b: Arrow): Arrow {
  return scaled(times(a, mirrored(b)), 1 / (b.x * b.x + b.y * b.y));
}

export function scaled({ x, y }: Arrow, factor: number): Arrow {
  return { x: x * factor, y: y * factor };
}

/** The same arrow with its angle counted the other way round. */
export function mirrored({ x, y }: Arrow): Arrow {
  return { x, y: -y };
}

/** Sum of arrows; no size when there are none. */
export function sumOf(arrows: readonly Arrow[]): Arrow {
  return arrows.reduce(plus, noArrow);
}

/** How far two angles lie apart, 0 to 180 degrees. */
export function apart(a: number, b: number): number {
  const turn = (((a - b) % 360) + 360) % 360;
  return Math.min(turn, 360 - turn);
}
