/** The picture of a sweep, gathered while it runs: counts for each place of the grid, never the variants themselves. */
import { type TradeAxis, type TradeCell, tradeView } from '../drawing/trade-view.ts';
import { type Axis, placesOf, type SweepPlan } from '../job/vary.ts';
import type { VariantVerdict } from '../report/variant.ts';
import { writeSvg } from '../write/svg.ts';

/** The grid has no more columns and rows than this; longer ranges share places, neighbours together. */
const most = { columns: 50, rows: 35 };

export interface TradeTally {
  /** Take in how a variant came out. */
  readonly add: (index: number, verdict: VariantVerdict) => void;
  /** Variants taken in so far, by verdict. */
  readonly counts: () => Readonly<Record<VariantVerdict, number>>;
  /** SVG text. */
  readonly picture: (title: string) => string;
}

/** Order of the counts of a place; whatever else comes is the last. */
const kinds: readonly string[] = ['pass', 'caution', 'fail', 'none'];

function axisOf(axis: Axis, bins: number): TradeAxis {
  const first = (bin: number) => Math.ceil((bin * axis.count) / bins);
  const labels = Array.from({ length: bins }, (_, bin) => axis.at(first(bin)).typed);
  return { name: axis.name, labels };
}

/** Counts for the picture of a plan. At most 50 by 35 places, whatever the plan. */
export function tradeTally(plan: SweepPlan): TradeTally {
  const [x, y] = plan.axes;
  if (!x) throw new Error('a sweep varies one field or more');
  const columns = Math.min(x.count, most.columns);
  const rows = y ? Math.min(y.count, most.rows) : 1;
  const cells = new Uint32Array(columns * rows * kinds.length);
  const counts: Record<VariantVerdict, number> = { pass: 0, caution: 0, fail: 0, 'not assessed': 0, 'bad job': 0 };
  const start = (column: number, row: number) => (row * columns + column) * kinds.length;
  return {
    add: (index, verdict) => {
      counts[verdict] += 1;
      const [i = 0, j = 0] = placesOf(plan, index);
      const column = Math.floor((i * columns) / x.count);
      const row = y ? Math.floor((j * rows) / y.count) : 0;
      const kind = kinds.indexOf(verdict);
      const at = start(column, row) + (kind < 0 ? 3 : kind);
      cells[at] = (cells[at] as number) + 1;
    },
    counts: () => ({ ...counts }),
    picture: (title) => {
      const cell = (column: number, row: number): TradeCell => {
        const at = start(column, row);
        const [pass = 0, caution = 0, fail = 0, none = 0] = cells.subarray(at, at + kinds.length);
        return { pass, caution, fail, none };
      };
      const each = plan.count / (columns * rows);
      return writeSvg(
        tradeView({ title, x: axisOf(x, columns), y: y ? axisOf(y, rows) : null, cell, each: Math.ceil(each) }),
      );
    },
  };
}
