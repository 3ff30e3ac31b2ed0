/** Moving what was drawn: from an entity's own plane and block to the sheet. Lengths in any one unit, angles in radians. */
import { type ArcStretch, type Stretch, stretchBetween } from '../geometry/contour.ts';
import { acos, atan2, cos, sin } from '../units/trig.ts';

/** A map of the plane: x' = a x + c y + e, y' = b x + d y + f. */
export interface PlaneMap {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const unmoved: PlaneMap = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Seen from behind: the plane of an extrusion (0, 0, -1) by the arbitrary-axis rule of the DXF reference. */
export const fromBehind: PlaneMap = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First `inner`, then `outer`. */
export function after(outer: PlaneMap, inner: PlaneMap): PlaneMap {
  const { a, b, c, d, e, f } = outer;
  return {
    a: a * inner.a + c * inner.b,
    b: b * inner.a + d * inner.b,
    c: a * inner.c + c * inner.d,
    d: b * inner.c + d * inner.d,
    e: a * inner.e + c * inner.f + e,
    f: b * inner.e + d * inner.f + f,
  };
}

export function movedPoint({ a, b, c, d, e, f }: PlaneMap, x: number, y: number): { x: number; y: number } {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** True where circles stay circles. */
export function keepsCircles({ a, b, c, d }: PlaneMap): boolean {
  const size = Math.max(Math.hypot(a, b), Math.hypot(c, d));
  return Math.abs(Math.hypot(a, b) - Math.hypot(c, d)) <= 1e-9 * size && Math.abs(a * c + b * d) <= 1e-9 * size * size;
}

export const isMirrored = ({ a, b, c, d }: PlaneMap): boolean => a * d - b * c < 0;

const isUnmoved = ({ a, b, c, d, e, f }: PlaneMap): boolean =>
  a === 1 && b === 0 && c === 0 && d === 1 && e === 0 && f === 0;

/**
 * Stretches moved; arcs become short lines where the map makes ellipses of them.
 * @param within how far such lines may lie from the true curve, in the unit after the move
 */
export function movedStretches(map: PlaneMap, stretches: readonly Stretch[], within: number): readonly Stretch[] {
  if (isUnmoved(map)) return stretches;
  const round = keepsCircles(map);
  return stretches.flatMap((stretch): Stretch[] => {
    if (stretch.kind === 'arc') return round ? [movedArc(map, stretch)] : flattenedArc(map, stretch, within);
    const from = movedPoint(map, stretch.x1, stretch.y1);
    const to = movedPoint(map, stretch.x2, stretch.y2);
    return [{ kind: 'line', x1: from.x, y1: from.y, x2: to.x, y2: to.y }];
  });
}

function movedArc(map: PlaneMap, arc: ArcStretch): ArcStretch {
  const from = movedPoint(map, arc.x1, arc.y1);
  const to = movedPoint(map, arc.x2, arc.y2);
  const centre = movedPoint(map, arc.x, arc.y);
  return {
    kind: 'arc',
    x1: from.x,
    y1: from.y,
    x2: to.x,
    y2: to.y,
    x: centre.x,
    y: centre.y,
    r: arc.r * Math.hypot(map.a, map.b),
    start: atan2(from.y - centre.y, from.x - centre.x),
    sweep: isMirrored(map) ? -arc.sweep : arc.sweep,
  };
}

function flattenedArc(map: PlaneMap, arc: ArcStretch, within: number): Stretch[] {
  const size = arc.r * Math.max(Math.hypot(map.a, map.b), Math.hypot(map.c, map.d));
  const points = anglesOver(arc.start, arc.sweep, size, within).map((angle) =>
    movedPoint(map, arc.x + arc.r * cos(angle), arc.y + arc.r * sin(angle)),
  );
  return linesThrough(points);
}

/** Angles from `start` through `sweep` so close that chords of a circle of radius `size` stay `within` of it. */
export function anglesOver(start: number, sweep: number, size: number, within: number): number[] {
  const turn = size > within ? 2 * acos(1 - within / size) : 1;
  const count = Math.min(4000, Math.max(2, Math.ceil(Math.abs(sweep) / turn)));
  return Array.from({ length: count + 1 }, (_, i) => start + (sweep * i) / count);
}

/** Lines from point to point; points at one place are one. */
export function linesThrough(points: readonly { readonly x: number; readonly y: number }[]): Stretch[] {
  const lines: Stretch[] = [];
  let last = points[0];
  for (const point of points.slice(1)) {
    if (last === undefined || (point.x === last.x && point.y === last.y)) continue;
    lines.push(stretchBetween(last.x, last.y, point.x, point.y, 0));
    last = point;
  }
  return lines;
}
