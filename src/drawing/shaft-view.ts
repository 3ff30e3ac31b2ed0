/** A sketch of the shaft for the shop that makes it: datum faces, joint centres, slip, and its length by every way of saying it. */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import { centreCross } from './dimension.ts';
import { flatDimension } from './flat-dimension.ts';
import { frame } from './frame.ts';
import { type LabelUnits, lengthText, sizesText } from './length-text.ts';

export interface ShaftToDraw {
  readonly id: string;
  readonly units: LabelUnits;
  /** Face to face as fitted, pushed home and pulled out, mm; without slip the last two are null. */
  readonly faces: number;
  readonly home: number | null;
  readonly out: number | null;
  /** From face A and face B to the joint centres; null where not known. */
  readonly ends: { readonly a: number; readonly b: number } | null;
  /** Diameters of flange A (at the adapter) and of the tube; null where not known. */
  readonly flange: number;
  readonly tube: number | null;
  /** What stands at the faces, in words. */
  readonly at: { readonly a: string; readonly b: string };
}

/** Where nothing is known of them. */
const usualEnd = 60;
const usualTube = 76;

const box = (
  left: number,
  right: number,
  half: number,
  fill: 'driven' | 'adapter' | 'none',
  pen: 'outline' | 'hidden' = 'outline',
): Shape => ({
  kind: 'path',
  pen,
  fill,
  closed: true,
  loops: [
    [
      { x: left, y: -half, bulge: 0 },
      { x: right, y: -half, bulge: 0 },
      { x: right, y: half, bulge: 0 },
      { x: left, y: half, bulge: 0 },
    ],
  ],
});

/** A flange with its yoke up to the joint centre, and the cross in it. `way` 1: the face looks left. */
function end(face: number, reach: number, half: number, tube: number, way: 1 | -1): Shape[] {
  const plate = Math.min(12, reach / 3);
  const centre: Point = { x: face + way * reach, y: 0 };
  const sides = (from: number, to: number, h: number) => box(Math.min(from, to), Math.max(from, to), h, 'driven');
  return [
    sides(face, face + way * plate, half),
    sides(face + way * plate, face + way * (reach + tube / 4), 0.32 * tube),
    sides(face + way * (reach - tube / 4), face + way * (reach + 0.9 * tube), 0.42 * tube),
    { kind: 'circle', pen: 'outline', fill: 'screw', centre, r: 0.17 * tube },
    ...centreCross(centre, 0.7 * tube),
  ];
}

/** A datum letter in a box over a face, with what the face is. */
function datum(letter: string, words: string, x: number, top: number, size: number, side: 'left' | 'right'): Shape[] {
  const y = top + 3.4 * size;
  const half = 1.1 * size;
  const corner = (dx: number, dy: number) => ({ x: x + dx, y: y + dy, bulge: 0 });
  return [
    { kind: 'line', pen: 'dimension', from: { x, y: top }, to: { x, y: y - half } },
    {
      kind: 'path',
      pen: 'thin',
      fill: 'void',
      closed: true,
      loops: [[corner(-half, -half), corner(half, -half), corner(half, half), corner(-half, half)]],
    },
    { kind: 'text', at: { x, y: y - size / 2 }, text: letter, size: 1.1 * size, align: 'middle', angle: 0, bold: true },
    {
      kind: 'text',
      at: { x: x + (side === 'left' ? 1 : -1) * 1.8 * size, y: y - size / 2 },
      text: words,
      size,
      align: side === 'left' ? 'start' : 'end',
      angle: 0,
    },
  ];
}

/** Draws the shaft as fitted at ride height, face A at the left. */
export function shaftView(input: ShaftToDraw): Drawing {
  const { faces, home, out, ends, at, units } = input;
  const size = Math.max(6, faces / 75);
  const tube = input.tube ?? Math.min(usualTube, faces / 6);
  const half = Math.max(input.flange, 1.2 * tube) / 2;
  const [a, b] = ends ? [ends.a, ends.b] : [usualEnd, usualEnd].map((reach) => Math.min(reach, faces / 8));
  const near = Math.max(a as number, 0.3 * tube);
  const far = Math.max(b as number, 0.3 * tube);
  const label = (mm: number, words: string): string => `${words} ${lengthText(Math.round(mm * 10) / 10, units, 1)}`;
  const from = near + 0.9 * tube;
  const to = faces - far - 0.9 * tube;
  const slip = home === null ? from : from + 0.18 * (to - from);
  const shapes: Shape[] = [
    { kind: 'line', pen: 'centre', from: { x: -3 * size, y: 0 }, to: { x: faces + 3 * size, y: 0 } },
    ...(home === null
      ? []
      : [
          box(from, slip + 0.04 * faces, 0.26 * tube, 'driven'),
          // The sleeve reaches over the splined stub; how far is the spline's business.
          box(slip, slip + 0.12 * (to - from), 0.4 * tube, 'driven'),
        ]),
    box(home === null ? from : slip + 0.12 * (to - from), to, tube / 2, 'driven'),
    ...end(0, near, half, tube, 1),
    ...end(faces, far, half, tube, -1),
    ...datum('A', at.a, 0, half, size, 'left'),
    ...datum('B', at.b, faces, half, size, 'right'),
  ];
  const row = (n: number): number => -half - (2.2 + 3 * n) * size;
  const spans: { left: number; right: number; text: string }[] = [
    ...(ends
      ? [
          {
            left: a as number,
            right: faces - (b as number),
            text: label(faces - ends.a - ends.b, 'joint centres, as fitted'),
          },
        ]
      : []),
    ...(home === null ? [] : [{ left: 0, right: home, text: label(home, 'A to B pushed home: make it so') }]),
    {
      left: 0,
      right: faces,
      text: label(faces, home === null ? 'A to B: make it so' : 'A to B as fitted at ride height'),
    },
    ...(out === null ? [] : [{ left: 0, right: out, text: label(out, 'A to B pulled out') }]),
  ];
  spans.forEach(({ left, right, text }, i) => {
    const y = row(i);
    shapes.push(...flatDimension({ left, right, y, from: -half - 0.4 * size }, text, size));
  });
  if (home !== null) {
    shapes.push({
      kind: 'text',
      at: { x: slip + 0.06 * (to - from), y: 0.62 * tube },
      text: 'slip',
      size,
      align: 'middle',
      angle: 0,
    });
  }
  shapes.push({
    kind: 'text',
    at: { x: 0, y: row(spans.length) },
    text: `Lengths along the shaft, laid straight; ${sizesText(units)}. Sketch: only lengths are to scale.`,
    size: 0.9 * size,
    align: 'start',
    angle: 0,
  });
  const said = spans.map(({ text }) => text).join(', ');
  return frame(
    {
      id: input.id,
      title: 'the shaft to be made',
      description: `The shaft from face A (${at.a}) to face B (${at.b}), mm: ${said}.`,
    },
    shapes,
    1.5 * size,
  );
}
