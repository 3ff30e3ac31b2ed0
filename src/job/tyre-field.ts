/** The block that reads a tyre: its size as printed on the wall, its rolled circumference, or its rolling radius. */
import { z } from 'zod';
import { freeDiameter } from '../standards/tyre-size.ts';
import { shownValue } from './errors.ts';
import { emptyKey, isMap } from './field.ts';
import type { Fields } from './quantity-fields.ts';
import { inlineJsonSchema } from './word-fields.ts';

/** One of the three. mm. */
export interface TyreInput {
  readonly size?: string | undefined;
  readonly rolled?: number | undefined;
  readonly radius?: number | undefined;
}

/** A tyre: `205/65R16`, `{ rolled: 2050 mm }` or `{ radius: 326 mm }`. */
export function tyreField(fields: Fields, about: string): z.ZodType<TyreInput, unknown> {
  const section = z.strictObject({
    rolled: fields
      .length({ least: 200, most: 15_000 }, 'How far one turn of the wheel rolls, laden: mark, push, measure.')
      .optional(),
    radius: fields.length({ least: 30, most: 2400 }, 'Rolling radius: hub to ground, laden.').optional(),
  });
  const allowed = 'a size such as 205/65R16, { rolled: 2050 mm } or { radius: 326 mm }';
  return z
    .unknown()
    .transform((typed, context): TyreInput => {
      const refuse = (message: string): never => {
        context.addIssue({ code: 'custom', message, params: { allowed } });
        return z.NEVER;
      };
      if (typeof typed === 'string') {
        const read = freeDiameter(typed);
        return read.ok ? { size: typed.trim() } : refuse(read.why);
      }
      if (!isMap(typed)) return refuse(typed === null ? emptyKey : `Must be ${allowed}; got ${shownValue(typed)}.`);
      const read = section.safeParse(typed, { reportInput: true });
      if (!read.success) {
        for (const issue of read.error.issues) context.issues.push({ ...issue, input: issue.input } as never);
        return z.NEVER;
      }
      const { rolled, radius } = read.data;
      if ((rolled === undefined) === (radius === undefined))
        return refuse('Give rolled or radius, one of the two; or write the size: tyre: 205/65R16.');
      return read.data;
    })
    .meta({ description: `${about} Write ${allowed}.`, anyOf: [{ type: 'string' }, inlineJsonSchema(section)] });
}
