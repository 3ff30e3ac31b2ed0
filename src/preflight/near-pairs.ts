/** Pairs of boxes that are near each other, found by a sweep: thousands of stretches in milliseconds. */
import type { Box } from '../geometry/contour.ts';
import type { Budget } from './limits.ts';

/** A pair that is looked at costs as much as so many that are passed over. */
const visitCost = 10;

/**
 * Calls `visit` for every pair of boxes that are at most `slack()` apart along both axes; `slack` may shrink on the way.
 * The sweep runs along the axis on which the boxes lie more apart.
 * @returns false when the budget ran out before all pairs were seen
 */
export function eachNearPair(
  boxes: readonly Box[],
  slack: () => number,
  budget: Budget,
  visit: (i: number, k: number) => void,
): boolean {
  const alongX = crowding(boxes, 'x') <= crowding(boxes, 'y');
  const low = Float64Array.from(boxes, (box) => (alongX ? box.xMin : box.yMin));
  const high = Float64Array.from(boxes, (box) => (alongX ? box.xMax : box.yMax));
  const left = Float64Array.from(boxes, (box) => (alongX ? box.yMin : box.xMin));
  const right = Float64Array.from(boxes, (box) => (alongX ? box.yMax : box.xMax));
  const order = Uint32Array.from(boxes.keys()).sort((a, b) => (low[a] as number) - (low[b] as number));
  const open = new Uint32Array(boxes.length);
  let count = 0;
  for (const i of order) {
    budget.left -= count + 1;
    if (budget.left < 0) return false;
    const reach = slack();
    let kept = 0;
    for (let j = 0; j < count; j++) {
      const k = open[j] as number;
      if ((high[k] as number) + reach < (low[i] as number)) continue;
      open[kept++] = k;
      if ((left[k] as number) <= (right[i] as number) + reach && (left[i] as number) <= (right[k] as number) + reach) {
        budget.left -= visitCost;
        visit(k, i);
      }
    }
    count = kept;
    open[count++] = i;
  }
  return true;
}

/** How many boxes stand over a place of the axis, on average. */
function crowding(boxes: readonly Box[], axis: 'x' | 'y'): number {
  let total = 0;
  let low = Infinity;
  let high = -Infinity;
  for (const box of boxes) {
    const from = axis === 'x' ? box.xMin : box.yMin;
    const to = axis === 'x' ? box.xMax : box.yMax;
    total += to - from;
    low = Math.min(low, from);
    high = Math.max(high, to);
  }
  return high > low ? total / (high - low) : boxes.length;
}
