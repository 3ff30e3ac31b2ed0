/** The drilling plan as the rows and columns of a checklist. */
import type { DrillingPlan, PlanHole, PlanStep } from '../shop/drilling-plan.ts';
import { formatLength, type LengthUnits } from '../units/format.ts';

const opWords = {
  spot: 'spot',
  drill: 'drill',
  counterbore: 'counterbore',
  countersink: 'countersink',
  ream: 'ream',
  tap: 'tap',
} as const;

export interface ChecklistRow {
  readonly hole: PlanHole;
  /** Numbers of the tools that work this hole. */
  readonly tools: readonly number[];
}

/** Holes set by set, and one column for each tool in its order. */
export function drilledOrder({ tools, steps }: DrillingPlan): {
  readonly holes: readonly ChecklistRow[];
  readonly columns: readonly { readonly tool: number; readonly words: string }[];
} {
  const rows = new Map<string, { hole: PlanHole; tools: number[] }>();
  for (const { tool, holes } of steps) {
    for (const hole of holes) {
      const row = rows.get(hole.tag);
      if (row) row.tools.push(tool);
      else rows.set(hole.tag, { hole, tools: [tool] });
    }
  }
  return {
    holes: [...rows.values()],
    columns: tools.map(({ number, op }) => ({ tool: number, words: opWords[op] })),
  };
}

/** Depth to the full diameter, where the tip of the tool stops (deepest hole of the set), and how it is pecked. */
export function cutCells(
  { cut, holes, peck }: PlanStep,
  units: LengthUnits,
): { depth: string; tip: string; peck: string } {
  const digits = units === 'mm' ? 2 : 3;
  const size = (mm: number): string => formatLength(mm, units, digits);
  const tip = Math.min(...holes.map((hole) => hole.tip));
  const pecks = peck === null ? '' : `of ${size(peck)}`;
  const depth =
    cut.op === 'spot'
      ? `mouth ${size(cut.diameter)} wide`
      : cut.op === 'countersink'
        ? `head ${size(cut.diameter)} wide`
        : cut.depth === null
          ? 'through'
          : cut.op === 'tap'
            ? `${size(cut.depth)} full thread`
            : cut.op === 'counterbore'
              ? size(cut.depth)
              : `${size(cut.depth)} full diameter`;
  return { depth, tip: size(tip), peck: pecks };
}
