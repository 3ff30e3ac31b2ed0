import type { MaterialFamily } from './material-table.ts';
import type { Material } from './materials.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** How hard a sheet is for the K-factor table: soft aluminium and copper, mild steel, stainless and spring stock. */
export type BendHardness = 'soft' | 'medium' | 'hard';

/** K-factors by inside radius over thickness; a row holds ratios up to `upTo`. */
export interface KFactorRow extends TableRow {
  readonly upTo: number;
  readonly soft: number;
  readonly medium: number;
  readonly hard: number;
}

/** Where the neutral fibre lies when sheet is air-bent, as a share of the thickness from the inside. */
export const kFactors: StandardTable<KFactorRow> = {
  id: 'k-factors',
  edition: 'K-factor table for air bending, as reprinted in an open encyclopaedia',
  title: 'K-factors for air bending',
  source: 'an encyclopaedia reprint; a trade page prints the same figures for r up to 3 t',
  covers: 'inside radius 0 and up, three degrees of hardness',
  verified: 'secondary',
  unit: 'share of the thickness',
  notes: ['A trial bend on the press that will bend the part beats every table.'],
  rows: [
    { upTo: 1, soft: 0.33, medium: 0.38, hard: 0.4 },
    { upTo: 3, soft: 0.4, medium: 0.43, hard: 0.45 },
    { upTo: 1000, soft: 0.5, medium: 0.5, hard: 0.5 },
  ],
};

const hardnessOf: Readonly<Record<MaterialFamily, BendHardness>> = {
  aluminium: 'soft',
  steel: 'medium',
  stainless: 'hard',
  iron: 'hard',
  plastic: 'soft',
};

/** K-factor of the table for an inside radius and thickness in mm (both above 0). Source: `kFactors`. */
export function kFactor(family: MaterialFamily, radius: number, thickness: number): Lookup<number> {
  if (!(radius >= 0 && thickness > 0))
    return missing(
      `A K-factor needs a radius of 0 mm or more and a thickness above 0 mm; got ${radius}, ${thickness}.`,
    );
  // A ratio of a whole number belongs to the tighter row, as the table's "0 to t" says.
  const row = kFactors.rows.find(({ upTo }) => radius / thickness <= upTo + 1e-9);
  return row ? found(row[hardnessOf[family]]) : missing('There is no K-factor for this radius.');
}

/**
 * K by the correction factor of DIN 6935: K = k / 2 with k = 0.65 + 0.5 lg(r / s) up to r / s = 5, and 1 above.
 * The value at r = s (K 0.325, allowance 4.16 mm at r = s = 2 mm) is confirmed by a published worked example; the formula is from
 * memory.
 */
export function kFactorDin6935(radius: number, thickness: number): number {
  const ratio = radius / thickness;
  return Math.max(0, Math.min(1, ratio > 5 ? 1 : 0.65 + 0.5 * Math.log10(ratio))) / 2;
}

/** One die of a press brake: its opening V, the shortest flange it bends, the inside radius it leaves. */
export interface AirDieRow extends TableRow {
  readonly V: number;
  /** Shortest flange, mm. */
  readonly b: number;
  /** Inside radius in mild steel, mm. */
  readonly r: number;
}

/** Dies for air bending: the radius comes from the die, about 16 % of its opening, and not from the punch. */
export const airDies: StandardTable<AirDieRow> = {
  id: 'air-dies',
  edition: "A press maker's air-bending chart",
  title: 'Shortest flange and inside radius by die opening',
  source: 'the published chart; a second guide gives the same 16 % of the opening',
  covers: 'dies of 4 to 80 mm',
  verified: 'secondary',
  unit: 'mm',
  rows: [
    { V: 4, b: 2.8, r: 0.7 },
    { V: 6, b: 4, r: 1 },
    { V: 7, b: 5, r: 1.1 },
    { V: 8, b: 5.5, r: 1.3 },
    { V: 10, b: 7, r: 1.6 },
    { V: 12, b: 8.5, r: 2 },
    { V: 14, b: 10, r: 2.3 },
    { V: 16, b: 11, r: 2.6 },
    { V: 18, b: 13.5, r: 3 },
    { V: 25, b: 17.5, r: 4 },
    { V: 40, b: 28, r: 6.5 },
    { V: 50, b: 35, r: 8 },
    { V: 63, b: 45, r: 10 },
    { V: 80, b: 55, r: 13 },
  ],
};

/** Opening of the usual die as a multiple of the thickness: 6 t up to 2.5 mm, 8 t to 8 mm, 10 t above. Two published guides. */
export function usualDieOpening(thickness: number): number {
  return thickness <= 2.5 ? 6 * thickness : thickness <= 8 ? 8 * thickness : 10 * thickness;
}

/**
 * The die that bends this sheet (thickness above 0, mm) with at least this inside radius: the first one that is neither narrower
 * than usual nor leaves a tighter radius.
 */
export function airDie(thickness: number, leastRadius = 0): Lookup<AirDieRow> {
  if (!(thickness > 0)) return missing(`A sheet thickness must be above 0 mm; got ${thickness}.`);
  const wanted = usualDieOpening(thickness);
  const row = airDies.rows.find(({ V, r }) => V >= wanted - 1e-9 && r >= leastRadius - 1e-9);
  if (row) return found(row);
  return missing(
    `The chart's dies end at 80 mm: no die for ${thickness} mm sheet with ${leastRadius} mm inside radius.`,
  );
}

/** Least inside radius as a multiple of the thickness: below `least` it cracks, below `usual` it may. */
export interface BendRadiusRow extends TableRow {
  readonly stuff: string;
  readonly least: number;
  readonly usual: number;
  readonly source: string;
}

/** Least inside bend radii of sheet about 3 mm thick, across the rolling direction. */
export const bendRadii: StandardTable<BendRadiusRow> = {
  id: 'bend-radii',
  edition: 'Published bend radius charts and shop guides',
  title: 'Least inside bend radius',
  source: 'row by row',
  covers: 'sheet up to about 3 mm, bent cold across the rolling direction',
  verified: 'secondary',
  unit: 'x t',
  notes: ['Along the rolling direction, and in thicker sheet, take more.'],
  // biome-ignore format: a table is read row by row
  rows: [
    { stuff: 'steel', least: 0.5, usual: 1, source: 'half the thickness: a stamping guide; one thickness: a job shop guide' },
    { stuff: 'S355', least: 1, usual: 1.5, source: 'common practice', memory: true },
    { stuff: 'stainless', least: 0.5, usual: 1, source: 'common practice', memory: true },
    { stuff: '6061-T6', least: 1.5, usual: 2.5, source: '2.5 t at 3.2 mm, 1.5 t at 1 mm: an aircraft bend radius chart' },
    { stuff: '2024-T351', least: 3.5, usual: 5, source: '5 t at 3.2 mm, 3.5 t at 1.6 mm: an aircraft bend radius chart' },
    { stuff: '7075-T6', least: 5, usual: 8, source: '8 t at 3.2 mm, 5 t at 1.6 mm: an aircraft bend radius chart' },
  ],
};

/** Hard bars that are never bent cold as sheet. Common practice. */
const notBent: readonly MaterialFamily[] = ['iron', 'plastic'];

/** Least inside bend radius of a material in sheet of this thickness, mm; a miss where it is not bent cold. */
export function leastBendRadius(
  material: Pick<Material, 'id' | 'name' | 'family'>,
  thickness: number,
): Lookup<{ least: number; usual: number; source: string; memory: boolean }> {
  const { rows } = bendRadii;
  const row = rows.find(({ stuff }) => stuff === material.id) ?? rows.find(({ stuff }) => stuff === material.family);
  if (!row || notBent.includes(material.family)) return missing(`${material.name} is not bent cold as sheet.`);
  const { source, memory = false } = row;
  return found({ least: row.least * thickness, usual: row.usual * thickness, source, memory });
}

/** A distance in bent sheet as a x t + b x r: below `least` of it stop, below `usual` caution. */
export interface BendRuleRow extends TableRow {
  readonly rule: 'hole to bend' | 'relief width' | 'relief depth';
  readonly t: number;
  readonly r: number;
  readonly source: string;
}

/** Rules for holes and relief cuts beside a bend. */
export const bendRules: StandardTable<BendRuleRow> = {
  id: 'bend-rules',
  edition: 'Published sheet metal design guides',
  title: 'Holes and relief cuts beside a bend',
  source: 'row by row',
  covers: 'air-bent sheet',
  verified: 'secondary',
  unit: 'x t + x r',
  // biome-ignore format: a table is read row by row
  rows: [
    { rule: 'hole to bend', t: 2, r: 1, source: "a cutting service's rule, from hole edge to bend line; others ask 2.5 t + r and 3 t + r" },
    { rule: 'relief width', t: 1, r: 0, source: 'at least one thickness: a design guide; another asks two' },
    { rule: 'relief depth', t: 1, r: 1, source: 'thickness plus inside radius: two design guides' },
  ],
};

/** One of the rules above in mm, for thickness t and inside radius r. */
export function bendRule(rule: BendRuleRow['rule'], t: number, r: number): { value: number; source: string } {
  const row = bendRules.rows.find((candidate) => candidate.rule === rule);
  if (!row) throw new Error(`There is no bend rule "${rule}".`);
  return { value: row.t * t + row.r * r, source: row.source };
}
