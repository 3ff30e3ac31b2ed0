/** The bracket: the blank as it is cut with its bend lines, and beside it the folded bracket from the side, over the wheel. */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { arrowHead, uprightDimension } from './dimension.ts';
import { frame } from './frame.ts';
import { diameterText, type LabelUnits, lengthText, sizesText } from './length-text.ts';

export interface BracketViewInput {
  readonly id: string;
  readonly part: SheetPart;
  /** The folded profile in its plane: p towards the bolts, q along the sensor away from the wheel. */
  readonly profile: readonly { readonly p: number; readonly q: number }[];
  /** Centre line of the bolts in the same plane, from outside the foot inwards. */
  readonly bolt: { readonly from: PlanePoint; readonly to: PlanePoint };
  /** `behind`: how far body, plug and cable stand out behind the ear; null where nobody told. */
  readonly sensor: { readonly bore: number; readonly reach: number; readonly behind: number | null };
  readonly gap: number;
  /** What the sensor looks at: teeth, or bars. */
  readonly teeth: string;
  /** The wheel's rim in the plane, as far as it is drawn. */
  readonly wheel: { readonly pMin: number; readonly pMax: number; readonly qMin: number; readonly qMax: number };
  readonly units: LabelUnits;
}

interface PlanePoint {
  readonly p: number;
  readonly q: number;
}

const cut = (contour: Contour, at: Point): Shape => {
  const { feature } = contour;
  if (contour.kind === 'circle') {
    const centre = { x: contour.x + at.x, y: contour.y + at.y };
    return { kind: 'circle', pen: 'cut', fill: 'none', centre, r: contour.r, feature };
  }
  const loop = contour.vertices.map(({ x, y, bulge }) => ({ x: x + at.x, y: y + at.y, bulge }));
  return { kind: 'path', pen: 'cut', fill: 'none', closed: true, loops: [loop], feature };
};

const text = (at: Point, words: string, size: number, more: { bold?: boolean; angle?: number } = {}): Shape => ({
  kind: 'text',
  at,
  text: words,
  size,
  align: 'middle',
  angle: more.angle ?? 0,
  bold: more.bold ?? false,
});

/** A flat dimension below the part, from x to x. */
function flatDimension(from: number, to: number, y: number, start: number, words: string, size: number): Shape[] {
  return [
    ...[from, to].map(
      (x): Shape => ({ kind: 'line', pen: 'dimension', from: { x, y: start }, to: { x, y: y - 0.8 * size } }),
    ),
    { kind: 'line', pen: 'dimension', from: { x: from, y }, to: { x: to, y } },
    arrowHead({ x: from, y }, 180, size),
    arrowHead({ x: to, y }, 0, size),
    text({ x: (from + to) / 2, y: y + 0.5 * size }, words, size, { bold: true }),
  ];
}

/** The blank with its lower edge at y = 0 side; its dimensions stand below and to the left. */
function blankShapes(
  { part, units }: BracketViewInput,
  size: number,
): { shapes: Shape[]; width: number; half: number } {
  if (part.outside.kind !== 'path') throw new Error('a bracket has a path for its outline');
  const xs = part.outside.vertices.map(({ x }) => x);
  const ys = part.outside.vertices.map(({ y }) => y);
  const [length, half] = [Math.max(...xs), Math.max(...ys)];
  const at = { x: 0, y: 0 };
  const shapes: Shape[] = [cut(part.outside, at), ...part.holes.map((hole) => cut(hole, at))];
  for (const hole of part.holes) {
    if (hole.kind !== 'circle') continue;
    const reach = hole.r + 0.6 * size;
    for (const [dx, dy] of [
      [reach, 0],
      [0, reach],
    ] as const) {
      const [from, to] = [
        { x: hole.x - dx, y: hole.y - dy },
        { x: hole.x + dx, y: hole.y + dy },
      ];
      shapes.push({ kind: 'line', pen: 'centre', from, to });
    }
  }
  (part.bends ?? []).forEach((bend, i) => {
    const x = bend.from.x;
    shapes.push({ kind: 'line', pen: 'hidden', from: bend.from, to: bend.to, feature: bend.id });
    const words = `${bend.direction} ${Number(bend.angle.toFixed(1))}\u00b0, R ${lengthText(bend.radius, units)}`;
    shapes.push({
      ...text({ x: x - 0.5 * size, y: 0 }, words, size, { angle: 90 }),
      feature: bend.id,
    });
    shapes.push(...flatDimension(0, x, -half - (3.2 + 2.6 * i) * size, -half, lengthText(x, units), size));
  });
  const rows = part.bends?.length ?? 0;
  shapes.push(...flatDimension(0, length, -half - (3.2 + 2.6 * rows) * size, -half, lengthText(length, units), size));
  shapes.push(
    ...uprightDimension({ low: -half, high: half }, -3.4 * size, 0, lengthText(2 * half, units), size),
    text({ x: length / 2, y: half + 1.4 * size }, rows > 0 ? 'blank as cut; dashed: bend lines' : 'as cut', size, {
      bold: true,
    }),
  );
  return { shapes, width: length, half };
}

/** Thickness of an ear as it is drawn, mm: only shown. */
const shownEar = 4;

/** The sensor behind its ear, as wide as its bore, with its length; nothing where nobody told it. */
function bodyShapes(
  { sensor: { bore, behind }, units }: BracketViewInput,
  box: (pMin: number, pMax: number, qMin: number, qMax: number) => Corners[],
  place: (at: PlanePoint) => Point,
  seat: number,
  size: number,
): Shape[] {
  if (behind === null || behind === 0) return [];
  const half = bore / 2;
  return [
    {
      kind: 'path',
      pen: 'thin',
      fill: 'screw',
      closed: true,
      loops: box(-half, half, seat, seat + behind),
      feature: 'bracket-sensor',
    },
    text(place({ p: -half - 0.6 * size, q: seat + behind / 2 }), `behind ${lengthText(behind, units)}`, size, {
      angle: 90,
    }),
  ];
}

type Corners = (Point & { readonly bulge: number })[];

/** The folded bracket over the wheel's rim; `at` is where the sensor looks. */
function sideShapes(input: BracketViewInput, at: Point, size: number): Shape[] {
  const { profile, sensor, gap, wheel, bolt, units } = input;
  const place = ({ p, q }: PlanePoint): Point => ({ x: at.x + p, y: at.y + q });
  const loop = (points: readonly PlanePoint[]) => [points.map((point) => ({ ...place(point), bulge: 0 }))];
  const box = (pMin: number, pMax: number, qMin: number, qMax: number) =>
    loop([
      { p: pMin, q: qMin },
      { p: pMax, q: qMin },
      { p: pMax, q: qMax },
      { p: pMin, q: qMax },
    ]);
  const seat = gap + sensor.reach;
  const nose = sensor.bore / 2 - 0.1;
  const head = 0.7 * sensor.bore;
  // With its body known the ear is as thick as one usually is; without, what is drawn stands for ear and body.
  const ear = sensor.behind === null ? head : Math.min(shownEar, sensor.behind);
  const top = seat + Math.max(ear, sensor.behind ?? 0);
  const xRight = Math.max(...profile.map(({ p }) => p));
  const xLeft = Math.min(...profile.map(({ p }) => p), wheel.pMin);
  return [
    {
      kind: 'path',
      pen: 'outline',
      fill: 'wheel',
      closed: true,
      loops: box(wheel.pMin, wheel.pMax, wheel.qMin, wheel.qMax),
      feature: 'wheel-outline',
    },
    { kind: 'path', pen: 'thin', fill: 'screw', closed: true, loops: box(-nose, nose, gap, seat) },
    ...bodyShapes(input, box, place, seat, size),
    { kind: 'path', pen: 'thin', fill: 'screw', closed: true, loops: box(-head, head, seat, seat + ear) },
    { kind: 'path', pen: 'outline', fill: 'adapter', closed: true, loops: loop(profile), feature: 'bracket-outline' },
    { kind: 'path', pen: 'thin', fill: 'screw', closed: true, loops: box(-nose, nose, gap, seat) },
    { kind: 'line', pen: 'centre', from: place({ p: 0, q: wheel.qMin }), to: place({ p: 0, q: top + size }) },
    { kind: 'line', pen: 'centre', from: place(bolt.from), to: place(bolt.to) },
    text(place({ p: (xLeft + xRight) / 2, q: top + 2.2 * size }), 'folded, from the side', size, {
      bold: true,
    }),
    text(place({ p: 0, q: wheel.qMin - 1.8 * size }), `gap ${lengthText(gap, units)}`, size),
    text(place({ p: 0, q: wheel.qMin - 3.4 * size }), 'wheel', size),
  ];
}

/** Draws the bracket. */
export function bracketView(input: BracketViewInput): Drawing {
  const { part, profile, units, wheel, sensor, gap } = input;
  const size = Math.max(1.6, Math.hypot(...spread(part)) / 42);
  const { shapes, width } = blankShapes(input, size);
  const left = Math.min(...profile.map(({ p }) => p), wheel.pMin, -0.7 * sensor.bore);
  const middle = (Math.min(...profile.map(({ q }) => q), wheel.qMin) + gap + sensor.reach) / 2;
  const at = { x: width + 6 * size - left, y: -middle };
  const bore = diameterText(sensor.bore, units);
  const bends = part.bends?.length ?? 0;
  const about = [
    `${part.name}: ${part.material.name}, ${lengthText(part.thickness, units)} thick, sensor bore ${bore}`,
    sizesText(units),
  ];
  const low = Math.min(...shapes.flatMap((shape) => (shape.kind === 'line' ? [shape.from.y, shape.to.y] : [])));
  const words = about.map((line, i) => text({ x: width / 2, y: low - (2.2 + 1.7 * i) * size }, line, 0.9 * size));
  return frame(
    {
      id: `${input.id}-view`,
      title: `${part.name}: blank and side view`,
      description: `Sensor bracket of ${lengthText(part.thickness, units)} sheet with ${bends === 0 ? 'no bends' : bends === 1 ? 'one bend' : `${bends} bends`}: the blank as it is cut, ${lengthText(width, units)} long, and the bracket folded, seen from the side, with the sensor ${lengthText(gap, units)} off the ${input.teeth}.`,
    },
    [...shapes, ...sideShapes(input, at, size), ...words],
    size,
  );
}

function spread({ outside }: SheetPart): [number, number] {
  const corners = outside.kind === 'path' ? outside.vertices : [];
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}
