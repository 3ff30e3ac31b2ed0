/**
 * How a measured size was typed: kept beside the value, not in it, so that a job's mark and its sums know of sizes only. Papers for the bench
 * show a reading as it stands in the notebook.
 */
import { isMap } from './field.ts';
import type { Instrument, Measured } from './measured.ts';

/** The words of a reading, and the instrument where one was named. */
export interface AsTyped {
  readonly words: string;
  readonly instrument: Instrument | null;
}

const known = new WeakMap<Measured, AsTyped>();

/** More readings than these are told by how many they are, and by the least and the greatest. */
const mostReadings = 6;

const decimalsOf = (typed: unknown): number => String(typed).split('.')[1]?.length ?? 0;

/** A list of readings; numbers get the decimals of the finest of them, as they were written. */
function listWords(typed: readonly unknown[]): string {
  const decimals = Math.max(0, ...typed.map((one) => (typeof one === 'number' ? decimalsOf(one) : 0)));
  const words = typed.map((one) => (typeof one === 'number' ? one.toFixed(decimals) : String(one).trim()));
  if (words.length <= mostReadings) return words.join(', ');
  const numbers = typed.filter((one): one is number => typeof one === 'number');
  const span =
    numbers.length === typed.length
      ? `, ${Math.min(...numbers).toFixed(decimals)} to ${Math.max(...numbers).toFixed(decimals)}`
      : '';
  return `${words.length} readings${span}`;
}

function wordsOf(typed: unknown): string {
  if (Array.isArray(typed)) return listWords(typed);
  if (!isMap(typed)) return String(typed).replace(/\s+/g, ' ').trim();
  const { value, readings, doubt } = typed;
  return [
    ...(value === undefined ? [] : [wordsOf(value)]),
    ...(readings === undefined ? [] : [value === undefined ? wordsOf(readings) : `(${wordsOf(readings)})`]),
    ...(doubt === undefined ? [] : [`\u00b1${wordsOf(doubt)}`]),
  ].join(' ');
}

/** Keeps how a size was typed. Returns the size. */
export function rememberTyped(measured: Measured, typed: unknown, instrument: Instrument | null): Measured {
  known.set(measured, { words: wordsOf(typed), instrument });
  return measured;
}

/** How a size was typed; null for one that nobody typed, such as a pattern's or a worked-out one. */
export const asTyped = (measured: Measured): AsTyped | null => known.get(measured) ?? null;
