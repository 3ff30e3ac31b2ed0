/** The keys of a side's dowels. */
import { z } from 'zod';
import type { Fields } from './quantity-fields.ts';
import { fitSchema } from './schema-fit.ts';
import { measured } from './schema-measured.ts';
import { choice, whole, wordOr } from './word-fields.ts';

/** Grade of a dowel hole made to its pin when no tolerance is asked for: what a reamer holds. Common practice. */
export const dowelHoleGrade = 7;

function dowelsSection(fields: Fields, side: string) {
  return z.strictObject({
    size: fields
      .lengthOr(
        ['auto'],
        { least: 3, most: 20 },
        'Diameter of the pins, a size of ISO 8734; auto: no thicker than the screws, and short enough for the flange.',
      )
      .prefault('auto'),
    count: whole(1, 6, 'How many pins, equally spaced.').prefault(2),
    circle: fields
      .lengthOr(
        ['auto'],
        { above: 0, most: 600 },
        'Diameter of the circle through the pins; auto: the screw circle, or the nearest one that leaves metal.',
      )
      .prefault('auto'),
    first: fields
      .angleOr(
        ['auto'],
        `Angle of the first pin, looking at the ${side} flange's own face and counted like its holes; auto: where most metal is left.`,
      )
      .prefault('auto'),
    length: fields
      .lengthOr(['auto'], { least: 3, most: 200 }, 'Length of the pins; auto: a standard length of about 3 diameters.')
      .prefault('auto'),
    fit: fitSchema(fields, {
      zone: 'Tolerance zone of the holes in the adapter.',
      about:
        'Fit of the holes in the adapter on the pin (m6): auto is H7, a light press; a tolerance zone of ISO 286; or made to the pin: { clearance: 0.005 mm } or { interference: 0.01 mm }.',
      grade: dowelHoleGrade,
    }).prefault('auto'),
    reamed: choice(
      ['together', 'separately'],
      'together: adapter and flange are set true, clamped, and reamed in one go. separately: each part is drilled by itself, or the flange has its holes already.',
    ).prefault('together'),
    flange: measured(
      fields,
      { above: 0, most: 25 },
      `Dowel holes that the ${side} flange has already, as measured; left out: it gets new ones.`,
    ).optional(),
  });
}

/** Schema of `adapter.<side>.dowels`: none, auto, or keys of its own. Everything that is left out is chosen. */
export function dowelsSchema(fields: Fields, side: string) {
  const section = dowelsSection(fields, side);
  const about = `Dowel pins between the adapter and the ${side} flange: they centre it where it has no register, and carry what friction does not, where the torque works one way. none, auto, or keys of its own.`;
  return wordOr(['none', 'auto'], section, about);
}

export type DowelsInput = z.output<ReturnType<typeof dowelsSection>>;
