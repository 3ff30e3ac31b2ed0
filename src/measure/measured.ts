/** A number with how sure it is. The doubt travels with it into every finding that rests on it. */

export type MeasuredBasis = 'given' | 'repeated' | 'catalogue' | 'stated' | 'proven';

export interface Measured {
  /** mm */
  readonly value: number;
  /** Half-width: the true size is taken to lie within value - doubt to value + doubt, mm. */
  readonly doubt: number;
  /** given: one bare number. repeated: several readings. catalogue: printed. stated: doubt or instrument typed. proven: a fit ring. */
  readonly basis: MeasuredBasis;
  /** The single readings, mm, when there were several. */
  readonly readings?: readonly number[];
}

export type Instrument = 'caliper' | 'micrometer' | 'dial' | 'ruler' | 'catalogue';

/**
 * What one careful reading with each instrument is good for in a small shop, half-width, mm. Common practice: a caliper
 * good to 0.02 and a little skew; a micrometer to 0.005; a ruler to half a millimetre. A printed catalogue size is
 * rounded to 0.1 mm at worst, so half of that.
 */
export const instrumentDoubt: Readonly<Record<Instrument, number>> = {
  caliper: 0.03,
  micrometer: 0.005,
  dial: 0.01,
  ruler: 0.5,
  catalogue: 0.05,
};

/** Doubt left once a printed or turned fit ring went on: about one step between two rings, mm. Common practice. */
export const provenDoubt = 0.02;

/** Readings that spread more than this many times the instrument's doubt hold a mistake. Common practice. */
export const worstSpread = 5;

/** A catalogue or preset size as a measured value. */
export function fromCatalogue(value: number): Measured {
  return { value, doubt: instrumentDoubt.catalogue, basis: 'catalogue' };
}

/** One bare number: taken to be a caliper reading. */
export function givenOnce(value: number): Measured {
  return { value, doubt: instrumentDoubt.caliper, basis: 'given' };
}

/**
 * The readings' mean and doubt. At least one reading. Readings that agree within the instrument's doubt on both sides are of one size, and that
 * doubt is left. Readings farther apart are of a size that varies (worn, out of round): it reaches from the least of them to the greatest, each
 * with the instrument's doubt.
 */
export function fromReadings(readings: readonly number[], instrument: Instrument): Measured {
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
  const own = instrumentDoubt[instrument];
  const [least, most] = [Math.min(...readings), Math.max(...readings)];
  // Binary noise of the sums is far below any instrument: nine decimals keep every digit that was read.
  const tidy = (size: number) => Number(size.toFixed(9));
  const isOneSize = most - least <= 2 * own + 1e-9;
  return {
    value: tidy(mean),
    doubt: isOneSize ? own : tidy(Math.max(most - mean, mean - least) + own),
    basis: 'repeated',
    readings,
  };
}

/** Index of the reading farthest from the middle one when the spread is more than the instrument can explain; else null. */
export function oddReading(readings: readonly number[], instrument: Instrument): number | null {
  const spread = Math.max(...readings) - Math.min(...readings);
  if (spread <= worstSpread * instrumentDoubt[instrument] + 1e-9) return null;
  const sorted = [...readings].sort((a, b) => a - b);
  const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  const upper = sorted[Math.ceil((sorted.length - 1) / 2)] ?? 0;
  const middle = (lower + upper) / 2;
  let odd = 0;
  readings.forEach((reading, index) => {
    if (Math.abs(reading - middle) > Math.abs((readings[odd] ?? 0) - middle)) odd = index;
  });
  return odd;
}
