/** The keys of `built`: what was measured on the finished parts, and on the joint bolted up. */
import { z } from 'zod';
import type { Fields, Range } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { measured } from './schema-measured.ts';
import { dialField } from './schema-readings.ts';
import { listOf, words } from './word-fields.ts';

const diameter: Range = { above: 0, most: 700 };
const depth: Range = { above: 0, most: 80 };
const mass: Range = { above: 0, most: 500_000 };

/** Schema of `built`. Every key is optional: what was not measured keeps the limits it was drawn with. */
export function builtSchema(fields: Fields) {
  const weights = (about: string) =>
    listOf((typed) => readQuantity(typed, 'mass', mass, fields.units), 2, 72, about, { type: ['number', 'string'] });
  return z
    .strictObject({
      by: words(60, 'Who measured: a mark, no name needed.').optional(),
      adapter: z
        .strictObject({
          thickness: measured(fields, { above: 0, most: 300 }, 'Between the two faces.').optional(),
          outside: measured(fields, diameter, 'Outside diameter.').optional(),
          bore: measured(fields, diameter, 'Centre bore.').optional(),
          mass: fields.quantity('mass', mass, 'What the finished adapter weighs, without screws.').optional(),
          runout: z
            .strictObject({
              register: dialField(
                fields,
                'The driven register while the driving one runs true. Angles from the index mark, looking at the driven face.',
              ).optional(),
              face: dialField(
                fields,
                'The driven face while the driving one runs true. Angles from the index mark, looking at the driven face.',
              ).optional(),
            })
            .describe('The finished adapter turned on its driving register, with a dial on the driven side.')
            .optional(),
          driving: sideBuilt(fields, 'driving').optional(),
          driven: sideBuilt(fields, 'driven').optional(),
        })
        .describe('The finished adapter.')
        .optional(),
      wheel: z
        .strictObject({
          bore: measured(fields, diameter, 'The bore of the wheel.').optional(),
          outside: measured(fields, { above: 0, most: 1000 }, 'Over the teeth.').optional(),
          mass: fields.quantity('mass', mass, 'What the wheel weighs.').optional(),
          runout: fields
            .length({ least: 0, most: 5 }, 'Total indicator reading at the tips, the wheel screwed on and turned.')
            .optional(),
        })
        .describe('The finished wheel.')
        .optional(),
      joint: z
        .strictObject({
          rim: dialField(
            fields,
            "The driven flange's register or rim, the joint bolted up and turned by the driving shaft. Angles from the index mark, seen from the driven side.",
          ).optional(),
          face: dialField(
            fields,
            "The driven flange's face, the joint bolted up and turned by the driving shaft.",
          ).optional(),
        })
        .describe('The whole joint, bolted up, before the shaft is fitted.')
        .optional(),
      screws: z
        .strictObject({
          driving: weights(
            "Weights of the driving side's screws (with nut and washer), in the order of the holes.",
          ).optional(),
          driven: weights(
            "Weights of the driven side's screws (with nut and washer), in the order of the holes.",
          ).optional(),
          wheel: weights("Weights of the wheel's screws, in the order of the holes.").optional(),
        })
        .describe('Screws weighed one by one, in the order in which they go in.')
        .optional(),
    })
    .describe('What was measured on the finished parts: the sums are run again with these numbers.');
}

function sideBuilt(fields: Fields, side: string) {
  return z
    .strictObject({
      register: measured(fields, diameter, `The adapter's own register on the ${side} side.`).optional(),
      depth: measured(fields, depth, "Height of the adapter's own spigot, or depth of its recess.").optional(),
      holes: z
        .unknown()
        .transform((typed, context) => places(typed, fields, context))
        .meta({
          description:
            'Where the holes really are: [x, y] of each, in their order, from the centre of the driving register, x through the index mark, seen from the driven side.',
          type: 'array',
          minItems: 2,
          maxItems: 72,
          items: { type: 'array', minItems: 2, maxItems: 2, items: { type: ['number', 'string'] } },
        })
        .optional(),
    })
    .describe(`The ${side} side of the finished adapter.`);
}

/** A list of [x, y]. */
function places(
  typed: unknown,
  fields: Fields,
  context: z.RefinementCtx,
): readonly { readonly x: number; readonly y: number }[] {
  const refuse = (message: string, path: readonly (string | number)[] = []) => {
    context.addIssue({ code: 'custom', message, path: [...path], params: { allowed: 'a list of [x, y]' } });
  };
  if (!Array.isArray(typed) || typed.length < 2 || typed.length > 72) {
    refuse('Must be a list of 2 to 72 places, each [x, y].');
    return z.NEVER;
  }
  return typed.flatMap((place: unknown, index) => {
    if (!Array.isArray(place) || place.length !== 2) {
      refuse('Each place is [x, y]: two numbers.', [index]);
      return [];
    }
    const [x, y] = place.map((coordinate: unknown) =>
      readQuantity(coordinate, 'length', { least: -350, most: 350 }, fields.units),
    );
    if (x?.ok && y?.ok) return [{ x: x.value, y: y.value }];
    for (const [axis, answer] of [x, y].entries()) {
      if (answer && !answer.ok) for (const { message } of answer.faults) refuse(message, [index, axis]);
    }
    return [];
  });
}

export type BuiltInput = z.output<ReturnType<typeof builtSchema>>;
export type SideBuiltInput = NonNullable<NonNullable<BuiltInput['adapter']>['driving']>;
