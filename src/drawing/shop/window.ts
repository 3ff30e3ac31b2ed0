/** A cut seen through a window: the part of it that lies inside a box. mm of the part. */
import type { Point } from '../../model/drawing.ts';
import type { Box } from '../text-size.ts';
import type { Cut } from './section.ts';

type Axis = 'x' | 'y';

interface Edge {
  readonly axis: Axis;
  readonly at: number;
  /** +1: inside is above. */
  readonly sign: 1 | -1;
}

const edgesOf = (box: Box): Edge[] => [
  { axis: 'x', at: box.xMin, sign: 1 },
  { axis: 'x', at: box.xMax, sign: -1 },
  { axis: 'y', at: box.yMin, sign: 1 },
  { axis: 'y', at: box.yMax, sign: -1 },
];

const inside = (p: Point, { axis, at, sign }: Edge): number => sign * (p[axis] - at);

function cross(a: Point, b: Point, edge: Edge): Point {
  const [da, db] = [inside(a, edge), inside(b, edge)];
  const t = da / (da - db);
  const p = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  return edge.axis === 'x' ? { ...p, x: edge.at } : { ...p, y: edge.at };
}

/** A closed loop as far as it lies in the box (Sutherland and Hodgman: one side after the other). */
export function clippedLoop(loop: readonly Point[], box: Box): Point[] {
  return edgesOf(box).reduce<readonly Point[]>(
    (points, edge) =>
      points.flatMap((p, i) => {
        const before = points.at(i - 1) as Point;
        const [now, was] = [inside(p, edge) >= 0, inside(before, edge) >= 0];
        if (now && was) return [p];
        if (now) return [cross(before, p, edge), p];
        return was ? [cross(before, p, edge)] : [];
      }),
    loop,
  ) as Point[];
}

function clippedLine([a, b]: readonly [Point, Point], box: Box): (readonly [Point, Point])[] {
  let [from, to] = [a, b];
  for (const edge of edgesOf(box)) {
    const [f, t] = [inside(from, edge) >= 0, inside(to, edge) >= 0];
    if (!f && !t) return [];
    if (!f) from = cross(from, to, edge);
    else if (!t) to = cross(from, to, edge);
  }
  return [[from, to]];
}

/** What of a cut shows in a window, and which of its outlines are the window's own edges. */
export interface Glimpse {
  readonly loops: readonly (readonly Point[])[];
  readonly edges: readonly (readonly [Point, Point])[];
  readonly broken: readonly (readonly [Point, Point])[];
  readonly behind: readonly (readonly [Point, Point])[];
}

export function through(cut: Cut, box: Box): Glimpse {
  const loops = cut.loops.map((loop) => clippedLoop(loop, box)).filter((loop) => loop.length > 2);
  const own = ([a, b]: readonly [Point, Point]) =>
    edgesOf(box).some((edge) => Math.abs(inside(a, edge)) < 1e-9 && Math.abs(inside(b, edge)) < 1e-9);
  const all = loops.flatMap((loop) => loop.map((p, i) => [p, loop[(i + 1) % loop.length] as Point] as const));
  return {
    loops,
    edges: all.filter((edge) => !own(edge)),
    broken: all.filter(own),
    behind: [...cut.behind, ...cut.threads].flatMap((one) => clippedLine(one, box)),
  };
}
