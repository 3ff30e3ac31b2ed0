import type { Material } from './materials.ts';
import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, missing } from './table.ts';

/** Pressure that a seat bears under a screw head. Symbols of VDI 2230, MPa. */
export interface LimitingPressureRow extends TableRow {
  readonly material: string;
  /** Least tensile strength of the printed material. */
  readonly Rm: number;
  readonly pG: number;
  /** Printed in italics there: not yet checked by the handbook itself. */
  readonly unverified?: true;
}

/** Limiting surface pressure under heads and nuts. */
export const limitingPressures: StandardTable<LimitingPressureRow> = {
  id: 'vdi2230-pressure',
  edition: 'VDI 2230:2003',
  title: 'Limiting surface pressure under heads and nuts',
  source: 'one fastener handbook; it prints ten of the sixteen rows as not yet checked',
  covers: 'structural and heat-treated steels, iron, aluminium, titanium',
  verified: 'secondary',
  unit: 'MPa',
  notes: [
    'The 1986 edition has far lower steel values (260, 420 and 700 for S235, E295 and C45): a seat near its limit is worth a washer.',
    'Beyond the limit the seat creeps and the preload with it; nothing breaks at once.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { material: 'S235', Rm: 340, pG: 490 },
    { material: 'E295', Rm: 470, pG: 710 },
    { material: 'S355', Rm: 510, pG: 760 },
    { material: 'C45, heat treated', Rm: 700, pG: 630, unverified: true },
    { material: '34CrMo4', Rm: 1000, pG: 870, unverified: true },
    { material: '34CrNiMo6', Rm: 1200, pG: 1080, unverified: true },
    { material: 'X5CrNi18-12', Rm: 500, pG: 630 },
    { material: 'GJL-250', Rm: 250, pG: 900 },
    { material: 'GJS-400-15', Rm: 400, pG: 700, unverified: true },
    { material: 'AlMgSi1 F31 (6082)', Rm: 290, pG: 260, unverified: true },
    { material: 'AlMgSi1 F28', Rm: 260, pG: 230, unverified: true },
    { material: 'AlMg4.5Mn (5083)', Rm: 260, pG: 230, unverified: true },
    { material: 'AlZnMgCu1.5 (7075)', Rm: 540, pG: 410, unverified: true },
    { material: 'GK-AlSi9Cu3', Rm: 180, pG: 220, unverified: true },
    { material: 'GK-AlSi7Mg, aged', Rm: 250, pG: 380, unverified: true },
    { material: 'TiAl6V4', Rm: 890, pG: 890, unverified: true },
  ],
};

/**
 * The printed row that a material is read by. Itself where it is printed; else a printed one of its kind that is no stronger.
 * 1045 takes the C45 row although that one is heat treated: its figure is the lower of all steels of its strength.
 */
const readBy: Readonly<Record<string, string>> = {
  '6061-T6': 'AlMgSi1 F31 (6082)',
  '7075-T6': 'AlZnMgCu1.5 (7075)',
  '2024-T351': 'AlMgSi1 F31 (6082)',
  '1018-CD': 'S235',
  '1045': 'C45, heat treated',
  '4140-Q&T': 'S355',
  A36: 'S235',
  S235JR: 'S235',
  S355: 'S355',
  'EN-GJS-500-7': 'GJS-400-15',
};

/** Rows that name the material itself, or its twin by another standard. */
const printedFor: readonly string[] = ['7075-T6', 'S235JR', 'S355'];

/**
 * Share of the tensile strength that stands in where no row fits: just below the least share that any row prints (7075: 0.76).
 * Choice of this program. Sheet DC01 is weaker than every row; for stainless steels two editions differ threefold.
 */
const ruleShare = 0.75;

/** What a seat bears, MPa, and how far that can be trusted. */
export interface SeatLimit {
  readonly pG: number;
  /** "printed for S355", "as S235", "0.75 of the tensile strength". */
  readonly how: string;
  readonly source: string;
  /** The figure is the material's own and was printed as checked. */
  readonly sure: boolean;
}

/**
 * Limiting pressure of a seat, MPa. Source: VDI 2230 as a fastener handbook prints it; else 0.75 of the tensile strength, a choice of
 * this program. Errors: plastics, which creep under any head.
 */
export function limitingPressure({ id, name, family, tensileStrength }: Material): Lookup<SeatLimit> {
  if (family === 'plastic') return missing(`No pressure is published that ${name} bears for long: it creeps.`);
  const row = limitingPressures.rows.find(({ material }) => material === readBy[id]);
  if (row === undefined) {
    const how = `${ruleShare} of the tensile strength`;
    const source = `no row of ${limitingPressures.edition} fits; ${how}, common practice of this program`;
    return found({ pG: ruleShare * tensileStrength, how, source, sure: false });
  }
  const own = printedFor.includes(id);
  const doubt = row.unverified ? ', printed there as not yet checked' : '';
  return found({
    pG: row.pG,
    how: own ? `printed for ${row.material}` : `as ${row.material}`,
    source: `${limitingPressures.edition}, row ${row.material}${doubt}`,
    sure: own && !row.unverified,
  });
}
