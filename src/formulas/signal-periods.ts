/** What a controller makes of a sensor's edges: the time from tooth to tooth, how uneven it is, and how long the output stays on. */
import { hypot } from '../units/hypot.ts';
import { cos, sin } from '../units/trig.ts';
import type { Edge } from './switching.ts';

/** One tooth as the controller times it, at an even speed of the shaft. Angles stand for times. */
export interface ToothReading {
  /** Turn of the shaft at which it is timed, degrees. */
  readonly turn: number;
  /** Turn until the next one, degrees. */
  readonly period: number;
  /** Period against the mean one, as a share: 0.01 is 1 % too long. Null at a mark: missing teeth, a wide or an extra one. */
  readonly error: number | null;
  /** What a speed worked out from this one period is wrong by, as a share; null at a mark. */
  readonly speedError: number | null;
  /** Share of the period during which the output is on. */
  readonly duty: number;
}

/** A turn as the controller times it. */
export interface Readings {
  readonly teeth: readonly ToothReading[];
  /** Mean of the ordinary periods, degrees. */
  readonly mean: number;
  /** Greatest error of an ordinary period, as a share, and the root mean square of all of them. */
  readonly peak: number;
  readonly rms: number;
  /** Amplitude of the part of the errors that comes once a turn, as a share: running out. */
  readonly onceATurn: number;
  /** Periods at the mark over the mean one, in order of turn; empty where every period is an ordinary one. */
  readonly markRatios: readonly number[];
  /** Least, mean and greatest share of an ordinary period during which the output is on. */
  readonly duty: { readonly least: number; readonly mean: number; readonly most: number };
}

/** A period this much longer than the usual one is a gap. */
const gapFrom = 1.5;

/**
 * Readings of one turn, by its rising or its falling edges. Null where there are fewer than two of either.
 * @param edges of one turn, in order, rising and falling in turn
 * @param timed which way of edge is timed
 * @param asDrawn periods of a wheel with a wide or an extra tooth as drawn, places, in order of turn; left out where all teeth are alike,
 * or some are missing: a gap tells itself
 */
export function readingsOf(
  edges: readonly Edge[],
  timed: 'rises' | 'falls',
  asDrawn: readonly number[] = [],
): Readings | null {
  const starts = edges.filter(({ rises }) => rises === (timed === 'rises'));
  const others = edges.filter(({ rises }) => rises !== (timed === 'rises'));
  if (starts.length < 2 || others.length < 2) return null;
  const ahead = (from: number, to: number) => {
    const way = to - from;
    return way > 1e-12 ? way : way + 2 * Math.PI;
  };
  let next = 0;
  const raw = starts.map(({ turn }, i) => {
    const period = ahead(turn, (starts[(i + 1) % starts.length] as Edge).turn);
    while (next < others.length && (others[next] as Edge).turn <= turn) next++;
    const until = ahead(turn, (others[next % others.length] as Edge).turn);
    return { turn, period, duty: timed === 'rises' ? until / period : 1 - until / period };
  });
  const sorted = raw.map(({ period }) => period).sort((a, b) => a - b);
  const usual = sorted[Math.floor(sorted.length / 2)] as number;
  const drawn = matched(
    raw.map(({ period }) => period),
    asDrawn,
  );
  const isPlain = (i: number) => (drawn === null ? (raw[i]?.period ?? 0) < gapFrom * usual : drawn[i] === 1);
  const plain = raw.filter((_, i) => isPlain(i));
  const mean = plain.reduce((sum, { period }) => sum + period, 0) / plain.length;
  const errors = plain.map(({ turn, period }) => ({ turn: turn + period / 2, error: period / mean - 1 }));
  const duties = plain.map(({ duty }) => duty);
  const degrees = 180 / Math.PI;
  return {
    teeth: raw.map(({ turn, period, duty }, i) => {
      const counts = isPlain(i);
      return {
        turn: turn * degrees,
        period: period * degrees,
        error: counts ? period / mean - 1 : null,
        speedError: counts ? mean / period - 1 : null,
        duty,
      };
    }),
    mean: mean * degrees,
    peak: errors.reduce((most, { error }) => Math.max(most, Math.abs(error)), 0),
    rms: Math.sqrt(errors.reduce((sum, { error }) => sum + error ** 2, 0) / errors.length),
    onceATurn: firstHarmonic(errors),
    markRatios: raw.flatMap(({ period }, i) => (isPlain(i) ? [] : [period / mean])),
    duty: {
      least: Math.min(...duties),
      mean: duties.reduce((sum, duty) => sum + duty, 0) / duties.length,
      most: Math.max(...duties),
    },
  };
}

const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

/** The periods as drawn, turned round so that they fit the ones read best; null where their numbers differ. */
function matched(read: readonly number[], drawn: readonly number[]): number[] | null {
  const count = drawn.length;
  if (count === 0 || count !== read.length) return null;
  // Both fill a turn, whatever they are told in.
  const scale = sumOf(drawn) / sumOf(read);
  let [best, least] = [0, Infinity];
  for (let first = 0; first < count; first++) {
    const off = read.reduce(
      (sum, period, i) => sum + Math.abs(scale * period - (drawn[(i + first) % count] as number)),
      0,
    );
    if (off < least) [best, least] = [first, off];
  }
  return read.map((_, i) => drawn[(i + best) % count] as number);
}

/** Amplitude of the best fitting c cos + s sin of the turn, by least squares. */
function firstHarmonic(errors: readonly { readonly turn: number; readonly error: number }[]): number {
  let [cc, cs, ss, ce, se] = [0, 0, 0, 0, 0];
  for (const { turn, error } of errors) {
    const c = cos(turn);
    const s = sin(turn);
    cc += c * c;
    cs += c * s;
    ss += s * s;
    ce += c * error;
    se += s * error;
  }
  const det = cc * ss - cs * cs;
  return det < 1e-9 ? 0 : hypot((ss * ce - cs * se) / det, (cc * se - cs * ce) / det);
}
