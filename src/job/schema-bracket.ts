/** The keys of `bracket`: what holds the sensor over the wheel. */
import { z } from 'zod';
import { material, thread } from './codes.ts';
import type { Fields } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { choice, listOf, whole, words } from './word-fields.ts';

/** Shapes of a bracket. */
export const bracketForms = ['flat', 'angle', 'offset', 'channel'] as const;

/** Thickest sheet that a bracket may have, mm. */
export const thickestBracket = 12;

/** Schema of `bracket`. */
export function bracketSchema(fields: Fields) {
  return z
    .strictObject({
      name: words(40, 'What to call the part.').optional(),
      form: choice(
        bracketForms,
        'flat: a plate on stand-offs. angle: one bend, bolted to an end face. offset: two bends the opposite way, a step. channel: two bends the same way, the arm runs back over the foot.',
      ).prefault('angle'),
      towards: choice(
        ['driving', 'driven'],
        'On which side of the wheel the bolts are (radial sensing), or which face of the wheel is read (axial sensing).',
      ).prefault('driving'),
      bolts: boltsSchema(fields),
      sensor: sensorSchema(fields),
      tolerance: fields
        .length({ least: 0.05, most: 3 }, 'How far the gap may be off, either way, once it is set.')
        .prefault('0.2 mm'),
      thickness: fields.length({ least: 0.5, most: thickestBracket }, 'Thickness of the sheet.').prefault('3 mm'),
      material: material('Material of the bracket.').prefault('S235JR'),
      radius: fields
        .lengthOr(
          ['auto'],
          { least: 0, most: 40 },
          'Inside radius of the bends; auto: what the usual die leaves, and no tighter than the material stands.',
        )
        .prefault('auto'),
      k: fields
        .quantityOr(
          ['auto', 'DIN 6935'],
          'ratio',
          { least: 0.2, most: 0.6 },
          "K-factor of the bends; auto: by the trade's table; DIN 6935: by its correction factor; or your own.",
        )
        .prefault('auto'),
      trial_bend: trialSchema(fields).optional(),
      angle: fields
        .quantityOr(
          ['auto'],
          'angle',
          { least: 10, most: 90 },
          'Angle of the two bends of an offset, counted from flat; auto: 90 degrees, or less where the step is too low for that.',
        )
        .prefault('auto'),
      slot: fields
        .lengthOr(
          ['auto'],
          { least: 0, most: 40 },
          'How far the bracket can be pushed along its slots, in all; 0: round holes; auto: enough to set the gap.',
        )
        .prefault('auto'),
      packing: fields
        .length(
          { least: 0, most: 20 },
          'Shims under the foot as designed (flat, offset, channel): taking some out or adding some sets the gap.',
        )
        .prefault('1 mm'),
      edge: fields
        .lengthOr(
          ['auto'],
          { least: 1, most: 40 },
          'Metal between a hole and the edge; auto: twice the thickness, and 4 mm at least.',
        )
        .prefault('auto'),
      width: fields
        .lengthOr(['auto'], { least: 8, most: 300 }, 'Width of the arm; auto: what sensor and ear need.')
        .prefault('auto'),
      corner: fields.length({ least: 0, most: 30 }, 'Radius of the outside corners.').prefault('3 mm'),
      firing: firingSchema(fields).optional(),
    })
    .describe('The bracket that holds the sensor over the wheel.');
}

function boltsSchema(fields: Fields) {
  return z
    .strictObject({
      size: thread('Screw thread.').prefault('M6'),
      spacing: fields.length({ least: 8, most: 300 }, 'Distance of the two bolts from each other.'),
      from_axis: fields.length(
        { above: 0, most: 1500 },
        "From the shaft's axis: to the row of bolts, or, where they screw into a face that looks away from or at the axis, to that face.",
      ),
      along: fields.length(
        { least: -300, most: 600 },
        'Along the shaft, from the middle of the teeth (radial sensing) or the face that is read (axial sensing): to the row of bolts, or, where they screw into an end face, to that face.',
      ),
    })
    .describe('The two threaded holes that the bracket is bolted to, side by side across its length.');
}

function sensorSchema(fields: Fields) {
  return z
    .strictObject({
      bore: fields.length({ least: 2, most: 100 }, "Hole that the sensor's nose goes through."),
      reach: fields.length(
        { least: 1, most: 200 },
        'From the underside of the ear, which rests on the bracket, to the tip.',
      ),
      behind: fields
        .length(
          { least: 0, most: 300 },
          'Free length behind the ear: body, plug and the bend of the cable. Left out: nothing is held against it.',
        )
        .optional(),
      mass: fields
        .quantity('mass', { above: 0, most: 5000 }, 'Mass of the sensor with the cable that hangs on it.')
        .prefault('60 g'),
      ear: z
        .strictObject({
          distance: fields.length({ least: 3, most: 100 }, "From the sensor's axis to the ear's screw."),
          size: thread('Screw thread of the ear.').prefault('M6'),
          towards: choice(
            ['across', 'end', 'foot'],
            'Which way the ear points on the bracket; across: to the side, counter-clockwise seen from the driven side, whichever side the bracket comes from.',
          ).prefault('across'),
        })
        .describe("The sensor's ear and its screw; left out: the sensor is held by its own thread and nut.")
        .optional(),
    })
    .describe('The sensor as a body: what the bracket must hold.');
}

function trialSchema(fields: Fields) {
  return z
    .strictObject({
      flat: fields.length({ above: 0, most: 2000 }, 'Length of the strip before it was bent.'),
      legs: listOf(
        (leg) => readQuantity(leg, 'length', { above: 0, most: 2000 }, fields.units),
        2,
        2,
        'Both legs measured to the outside.',
        { type: ['number', 'string'] },
      ),
      angle: fields
        .quantity('angle', { least: 10, most: 170 }, 'Angle of the bend, counted from flat.')
        .prefault('90 deg'),
      radius: fields.length({ least: 0, most: 40 }, 'Inside radius that the bend came out with.'),
    })
    .describe('A trial bend in the same sheet on the same press; its K-factor stands before k.');
}

function firingSchema(fields: Fields) {
  return z
    .strictObject({
      cylinders: whole(1, 16, 'Cylinders of the engine.'),
      strokes: whole(2, 4, 'Strokes of its cycle, 2 or 4.').prefault(4),
      speed: fields.quantity('speed', { above: 0, most: 30_000 }, 'Highest speed of the engine.'),
    })
    .describe('The engine that shakes the bracket.');
}

export type BracketInput = z.output<ReturnType<typeof bracketSchema>>;
