/** A small map of the holes of one side as they lie before the person at the machine: axes, index mark, a tag at every hole. */
import type { Drawing, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';

export interface HoleMapInput {
  readonly id: string;
  /** "driven side up" */
  readonly title: string;
  readonly outside: number;
  readonly bore: number | null;
  readonly flats: { readonly across: number; readonly angle: number } | null;
  /** Where the index mark lies, as seen. */
  readonly mark: 'left' | 'right';
  readonly holes: readonly {
    readonly tag: string;
    readonly x: number;
    readonly y: number;
    readonly diameter: number;
  }[];
}

/** Two straight edges across the rim, as seen. */
function flatLines(rim: number, { across, angle }: { across: number; angle: number }): Shape[] {
  const half = Math.sqrt(Math.max(0, rim ** 2 - (across / 2) ** 2));
  const [c, s] = [cos((angle * Math.PI) / 180), sin((angle * Math.PI) / 180)];
  return [1, -1].map((way): Shape => {
    const d = (way * across) / 2;
    return {
      kind: 'line',
      pen: 'outline',
      from: { x: d * c - half * s, y: d * s + half * c },
      to: { x: d * c + half * s, y: d * s - half * c },
    };
  });
}

function arrow(from: number, to: number, along: 'x' | 'y', size: number): Shape[] {
  const at = (a: number, b: number) => (along === 'x' ? { x: a, y: b } : { x: b, y: a });
  const line = (p: readonly [number, number], q: readonly [number, number]): Shape => ({
    kind: 'line',
    pen: 'thin',
    from: at(...p),
    to: at(...q),
  });
  return [
    line([from, 0], [to, 0]),
    line([to, 0], [to - size, size / 3]),
    line([to, 0], [to - size, -size / 3]),
    {
      kind: 'text',
      at: along === 'x' ? { x: to + size, y: -0.4 * size } : { x: size, y: to - 0.2 * size },
      text: along === 'x' ? 'X+' : 'Y+',
      size: 0.9 * size,
      align: 'start',
      angle: 0,
    },
  ];
}

/** The map of one side, seen from that side. Places and diameters in mm. */
export function holeMap(input: HoleMapInput): Drawing {
  const { id, title, outside, bore, flats, mark, holes } = input;
  const rim = outside / 2;
  const size = rim / 9.5;
  const circle = (x: number, y: number, r: number, pen: 'outline' | 'thin'): Shape => ({
    kind: 'circle',
    pen,
    fill: 'none',
    centre: { x, y },
    r,
  });
  const way = mark === 'right' ? 1 : -1;
  const shapes: Shape[] = [
    circle(0, 0, rim, 'outline'),
    ...(flats ? flatLines(rim, flats) : []),
    ...(bore === null ? [] : [circle(0, 0, bore / 2, 'thin')]),
    ...arrow(-1.15 * rim, 1.2 * rim, 'x', size),
    ...arrow(-1.15 * rim, 1.2 * rim, 'y', size),
    ...holes.flatMap(({ tag, x, y, diameter }): Shape[] => {
      // A tag stands outwards of its hole, or inwards where the rim is near.
      const radius = Math.hypot(x, y);
      const room = diameter / 2 + 0.9 * size;
      const out = radius + room + size < rim ? radius + room : radius - room;
      const share = radius === 0 ? 0 : out / radius;
      // Beside an axis rather than on it.
      const [onX, onY] = [Math.abs(y * share) < size ? 0.9 * size : 0, Math.abs(x * share) < size ? size : 0];
      return [
        circle(x, y, diameter / 2, 'outline'),
        {
          kind: 'text',
          at: { x: x * share + onY, y: y * share - 0.4 * size + onX },
          text: tag,
          size: 0.85 * size,
          align: 'middle',
          angle: 0,
        },
      ];
    }),
    { kind: 'line', pen: 'mark', from: { x: way * 0.93 * rim, y: 0 }, to: { x: way * 1.07 * rim, y: 0 } },
    {
      kind: 'text',
      at: { x: way * 1.04 * rim, y: 0.06 * rim + 0.2 * size },
      text: 'index mark',
      size: 0.85 * size,
      align: way > 0 ? 'start' : 'end',
      angle: 0,
      bold: true,
    },
  ];
  const description = `${title}: ${holes.length} holes, the index mark on the ${mark}.`;
  const wide = 1.9 * rim;
  const high = 1.35 * rim;
  return { id, title, description, box: { xMin: -wide, yMin: -1.25 * rim, xMax: wide, yMax: high }, shapes };
}
