/** The job file's schema: one place where every key has its unit, range, default and description. */
import { z } from 'zod';
import { shownValue } from './errors.ts';
import { accept, field, refuse } from './field.ts';
import type { Fields, JobUnits } from './quantity-fields.ts';
import { fieldsIn, readQuantity } from './quantity-fields.ts';
import { adapterSchema } from './schema-adapter.ts';
import { bracketSchema } from './schema-bracket.ts';
import { builtSchema } from './schema-built.ts';
import { dutySchema } from './schema-duty.ts';
import { flangeSchema } from './schema-flange.ts';
import { sensorSchema } from './schema-sensor.ts';
import { shaftSchema } from './schema-shaft.ts';
import { sheetSchema } from './schema-sheet.ts';
import { wheelSchema } from './schema-wheel.ts';
import { choice, listOf, orList, whole, wordAmong, words, yesNo } from './word-fields.ts';

export type { JobUnits } from './quantity-fields.ts';
export type { AdapterInput, SideInput } from './schema-adapter.ts';
export type { BuiltInput } from './schema-built.ts';
export type { FlangeInput, HolesInput, RegisterInput } from './schema-flange.ts';
export { sensorKinds } from './schema-sensor.ts';
export { outlineFlavours } from './schema-sheet.ts';
export type { WheelInput } from './schema-wheel.ts';

/** The format version this program reads. */
export const jobVersion = 1;

/** Top-level keys that belong to the format but are not read yet. */
export const reservedKeys: readonly string[] = [];

/** Sheets that paper patterns are laid on. */
export const paperNames = ['a4', 'letter'] as const;

/**
 * Schema of a whole job; a bare length is in `units`. The output holds mm, N.m, rpm, degrees and grams only, with defaults
 * filled in. Checks that look at two keys at once are not here: see cross-checks.
 */
export function jobSchema(units: JobUnits): ReturnType<typeof buildSchema> {
  const schema = built.get(units) ?? buildSchema(units);
  built.set(units, schema);
  return schema;
}

/** A schema takes some milliseconds to build and never changes. */
const built = new Map<JobUnits, ReturnType<typeof buildSchema>>();

function buildSchema(units: JobUnits) {
  const fields = fieldsIn(units);
  return z.strictObject({
    job: field(
      (typed) =>
        typed === jobVersion
          ? accept(1 as const)
          : refuse(`This version of the program reads job: ${jobVersion}; got ${shownValue(typed)}.`, {
              allowed: '1',
            }),
      {
        description: 'Version of this format. Always 1.',
        const: jobVersion,
      },
    ),
    title: words(80, 'What this joint is.').prefault('Untitled joint'),
    note: words(2000, 'Anything worth remembering.').optional(),
    units: choice(
      ['mm', 'in'],
      'What a bare length means. Any value may carry its own unit: 2.25 in, 57.15 mm.',
    ).prefault('mm'),
    duty: dutySchema(fields).optional(),
    driving: flangeSchema(fields).describe('The flange that turns the adapter; its face is the plane z = 0.'),
    driven: flangeSchema(fields).describe('The flange that the adapter turns; its face is the plane z = thickness.'),
    adapter: adapterSchema(fields).prefault({}),
    wheel: wheelSchema(fields).optional(),
    sensor: sensorSchema(fields).optional(),
    bracket: bracketSchema(fields).optional(),
    shaft: shaftSchema(fields).optional(),
    built: builtSchema(fields).optional(),
    print: printSchema(fields).prefault({}),
    sheet: sheetSchema(fields).prefault({}),
  });
}

function printSchema(fields: Fields) {
  const allowance: { least: number; most: number } = { least: -1, most: 2 };
  return z
    .strictObject({
      holes: fields.length(allowance, 'Added to the diameter of every hole of the printed mock-up.').prefault('0.3 mm'),
      registers: fields
        .length(allowance, 'Allowance of the registers of the printed mock-up, on the diameter.')
        .prefault('0.3 mm'),
      bed: listOf(
        (side) => readQuantity(side, 'length', { least: 30, most: 3000 }, fields.units),
        2,
        2,
        'Size of the print bed, [x, y].',
        { type: ['number', 'string'] },
      ).optional(),
      text: yesNo(
        'Whether the part is engraved with its name. The words that say it must not be driven are always there.',
      ).prefault(true),
      rings: z
        .strictObject({
          steps: whole(3, 9, 'How many sizes of fit ring or plug are made round the measured one.').prefault(5),
          step: fields
            .lengthOr(
              ['auto'],
              { least: 0.02, most: 2 },
              'From one size to the next, on the diameter; auto: by the doubt of the register.',
            )
            .prefault('auto'),
        })
        .describe('Fit rings and hole discs. With this key they are made every time; without it only by --only rings.')
        .optional(),
      paper: listOf(
        (typed) => {
          const name = wordAmong(typed, paperNames);
          return name === null
            ? refuse(`Must be ${orList(paperNames)}; got ${shownValue(typed)}.`, { allowed: paperNames.join(', ') })
            : accept(name);
        },
        1,
        paperNames.length,
        'Sheets of the true-size paper patterns. With this key they are made every time; without it only by --only paper, on all of them.',
        { enum: [...paperNames] },
      )
        .transform((list) => [...new Set(list)])
        .optional(),
    })
    .describe('Allowances of the printer that makes the mock-up, and checks to print in minutes.');
}

/** A whole job with every default filled in: mm, N.m, rpm, degrees, grams. */
export type JobInput = z.output<ReturnType<typeof jobSchema>>;
export type DutyInput = NonNullable<JobInput['duty']>;
export type SensorInput = NonNullable<JobInput['sensor']>;
export type PrintInput = JobInput['print'];
export type { SheetInput } from './schema-sheet.ts';

/** The job's JSON Schema (draft-07), for editors: what may be typed, with units, ranges, defaults and descriptions. */
export function jobJsonSchema(): Record<string, unknown> {
  const { '~standard': _, ...schema } = z.toJSONSchema(jobSchema('mm'), {
    target: 'draft-07',
    io: 'input',
  }) as Record<string, unknown>;
  return { ...schema, title: 'flangewright job', description: 'One joint between two flanges.' };
}
