import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, lookUp, missing } from './table.ts';

/** Range of the friction in the thread and under the head. Symbols of VDI 2230: muG (thread) and muK (head). */
export interface ThreadFrictionRow extends TableRow {
  readonly cls: string;
  readonly from: number;
  /** null: no upper end is printed. */
  readonly to: number | null;
  /** Surfaces and lubricants that usually land in this class. */
  readonly examples: string;
}

/** VDI 2230 friction classes of screwed joints. */
export const threadFriction: StandardTable<ThreadFrictionRow> = {
  id: 'vdi2230-friction',
  edition: 'VDI 2230 Part 1, table A5',
  title: 'Friction in the thread and under the head',
  source: 'a fastener handbook and two reference pages print the same ranges',
  covers: 'classes A to E at room temperature',
  verified: 'secondary',
  unit: 'none',
  notes: [
    'Set the torque by the low end of the range: with less friction than assumed, the same torque overloads the screw.',
    'Count the preload by what is left at the high end, or by the tightening factor.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { cls: 'A', from: 0.04, to: 0.1, examples: 'bright, black, phosphated or zinc plated, with dry-film lubricant, paste (MoS2, graphite) or wax' },
    { cls: 'B', from: 0.08, to: 0.16, examples: 'bright, black, phosphated or zinc plated, oiled or greased; aluminium oiled; stainless with paste' },
    { cls: 'C', from: 0.14, to: 0.24, examples: 'bright or phosphated as delivered, slightly oiled; zinc plated dry; with thread adhesive; stainless with wax' },
    { cls: 'D', from: 0.2, to: 0.35, examples: 'zinc plated or hot-dip galvanised, dry; stainless with oil' },
    { cls: 'E', from: 0.3, to: null, examples: 'stainless or aluminium, dry; some zinc alloys, dry' },
  ],
};

/** A friction class by its letter. A miss lists the letters. */
export function threadFrictionClass(cls: string): Lookup<ThreadFrictionRow> {
  return lookUp(threadFriction, 'cls', cls);
}

/** Friction between two faces of a joint: a published range. */
export interface FaceFrictionRow extends TableRow {
  readonly pair: FacePair;
  readonly condition: string;
  readonly from: number;
  readonly to: number;
  /** design: a band to design within. measured: clean specimens in a laboratory; do not design with it. */
  readonly use: 'design' | 'measured';
  readonly source: string;
}

/** What lies on what. */
export type FacePair = 'steel on steel' | 'steel on aluminium' | 'aluminium on aluminium';

/** Published friction of joint faces. */
export const faceFriction: StandardTable<FaceFrictionRow> = {
  id: 'face-friction',
  edition: 'Published friction tables',
  title: 'Friction between joint faces',
  source: 'row by row',
  covers: 'steel and aluminium, dry and oiled',
  verified: 'secondary',
  unit: 'none',
  notes: ['The published spread is five-fold: a test of the joint in hand beats every row.'],
  // biome-ignore format: a table is read row by row
  rows: [
    { pair: 'steel on steel', condition: 'dry, machined', from: 0.15, to: 0.3, use: 'design', source: 'a research laboratory page quoting a formula handbook; an online friction table' },
    { pair: 'steel on steel', condition: 'oiled', from: 0.1, to: 0.1, use: 'design', source: 'an online friction table' },
    { pair: 'steel on steel', condition: 'shrink fit, oiled to degreased', from: 0.15, to: 0.2, use: 'design', source: 'DIN 7190-1' },
    { pair: 'steel on steel', condition: 'with oxide film', from: 0.27, to: 0.39, use: 'measured', source: 'a research laboratory page' },
    { pair: 'steel on steel', condition: 'mild steel, static and sliding', from: 0.23, to: 0.31, use: 'measured', source: 'a research laboratory page quoting a wear handbook' },
    { pair: 'steel on steel', condition: 'clean in the laboratory', from: 0.45, to: 0.8, use: 'measured', source: 'an online friction table; a research laboratory page' },
    { pair: 'steel on aluminium', condition: 'dry joint', from: 0.1, to: 0.15, use: 'design', source: 'DIN 7190-1' },
    { pair: 'steel on aluminium', condition: 'clean in the laboratory', from: 0.47, to: 0.61, use: 'measured', source: 'a research laboratory page' },
    { pair: 'aluminium on aluminium', condition: 'dry', from: 0.15, to: 0.6, use: 'measured', source: 'an online friction table' },
  ],
};

/** Slip factor of a prepared steel face, by its class. */
export interface SlipClassRow extends TableRow {
  readonly cls: string;
  readonly surface: string;
  readonly mu: number;
}

/** EN 1993-1-8 slip factors of preloaded steel joints. */
export const slipClasses: StandardTable<SlipClassRow> = {
  id: 'en1993-1-8-slip',
  edition: 'EN 1993-1-8, table 3.7',
  title: 'Slip factors of prepared steel faces',
  source: 'published tables of the steel design code',
  covers: 'classes A to D',
  verified: 'secondary',
  unit: 'none',
  rows: [
    { cls: 'A', surface: 'blasted, loose rust removed', mu: 0.5 },
    { cls: 'B', surface: 'blasted and zinc painted', mu: 0.4 },
    { cls: 'C', surface: 'wire brushed', mu: 0.3 },
    { cls: 'D', surface: 'untreated', mu: 0.2 },
  ],
};

/** A friction to design a joint face with, and the band it was taken from. */
export interface DesignFriction {
  readonly mu: number;
  readonly band: { readonly from: number; readonly to: number };
  readonly why: string;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * The friction to count on when nobody has tested the joint: 0.15 for clean machined steel on steel, 0.12 once oil may be
 * there, 0.12 for steel on aluminium clean, 0.10 with oil. This choice is common practice of this project, not a standard;
 * each figure lies within a published design band.
 * @param pair what lies on what; `oiled` true when oil or grease may reach the face
 * Errors: aluminium on aluminium, for which no design band is published.
 */
export function designFriction(pair: FacePair, oiled: boolean): Lookup<DesignFriction> {
  if (pair === 'aluminium on aluminium') {
    return missing(
      'No design band is published for aluminium on aluminium: test the joint, or carry the load by a dowel.',
    );
  }
  const steel = pair === 'steel on steel';
  const band = steel ? { from: oiled ? 0.1 : 0.15, to: oiled ? 0.15 : 0.3 } : { from: 0.1, to: 0.15 };
  return found({
    mu: steel ? (oiled ? 0.12 : 0.15) : oiled ? 0.1 : 0.12,
    band,
    why: `${pair}, ${oiled ? 'oil cannot be ruled out' : 'clean and machined'}: near the low end of the published band`,
    source: 'common practice, within published bands',
    memory: true,
  });
}
