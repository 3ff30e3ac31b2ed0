/**
 * Laying a true-size drawing on sheets of paper: one sheet where it fits, else tiles that overlap and are put together by their crosses.
 * Every sheet carries the two scale checks, what is seen, and where it belongs. Lengths in mm; a sheet's lower left corner is the origin.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import type { PaperPattern } from './paper.ts';
import { barAcross, barUp } from './scale-check.ts';
import { type Box, textWidth } from './text-size.ts';

/** Upright sheets: ISO 216 A4, and US Letter (ANSI/ASME Y14.1 size A), 8.5 x 11 in. */
export const paperSizes = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
} as const;

export type PaperName = keyof typeof paperSizes;

/** How much of a drawing two neighbouring tiles share. */
export const overlap = 10;

/** One sheet: drawings one over the other, each with the place of its origin and what is seen of it. */
export interface SheetOfPaper {
  readonly width: number;
  readonly height: number;
  readonly layers: readonly { readonly drawing: Drawing; readonly at: Point; readonly clip: Box | null }[];
}

export interface SheetWords {
  /** What the job is. */
  readonly title: string;
  /** Loud words at the top, such as that checks fail; empty for none. */
  readonly warning: string;
}

/** Kept free at the paper's edges: printers reach to 4 to 7 mm (common practice). */
const edge = 10;
/** Room for the bar on the left, the bar below, and the words on top. */
const room = { left: 10, below: 18, above: 38 };
const cross = { reach: 4, r: 2 };
const size = { title: 3.4, words: 2.5, small: 2.2 };

/** Where the drawing may be on a sheet. */
export function windowOf(paper: PaperName): Box {
  const { width, height } = paperSizes[paper];
  return { xMin: edge + room.left, yMin: edge + room.below, xMax: width - edge, yMax: height - edge - room.above };
}

/** How a drawing is cut up: columns and rows, and the lower left corner of the area that all tiles cover, in the drawing. */
interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly corner: Point;
  readonly step: Point;
}

function tilingOf({ box }: Drawing, frame: Box): Tiling {
  const step = { x: frame.xMax - frame.xMin - overlap, y: frame.yMax - frame.yMin - overlap };
  const count = (length: number, pitch: number) => Math.max(1, Math.ceil((length - overlap) / pitch - 1e-9));
  const columns = count(box.xMax - box.xMin, step.x);
  const rows = count(box.yMax - box.yMin, step.y);
  return {
    columns,
    rows,
    corner: {
      x: (box.xMin + box.xMax - columns * step.x - overlap) / 2,
      y: (box.yMin + box.yMax - rows * step.y - overlap) / 2,
    },
    step,
  };
}

/** Crosses in the middle of every shared strip, in the drawing's own coordinates: the two prints of each must coincide. */
function crosses({ columns, rows, corner, step }: Tiling): Shape[] {
  const seam = (from: number, pitch: number, i: number) => from + i * pitch + overlap / 2;
  const thirds = (from: number, pitch: number, i: number) =>
    [0.25, 0.75].map((share) => from + i * pitch + overlap + share * (pitch - overlap));
  const centres: Point[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 1; column < columns; column++) {
      for (const y of thirds(corner.y, step.y, row)) centres.push({ x: seam(corner.x, step.x, column), y });
    }
  }
  for (let column = 0; column < columns; column++) {
    for (let row = 1; row < rows; row++) {
      for (const x of thirds(corner.x, step.x, column)) centres.push({ x, y: seam(corner.y, step.y, row) });
    }
  }
  return centres.flatMap(({ x, y }): Shape[] => [
    { kind: 'circle', pen: 'thin', fill: 'none', centre: { x, y }, r: cross.r, feature: 'alignment' },
    { kind: 'line', pen: 'thin', from: { x: x - cross.reach, y }, to: { x: x + cross.reach, y }, feature: 'alignment' },
    { kind: 'line', pen: 'thin', from: { x, y: y - cross.reach }, to: { x, y: y + cross.reach }, feature: 'alignment' },
  ]);
}

/** A line of words no wider than `most`, in smaller letters where it must be. */
function line(
  text: string,
  at: Point,
  cap: number,
  most: number,
  more: { bold?: boolean; align?: 'start' | 'end' } = {},
): Shape {
  const { bold = false, align = 'start' } = more;
  const fits = Math.min(cap, most / textWidth(text, 1, bold));
  return { kind: 'text', at, text, size: fits, align, angle: 0, bold };
}

const rectangle = (box: Box, pen: 'thin' | 'mark', fill: 'none' | 'screw'): Shape => ({
  kind: 'path',
  pen,
  fill,
  closed: true,
  loops: [
    [
      { x: box.xMin, y: box.yMin, bulge: 0 },
      { x: box.xMax, y: box.yMin, bulge: 0 },
      { x: box.xMax, y: box.yMax, bulge: 0 },
      { x: box.xMin, y: box.yMax, bulge: 0 },
    ],
  ],
});

/** A tile's name: row letter from the top, column number from the left. */
const tileName = (row: number, column: number, rows: number) => `${String.fromCharCode(64 + rows - row)}${column + 1}`;

/** A small map of the tiles with this one filled, its right edge at `right`. */
function tileMap({ columns, rows }: Tiling, row: number, column: number, right: number, base: number): Shape[] {
  const cell = Math.min(6, 14 / rows, 30 / columns);
  return Array.from({ length: rows * columns }, (_, i): Shape[] => {
    const [r, c] = [Math.floor(i / columns), i % columns];
    const box = {
      xMin: right - (columns - c) * cell,
      xMax: right - (columns - c - 1) * cell,
      yMin: base + r * cell,
      yMax: base + (r + 1) * cell,
    };
    return [rectangle(box, 'thin', r === row && c === column ? 'screw' : 'none')];
  }).flat();
}

/** Title, words and scale checks of one sheet. */
function sheetFace(pattern: PaperPattern, words: SheetWords, paper: PaperName, sheet: string): Shape[] {
  const { width, height, name } = paperSizes[paper];
  const [left, right, top] = [edge, width - edge, height - edge];
  const wide = right - left;
  // The height that is left for words under the title is shared out, so that a long list of facts stays on the sheet.
  const lines = [
    ...pattern.facts,
    'Print at 100 % (actual size, not fitted to the page), and measure both bars before you trust it.',
  ];
  const pitch = Math.min(4, (room.above - 16) / lines.length);
  return [
    line(words.title, { x: left, y: top - 3.6 }, size.title, wide - 45, { bold: true }),
    line(`${sheet}, ${name}, 1:1`, { x: right, y: top - 3.6 }, size.words, 43, { align: 'end' }),
    line(pattern.view, { x: left, y: top - 8.6 }, size.words, wide, { bold: true }),
    ...lines.map((text, i) =>
      line(text, { x: left, y: top - 8.8 - pitch * (i + 1) }, Math.min(size.small, 0.62 * pitch), wide),
    ),
    ...(words.warning === ''
      ? []
      : [line(words.warning, { x: left, y: top - room.above + 2 }, size.title, wide, { bold: true })]),
    ...barAcross({ x: edge + room.left, y: edge + 6 }),
    ...barUp({ x: edge + 4.2, y: edge + room.below }),
  ];
}

/**
 * The sheets of some patterns, each pattern on as many as it needs, numbered through.
 * @throws never; a pattern of any size is tiled
 */
export function sheetsOfPaper(patterns: readonly PaperPattern[], paper: PaperName, words: SheetWords): SheetOfPaper[] {
  const { width, height } = paperSizes[paper];
  const frame = windowOf(paper);
  const tilings = patterns.map((pattern) => ({ pattern, tiling: tilingOf(pattern.drawing, frame) }));
  const total = tilings.reduce((sum, { tiling }) => sum + tiling.rows * tiling.columns, 0);
  let page = 0;
  return tilings.flatMap(({ pattern, tiling }) => {
    const { columns, rows, corner, step } = tiling;
    const tiled = rows * columns > 1;
    const drawing = tiled
      ? { ...pattern.drawing, shapes: [...pattern.drawing.shapes, ...crosses(tiling)] }
      : pattern.drawing;
    return Array.from({ length: rows * columns }, (_, i): SheetOfPaper => {
      page += 1;
      // From the top left, as one reads; rows count upwards.
      const [row, column] = [rows - 1 - Math.floor(i / columns), i % columns];
      const name = tileName(row, column, rows);
      const marks: Shape[] = tiled
        ? [
            rectangle(frame, 'thin', 'none'),
            ...tileMap(tiling, row, column, width - edge, edge),
            line(`Tile ${name}: lay crosses on crosses.`, { x: width - edge - 32, y: edge }, size.small, 46, {
              align: 'end',
            }),
          ]
        : [];
      const shapes = [...marks, ...sheetFace(pattern, words, paper, `Sheet ${page} of ${total}`)];
      const face: Drawing = {
        id: `${pattern.drawing.id}-sheet-${page}`,
        title: pattern.drawing.title,
        description: pattern.view,
        box: { xMin: 0, yMin: 0, xMax: width, yMax: height },
        shapes,
      };
      const at = { x: frame.xMin - corner.x - column * step.x, y: frame.yMin - corner.y - row * step.y };
      return {
        width,
        height,
        layers: [
          { drawing, at, clip: frame },
          { drawing: face, at: { x: 0, y: 0 }, clip: null },
        ],
      };
    });
  });
}
