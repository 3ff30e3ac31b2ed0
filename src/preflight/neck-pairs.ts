/** Pairs of points at which two stretches may be nearest each other, in closed form. mm. */
import { arcReaches, type XY } from '../geometry/contour-meet.ts';
import type { Stretch } from '../geometry/contour-stretch.ts';

/** A point of a stretch: one of its ends, or within it. */
export interface Spot {
  readonly at: XY;
  readonly where: 'start' | 'within' | 'end';
}

export type Pair = readonly [mine: Spot, theirs: Spot];

const within = (at: XY): Spot => ({ at, where: 'within' });

const endsOf = (stretch: Stretch): readonly [Spot, Spot] => [
  { at: [stretch.x1, stretch.y1], where: 'start' },
  { at: [stretch.x2, stretch.y2], where: 'end' },
];

/** The points of a stretch whose normals pass the point: none where they lie beyond its ends. */
function feet(stretch: Stretch, [x, y]: XY): Spot[] {
  if (stretch.kind === 'line') {
    const [dx, dy] = [stretch.x2 - stretch.x1, stretch.y2 - stretch.y1];
    const t = ((x - stretch.x1) * dx + (y - stretch.y1) * dy) / (dx * dx + dy * dy);
    return t > 0 && t < 1 ? [within([stretch.x1 + t * dx, stretch.y1 + t * dy])] : [];
  }
  const away = Math.hypot(x - stretch.x, y - stretch.y);
  if (away < 1e-12 * stretch.r) return [];
  const [ux, uy] = [(x - stretch.x) / away, (y - stretch.y) / away];
  return [stretch.r, -stretch.r].flatMap((r) => {
    const at: XY = [stretch.x + r * ux, stretch.y + r * uy];
    return arcReaches(stretch, at) ? [within(at)] : [];
  });
}

/** Ends with ends, and the feet of each end on the other stretch: among them are the ends of a run side by side. */
export function besides(a: Stretch, b: Stretch): Pair[] {
  return [
    ...endsOf(a).flatMap((p) => endsOf(b).map((q): Pair => [p, q])),
    ...endsOf(a).flatMap((end) => feet(b, end.at).map((foot): Pair => [end, foot])),
    ...endsOf(b).flatMap((end) => feet(a, end.at).map((foot): Pair => [foot, end])),
  ];
}

/** Every pair at which the distance between two stretches can be least: ends, feet of ends, common normals. */
export function nearestPairs(a: Stretch, b: Stretch): Pair[] {
  return [...besides(a, b), ...commonNormals(a, b)];
}

/** Where one line is square to both: two lines have none but when parallel, and then their ends serve. */
function commonNormals(a: Stretch, b: Stretch): Pair[] {
  if (a.kind === 'line' && b.kind === 'line') return [];
  if (a.kind === 'line') return commonNormals(b, a).map(([p, q]): Pair => [q, p]);
  if (b.kind === 'line') {
    return feet(b, [a.x, a.y]).flatMap((foot) => feet(a, foot.at).map((own): Pair => [own, foot]));
  }
  // The line of centres; circles about one centre run side by side, and their ends serve.
  return feet(a, [b.x, b.y]).flatMap((own) => feet(b, [a.x, a.y]).map((theirs): Pair => [own, theirs]));
}
