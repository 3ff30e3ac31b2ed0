/** The keys of a flange. Every size is measured on the part; a preset may stand in for what was not measured. */
import { z } from 'zod';
import { material, thread, zone } from './codes.ts';
import { shownValue } from './errors.ts';
import { accept, refuse } from './field.ts';
import type { Fields, Range } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { measured } from './schema-measured.ts';
import { chordsField, dialField } from './schema-readings.ts';
import { choice, listOf, whole, wordOr, words, yesNo } from './word-fields.ts';

export const flangeRanges = {
  outside: { least: 20, most: 700 },
  thickness: { least: 0.5, most: 200 },
  register: { least: 5, most: 600 },
  registerDepth: { least: 0.2, most: 80 },
  circle: { least: 8, most: 680 },
  hole: { least: 2, most: 80 },
} as const satisfies Record<string, Range>;

/** Schema of `driving` or `driven`. */
export function flangeSchema(fields: Fields) {
  return z.strictObject({
    from: words(
      60,
      'Id of a known pattern to start from; every key below overrides it. The command flangewright flanges lists them, and so does the page.',
    ).optional(),
    name: words(60, 'What this flange is, in your words.').optional(),
    outside: measured(fields, flangeRanges.outside, 'Outside diameter.').optional(),
    thickness: measured(fields, flangeRanges.thickness, 'Thickness of the flange at its holes.').optional(),
    register: wordOr(
      ['none'],
      registerSchema(fields),
      'The step that centres the flange: none, or its gender, diameter and depth.',
    ).optional(),
    holes: holesSchema(fields).optional(),
    bore: fields.length({ least: 1, most: 600 }, 'Diameter of the free room in the middle of the flange.').optional(),
    runout: z
      .strictObject({
        rim: dialField(fields, 'Run-out of the register or rim.').optional(),
        face: dialField(fields, 'Run-out of the face near its rim.').optional(),
      })
      .describe('What a dial indicator showed on the turning flange.')
      .optional(),
    material: material('Material of the flange, for the grip of its tapped threads.').optional(),
    behind: fields
      .length({ least: 0, most: 2000 }, 'Free room behind the flange for heads, nuts and a spanner.')
      .optional(),
  });
}

/** Without a preset a register needs gender, diameter and depth; with one it overrides. See the cross-checks. */
export function registerSchema(fields: Fields) {
  return z.strictObject({
    gender: choice(
      ['male', 'female'],
      "The flange's own: male stands out of its face, female goes into it.",
    ).optional(),
    diameter: measured(fields, flangeRanges.register, 'Diameter of the register.').optional(),
    depth: measured(fields, flangeRanges.registerDepth, 'How far it stands out, or how deep it is.').optional(),
    fit: zone('Tolerance zone when a drawing states one: h7 for a male, H7 for a female.').optional(),
    corner: fields
      .length(
        { least: 0, most: 20 },
        'Fillet radius at the foot of a male register, or chamfer at the mouth of a female one.',
      )
      .optional(),
  });
}

export function holesSchema(fields: Fields) {
  return z
    .strictObject({
      count: whole(2, 72, 'How many holes.').optional(),
      use: whole(
        2,
        72,
        'How many of them get a screw, evenly spaced and counted from hole 1: a divisor of count, better 3 or more. Left out: all of them. The others stay empty, and nothing is put into them.',
      ).optional(),
      circle: measured(fields, flangeRanges.circle, 'Diameter of the circle through the hole centres.').optional(),
      chord: measured(
        fields,
        { least: 2, most: 680 },
        'Instead of circle: distance between the centres of two neighbouring holes.',
      ).optional(),
      chords: chordsField(fields).optional(),
      at: listOf(
        (pair) => readPair(pair, fields),
        2,
        72,
        "Instead of count and circle: [x, y] of each hole from the axis, seen looking at this flange's own face.",
        {
          type: 'array',
          minItems: 2,
          maxItems: 2,
          items: { type: ['number', 'string'] },
        },
      ).optional(),
      first: fields
        .angle("Angle of hole 1, counter-clockwise from the x axis, seen looking at this flange's own face. Default 0.")
        .optional(),
      angles: listOf(
        readAngle,
        2,
        72,
        "For uneven spacing on one circle: the angle of each hole, counter-clockwise, seen looking at this flange's own face.",
        {
          type: ['number', 'string'],
        },
      ).optional(),
      diameter: measured(fields, flangeRanges.hole, 'Clear holes: their diameter.').optional(),
      thread: thread('Tapped holes: their thread.').optional(),
      depth: fields.length({ least: 1, most: 200 }, 'Tapped holes: usable depth of thread.').optional(),
      through: yesNo('Tapped holes: true when they go right through.').optional(),
    })
    .describe('The bolt holes: count and circle, count and chords, angles and circle, or at; and diameter or thread.');
}

/** [x, y] from the axis. */
export function readPair(typed: unknown, fields: Fields) {
  if (!Array.isArray(typed) || typed.length !== 2)
    return refuse(`Must be a pair, written [x, y]; got ${shownValue(typed)}.`);
  const [x, y] = typed.map((coordinate) =>
    readQuantity(coordinate, 'length', { least: -350, most: 350 }, fields.units),
  );
  const faults = [x, y].flatMap((answer, index) =>
    answer === undefined || answer.ok ? [] : answer.faults.map((fault) => ({ ...fault, path: [index] })),
  );
  if (x?.ok !== true || y?.ok !== true) return { ok: false as const, faults };
  return accept([x.value, y.value] as const);
}

function readAngle(typed: unknown) {
  return readQuantity(typed, 'angle', { least: -360, most: 360 }, 'mm');
}

export type FlangeInput = z.output<ReturnType<typeof flangeSchema>>;
export type RegisterInput = z.output<ReturnType<typeof registerSchema>>;
export type HolesInput = z.output<ReturnType<typeof holesSchema>>;
