/** Whether the holes of an outline stand free: within it, and neither touching nor holding each other. */
import type { Contour } from '../model/sheet.ts';
import { leastGap } from './contour-gap.ts';
import { type Box, contourBox, pointInContour } from './contour-stretch.ts';

/** Any point of a contour. */
const pointOf = (contour: Contour): readonly [x: number, y: number] => {
  if (contour.kind === 'circle') return [contour.x + contour.r, contour.y];
  const [first] = contour.vertices;
  return first ? [first.x, first.y] : [Number.NaN, Number.NaN];
};

const holds = (outer: Contour, inner: Contour): boolean => pointInContour(outer, ...pointOf(inner));

/** Boxes so far apart hold contours that are at least as far apart. */
const areApart = (a: Box, b: Box, least: number): boolean =>
  Math.max(a.xMin - b.xMax, b.xMin - a.xMax, a.yMin - b.yMax, b.yMin - a.yMax) >= least;

/**
 * True where every hole lies within the outline and at least so far from it and from every other hole, and none lies within another: the face between
 * them is one piece, and its rims are the contours as they stand. Exact for lines, arcs and circles (see leastGap).
 * @param least mm, more than 0
 */
export function holesStandApart(outside: Contour, holes: readonly Contour[], least: number): boolean {
  const boxes = holes.map(contourBox);
  return holes.every((hole, i) => {
    if (!holds(outside, hole) || leastGap(outside, hole).gap < least) return false;
    return holes.slice(0, i).every((other, k) => {
      if (areApart(boxes[i] as Box, boxes[k] as Box, least)) return true;
      return !holds(hole, other) && !holds(other, hole) && leastGap(hole, other).gap >= least;
    });
  });
}
