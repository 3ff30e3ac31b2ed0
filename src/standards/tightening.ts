import type { Lookup, StandardTable, TableRow } from './table.ts';
import { found, lookUp } from './table.ts';

/** How screws are tightened. */
export type TighteningMethod =
  | 'yield or angle'
  | 'torque wrench, tested'
  | 'torque wrench'
  | 'power driver'
  | 'impact driver';

/** Scatter of one tightening method. alphaA = greatest over least preload, the symbol of VDI 2230. */
export interface TighteningRow extends TableRow {
  readonly method: TighteningMethod;
  readonly title: string;
  /** The preload lies within plus or minus this much of its middle, percent: careful and careless end. */
  readonly scatterFrom: number;
  readonly scatterTo: number;
  readonly alphaFrom: number;
  readonly alphaTo: number;
}

/** Tightening factors by method. */
export const tighteningFactors: StandardTable<TighteningRow> = {
  id: 'vdi2230-alpha',
  edition: 'VDI 2230, 1986 and 2001',
  title: 'Scatter of the preload by tightening method',
  source:
    "scatter from a fastener maker's page; alphaA = (1 + x)/(1 - x) of it, widened where a fastener handbook prints a wider band " +
    '(torque wrench 1.6 to 2.0); yield or angle from memory',
  covers: 'five methods',
  verified: 'secondary',
  unit: 'percent; alphaA none',
  memoryFields: ['alphaA of yield or angle'],
  notes: [
    'A click wrench on a stiff short joint stands in the middle of its band, on a springy joint at the upper end.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { method: 'yield or angle', title: 'to the yield point or by angle', scatterFrom: 5, scatterTo: 12, alphaFrom: 1.2, alphaTo: 1.4, memory: true },
    { method: 'torque wrench, tested', title: 'torque wrench, torque found by test on the joint', scatterFrom: 17, scatterTo: 23, alphaFrom: 1.4, alphaTo: 1.6 },
    { method: 'torque wrench', title: 'torque wrench, friction estimated', scatterFrom: 23, scatterTo: 28, alphaFrom: 1.6, alphaTo: 2 },
    { method: 'power driver', title: 'power screwdriver, set by after-tightening', scatterFrom: 26, scatterTo: 43, alphaFrom: 1.7, alphaTo: 2.5 },
    { method: 'impact driver', title: 'impact driver', scatterFrom: 43, scatterTo: 60, alphaFrom: 2.5, alphaTo: 4 },
  ],
};

/** The tightening factor to count with. */
export interface TighteningFactor {
  /** Greatest over least preload, at the careless end of the method's band. */
  readonly alphaA: number;
  readonly band: { readonly from: number; readonly to: number };
  readonly title: string;
  readonly source: string;
  readonly memory: boolean;
}

/** Tightening factor of a method, at the safe (upper) end of its band. A miss lists the methods. Source: VDI 2230. */
export function tighteningFactor(method: string): Lookup<TighteningFactor> {
  const row = lookUp(tighteningFactors, 'method', method);
  if (!row.ok) return row;
  const { title, alphaFrom, alphaTo, memory = false } = row.value;
  return found({
    alphaA: alphaTo,
    band: { from: alphaFrom, to: alphaTo },
    title,
    source: tighteningFactors.edition,
    memory,
  });
}

/** K of the short torque formula T = K F d, by the state of the screw. */
export interface TorqueFactorRow extends TableRow {
  readonly condition: string;
  readonly K: number;
}

/** Torque factors K. */
export const torqueFactors: StandardTable<TorqueFactorRow> = {
  id: 'k-values',
  edition: "Shigley's Mechanical Engineering Design, table 8-15",
  title: 'Torque factor K',
  source: 'the table itself, in a stored copy of the page',
  covers: 'five states of a screw',
  verified: 'secondary',
  unit: 'none',
  notes: ['K lumps thread, head and lubricant together: use it to check a torque, not to set one.'],
  rows: [
    { condition: 'nonplated, black', K: 0.3 },
    { condition: 'zinc plated', K: 0.2 },
    { condition: 'lubricated', K: 0.18 },
    { condition: 'cadmium plated', K: 0.16 },
    { condition: 'anti-seize', K: 0.12 },
  ],
};

/** Torque factor K of a condition. A miss lists the conditions. */
export function torqueFactor(condition: string): Lookup<TorqueFactorRow> {
  return lookUp(torqueFactors, 'condition', condition);
}
