/** Where two stretches of a contour meet: points shared by lines and arcs, in closed form. mm. */
import { hypot } from '../units/hypot.ts';
import { atan2 } from '../units/trig.ts';
import { type ArcStretch, arcCovers, type LineStretch, type Stretch } from './contour-stretch.ts';

export type XY = readonly [x: number, y: number];

/** How far, mm, a computed meeting point may lie beyond the end of a line and still count. */
const REACH = 1e-9;

/**
 * The points that two stretches share; none where they lie along one another (same line, same circle), for
 * then they share a run and not a point.
 */
export function meetings(a: Stretch, b: Stretch): XY[] {
  if (a.kind === 'line') {
    return b.kind === 'line' ? lineWithLine(a, b) : lineWithArc(a, b);
  }
  return b.kind === 'line' ? lineWithArc(b, a) : arcWithArc(a, b);
}

/** True where the angle of the point about the arc's centre is swept by the arc. */
export function arcReaches(arc: ArcStretch, [x, y]: XY): boolean {
  return arcCovers(arc, atan2(y - arc.y, x - arc.x));
}

function lineWithLine(a: LineStretch, b: LineStretch): XY[] {
  const ax = a.x2 - a.x1;
  const ay = a.y2 - a.y1;
  const bx = b.x2 - b.x1;
  const by = b.y2 - b.y1;
  const cross = ax * by - ay * bx;
  const lengthA = hypot(ax, ay);
  const lengthB = hypot(bx, by);
  if (Math.abs(cross) < 1e-12 * lengthA * lengthB) return [];
  const s = ((b.x1 - a.x1) * by - (b.y1 - a.y1) * bx) / cross;
  const t = ((b.x1 - a.x1) * ay - (b.y1 - a.y1) * ax) / cross;
  const slackA = REACH / lengthA;
  const slackB = REACH / lengthB;
  if (s < -slackA || s > 1 + slackA || t < -slackB || t > 1 + slackB) return [];
  return [[a.x1 + s * ax, a.y1 + s * ay]];
}

function lineWithArc(line: LineStretch, arc: ArcStretch): XY[] {
  const length = hypot(line.x2 - line.x1, line.y2 - line.y1);
  const ux = (line.x2 - line.x1) / length;
  const uy = (line.y2 - line.y1) / length;
  const foot = (arc.x - line.x1) * ux + (arc.y - line.y1) * uy;
  const away = (arc.x - line.x1) * uy - (arc.y - line.y1) * ux;
  const rest = arc.r ** 2 - away ** 2;
  if (rest < 0) return [];
  const reach = Math.sqrt(rest);
  const points: XY[] = [];
  for (const s of [foot - reach, foot + reach]) {
    const point: XY = [line.x1 + s * ux, line.y1 + s * uy];
    if (s >= -REACH && s <= length + REACH && arcReaches(arc, point)) points.push(point);
  }
  return points;
}

function arcWithArc(a: ArcStretch, b: ArcStretch): XY[] {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const apart = hypot(dx, dy);
  if (apart < 1e-12 * (a.r + b.r)) return [];
  const along = (apart ** 2 + a.r ** 2 - b.r ** 2) / (2 * apart);
  const rest = a.r ** 2 - along ** 2;
  if (rest < 0) return [];
  const up = Math.sqrt(rest);
  const ux = dx / apart;
  const uy = dy / apart;
  const points: XY[] = [];
  for (const v of [up, -up]) {
    const point: XY = [a.x + along * ux - v * uy, a.y + along * uy + v * ux];
    if (arcReaches(a, point) && arcReaches(b, point)) points.push(point);
  }
  return points;
}
