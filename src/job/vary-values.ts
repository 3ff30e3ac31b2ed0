/**
 * The values that one field takes in a sweep: "14..22/0.5" counts from 14 to 22 by halves, "48,60,72" is a list, and both may stand
 * together. Units may be written as in a job. Nothing is laid out: a value is worked out when it is asked for.
 */
import { fieldValue } from './edit.ts';
import { printable } from './errors.ts';

/** One value: as data, and as it would be typed into the job. */
export interface VariedValue {
  readonly data: unknown;
  readonly typed: string;
}

/** The values of one field, counted from 0. */
export interface VariedValues {
  readonly count: number;
  /** @param i whole number from 0 up to `count` less one */
  at(i: number): VariedValue;
}

/** A mistake in what was typed: where it stands, counted from 0, and a sentence. */
export interface VaryFault {
  readonly offset: number;
  readonly why: string;
}

export type ValuesRead =
  | { readonly ok: true; readonly values: VariedValues }
  | { readonly ok: false; readonly fault: VaryFault };

const refuse = (offset: number, why: string): { readonly ok: false; readonly fault: VaryFault } => ({
  ok: false,
  fault: { offset, why },
});

const number = String.raw`[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?`;
const unit = String.raw`[^\d\s.,/+-][^,/]*?`;
const rangePattern = new RegExp(
  String.raw`^(${number})\s*(${unit})?\s*\.\.\s*(${number})\s*(${unit})?\s*(?:/\s*([^/]*?)\s*)?$`,
);
const stepPattern = new RegExp(String.raw`^(${number})\s*(${unit})?$`);

/** A step may miss the end by this share of itself and still reach it: 0.1 is no binary number. */
const reach = 1e-6;

/** No more values of one range than this. */
const mostOfRange = 10_000_000;

/** Without the noise of the sum: 14 + 3 x 0.1 is 14.3. */
const clean = (value: number): number => Number(value.toPrecision(12)) + 0;

function range(item: string, offset: number): ValuesRead {
  const match = rangePattern.exec(item);
  if (!match)
    return refuse(
      offset,
      `"${printable(item, 40)}" is not a range; write from..to/step, such as 14..22/0.5 or 10 mm..12 mm/1 mm.`,
    );
  const [, from = '', fromUnit, to = '', toUnit, step] = match;
  if (step === undefined)
    return refuse(
      offset + item.length,
      `The range ${printable(item, 40)} has no step; write ${printable(item, 40)}/1 to go by ones.`,
    );
  const by = stepPattern.exec(step);
  const stepAt = offset + item.indexOf('/') + 1;
  if (!by)
    return refuse(
      stepAt,
      `"${printable(step, 40)}" is not a step; write a number above 0, such as ${printable(item.slice(0, item.indexOf('/')), 40)}/0.5.`,
    );
  const units = [...new Set([fromUnit, toUnit, by[2]].filter((one) => one !== undefined).map((one) => one.trim()))];
  if (units.length > 1)
    return refuse(
      offset,
      `The range mixes ${units.map((one) => printable(one, 12)).join(' and ')}; write it in one unit.`,
    );
  const [first, last, size] = [Number(from), Number(to), Number(by[1])];
  if (size === 0) return refuse(stepAt, 'The step is 0: the range would never end. Write a number above 0.');
  if (size < 0) return refuse(stepAt, `The step is ${size}; write it above 0.`);
  if (last < first)
    return refuse(offset, `The range ${from}..${to} is empty: it ends below its start. Write ${to}..${from}.`);
  const count = Math.floor((last - first) / size + reach) + 1;
  if (!(count <= mostOfRange))
    return refuse(
      stepAt,
      `The range has ${count.toPrecision(3)} values; at most ${mostOfRange} are swept. Take a larger step.`,
    );
  const ending = units[0] === undefined ? '' : ` ${units[0]}`;
  const at = (i: number): VariedValue => {
    const value = clean(first + i * size);
    return ending === ''
      ? { data: value, typed: String(value) }
      : { data: `${value}${ending}`, typed: `${value}${ending}` };
  };
  return { ok: true, values: { count, at } };
}

/** Pieces between commas that stand outside brackets, braces and quotes, with where each starts. */
function pieces(text: string): { readonly text: string; readonly offset: number }[] {
  const found: { text: string; offset: number }[] = [];
  let [depth, quote, start] = [0, '', 0];
  const close = (end: number) => {
    const piece = text.slice(start, end);
    found.push({ text: piece.trim(), offset: start + (piece.length - piece.trimStart().length) });
    start = end + 1;
  };
  for (let i = 0; i < text.length; i++) {
    const sign = text[i] as string;
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if ((sign === '"' || sign === "'") && text.slice(start, i).trim() === '') quote = sign;
    else if ('[{'.includes(sign)) depth++;
    else if (']}'.includes(sign)) depth--;
    else if (sign === ',' && depth === 0) close(i);
  }
  close(text.length);
  return found;
}

/** The values of a list of pieces, one after the other. */
function joined(parts: readonly VariedValues[]): VariedValues {
  const [only] = parts;
  if (only && parts.length === 1) return only;
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  return {
    count,
    at: (i) => {
      let left = i;
      for (const part of parts) {
        if (left < part.count) return part.at(left);
        left -= part.count;
      }
      throw new RangeError(`value ${i} of ${count}`);
    },
  };
}

/**
 * Read the values of one field.
 * @param text what stands after the equals sign: ranges and values, by comma
 * @returns the values in the order they were typed, or the first mistake
 */
export function readValues(text: string): ValuesRead {
  if (text.trim() === '')
    return refuse(0, 'There are no values; write a range, such as 14..22/0.5, or a list, such as 48,60,72.');
  const parts: VariedValues[] = [];
  for (const { text: item, offset } of pieces(text)) {
    if (item === '') return refuse(offset, 'There is nothing between two commas; write a value or take a comma away.');
    if (/^[+-]?[\d.]/.test(item) && item.includes('..')) {
      const read = range(item, offset);
      if (!read.ok) return read;
      parts.push(read.values);
      continue;
    }
    const read = fieldValue(item);
    if (!read.ok) return refuse(offset, read.why);
    // A number past all numbers, or none, is no data that a file could hold: it stays as it was typed, and no key takes it.
    const isNone = typeof read.data === 'number' && !Number.isFinite(read.data);
    parts.push({ count: 1, at: () => ({ data: isNone ? read.text : read.data, typed: read.text }) });
  }
  return { ok: true, values: joined(parts) };
}
