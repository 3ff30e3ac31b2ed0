/** The keys of the toothed wheel. */
import { z } from 'zod';
import { material, thread } from './codes.ts';
import type { Fields } from './quantity-fields.ts';
import { fitSchema } from './schema-fit.ts';
import { choice, whole, wholeOr, words } from './word-fields.ts';

/** What the sensor counts: teeth that stand out, or bars between windows. */
export const wheelForms = ['open', 'windows'] as const;

/** Outside diameters that a wheel may have, mm. */
export const outsideRange = { least: 20, most: 1000 } as const;

/** Schema of `wheel`. */
export function wheelSchema(fields: Fields) {
  return z
    .strictObject({
      name: words(40, 'What to call the part.').optional(),
      teeth: wholeOr(
        ['auto'],
        3,
        3600,
        'Number of tooth places, missing ones included; auto: what the controller expects (sensor.expects or sensor.was).',
      ),
      // What only window wheels have is left out of every other job, so that such a job keeps its revision.
      form: choice(
        wheelForms,
        'open: teeth stand out from the rim. windows: slots in a closed rim, read from the side only (sensor.direction: axial); the bars between them are the teeth. Left out: open.',
      ).optional(),
      missing: whole(0, 60, 'How many neighbouring teeth, or bars between windows, are left out.').prefault(0),
      wide: whole(
        0,
        60,
        'A position mark that is no gap: how many neighbouring valleys, or windows, before tooth 1 are filled, so that one tooth is as many places longer. One of missing, wide and extra.',
      ).optional(),
      extra: whole(
        0,
        1,
        'A position mark that is no gap: 1 for one more tooth, or bar, midway in the valley before tooth 1; it needs a ratio below 0.5. One of missing, wide and extra.',
      ).optional(),
      outside: fields
        .lengthOr(
          ['auto'],
          outsideRange,
          'Outside diameter over the teeth, or of the closed rim; auto: the least whole mm that clears screws, adapter and flanges and suits sensor and sheet.',
        )
        .prefault('auto'),
      rim: fields
        .length(
          { least: 0.5, most: 200 },
          'Width of the closed rim outside of the windows. Left out: the thickness of the sheet, 3 mm at least.',
        )
        .optional(),
      root: fields
        .length(
          { least: 10, most: 1000 },
          'Root diameter, or that of the inside of the windows; give root or height, not both. Beside outside: auto give height, or neither.',
        )
        .optional(),
      height: fields
        .length(
          { least: 0.3, most: 100 },
          'Height of a tooth, or of a window; give root or height, not both. Both left out: what the sensor needs, and what the cut may take of it.',
        )
        .optional(),
      ratio: fields
        .quantity(
          'ratio',
          { least: 0.1, most: 0.9 },
          'Tooth width at the outside as a share of the pitch; with windows: width of a bar in the middle of the windows.',
        )
        .prefault(0.5),
      flanks: choice(
        ['straight', 'radial'],
        'straight: the two flanks of a tooth are parallel. radial: they point at the axis.',
      ).prefault('straight'),
      root_radius: fields
        .length({ least: 0, most: 20 }, 'Radius in the corner between flank and root, or in all corners of a window.')
        .prefault('0.5 mm'),
      tip_break: fields.length({ least: 0, most: 5 }, 'Size of the broken edge at the tooth tip.').prefault('0 mm'),
      thickness: fields.length({ least: 0.5, most: 30 }, 'Thickness of the sheet.').prefault('5 mm'),
      flatness: fields
        .length(
          { least: 0, most: 10 },
          'How far the wheel is from flat, measured on a surface plate or asked of the service; counts where the sensor looks from the side. Left out: ISO 2768-2, class K.',
        )
        .optional(),
      material: material('Material of the wheel; most sensors need a magnetic one.').prefault('DC01'),
      on: choice(
        ['adapter', 'driving', 'driven'],
        'What the wheel is screwed to: the adapter, or the rim of that flange.',
      ).prefault('adapter'),
      face: choice(['driven', 'driving'], 'Face of the adapter on which the wheel sits.').prefault('driven'),
      bore: fields
        .lengthOr(['auto'], { least: 5, most: 900 }, 'Bore that centres the wheel; auto follows its register.')
        .prefault('auto'),
      clearance: fields
        .lengthOr(
          ['auto'],
          { least: 0, most: 2 },
          'How much larger the bore is than its register, on the diameter; auto: what the service may cut it smaller, so that the smallest bore still goes on, 0.05 mm at least.',
        )
        .prefault('auto'),
      fit: fitSchema(fields, {
        zone: "Tolerance zone of the wheel's bore.",
        about:
          'How the bore is finished: auto leaves it as cut, wheel.clearance over its register; a tolerance zone of ISO 286, such as H8, or { clearance: 0.01 mm } made to the register: cut undersize and turned. Left out: as cut, or H8 where only that brings the wheel within its limits.',
        grade: 8,
      }).prefault('auto'),
      stock: fields
        .length(
          { least: 0.2, most: 10 },
          'Metal left in the cut bore for turning, on the diameter; counts with wheel.fit.',
        )
        .prefault('1 mm'),
      set_true: fields
        .length(
          { least: 0.005, most: 1 },
          'Set true with a dial at the tips to this total indicator reading before its screws are tightened; left out: it hangs on its bore.',
        )
        .optional(),
      shoulder: fields
        .length({ least: 0.5, most: 50 }, "Height of the adapter's register for the wheel.")
        .prefault('3 mm'),
      screws: z
        .strictObject({
          count: whole(2, 36, 'How many screws hold the wheel.').prefault(6),
          circle: fields.lengthOr(['auto'], { least: 8, most: 950 }, 'Diameter of the screw circle.').prefault('auto'),
          size: thread('Screw thread.').prefault('M5'),
          first: fields
            .angleOr(['auto'], 'Angle of the first screw; auto keeps clear of the other holes.')
            .prefault('auto'),
          depth: fields.lengthOr(['auto'], { least: 2, most: 60 }, 'Depth of thread in the adapter.').prefault('auto'),
        })
        .describe('The screws that hold the wheel.')
        .prefault({}),
      tooth: fields.angle('Angle of the centre of tooth 1.').prefault(0),
      room: fields
        .length(
          { least: 0, most: 1000 },
          'Distance from the tips, or the rim, to whatever stands nearest and does not turn: casing, bracket, floor; the sensor itself aside.',
        )
        .optional(),
    })
    .describe('The toothed wheel; leave the section out when there is none.');
}

export type WheelInput = z.output<ReturnType<typeof wheelSchema>>;
