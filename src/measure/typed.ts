/** From what was typed at a prompt or behind a flag to readings, with a sentence for every slip. */
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { parseQuantity } from '../units/quantity.ts';
import { fromReadings, givenOnce, type Instrument, instrumentDoubt, type Measured, oddReading } from './measured.ts';
import { mm, tidy } from './words.ts';

/** What holds for everything typed at once: the unit of a bare number, and the instrument. */
export interface TypedBy {
  readonly units: 'mm' | 'in';
  readonly instrument: Instrument;
}

export const instruments = Object.keys(instrumentDoubt) as Instrument[];

/** One length in mm; `what` names it in the sentence. */
export function typedLength(text: string, what: string, { units }: Pick<TypedBy, 'units'>): Lookup<number> {
  const read = parseQuantity(text, 'length', units);
  return read.ok ? found(read.value) : missing(`${what}: ${read.why}`);
}

/** Lengths parted by commas, in mm. */
export function typedLengths(text: string, what: string, by: Pick<TypedBy, 'units'>): Lookup<number[]> {
  const values: number[] = [];
  for (const piece of pieces(text)) {
    const read = typedLength(piece, what, by);
    if (!read.ok) return read;
    values.push(read.value);
  }
  return values.length === 0 ? missing(`${what}: there is no reading here.`) : found(values);
}

/** Angles parted by commas, in degrees. */
export function typedAngles(text: string, what: string): Lookup<number[]> {
  const values: number[] = [];
  for (const piece of pieces(text)) {
    const read = parseQuantity(piece, 'angle');
    if (!read.ok) return missing(`${what}: ${read.why}`);
    values.push(read.value);
  }
  return found(values);
}

/** One or more positive readings of one size, joined. Readings that disagree more than the instrument explains are refused. */
export function typedSize(text: string, what: string, by: TypedBy): Lookup<Measured> {
  return andThen(typedLengths(text, what, by), (readings): Lookup<Measured> => {
    const [first = 0] = readings;
    const low = readings.find((reading) => reading <= 0);
    if (low !== undefined) return missing(`${what}: a size is above 0; got ${tidy(low)}.`);
    if (readings.length === 1) {
      if (by.instrument === 'caliper') return found(givenOnce(first));
      return found({
        value: first,
        doubt: instrumentDoubt[by.instrument],
        basis: by.instrument === 'catalogue' ? 'catalogue' : 'stated',
      });
    }
    const odd = oddReading(readings, by.instrument);
    if (odd === null) return found(fromReadings(readings, by.instrument));
    const range = Math.max(...readings) - Math.min(...readings);
    // "101,2" is two readings here, 101 and 2: far apart, and the second shorter than four digits.
    const comma = readings.length === 2 && range > first / 2 ? ' A comma parts readings; a decimal takes a point.' : '';
    return missing(
      `${what}: these readings spread over ${mm(range)}, more than a ${by.instrument} can explain; ${mm(readings[odd] ?? 0)} stands apart. Measure again.${comma}`,
    );
  });
}

/** A whole number from `least` to `most`. */
export function typedCount(text: string, what: string, least: number, most: number): Lookup<number> {
  const value = Number(text.trim());
  return text.trim() !== '' && Number.isInteger(value) && value >= least && value <= most
    ? found(value)
    : missing(`${what}: a whole number from ${least} to ${most} is wanted; got "${text.trim().slice(0, 20)}".`);
}

/** Read when there is something to read. */
export function optional<T>(text: string | undefined, read: (text: string) => Lookup<T>): Lookup<T | undefined> {
  return text === undefined || text.trim() === '' ? found(undefined) : read(text);
}

/** What stands between commas or semicolons, without the empty ones. */
export function pieces(text: string): string[] {
  return text
    .split(/[,;]/)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
}
