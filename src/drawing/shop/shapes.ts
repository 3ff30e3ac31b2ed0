/** Small hands for sheets: moving drawings onto paper, texts, lines, and asking whether a place is free. mm of paper. */
import type { Pen, Point, Shape } from '../../model/drawing.ts';
import { atan, atan2, cos, sin } from '../../units/trig.ts';
import { shapeBox } from '../frame.ts';
import { type Box, grown, overlap, passesThrough, textBox, textWidth } from '../text-size.ts';

/** Cap heights, mm (ISO 3098: 2.5 for sizes, 3.5 for headings; the smaller ones for tables and captions). */
export const cap = { size: 2.5, heading: 3.5, table: 2.2, label: 1.6 } as const;

export const line = (from: Point, to: Point, pen: Pen = 'dimension'): Shape => ({ kind: 'line', pen, from, to });

export function text(
  words: string,
  at: Point,
  size: number = cap.size,
  more: { readonly align?: 'start' | 'middle' | 'end'; readonly angle?: number; readonly bold?: boolean } = {},
): Extract<Shape, { kind: 'text' }> {
  const { align = 'start', angle = 0, bold = false } = more;
  return { kind: 'text', at, text: words, size, align, angle, bold };
}

/** An open or closed path of straight stretches. */
export const polyline = (
  points: readonly Point[],
  pen: Pen,
  closed = false,
  fill: 'none' | 'screw' = 'none',
): Shape => ({
  kind: 'path',
  pen,
  fill,
  closed,
  loops: [points.map(({ x, y }) => ({ x, y, bulge: 0 }))],
});

export const rectangle = ({ xMin, yMin, xMax, yMax }: Box, pen: Pen): Shape =>
  polyline(
    [
      { x: xMin, y: yMin },
      { x: xMax, y: yMin },
      { x: xMax, y: yMax },
      { x: xMin, y: yMax },
    ],
    pen,
    true,
  );

/** A shape made larger or smaller about the origin, then moved. A text keeps its size. */
function shapeOnPaper(shape: Shape, scale: number, to: Point): Shape {
  const p = ({ x, y }: Point): Point => ({ x: to.x + scale * x, y: to.y + scale * y });
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: p(shape.from), to: p(shape.to) };
    case 'circle':
    case 'arc':
      return { ...shape, centre: p(shape.centre), r: scale * shape.r };
    case 'path':
      return { ...shape, loops: shape.loops.map((loop) => loop.map((c) => ({ ...p(c), bulge: c.bulge }))) };
    case 'text':
      return { ...shape, at: p(shape.at) };
  }
}

/** Shapes made larger or smaller about the origin, then moved. Texts keep their size. */
export const onPaper = (shapes: readonly Shape[], scale: number, to: Point): Shape[] =>
  shapes.map((shape) => shapeOnPaper(shape, scale, to));

export const moved = (shapes: readonly Shape[], by: Point): Shape[] => onPaper(shapes, 1, by);

/** Box round shapes; of nothing, the origin. */
export function boxOf(shapes: readonly Shape[]): Box {
  const boxes = shapes.map(shapeBox);
  if (boxes.length === 0) return { xMin: 0, yMin: 0, xMax: 0, yMax: 0 };
  return {
    xMin: Math.min(...boxes.map((b) => b.xMin)),
    yMin: Math.min(...boxes.map((b) => b.yMin)),
    xMax: Math.max(...boxes.map((b) => b.xMax)),
    yMax: Math.max(...boxes.map((b) => b.yMax)),
  };
}

/** Words in lines no wider than `width`. */
export function wrapped(words: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, size, bold) <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** The words on one line no wider than `width`, in smaller letters where they must be. */
export function fitted(words: string, at: Point, size: number, width: number, bold = false): Shape {
  return text(words, at, Math.min(size, width / Math.max(1e-6, textWidth(words, 1, bold))), { bold });
}

/** Whether a stretch of a path runs through a box; an arc by chords of 3 degrees or so. */
function stretchThrough(a: Point & { readonly bulge: number }, b: Point, box: Box): boolean {
  if (a.bulge === 0) return passesThrough(a, b, box);
  const sweep = 4 * atan(a.bulge);
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / 0.05));
  const off = (1 - a.bulge * a.bulge) / (4 * a.bulge);
  const centre = { x: (a.x + b.x) / 2 - off * (b.y - a.y), y: (a.y + b.y) / 2 + off * (b.x - a.x) };
  const r = Math.hypot(a.x - centre.x, a.y - centre.y);
  const start = atan2(a.y - centre.y, a.x - centre.x);
  const at = (k: number): Point => {
    const turn = start + (sweep * k) / count;
    return { x: centre.x + r * cos(turn), y: centre.y + r * sin(turn) };
  };
  return Array.from({ length: count }, (_, k) => passesThrough(at(k), at(k + 1), box)).some(Boolean);
}

/** Whether the ink of a shape runs through a box. */
export function runsThrough(shape: Shape, box: Box): boolean {
  switch (shape.kind) {
    case 'text':
      return overlap(textBox(shape), box);
    case 'line':
      return passesThrough(shape.from, shape.to, box);
    case 'circle':
    case 'arc': {
      const { x, y } = shape.centre;
      const dx = Math.max(box.xMin - x, 0, x - box.xMax);
      const dy = Math.max(box.yMin - y, 0, y - box.yMax);
      const far = Math.hypot(Math.max(x - box.xMin, box.xMax - x), Math.max(y - box.yMin, box.yMax - y));
      return Math.hypot(dx, dy) < shape.r && far > shape.r;
    }
    case 'path':
      return shape.loops.some((loop) =>
        loop.some((a, i) => {
          const b = loop[i + 1] ?? (shape.closed ? loop[0] : undefined);
          return b !== undefined && stretchThrough(a, b, box);
        }),
      );
  }
}

/** Directions in which a label is tried round its place, the first one first. */
const tries = 24;

/** A label of any kind: half its room each way, and how it is drawn about its middle. */
export interface Label {
  readonly half: Point;
  readonly draw: (middle: Point) => readonly Shape[];
}

/**
 * A label beside a place, as near as it can stand without touching anything; further away it gets a leader.
 * @param clear how far from the place it must stay, mm
 * @param towards direction that is tried first, degrees
 * @returns null where no place within 40 mm is free
 */
export function labelled(
  { half, draw }: Label,
  place: Point,
  clear: number,
  taken: readonly Shape[],
  towards: number,
): Shape[] | null {
  for (let out = 0.8; out < 40; out += 0.8) {
    for (let i = 0; i < tries; i++) {
      const turn = ((towards + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (360 / tries)) * Math.PI) / 180;
      const [c, s] = [cos(turn), sin(turn)];
      // Far enough along the direction for the whole box to clear the place.
      const inner = Math.min(half.x / Math.max(Math.abs(c), 1e-9), half.y / Math.max(Math.abs(s), 1e-9));
      const away = clear + out + inner;
      const middle = { x: place.x + away * c, y: place.y + away * s };
      const shapes = draw(middle);
      const box = grown(boxOf(shapes), 0.35);
      if (taken.some((other) => runsThrough(other, box))) continue;
      if (out < 2) return [...shapes];
      const end = away - inner - 0.8;
      const leader = line(
        { x: place.x + clear * c, y: place.y + clear * s },
        { x: place.x + end * c, y: place.y + end * s },
      );
      if (!taken.some((other) => other.kind === 'text' && runsThrough(leader, textBox(other))))
        return [leader, ...shapes];
    }
  }
  return null;
}

/** Words beside a place, as near as they can stand without touching anything. @param clear how far from the place they must stay, mm */
export function labelNear(
  words: string,
  place: Point,
  clear: number,
  taken: readonly Shape[],
  more: { readonly size?: number; readonly bold?: boolean; readonly towards?: number } = {},
): Shape[] {
  const { size = cap.size, bold = false, towards = 0 } = more;
  const label: Label = {
    // Letters reach a third of their height under the line.
    half: { x: textWidth(words, size, bold) / 2, y: 0.8 * size },
    draw: ({ x, y }) => [text(words, { x, y: y - size / 2 }, size, { align: 'middle', bold })],
  };
  // No free place within reach: beside it all the same, for a hole without its tag is worse.
  return (
    labelled(label, place, clear, taken, towards) ?? [
      text(words, { x: place.x + clear + 0.8, y: place.y - size / 2 }, size, { bold }),
    ]
  );
}
