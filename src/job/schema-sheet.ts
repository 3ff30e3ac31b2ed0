/** The keys of `sheet`: what the cutting service can do, and how many parts it is asked for. */
import { z } from 'zod';
import { cutTolerance } from '../standards/sheet-cutting.ts';
import { shownValue } from './errors.ts';
import type { Answer } from './field.ts';
import { accept, isMap, refuse } from './field.ts';
import type { Fields } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { listOf, whole, words } from './word-fields.ts';

/** Flavours of outline files. */
export const outlineFlavours = ['standard', 'r12', 'polyline'] as const;

/** What a service holds on a contour in sheet up to a thickness, mm. */
export interface ThicknessTolerance {
  readonly upTo: number;
  readonly tolerance: number;
}

/** Schema of `sheet`. */
export function sheetSchema(fields: Fields) {
  const share = { least: 0.1, most: 5 };
  const half = { least: 0.001, most: 2 };
  return z
    .strictObject({
      service: words(60, 'What this set of limits is called: the shop, and the machine it stands for.').optional(),
      quantity: whole(1, 100_000, 'How many of each sheet part are ordered.').prefault(1),
      hole: fields
        .quantity('ratio', share, 'Smallest hole the cutting service makes, as a share of the sheet thickness.')
        .prefault(1),
      web: fields
        .quantity('ratio', share, 'Smallest web the cutting service leaves, as a share of the sheet thickness.')
        .prefault(1),
      tolerance: fields.length(half, 'Half-width of what the service holds on a contour.').optional(),
      tolerances: listOf(
        (typed) => thicknessTolerance(typed, fields),
        1,
        20,
        'What the service holds on a contour by thickness, thinnest first: [{ up_to: 3 mm, tolerance: 0.1 mm }, ...]. sheet.tolerance goes before it.',
        {
          type: 'object',
          properties: { up_to: { type: ['number', 'string'] }, tolerance: { type: ['number', 'string'] } },
          required: ['up_to', 'tolerance'],
          additionalProperties: false,
        },
      ).optional(),
      inside_radius: fields.length({ least: 0, most: 20 }, 'Smallest inside radius the service can cut.').optional(),
      part: z
        .strictObject({
          least: fields
            .length({ least: 0.1, most: 1000 }, 'Shortest side of a part that does not fall through the grid.')
            .optional(),
          most: listOf(
            (side) => readQuantity(side, 'length', { least: 10, most: 20_000 }, fields.units),
            2,
            2,
            'Largest part the service takes, [x, y].',
            { type: ['number', 'string'] },
          ).optional(),
        })
        .describe('Smallest and largest part the service takes.')
        .prefault({}),
      kerf: fields
        .lengthOr(
          ['service'],
          { least: 0, most: 3 },
          'Width of the cut to allow for in the outline; service: they allow for it.',
        )
        .prefault('service'),
      flavour: listOf(
        (typed) => {
          const flavour = outlineFlavours.find((name) => name === String(typed).trim().toLowerCase());
          return flavour === undefined
            ? refuse(`Must be ${outlineFlavours.join(', ')}; got ${shownValue(typed)}.`, {
                allowed: outlineFlavours.join(', '),
              })
            : accept(flavour);
        },
        1,
        3,
        'Which outline files to write: standard (true arcs), r12 (true arcs for old controllers), polyline (short lines only).',
        { enum: [...outlineFlavours] },
      )
        .transform((list) => [...new Set(list)])
        .prefault(['standard']),
    })
    .describe("The cutting service's limits, and what is ordered of it.");
}

export type SheetInput = z.output<ReturnType<typeof sheetSchema>>;

function thicknessTolerance(typed: unknown, fields: Fields): Answer<ThicknessTolerance> {
  const keys = ['up_to', 'tolerance'];
  const hint = 'write { up_to: 3 mm, tolerance: 0.1 mm }';
  if (!isMap(typed)) return refuse(`Must be a thickness and its tolerance; got ${shownValue(typed)}: ${hint}.`);
  const unknown = Object.keys(typed).find((key) => !keys.includes(key));
  if (unknown !== undefined) return refuse(`There is no key ${shownValue(unknown)} here: ${hint}.`);
  const upTo = readQuantity(typed.up_to, 'length', { above: 0, most: 100 }, fields.units);
  const tolerance = readQuantity(typed.tolerance, 'length', { least: 0.001, most: 2 }, fields.units);
  if (!upTo.ok) return { ok: false, faults: upTo.faults.map((fault) => ({ ...fault, path: ['up_to'] })) };
  if (!tolerance.ok) return { ok: false, faults: tolerance.faults.map((fault) => ({ ...fault, path: ['tolerance'] })) };
  return accept({ upTo: upTo.value, tolerance: tolerance.value });
}

/** What the service says it holds on a contour in sheet of thickness t, plus or minus mm; null where it says nothing. */
export function serviceTolerance(sheet: Pick<SheetInput, 'tolerance' | 'tolerances'>, t: number): number | null {
  if (sheet.tolerance !== undefined) return sheet.tolerance;
  const rows = [...(sheet.tolerances ?? [])].sort((a, b) => a.upTo - b.upTo);
  return rows.find(({ upTo }) => t <= upTo)?.tolerance ?? null;
}

/** Tolerance of a cut where nothing is published for the thickness, plus or minus mm: the widest of the usual range. */
const unknownCut = 0.75;

/** How far an edge of sheet of thickness t may be cut from where it is drawn, plus or minus mm: as the service says, else what one publishes. */
export function heldOnContour(sheet: Pick<SheetInput, 'tolerance' | 'tolerances'>, t: number): number {
  const published = cutTolerance(t);
  return serviceTolerance(sheet, t) ?? (published.ok ? published.value : unknownCut);
}
