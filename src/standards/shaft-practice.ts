import type { Lookup, StandardTable, TableRow } from './table.ts';
import { lookUp, must } from './table.ts';

/** A limit or usual value of the propeller shaft trade. `limit` is met by a good shaft; `hard` is the last that anybody allows. */
export interface ShaftRuleRow extends TableRow {
  readonly rule: string;
  readonly title: string;
  readonly limit: number;
  readonly hard: number;
  readonly unit: string;
  readonly source: string;
}

/** Rules for angles, slip and readings of propeller shafts. */
export const shaftRules: StandardTable<ShaftRuleRow> = {
  id: 'shaft-rules',
  edition: 'Joint makers, an engineering handbook and trade practice',
  title: 'Angles, slip and readings of propeller shafts',
  source: 'row by row',
  covers: 'propeller shafts of vehicles and machines with universal joints',
  verified: 'secondary',
  unit: 'row by row',
  notes: [
    'Two joint makers disagree on how steep a joint may run: one table comes to about 1000 rad/s2, another to 2435 for the smallest joints.',
    'The published two-joint table recomputes to 396 to 408 rad/s2: the 400 rule.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    { rule: 'torsional', title: 'unevenness of the whole train', limit: 400, hard: 500, unit: 'rad/s2', source: 'universal joint handbook of the automotive engineers and trade practice; the published two-joint table recomputes to it', memory: true },
    { rule: 'inertial', title: 'unevenness of one joint', limit: 1000, hard: 2435, unit: 'rad/s2', source: "a joint maker's angle table recomputes to 1000; another maker's speed-angle table to 2435 for small joints" },
    { rule: 'needles', title: 'least angle of a joint', limit: 1, hard: 0.5, unit: 'deg', source: "a joint maker's installation manual (1 degree); its later page and older trade pages (0.5)" },
    { rule: 'difference', title: 'difference of two joint angles', limit: 1, hard: 1.5, unit: 'deg', source: "a joint maker's installation manual (1 degree); an engineering reference page (1.5)" },
    { rule: 'ripple', title: 'ripple of the speed that is read', limit: 0.01, hard: 0.03, unit: 'share', source: 'common practice', memory: true },
    { rule: 'reserve', title: 'slip left at either end', limit: 20, hard: 5, unit: 'mm', source: 'trade how-to articles say 19 to 25 mm; common practice', memory: true },
    { rule: 'engagement', title: 'spline engaged at the longest', limit: 50, hard: 38, unit: 'mm', source: 'trade how-to articles say 2 in; common practice', memory: true },
    { rule: 'tape', title: 'doubt of a tape reading between faces', limit: 1, hard: 2, unit: 'mm', source: 'common practice', memory: true },
    { rule: 'inclinometer', title: 'doubt of an inclinometer', limit: 0.2, hard: 0.5, unit: 'deg', source: 'common practice', memory: true },
    { rule: 'plan', title: 'doubt of a plan angle', limit: 0.5, hard: 1, unit: 'deg', source: 'common practice', memory: true },
    { rule: 'wedge-step', title: 'steps in which axle wedges are sold', limit: 0.5, hard: 1, unit: 'deg', source: 'common practice', memory: true },
    { rule: 'wedge-most', title: 'steepest axle wedge', limit: 6, hard: 6, unit: 'deg', source: 'common practice', memory: true },
  ],
};

/** One rule of the shaft trade; a miss is a bug. */
export function shaftRule(rule: string): ShaftRuleRow {
  return must(lookUp(shaftRules, 'rule', rule));
}

/** One speed of a joint maker's table, and the steepest angle it allows there. */
export interface JointAngleRow extends TableRow {
  readonly n: number;
  readonly angle: number;
}

/** Steepest angle of a universal joint by speed. */
export const jointAngleTable: StandardTable<JointAngleRow> = {
  id: 'joint-angle-by-speed',
  edition: "A joint maker's operating-angle table",
  title: 'Steepest angle of a universal joint by speed',
  source: "a joint maker's published table",
  covers: 'universal joints of road vehicles, 1500 to 5000 rpm',
  verified: 'secondary',
  unit: 'rpm, deg',
  // biome-ignore format: a table is read row by row
  rows: [
    { n: 5000, angle: 3.2 }, { n: 4500, angle: 3.7 }, { n: 4000, angle: 4.2 },
    { n: 3000, angle: 5.8, memory: true }, { n: 2500, angle: 7, memory: true }, { n: 2000, angle: 8.7, memory: true }, { n: 1500, angle: 11.5, memory: true },
  ],
};

/** The table's row for a speed that it lists; it is not interpolated. */
export function tabledAngle(n: number): Lookup<JointAngleRow> {
  return lookUp(jointAngleTable, 'n', n);
}
