/** What the cutter must reach: the narrowest web, the sharpest inside corner, the smallest hole. mm. */
import { leastStretchGap } from '../geometry/contour-gap.ts';
import { type Box, type Stretch, stretchBox } from '../geometry/contour-stretch.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import type { Budget } from './limits.ts';
import { eachNearPair } from './near-pairs.ts';
import type { Nested } from './nest.ts';

/** The exact gap of two stretches costs as much as so many pairs that are passed over. */
const gapCost = 100;

/** The narrowest place between two contours of one part. */
export interface Web {
  readonly gap: number;
  readonly x: number;
  readonly y: number;
  /** Numbers of the two contours. */
  readonly between: readonly [number, number];
}

/**
 * The narrowest web of all parts; null where no part has two contours; 'unknown' when the budget ran out. Pairs of contours, and of
 * their stretches, that are further apart than the best so far are passed over.
 */
export function narrowestWeb(contours: readonly Nested[], budget: Budget): Web | null | 'unknown' {
  const boxes = contours.map(({ loop }) => loop.stretches.map(stretchBox));
  let best: Web | null = null;
  let reach = Infinity;
  const between = (small: number, large: number): void => {
    const [a, b] = [contours[small] as Nested, contours[large] as Nested];
    for (const [k, theirs] of b.loop.stretches.entries()) {
      const box = (boxes[large] as Box[])[k] as Box;
      if (boxGap(a.box, box) >= reach) continue;
      budget.left -= a.loop.stretches.length;
      if (budget.left < 0) return;
      for (const [i, mine] of a.loop.stretches.entries()) {
        if (boxGap((boxes[small] as Box[])[i] as Box, box) >= reach) continue;
        budget.left -= gapCost;
        if (budget.left < 0) return;
        const { gap, at } = leastStretchGap(mine, theirs);
        if (gap >= reach) continue;
        reach = gap;
        best = { gap, x: at[0], y: at[1], between: [small, large] };
      }
    }
  };
  const isWhole = eachNearPair(
    contours.map(({ box }) => box),
    () => reach,
    budget,
    (i, k) => {
      const [a, b] = [contours[i] as Nested, contours[k] as Nested];
      if (a.part !== b.part) return;
      budget.left -= a.loop.stretches.length + b.loop.stretches.length;
      if (a.loop.stretches.length <= b.loop.stretches.length) between(i, k);
      else between(k, i);
    },
  );
  return isWhole && budget.left >= 0 ? best : 'unknown';
}

function boxGap(a: Box, b: Box): number {
  const dx = Math.max(0, a.xMin - b.xMax, b.xMin - a.xMax);
  const dy = Math.max(0, a.yMin - b.yMax, b.yMin - a.yMax);
  return Math.hypot(dx, dy);
}

/** An inside corner: concave as the metal sees it. Radius 0 where two stretches meet at a corner. */
export interface InsideCorner {
  readonly radius: number;
  readonly x: number;
  readonly y: number;
  readonly contour: number;
}

/** How much a corner may be rounded, mm, without anybody seeing it: facets of a round are no sharp corners. */
const unseen = 0.02;

/** The smallest radius in inside corners of all contours, held against `wanted`; null where there is no inside corner. */
export function sharpestInside(contours: readonly Nested[], wanted: number): InsideCorner | null {
  let best: InsideCorner | null = null;
  const note = (radius: number, x: number, y: number, contour: number): void => {
    if (best === null || radius < best.radius) best = { radius, x, y, contour };
  };
  for (const [i, { loop, depth }] of contours.entries()) {
    // Metal lies on the left of a counter-clockwise outside and of a clockwise hole.
    const metalInside = depth % 2 === 0;
    const { stretches } = loop;
    const way = (signedArea(stretches) > 0 ? 1 : -1) * (metalInside ? 1 : -1);
    for (const [k, stretch] of stretches.entries()) {
      if (stretch.kind === 'arc' && stretch.sweep * way < 0) note(stretch.r, stretch.x1, stretch.y1, i);
      const next = stretches[(k + 1) % stretches.length] as Stretch;
      if (stretches.length < 2) continue;
      const turn = turnBetween(stretch, next) * way;
      if (turn < 0 && wanted * (1 / cos(Math.min(-turn, 3) / 2) - 1) > unseen) note(0, next.x1, next.y1, i);
    }
  }
  return best;
}

/** Twice the area of the chords: its sign tells the direction of travel. One full circle runs as its sweep says. */
export function signedArea(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, s) => {
    const segment = s.kind === 'arc' ? s.r * s.r * (s.sweep - sin(s.sweep)) : 0;
    return sum + s.x1 * s.y2 - s.x2 * s.y1 + segment;
  }, 0);
}

/** Turn at the corner from one stretch to the next, radians, positive to the left. */
function turnBetween(a: Stretch, b: Stretch): number {
  const turn = heading(b, 'start') - heading(a, 'end');
  return atan2(sin(turn), cos(turn));
}

function heading(stretch: Stretch, end: 'start' | 'end'): number {
  if (stretch.kind === 'line') return atan2(stretch.y2 - stretch.y1, stretch.x2 - stretch.x1);
  const angle = end === 'start' ? stretch.start : stretch.start + stretch.sweep;
  return angle + (Math.sign(stretch.sweep) * Math.PI) / 2;
}
