/** The keys of the adapter and of its two sides. */
import { z } from 'zod';
import { material, thread, zone } from './codes.ts';
import { isMap } from './field.ts';
import type { Fields } from './quantity-fields.ts';
import { choice, inlineJsonSchema, wordOr, words, yesNo } from './word-fields.ts';

/** Ways to find the axis again after the part is turned over. */
export const setups = ['one chucking', 'indicated', 'edge finder', 'three jaw'] as const;

/** Schema of `adapter`. */
export function adapterSchema(fields: Fields) {
  return z
    .strictObject({
      name: words(40, 'What to engrave and call the part.').optional(),
      material: material('Material of the adapter.').prefault('S355'),
      thickness: fields
        .lengthOr(
          ['auto'],
          { least: 3, most: 300 },
          'Distance between the two flange faces; auto is the least that meets every demand.',
        )
        .prefault('auto'),
      outside: fields
        .lengthOr(['auto'], { least: 20, most: 700 }, 'Outside diameter; auto follows the larger flange.')
        .prefault('auto'),
      clocking: fields
        .angleOr(
          ['auto'],
          'Angle of the driven pattern against the driving one; auto gives the largest web between holes.',
        )
        .prefault('auto'),
      bore: fields
        .lengthOr(['auto', 'none'], { least: 1, most: 600 }, 'Centre bore, which is also the indicating bore.')
        .prefault('auto'),
      flats: fields
        .lengthOr(
          ['none', 'auto'],
          { least: 10, most: 700 },
          'Two opposite flats for the vise: none, auto, or the distance across them.',
        )
        .prefault('none'),
      chamfer: fields.length({ least: 0, most: 10 }, 'Chamfer of the rim edges, 45 degrees.').prefault('1 mm'),
      web: fields
        .length({ least: 0.2, most: 50 }, 'Least metal between two features (common practice: 3 mm).')
        .prefault('3 mm'),
      setup: choice(
        setups,
        'How the axis is found again when the part is turned over; it decides how far the two registers stray.',
      ).prefault('indicated'),
      runout: fields
        .length(
          { least: 0, most: 2 },
          "Measured run-out between the two registers, total indicator reading; overrides the setup's usual value.",
        )
        .optional(),
      driving: sideSchema(fields, 'driving').prefault({}),
      driven: sideSchema(fields, 'driven').prefault({}),
    })
    .describe('The adapter between the two flanges.');
}

function sideSchema(fields: Fields, side: string) {
  return z
    .strictObject({
      fastening: choice(
        ['auto', 'into_flange', 'into_adapter', 'through'],
        "into_flange: screws through the adapter into the flange's tapped holes. into_adapter: screws through the flange into tapped holes in the adapter. through: bolts and nuts.",
      ).prefault('auto'),
      screw: thread('Screw thread; auto follows the flange.', ['auto']).prefault('auto'),
      class: choice(['8.8', '10.9', '12.9'], 'Property class of the screws, ISO 898-1.').prefault('10.9'),
      head: choice(['auto', 'socket', 'flat', 'button', 'hex'], 'Kind of screw head.').prefault('auto'),
      seat: choice(['auto', 'sunk', 'surface'], 'Whether heads in the adapter are sunk below its face.').prefault(
        'auto',
      ),
      hole: choice(['fine', 'medium', 'coarse'], 'Series of clearance holes, ISO 273.').prefault('medium'),
      washer: yesNo('Whether a washer goes under the head.').prefault(false),
      length: fields
        .lengthOr(
          ['auto'],
          { least: 3, most: 300 },
          'Length of the screws; auto is the shortest standard length that grips enough.',
        )
        .prefault('auto'),
      register: wordOr(
        ['auto', 'none'],
        z.strictObject({
          diameter: fields
            .length({ least: 5, most: 600 }, "Nominal diameter of the adapter's own register.")
            .optional(),
          depth: fields.length({ least: 0.2, most: 80 }, "Height or depth of the adapter's own register.").optional(),
          fit: zone("Tolerance zone of the adapter's own register.").optional(),
        }),
        "The adapter's own register on this face: auto is the opposite of the flange's.",
      ).prefault('auto'),
      fit: fitSchema(fields).prefault('auto'),
      friction: fields
        .quantity(
          'ratio',
          { least: 0.04, most: 0.35 },
          'Friction in the thread and under the head; it decides the torque. Left out: 0.12, lightly oiled (VDI 2230 class B, 0.08 to 0.16).',
        )
        .optional(),
    })
    .describe(`The ${side} side: how it is fastened and centred.`);
}

/** Widest clearance, tightest interference and widest tolerance that still make a register, mm. */
const fitRange = { clearance: 1, interference: 0.5, tolerance: 1 };

/** Limits made to the mate as it was measured. */
function madeToMate(fields: Fields) {
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
        "Tolerance of the making: upper less lower limit. Left out: ISO 286 grade 6 of the mate's size.",
      )
      .optional(),
  });
}

/** The fit of a side: `auto`, a tolerance zone, or limits made to the measured mate. */
function fitSchema(fields: Fields) {
  const word = zone("Tolerance zone of the adapter's register.", ['auto']);
  const section = madeToMate(fields);
  const about =
    "Fit of the adapter's register: auto suits the flange's; a tolerance zone of ISO 286, such as H7 or g6; or made to the measured mate: { clearance: 0.02 mm } or { interference: 0.01 mm }.";
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

export type AdapterInput = z.output<ReturnType<typeof adapterSchema>>;
export type SideInput = z.output<ReturnType<typeof sideSchema>>;
/** Limits made to the measured mate. */
export type MadeToMateInput = z.output<ReturnType<typeof madeToMate>>;
