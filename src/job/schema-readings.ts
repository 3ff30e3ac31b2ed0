/** Keys whose values are raw readings: chords between holes, and dial readings around the turn. */
import { z } from 'zod';
import { type ChordReading, chordOvers, type Span, spanWords } from '../measure/all.ts';
import { equalAngles } from '../measure/harmonics.ts';
import { shownValue } from './errors.ts';
import { emptyKey, field, isMap, refuse } from './field.ts';
import { instrumentDoubt } from './measured.ts';
import type { Fields, Range } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { asSpoken, measured } from './schema-measured.ts';
import { choice, inlineJsonSchema, listOf, orList, wordAmong, yesNo } from './word-fields.ts';

/** Shortest and longest chord that is read, over whatever it is read, mm. */
const chordRange: Range = { least: 2, most: 760 };

/** Schema of `holes.chords`. */
export function chordsField(fields: Fields): z.ZodType<ChordReading[], unknown> {
  return listOfSections(
    chordSchema(fields),
    24,
    'Instead of circle: distances between holes, as the caliper showed them. Outside and inside of one span cancel the hole size.',
  );
}

function chordSchema(fields: Fields) {
  return z.strictObject({
    span: spanField(),
    over: choice(
      chordOvers,
      'What was read: over the outside of the two holes (far edges), over their inside (near edges), or between their centres.',
    ),
    reading: measured(fields, chordRange, 'What the caliper showed.'),
    pin: measured(
      fields,
      { least: 2, most: 80 },
      'Diameter of the bolts or pins it was taken over, when it was not the holes themselves.',
    ).optional(),
  });
}

function spanField(): z.ZodType<Span, unknown> {
  return field<Span>(
    (typed) => {
      const word = wordAmong(typed, spanWords);
      if (word !== null) return { ok: true, value: word };
      const number = typeof typed === 'string' && /^\s*\d{1,2}\s*$/.test(typed) ? Number(typed) : typed;
      if (typeof number === 'number' && Number.isInteger(number) && number >= 1 && number <= 36)
        return { ok: true, value: number };
      return refuse(
        `Must be ${orList(spanWords)}, or how many positions the chord spans (1 to 36); got ${shownValue(typed)}.`,
        {
          allowed: `${spanWords.join(', ')}, 1 to 36`,
        },
      );
    },
    {
      description:
        'Which two holes: neighbours, skip_one (one hole between them), farthest, or how many positions apart they stand.',
      anyOf: [{ enum: [...spanWords] }, { type: 'integer', minimum: 1, maximum: 36 }],
    },
  );
}

/** One total indicator reading with its doubt, mm. */
export interface TotalInput {
  readonly value: number;
  /** Half-width of the doubt of the total; left out where none was typed. */
  readonly doubt?: number;
}

/** Dial readings around the turn, mm and degrees. */
export interface DialInput {
  readonly readings: readonly number[];
  /** Half-width of the doubt of each reading; left out where none was typed. */
  readonly doubt?: number;
  /** One for each reading, counter-clockwise looking at the flange's own face. */
  readonly angles: readonly number[];
  /** Where a face was read, from the axis; undefined when not stated. */
  readonly radius?: number | undefined;
  /** Read inside a bore: what comes towards the dial is then the side on which the bore's middle is not. */
  readonly inside?: boolean | undefined;
}

/** What is typed for a run-out: a bare total, a total with its doubt, or readings around the turn. */
export type DialTyped = number | TotalInput | DialInput;

/** Readings around the turn: they tell a direction. */
export const isAround = (dial: DialTyped | undefined): dial is DialInput =>
  typeof dial === 'object' && 'readings' in dial;

/** A total indicator reading with the half-width of its doubt, mm: as typed, else one graduation of a dial; null for readings around the turn. */
export function totalOf(dial: DialTyped | undefined): { readonly value: number; readonly doubt: number } | null {
  if (dial === undefined || isAround(dial)) return null;
  const { value, doubt = instrumentDoubt.dial } = typeof dial === 'number' ? { value: dial } : dial;
  return { value, doubt };
}

/** Doubts that a dial may have, mm. */
const dialDoubt: Range = { least: 0, most: 1 };

const dialKeys = ['readings', 'angles', 'first', 'radius', 'inside', 'value', 'doubt', 'instrument'] as const;

/** A total indicator reading, a list of dial readings at equal angles, or readings with their angles. */
export function dialField(fields: Fields, about: string): z.ZodType<DialTyped, unknown> {
  const tir: Range = { least: 0, most: 5 };
  const swing: Range = { least: -10, most: 10 };
  const length = (typed: unknown, range: Range) => readQuantity(typed, 'length', range, fields.units);
  const one = { type: ['number', 'string'] };
  const readings = listOf((typed) => length(typed, swing), 3, 72, 'Dial readings around the turn.', one);
  const angles = listOf(
    (typed) => readQuantity(typed, 'angle', { least: -360, most: 360 }, 'mm'),
    3,
    72,
    'Angle of each reading.',
    one,
  );
  const section = z.strictObject({
    readings: readings.optional(),
    angles: angles.optional(),
    first: fields
      .angle('Angle of the first of equally spaced readings, counter-clockwise from the x axis. Default 0.')
      .optional(),
    radius: fields.length({ least: 2, most: 350 }, 'How far from the axis a face was read.').optional(),
    inside: yesNo('Whether the dial stood inside a bore (a female register) instead of outside on a rim.').optional(),
    value: fields.length(tir, 'Instead of readings: the total indicator reading alone.').optional(),
    doubt: fields
      .length(
        dialDoubt,
        `Half-width of the doubt: of each reading, or of the total where only that was read. Left out: one graduation, ${instrumentDoubt.dial} mm.`,
      )
      .optional(),
    instrument: choice(['dial'], 'What it was read with.').optional(),
  });
  /** A section, or what was said at the bench taken apart into one. */
  const parts = (typed: unknown, context: z.RefinementCtx): DialTyped => {
    const read = section.safeParse(typed, { reportInput: true });
    const refused = (message: string, ...path: string[]): never => {
      context.addIssue({ code: 'custom', message, path });
      return z.NEVER;
    };
    if (!read.success) {
      pass(read.error, context);
      return z.NEVER;
    }
    const { first, radius, inside, angles: stated, readings: list, value, doubt } = read.data;
    if (value !== undefined) {
      const around = (['readings', 'angles', 'first', 'radius', 'inside'] as const).find(
        (key) => read.data[key] !== undefined,
      );
      if (around === undefined) return { value, ...(doubt === undefined ? {} : { doubt }) };
      return refused(
        `value: is one total reading, and ${around}: belongs to readings around the turn; keep one.`,
        around,
      );
    }
    if (list === undefined)
      return refused('A run-out needs readings: around the turn, or value: for a total indicator reading.');
    const count = list.length;
    if (stated !== undefined && first !== undefined)
      return refused('The list angles: already places every reading; delete first.', 'first');
    if (stated !== undefined && stated.length !== count)
      return refused(`There are ${stated.length} angles for ${count} readings; correct one of them.`, 'angles');
    const known = doubt === undefined ? {} : { doubt };
    return { readings: list, angles: stated ?? equalAngles(count, first), radius, inside, ...known };
  };
  return z
    .unknown()
    .transform((typed, context): DialTyped => {
      if (Array.isArray(typed)) {
        const read = readings.safeParse(typed);
        if (read.success) return { readings: read.data, angles: equalAngles(read.data.length) };
        pass(read.error, context);
        return z.NEVER;
      }
      if (isMap(typed)) return parts(typed, context);
      const spoken = typeof typed === 'string' ? asSpoken(typed) : null;
      if (spoken) return parts(spoken, context);
      const answer = typed === null ? refuse(emptyKey) : length(typed, tir);
      if (answer.ok) return answer.value;
      for (const { message, allowed, hint } of answer.faults)
        context.addIssue({ code: 'custom', message, params: { allowed, hint } });
      return z.NEVER;
    })
    .meta({
      description: `${about} Total indicator reading (0.03, or with its doubt: 0.03 +-0.005; +-${instrumentDoubt.dial} mm is assumed), or the dial's readings at equal angles (three or more, counter-clockwise from the x axis looking at the flange's own face, plus towards the dial), or { ${dialKeys.join(', ')} }. Range: 0 to 5 mm.`,
      anyOf: [
        { type: 'number', minimum: 0 },
        { type: 'string' },
        { type: 'array', minItems: 3, maxItems: 72, items: one },
        inlineJsonSchema(section),
      ],
    });
}

/** A list of sections; the errors of each keep their paths. */
function listOfSections<S extends z.ZodType>(
  section: S,
  most: number,
  about: string,
): z.ZodType<z.output<S>[], unknown> {
  return z
    .unknown()
    .transform((typed, context): z.output<S>[] => {
      if (!Array.isArray(typed) || typed.length === 0 || typed.length > most) {
        const message =
          typed === null
            ? emptyKey
            : Array.isArray(typed)
              ? `Must hold 1 to ${most} items; got ${typed.length}.`
              : `Must be a list, each item on a line of its own that starts with "- "; got ${shownValue(typed)}.`;
        context.addIssue({ code: 'custom', message, params: { allowed: `1 to ${most} items` } });
        return z.NEVER;
      }
      return typed.flatMap((item: unknown, index) => {
        if (!isMap(item)) {
          const message =
            item === null ? emptyKey : `Each item has keys of its own, such as span; got ${shownValue(item)}.`;
          context.addIssue({ code: 'custom', message, path: [index] });
          return [];
        }
        const read = section.safeParse(item, { reportInput: true });
        if (read.success) return [read.data];
        pass(read.error, context, [index]);
        return [];
      });
    })
    .meta({ description: about, type: 'array', minItems: 1, maxItems: most, items: inlineJsonSchema(section) });
}

function pass(error: z.ZodError, context: z.RefinementCtx, path: readonly (string | number)[] = []): void {
  for (const issue of error.issues)
    context.issues.push({ ...issue, path: [...path, ...issue.path], input: issue.input } as never);
}
