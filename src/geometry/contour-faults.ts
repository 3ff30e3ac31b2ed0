/** What is wrong with a contour as a cut: places where it is not one clean closed line. */

import type { Contour } from '../model/sheet.ts';
import { hypot } from '../units/hypot.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { contourArea } from './contour-area.ts';
import { meetings, type XY } from './contour-meet.ts';
import { type Box, type Stretch, stretchBox, stretchesOf } from './contour-stretch.ts';

export interface ContourFault {
  readonly kind: 'not a number' | 'too few corners' | 'no length' | 'doubles back' | 'crosses itself' | 'no area';
  /** Where, mm; null where it is nowhere in particular. */
  readonly at: XY | null;
}

/** Two points nearer than this, mm, are one corner. */
const SAME = 1e-6;

/**
 * Faults of one contour: corners that are not numbers, stretches of no length, stretches that turn back on
 * the one before, and any place where the contour crosses or touches itself. A path is closed by its form:
 * its last corner joins the first. Pairs of stretches are sought along x, so that thousands of teeth take
 * milliseconds.
 */
export function contourFaults(contour: Contour): ContourFault[] {
  if (contour.kind === 'circle') {
    const { x, y, r } = contour;
    if (![x, y, r].every(Number.isFinite)) return [{ kind: 'not a number', at: null }];
    return r > 0 ? [] : [{ kind: 'no area', at: [x, y] }];
  }
  const { vertices } = contour;
  if (!vertices.every(({ x, y, bulge }) => [x, y, bulge].every(Number.isFinite))) {
    return [{ kind: 'not a number', at: null }];
  }
  if (vertices.length < 2) return [{ kind: 'too few corners', at: null }];
  const short = vertices.filter((v, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? v;
    return hypot(next.x - v.x, next.y - v.y) < SAME;
  });
  if (short.length > 0) return short.map(({ x, y }) => ({ kind: 'no length', at: [x, y] }));
  const stretches = stretchesOf(contour);
  const faults = [...turnsBack(stretches), ...crossings(stretches)];
  if (faults.length === 0 && !(Math.abs(contourArea(contour)) > SAME ** 2)) faults.push({ kind: 'no area', at: null });
  return faults;
}

/** Corners where the next stretch leaves the way the last one came, on the same line or circle. */
function turnsBack(stretches: readonly Stretch[]): ContourFault[] {
  return stretches.flatMap((stretch, i): ContourFault[] => {
    const next = stretches[(i + 1) % stretches.length] ?? stretch;
    const [ax, ay] = direction(stretch, 'end');
    const [bx, by] = direction(next, 'start');
    const opposite = ax * bx + ay * by < 0 && Math.abs(ax * by - ay * bx) < 1e-9;
    return opposite && sameCurve(stretch, next) ? [{ kind: 'doubles back', at: [stretch.x2, stretch.y2] }] : [];
  });
}

function sameCurve(a: Stretch, b: Stretch): boolean {
  if (a.kind === 'line' || b.kind === 'line') return a.kind === b.kind;
  return hypot(a.x - b.x, a.y - b.y) < SAME && Math.abs(a.r - b.r) < SAME;
}

/** Unit direction of travel at one end of a stretch. */
function direction(stretch: Stretch, end: 'start' | 'end'): XY {
  if (stretch.kind === 'line') {
    const length = hypot(stretch.x2 - stretch.x1, stretch.y2 - stretch.y1);
    return [(stretch.x2 - stretch.x1) / length, (stretch.y2 - stretch.y1) / length];
  }
  const angle = end === 'start' ? stretch.start : stretch.start + stretch.sweep;
  const way = Math.sign(stretch.sweep);
  return [-way * sin(angle), way * cos(angle)];
}

/** Points shared by two stretches, other than the corner where neighbours join. */
function crossings(stretches: readonly Stretch[]): ContourFault[] {
  const boxed = stretches.map((stretch, i): { i: number; stretch: Stretch; box: Box } => {
    return { i, stretch, box: stretchBox(stretch) };
  });
  boxed.sort((a, b) => a.box.xMin - b.box.xMin);
  const faults: ContourFault[] = [];
  let open: typeof boxed = [];
  for (const b of boxed) {
    open = open.filter((a) => a.box.xMax >= b.box.xMin - SAME);
    for (const a of open) {
      if (a.box.yMin > b.box.yMax + SAME || b.box.yMin > a.box.yMax + SAME) continue;
      for (const at of sharedPoints(a.stretch, b.stretch)) {
        if (!isJoint(stretches, a.i, b.i, at)) faults.push({ kind: 'crosses itself', at });
      }
    }
    open.push(b);
  }
  return faults;
}

/** Meeting points, and ends of one stretch that lie on a run that both share. */
function sharedPoints(a: Stretch, b: Stretch): XY[] {
  const points = meetings(a, b);
  if (points.length > 0 || a.kind !== b.kind) return points;
  return [...endsOn(a, b), ...endsOn(b, a)];
}

/** Ends of `a` that lie on `b`, where both are lines or both are arcs. */
function endsOn(a: Stretch, b: Stretch): XY[] {
  const ends: XY[] = [
    [a.x1, a.y1],
    [a.x2, a.y2],
  ];
  return ends.filter(([x, y]) => {
    if (b.kind === 'arc') {
      if (Math.abs(hypot(x - b.x, y - b.y) - b.r) > SAME) return false;
      const turn = 2 * Math.PI;
      const angle = atan2(y - b.y, x - b.x);
      const ahead = (((b.sweep > 0 ? angle - b.start : b.start - angle) % turn) + turn) % turn;
      return ahead <= Math.abs(b.sweep);
    }
    const dx = b.x2 - b.x1;
    const dy = b.y2 - b.y1;
    const length = hypot(dx, dy);
    const along = ((x - b.x1) * dx + (y - b.y1) * dy) / length;
    const off = Math.abs((x - b.x1) * dy - (y - b.y1) * dx) / length;
    return off < SAME && along >= 0 && along <= length;
  });
}

/** True where the point is the corner at which the two stretches follow one another. */
function isJoint(stretches: readonly Stretch[], i: number, k: number, [x, y]: XY): boolean {
  const count = stretches.length;
  const joins = (before: number, after: number): boolean => {
    const stretch = stretches[before];
    if (stretch === undefined || (before + 1) % count !== after) return false;
    return hypot(x - stretch.x2, y - stretch.y2) < 1e-4;
  };
  return joins(i, k) || joins(k, i);
}
