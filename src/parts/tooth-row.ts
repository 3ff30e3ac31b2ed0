/**
 * The teeth of one turn, in order, and the mark of a position among them. A mark stands just before tooth 1, so that tooth 1 follows it:
 * neighbouring teeth left out, neighbouring valleys filled (one wide tooth), or one more tooth midway in a valley. Trade terms: common
 * practice. Places are told in pitches from tooth 1, counter-clockwise: whole and half numbers, so that sums of them are exact.
 */

/** Equal places round a wheel, and how the mark differs from them. At most one of the three is more than 0. */
export interface ToothPlaces {
  /** Equal places, 3 or more. */
  readonly teeth: number;
  /** Neighbouring teeth left out. */
  readonly missing: number;
  /** Neighbouring valleys that are filled: one tooth is that many places longer. Left out: none. */
  readonly wide?: number | undefined;
  /** 1: one more tooth midway in the valley before tooth 1. Left out: none. */
  readonly extra?: number | undefined;
}

/** One pulse: the middle of its first and of its last tooth place, pitches from tooth 1. Alike for a plain tooth. */
export interface ToothRun {
  readonly from: number;
  readonly to: number;
}

/** What marks the position. */
export interface PositionMark {
  readonly kind: 'missing' | 'wide' | 'extra';
  /** Teeth left out, valleys filled, or 1. */
  readonly count: number;
  /** How far before tooth 1 its middle stands, pitches. */
  readonly before: number;
}

/** Teeth that pass in one turn: as many pulses as a sensor makes. */
export const pulseCount = ({ teeth, missing, wide = 0, extra = 0 }: ToothPlaces): number =>
  teeth - missing - wide + extra;

/** The mark; null where all teeth are alike. */
export function markOf({ missing, wide = 0, extra = 0 }: Omit<ToothPlaces, 'teeth'>): PositionMark | null {
  if (missing > 0) return { kind: 'missing', count: missing, before: (missing + 1) / 2 };
  if (wide > 0) return { kind: 'wide', count: wide, before: 1 + wide / 2 };
  return extra > 0 ? { kind: 'extra', count: 1, before: 0.5 } : null;
}

/** All pulses of a turn in order, tooth 1 first. Valid for places without a fault. */
export function toothRow(places: ToothPlaces): ToothRun[] {
  const { teeth, wide = 0, extra = 0 } = places;
  const count = pulseCount(places);
  return Array.from({ length: count }, (_, i) => {
    if (i < count - 1 || (wide === 0 && extra === 0)) return { from: i, to: i };
    return wide > 0 ? { from: teeth - 1 - wide, to: teeth - 1 } : { from: teeth - 0.5, to: teeth - 0.5 };
  });
}

/** From the end of each pulse to the start of the next one, pitches: 1 but at the mark. The last one leads to tooth 1. */
export function valleySpans(places: ToothPlaces): number[] {
  const row = toothRow(places);
  return row.map(({ to }, i) => (row[i + 1]?.from ?? places.teeth) - to);
}

/** The least of `valleySpans`: half a pitch beside an extra tooth, else 1. */
export const leastSpan = ({ extra = 0 }: Pick<ToothPlaces, 'extra'>): number => (extra > 0 ? 0.5 : 1);

/** Places that a turn would have if all stood as close as the closest two: what sets the greatest frequency. */
export const closestPlaces = (places: Pick<ToothPlaces, 'teeth' | 'extra'>): number => places.teeth / leastSpan(places);

/** The pulse whose tooth, or the valley after it, lies at a place, pitches from tooth 1 in 0 to `teeth`; counted from 0. */
export function pulseAt(places: ToothPlaces, at: number): number {
  const last = pulseCount(places) - 1;
  const { wide = 0, extra = 0, teeth } = places;
  const isLast = wide > 0 ? at >= teeth - 1 - wide : extra > 0 && at >= teeth - 0.5;
  if (isLast) return last;
  return Math.min(extra > 0 ? last - 1 : last, Math.floor(at));
}
