/** A contour as a polygon of chords or tangents, for meshes and for machines that read no arcs. */
import type { Contour } from '../model/sheet.ts';
import { acos, cos, sin } from '../units/trig.ts';
import { contourArea } from './contour-area.ts';
import { type ArcStretch, stretchesOf } from './contour-stretch.ts';

/** Which side of the true curve the polygon keeps to: no larger than the true area, or no smaller. */
export type PolygonSide = 'inside' | 'outside';

/**
 * A polygon that stays within `chordError` of the contour, wholly on one side of it.
 *
 * - `inside`: the polygon's area lies within the true area. Arcs that swell outwards get vertices on the
 *   curve, hollow ones (root rounds) get tangents. For the outside of a part: never larger than drawn.
 * - `outside`: the polygon's area covers the true area. For holes: never smaller than drawn.
 *
 * The ends of every arc stay on the contour. A circle gets a multiple of four vertices, one on each axis
 * direction, and runs counter-clockwise; a path keeps its own direction. The first point is not repeated.
 * @param chordError largest distance between polygon and curve, mm, more than 0
 */
export function polygonise(contour: Contour, chordError: number, side: PolygonSide): [number, number][] {
  if (!(chordError > 0)) throw new Error(`The chord error must be more than 0 mm (got ${chordError}).`);
  if (contour.kind === 'circle') return circlePolygon(contour.x, contour.y, contour.r, chordError, side);
  const counterClockwise = contourArea(contour) > 0;
  const points: [number, number][] = [];
  for (const stretch of stretchesOf(contour)) {
    points.push([stretch.x1, stretch.y1]);
    if (stretch.kind === 'line') continue;
    const swells = stretch.sweep > 0 === counterClockwise;
    pushArc(points, stretch, chordError, swells === (side === 'inside'));
  }
  return points;
}

/**
 * The largest turn of one polygon side, radians, that keeps within `chordError` of a circle of radius r.
 * Chords: r (1 - cos(turn / 2)) = error. Tangents: r (1 / cos(turn / 2) - 1) = error. At most a third of a
 * turn.
 */
export function largestTurn(r: number, chordError: number, onCurve: boolean): number {
  const cosine = onCurve ? 1 - chordError / r : 1 / (1 + chordError / r);
  return Math.min(2 * acos(Math.max(cosine, -1)), (2 * Math.PI) / 3);
}

function circlePolygon(x: number, y: number, r: number, chordError: number, side: PolygonSide): [number, number][] {
  const turn = largestTurn(r, chordError, side === 'inside');
  const count = 4 * Math.max(2, Math.ceil((2 * Math.PI) / turn / 4));
  const reach = side === 'inside' ? r : r / cos(Math.PI / count);
  const quarter = count / 4;
  const points: [number, number][] = [];
  for (let i = 0; i < count; i++) {
    // One quadrant is worked out and turned, so that the four are alike to the last digit.
    const angle = ((i % quarter) * 2 * Math.PI) / count;
    const c = reach * cos(angle);
    const s = reach * sin(angle);
    const turned: [number, number][] = [
      [c, s],
      [-s, c],
      [-c, -s],
      [s, -c],
    ];
    const [dx, dy] = turned[Math.floor(i / quarter)] ?? [c, s];
    points.push([x + dx, y + dy]);
  }
  return points;
}

/** The points between the two ends of an arc: on the curve, or where its tangents meet. */
function pushArc(points: [number, number][], arc: ArcStretch, chordError: number, onCurve: boolean): void {
  const count = Math.max(1, Math.ceil(Math.abs(arc.sweep) / largestTurn(arc.r, chordError, onCurve) - 1e-9));
  const step = arc.sweep / count;
  const reach = onCurve ? arc.r : arc.r / cos(step / 2);
  const first = onCurve ? 1 : 0.5;
  for (let i = 0; first + i < count; i++) {
    const angle = arc.start + (first + i) * step;
    points.push([arc.x + reach * cos(angle), arc.y + reach * sin(angle)]);
  }
}
