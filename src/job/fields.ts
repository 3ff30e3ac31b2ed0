/** The building blocks of the job schema: each block reads one typed value, says its unit and range, and speaks plainly. */
import { z } from 'zod';
import type { Dimension } from '../units/dimensions.ts';
import { dimensions } from '../units/dimensions.ts';
import { nearestWord } from '../units/near.ts';
import { parseQuantity } from '../units/quantity.ts';
import { shownValue } from './errors.ts';

/** Length unit of a bare number. */
export type JobUnits = 'mm' | 'in';

/** What one block found wrong; `path` is relative to its own key. */
export interface Fault {
  readonly path?: readonly (string | number)[];
  readonly message: string;
  readonly allowed?: string;
  readonly hint?: string;
  /** The key is wrong, not its value. */
  readonly atKey?: boolean;
}

export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] };

export function accept<T>(value: T): Answer<T> {
  return { ok: true, value };
}

export function refuse(message: string, more: Omit<Fault, 'message'> = {}): Answer<never> {
  return { ok: false, faults: [{ ...more, message }] };
}

/** A schema made of a reader and the JSON Schema words that describe it to an editor. */
export function field<T>(read: (typed: unknown) => Answer<T>, meta: Readonly<Record<string, unknown>>): z.ZodType<T, unknown> {
  return z
    .unknown()
    .transform((typed, context): T => {
      const answer = typed === undefined ? refuse('This key is missing.') : typed === null ? refuse(emptyKey) : read(typed);
      if (answer.ok) return answer.value;
      for (const { path = [], message, allowed, hint, atKey } of answer.faults) {
        context.addIssue({ code: 'custom', path: [...path], message, params: { allowed, hint, atKey } });
      }
      return z.NEVER;
    })
    .meta(meta);
}

export const emptyKey = 'This key has no value; write one, or delete the line.';

/** Range in internal units. `above` excludes its end, `least` and `most` include theirs. */
export interface Range {
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
}

/** The unit ranges are told in, and how many internal units it is worth. */
function tellingUnit(dimension: Dimension): { readonly name: string; readonly worth: number } {
  if (dimension === 'mass') return { name: ' kg', worth: 1000 };
  if (dimension === 'ratio') return { name: '', worth: 1 };
  return { name: ` ${dimensions[dimension].bareUnit}`, worth: 1 };
}

/** A range as words: "2 to 600 mm", "more than 0 mm". */
export function rangeInWords(range: Range, dimension: Dimension): string {
  const { name, worth } = tellingUnit(dimension);
  const { above, least, most } = range;
  if (above !== undefined && most !== undefined) return `more than ${above / worth} and at most ${most / worth}${name}`;
  if (above !== undefined) return `more than ${above / worth}${name}`;
  if (least !== undefined && most !== undefined) return `${least / worth} to ${most / worth}${name}`;
  if (least !== undefined) return `at least ${least / worth}${name}`;
  return most === undefined ? 'any' : `at most ${most / worth}${name}`;
}

function isInside(value: number, { above = -Infinity, least = -Infinity, most = Infinity }: Range): boolean {
  return value > above && value >= least && value <= most;
}

/** Read one quantity and hold it to its range, in internal units. */
export function readQuantity(typed: unknown, dimension: Dimension, range: Range, units: JobUnits): Answer<number> {
  const bareUnit = dimension === 'length' ? units : dimensions[dimension].bareUnit;
  const quantity = parseQuantity(typed, dimension, bareUnit);
  const words = rangeInWords(range, dimension);
  if (!quantity.ok) return refuse(quantity.why, { allowed: words });
  if (isInside(quantity.value, range)) return accept(quantity.value);
  const { name, worth } = tellingUnit(dimension);
  const converted = quantity.unit === dimensions[dimension].bareUnit ? '' : `, which is ${Number((quantity.value / worth).toPrecision(5))}${name}`;
  const got = `${typeof typed === 'number' ? typed : shownValue(typed)}${quantity.bare && typeof typed === 'number' ? ` ${quantity.unit}` : ''}`;
  const hint = unitSlip(quantity.typed, quantity.bare, dimension, range, units);
  return refuse(`Must be ${words}; got ${got.trim()}${converted}.${hint === '' ? '' : ` ${hint}`}`, hint === '' ? { allowed: words } : { allowed: words, hint });
}

/** A bare length that would be in range in the other unit was probably meant so. */
function unitSlip(typed: number, bare: boolean, dimension: Dimension, range: Range, units: JobUnits): string {
  if (!bare) return '';
  if (dimension === 'mass' && isInside(typed, range)) return `If that is grams, write ${typed} g.`;
  if (dimension !== 'length') return '';
  const other = units === 'mm' ? 'in' : 'mm';
  const value = units === 'mm' ? typed * 25.4 : typed;
  if (!isInside(value, range)) return '';
  return `If that is ${units === 'mm' ? 'inches' : 'millimetres'}, write ${typed} ${other} (a bare length in this job is in ${units}; see units).`;
}

/** JSON Schema of a quantity: a number, or text that starts like one. Ranges stay in words, for units may be typed. */
function quantityMeta(dimension: Dimension, range: Range, about: string, words: readonly string[] = []): Record<string, unknown> {
  const row = dimensions[dimension];
  const unitNames = row.units.map((unit) => unit.name).filter((name) => name !== '1');
  const bare = dimension === 'length' ? "the job's units (mm or in)" : row.bareUnit === '1' ? 'a plain number' : row.bareUnit;
  const description = `${about} A bare number is in ${bare}; units that may be written: ${unitNames.join(', ')}. Range: ${rangeInWords(range, dimension)}.`;
  const positive = (range.above ?? -1) >= 0 ? { exclusiveMinimum: 0 } : (range.least ?? -1) >= 0 ? { minimum: 0 } : {};
  const text = { type: 'string', pattern: quantityPattern };
  const shapes = [...(words.length > 0 ? [{ enum: [...words] }] : []), { type: 'number', ...positive }, text];
  return { description, anyOf: shapes };
}

/** Starts like a number or a fraction, diameter sign allowed; the reader is stricter. */
const quantityPattern = '^\\s*[ØøΦ⌀]?\\s*[+\\-−]?\\s*(\\d|\\.\\d|[½¼¾⅛⅜⅝⅞]).*$';

/** Blocks bound to what a bare length means. */
export function fieldsIn(units: JobUnits) {
  const quantity = (dimension: Dimension, range: Range, about: string) =>
    field((typed) => readQuantity(typed, dimension, range, units), quantityMeta(dimension, range, about));

  /** A word out of `words`, or a quantity. */
  const quantityOr = <W extends string>(words: readonly W[], dimension: Dimension, range: Range, about: string) =>
    field(
      (typed): Answer<number | W> => {
        const word = wordAmong(typed, words);
        if (word !== null) return accept(word);
        if (typeof typed === 'string' && /^\s*[a-z][a-z _]*$/i.test(typed)) {
          return refuse(`"${shownValue(typed)}" is not known here; write ${orList(words)}, or ${dimensions[dimension].noun}.${didYouMean(typed, words)}`, {
            allowed: `${words.join(', ')}, or ${rangeInWords(range, dimension)}`,
          });
        }
        return readQuantity(typed, dimension, range, units);
      },
      quantityMeta(dimension, range, about, words),
    );

  return {
    units,
    quantity,
    quantityOr,
    length: (range: Range, about: string) => quantity('length', range, about),
    lengthOr: <W extends string>(words: readonly W[], range: Range, about: string) => quantityOr(words, 'length', range, about),
    angle: (about: string) => quantity('angle', fullTurn, about),
    angleOr: <W extends string>(words: readonly W[], about: string) => quantityOr(words, 'angle', fullTurn, about),
  };
}

export type Fields = ReturnType<typeof fieldsIn>;

const fullTurn: Range = { least: -360, most: 360 };

/** One word out of a list. Case and spaces do not matter. */
export function choice<W extends string>(words: readonly W[], about: string): z.ZodType<W, unknown> {
  return field(
    (typed) => {
      const word = wordAmong(typed, words);
      if (word !== null) return accept(word);
      const near = typeof typed === 'string' ? didYouMean(typed, words) : '';
      return refuse(`Must be ${orList(words)}; got ${shownValue(typed)}.${near}`, { allowed: words.join(', ') });
    },
    { description: about, enum: [...words, ...words.filter((word) => /^\d/.test(word)).map(Number)] },
  );
}

/** A whole number from `least` to `most`. */
export function whole(least: number, most: number, about: string): z.ZodType<number, unknown> {
  return field(
    (typed) => {
      const value = typeof typed === 'string' && /^\s*[+-]?\d{1,9}\s*$/.test(typed) ? Number(typed) : typed;
      if (typeof value !== 'number' || !Number.isInteger(value)) return refuse(`Must be a whole number, ${least} to ${most}; got ${shownValue(typed)}.`, { allowed: `${least} to ${most}` });
      if (value < least || value > most) return refuse(`Must be ${least} to ${most}; got ${shownValue(typed)}.`, { allowed: `${least} to ${most}` });
      return accept(value);
    },
    { description: `${about} Whole number, ${least} to ${most}.`, type: 'integer', minimum: least, maximum: most },
  );
}

export function yesNo(about: string): z.ZodType<boolean, unknown> {
  return field(
    (typed) => {
      if (typeof typed === 'boolean') return accept(typed);
      return refuse(`Must be true or false; got ${shownValue(typed)}.${yesOrNoHint(typed)}`, { allowed: 'true, false' });
    },
    { description: about, type: 'boolean' },
  );
}

function yesOrNoHint(typed: unknown): string {
  if (typeof typed !== 'string') return '';
  if (/^(yes|y|on)$/i.test(typed)) return ' Write true for yes.';
  return /^(no|n|off|none)$/i.test(typed) ? ' Write false for no.' : '';
}

/** Printable text of 1 to `most` characters on one line; a bare number is taken as its digits. */
export function words(most: number, about: string): z.ZodType<string, unknown> {
  return field(
    (typed) => {
      if (typeof typed !== 'string' && typeof typed !== 'number') return refuse(`Must be text; got ${shownValue(typed)}.`);
      const text = String(typed).trim();
      if (text === '') return refuse('This text is empty.');
      if (text.length > most) return refuse(`Must be at most ${most} characters; got ${text.length}.`, { allowed: `1 to ${most} characters` });
      if (/[\p{C}\p{Zl}\p{Zp}]/u.test(text)) return refuse('Holds a character that cannot be printed (a line break, control or invisible one).');
      return accept(text);
    },
    { description: `${about} Text, at most ${most} characters.`, type: 'string', minLength: 1, maxLength: most },
  );
}

/** A list of `least` to `most` items, each read by `item`. */
export function listOf<T>(item: (typed: unknown) => Answer<T>, least: number, most: number, about: string, itemMeta: Record<string, unknown>): z.ZodType<T[], unknown> {
  return field(
    (typed) => {
      if (!Array.isArray(typed)) return refuse(`Must be a list, written [a, b, c]; got ${shownValue(typed)}.`);
      if (typed.length < least || typed.length > most) return refuse(`Must hold ${least} to ${most} items; got ${typed.length}.`, { allowed: `${least} to ${most} items` });
      const answers = typed.map(item);
      const faults = answers.flatMap((answer, index) => (answer.ok ? [] : answer.faults.map((fault) => ({ ...fault, path: [index, ...(fault.path ?? [])] }))));
      return faults.length > 0 ? { ok: false, faults } : accept(answers.flatMap((answer) => (answer.ok ? [answer.value] : [])));
    },
    { description: about, type: 'array', minItems: least, maxItems: most, items: itemMeta },
  );
}

/** One of `words`, or a section of its own keys. The section's errors keep their paths. */
export function wordOr<W extends string, S extends z.ZodType>(list: readonly W[], section: S, about: string): z.ZodType<W | z.output<S>, unknown> {
  return z
    .unknown()
    .transform((typed, context): W | z.output<S> => {
      const word = wordAmong(typed, list);
      if (word !== null) return word;
      if (!isMap(typed)) {
        const message = typed === null ? emptyKey : `Must be ${orList(list)}, or keys of its own; got ${shownValue(typed)}.`;
        context.addIssue({ code: 'custom', message, params: { allowed: list.join(', ') } });
        return z.NEVER;
      }
      const read = section.safeParse(typed, { reportInput: true });
      if (read.success) return read.data;
      for (const issue of read.error.issues) context.issues.push({ ...issue, input: issue.input } as never);
      return z.NEVER;
    })
    .meta({ description: about, anyOf: [{ enum: [...list] }, inlineJsonSchema(section)] });
}

/** JSON Schema of an inner section, ready to stand inside another. */
export function inlineJsonSchema(section: z.ZodType): Record<string, unknown> {
  const { $schema: _, '~standard': __, ...rest } = z.toJSONSchema(section, { target: 'draft-07', io: 'input' }) as Record<string, unknown>;
  return rest;
}

export function isMap(typed: unknown): typed is Readonly<Record<string, unknown>> {
  return typeof typed === 'object' && typed !== null && !Array.isArray(typed);
}

function wordAmong<W extends string>(typed: unknown, list: readonly W[]): W | null {
  if (typeof typed !== 'string' && typeof typed !== 'number') return null;
  const plain = String(typed).trim().toLowerCase().replace(/[\s_]+/g, ' ');
  return list.find((word) => word.toLowerCase().replace(/_/g, ' ') === plain) ?? null;
}

export function orList(list: readonly string[]): string {
  return list.length < 2 ? (list[0] ?? '') : `${list.slice(0, -1).join(', ')} or ${list[list.length - 1]}`;
}

export function didYouMean(typed: string, list: readonly string[]): string {
  const near = nearestWord(typed, list);
  return near === null ? '' : ` Did you mean ${near}?`;
}
