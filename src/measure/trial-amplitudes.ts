/**
 * Balancing in one plane without phase: how strongly the shaft shook as found, and with a weight in three places or more.
 *
 * The reading is k |U + W|: U the unbalance as a weight on the shaft, W the weight added, k the sensitivity. Squared, it is linear:
 * r^2 = k^2 |U|^2 + k^2 |W|^2 + 2 k^2 U.W, so three places and the first run settle it in closed form; that is the circle drawing of
 * the four-run method. Four readings for three unknowns leave one over: the readings themselves are then fitted (Gauss-Newton, each
 * by its doubt), and what does not fit shows runs that contradict each other.
 * Source: the four-run method of maintenance handbooks; the algebra is plain geometry.
 */
import { type Arrow, noArrow, plus, scaled, sizeOf } from '../formulas/arrows.ts';
import { asin } from '../units/trig.ts';
import { leastSquares, sum } from './least-squares.ts';

export interface AmplitudeRun {
  /** Weight added to the shaft, g at its angle; no size for the run as found. */
  readonly weight: Arrow;
  /** Vibration, any unit, >= 0. */
  readonly amplitude: number;
  /** Half-width (two standard deviations), same unit, > 0. */
  readonly doubt: number;
}

export interface AmplitudeFit {
  /** The whole weight to be on the shaft, g; trial weights taken off. */
  readonly correction: Arrow;
  /** Half-width of its mass, g, and of its angle, degrees (180: any). */
  readonly doubt: { readonly mass: number; readonly angle: number };
  /** Reading for one gram. */
  readonly sensitivity: number;
  /** For each run: how far the fit lies from the reading, in units of that reading's doubt, with its sign. */
  readonly misfits: readonly number[];
}

/**
 * @param runs the run as found and three more with different weights, or more runs
 * @returns null when the weights stand in too few places, or when the weighted runs shook no more than the first on the whole
 */
export function correctionWithoutPhase(runs: readonly AmplitudeRun[]): AmplitudeFit | null {
  // In units of the heaviest weight and the largest reading all columns are of one size.
  const unit = Math.max(...runs.map(({ weight }) => sizeOf(weight)));
  const most = Math.max(...runs.map(({ amplitude }) => amplitude));
  if (!(unit > 0 && most > 0)) return null;
  const places = runs.map(({ weight }) => scaled(weight, 1 / unit));
  const readings = runs.map(({ amplitude }) => amplitude / most);
  const shares = runs.map(({ doubt }) => (most / doubt) ** 2);
  const closed = leastSquares(
    places.map((w) => [1, sizeOf(w) ** 2, 2 * w.x, 2 * w.y]),
    readings.map((r) => r * r),
  );
  if (closed === null) return null;
  const [, square = 0, x = 0, y = 0] = closed.solution;
  if (!(square > 0)) return null;
  let guess: Guess = { unbalance: scaled({ x, y }, 1 / square), sensitivity: Math.sqrt(square) };
  let cost = costOf(guess, places, readings, shares);
  for (let turn = 0; turn < 60; turn++) {
    const step = leastSquares(slopes(guess, places), differences(guess, places, readings), shares)?.solution;
    if (step === undefined) return null;
    let better: Guess | null = null;
    for (let factor = 1; factor > 1e-6 && better === null; factor /= 2) {
      const next = moved(guess, step, factor);
      const nextCost = costOf(next, places, readings, shares);
      if (next.sensitivity > 0 && nextCost < cost) {
        better = next;
        cost = nextCost;
      }
    }
    if (better === null) break;
    guess = better;
  }
  const fit = leastSquares(slopes(guess, places), differences(guess, places, readings), shares);
  if (fit === null) return null;
  const size = sizeOf(guess.unbalance);
  const along = size > 0 ? scaled(guess.unbalance, 1 / size) : { x: 1, y: 0 };
  // Each reading moves the answer by its gain; independent readings add as squares.
  const spread = (mix: Arrow) =>
    Math.sqrt(
      sum(
        runs.map(({ doubt }, n) => {
          const gain = mix.x * (fit.gains[0]?.[n] ?? 0) + mix.y * (fit.gains[1]?.[n] ?? 0);
          return ((gain * doubt) / most) ** 2;
        }),
      ),
    );
  const across = spread({ x: -along.y, y: along.x });
  return {
    correction: scaled(guess.unbalance, -unit),
    doubt: {
      mass: spread(along) * unit,
      angle: across >= size ? 180 : (asin(across / size) * 180) / Math.PI,
    },
    sensitivity: (guess.sensitivity * most) / unit,
    misfits: differences(guess, places, readings).map((off, n) => (off * most) / (runs[n]?.doubt ?? 1)),
  };
}

interface Guess {
  readonly unbalance: Arrow;
  readonly sensitivity: number;
}

function readingOf({ unbalance, sensitivity }: Guess, place: Arrow): number {
  return sensitivity * sizeOf(plus(unbalance, place));
}

function differences(guess: Guess, places: readonly Arrow[], readings: readonly number[]): number[] {
  return places.map((place, n) => (readings[n] ?? 0) - readingOf(guess, place));
}

function costOf(guess: Guess, places: readonly Arrow[], readings: readonly number[], shares: readonly number[]) {
  return sum(differences(guess, places, readings).map((off, n) => off * off * (shares[n] ?? 0)));
}

/** How each reading changes with the unbalance (x, y) and the sensitivity. */
function slopes({ unbalance, sensitivity }: Guess, places: readonly Arrow[]): number[][] {
  return places.map((place) => {
    const together = plus(unbalance, place);
    const size = sizeOf(together);
    const way = size > 0 ? scaled(together, sensitivity / size) : noArrow;
    return [way.x, way.y, size];
  });
}

function moved({ unbalance, sensitivity }: Guess, step: readonly number[], factor: number): Guess {
  const [x = 0, y = 0, more = 0] = step;
  return { unbalance: plus(unbalance, scaled({ x, y }, factor)), sensitivity: sensitivity + more * factor };
}
