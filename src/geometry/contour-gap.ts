/** The least gap between two contours: the narrowest web of metal between two cuts, exactly. mm. */

import type { Contour } from '../model/sheet.ts';
import { hypot } from '../units/hypot.ts';
import { arcReaches, meetings, type XY } from './contour-meet.ts';
import {
  type ArcStretch,
  type Box,
  type LineStretch,
  type Stretch,
  stretchBox,
  stretchesOf,
} from './contour-stretch.ts';

/** The narrowest place between two contours. */
export interface Gap {
  /** Least distance between the two curves, mm; 0 where they touch or cross. */
  readonly gap: number;
  /** Middle of the narrowest place. */
  readonly at: XY;
  /** Its ends, on the first and on the second contour. */
  readonly from: XY;
  readonly to: XY;
}

/**
 * The least distance between the curves of two contours, exact for lines, arcs and circles. The curves alone
 * count: one contour may lie within the other (a hole in an outline) or beside it; `pointInContour` tells
 * which.
 * Method: for each pair of stretches the ends, the feet of the normals and the lines of centres; pairs whose
 * boxes are further apart than the best so far are passed over. Source: plane geometry.
 */
export function leastGap(a: Contour, b: Contour): Gap {
  const [first, second] = [boxed(a), boxed(b)];
  // A pair that is likely near bounds what need be looked at: whatever stands further apart by its box cannot be the least.
  let reach = squared(nearBound(first, second));
  let best: Span = { gap: Infinity, from: [NaN, NaN], to: [NaN, NaN] };
  for (const p of first) {
    for (const q of second) {
      if (boxGap2(p.box, q.box) > reach) continue;
      const found = stretchGap(p.stretch, q.stretch);
      if (found.gap < best.gap) {
        best = found;
        reach = Math.min(reach, squared(found.gap));
      }
    }
  }
  const { gap, from, to } = best;
  return { gap, from, to, at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] };
}

interface Boxed {
  readonly stretch: Stretch;
  readonly box: Box;
}

/** Contours never change, and the same one is held against many. */
const knownBoxes = new WeakMap<Contour, readonly Boxed[]>();

function boxed(contour: Contour): readonly Boxed[] {
  const boxes =
    knownBoxes.get(contour) ?? stretchesOf(contour).map((stretch) => ({ stretch, box: stretchBox(stretch) }));
  knownBoxes.set(contour, boxes);
  return boxes;
}

/** The gap of the pair whose boxes are nearest: the least gap is no greater. */
function nearBound(first: readonly Boxed[], second: readonly Boxed[]): number {
  let least = Infinity;
  let pair: readonly [Boxed, Boxed] | null = null;
  for (const p of first) {
    for (const q of second) {
      const apart = boxGap2(p.box, q.box);
      if (apart < least) {
        least = apart;
        pair = [p, q];
      }
    }
  }
  return pair === null ? Infinity : stretchGap(pair[0].stretch, pair[1].stretch).gap;
}

/** Square of a gap, and a little more, so that rounding never passes over the least one. */
const squared = (gap: number): number => gap * gap * (1 + 1e-9) + 1e-18;

/** Square of the distance between two boxes. */
function boxGap2(a: Box, b: Box): number {
  const dx = Math.max(0, a.xMin - b.xMax, b.xMin - a.xMax);
  const dy = Math.max(0, a.yMin - b.yMax, b.yMin - a.yMax);
  return dx * dx + dy * dy;
}

interface Span {
  readonly gap: number;
  readonly from: XY;
  readonly to: XY;
}

/** The same between two stretches. */
export function leastStretchGap(a: Stretch, b: Stretch): Gap {
  const { gap, from, to } = stretchGap(a, b);
  return { gap, from, to, at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] };
}

function stretchGap(a: Stretch, b: Stretch): Span {
  const [touch] = meetings(a, b);
  if (touch !== undefined) return { gap: 0, from: touch, to: touch };
  const spans: Span[] = [];
  const add = (from: XY, to: XY): void => {
    spans.push({ gap: hypot(to[0] - from[0], to[1] - from[1]), from, to });
  };
  for (const end of endsOf(a)) add(end, nearestOn(b, end));
  for (const end of endsOf(b)) add(nearestOn(a, end), end);
  if (a.kind === 'arc' && b.kind === 'arc') {
    for (const [from, to] of alongCentres(a, b)) add(from, to);
  } else if (a.kind === 'arc' && b.kind === 'line') {
    const foot = nearestOn(b, [a.x, a.y]);
    add(nearestOn(a, foot), foot);
  } else if (a.kind === 'line' && b.kind === 'arc') {
    const foot = nearestOn(a, [b.x, b.y]);
    add(foot, nearestOn(b, foot));
  }
  return spans.reduce((least, span) => (span.gap < least.gap ? span : least));
}

function endsOf(stretch: Stretch): XY[] {
  return [
    [stretch.x1, stretch.y1],
    [stretch.x2, stretch.y2],
  ];
}

/** The point of a stretch that is nearest to the one given. */
function nearestOn(stretch: Stretch, point: XY): XY {
  return stretch.kind === 'line' ? nearestOnLine(stretch, point) : nearestOnArc(stretch, point);
}

function nearestOnLine(line: LineStretch, [x, y]: XY): XY {
  const dx = line.x2 - line.x1;
  const dy = line.y2 - line.y1;
  const share = ((x - line.x1) * dx + (y - line.y1) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, share));
  return [line.x1 + t * dx, line.y1 + t * dy];
}

function nearestOnArc(arc: ArcStretch, point: XY): XY {
  const dx = point[0] - arc.x;
  const dy = point[1] - arc.y;
  const away = hypot(dx, dy);
  if (away > 1e-12 * arc.r) {
    if (arcReaches(arc, point)) return [arc.x + (dx / away) * arc.r, arc.y + (dy / away) * arc.r];
    const first = hypot(point[0] - arc.x1, point[1] - arc.y1);
    const second = hypot(point[0] - arc.x2, point[1] - arc.y2);
    return first <= second ? [arc.x1, arc.y1] : [arc.x2, arc.y2];
  }
  // From the centre, every point of the arc is as near.
  return [arc.x1, arc.y1];
}

/** Pairs of points on the line through both centres, where the circles run side by side. */
function alongCentres(a: ArcStretch, b: ArcStretch): [XY, XY][] {
  const apart = hypot(b.x - a.x, b.y - a.y);
  if (apart < 1e-12 * (a.r + b.r)) return [];
  const ux = (b.x - a.x) / apart;
  const uy = (b.y - a.y) / apart;
  const pairs: [XY, XY][] = [];
  for (const s of [1, -1]) {
    const from: XY = [a.x + s * ux * a.r, a.y + s * uy * a.r];
    if (!arcReaches(a, from)) continue;
    for (const t of [1, -1]) {
      const to: XY = [b.x + t * ux * b.r, b.y + t * uy * b.r];
      if (arcReaches(b, to)) pairs.push([from, to]);
    }
  }
  return pairs;
}
