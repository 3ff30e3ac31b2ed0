/** The keys of the adapter and of its two sides. */
import { z } from 'zod';
import { material, thread, zone } from './codes.ts';
import type { Fields } from './quantity-fields.ts';
import { dowelsSchema } from './schema-dowels.ts';
import { fitSchema } from './schema-fit.ts';
import { shopSchema } from './schema-shop.ts';
import { choice, wordOr, words, yesNo } from './word-fields.ts';

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
      bolt_up: boltUpSchema(fields).optional(),
      drawing: drawingSchema().optional(),
      shop: shopSchema(fields).prefault({}),
      driving: sideSchema(fields, 'driving').prefault({}),
      driven: sideSchema(fields, 'driven').prefault({}),
    })
    .describe('The adapter between the two flanges.');
}

/** How the workshop drawings are laid out. */
function drawingSchema() {
  return z
    .strictObject({
      paper: choice(
        ['auto', 'a4', 'a3', 'letter', 'tabloid'],
        'Paper of the workshop drawings; auto is A3, or Tabloid for a job in inches.',
      ).prefault('auto'),
      angle: choice(
        ['auto', 'first', 'third'],
        'First or third angle projection; auto is first, or third for a job in inches.',
      ).prefault('auto'),
      scale: choice(
        ['auto', '10:1', '5:1', '2:1', '1:1', '1:2', '1:5', '1:10'],
        'Scale of the views; auto is the largest that fits.',
      ).prefault('auto'),
    })
    .describe('Workshop drawings of adapter and wheel; given: they are made every time.');
}

/** Which way round the parts are bolted, of those that bring holes onto holes. */
function boltUpSchema(fields: Fields) {
  const about =
    'Counter-clockwise seen from the driven side; one of the turns that bring holes onto holes. Default 0: as drawn.';
  return z
    .strictObject({
      driving: fields
        .angle(`Turn of the adapter, and of all that it carries, on the driving flange, against the drawing. ${about}`)
        .prefault(0),
      driven: fields
        .angle(
          `Turn of the driven flange on the adapter, against the drawing (its hole 1 on the first of the adapter's driven holes). Clockwise for who looks at the driven flange's own face. ${about}`,
        )
        .prefault(0),
    })
    .describe('Which way round the joint is bolted up: it decides how the run-outs of both flanges add.');
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
      fit: fitSchema(fields, {
        zone: "Tolerance zone of the adapter's register.",
        about:
          "Fit of the adapter's register: auto suits the flange's; a tolerance zone of ISO 286, such as H7 or g6; or made to the measured mate: { clearance: 0.02 mm } or { interference: 0.01 mm }.",
        grade: 6,
      }).prefault('auto'),
      dowels: dowelsSchema(fields, side).optional(),
      friction: fields
        .quantity(
          'ratio',
          { least: 0.04, most: 0.35 },
          'Friction in the thread and under the head; it decides the torque. Left out: 0.12, lightly oiled (VDI 2230 class B, 0.08 to 0.16).',
        )
        .optional(),
      face_friction: fields
        .quantity(
          'ratio',
          { least: 0.04, most: 0.8 },
          'Friction between flange and adapter, where it is known by test; it decides the torque that the clamped faces carry. Left out: 0.15 steel on steel, 0.12 steel on aluminium, both wiped clean.',
        )
        .optional(),
    })
    .describe(`The ${side} side: how it is fastened and centred.`);
}

export type AdapterInput = z.output<ReturnType<typeof adapterSchema>>;
export type SideInput = z.output<ReturnType<typeof sideSchema>>;
export type { MadeToMateInput } from './schema-fit.ts';
