/** Details drawn larger: the foot and edge of each register, the wheel's shoulder, and the seats of screw heads. mm. */
import type { Shape } from '../../model/drawing.ts';
import { atan2, tan } from '../../units/trig.ts';
import type { Box } from '../text-size.ts';
import type { CuttingLine } from './cutting-line.ts';
import { hatching } from './hatch.ts';
import { levelLength } from './lengths.ts';
import { scaleText, standardScales } from './paper-sizes.ts';
import { type Cut, cutAdapter } from './section.ts';
import { detailLetters, type Enlarged } from './section-on-sheet.ts';
import { boxOf, cap, line, onPaper, polyline, text } from './shapes.ts';
import { angleText, diameter, sizeText } from './size-text.ts';
import type { AdapterToDraw, Face } from './to-draw.ts';
import { through } from './window.ts';

/** A detail before it is drawn. */
export interface Detail {
  readonly letter: string;
  readonly what: string;
  /** Seen of the part: z along x, distance from the axis along y. */
  readonly window: Box;
  readonly cut: Cut;
  /** A length along the shaft: its ends, whether it is set above or below, its text and balloon. */
  readonly length: {
    readonly from: number;
    readonly to: number;
    readonly above: boolean;
    readonly words: string;
    readonly number: number | null;
  } | null;
  /** What is said under it. */
  readonly lines: readonly string[];
  readonly mark: Enlarged | null;
}

/** The largest that a detail is drawn, mm of paper. */
const most = { wide: 62, high: 56 };

const faceZ = (drawn: AdapterToDraw, face: Face) => (face === 'driving' ? 0 : drawn.thickness);

function registerDetail(drawn: AdapterToDraw, face: Face, cut: Cut): Omit<Detail, 'letter'> | null {
  const register = drawn.registers[face];
  if (!register) return null;
  const { units } = drawn.title;
  const { gender, at, depth, chamfer, undercut } = register;
  const r = register.diameter / 2;
  const z = faceZ(drawn, face);
  const out = face === 'driving' ? -1 : 1;
  const outwards = (gender === 'male') === (at === 'inner');
  const end = z + (outwards ? out : -out) * depth;
  const side = Math.max(3, depth);
  const [low, high] = [Math.min(z, end), Math.max(z, end)];
  const window = {
    // More of the body than of the air before it.
    xMin: low - (out === 1 ? side : 1.5),
    xMax: high + (out === 1 ? 1.5 : side),
    yMin: r - side,
    yMax: r + side,
  };
  const male = gender === 'male';
  const lines = [
    `${male ? 'lead' : 'mouth'} chamfer ${sizeText(chamfer, units)} x 45\u00b0`,
    ...(undercut
      ? [`groove at the foot ${sizeText(undercut.width, units)} wide, ${sizeText(undercut.depth, units)} deep`]
      : []),
  ];
  const size = drawn.sizes.find(({ id }) => id === `${face}-depth`);
  const length = { from: low, to: high, above: male, words: sizeText(depth, units), number: size?.number ?? null };
  const mark = { letter: '', z: (z + end) / 2, r, reach: 0.75 * side };
  return { what: `${face} register, ${male ? 'spigot' : 'recess'}`, window, cut, length, lines, mark };
}

function seatDetail(drawn: AdapterToDraw, cut: Cut): Omit<Detail, 'letter'> | null {
  const { wheelSeat: seat, title } = drawn;
  if (!seat) return null;
  const r = seat.diameter / 2;
  const z = faceZ(drawn, seat.face);
  const out = seat.face === 'driving' ? -1 : 1;
  const step = z - out * seat.height;
  const side = Math.max(3, seat.height);
  const [low, high] = [Math.min(z, step), Math.max(z, step)];
  return {
    what: "shoulder for the wheel's bore",
    window: {
      xMin: low - (out === 1 ? side : 1.5),
      xMax: high + (out === 1 ? 1.5 : side),
      yMin: r - side,
      yMax: r + side,
    },
    cut,
    length: { from: low, to: high, above: true, words: sizeText(seat.height, title.units), number: null },
    lines: ['corner at the foot sharp, or cut under'],
    mark: { letter: '', z: (z + step) / 2, r, reach: 0.75 * side },
  };
}

function headDetails(drawn: AdapterToDraw, cutting: CuttingLine): Omit<Detail, 'letter'>[] {
  const { units } = drawn.title;
  return drawn.sets.flatMap((set) => {
    const head = set.cuts.find((one) => one.op === 'counterbore' || one.op === 'countersink');
    const drilling = drawn.adapter.drillings.find(({ feature }) => feature === set.group);
    if (!head || !drilling || (head.op !== 'counterbore' && head.op !== 'countersink')) return [];
    const off = Math.hypot(drilling.x, drilling.y);
    const angle = (atan2(drilling.y, drilling.x) * 180) / Math.PI;
    const zone = { angle, from: 0, to: Infinity, set, drilling };
    const cut = cutAdapter(drawn, { upper: [zone], lower: cutting.lower });
    const z = faceZ(drawn, set.from);
    const out = set.from === 'driving' ? -1 : 1;
    const drill = set.cuts.find((one) => one.op === 'drill');
    const hole = drill?.op === 'drill' ? drill.diameter : 0;
    const depth =
      head.op === 'counterbore' ? head.depth : (head.diameter - hole) / 2 / tan((head.angle * Math.PI) / 360);
    const floor = z - out * depth;
    const beyond = Math.max(2, 0.3 * depth);
    const [low, high] = [Math.min(z, floor), Math.max(z, floor)];
    const half = head.diameter / 2 + 2.5;
    const what = set.what.replace(/,.*/, '');
    return [
      {
        what: `${head.op} of set ${set.letter}, ${what}`,
        window: {
          xMin: low - (out === 1 ? beyond : 1.5),
          xMax: high + (out === 1 ? 1.5 : beyond),
          yMin: off - half,
          yMax: off + half,
        },
        cut,
        length: { from: low, to: high, above: true, words: `(${sizeText(depth, units)})`, number: null },
        lines: [
          head.op === 'counterbore'
            ? `(${diameter(head.diameter, units)}, flat floor) on (${diameter(hole, units)})`
            : `(${diameter(head.diameter, units)} at the face, ${angleText(head.angle)}) on (${diameter(hole, units)})`,
        ],
        mark: null,
      },
    ];
  });
}

/** Every detail of an adapter, lettered in order. */
export function detailsOf(drawn: AdapterToDraw, cutting: CuttingLine): Detail[] {
  const turned = cutAdapter(drawn, null);
  const all = [
    registerDetail(drawn, 'driving', turned),
    registerDetail(drawn, 'driven', turned),
    seatDetail(drawn, turned),
    ...headDetails(drawn, cutting),
  ].filter((one): one is Omit<Detail, 'letter'> => one !== null);
  return all.map((one, i) => {
    const letter = detailLetters[i] ?? `Z${i}`;
    return { ...one, letter, mark: one.mark && { ...one.mark, letter } };
  });
}

/** The scale a detail is drawn to: the largest that leaves it in its cell. */
export function detailScale({ window }: Detail): number {
  const fits = (scale: number) =>
    (window.xMax - window.xMin) * scale <= most.wide && (window.yMax - window.yMin) * scale <= most.high;
  return standardScales.find(fits) ?? (standardScales.at(-1) as number);
}

/** Draws a detail; its lower left corner comes to lie at the origin. mm of paper. */
export function drawDetail(detail: Detail): Shape[] {
  const { window, cut, length, lines, letter, what } = detail;
  const scale = detailScale(detail);
  const seen = through(cut, window);
  const at = { x: 0, y: 0 };
  const loops = seen.loops.map((loop) => loop.map(({ x, y }) => ({ x: scale * x, y: scale * y })));
  const body: Shape[] = [
    ...hatching(loops),
    ...onPaper(
      [
        ...seen.broken.map(([a, b]) => line(a, b, 'thin')),
        ...seen.behind.map(([a, b]) => line(a, b, 'thin')),
        ...seen.edges.map(([a, b]) => polyline([a, b], 'outline')),
      ],
      scale,
      at,
    ),
  ];
  const [low, high] = [window.yMin * scale, window.yMax * scale];
  const dimension = length
    ? levelLength(
        [length.from * scale, length.to * scale],
        length.above ? high + 6 : low - 6,
        length.above ? [high, high] : [low, low],
        length.words,
        length.number,
        1,
      )
    : [];
  const left = window.xMin * scale;
  const under = low - (length && !length.above ? 15 : 6);
  const words = [
    text(`Detail ${letter} (${scaleText(scale)})`, { x: left, y: under }, 3, { bold: true }),
    text(what, { x: left, y: under - 4.4 }, cap.table),
    ...lines.map((one, i) => text(one, { x: left, y: under - 8.2 - 3.8 * i }, cap.table)),
  ];
  const all = [...body, ...dimension, ...words];
  const box = boxOf(all);
  return onPaper(all, 1, { x: -box.xMin, y: -box.yMin });
}
