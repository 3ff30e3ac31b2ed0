/** The keys of `shaft` that its speed hangs on: the tube, what carries its ends, what shakes it. */
import { z } from 'zod';
import { material } from './codes.ts';
import type { Fields } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { listOf, whole } from './word-fields.ts';

/** `tube`, `cruise` and `engine`, to stand among the other keys of `shaft`. */
export function tubeKeys(fields: Fields) {
  return {
    tube: tubeSchema(fields).optional(),
    cruise: fields
      .quantity(
        'speed',
        { above: 0, most: 100_000 },
        'Speed at which this shaft runs for long, such as cruising speed.',
      )
      .optional(),
    engine: engineSchema(fields).optional(),
  };
}

function tubeSchema(fields: Fields) {
  return z
    .strictObject({
      outside: fields.length({ least: 20, most: 400 }, 'Outside diameter of the tube.'),
      wall: fields.length({ least: 0.5, most: 50 }, 'Wall thickness of the tube.'),
      length: fields.length(
        { least: 150, most: 6000 },
        'Length of the shaft as it runs, from joint centre to joint centre.',
      ),
      material: material('What the tube is made of.').prefault('S355'),
      near: endSchema(fields, 'The end at this joint.').prefault({}),
      far: endSchema(fields, 'The other end.').prefault({}),
    })
    .superRefine((tube, context) => {
      const reach = (tube.near.reach ?? 0) + (tube.far.reach ?? 0);
      if (2 * tube.wall > tube.outside + 1e-9) {
        const message = `A wall of ${tube.wall} mm is more than half of the outside, ${tube.outside} mm.`;
        context.addIssue({ code: 'custom', path: ['wall'], message, params: { allowed: 'up to half of outside' } });
      }
      if (reach > 0.6 * tube.length) {
        const message = `The forks reach ${Number(reach.toFixed(2))} mm into a shaft of ${Number(tube.length.toFixed(2))} mm: little tube is left to bend.`;
        context.addIssue({ code: 'custom', path: ['length'], message, params: { allowed: 'forks up to 60 % of it' } });
      }
    })
    .describe('The tube of the shaft. With this key its critical speed, torsion and twist are judged.');
}

function endSchema(fields: Fields, about: string) {
  return z
    .strictObject({
      fork: fields
        .quantity(
          'mass',
          { least: 0, most: 100_000 },
          'Mass of what is welded into the tube here: fork, stub, slip spline.',
        )
        .optional(),
      reach: fields
        .length({ least: 1, most: 1500 }, 'From the joint centre to where the tube starts (the weld).')
        .optional(),
      neck: fields
        .length({ least: 10, most: 400 }, 'Diameter of the thinnest solid part on that way, such as a spline stub.')
        .optional(),
      stiffness: fields
        .quantity(
          'stiffness',
          { least: 50, most: 10_000_000 },
          'Sideways stiffness of what carries this end: bearing, housing and mount. Left out: it is taken not to give.',
        )
        .optional(),
      mass: fields
        .quantity(
          'mass',
          { least: 0, most: 1_000_000 },
          'Mass that moves with this end: flange and half of the joint. Adapter and wheel are added at the near end.',
        )
        .optional(),
    })
    .superRefine(({ neck, reach, fork }, context) => {
      if (reach !== undefined || (neck === undefined && fork === undefined)) return;
      const message = 'How far it reaches is missing: from the joint centre to the weld.';
      context.addIssue({ code: 'custom', path: ['reach'], message, params: { allowed: 'a length' } });
    })
    .describe(about);
}

function engineSchema(fields: Fields) {
  return z
    .strictObject({
      cylinders: whole(1, 16, 'Cylinders of the four-stroke engine that turns the shaft.'),
      gears: listOf(
        (ratio) => readQuantity(ratio, 'ratio', { least: 0.1, most: 30 }, fields.units),
        1,
        12,
        'Engine turns for one turn of this shaft, gear by gear, those it is driven in for long: [1, 0.7].',
        { type: ['number', 'string'] },
      ).prefault([1]),
    })
    .describe('The engine: when its firing meets the bending of the shaft.');
}

export type TubeInput = z.output<ReturnType<typeof tubeSchema>>;
