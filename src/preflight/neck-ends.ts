/** The two ends of a would-be narrowest place of one contour: is it shortest there, and does metal or air lie between? mm. */
import type { XY } from '../geometry/contour-meet.ts';
import type { Stretch } from '../geometry/contour-stretch.ts';
import { atan2 } from '../units/trig.ts';

/** A way off along the contour: its direction, and how it bends (towards the centre, 1/mm; none for a line). */
export interface Way {
  readonly tx: number;
  readonly ty: number;
  readonly cx: number;
  readonly cy: number;
}

/** A point of the contour with the ways off, forwards and backwards. */
export interface End {
  readonly at: XY;
  readonly ahead: Way;
  readonly back: Way;
}

/** The way off from a point of a stretch, forwards or backwards along it. */
export function wayFrom(stretch: Stretch, [x, y]: XY, sign: 1 | -1): Way {
  if (stretch.kind === 'line') {
    const [dx, dy] = [stretch.x2 - stretch.x1, stretch.y2 - stretch.y1];
    const length = Math.hypot(dx, dy) * sign;
    return { tx: dx / length, ty: dy / length, cx: 0, cy: 0 };
  }
  const [rx, ry] = [(stretch.x - x) / stretch.r, (stretch.y - y) / stretch.r];
  const turn = Math.sign(stretch.sweep) * sign;
  return { tx: ry * turn, ty: -rx * turn, cx: rx / stretch.r, cy: ry / stretch.r };
}

/** A slope below this is level, and so is a doubt of this size about a bend. */
const level = 1e-6;

/**
 * True where no small step of either end, or of both, makes the segment shorter: the first and second order conditions of a least
 * distance, taken for every pair of ways. Level places (parallel edges) count. Source: calculus; at a corner each way is held alone.
 */
export function isShortest(p: End, q: End, gap: number): boolean {
  const [ux, uy] = [(q.at[0] - p.at[0]) / gap, (q.at[1] - p.at[1]) / gap];
  for (const a of [p.ahead, p.back]) {
    const slope = -(ux * a.tx + uy * a.ty);
    if (slope < -level) return false;
    const own = 1 - gap * (ux * a.cx + uy * a.cy);
    if (slope <= level && own < -level) return false;
    for (const b of [q.ahead, q.back]) {
      const other = ux * b.tx + uy * b.ty;
      if (other < -level) return false;
      const theirs = 1 + gap * (ux * b.cx + uy * b.cy);
      if (other <= level && theirs < -level) return false;
      const both = -(a.tx * b.tx + a.ty * b.ty);
      const room = Math.sqrt(Math.max(0, own) * Math.max(0, theirs));
      if (slope <= level && other <= level && both < -room - level) return false;
    }
  }
  return true;
}

/** True where the segment is near enough square to the way, and the curve does not close round the other end. */
export function isSquareTo(way: Way, ux: number, uy: number, gap: number, taper: number): boolean {
  return Math.abs(ux * way.tx + uy * way.ty) <= taper && 1 - gap * (ux * way.cx + uy * way.cy) >= -level;
}

/** 1 where the direction (ux, uy) leaves the point to the left of the contour's travel, -1 to the right, 0 along it. */
export function sideOf({ ahead, back }: End, ux: number, uy: number): -1 | 0 | 1 {
  const toBack = turnTo(ahead, back.tx, back.ty);
  const toIt = turnTo(ahead, ux, uy);
  const slack = 1e-9;
  if (toIt < slack || Math.abs(toIt - toBack) < slack) return 0;
  return toIt < toBack ? 1 : -1;
}

/** Turn from a way to a direction, counter-clockwise, 0 to a full turn. */
function turnTo({ tx, ty }: Way, x: number, y: number): number {
  const turn = atan2(tx * y - ty * x, tx * x + ty * y);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}
