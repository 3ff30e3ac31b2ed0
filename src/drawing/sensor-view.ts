/**
 * A sensor over two or three teeth, near to and to scale: its poles or elements against the pitch, the gap as it is set, and where the
 * teeth come to stand at the high and at the low spot. Below, the gap on a line of its own: cold, set, hot, against what the sensor
 * bears. Seen radially the teeth are as they are cut; seen along the axis they are laid out flat at the circle where they are read, as
 * open teeth or as bars between windows. The sheet is 100 mm wide.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import { formatLength } from '../units/format.ts';
import { capital } from '../units/sentence.ts';
import { bar, columnWidth, letter, paragraph, smallLetter, stroke } from './column.ts';
import { uprightDimension } from './dimension.ts';
import { flatDimension } from './flat-dimension.ts';
import { frame } from './frame.ts';
import { type GapLineInput, gapLines } from './gap-line.ts';
import type { LabelUnits } from './length-text.ts';

export interface SensorViewInput extends GapLineInput {
  readonly id: string;
  /** "coil with magnet", "sensor". */
  readonly sensor: string;
  readonly direction: 'radial' | 'axial';
  /** What the teeth are called: "teeth", or "bars" between windows. */
  readonly teethWord: string;
  /**
   * The teeth as closed loops, mm: x along their path with a tooth's middle at 0, y up with what faces the sensor at 0. `edges` are
   * those of their sides that are real and not cut off by the picture's border; `beyond` is seen behind them.
   */
  readonly teeth: readonly (readonly Point[])[];
  readonly edges: readonly (readonly Point[])[];
  readonly beyond: readonly { readonly from: Point; readonly to: Point }[];
  /** Half of what is shown, along and the depth of it, mm. */
  readonly half: number;
  readonly deep: number;
  readonly pitch: number;
  /** Sizes in a sentence. */
  readonly sizes: string;
  readonly gap: number;
  readonly isGapGiven: boolean;
  /** Width of a pole or element, distance between two elements, diameter of the body, mm; null where not known. */
  readonly pole: number | null;
  readonly spacing: number | null;
  readonly body: number | null;
  /** What is left on either side, in sentences. */
  readonly said: readonly string[];
  readonly notGiven: readonly string[];
  readonly units: LabelUnits;
}

/** Sizes in the picture are in mm. */
const size = (mm: number): string => mm.toFixed(2);
/** How much of the sensor is drawn, mm on the sheet. */
const bodyHigh = 15;
/** An element whose width nobody gave is drawn so wide, mm on the sheet. */
const markWide = 1.4;

/** Drawn millimetres for one of the wheel's. */
export const sensorScale = ({ half }: Pick<SensorViewInput, 'half'>): number => columnWidth / (2 * half);

interface Near {
  readonly input: SensorViewInput;
  readonly mm: number;
  /** From millimetres of the wheel to the sheet. */
  readonly at: (p: Point) => Point;
}

const loopOf = (near: Near, points: readonly Point[]) => points.map((p) => ({ ...near.at(p), bulge: 0 }));

function teethShapes(near: Near): Shape[] {
  const { teeth, edges, beyond, feature } = near.input;
  return [
    ...beyond.map(({ from, to }) => stroke('thin', near.at(from), near.at(to))),
    ...teeth.map(
      (loop): Shape => ({
        kind: 'path',
        pen: 'hatch',
        fill: 'screw',
        closed: true,
        loops: [loopOf(near, loop)],
        feature,
      }),
    ),
    ...edges.map(
      (edge): Shape => ({
        kind: 'path',
        pen: 'outline',
        fill: 'none',
        closed: false,
        loops: [loopOf(near, edge)],
        feature,
      }),
    ),
  ];
}

/** Where the surface comes to stand nearest and farthest, as dashed lines through the gap. */
function spotLines({ input, mm, at }: Near): Shape[] {
  const { states, gap, half, deep } = input;
  const nearest = gap - Math.min(...states.map((state) => state.nearest));
  const farthest = gap - Math.max(...states.map((state) => state.farthest));
  // Where they would run far into the sensor, or below what is shown, the line below tells how far.
  const shown = (y: number) => Math.max(-deep, Math.min(gap + bodyHigh / mm, y));
  return [nearest, farthest].map((y) => stroke('hidden', at({ x: -half, y: shown(y) }), at({ x: half, y: shown(y) })));
}

/** Middles of the elements along the path of the teeth, mm: two where their distance is known, else one. */
export const elementsOf = ({ spacing }: Pick<SensorViewInput, 'spacing'>): number[] =>
  spacing === null ? [0] : [-spacing / 2, spacing / 2];

function sensorShapes({ input, mm, at }: Near): Shape[] {
  const { gap, pole, spacing, body, half } = input;
  const face = at({ x: 0, y: gap });
  const reach = mm * ((spacing ?? 0) / 2 + (pole ?? 0) / 2);
  const wide = body === null ? Math.max(17, reach + 6) : (mm * body) / 2;
  const side = Math.min(wide, columnWidth / 2 - 8.5 * letter);
  const isCut = side < wide - 1e-9;
  const corners = [
    { x: face.x - side, y: face.y },
    { x: face.x + side, y: face.y },
    { x: face.x + side, y: face.y + bodyHigh },
    { x: face.x - side, y: face.y + bodyHigh },
  ];
  const thick = pole === null ? markWide : mm * pole;
  const pieces = elementsOf(input).map((x) => at({ x, y: 0 }).x);
  const top = face.y + 6.2;
  const [left = 0, right = 0] = pieces;
  return [
    { kind: 'path', pen: 'hatch', fill: 'adapter', closed: true, loops: [corners.map((c) => ({ ...c, bulge: 0 }))] },
    stroke('outline', corners[0] as Point, corners[1] as Point),
    ...(isCut
      ? []
      : [
          stroke('outline', corners[1] as Point, corners[2] as Point),
          stroke('outline', corners[0] as Point, corners[3] as Point),
        ]),
    ...pieces.map((x) => bar(x - thick / 2, x + thick / 2, face.y + 3, 3, { pen: 'thin', fill: 'ink' })),
    ...(spacing === null
      ? pole === null
        ? []
        : flatDimension(
            { left: left - thick / 2, right: left + thick / 2, y: top, from: face.y + 3.4 },
            size(pole),
            letter,
          )
      : flatDimension({ left, right, y: top, from: face.y + 3.4 }, size(spacing), letter)),
    stroke('centre', at({ x: 0, y: -input.deep }), { x: face.x, y: face.y + bodyHigh + 2 }),
    // The sensor's face, carried out to where the gap is measured.
    stroke('dimension', { x: face.x + side, y: face.y }, { x: at({ x: half, y: 0 }).x - 4 * letter, y: face.y }),
  ];
}

/** The picture at its scale, its upper edge at `top`. */
function nearShapes(input: SensorViewInput, top: number): { shapes: Shape[]; y: number } {
  const mm = sensorScale(input);
  const surface = top - bodyHigh - 2.5 - mm * input.gap;
  const near: Near = { input, mm, at: ({ x, y }) => ({ x: columnWidth / 2 + mm * x, y: surface + mm * y }) };
  const { pitch, gap, deep } = input;
  const floor = near.at({ x: 0, y: -deep }).y;
  const [left, right] = [columnWidth / 2 - mm * pitch, columnWidth / 2];
  const fits = left > 1;
  const under = floor - 2.6 * letter;
  return {
    shapes: [
      ...teethShapes(near),
      ...sensorShapes(near),
      ...spotLines(near),
      ...uprightDimension(
        { low: surface, high: surface + mm * gap },
        columnWidth - 4 * letter,
        columnWidth - 2.6 * letter,
        size(gap),
        letter,
      ),
      ...(fits ? flatDimension({ left, right, y: under, from: surface }, `pitch ${size(pitch)}`, letter) : []),
    ],
    y: (fits ? under : floor) - 1.4 * letter,
  };
}

/** Draws the sensor over the teeth. */
export function sensorView(input: SensorViewInput): Drawing {
  const { id, sensor, direction, teethWord, said, sizes, gap, isGapGiven, units, pole, spacing, notGiven } = input;
  const shapes: Shape[] = [];
  let y = 0;
  const add = (block: { readonly shapes: readonly Shape[]; readonly y: number }, after = 0): void => {
    shapes.push(...block.shapes);
    y = block.y - after * letter;
  };
  const gapText = `${size(gap)} mm${units === 'in' ? ` [${formatLength(gap, 'in')}]` : ''}`;
  const set = `${capital(sensor)}, gap ${gapText} ${isGapGiven ? 'as set' : 'as is usual for its kind'}:`;
  const [first = '', ...rest] = said;
  add(paragraph(`The sensor over the ${teethWord}`, y, { size: 1.2 * letter, bold: true }), 0.5);
  add(paragraph(`${set} ${first}`, y, { bold: true, feature: input.feature }), 0.35);
  for (const line of rest) add(paragraph(line, y, { size: smallLetter }), 0.2);
  y -= 0.8 * letter;
  add(nearShapes(input, y), 0.4);
  const how =
    direction === 'axial'
      ? `Seen along the rim: the ${teethWord} laid out flat where the sensor reads them.`
      : 'Seen along the axis, to scale.';
  const drawn = [
    how,
    sizes,
    ...(pole === null
      ? [
          `The width of its ${spacing === null ? 'pole or element' : 'elements'} is not given (sensor.pole): drawn as a mark.`,
        ]
      : []),
    'Dashed: where they stand at the high and at the low spot.',
  ];
  for (const line of drawn) add(paragraph(line, y, { size: smallLetter }), 0.1);
  y -= 0.9 * letter;
  add(paragraph('The gap, from the sensor\u2019s face on the left', y, { bold: true }), 0.5);
  add(gapLines(input, y));
  add(paragraph('Pale: from the high to the low spot at worst. Dark: likely.', y, { size: smallLetter }), 0.1);
  if (notGiven.length > 0)
    add(paragraph(`Not given, counted as nothing: ${notGiven.join(', ')}.`, y, { size: smallLetter }));
  return frame(
    {
      id,
      title: `the sensor over the ${teethWord}`,
      description: [set, ...said, how, sizes].join(' '),
    },
    shapes,
    2.5,
  );
}
