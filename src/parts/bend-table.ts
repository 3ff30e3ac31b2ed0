/** What a press operator needs to know of each bend of a bracket. mm, degrees. */
import { bendAllowance, bendDeduction, outsideSetback } from '../formulas/bending.ts';
import { type BracketSpec, blankLength } from './bracket.ts';

export interface BendRow {
  readonly id: string;
  /** Of the bend line, from the foot's free end along the blank. */
  readonly at: number;
  readonly direction: 'up' | 'down';
  readonly angle: number;
  readonly radius: number;
  readonly k: number;
  readonly allowance: number;
  readonly deduction: number;
}

export interface BendTable {
  readonly blank: { readonly length: number; readonly width: number };
  readonly rows: readonly BendRow[];
  /** Legs to the outside, in order, to measure after bending: free end or outer corner to outer corner. */
  readonly legs: readonly number[];
}

/** The bends in the order of the blank. */
export function bendTable(spec: BracketSpec): BendTable {
  const { bends, straights, thickness } = spec;
  let x = 0;
  const rows = bends.map((bend, i): BendRow => {
    const allowance = bendAllowance(bend, thickness);
    x += straights[i] ?? 0;
    const at = x + allowance / 2;
    x += allowance;
    return { id: `bend ${i + 1}`, at, ...bend, allowance, deduction: bendDeduction(bend, thickness) };
  });
  const back = bends.map((bend) => outsideSetback(bend, thickness));
  return {
    blank: { length: blankLength(spec), width: Math.max(spec.foot.width, spec.arm.width) },
    rows,
    legs: straights.map((straight, i) => straight + (back[i - 1] ?? 0) + (back[i] ?? 0)),
  };
}
