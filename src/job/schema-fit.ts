/** A fit as typed: `auto`, a tolerance zone, or limits made to the measured mate. */
import { z } from 'zod';
import { zone } from './codes.ts';
import { isMap } from './field.ts';
import type { Fields } from './quantity-fields.ts';
import { inlineJsonSchema } from './word-fields.ts';

/** Widest clearance, tightest interference and widest tolerance that still make a fit, mm. */
const fitRange = { clearance: 1, interference: 0.5, tolerance: 1 };

/** Limits made to the mate as it was measured. */
function madeToMate(fields: Fields, usualGrade: number) {
  return z.strictObject({
    clearance: fields
      .length(
        { least: 0, most: fitRange.clearance },
        'Least clearance on the diameter, whatever the mate turns out to be.',
      )
      .optional(),
    interference: fields
      .length(
        { above: 0, most: fitRange.interference },
        'Greatest interference on the diameter, whatever the mate turns out to be.',
      )
      .optional(),
    tolerance: fields
      .length(
        { least: 0.001, most: fitRange.tolerance },
        `Tolerance of the making: upper less lower limit. Left out: ISO 286 grade ${usualGrade} of the mate's size.`,
      )
      .optional(),
  });
}

/** What a fit is of, for the words that describe it. */
export interface FitWords {
  readonly zone: string;
  readonly about: string;
  /** Grade of the tolerance when none is asked for. */
  readonly grade: number;
}

/** `auto`, a tolerance zone, or one of { clearance } and { interference } with an optional tolerance. */
export function fitSchema(fields: Fields, { zone: zoneWords, about, grade }: FitWords) {
  const word = zone(zoneWords, ['auto']);
  const section = madeToMate(fields, grade);
  return z
    .unknown()
    .transform((typed, context): string | z.output<typeof section> => {
      const read = isMap(typed)
        ? section.safeParse(typed, { reportInput: true })
        : word.safeParse(typed, { reportInput: true });
      if (!read.success) {
        for (const issue of read.error.issues) context.issues.push({ ...issue, input: issue.input } as never);
        return z.NEVER;
      }
      if (
        typeof read.data === 'object' &&
        (read.data.clearance === undefined) === (read.data.interference === undefined)
      ) {
        const message =
          'Give clearance or interference, one of the two: { clearance: 0.02 mm } or { interference: 0.01 mm }.';
        context.addIssue({ code: 'custom', message, params: { allowed: 'clearance, interference' } });
        return z.NEVER;
      }
      return read.data;
    })
    .meta({ description: about, anyOf: [{ type: ['string', 'number'] }, inlineJsonSchema(section)] });
}

/** Limits made to the measured mate. */
export type MadeToMateInput = z.output<ReturnType<typeof madeToMate>>;
