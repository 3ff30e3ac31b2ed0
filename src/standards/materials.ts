import type { MaterialFamily, MaterialRow } from './material-table.ts';
import { materialNotes, materialTable } from './material-table.ts';
import type { Lookup } from './table.ts';
import { fold, found, meant, missing } from './table.ts';

/** A material in the units of this project. */
export interface Material {
  readonly id: string;
  readonly name: string;
  readonly family: MaterialFamily;
  /** g/mm3 */
  readonly density: number;
  /** Young's modulus, MPa */
  readonly youngsModulus: number;
  /** Shear modulus E / (2 (1 + nu)), MPa */
  readonly shearModulus: number;
  readonly poissonsRatio: number;
  /** Thermal expansion, 1/K */
  readonly thermalExpansion: number;
  /** Yield or 0.2 % proof stress, MPa */
  readonly yieldStrength: number;
  /** Ultimate tensile strength, MPa */
  readonly tensileStrength: number;
  /** Ultimate shear strength, MPa: printed where there is one, else by `shearRule`. */
  readonly shearStrength: number;
  /** 'printed', or the rule that stands in for a printed figure. */
  readonly shearRule: string;
  /** Ferromagnetic: a speed sensor sees it. */
  readonly magnetic: boolean;
  readonly source: string;
  /** True when any figure above rests on memory. */
  readonly memory: boolean;
}

export type { MaterialFamily } from './material-table.ts';

/** Ultimate shear over ultimate tensile strength, a textbook rule kept at its low end (from memory). */
const shearRatios: Readonly<Record<MaterialFamily, number>> = {
  aluminium: 0.6,
  steel: 0.6,
  stainless: 0.6,
  iron: 0.9,
  plastic: 0.5,
};

/**
 * A material by its id ('6061-T6') or a plain other name ('6061', 'mild steel', 'C45'). Case, spaces, hyphens and
 * underscores do not matter. A miss names every id, and the one that was probably meant.
 */
export function findMaterial(id: string): Lookup<Material> {
  const row = rowsByName.get(bare(id));
  if (row !== undefined) return found(material(row));
  const guess = meant(id, materialTable.rows.flatMap(namesOf));
  return missing(`There is no material "${id}"${guess}. Known: ${materialIds.join(', ')}.`);
}

/** Every material id, in the order of the table. */
export const materialIds: readonly string[] = materialTable.rows.map((row) => row.id);

/** Every material, in the order of the table. */
export function allMaterials(): readonly Material[] {
  return materialTable.rows.map(material);
}

function namesOf(row: MaterialRow): readonly string[] {
  return [row.id, ...(materialNotes[row.id]?.aliases ?? [])];
}

function bare(name: string): string {
  return fold(name).replace(/[-_&.]/g, '');
}

/** Rows by their bare names; of two rows with one name the first. A joint asks for its few materials again and again. */
const rowsByName = new Map<string, MaterialRow>(
  [...materialTable.rows].reverse().flatMap((row) => namesOf(row).map((name) => [bare(name), row] as const)),
);

function material(row: MaterialRow): Material {
  const note = materialNotes[row.id];
  const ratio = shearRatios[row.family];
  return {
    id: row.id,
    name: note?.name ?? row.id,
    family: row.family,
    density: row.density / 1e6,
    youngsModulus: row.E * 1000,
    shearModulus: (row.E * 1000) / (2 * (1 + row.nu)),
    poissonsRatio: row.nu,
    thermalExpansion: row.cte / 1e6,
    yieldStrength: row.yield,
    tensileStrength: row.tensile,
    shearStrength: row.shear ?? ratio * row.tensile,
    shearRule: row.shear === null ? `${ratio} x tensile strength, textbook rule` : 'printed',
    magnetic: row.magnetic,
    source: note?.source ?? materialTable.source,
    memory: row.memory ?? false,
  };
}
