/** The trade between two varied fields: a grid of marks, one for each place, told apart by shape as well as by colour. */
import type { Drawing, Fill, Point, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';
import { frame } from './frame.ts';
import { textWidth } from './text-size.ts';

/** How many variants of one place came out how. */
export interface TradeCell {
  readonly pass: number;
  readonly caution: number;
  readonly fail: number;
  /** No job, or nothing assessed. */
  readonly none: number;
}

/** A varied field: its name, and for each column or row the value, or the first and last of several. */
export interface TradeAxis {
  readonly name: string;
  readonly labels: readonly string[];
}

export interface TradeInput {
  readonly title: string;
  readonly x: TradeAxis;
  /** Null when one field is varied. */
  readonly y: TradeAxis | null;
  readonly cell: (column: number, row: number) => TradeCell;
  /** Variants at one place when all are done; more than 1 when other fields vary too. */
  readonly each: number;
}

type Mark = 'all' | 'some' | 'caution' | 'fail' | 'none';

const widest = 150;
const highest = 105;
const size = 3;
const small = 0.85 * size;

const meanings: Readonly<Record<Mark, { readonly fill: Fill; readonly one: string; readonly many: string }>> = {
  all: { fill: 'good', one: 'pass', many: 'every variant passes' },
  some: { fill: 'good', one: 'pass', many: 'some pass' },
  caution: { fill: 'doubtful', one: 'caution', many: 'at best a caution' },
  fail: { fill: 'bad', one: 'fail', many: 'all fail' },
  none: { fill: 'none', one: 'no job, or nothing to judge', many: 'no job, or nothing to judge' },
};

/** Null where nothing has been judged yet. */
function markOf({ pass, caution, fail, none }: TradeCell): Mark | null {
  if (pass > 0) return caution + fail + none === 0 ? 'all' : 'some';
  if (caution > 0) return 'caution';
  if (fail > 0) return 'fail';
  return none > 0 ? 'none' : null;
}

const box = (x: number, y: number, wide: number, high: number, fill: Fill): Shape => ({
  kind: 'path',
  pen: 'hatch',
  fill,
  closed: true,
  loops: [
    [
      { x, y, bulge: 0 },
      { x: x + wide, y, bulge: 0 },
      { x: x + wide, y: y + high, bulge: 0 },
      { x, y: y + high, bulge: 0 },
    ],
  ],
});

const line = (from: Point, to: Point): Shape => ({ kind: 'line', pen: 'outline', from, to });

/** Disc, ring, triangle, cross, dash: none is another one turned. */
function markShapes(mark: Mark, { x, y }: Point, r: number): Shape[] {
  switch (mark) {
    case 'all':
      return [{ kind: 'circle', pen: 'mark', fill: 'screw', centre: { x, y }, r: 0.45 * r }];
    case 'some':
      return [{ kind: 'circle', pen: 'outline', fill: 'paper', centre: { x, y }, r: 0.8 * r }];
    case 'caution': {
      const corner = (degrees: number) => ({
        x: x + r * cos((degrees * Math.PI) / 180),
        y: y - 0.2 * r + r * sin((degrees * Math.PI) / 180),
        bulge: 0,
      });
      return [
        { kind: 'path', pen: 'outline', fill: 'paper', closed: true, loops: [[corner(90), corner(210), corner(330)]] },
      ];
    }
    case 'fail': {
      const d = 0.7 * r;
      return [
        line({ x: x - d, y: y - d }, { x: x + d, y: y + d }),
        line({ x: x - d, y: y + d }, { x: x + d, y: y - d }),
      ];
    }
    case 'none':
      return [line({ x: x - 0.6 * r, y }, { x: x + 0.6 * r, y })];
  }
}

const text = (
  at: Point,
  words: string,
  align: 'start' | 'middle' | 'end',
  { bold = false, angle = 0 } = {},
): Shape => ({ kind: 'text', at, text: words, size: bold ? size : small, align, angle, bold });

/** Every how many-th label fits when one takes `room` and the places stand `pitch` apart. */
const labelStep = (room: number, pitch: number): number => Math.max(1, Math.ceil(room / pitch));

const widestOf = (labels: readonly string[]): number =>
  labels.reduce((most, label) => Math.max(most, textWidth(label, small)), 0);

/** Words beside a mark, and how many places have it. */
function legend(marks: ReadonlyMap<Mark, number>, each: number, at: Point): Shape[] {
  return (Object.keys(meanings) as Mark[])
    .filter((mark) => marks.has(mark))
    .flatMap((mark, row) => {
      const y = at.y - row * 7;
      const { fill, one, many } = meanings[mark];
      const count = marks.get(mark) ?? 0;
      const words = `${each > 1 ? many : one}: ${count} ${each > 1 ? (count === 1 ? 'place' : 'places') : count === 1 ? 'variant' : 'variants'}`;
      return [
        box(at.x, y - 2.5, 5, 5, fill),
        ...markShapes(mark, { x: at.x + 2.5, y }, 1.7),
        text({ x: at.x + 7, y: y - small / 2 }, words, 'start'),
      ];
    });
}

/** The picture of a sweep: the first varied field to the right, the second upwards. */
export function tradeView({ title, x, y, cell, each }: TradeInput): Drawing {
  const columns = x.labels.length;
  const rows = y ? y.labels.length : 1;
  const wide = Math.min(14, widest / columns);
  const high = Math.min(14, highest / rows);
  const [right, top] = [columns * wide, rows * high];
  const r = 0.3 * Math.min(wide, high);
  const marks = new Map<Mark, number>();
  const tints: Shape[] = [];
  const signs: Shape[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const mark = markOf(cell(column, row));
      if (mark === null) continue;
      marks.set(mark, (marks.get(mark) ?? 0) + 1);
      tints.push(box(column * wide, row * high, wide, high, meanings[mark].fill));
      signs.push(...markShapes(mark, { x: (column + 0.5) * wide, y: (row + 0.5) * high }, r));
    }
  }
  const across = labelStep(widestOf(x.labels) + 2.5, wide);
  const up = labelStep(1.6 * small, high);
  const shapes: Shape[] = [
    ...tints,
    box(0, 0, right, top, 'none'),
    ...signs,
    ...x.labels.flatMap((label, i) =>
      i % across === 0
        ? [
            line({ x: (i + 0.5) * wide, y: 0 }, { x: (i + 0.5) * wide, y: -1.2 }),
            text({ x: (i + 0.5) * wide, y: -2.2 - small }, label, 'middle'),
          ]
        : [],
    ),
    text({ x: right / 2, y: -4 - small - 1.6 * size }, x.name, 'middle', { bold: true }),
    text({ x: 0, y: top + 5 }, title, 'start', { bold: true }),
    ...legend(marks, each, { x: right + 8, y: top - 3 }),
  ];
  if (y) {
    for (const [i, label] of y.labels.entries()) {
      if (i % up !== 0) continue;
      shapes.push(line({ x: 0, y: (i + 0.5) * high }, { x: -1.2, y: (i + 0.5) * high }));
      shapes.push(text({ x: -2.2, y: (i + 0.5) * high - small / 2 }, label, 'end'));
    }
    shapes.push(text({ x: -5 - widestOf(y.labels), y: top / 2 }, y.name, 'middle', { bold: true, angle: 90 }));
  }
  const said = (Object.keys(meanings) as Mark[])
    .filter((mark) => marks.has(mark))
    .map((mark) => `${meanings[mark][each > 1 ? 'many' : 'one']}: ${marks.get(mark)} of ${columns * rows}`);
  const description = `${title}. ${x.name} to the right${y ? `, ${y.name} upwards` : ''}. ${said.join('; ')}.`;
  return frame({ id: 'trade', title, description }, shapes, 6);
}
