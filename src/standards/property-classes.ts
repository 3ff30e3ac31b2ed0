import { mpaPerKsi } from './inch.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, lookUp, missing } from './table.ts';

/** One property class over a range of diameters. Symbols of ISO 898-1, MPa; over < d <= upTo in mm. */
export interface PropertyClassRow extends TableRow {
  readonly cls: string;
  readonly over: number;
  readonly upTo: number;
  /** Least tensile strength. */
  readonly Rm: number;
  /** Least 0.2 % proof stress. */
  readonly Rp: number;
  /** Stress under proof load. */
  readonly Sp: number;
}

/** ISO 898-1 property classes of screws. */
export const propertyClasses: StandardTable<PropertyClassRow> = {
  id: 'iso898-1',
  edition: 'ISO 898-1:2013',
  title: 'Property classes of bolts and screws',
  source: 'four published reprints agree; proof and ultimate loads recomputed from them',
  covers: '8.8, 10.9 and 12.9, up to M39',
  verified: 'secondary',
  unit: 'MPa',
  notes: ['800/640, 1000/900 and 1200/1080 are the nominal figures, not the least.'],
  rows: [
    { cls: '8.8', over: 0, upTo: 16, Rm: 800, Rp: 640, Sp: 580 },
    { cls: '8.8', over: 16, upTo: 39, Rm: 830, Rp: 660, Sp: 600 },
    { cls: '10.9', over: 0, upTo: 39, Rm: 1040, Rp: 940, Sp: 830 },
    { cls: '12.9', over: 0, upTo: 39, Rm: 1220, Rp: 1100, Sp: 970 },
  ],
};

/** Head kinds that class 12.9 is made in: ISO 4762, ISO 10642 and ISO 7380-1 list it; ISO 4014 and ISO 4017 list 5.6, 8.8, 9.8 and 10.9. From memory. */
const strongestHeads: readonly string[] = ['socket', 'flat', 'button'];

/** True where screws of a class are made with a head as a stock item. Source: the screws' own standards, from memory. */
export const isStocked = (cls: string, head: string): boolean => cls !== '12.9' || strongestHeads.includes(head);

/** One inch grade over a range of diameters. ksi; over < D <= upTo in inches. */
export interface InchGradeRow extends TableRow {
  readonly cls: string;
  readonly over: number;
  readonly upTo: number;
  readonly proof: number;
  /** null where the standard prints none. */
  readonly yield: number | null;
  readonly tensile: number;
}

/** SAE J429 grades 5 and 8, and ASTM A574 socket head cap screws. */
export const inchGrades: StandardTable<InchGradeRow> = {
  id: 'sae-j429',
  edition: 'SAE J429 / ASTM A574',
  title: 'Strength grades of inch bolts and socket screws',
  source: 'four published reprints agree on J429; A574 from vendor tables',
  covers: 'grades 5, 8 and A574, up to 1 1/2 in',
  verified: 'secondary',
  unit: 'ksi',
  rows: [
    { cls: '5', over: 0, upTo: 1, proof: 85, yield: 92, tensile: 120 },
    { cls: '5', over: 1, upTo: 1.5, proof: 74, yield: 81, tensile: 105 },
    { cls: '8', over: 0, upTo: 1.5, proof: 120, yield: 130, tensile: 150 },
    { cls: 'A574', over: 0, upTo: 0.5, proof: 140, yield: null, tensile: 180 },
    { cls: 'A574', over: 0.5, upTo: 1.5, proof: 135, yield: null, tensile: 170 },
  ],
};

/** Least strengths of a screw, MPa. */
export interface PropertyClass {
  readonly name: string;
  readonly tensileStrength: number;
  /** 0.2 % proof stress, or the inch grade's yield; for A574, which prints none, its proof stress. */
  readonly yieldStrength: number;
  /** Stress under proof load. */
  readonly proofStress: number;
  readonly source: string;
  readonly memory: boolean;
}

/** Class names that `propertyClass` knows. */
export const propertyClassNames: readonly string[] = ['8.8', '10.9', '12.9', '5', '8', 'A574'];

/**
 * Strengths of a property class at a nominal diameter (mm): '8.8', '10.9', '12.9', or '5', '8', 'A574' (inch).
 * 'grade 8' and 'class 10.9' are read too. Source: ISO 898-1; SAE J429; ASTM A574.
 */
export function propertyClass(name: string, d: number): Lookup<PropertyClass> {
  const cls = name
    .trim()
    .replace(/^(grade|class|sae|astm)\s*/i, '')
    .toUpperCase();
  const metric = propertyClasses.rows.find((row) => row.cls === cls && d > row.over && d <= row.upTo);
  if (metric !== undefined) {
    const { Rm, Rp, Sp, memory = false } = metric;
    const source = propertyClasses.edition;
    return found({ name: cls, tensileStrength: Rm, yieldStrength: Rp, proofStress: Sp, source, memory });
  }
  const inches = d / 25.4;
  const inch = inchGrades.rows.find((row) => row.cls === cls && inches > row.over && inches <= row.upTo);
  if (inch !== undefined) {
    return found({
      name: cls,
      tensileStrength: inch.tensile * mpaPerKsi,
      yieldStrength: (inch.yield ?? inch.proof) * mpaPerKsi,
      proofStress: inch.proof * mpaPerKsi,
      source: inchGrades.edition,
      memory: inch.memory ?? false,
    });
  }
  if (propertyClassNames.includes(cls)) return missing(`Class ${cls} is not tabled for a diameter of ${d} mm.`);
  return missing(`There is no property class "${name}". Known: ${propertyClassNames.join(', ')}.`);
}

/** Printed load of one coarse thread by class, N. */
export interface LoadRow extends TableRow {
  readonly size: string;
  readonly '8.8': number;
  readonly '10.9': number;
  readonly '12.9': number;
}

/** ISO 898-1 proof loads, coarse thread. */
export const proofLoads: StandardTable<LoadRow> = {
  id: 'iso898-1-proof',
  edition: 'ISO 898-1:2013',
  title: 'Proof loads, coarse thread',
  source: 'published reprints; equal to stress area x proof stress within 0.6 %',
  covers: 'M3 to M24',
  verified: 'secondary',
  unit: 'N',
  rows: [
    { size: 'M3', '8.8': 2920, '10.9': 4180, '12.9': 4880 },
    { size: 'M4', '8.8': 5100, '10.9': 7290, '12.9': 8520 },
    { size: 'M5', '8.8': 8230, '10.9': 11800, '12.9': 13800 },
    { size: 'M6', '8.8': 11600, '10.9': 16700, '12.9': 19500 },
    { size: 'M8', '8.8': 21200, '10.9': 30400, '12.9': 35500 },
    { size: 'M10', '8.8': 33700, '10.9': 48100, '12.9': 56300 },
    { size: 'M12', '8.8': 48900, '10.9': 70000, '12.9': 81800 },
    { size: 'M16', '8.8': 91000, '10.9': 130000, '12.9': 152000 },
    { size: 'M20', '8.8': 147000, '10.9': 203000, '12.9': 238000 },
    { size: 'M24', '8.8': 212000, '10.9': 293000, '12.9': 342000 },
  ],
};

/** Printed proof load of a coarse metric thread, N. Source: ISO 898-1. */
export function proofLoad(size: string, cls: '8.8' | '10.9' | '12.9'): Lookup<number> {
  const row = lookUp(proofLoads, 'size', size);
  return row.ok ? found(row.value[cls]) : row;
}
