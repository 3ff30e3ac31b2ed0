import type { Lookup, StandardTable, TableRow } from './table.ts';
import { lookUp, must } from './table.ts';

/** How the second side of a turned part finds the axis of the first. */
export type SetupMethod = 'one chucking' | 'indicated' | 'edge finder' | 'three jaw';

/** One set-up, and the total indicator reading between the two sides that it can hold. */
export interface SetupRow extends TableRow {
  readonly method: SetupMethod;
  readonly title: string;
  /** Achievable TIR between the two sides, mm. */
  readonly tir: number;
}

/** Achievable concentricity by set-up. Common practice of small shops; a good machinist beats it, a worn chuck does not. */
export const setups: StandardTable<SetupRow> = {
  id: 'setups',
  edition: 'Common practice',
  title: 'Achievable run-out by set-up',
  source: 'common practice',
  covers: 'turning and milling of parts up to about 250 mm',
  verified: 'memory',
  unit: 'mm TIR',
  // biome-ignore format: a table is read row by row
  rows: [
    { method: 'one chucking', title: 'both registers in one chucking', tir: 0.01, memory: true },
    { method: 'indicated', title: 'turned over and indicated on the bore', tir: 0.02, memory: true },
    { method: 'edge finder', title: 'vise and edge finder', tir: 0.05, memory: true },
    { method: 'three jaw', title: 'three-jaw chuck, gripped again', tir: 0.08, memory: true },
  ],
};

/** Achievable TIR between the two sides of a part, mm, by set-up. Source: common practice. */
export function setupRunout(method: SetupMethod): { tir: number; title: string; source: string; memory: boolean } {
  const { tir, title, memory = false } = must(lookUp(setups, 'method', method));
  return { tir, title, source: setups.source, memory };
}

/** One least or most dimension of machined parts. `value` counts hole diameters or millimetres, as `per` says. */
export interface MachiningRuleRow extends TableRow {
  readonly rule: string;
  readonly title: string;
  readonly value: number;
  readonly per: 'd' | 'mm';
  readonly source: string;
}

/** Rules for holes, walls and threads in machined parts. */
export const machiningRules: StandardTable<MachiningRuleRow> = {
  id: 'machining-rules',
  edition: 'Machining guidelines and common practice',
  title: 'Rules for machined holes and walls',
  source: 'row by row',
  covers: 'steel and aluminium parts of a small shop',
  verified: 'secondary',
  unit: 'mm or x d',
  // biome-ignore format: a table is read row by row
  rows: [
    { rule: 'wall', title: 'least wall that machines at all', value: 0.8, per: 'mm', source: 'two machining guides' },
    { rule: 'web', title: 'least web between holes that carry load', value: 2, per: 'mm', source: 'common practice', memory: true },
    { rule: 'tapped_wall', title: 'metal outside a loaded tapped hole', value: 1, per: 'd', source: 'common practice', memory: true },
    { rule: 'tapped_wall_least', title: 'metal outside any tapped hole', value: 0.5, per: 'd', source: 'common practice', memory: true },
    { rule: 'edge_steel', title: 'hole centre to edge, steel', value: 1.5, per: 'd', source: 'common practice', memory: true },
    { rule: 'edge_aluminium', title: 'hole centre to edge, aluminium', value: 2, per: 'd', source: 'common practice', memory: true },
    { rule: 'hole_depth', title: 'deepest drilled hole', value: 10, per: 'd', source: 'two machining guides' },
    { rule: 'thread_depth', title: 'longest useful thread', value: 2, per: 'd', source: 'a machining guide' },
    { rule: 'tolerance', title: 'general tolerance', value: 0.13, per: 'mm', source: 'a machining guide' },
    { rule: 'hole_position', title: 'position of a milled hole', value: 0.05, per: 'mm', source: 'common practice', memory: true },
    { rule: 'chamfer', title: 'edge and hole chamfer', value: 0.5, per: 'mm', source: 'common practice', memory: true },
    { rule: 'parallelism', title: 'parallelism of the two faces', value: 0.05, per: 'mm', source: 'face run-out of catalogue flanges' },
    { rule: 'parallelism_one_chucking', title: 'parallelism of two faces turned in one chucking', value: 0.02, per: 'mm', source: 'common practice', memory: true },
  ],
};

/** A machining rule in mm for a hole of diameter d (ignored by rules per mm); a miss lists the rules. */
export function machiningRule(rule: string, d: number): Lookup<{ value: number; source: string; memory: boolean }> {
  const row = lookUp(machiningRules, 'rule', rule);
  if (!row.ok) return row;
  const { value, per, source, memory = false } = row.value;
  return { ok: true, value: { value: per === 'd' ? value * d : value, source, memory } };
}

/**
 * How far the two faces of a turned part are from parallel, mm total indicator reading across it, by set-up. Two faces that come from one
 * chucking are both square to the same spindle: 0.02 (common practice, no source). In every other set-up the second face is cut after the part
 * was turned over, however its axis was found again: 0.05, what catalogue flanges allow their faces.
 */
export function faceParallelism(method?: SetupMethod): { value: number; source: string; memory: boolean } {
  const rule = method === 'one chucking' ? 'parallelism_one_chucking' : 'parallelism';
  return must(machiningRule(rule, 0));
}
