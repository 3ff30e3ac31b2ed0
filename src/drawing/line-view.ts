/** The line of shafts from the side and from above, with the signs of the readings and the angles of the joints. True angles. */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import { atan2 } from '../units/trig.ts';
import { shortLines } from './captions.ts';
import { arrowHead } from './dimension.ts';
import { frame } from './frame.ts';

export interface LineToDraw {
  readonly id: string;
  /** The shafts in order: names, readings in degrees, length between joint centres; null where not known, and for the ends. */
  readonly shafts: readonly {
    readonly name: string;
    readonly side: number;
    readonly plan: number;
    readonly length: number | null;
    /** Unit arrow: along, to the left, up. */
    readonly direction: readonly [number, number, number];
  }[];
  /** The joints in order: true angle in degrees, and whether it is of constant velocity. */
  readonly joints: readonly { readonly angle: number; readonly isEven: boolean }[];
}

/** Length that a shaft is drawn with where it is not known. */
const anyLength = 1000;
/** Length of the end shafts as drawn, as a share of the longest between joints. */
const stub = 0.32;

const signed = (degrees: number): string => {
  const text = Math.abs(degrees).toFixed(1);
  return Number(text) === 0 ? '0.0\u00b0' : `${degrees > 0 ? '+' : '\u2212'}${text}\u00b0`;
};

/** Which way the heights of a view count. */
const views = [
  {
    title: 'From the side',
    pick: 2,
    which: 'side',
    plus: 'plus: far end lower',
    minus: 'minus: far end higher',
    downIsPlus: true,
  },
  {
    title: 'From above',
    pick: 1,
    which: 'plan',
    plus: 'plus: far end to the left',
    minus: 'minus: far end to the right',
    downIsPlus: false,
  },
] as const;

type View = (typeof views)[number];

/** The pictogram that settles the sign: a level line and a shaft that leaves it. */
function signPicture({ plus, minus, downIsPlus }: View, at: Point, size: number): Shape[] {
  const one = (x: number, words: string, isDown: boolean): Shape[] => {
    const from = { x, y: at.y };
    const to = { x: x + 7 * size, y: at.y + (isDown ? -1.7 : 1.7) * size };
    return [
      { kind: 'line', pen: 'hidden', from, to: { x: x + 8 * size, y: at.y } },
      { kind: 'line', pen: 'mark', from, to },
      { kind: 'circle', pen: 'outline', fill: 'screw', centre: from, r: 0.45 * size },
      {
        kind: 'text',
        at: { x: x + 9 * size, y: at.y - size / 2 },
        text: words,
        size,
        align: 'start',
        angle: 0,
        bold: true,
      },
    ];
  };
  return [...one(at.x, plus, downIsPlus), ...one(at.x + 31 * size, minus, !downIsPlus)];
}

/** Corners of the line as one view shows it, from the start of the first shaft to the end of the last. */
function cornersOf({ shafts }: LineToDraw, pick: 0 | 1 | 2): Point[] {
  const longest = Math.max(...shafts.map(({ length }) => length ?? 0), 0) || anyLength;
  const corners: Point[] = [{ x: 0, y: 0 }];
  shafts.forEach(({ direction, length }, i) => {
    const isEnd = i === 0 || i === shafts.length - 1;
    const run = isEnd ? stub * longest : (length ?? longest);
    const last = corners[i] as Point;
    corners.push({ x: last.x + run * direction[0], y: last.y + run * direction[pick] });
  });
  return corners;
}

/** Names are broken into lines of so many letters; lines apart, in cap heights. */
const widest = 16;
const pitch = 1.6;

/** Cap height: a seventy-fifth of the width, less where labels would stand too close. */
function capHeight(input: LineToDraw): number {
  const corners = cornersOf(input, 0);
  const places = corners.slice(1).map(({ x }, i) => (x + (corners[i] as Point).x) / 2);
  const apart = [places, corners.slice(1, -1).map(({ x }) => x)].flatMap((list) =>
    list.slice(1).map((x, i) => x - (list[i] as number)),
  );
  const total = (corners.at(-1) as Point).x;
  return Math.min(total / 75, ...apart.map((gap) => gap / 19));
}

function panel(input: LineToDraw, view: View, top: number, size: number): { shapes: Shape[]; bottom: number } {
  const { shafts, joints } = input;
  const corners = cornersOf(input, view.pick);
  const labels = shafts.map(({ name, ...reading }) => [...shortLines(name, widest), signed(reading[view.which])]);
  const room = Math.max(...labels.map((lines) => lines.length)) * pitch + 3;
  const highest = Math.max(...corners.map(({ y }) => y));
  const lift = top - room * size - highest;
  const at = corners.map(({ x, y }) => ({ x, y: y + lift }));
  const shapes: Shape[] = [
    { kind: 'text', at: { x: 0, y: top }, text: view.title, size: 1.2 * size, align: 'start', angle: 0, bold: true },
  ];
  shafts.forEach((_, i) => {
    const [from, to] = [at[i] as Point, at[i + 1] as Point];
    const middle = (from.x + to.x) / 2;
    const lines = labels[i] as string[];
    shapes.push({ kind: 'line', pen: 'hidden', from, to: { x: to.x, y: from.y } });
    shapes.push({ kind: 'line', pen: 'mark', from, to });
    if (i === shafts.length - 1)
      shapes.push(arrowHead(to, (atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI, size));
    lines.forEach((text, k) => {
      const y = Math.max(from.y, to.y) + (1.3 + pitch * (lines.length - 1 - k)) * size;
      shapes.push({ kind: 'text', at: { x: middle, y }, text, size, align: 'middle', angle: 0, bold: true });
    });
  });
  joints.forEach(({ angle, isEven }, i) => {
    const centre = at[i + 1] as Point;
    shapes.push({ kind: 'circle', pen: 'outline', fill: isEven ? 'wheel' : 'screw', centre, r: 0.6 * size });
    shapes.push({
      kind: 'text',
      at: { x: centre.x, y: centre.y - 2.8 * size },
      text: `joint ${i + 1}${isEven ? ' (even)' : ''}: ${angle.toFixed(1)}\u00b0`,
      size: 0.9 * size,
      align: 'middle',
      angle: 0,
    });
  });
  const low = Math.min(...at.map(({ y }) => y)) - 6 * size;
  shapes.push(...signPicture(view, { x: size, y: low }, size));
  return { shapes, bottom: low - 2.5 * size };
}

/** Draws both views, the driving end at the left. */
export function lineView(input: LineToDraw): Drawing {
  const size = capHeight(input);
  const [side, above] = views;
  const first = panel(input, side, 0, size);
  const second = panel(input, above, first.bottom - 3 * size, size);
  const said = input.shafts
    .map(({ name, side: s, plan }) => `${name} ${signed(s)} side, ${signed(plan)} plan`)
    .join('; ');
  const joints = input.joints.map(({ angle }, i) => `joint ${i + 1} ${angle.toFixed(1)} degrees`).join(', ');
  return frame(
    {
      id: input.id,
      title: 'how the shafts lie',
      description: `The line of shafts from the side and from above, the driving end at the left, true angles of the joints in space: ${joints}. Readings: ${said}. Plus from the side: the far end is lower. Plus from above: the far end lies to the left.`,
    },
    [
      ...first.shapes,
      ...second.shapes,
      {
        kind: 'text',
        at: { x: 0, y: second.bottom - 1.5 * size },
        text: 'Driving end at the left. Angles at the joints are the true ones in space.',
        size: 0.9 * size,
        align: 'start',
        angle: 0,
      },
    ],
    1.5 * size,
  );
}
