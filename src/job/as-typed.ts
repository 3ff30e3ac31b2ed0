/**
 * How a measured size was typed: kept beside the value, not in it, so that a job's mark and its sums know of sizes only. Papers for the bench
 * show a reading as it stands in the notebook.
 */
import { type Document, isAlias, isScalar, isSeq, isMap as isYamlMap, type Pair } from 'yaml';
import { isMap } from './field.ts';
import type { Instrument, Measured } from './measured.ts';
import { keyName } from './yaml-key.ts';

/** The words of a reading, and the instrument where one was named. */
export interface AsTyped {
  readonly words: string;
  readonly instrument: Instrument | null;
}

const known = new WeakMap<Measured, AsTyped>();

/** More readings than these are told by how many they are, and by the least and the greatest. */
const mostReadings = 6;

/** A plain number as it is written, digits and decimals; null for a size in words or with a unit. */
const plainly = (typed: unknown): string | null => (/^\d+(\.\d+)?$/.test(String(typed)) ? String(typed) : null);

const decimalsOf = (written: string): number => written.split('.')[1]?.length ?? 0;

/** A list of readings; plain numbers get the decimals of the finest of them, as they were written. */
function listWords(typed: readonly unknown[]): string {
  const written = typed.map(plainly);
  const decimals = Math.max(0, ...written.map((one) => (one === null ? 0 : decimalsOf(one))));
  const words = typed.map((one, i) => (written[i] == null ? String(one).trim() : Number(one).toFixed(decimals)));
  if (words.length <= mostReadings) return words.join(', ');
  const numbers = written.flatMap((one) => (one === null ? [] : [Number(one)]));
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

/** The text of each number in place of the number, as long as it means the same: 62.00 is 62 once it was read. */
function written(data: unknown, node: unknown, document: Document): unknown {
  const own = isAlias(node) ? node.resolve(document) : node;
  if (typeof data === 'number') {
    const source = isScalar(own) ? own.source : undefined;
    return source !== undefined && Number(source) === data ? source : data;
  }
  if (Array.isArray(data)) return data.map((one, i) => written(one, isSeq(own) ? own.items[i] : null, document));
  if (!isMap(data)) return data;
  return Object.fromEntries(Object.entries(data).map(([key, one]) => [key, written(one, nodeAt(own, key), document)]));
}

/** The value of a key in a section of the file; null where there is none. */
const nodeAt = (node: unknown, key: string): unknown =>
  isYamlMap(node) ? ((node.items as Pair[]).find((pair) => keyName(pair.key) === key)?.value ?? null) : null;

/**
 * Keeps every measured size of a job as its digits stand in the file, with the decimals that a number loses when it is read.
 * @param job what was read: sizes that rememberTyped knows are looked for at every depth
 * @param data the plain data it was read from, and `node` the same in the file's document
 */
export function keepDigits(job: unknown, data: unknown, node: unknown, document: Document): void {
  if (typeof job !== 'object' || job === null) return;
  const typed = known.get(job as Measured);
  if (typed) {
    known.set(job as Measured, { ...typed, words: wordsOf(written(data, node, document)) });
    return;
  }
  if (!isMap(data) || !isMap(job)) return;
  const own = isAlias(node) ? node.resolve(document) : node;
  for (const [key, value] of Object.entries(job)) keepDigits(value, data[key], nodeAt(own, key), document);
}

/** How a size was typed; null for one that nobody typed, such as a pattern's or a worked-out one. */
export const asTyped = (measured: Measured): AsTyped | null => known.get(measured) ?? null;
