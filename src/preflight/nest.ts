/** Which contour lies in which: parts, their holes, and what lies deeper. mm. */
import { contourArea } from '../geometry/contour-area.ts';
import { type Box, contourBox, pointInStretches } from '../geometry/contour-stretch.ts';
import type { Loop } from './chain.ts';
import type { Budget } from './limits.ts';
import { eachNearPair } from './near-pairs.ts';

/** A contour with its place in the nesting: depth 0 is the outside of a part, 1 a hole, 2 a part in a hole. */
export interface Nested {
  readonly loop: Loop;
  readonly box: Box;
  /** Area within, mm2, above 0. */
  readonly area: number;
  readonly depth: number;
  /** Number of the depth-0 contour that it lies in; its own for an outside. */
  readonly part: number;
}

/** The nesting of contours; null when the budget ran out. Contours that cross each other count by their first corner. */
export function nestingOf(loops: readonly Loop[], budget: Budget): Nested[] | null {
  const boxes = loops.map(({ contour }) => contourBox(contour));
  const areas = loops.map(({ contour }) => Math.abs(contourArea(contour)));
  const holders: number[][] = loops.map(() => []);
  const note = (outer: number, inner: number) => {
    const [o, n] = [boxes[outer] as Box, boxes[inner] as Box];
    if (n.xMin < o.xMin || n.xMax > o.xMax || n.yMin < o.yMin || n.yMax > o.yMax) return;
    if ((areas[inner] as number) >= (areas[outer] as number)) return;
    const { stretches } = loops[outer] as Loop;
    const [first] = (loops[inner] as Loop).stretches;
    budget.left -= stretches.length;
    if (first === undefined || budget.left < 0) return;
    if (pointInStretches(stretches, first.x1, first.y1)) (holders[inner] as number[]).push(outer);
  };
  const isWhole = eachNearPair(
    boxes,
    () => 0,
    budget,
    (i, k) => {
      note(i, k);
      note(k, i);
    },
  );
  if (!isWhole || budget.left < 0) return null;
  return loops.map((loop, i) => {
    const around = holders[i] as number[];
    const outside = around.reduce((best, k) => ((areas[k] as number) > (areas[best] as number) ? k : best), i);
    return { loop, box: boxes[i] as Box, area: areas[i] as number, depth: around.length, part: outside };
  });
}
