/** Many chord readings of one pattern joined into one bolt circle, or the reading that contradicts the others. mm. */

import { type ChordOver, chordFactor, positionsOf, type Span, spanName } from './chord.ts';
import { sum } from './least-squares.ts';
import type { Measured } from './measured.ts';
import { mm, tidy, withDoubt } from './words.ts';

export interface ChordReading {
  readonly span: Span;
  readonly over: ChordOver;
  readonly reading: Measured;
  /** Bolts or pins the reading was taken over, when it was not the holes themselves. */
  readonly pin?: Measured | undefined;
}

/** What one span says of the bolt circle. */
export interface ChordEstimate {
  readonly positions: number;
  /** "skip one, outside and inside averaged". */
  readonly how: string;
  /** Distance between centres and its doubt. */
  readonly centres: number;
  readonly centresDoubt: number;
  readonly factor: number;
  /** Bolt circle by this span alone, and its doubt. */
  readonly circle: number;
  readonly doubt: number;
  /** This circle less the joint one. */
  readonly residual: number;
  /** Which readings it rests on, from 0. */
  readonly readings: readonly number[];
}

export type ChordSet =
  | {
      readonly ok: true;
      /** Bolt circle. Bound: it lies inside whenever every reading (and hole size) lies inside its own doubt. */
      readonly circle: Measured;
      readonly estimates: readonly ChordEstimate[];
      /** Hole (or bolt) size by half the difference of outside and inside readings; null when no pair was taken. */
      readonly hole: Measured | null;
      /** The spans disagree by more than their doubts, but no more than drilled holes scatter; the doubt covers it. */
      readonly isScattered: boolean;
    }
  /** `reading`: which reading is to blame, from 0; null when it is none or no single one. */
  | { readonly ok: false; readonly why: string; readonly reading: number | null };

type RawEstimate = Omit<ChordEstimate, 'residual'>;
type Refusal = Extract<ChordSet, { ok: false }>;

/**
 * The bolt circle of `holes` even holes from one or more chords.
 *
 * Outside and inside readings of one span are averaged, which cancels the hole exactly: ((c + D) + (c - D)) / 2 = c. A single
 * outside reading gives c = reading - D, a single inside one c = reading + D, and the doubt of D (the `hole`, or the
 * reading's own `pin`) enters. Spans are joined by least squares with weights 1 / doubt^2. The doubt told is the farthest
 * end of what all spans leave open together, and not less than the weighted mean's own. Spans that leave nothing open, not even
 * for drilled holes, contradict each other: the odd one is named, with the slip that would explain it.
 */
export function circleFromChords(holes: number, readings: readonly ChordReading[], hole: Measured | null): ChordSet {
  if (readings.length === 0) return refuse('There is no chord here; measure one.', null);
  const raw = estimatesOf(holes, readings, hole);
  if (!raw.ok) return raw;
  const joint = join(raw.estimates);
  if (joint === null) return contradiction(holes, readings, hole, raw.estimates);
  const estimates = raw.estimates.map((estimate) => ({ ...estimate, residual: estimate.circle - joint.value }));
  const [first] = readings;
  const basis =
    estimates.length > 1 || readings.some(({ reading }) => reading.basis === 'repeated')
      ? 'repeated'
      : (first?.reading.basis ?? 'given');
  return {
    ok: true,
    circle: { value: round(joint.value), doubt: round(joint.doubt), basis },
    estimates,
    hole: raw.hole,
    isScattered: joint.isScattered,
  };
}

/** Drilled holes stand off their places by so much that a chord between two of them is off by up to this, mm. Common practice. */
export const drilledScatter = 0.1;

/**
 * Weighted mean and doubt of estimates. Where their intervals have no point in common, but would have one if drilled holes were
 * off as they are, the doubt reaches to every estimate (`isScattered`). Null when not even that explains them.
 */
function join(estimates: readonly RawEstimate[]): { value: number; doubt: number; isScattered: boolean } | null {
  const ends = (slack: number) => ({
    least: Math.max(...estimates.map(({ circle, doubt, factor }) => circle - doubt - slack * factor)),
    most: Math.min(...estimates.map(({ circle, doubt, factor }) => circle + doubt + slack * factor)),
  });
  // A doubt of nothing at all (a proven size) would weigh without end.
  const weights = estimates.map(({ doubt }) => 1 / Math.max(doubt, 1e-6) ** 2);
  const total = sum(weights);
  const value = sum(estimates.map(({ circle }, i) => circle * (weights[i] ?? 0))) / total;
  const own = estimates.length > 1 ? 1 / Math.sqrt(total) : 0;
  const { least, most } = ends(0);
  if (least <= most + 1e-6) return { value, doubt: Math.max(value - least, most - value, own), isScattered: false };
  const loose = ends(drilledScatter);
  if (loose.least > loose.most) return null;
  const far = Math.max(...estimates.map(({ circle }) => Math.abs(circle - value)));
  return { value, doubt: Math.max(far, own), isScattered: true };
}

function estimatesOf(
  holes: number,
  readings: readonly ChordReading[],
  hole: Measured | null,
): { ok: true; estimates: RawEstimate[]; hole: Measured | null } | Refusal {
  const bySpan = new Map<number, number[]>();
  for (const [index, { span }] of readings.entries()) {
    const positions = positionsOf(span, holes);
    if (!positions.ok) return refuse(positions.why, index);
    bySpan.set(positions.value, [...(bySpan.get(positions.value) ?? []), index]);
  }
  const estimates: RawEstimate[] = [];
  const sizes: Measured[] = [];
  for (const [positions, indices] of [...bySpan].sort(([a], [b]) => a - b)) {
    const over = (kind: ChordOver) => indices.filter((index) => readings[index]?.over === kind);
    const add = (how: string, centres: number, centresDoubt: number, used: readonly number[]) => {
      const factor = chordFactor(holes, positions);
      estimates.push({
        positions,
        how: `${spanName(positions, holes)}, ${how}`,
        centres,
        centresDoubt,
        factor,
        circle: centres * factor,
        doubt: centresDoubt * factor,
        readings: used,
      });
    };
    for (const index of over('centres')) {
      const { value, doubt } = (readings[index] as ChordReading).reading;
      add('centre to centre', value, doubt, [index]);
    }
    const [outs, ins] = [over('outside'), over('inside')];
    for (let turn = 0; turn < Math.max(outs.length, ins.length); turn++) {
      const [o, i] = [outs[turn], ins[turn]];
      if (o !== undefined && i !== undefined) {
        const [far, near] = [(readings[o] as ChordReading).reading, (readings[i] as ChordReading).reading];
        const pair = pairFault(far, near, hole, readings[o]?.pin, o);
        if (pair !== null) return pair;
        const doubt = (far.doubt + near.doubt) / 2;
        sizes.push({ value: round((far.value - near.value) / 2), doubt: round(doubt), basis: 'repeated' });
        add('outside and inside averaged', (far.value + near.value) / 2, doubt, [o, i]);
        continue;
      }
      const index = (o ?? i) as number;
      const { over: where, reading, pin } = readings[index] as ChordReading;
      const size = pin ?? hole;
      if (size === null) {
        return refuse(
          `A reading over the ${where} of two holes needs their diameter: measure it, or measure the same holes over the ${where === 'outside' ? 'inside' : 'outside'} too, which cancels it.`,
          index,
        );
      }
      const centres = where === 'outside' ? reading.value - size.value : reading.value + size.value;
      if (where === 'outside' && reading.value <= 2 * size.value) {
        return refuse(
          `Over the outside of two holes of ${mm(size.value)} the caliper must show more than ${mm(2 * size.value)}; ${mm(reading.value)} was read. Was it taken over the inside?`,
          index,
        );
      }
      add(`over the ${where}`, centres, reading.doubt + size.doubt, [index]);
    }
  }
  return { ok: true, estimates, hole: sizes[0] ?? null };
}

/** Half the difference of an outside and an inside reading is the hole; it must be one, and the one that was stated. */
function pairFault(
  far: Measured,
  near: Measured,
  hole: Measured | null,
  pin: Measured | undefined,
  index: number,
): Refusal | null {
  if (far.value <= near.value) {
    return refuse(
      `Over the outside (${mm(far.value)}) must be more than over the inside (${mm(near.value)}) of the same holes: were they swapped?`,
      index,
    );
  }
  const size = (far.value - near.value) / 2;
  const stated = pin ?? hole;
  const doubt = (far.doubt + near.doubt) / 2;
  // A measured hole may be out of round, and bolts stand loose: a tenth more is forgiven. Common practice.
  if (stated !== null && Math.abs(size - stated.value) > doubt + stated.doubt + 0.1) {
    return refuse(
      `Outside ${tidy(far.value)} and inside ${tidy(near.value)} say that the holes are ${withDoubt(size, doubt)}, but ${mm(stated.value)} is stated: was one of them taken over other holes, or over bolts?`,
      index,
    );
  }
  return null;
}

function contradiction(
  holes: number,
  readings: readonly ChordReading[],
  hole: Measured | null,
  estimates: readonly RawEstimate[],
): Refusal {
  const told = estimates.map(({ how, circle, doubt }) => `${how}: ${withDoubt(circle, doubt)}`).join('; ');
  const without = estimates
    .map((odd, index) => ({ odd, rest: join(estimates.filter((_, other) => other !== index)) }))
    .filter((entry) => estimates.length > 2 && entry.rest !== null)
    .sort((a, b) => Math.abs(b.odd.circle - (b.rest?.value ?? 0)) - Math.abs(a.odd.circle - (a.rest?.value ?? 0)));
  const [culprit] = without;
  const blame = culprit?.odd.readings[0] ?? null;
  const slip = slipOf(holes, readings, hole, blame);
  const who =
    culprit === undefined
      ? 'Measure both again.'
      : `The odd one is ${culprit.odd.how}, ${mm(Math.abs(culprit.odd.circle - (culprit.rest?.value ?? 0)), 2)} ${culprit.odd.circle > (culprit.rest?.value ?? 0) ? 'larger' : 'smaller'} than the others say.`;
  return refuse(
    `These chords do not belong to one circle of ${holes} even holes. Bolt circle by ${told}. ${who}${slip.text}`,
    slip.reading ?? blame ?? estimates.at(-1)?.readings[0] ?? null,
  );
}

/** One reading taken for another span or over other edges would bring all together: say so. */
function slipOf(
  holes: number,
  readings: readonly ChordReading[],
  hole: Measured | null,
  blame: number | null,
): { text: string; reading: number | null } {
  const suspects = readings.map((_, index) => index).sort((a, b) => Number(b === blame) - Number(a === blame));
  for (const index of suspects) {
    const typed = readings[index] as ChordReading;
    const others: ChordReading[] = [];
    for (let span = 1; span <= Math.floor(holes / 2); span++) others.push({ ...typed, span });
    if (hole !== null || typed.pin !== undefined) {
      for (const over of ['outside', 'inside', 'centres'] as const)
        if (over !== typed.over) others.push({ ...typed, over });
    }
    for (const other of others) {
      const tried = estimatesOf(
        holes,
        readings.map((reading, at) => (at === index ? other : reading)),
        hole,
      );
      if (!tried.ok || join(tried.estimates) === null) continue;
      const same = other.over === typed.over;
      const name = same
        ? spanName(other.span as number, holes)
        : other.over === 'centres'
          ? 'centre to centre'
          : `over the ${other.over}`;
      return {
        text: ` ${mm(typed.reading.value)} would agree if it was ${same ? 'measured between holes' : 'read'} ${name}.`,
        reading: index,
      };
    }
  }
  return { text: '', reading: null };
}

function refuse(why: string, reading: number | null): Refusal {
  return { ok: false, why, reading };
}

/** Binary noise is far below any instrument. */
function round(size: number): number {
  return Number(size.toFixed(9));
}
