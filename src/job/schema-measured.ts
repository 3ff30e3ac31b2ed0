/** A measured length as typed: a number, repeated readings, or a value with its doubt and instrument. */
import type { z } from 'zod';
import { rememberTyped } from './as-typed.ts';
import { shownValue } from './errors.ts';
import type { Answer, Fault } from './field.ts';
import { accept, emptyKey, field, isMap, refuse } from './field.ts';
import type { Instrument, Measured } from './measured.ts';
import { fromReadings, givenOnce, instrumentDoubt, oddReading, provenDoubt } from './measured.ts';
import type { Fields, Range } from './quantity-fields.ts';
import { quantityPattern, rangeInWords, readQuantity } from './quantity-fields.ts';
import { choice, didYouMean, listOf, yesNo } from './word-fields.ts';

const instruments = Object.keys(instrumentDoubt) as Instrument[];
const measuredKeys = ['value', 'doubt', 'instrument', 'readings', 'proven'];

/** Widest doubt that is still a measurement, mm. */
const doubtRange: Range = { least: 0, most: 10 };

/** A measured length. The range holds for the value and for each reading. */
export function measured(fields: Fields, range: Range, about: string): z.ZodType<Measured, unknown> {
  const length = (typed: unknown) => readQuantity(typed, 'length', range, fields.units);
  const readings = listOf(length, 1, 50, 'Repeated readings of the same size.', {
    type: ['number', 'string'],
  });
  const read = (typed: unknown): Answer<Measured> => {
    const answer = readTyped(typed);
    if (!answer.ok) return answer;
    const spoken = typeof typed === 'string' ? asSpoken(typed) : typed;
    const tool = isMap(spoken) ? instruments.find((name) => name === spoken.instrument) : undefined;
    return accept(rememberTyped(answer.value, typed, tool ?? null));
  };
  const readTyped = (typed: unknown): Answer<Measured> => {
    if (Array.isArray(typed)) {
      const list = readList(readings, typed, []);
      return list.ok ? average(list.value, 'caliper', []) : list;
    }
    if (isMap(typed)) return readParts(typed, fields, length, readings);
    const spoken = typeof typed === 'string' ? asSpoken(typed) : null;
    if (spoken) return readParts(spoken, fields, length, readings);
    const single = length(typed);
    return single.ok ? accept(givenOnce(single.value)) : single;
  };
  const one = { type: ['number', 'string'] };
  const description =
    `${about} A measured value: a number (taken as one caliper reading, +-${instrumentDoubt.caliper} mm), repeated readings (a list), ` +
    `a size with its doubt or instrument ("62.00 +-0.01", "62.00 micrometer"), or { value, doubt, instrument, readings, proven }. ` +
    `A bare number is in the job's units; units that may be written: mm, in, thou, um, cm, m, ft. Range: ${rangeInWords(range, 'length')}.`;
  return field(read, {
    description,
    anyOf: [
      { type: 'number', minimum: 0 },
      { type: 'string', pattern: quantityPattern },
      { type: 'array', minItems: 1, maxItems: 50, items: one },
      {
        type: 'object',
        properties: {
          value: { ...one, description: 'The size.' },
          doubt: {
            ...one,
            description: 'Half-width of the doubt: the true size lies within value - doubt to value + doubt.',
          },
          instrument: {
            enum: instruments,
            description:
              'What it was measured with. Doubt of one reading, common practice: caliper 0.03, micrometer 0.005, dial 0.01, ruler 0.5, catalogue 0.05 mm.',
          },
          readings: {
            type: 'array',
            minItems: 1,
            maxItems: 50,
            items: one,
            description: 'Repeated readings of the same size.',
          },
          proven: { type: 'boolean', description: 'True when a fit ring of this size went on and was snug.' },
        },
        additionalProperties: false,
      },
    ],
  });
}

/**
 * "62.00 +-0.01", "62.00 micrometer", "60.02, 60.01, 60.03 micrometer", as it is said at the bench: the parts of a measured value. Null for
 * a plain size.
 */
export function asSpoken(typed: string): Readonly<Record<string, unknown>> | null {
  const [, size = '', tool] = /^(.*?)\s+([a-z]+)\s*$/i.exec(typed) ?? [];
  const instrument = instruments.find((name) => name === tool?.toLowerCase());
  const rest = instrument ? size.replace(/[\s,;]+$/, '') : typed;
  // Readings stand apart by a comma and a blank: a comma alone is somebody's decimal sign.
  const readings = rest.split(/\s*;\s*|,\s+|\s+/);
  if (instrument && readings.length > 1 && readings.every((one) => /^\d+(\.\d+)?$/.test(one)))
    return { readings, instrument };
  const [value, doubt, more] = rest.split(/±|\+\/-|\+-/);
  if ((instrument === undefined && doubt === undefined) || doubt?.trim() === '' || more !== undefined) return null;
  return { value, ...(doubt === undefined ? {} : { doubt }), ...(instrument ? { instrument } : {}) };
}

function readParts(
  typed: Readonly<Record<string, unknown>>,
  fields: Fields,
  length: (typed: unknown) => Answer<number>,
  readings: z.ZodType<number[], unknown>,
): Answer<Measured> {
  const faults: Fault[] = [];
  const part = <T>(key: string, read: (value: unknown) => Answer<T>): T | undefined => {
    if (!(key in typed)) return undefined;
    const answer: Answer<T> = typed[key] === null ? refuse(emptyKey) : read(typed[key]);
    if (answer.ok) return answer.value;
    faults.push(...answer.faults.map((fault) => ({ ...fault, path: [key, ...(fault.path ?? [])] })));
    return undefined;
  };
  for (const key of Object.keys(typed)) {
    if (!measuredKeys.includes(key)) {
      const message = `"${shownValue(key)}" is not a key of a measured value; its keys are ${measuredKeys.join(', ')}.${didYouMean(key, measuredKeys)}`;
      faults.push({ path: [key], message, allowed: measuredKeys.join(', '), atKey: true });
    }
  }
  const value = part('value', length);
  const doubt = part('doubt', (given) => readQuantity(given, 'length', doubtRange, fields.units));
  const instrument = part('instrument', (given) => answerOf(choice(instruments, ''), given));
  const list = part('readings', (given) => readList(readings, given, []));
  const proven = part('proven', (given) => answerOf(yesNo(''), given));
  if (!('value' in typed) && !('readings' in typed))
    faults.push({ message: 'A measured value needs value: or readings:.' });
  if (faults.length > 0) return { ok: false, faults };
  return combine({ value, doubt, instrument, list, proven });
}

interface Parts {
  readonly value: number | undefined;
  readonly doubt: number | undefined;
  readonly instrument: Instrument | undefined;
  readonly list: readonly number[] | undefined;
  readonly proven: boolean | undefined;
}

function combine({ value, doubt, instrument, list, proven }: Parts): Answer<Measured> {
  const tool = instrument ?? 'caliper';
  let size = value;
  let spreadDoubt = 0;
  if (list !== undefined) {
    const mean = average(list, tool, ['readings']);
    if (!mean.ok) return mean;
    const reach = mean.value.doubt + instrumentDoubt[tool];
    if (size !== undefined && Math.abs(size - mean.value.value) > reach) {
      return refuse(
        `The value ${round(size)} mm is not among its own readings, which average ${round(mean.value.value)} mm; correct one of them.`,
        { path: ['value'] },
      );
    }
    if (size === undefined && doubt === undefined && proven !== true) return mean;
    size ??= mean.value.value;
    spreadDoubt = mean.value.doubt;
  }
  if (size === undefined) return refuse('A measured value needs value: or readings:.');
  const kept = list === undefined ? {} : { readings: list };
  if (proven === true) return accept({ value: size, doubt: doubt ?? provenDoubt, basis: 'proven', ...kept });
  if (doubt !== undefined)
    return accept({
      value: size,
      doubt,
      basis: instrument === 'catalogue' ? 'catalogue' : 'stated',
      ...kept,
    });
  if (list !== undefined) return accept({ value: size, doubt: spreadDoubt, basis: 'repeated', ...kept });
  if (instrument === undefined) return accept(givenOnce(size));
  return accept({
    value: size,
    doubt: instrumentDoubt[instrument],
    basis: instrument === 'catalogue' ? 'catalogue' : 'stated',
  });
}

function average(list: readonly number[], tool: Instrument, path: readonly string[]): Answer<Measured> {
  const odd = oddReading(list, tool);
  if (odd === null) return accept(fromReadings(list, tool));
  const spread = round(Math.max(...list) - Math.min(...list));
  const which =
    list.length === 2
      ? `${round(list[0] ?? 0)} and ${round(list[1] ?? 0)} mm disagree`
      : `${round(list[odd] ?? 0)} mm (number ${odd + 1} of ${list.length}) stands apart from the others`;
  return refuse(
    `These readings spread over ${spread} mm, more than a ${tool} can explain: ${which}. Measure again, or correct it.`,
    { path: [...path, odd] },
  );
}

function readList(readings: z.ZodType<number[], unknown>, typed: unknown, path: readonly string[]): Answer<number[]> {
  const answer = answerOf(readings, typed);
  return answer.ok
    ? answer
    : {
        ok: false,
        faults: answer.faults.map((fault) => ({ ...fault, path: [...path, ...(fault.path ?? [])] })),
      };
}

/** Use a schema block as a plain reader. */
function answerOf<T>(schema: z.ZodType<T, unknown>, typed: unknown): Answer<T> {
  const read = schema.safeParse(typed);
  if (read.success) return accept(read.data);
  return {
    ok: false,
    faults: read.error.issues.map((issue) => ({
      path: issue.path as (string | number)[],
      message: issue.message,
    })),
  };
}

function round(mm: number): number {
  return Number(mm.toFixed(4));
}
