/**
 * A closed contour as a run of exact stretches, lines and arcs, and what can be read off them one by one. mm,
 * radians.
 */

import type { Contour } from '../model/sheet.ts';
import { hypot } from '../units/hypot.ts';
import { atan, atan2, cos, sin } from '../units/trig.ts';

/** A straight stretch. */
export interface LineStretch {
  readonly kind: 'line';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/**
 * An arc about (x, y); it starts at the angle `start` and turns through `sweep`, radians, positive counter-
 * clockwise.
 */
export interface ArcStretch {
  readonly kind: 'arc';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly start: number;
  readonly sweep: number;
}

export type Stretch = LineStretch | ArcStretch;

/** A rectangle along the axes, mm. */
export interface Box {
  readonly xMin: number;
  readonly yMin: number;
  readonly xMax: number;
  readonly yMax: number;
}

/** Bulges below this are read as straight: on a 100 mm chord such an arc rises by 5e-11 mm. */
const STRAIGHT = 1e-12;

/**
 * The stretches of a contour in its own order. A circle is one arc of a full turn, counter-clockwise from
 * angle 0.
 * @throws on a path with fewer than two corners, or with one corner given twice in a row
 */
export function stretchesOf(contour: Contour): readonly Stretch[] {
  if (contour.kind === 'circle') {
    const { x, y, r } = contour;
    return [{ kind: 'arc', x1: x + r, y1: y, x2: x + r, y2: y, x, y, r, start: 0, sweep: 2 * Math.PI }];
  }
  const { vertices } = contour;
  if (vertices.length < 2) throw new Error(`Contour ${contour.feature}: a path needs two corners or more.`);
  return vertices.map((from, i) => {
    const to = vertices[(i + 1) % vertices.length] ?? from;
    return stretchBetween(from.x, from.y, to.x, to.y, from.bulge);
  });
}

/** The stretch from (x1, y1) to (x2, y2) with the given bulge: 0 for a line, tan(sweep / 4) for an arc. */
export function stretchBetween(x1: number, y1: number, x2: number, y2: number, bulge: number): Stretch {
  if (x1 === x2 && y1 === y2) throw new Error(`A stretch of no length at (${x1}, ${y1}).`);
  if (Math.abs(bulge) < STRAIGHT) return { kind: 'line', x1, y1, x2, y2 };
  // The centre lies on the chord's middle normal, at (1 - b^2) / (4 b) chords to the left of the direction of
  // travel.
  const along = (1 - bulge * bulge) / (4 * bulge);
  const x = (x1 + x2) / 2 - along * (y2 - y1);
  const y = (y1 + y2) / 2 + along * (x2 - x1);
  const r = (hypot(x2 - x1, y2 - y1) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return {
    kind: 'arc',
    x1,
    y1,
    x2,
    y2,
    x,
    y,
    r,
    start: atan2(y1 - y, x1 - x),
    sweep: 4 * atan(bulge),
  };
}

/** Length of one stretch, mm. */
export function stretchLength(stretch: Stretch): number {
  return stretch.kind === 'line'
    ? hypot(stretch.x2 - stretch.x1, stretch.y2 - stretch.y1)
    : stretch.r * Math.abs(stretch.sweep);
}

/** Length of the whole cut, mm. */
export function contourLength(contour: Contour): number {
  return stretchesOf(contour).reduce((sum, stretch) => sum + stretchLength(stretch), 0);
}

/** True where the arc passes the direction `angle` (radians, any turn), ends included. */
export function arcCovers(arc: ArcStretch, angle: number): boolean {
  const turn = 2 * Math.PI;
  const ahead = (((arc.sweep > 0 ? angle - arc.start : arc.start - angle) % turn) + turn) % turn;
  const slack = 1e-12;
  return ahead <= Math.abs(arc.sweep) + slack || ahead >= turn - slack;
}

/** The box of one stretch, with the outermost points of an arc. */
export function stretchBox(stretch: Stretch): Box {
  const { x1, y1, x2, y2 } = stretch;
  const ends = {
    xMin: Math.min(x1, x2),
    yMin: Math.min(y1, y2),
    xMax: Math.max(x1, x2),
    yMax: Math.max(y1, y2),
  };
  if (stretch.kind === 'line') return ends;
  return {
    xMin: arcCovers(stretch, Math.PI) ? stretch.x - stretch.r : ends.xMin,
    yMin: arcCovers(stretch, -Math.PI / 2) ? stretch.y - stretch.r : ends.yMin,
    xMax: arcCovers(stretch, 0) ? stretch.x + stretch.r : ends.xMax,
    yMax: arcCovers(stretch, Math.PI / 2) ? stretch.y + stretch.r : ends.yMax,
  };
}

/** The least rectangle along the axes that holds the contour. */
export function contourBox(contour: Contour): Box {
  const box = { xMin: Infinity, yMin: Infinity, xMax: -Infinity, yMax: -Infinity };
  for (const stretch of stretchesOf(contour)) {
    const part = stretchBox(stretch);
    box.xMin = Math.min(box.xMin, part.xMin);
    box.yMin = Math.min(box.yMin, part.yMin);
    box.xMax = Math.max(box.xMax, part.xMax);
    box.yMax = Math.max(box.yMax, part.yMax);
  }
  return box;
}

/** True where the point lies within the contour. On the contour itself either answer may come. */
export function pointInContour(contour: Contour, x: number, y: number): boolean {
  if (contour.kind === 'circle') return hypot(x - contour.x, y - contour.y) < contour.r;
  return pointInStretches(stretchesOf(contour), x, y);
}

/** The same for stretches that close on themselves, one run or several: inside by the even-odd rule. */
export function pointInStretches(stretches: readonly Stretch[], x: number, y: number): boolean {
  let inside = false;
  for (const stretch of stretches) {
    if (crossesToTheRight(stretch, x, y)) inside = !inside;
  }
  return inside;
}

/** Whether the ray from (x, y) towards +x crosses the stretch an odd number of times. */
function crossesToTheRight(stretch: Stretch, x: number, y: number): boolean {
  if (stretch.kind === 'line') {
    if (stretch.y1 <= y === stretch.y2 <= y) return false;
    return stretch.x1 + ((y - stretch.y1) / (stretch.y2 - stretch.y1)) * (stretch.x2 - stretch.x1) > x;
  }
  // Cut at the top and the bottom of the circle, so that each piece rises or falls throughout.
  const { sweep } = stretch;
  const quarter = Math.PI / 2;
  const cuts: number[] = [];
  const low = Math.min(stretch.start, stretch.start + sweep);
  const high = Math.max(stretch.start, stretch.start + sweep);
  for (let k = Math.ceil((low - quarter) / Math.PI); quarter + k * Math.PI < high; k++) {
    if (quarter + k * Math.PI > low) cuts.push(quarter + k * Math.PI);
  }
  if (sweep < 0) cuts.reverse();
  let odd = false;
  let fromAngle = stretch.start;
  let fromY = stretch.y1;
  for (const cut of [...cuts, stretch.start + sweep]) {
    const last = cut === stretch.start + sweep;
    const toY = last ? stretch.y2 : stretch.y + (sin(cut) > 0 ? stretch.r : -stretch.r);
    if (fromY <= y !== toY <= y) {
      const rightHalf = cos((fromAngle + cut) / 2) > 0;
      const reach = Math.sqrt(Math.max(0, stretch.r ** 2 - (y - stretch.y) ** 2));
      if (stretch.x + (rightHalf ? reach : -reach) > x) odd = !odd;
    }
    fromAngle = cut;
    fromY = toY;
  }
  return odd;
}
