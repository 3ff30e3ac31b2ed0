/** The wheel's outline as it is cut, looked at along -z: true arcs, holes, tooth 1, sizes, and where the sensor stands. */
import type { Drawing, Fill, Pen, Point, Shape } from '../model/drawing.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { cos, sin } from '../units/trig.ts';
import { anchorsOnCircle, type Caption, drawCaptions, wordsUnder } from './captions.ts';
import { arrowHead, centreCross, holeCentre } from './dimension.ts';
import { frame } from './frame.ts';
import { angleText, diameterText, type LabelUnits, lengthText, sizesText } from './length-text.ts';
import { boltCircle, onCircleText, spacingLines } from './spacing-text.ts';
import { type MarkedWheel, markClause, plainTeeth } from './wheel-mark.ts';

/** Tooth positions round the wheel and the mark among them, and what is drawn of it. */
export interface WheelViewInput extends MarkedWheel {
  readonly id: string;
  readonly wheel: SheetPart;
  readonly outside: number;
  readonly root: number;
  /** Direction of the middle of tooth 1, degrees. */
  readonly toothAngle: number;
  /** Air gap to the sensor, mm; null when no sensor is given. */
  readonly gap: number | null;
  /** Windows instead of open teeth; left out for these. */
  readonly windows?: WindowsToDraw | undefined;
  /** Open teeth read from the side: the sensor's face, mm, null where nobody gave it. Left out: it looks at the tips. */
  readonly axial?: { readonly pole: number | null } | undefined;
  readonly units: LabelUnits;
}

/** Windows in a closed rim. mm. */
export interface WindowsToDraw {
  /** Width of the rim outside of them. */
  readonly rim: number;
  /** Round in their corners. */
  readonly corner: number;
  /** Width of a bar and of a window along the middle of the windows. */
  readonly bar: number;
  readonly window: number;
  /** Face of the sensor, mm; null where nobody gave it. */
  readonly pole: number | null;
}

/** Radius of the middle of the windows, where the sensor looks; without a rim that of open teeth. */
const middleOf = (outside: number, root: number, rim: number): number => (outside / 2 - rim + root / 2) / 2;

/** Where a sensor that looks along the axis stands, and its face; null where it looks at the tips. */
function faceOf({ outside, root, windows, axial }: WheelViewInput): { r: number; pole: number | null } | null {
  if (windows) return { r: middleOf(outside, root, windows.rim), pole: windows.pole };
  return axial ? { r: middleOf(outside, root, 0), pole: axial.pole } : null;
}

const polar = (r: number, degrees: number): Point => ({
  x: r * cos((degrees * Math.PI) / 180),
  y: r * sin((degrees * Math.PI) / 180),
});

function contourShape(contour: Contour, pen: Pen, fill: Fill): Shape {
  const { feature } = contour;
  if (contour.kind === 'circle')
    return { kind: 'circle', pen, fill, centre: { x: contour.x, y: contour.y }, r: contour.r, feature };
  return { kind: 'path', pen, fill, closed: true, loops: [contour.vertices], feature };
}

/** Holes off the axis, as circles. */
function screwHoles(wheel: SheetPart): { feature: string; x: number; y: number; r: number }[] {
  return wheel.holes.flatMap((h) => (h.kind === 'circle' && Math.hypot(h.x, h.y) > 1e-6 ? [h] : []));
}

/** Angle at which the sensor is drawn: in the middle of a tooth near the top, so that the gap shows. */
function sensorAngle(input: WheelViewInput): number {
  const { teeth, toothAngle } = input;
  const present = Array.from({ length: plainTeeth(input) }, (_, i) => toothAngle + (360 * i) / teeth);
  const away = (a: number): number => Math.abs(((((a - 90) % 360) + 540) % 360) - 180);
  return present.reduce((best, a) => (away(a) < away(best) - 1e-9 ? a : best), toothAngle);
}

function sensorShapes(input: WheelViewInput, size: number): Shape[] {
  if (input.gap === null) return [];
  const a = sensorAngle(input);
  const face = faceOf(input);
  if (face) {
    // It looks along the axis: what is seen of it is its face, over a bar or a tooth.
    const centre = polar(face.r, a);
    const r = (face.pole ?? size) / 2;
    return [{ kind: 'circle', pen: 'thin', fill: 'screw', centre, r }, ...centreCross(centre, r + 0.6 * size)];
  }
  const near = input.outside / 2 + input.gap;
  const half = 1.5 * size;
  const corner = (r: number, side: number): { x: number; y: number; bulge: number } => {
    const p = polar(r, a);
    const q = polar(side, a + 90);
    return { x: p.x + q.x, y: p.y + q.y, bulge: 0 };
  };
  const body = [
    corner(near, -half),
    corner(near + 4.5 * size, -half),
    corner(near + 4.5 * size, half),
    corner(near, half),
  ];
  return [
    { kind: 'path', pen: 'thin', fill: 'screw', closed: true, loops: [body] },
    { kind: 'line', pen: 'centre', from: polar(near - size, a), to: polar(near + 5.5 * size, a) },
  ];
}

/** Points on teeth (shift 0) or in the valleys after them (shift 0.5) that look to the right. */
function toothPoints(input: WheelViewInput, r: number, shift: number): Point[] {
  const { teeth, toothAngle, extra = 0 } = input;
  const present = plainTeeth(input) - (shift > 0 ? extra : 0);
  const all = Array.from({ length: present }, (_, i) => polar(r, toothAngle + (360 * (i + shift)) / teeth));
  const right = all.filter((p) => p.x > 0.3 * r);
  return right.length > 0 ? right : all;
}

/** A mark on tooth 1, or bar 1: an arrow from outside and its name. */
function toothOne({ outside, toothAngle, windows }: WheelViewInput, size: number): Shape[] {
  const tip = polar(outside / 2 + 0.4 * size, toothAngle);
  const tail = polar(outside / 2 + 3 * size, toothAngle);
  const text = polar(outside / 2 + 3.5 * size, toothAngle);
  const c = cos((toothAngle * Math.PI) / 180);
  return [
    { kind: 'line', pen: 'dimension', from: tail, to: tip },
    arrowHead(tip, toothAngle + 180, size),
    {
      kind: 'text',
      at: { x: text.x, y: text.y - size / 2 },
      text: windows ? 'bar 1' : 'tooth 1',
      size,
      align: Math.abs(c) < 0.3 ? 'middle' : c > 0 ? 'start' : 'end',
      angle: 0,
      bold: true,
    },
  ];
}

/** What is said of the windows. */
function windowLines({ outside, root, units }: WheelViewInput, windows: WindowsToDraw): string[] {
  const inside = outside - 2 * windows.rim;
  return [
    `windows ${diameterText(root, units)} to ${diameterText(inside, units)}`,
    `${lengthText((inside - root) / 2, units)} high, corners R ${lengthText(windows.corner, units)}`,
    `on ${diameterText(2 * middleOf(outside, root, windows.rim), units)}: bar ${lengthText(windows.bar, units)},`,
    `window ${lengthText(windows.window, units)}`,
  ];
}

function captionsFor(input: WheelViewInput, size: number): Caption[] {
  const { wheel, teeth, missing, outside, root, units, gap, windows } = input;
  const face = faceOf(input);
  const origin = { x: 0, y: 0 };
  const holes = screwHoles(wheel);
  const bore = wheel.features.find((f) => f.purpose === 'bore');
  const things = windows ? 'windows' : 'teeth';
  const count = missing === 0 ? `${teeth} ${things}` : `${teeth} - ${missing} ${windows ? 'bars' : things}`;
  const clause = missing === 0 ? markClause(input, windows ? 'bar' : 'tooth') : '';
  const out: Caption[] = [
    {
      lines: [
        `${diameterText(outside, units)} outside`,
        missing === 0
          ? clause === ''
            ? count
            : `${teeth} positions`
          : `${count}: ${teeth} positions, ${missing} left out`,
        ...(clause === '' ? [] : [clause]),
        `one position ${angleText(360 / teeth)}`,
        ...(windows ? [`rim ${lengthText(windows.rim, units)} wide`] : []),
      ],
      anchors: toothPoints(input, outside / 2, 0),
      feature: wheel.outside.feature,
    },
    {
      lines: windows
        ? windowLines(input, windows)
        : [`${diameterText(root, units)} root`, `teeth ${lengthText((outside - root) / 2, units)} high`],
      anchors: toothPoints(input, root / 2, 0.5),
      feature: wheel.outside.feature,
    },
    {
      lines: [`${lengthText(wheel.thickness, units)} thick`, wheel.material.name],
      anchors: anchorsOnCircle(origin, 0.46 * root, 0, 60, 9),
    },
  ];
  if (bore?.diameter !== undefined)
    out.push({
      lines: [`${diameterText(bore.diameter, units)} bore`, bore.label],
      anchors: anchorsOnCircle(origin, bore.diameter / 2, 0, 80, 7),
      feature: bore.id,
    });
  const first = holes[0];
  if (first !== undefined) {
    const anchors = holes.flatMap((h) =>
      [0, 30, -30].map((a) => ({ x: h.x + polar(h.r, a).x, y: h.y + polar(h.r, a).y })),
    );
    const right = anchors.filter((p) => p.x > -0.1 * outside);
    const size = diameterText(2 * first.r, units);
    out.push({
      lines: [`${holes.length} x ${size}${onCircleText(holes, units)}`, ...spacingLines(holes, units), 'screw holes'],
      anchors: right.length > 0 ? right : anchors,
      feature: first.feature,
    });
  }
  if (gap !== null) {
    const a = sensorAngle(input);
    const side = polar(1.5 * size, a - 90);
    const at = polar(outside / 2 + gap + 1.5 * size, a);
    out.push({
      lines: [`${lengthText(gap, units)} air gap`, face ? 'sensor to face, along the axis' : 'sensor tip to tooth'],
      anchors: face ? [polar(face.r, a)] : [{ x: at.x + side.x, y: at.y + side.y }],
    });
  }
  return out;
}

/** Draws the wheel. */
export function wheelView(input: WheelViewInput): Drawing {
  const { wheel, outside, root, teeth, toothAngle, units } = input;
  const size = Math.max(1, outside / 36);
  const holes = screwHoles(wheel);
  const circle = boltCircle(holes);
  const reach = outside / 2;
  const shapes: Shape[] = [
    contourShape(wheel.outside, 'cut', 'none'),
    ...wheel.holes.map((h) => contourShape(h, 'cut', 'none')),
    ...(circle === null
      ? []
      : [
          {
            kind: 'circle',
            pen: 'centre',
            fill: 'none',
            centre: { x: 0, y: 0 },
            r: circle / 2,
          } satisfies Shape,
        ]),
    ...holes.flatMap((h) => holeCentre(h, h.r + 0.4 * size)),
    ...centreCross({ x: 0, y: 0 }, reach + 1.2 * size),
    ...toothOne(input, size),
    ...sensorShapes(input, size),
    ...drawCaptions(captionsFor(input, size), {
      x: reach + (cos((toothAngle * Math.PI) / 180) > 0.3 ? 11 : 6) * size,
      side: 'right',
      yMin: -reach,
      yMax: reach,
      size,
      obstacles: [
        ...holes.map((h) => ({ centre: { x: h.x, y: h.y }, r: h.r })),
        { centre: polar(reach + 5 * size, toothAngle), r: 3.4 * size },
      ],
    }),
    ...wordsUnder(['as cut, seen from the driven side', sizesText(units)], -reach, size),
  ];
  const clause = markClause(input, input.windows ? 'bar' : 'tooth');
  const gap = clause === '' ? '' : `, ${clause}`;
  return frame(
    {
      id: `${input.id}-wheel`,
      title: `${wheel.name}: outline`,
      description: input.windows
        ? `Wheel with ${teeth} window positions${gap} in a closed rim, ${diameterText(outside, units)} outside, windows from ${diameterText(root, units)} to ${diameterText(outside - 2 * input.windows.rim, units)}. Bar 1 stands at ${angleText(toothAngle)}.`
        : `Toothed wheel with ${teeth} tooth positions${gap}, ${diameterText(outside, units)} over the teeth and ${diameterText(root, units)} at their roots. Tooth 1 stands at ${angleText(toothAngle)}.`,
    },
    shapes,
    size,
  );
}
