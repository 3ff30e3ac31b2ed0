/** Trade rules for the speed of propeller shafts: constants of the handbook formula, shares of the critical speed, bands to stay out of. */
import type { StandardTable, TableRow } from './table.ts';

/** Constant of n_c = C sqrt(D^2 + d^2)/L^2, rpm and mm. */
export interface CriticalConstantRow extends TableRow {
  readonly family: 'steel' | 'aluminium';
  readonly C: number;
  readonly from: string;
}

export const criticalConstants: StandardTable<CriticalConstantRow> = {
  id: 'critical-speed-constants',
  edition: 'Trade formula for the critical speed of tubes',
  title: 'Constant of the critical speed formula',
  source: "a propeller-shaft component supplier's technical data (steel); recomputed for aluminium",
  covers: 'steel and 6061 aluminium tubes between two joints',
  verified: 'secondary',
  unit: 'rpm mm',
  notes: [
    'First principles give 1.2099e8 with E 207 GPa and 7850 kg/m3.',
    'The inch constant that is printed beside it, 4.8e6, is 0.8 % too high: 1.21e8/25.4 is 4.764e6.',
  ],
  rows: [
    { family: 'steel', C: 1.21e8, from: "printed in a shaft supplier's technical data" },
    { family: 'aluminium', C: 1.19e8, from: 'recomputed from E 68.9 GPa and 2700 kg/m3' },
  ],
};

/** Share of the critical speed that the working speed may reach. */
export interface SpeedShareRow extends TableRow {
  readonly use: 'industrial' | 'automotive' | 'cardan maker';
  readonly share: number;
}

export const speedShares: StandardTable<SpeedShareRow> = {
  id: 'critical-speed-shares',
  edition: 'Trade shares of the critical speed',
  title: 'How near to its critical speed a shaft may run',
  source: "a propeller-shaft component supplier's technical data; a cardan shaft maker's page on speed limits",
  covers: 'cardan and propeller shafts',
  verified: 'secondary',
  unit: 'none',
  notes: ["The cardan maker's page prints x 7.5; 0.75 is meant."],
  rows: [
    { use: 'industrial', share: 0.65 },
    { use: 'automotive', share: 0.7 },
    { use: 'cardan maker', share: 0.75 },
  ],
};

const shareOf = (use: SpeedShareRow['use']): number => speedShares.rows.find((row) => row.use === use)?.share ?? 0;

/** A shaft that stays below the first share of its critical speed passes; beyond the second it fails. */
export const goodShare = shareOf('industrial');
export const mostShare = shareOf('automotive');
/** Where they come from, as findings say it. */
export const shareSource =
  "0.65 (industrial) and 0.70 (automotive) of the critical speed: a shaft supplier's technical data";

/**
 * Half-width of the band about half the critical speed, as a share of the half: keep 8 % above or below 50 %. A cardan shaft maker's page
 * on speed limits. A joint at an angle bends the shaft twice a turn.
 */
export const halfBand = 0.08;
export const halfBandSource = "8 % about half the critical speed: a cardan shaft maker's page on speed limits";

/** Twist that a drive does not feel: one degree in a length of twenty diameters. Handbook rule, from memory. */
export const twistDegrees = 1;
export const twistDiameters = 20;

/** Strength beside a weld in 6061-T6 as a share of the parent metal's: 115 of 240 MPa. EN 1999-1-1, from memory. */
export const weldedShare = 115 / 240;
