/** What the cross-checks share: where a mistake is reported, and how sizes are said. */
import type { ErrorMore } from './errors.ts';

/** Where a check puts what it found. */
export type Report = (path: string, message: string, more?: ErrorMore) => void;

/** Half of another size within 3 %: somebody may have typed a radius, perhaps from another table. */
export function isHalfOf(typed: number, diameter: number): boolean {
  return Math.abs(2 * typed - diameter) <= 0.03 * diameter;
}

/** A question to somebody who may have typed a radius. */
export function radiusQuestion(typed: number, diameter = 2 * typed): string {
  return `${round(diameter)} / 2 = ${round(diameter / 2)}: did you type the radius? Diameters are wanted.`;
}

/** A length as a sentence shows it. */
export function size(mm: number): string {
  return `${round(mm)} mm`;
}

/** To a micrometre. */
export function round(mm: number): number {
  return Number(mm.toFixed(3));
}
