import type { StandardTable, TableRow } from './table.ts';

/** What kind of stuff a material is: rules of thumb go by family. */
export type MaterialFamily = 'aluminium' | 'steel' | 'stainless' | 'iron' | 'plastic';

/** One material as handbooks print it. Typical values at 20 degC unless its source says minima. */
export interface MaterialRow extends TableRow {
  readonly id: string;
  readonly family: MaterialFamily;
  /** kg/m3 */
  readonly density: number;
  /** Young's modulus, GPa */
  readonly E: number;
  /** Poisson's ratio */
  readonly nu: number;
  /** Thermal expansion, 1e-6 per K */
  readonly cte: number;
  /** Yield or 0.2 % proof stress, MPa */
  readonly yield: number;
  /** Ultimate tensile strength, MPa */
  readonly tensile: number;
  /** Ultimate shear strength, MPa; null where no figure was found. */
  readonly shear: number | null;
  /** Whether a speed sensor sees it. */
  readonly magnetic: boolean;
}

/** Materials for adapters, wheels, brackets and printed mock-ups. `memory` marks a row with any figure from memory. */
export const materialTable: StandardTable<MaterialRow> = {
  id: 'materials',
  edition: 'Material data, typical values',
  title: 'Materials for adapter, wheel and mock-up',
  source: 'handbooks, open material cards and data sheets, named row by row in materialNotes',
  covers: 'three aluminium alloys, seven steels, two stainless steels, ductile iron, five printed plastics',
  verified: 'memory',
  unit: 'kg/m3, GPa, 1e-6/K, MPa',
  notes: [
    'Typical values: a certificate for the bar in hand beats them.',
    'Printed plastics: take half of the strength across layers (common practice).',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { id: '6061-T6', family: 'aluminium', density: 2700, E: 69, nu: 0.33, cte: 23.6, yield: 276, tensile: 310, shear: 207, magnetic: false },
    { id: '7075-T6', family: 'aluminium', density: 2810, E: 71.7, nu: 0.33, cte: 23.6, yield: 503, tensile: 572, shear: 331, magnetic: false },
    { id: '2024-T351', family: 'aluminium', density: 2780, E: 73.1, nu: 0.33, cte: 23.2, yield: 324, tensile: 469, shear: 283, magnetic: false, memory: true },
    { id: '1018-CD', family: 'steel', density: 7870, E: 205, nu: 0.29, cte: 11.7, yield: 370, tensile: 440, shear: null, magnetic: true, memory: true },
    { id: '1045', family: 'steel', density: 7850, E: 206, nu: 0.29, cte: 11.5, yield: 310, tensile: 565, shear: null, magnetic: true, memory: true },
    { id: '4140-Q&T', family: 'steel', density: 7850, E: 205, nu: 0.29, cte: 12.3, yield: 655, tensile: 930, shear: null, magnetic: true, memory: true },
    { id: 'A36', family: 'steel', density: 7850, E: 200, nu: 0.26, cte: 11.7, yield: 250, tensile: 400, shear: null, magnetic: true, memory: true },
    { id: 'S235JR', family: 'steel', density: 7850, E: 210, nu: 0.3, cte: 12, yield: 235, tensile: 360, shear: null, magnetic: true, memory: true },
    { id: 'S355', family: 'steel', density: 7850, E: 210, nu: 0.3, cte: 12, yield: 355, tensile: 470, shear: null, magnetic: true, memory: true },
    { id: 'DC01', family: 'steel', density: 7850, E: 210, nu: 0.3, cte: 12, yield: 200, tensile: 300, shear: null, magnetic: true, memory: true },
    { id: '304', family: 'stainless', density: 8000, E: 193, nu: 0.29, cte: 17.2, yield: 215, tensile: 515, shear: null, magnetic: false, memory: true },
    { id: '430', family: 'stainless', density: 7740, E: 200, nu: 0.28, cte: 10.4, yield: 275, tensile: 480, shear: null, magnetic: true, memory: true },
    { id: 'EN-GJS-500-7', family: 'iron', density: 7100, E: 170, nu: 0.275, cte: 11, yield: 320, tensile: 500, shear: 450, magnetic: true, memory: true },
    { id: 'PLA', family: 'plastic', density: 1240, E: 3.5, nu: 0.36, cte: 68, yield: 45, tensile: 50, shear: null, magnetic: false, memory: true },
    { id: 'PETG', family: 'plastic', density: 1270, E: 2.1, nu: 0.4, cte: 65, yield: 45, tensile: 48, shear: null, magnetic: false, memory: true },
    { id: 'ABS', family: 'plastic', density: 1050, E: 2.2, nu: 0.37, cte: 90, yield: 40, tensile: 42, shear: null, magnetic: false, memory: true },
    { id: 'PA6', family: 'plastic', density: 1150, E: 2.9, nu: 0.39, cte: 82, yield: 70, tensile: 75, shear: null, magnetic: false },
    { id: 'PA12', family: 'plastic', density: 1010, E: 1.7, nu: 0.4, cte: 110, yield: 45, tensile: 48, shear: null, magnetic: false, memory: true },
  ],
};

/** Full name, source and plain other names of each material, by id. */
export const materialNotes: Readonly<Record<string, { name: string; source: string; aliases: readonly string[] }>> = {
  '6061-T6': {
    name: 'aluminium 6061-T6',
    source: 'three published data sheets quoting typical handbook values',
    aliases: ['6061', '6061-T651'],
  },
  '7075-T6': {
    name: 'aluminium 7075-T6',
    source: 'an open material card and a published property table',
    aliases: ['7075', '7075-T651'],
  },
  '2024-T351': {
    name: 'aluminium 2024-T351',
    source: 'yield, tensile and shear: Metals Handbook Desk Edition; density, E, nu, cte from memory',
    aliases: ['2024', '2024-T4'],
  },
  '1018-CD': {
    name: 'steel 1018 cold drawn',
    source: 'handbook typical, from memory',
    aliases: ['1018', 'cold drawn steel'],
  },
  '1045': {
    name: 'steel 1045 (C45), hot rolled or normalised',
    source: 'from memory; an open card for C45 prints E 210, yield 340, tensile 580, cte 11',
    aliases: ['C45'],
  },
  '4140-Q&T': {
    name: 'steel 4140 (42CrMo4), prehardened 28 to 32 HRC',
    source: 'handbook typical for 28 to 32 HRC, from memory',
    aliases: ['4140', '42CrMo4'],
  },
  A36: {
    name: 'structural steel A36',
    source: 'ASTM A36 minima, from memory',
    aliases: ['structural steel'],
  },
  S235JR: {
    name: 'structural steel S235JR',
    source:
      'an open material card for E, nu, yield, tensile; density and cte of the steel design code from memory; yield up to 16 mm thick',
    aliases: ['S235', 'mild steel'],
  },
  S355: {
    name: 'structural steel S355',
    source: 'EN 10025-2 minima up to 16 mm thick, from memory',
    aliases: ['S355J2', 'S355JR'],
  },
  DC01: {
    name: 'cold-rolled sheet DC01',
    source: 'EN 10130, from memory; yield at most 280, tensile 270 to 410',
    aliases: ['CR4', 'cold-rolled sheet'],
  },
  '304': {
    name: 'stainless steel 304, austenitic',
    source:
      "handbook typical, from memory; relative permeability 1.003 to 1.05 from a steelmaker's paper and a trade association",
    aliases: ['1.4301', 'stainless'],
  },
  '430': {
    name: 'stainless steel 430, ferritic',
    source: 'handbook typical, from memory; strongly magnetic: a stainless trade association',
    aliases: ['1.4016'],
  },
  'EN-GJS-500-7': {
    name: 'ductile iron EN-GJS-500-7',
    source: 'an open material card for E, yield, tensile, cte; the rest from memory',
    aliases: ['GJS-500', 'ductile iron', 'nodular iron'],
  },
  PLA: {
    name: 'PLA, printed',
    source: 'typical filament data sheets, from memory; an open card for density and nu',
    aliases: [],
  },
  PETG: {
    name: 'PETG, printed',
    source: 'typical filament data sheets, from memory',
    aliases: [],
  },
  ABS: {
    name: 'ABS, printed',
    source: 'an open material card for density, nu, E, cte within 5 %; the rest from memory',
    aliases: [],
  },
  PA6: {
    name: 'nylon PA6, dry',
    source: 'an open material card, dry',
    aliases: ['nylon'],
  },
  PA12: {
    name: 'nylon PA12',
    source: 'from memory',
    aliases: [],
  },
};
