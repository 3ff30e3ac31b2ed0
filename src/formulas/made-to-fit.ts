/**
 * A register made to one measured mate. mm.
 *
 * Valid for: any diameter, any tolerance above zero. The mate is anywhere within its limits, and so is the new part within its
 * own: whatever the two turn out to be, the clearance lies within the range promised. Left out: out-of-round beyond the limits,
 * heat (see thermal-fit), surface roughness, and the squeeze of an interference. Source: definitions of ISO 286-1.
 */
import { clearanceRange, type Limits } from './fit.ts';

/** A size read on a part: the true size lies within value plus or minus doubt, mm. */
export interface SizeWithDoubt {
  readonly value: number;
  readonly doubt: number;
}

/** Limits of a measured mate: the doubt becomes its tolerance. */
export function limitsOfMeasured({ value, doubt }: SizeWithDoubt): Limits {
  return { lower: value - doubt, upper: value + doubt };
}

/** Limits of a mate made to a tolerance class: nominal size and deviations, mm. */
export function limitsOfClass(nominal: number, deviations: Limits): Limits {
  return { lower: nominal + deviations.lower, upper: nominal + deviations.upper };
}

/** What is promised of the fit: the parts always clear by this much, or never squeeze by more than this. mm, diametral, >= 0. */
export type WantedFit = { readonly leastClearance: number } | { readonly greatestInterference: number };

/** What is made, the mate it must fit, and how closely it can be made. */
export interface FitRequest {
  readonly make: 'recess' | 'spigot';
  readonly mate: Limits;
  readonly wanted: WantedFit;
  /** Tolerance of the making, mm, > 0: upper less lower limit. */
  readonly tolerance: number;
  /** Limits are rounded to this, mm, to the side that keeps the promise. Left out: a micrometre. */
  readonly step?: number | undefined;
}

/** Limits of the new part, and the clearance that follows (negative: interference). */
export interface MadeToFit {
  readonly limits: Limits;
  readonly clearance: { readonly least: number; readonly greatest: number };
}

/**
 * Limits of a recess or spigot made to its mate.
 * A recess starts at the mate's greatest size plus the clearance and is open upwards; a spigot ends at the mate's least size less
 * the clearance and is open downwards. The greatest clearance is the least, plus the tolerance, plus the spread of the mate.
 */
export function makeToFit({ make, mate, wanted, tolerance, step = 0.001 }: FitRequest): MadeToFit {
  const least = 'leastClearance' in wanted ? wanted.leastClearance : -wanted.greatestInterference;
  const limits =
    make === 'recess'
      ? spanFrom(roundUp(mate.upper + least, step), tolerance, step)
      : spanTo(roundDown(mate.lower - least, step), tolerance, step);
  return { limits, clearance: make === 'recess' ? clearanceRange(limits, mate) : clearanceRange(mate, limits) };
}

/**
 * Tolerance left for the making when the greatest clearance is bounded as well, mm; zero or less: it cannot be done to this mate,
 * measure it better. Both clearances mm, negative for interference.
 */
export function toleranceLeft(mate: Limits, leastClearance: number, greatestClearance: number): number {
  return greatestClearance - leastClearance - (mate.upper - mate.lower);
}

function spanFrom(lower: number, tolerance: number, step: number): Limits {
  // Rounding must not shut a tolerance that is finer than the step.
  return { lower, upper: Math.max(lower, roundDown(lower + tolerance, step)) };
}

function spanTo(upper: number, tolerance: number, step: number): Limits {
  return { lower: Math.min(upper, roundUp(upper - tolerance, step)), upper };
}

// Binary noise of a sum must not push a size that already lies on a step to the next one.
const noise = 1e-6;

function roundUp(size: number, step: number): number {
  return tidy(Math.ceil(size / step - noise) * step);
}

function roundDown(size: number, step: number): number {
  return tidy(Math.floor(size / step + noise) * step);
}

function tidy(size: number): number {
  return Number(size.toFixed(9));
}

/** How a shop reaches a tolerance, in words. */
export interface HowMade {
  /** The coarsest of the grades 5 to 14 whose tolerance fits. Null: finer than grade 5. */
  readonly grade: number | null;
  readonly method: string;
  /** What it is measured with while it is made. */
  readonly gauge: string;
  readonly source: string;
}

interface Way {
  readonly from: number;
  readonly hole: string;
  readonly holeGauge: string;
  readonly shaft: string;
  readonly shaftGauge: string;
}

// Coarsest first: the first whose grade the tolerance allows is the cheapest way.
const ways: readonly Way[] = [
  { from: 11, hole: 'bored or milled', holeGauge: 'caliper', shaft: 'turned', shaftGauge: 'caliper' },
  { from: 9, hole: 'bored', holeGauge: 'inside micrometer', shaft: 'turned', shaftGauge: 'micrometer' },
  {
    from: 8,
    hole: 'bored, with a light last cut',
    holeGauge: 'bore gauge, or the mate itself',
    shaft: 'turned, with a light last cut',
    shaftGauge: 'micrometer',
  },
  {
    from: 7,
    hole: 'bored with care: last cuts alike, measured cold',
    holeGauge: 'bore gauge set with a micrometer, or a plug gauge',
    shaft: 'turned with care: last cuts alike, measured cold; or ground',
    shaftGauge: 'micrometer, checked on a block',
  },
  {
    from: 6,
    hole: 'bored a little under size and honed, or ground',
    holeGauge: 'bore gauge set with a ring',
    shaft: 'turned a little over size and polished down to it, or ground',
    shaftGauge: 'micrometer reading to 0.001',
  },
  {
    from: 5,
    hole: 'ground or honed',
    holeGauge: 'bore gauge set with a ring',
    shaft: 'ground',
    shaftGauge: 'micrometer reading to 0.001',
  },
];

/** The largest hole that shops ream, mm. Common practice. */
export const largestReamer = 32;

/**
 * How a shop reaches a tolerance: words by IT grade. Common practice: reaming IT7, boring and turning IT7 to IT11, polishing
 * and honing IT6, grinding IT5 to IT6; published process charts give wider bands.
 * @param kind hole (recess, bore, dowel hole) or shaft (spigot, dowel)
 * @param tolerance upper less lower limit, mm, > 0
 * @param toleranceOf standard tolerance (mm) of this size by grade, as a lookup in ISO 286-1 gives it
 * @param reamed diameter of a standard H7 hole, mm, when the limits are those of H7 on it
 */
export function howMade(
  kind: 'hole' | 'shaft',
  tolerance: number,
  toleranceOf: (grade: number) => number,
  reamed?: number,
): HowMade {
  const grade = coarsestGradeWithin(tolerance, toleranceOf);
  const source = 'common practice';
  if (kind === 'hole' && grade !== null && grade >= 7 && isReamable(reamed)) {
    return {
      grade,
      method: 'drilled 0.2 to 0.3 under size and reamed H7',
      gauge: 'plug gauge, or the dowel itself',
      source,
    };
  }
  const way = grade === null ? undefined : ways.find(({ from }) => grade >= from);
  if (way === undefined) {
    return { grade, method: 'finer than a small shop grinds: ask for more clearance', gauge: 'none', source };
  }
  return kind === 'hole'
    ? { grade, method: way.hole, gauge: way.holeGauge, source }
    : { grade, method: way.shaft, gauge: way.shaftGauge, source };
}

/** The coarsest grade from 5 to 14 whose standard tolerance is no wider than `tolerance`, or null. */
export function coarsestGradeWithin(tolerance: number, toleranceOf: (grade: number) => number): number | null {
  for (let grade = 14; grade >= 5; grade--) {
    if (toleranceOf(grade) <= tolerance + 1e-9) return grade;
  }
  return null;
}

/** Reamers are kept in whole millimetres. */
function isReamable(diameter: number | undefined): boolean {
  return diameter !== undefined && diameter <= largestReamer && Number.isInteger(diameter);
}
