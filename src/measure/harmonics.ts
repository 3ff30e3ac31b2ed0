/** A ring of readings as a sum of waves about the turn: mean, once a turn, twice a turn, and what is left. Degrees. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { type LinearFit, leastSquares, mixBound } from './least-squares.ts';
import { turned } from './words.ts';

/** One wave: half its height, where it is highest, and how far an error of the readings can move both. */
export interface Wave {
  /** Half of highest less lowest, in the readings' unit. */
  readonly amplitude: number;
  /** Bound of the amplitude's error while every reading keeps within its doubt and no other wave is there. */
  readonly doubt: number;
  /** Angle of the (first) high place, degrees, from 0 up to a whole turn divided by the wave's order. */
  readonly high: number;
}

export interface Harmonics {
  readonly mean: number;
  readonly meanDoubt: number;
  readonly first: Wave | null;
  /** Null when there are too few readings to tell it from the first. */
  readonly second: Wave | null;
  /** Largest reading less what the mean and the waves say. */
  readonly remainder: number;
  readonly residuals: readonly number[];
}

/** Angles of `count` readings taken at equal steps, counter-clockwise from `first`. */
export function equalAngles(count: number, first = 0): number[] {
  return Array.from({ length: count }, (_, index) => first + (index * 360) / count);
}

/** How many readings each set of waves needs, at the least. */
export const leastReadings = { first: 3, second: 5 } as const;

/**
 * Least squares of reading = mean + a cos t + b sin t (+ c cos 2t + d sin 2t), by normal equations.
 * @param orders which waves to look for: [1], [2] or [1, 2]
 * @param doubt half-width of one reading
 * Misses: fewer readings than unknowns, or angles that do not tell the waves apart.
 */
export function fitHarmonics(
  readings: readonly number[],
  angles: readonly number[],
  orders: readonly (1 | 2)[],
  doubt: number,
): Lookup<Harmonics> {
  const least = 1 + 2 * orders.length;
  if (readings.length !== angles.length)
    return missing(`There are ${readings.length} readings for ${angles.length} angles; correct one of them.`);
  if (readings.length < least)
    return missing(`${readings.length} readings are too few: ${least} or more are needed, spread around the turn.`);
  const radians = angles.map((angle) => (angle * Math.PI) / 180);
  const fit = leastSquares(
    radians.map((t) => [1, ...orders.flatMap((n) => [cos(n * t), sin(n * t)])]),
    readings,
  );
  if (fit === null)
    return missing('These angles do not settle the answer: spread the readings evenly around the whole turn.');
  const doubts = readings.map(() => doubt);
  const wave = (order: 1 | 2): Wave | null => {
    const at = orders.indexOf(order);
    return at < 0 ? null : waveOf(fit, 1 + 2 * at, order, doubts);
  };
  return found({
    mean: fit.solution[0] ?? 0,
    meanDoubt: mixBound(fit, [1], doubts),
    first: wave(1),
    second: wave(2),
    remainder: Math.max(...fit.residuals.map(Math.abs)),
    residuals: fit.residuals,
  });
}

/** Amplitude and high place of the wave whose cosine stands in `column`. */
function waveOf(fit: LinearFit, column: number, order: number, doubts: readonly number[]): Wave {
  const [real = 0, imaginary = 0] = fit.solution.slice(column, column + 2);
  const high = turned((atan2(imaginary, real) * 180) / Math.PI) / order;
  // The error of the pair (a, b) is a vector; its farthest reach is looked for all round, every 5 degrees, and 0.4 % more
  // covers what lies between.
  let doubt = 0;
  for (let direction = 0; direction < 180; direction += 5) {
    const t = (direction * Math.PI) / 180;
    const mix = [...new Array<number>(column).fill(0), cos(t), sin(t)];
    doubt = Math.max(doubt, mixBound(fit, mix, doubts));
  }
  return { amplitude: Math.hypot(real, imaginary), doubt: doubt * 1.004, high };
}
