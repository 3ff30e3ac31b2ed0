/** Shipped jobs laid out on any paper, and what is asked of their sheets. */

import type { Joint } from '../../../src/core.ts';
import type { Box } from '../../../src/drawing/text-size.ts';
import type { Drawing, Point, Shape } from '../../../src/model/drawing.ts';
import { drawingSheets } from '../../../src/products/drawing.ts';

type Choice = NonNullable<Joint['job']['adapter']['drawing']>;

/** A joint whose job asks for its drawings in a certain way. */
export function laidOut(joint: Joint, choice: Partial<Choice>): Joint {
  const drawing: Choice = { paper: 'auto', angle: 'auto', scale: 'auto', ...choice };
  return { ...joint, job: { ...joint.job, adapter: { ...joint.job.adapter, drawing } } };
}

export const words = { base: 'part', revision: 'R00000', warning: '' };

/** The sheets of one part; none where there is no such part. */
export const sheetsOf = (joint: Joint, part: 'adapter' | 'wheel'): readonly Drawing[] =>
  drawingSheets(joint, words).find((one) => one.part === part)?.sheets ?? [];

export const texts = (drawing: Drawing) => drawing.shapes.flatMap((s) => (s.kind === 'text' ? [s] : []));

/** Whether any of a straight stretch lies within a box: sampled, so that it owes nothing to the code that places texts. */
function stretchIn(a: Point, b: Point, box: Box): boolean {
  const count = Math.max(2, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 0.1));
  for (let i = 0; i <= count; i++) {
    const [x, y] = [a.x + ((b.x - a.x) * i) / count, a.y + ((b.y - a.y) * i) / count];
    if (x > box.xMin && x < box.xMax && y > box.yMin && y < box.yMax) return true;
  }
  return false;
}

/** Corners along a shape's ink, close enough together. */
function ink(shape: Shape): Point[][] {
  const turn = (c: Point, r: number, from: number, to: number): Point[] => {
    const count = Math.max(8, Math.ceil((Math.abs(to - from) * r) / 0.3));
    return Array.from({ length: count + 1 }, (_, i) => {
      const a = from + ((to - from) * i) / count;
      return { x: c.x + r * Math.cos(a), y: c.y + r * Math.sin(a) };
    });
  };
  const radians = Math.PI / 180;
  if (shape.kind === 'line') return [[shape.from, shape.to]];
  if (shape.kind === 'circle') return [turn(shape.centre, shape.r, 0, 2 * Math.PI)];
  if (shape.kind === 'arc') {
    const end = shape.end > shape.start ? shape.end : shape.end + 360;
    return [turn(shape.centre, shape.r, shape.start * radians, end * radians)];
  }
  if (shape.kind === 'text') return [];
  return shape.loops.map((loop) =>
    loop.flatMap((a, i) => {
      const b = loop[i + 1] ?? (shape.closed ? loop[0] : undefined);
      if (!b) return [a];
      if (a.bulge === 0) return [a, b];
      const sweep = 4 * Math.atan(a.bulge);
      const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
      const r = half / Math.sin(Math.abs(sweep) / 2);
      const height =
        Math.sign(sweep) * Math.sqrt(Math.max(0, r * r - half * half)) * (Math.abs(sweep) > Math.PI ? -1 : 1);
      const [ux, uy] = [(b.x - a.x) / (2 * half), (b.y - a.y) / (2 * half)];
      const c = { x: (a.x + b.x) / 2 - height * uy, y: (a.y + b.y) / 2 + height * ux };
      const start = Math.atan2(a.y - c.y, a.x - c.x);
      return turn(c, r, start, start + sweep);
    }),
  );
}

interface Inked {
  readonly shape: Shape;
  readonly lines: readonly Point[][];
  readonly around: Box;
}

const around = (points: readonly Point[]): Box => ({
  xMin: Math.min(...points.map((p) => p.x)),
  yMin: Math.min(...points.map((p) => p.y)),
  xMax: Math.max(...points.map((p) => p.x)),
  yMax: Math.max(...points.map((p) => p.y)),
});

const inked = new WeakMap<Drawing, Inked[]>();

/** Shapes whose ink lies within a box. */
export function inkIn(drawing: Drawing, box: Box): Shape[] {
  const known =
    inked.get(drawing) ??
    drawing.shapes.flatMap((shape) => {
      const lines = ink(shape);
      return lines.length === 0 ? [] : [{ shape, lines, around: around(lines.flat()) }];
    });
  inked.set(drawing, known);
  // A shape whose surroundings miss the box has no ink in it; all others are walked along.
  const near = known.filter(
    ({ around: a }) => a.xMin <= box.xMax && a.xMax >= box.xMin && a.yMin <= box.yMax && a.yMax >= box.yMin,
  );
  return near
    .filter(({ lines }) =>
      lines.some((points) => points.some((p, i) => i > 0 && stretchIn(points[i - 1] as Point, p, box))),
    )
    .map(({ shape }) => shape);
}

export const corners = (drawing: Drawing): Point[] => drawing.shapes.flatMap((shape) => ink(shape).flat());
