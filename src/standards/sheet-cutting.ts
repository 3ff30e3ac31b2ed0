import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** One rule of laser cutting as shops publish it: a least size as a multiple of the sheet thickness t. */
export interface SheetRuleRow extends TableRow {
  readonly what: string;
  /** Strictest figure seen, x t. */
  readonly strictest: number;
  /** What this project takes unless the job says otherwise, x t. */
  readonly usual: number;
  /** Loosest figure seen, x t. */
  readonly loosest: number;
}

/**
 * Least sizes in laser-cut sheet. Cutting services differ three-fold on the smallest hole, so every figure is a
 * setting: below `usual` is a caution, below `loosest` no published service cuts it.
 */
export const sheetRules: StandardTable<SheetRuleRow> = {
  id: 'sheet-rules',
  edition: 'Published design rules of six cutting services',
  title: 'Least sizes in laser-cut sheet',
  source: 'six public design guides; their spread is the columns',
  covers: 'steel and aluminium sheet, about 0.5 to 20 mm',
  verified: 'secondary',
  unit: 'x t',
  notes: [
    'Draw the nominal outline: the service compensates the kerf.',
    'Tapped and reamed holes: cut 0.5 to 1 mm under and drill, the edge is hard and tapered (common practice).',
    'Pierce in a valley or inside corner, never on a tooth tip or the register (common practice).',
  ],
  rows: [
    { what: 'hole', strictest: 1.5, usual: 1, loosest: 0.5 },
    { what: 'web', strictest: 1.5, usual: 1, loosest: 0.7 },
    { what: 'slot', strictest: 1, usual: 1, loosest: 0.7 },
    { what: 'edge', strictest: 1.5, usual: 1, loosest: 1 },
    { what: 'pitch', strictest: 2, usual: 2, loosest: 2 },
    { what: 'corner', strictest: 0.5, usual: 0.5, loosest: 0.25, memory: true },
  ],
};

/** The smallest hole any service cuts, mm, however thin the sheet. Source: two of the guides. */
export const smallestHole = 1;

/** Root radius beyond which thicker sheet asks for no more, mm (common practice). */
export const largestNeededCornerRadius = 0.5;

/** Thicknesses that cutting services keep as steel sheet, mm. Common practice. */
export const stockedSheet: readonly number[] = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** Which rule to ask for: hole diameter, web between cuts, slot width, hole to outer edge, hole pitch, corner radius. */
export type SheetRule = 'hole' | 'web' | 'slot' | 'edge' | 'pitch' | 'corner';

/** Least sizes for one rule and thickness, mm. */
export interface SheetLimit {
  /** Below this: caution. */
  readonly usual: number;
  /** Below this: stop. */
  readonly loosest: number;
  readonly source: string;
  readonly memory: boolean;
}

/** Least size in sheet of thickness t (mm, above 0), by rule. Source: published design rules, see `sheetRules`. */
export function sheetLimit(rule: SheetRule, t: number): Lookup<SheetLimit> {
  const row = sheetRules.rows.find((candidate) => candidate.what === rule);
  if (row === undefined) return missing(`There is no sheet rule "${rule}".`);
  if (!(t > 0)) return missing(`A sheet thickness must be above 0 mm; got ${t}.`);
  const floor = rule === 'hole' ? smallestHole : 0;
  const roof = rule === 'corner' ? largestNeededCornerRadius : Number.POSITIVE_INFINITY;
  return found({
    usual: Math.min(roof, Math.max(floor, row.usual * t)),
    loosest: Math.min(roof, Math.max(rule === 'hole' ? 0.5 * smallestHole : 0, row.loosest * t)),
    source: rule === 'corner' ? 'common practice' : sheetRules.edition,
    memory: row.memory ?? false,
  });
}

/** Dimension tolerance of laser-cut contours by thickness: up to t mm, plus or minus tol mm. */
export interface CutToleranceRow extends TableRow {
  readonly upTo: number;
  readonly tol: number;
}

/** Dimension tolerance of a laser-cut contour. */
export const cutTolerances: StandardTable<CutToleranceRow> = {
  id: 'cut-tolerance',
  edition: 'A cutting service\u2019s published tolerances',
  title: 'Tolerance of laser-cut contours',
  source: 'one published note; another service states 0.1 mm at 0.5 mm up to 1.1 mm at 25 mm',
  covers: 'sheet up to 20 mm',
  verified: 'secondary',
  unit: 'mm, plus or minus',
  rows: [
    { upTo: 1, tol: 0.12 },
    { upTo: 3, tol: 0.15 },
    { upTo: 6, tol: 0.2 },
    { upTo: 15, tol: 0.25 },
    { upTo: 20, tol: 0.75 },
  ],
};

/** Plus or minus tolerance of a cut contour in sheet of thickness t, mm. */
export function cutTolerance(t: number): Lookup<number> {
  const row = cutTolerances.rows.find((candidate) => t > 0 && t <= candidate.upTo);
  if (row !== undefined) return found(row.tol);
  return missing(`Cut tolerances are published for sheet above 0 up to 20 mm; got ${t} mm.`);
}

/** Kerf width of a laser, mm, at a sheet thickness. */
export interface KerfRow extends TableRow {
  readonly t: number;
  readonly kerf: number;
}

/** Kerf of a laser cut, for telling how much a service compensates. Not for offsetting an outline. */
export const kerfs: StandardTable<KerfRow> = {
  id: 'laser-kerf',
  edition: 'Process Fundamentals of Industrial Laser Welding and Cutting, section 4.2',
  title: 'Kerf of a laser cut',
  source: 'the book, for CO2 lasers; fibre figure from the trade',
  covers: '3 to 19 mm steel',
  verified: 'secondary',
  unit: 'mm',
  rows: [
    { t: 3, kerf: 0.15 },
    { t: 6, kerf: 0.25, memory: true },
    { t: 19, kerf: 0.38 },
  ],
};
