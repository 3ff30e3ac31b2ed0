/** The keys of `shaft.angles`: how the shafts lie, what joins them, and what may be shimmed. */
import { z } from 'zod';
import type { Vector } from '../formulas/vectors.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { shownValue } from './errors.ts';
import { type Answer, accept, refuse } from './field.ts';
import type { Fields } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { choice, listOf, whole, words } from './word-fields.ts';

/** Kinds of joint between two shafts. */
export const jointKinds = ['universal', 'constant velocity'] as const;

function memberSection(fields: Fields) {
  const angle = { least: -180, most: 180 };
  return z
    .strictObject({
      name: words(40, 'What it is: gearbox output, shaft, pinion.').optional(),
      side: fields
        .quantity(
          'angle',
          angle,
          'Inclinometer laid along it: plus when its far end, the one away from the driving end, is the lower one.',
        )
        .optional(),
      plan: fields
        .quantity(
          'angle',
          angle,
          'Seen from above, looking from the driving end: plus when its far end lies more to the left. Left out: 0, in line.',
        )
        .optional(),
      length: fields
        .length({ above: 0, most: 10_000 }, 'Joint centre to joint centre, for a shaft between two joints.')
        .optional(),
    })
    .describe('One shaft of the line.');
}

function jointSection(fields: Fields) {
  return z
    .strictObject({
      kind: choice(
        jointKinds,
        'universal: cross and two forks. constant velocity: turns evenly at any angle.',
      ).prefault('universal'),
      yokes: fields
        .quantity(
          'angle',
          { least: -180, most: 180 },
          'How far its input fork is turned against the output fork of the universal joint before it, clockwise looking from the driving end. Left out: 0, forks in line.',
        )
        .optional(),
      most: fields.quantity('angle', { above: 0, most: 90 }, 'Steepest angle that the joint itself allows.').optional(),
    })
    .describe('One joint.');
}

function shimSection(fields: Fields) {
  return z
    .strictObject({
      wedge: fields
        .quantity(
          'angle',
          { least: 0, most: 15 },
          `Steepest wedge that may go under the axle; 0: none. Left out: ${shaftRule('wedge-most').limit} degrees.`,
        )
        .optional(),
      mount: fields.length({ above: 0, most: 200 }, 'How far the gearbox mount may be raised or lowered.').optional(),
      mount_pivot: fields
        .length(
          { least: 50, most: 5000 },
          'From the front mounts, about which the gearbox tips, to the first joint centre. Needed with mount.',
        )
        .optional(),
      bearing: fields
        .length({ above: 0, most: 200 }, 'How far the centre bearing may be raised or lowered.')
        .optional(),
    })
    .describe('What may be shimmed to make the train run evenly.');
}

/** A point of the line: along, to the left, up, mm. */
function readPoint(typed: unknown, fields: Fields): Answer<Vector> {
  if (!Array.isArray(typed) || typed.length !== 3) {
    return refuse(`A point is three lengths, [along, to the left, up]; got ${shownValue(typed)}.`);
  }
  const place = { least: -20_000, most: 20_000 };
  const [x, y, z] = typed.map((one) => readQuantity(one, 'length', place, fields.units));
  if (x?.ok && y?.ok && z?.ok) return accept([x.value, y.value, z.value]);
  const faults = [x, y, z].flatMap((one, i) =>
    one === undefined || one.ok ? [] : one.faults.map((fault) => ({ ...fault, path: [i, ...(fault.path ?? [])] })),
  );
  return { ok: false, faults };
}

/** Schema of `shaft.angles`. */
export function anglesSchema(fields: Fields) {
  const limit = { above: 0, most: 100_000 };
  return z
    .strictObject({
      line: z
        .array(memberSection(fields))
        .min(2)
        .max(6)
        .describe('Every turning shaft in order, from the one that drives to the one at the far end: two to six.')
        .optional(),
      points: listOf(
        (typed) => readPoint(typed, fields),
        3,
        7,
        'Instead of angles: points [along, to the left, up]. First one on the driving shaft, then every joint centre in order, last one on the shaft behind the last joint.',
        { type: 'array', minItems: 3, maxItems: 3, items: { type: ['number', 'string'] } },
      ).optional(),
      joints: z
        .array(jointSection(fields))
        .min(1)
        .max(5)
        .describe('The joints in order, one less than shafts. Left out: universal joints with their forks in line.')
        .optional(),
      doubt: fields
        .quantity(
          'angle',
          { least: 0, most: 10 },
          `Half-width of the doubt of one side angle. Left out: ${shaftRule('inclinometer').limit} degrees.`,
        )
        .optional(),
      torsional: fields
        .quantity(
          'ratio',
          limit,
          `Most that the whole train may be uneven, rad/s2. Left out: ${shaftRule('torsional').limit}; 300 is quiet, 500 the upper end.`,
        )
        .optional(),
      inertial: fields
        .quantity(
          'ratio',
          limit,
          `Most that one joint may be uneven, rad/s2. Left out: ${shaftRule('inertial').limit}; 500 is quiet.`,
        )
        .optional(),
      measures: whole(
        1,
        6,
        'Which shaft of the line the sensor is meant to tell the speed of, counted from 1. Left out: the far end.',
      ).optional(),
      ripple: fields
        .quantity(
          'ratio',
          { above: 0, most: 1 },
          `Swing of the speed that the reader of the signal bears, greatest less least, as a share. Left out: ${100 * shaftRule('ripple').limit} %.`,
        )
        .optional(),
      shim: shimSection(fields).optional(),
    })
    .superRefine((angles, context) => {
      for (const { path, message } of anglesFaults(angles)) {
        context.addIssue({
          code: 'custom',
          path: [...path],
          message,
          params: { allowed: 'see the description of angles' },
        });
      }
    })
    .describe('How the shafts lie and what joins them.');
}

interface AnglesToCheck {
  readonly line?: readonly { readonly side?: number | undefined }[] | undefined;
  readonly points?: readonly unknown[] | undefined;
  readonly joints?: readonly unknown[] | undefined;
  readonly measures?: number | undefined;
}

/** What does not go together among the keys of `angles`. */
function anglesFaults({ line, points, joints, measures }: AnglesToCheck) {
  const faults: { readonly path: readonly (string | number)[]; readonly message: string }[] = [];
  if (line === undefined && points === undefined) {
    faults.push({ path: [], message: 'Give line: (angles) or points: (coordinates).' });
    return faults;
  }
  const shafts = points === undefined ? (line?.length ?? 0) : points.length - 1;
  if (points !== undefined && line !== undefined && line.length !== shafts) {
    const message = `The points make ${shafts} shafts; line lists ${line.length}. With points, line only names the shafts.`;
    faults.push({ path: ['line'], message });
  }
  if (points !== undefined && line?.some(({ side }) => side !== undefined) === true) {
    faults.push({ path: ['points'], message: 'Angles and coordinates are both given; keep one of them.' });
  }
  if (points === undefined) {
    line?.forEach(({ side }, i) => {
      if (side === undefined)
        faults.push({ path: ['line', i], message: 'This shaft needs side: its inclinometer reading.' });
    });
  }
  if (joints !== undefined && joints.length !== shafts - 1) {
    faults.push({
      path: ['joints'],
      message: `${shafts} shafts are joined by ${shafts - 1} joints; ${joints.length} are listed.`,
    });
  }
  if (measures !== undefined && measures > shafts) {
    faults.push({ path: ['measures'], message: `There are ${shafts} shafts; number ${measures} is none of them.` });
  }
  return faults;
}

export type AnglesInput = z.output<ReturnType<typeof anglesSchema>>;
