/**
 * The workshop drawing of an adapter. First sheet: section and faces, placed by the projection that was chosen, at one exact scale. Then
 * the hole table, the details and the notes, on as many sheets as they need.
 */
import type { Drawing, Shape } from '../../model/drawing.ts';
import { type CuttingLine, cuttingLine } from './cutting-line.ts';
import { detailsOf, drawDetail } from './details.ts';
import { faceOnSheet } from './face-on-sheet.ts';
import { columnRoom, flowed } from './flow.ts';
import { type Block, setBlocks } from './hole-list.ts';
import { furtherSizes, noteTexts, paragraphs, roughnessBlock } from './notes.ts';
import { frameOf, scaleText, shopPapers, standardScales } from './paper-sizes.ts';
import { type Enlarged, sectionOnSheet } from './section-on-sheet.ts';
import { boxOf, moved } from './shapes.ts';
import { balloonRadius } from './symbols.ts';
import { sheetFace, titleHeight, titleWidth } from './title-block.ts';
import type { AdapterToDraw, Face, SheetChoice } from './to-draw.ts';

const margin = 4;
const between = 8;

interface Row {
  readonly scale: number;
  /** Views about the axis, from left to right, each with its own origin. */
  readonly views: readonly (readonly Shape[])[];
  /** False: the driving face stands on another sheet. */
  readonly whole: boolean;
}

/** Room for the loud words at the top of a sheet. */
const headOf = (drawn: AdapterToDraw): number => (drawn.title.warning === '' ? 0 : 7);

function spaceOf(row: Row): { width: number; up: number; down: number } {
  const boxes = row.views.map(boxOf);
  return {
    width: boxes.reduce((sum, b) => sum + b.xMax - b.xMin, 0) + between * (boxes.length - 1),
    up: Math.max(...boxes.map((b) => b.yMax)),
    down: Math.max(...boxes.map((b) => -b.yMin)),
  };
}

function fits(row: Row, drawn: AdapterToDraw, choice: SheetChoice): boolean {
  const frame = frameOf(choice.paper);
  const { width, up, down } = spaceOf(row);
  const room = frame.yMax - frame.yMin - titleHeight - 2 * margin - headOf(drawn);
  return width <= frame.xMax - frame.xMin - 2 * margin && up + down <= room;
}

/** The views at a scale. First angle: what is seen from the right stands on the left (ISO 5456-2); third angle: on its own side. */
function rowAt(
  drawn: AdapterToDraw,
  cutting: CuttingLine,
  scale: number,
  choice: SheetChoice,
  whole: boolean,
  marks: readonly Enlarged[],
): Row {
  const section = sectionOnSheet(drawn, cutting, scale, marks);
  const face = (side: Face) => faceOnSheet(drawn, side, scale, side === 'driven' ? cutting : null);
  const [left, right] = choice.angle === 'first' ? (['driven', 'driving'] as const) : (['driving', 'driven'] as const);
  const shown = (side: Face) => (whole || side === 'driven' ? [face(side)] : []);
  return { scale, whole, views: [...shown(left), section, ...shown(right)] };
}

function bestRow(drawn: AdapterToDraw, cutting: CuttingLine, choice: SheetChoice, marks: readonly Enlarged[]): Row {
  const smallest = standardScales.at(-1) as number;
  const start =
    choice.scale === null
      ? standardScales.filter((scale) => scale <= 2)
      : standardScales.filter((scale) => scale <= (choice.scale ?? 1));
  for (const scale of start) {
    for (const whole of [true, false]) {
      const row = rowAt(drawn, cutting, scale, choice, whole, marks);
      if (fits(row, drawn, choice)) return row;
    }
  }
  return rowAt(drawn, cutting, smallest, choice, true, marks);
}

function placed(row: Row, drawn: AdapterToDraw, choice: SheetChoice, floor: number): Shape[] {
  const frame = frameOf(choice.paper);
  const { width, up, down } = spaceOf(row);
  const top = frame.yMax - margin - headOf(drawn);
  const spare = top - floor - up - down;
  const y = floor + down + Math.max(0, spare / 2);
  const room = frame.xMax - frame.xMin - width;
  const space = Math.min(between + room / (row.views.length + 1), between + 25);
  let x = (frame.xMin + frame.xMax - width - (space - between) * (row.views.length - 1)) / 2;
  return row.views.flatMap((view) => {
    const box = boxOf(view);
    const at = { x: x - box.xMin, y };
    x += box.xMax - box.xMin + space;
    return moved(view, at);
  });
}

/** A drawing about any origin as a block. */
export function blockOf(shapes: readonly Shape[]): Block {
  const box = boxOf(shapes);
  return {
    width: box.xMax - box.xMin,
    height: box.yMax - box.yMin,
    shapes: moved(shapes, { x: -box.xMin, y: -box.yMin }),
  };
}

/** Blocks one over the other, the first on top. */
export function stacked(blocks: readonly Block[], gap: number): Block {
  const real = blocks.filter(({ height }) => height > 0);
  const height = real.reduce((sum, b) => sum + b.height, 0) + gap * (real.length - 1);
  let top = height;
  const shapes = real.flatMap((block) => {
    top -= block.height;
    const out = moved(block.shapes, { x: 0, y: top });
    top -= gap;
    return out;
  });
  return { width: Math.max(...real.map((b) => b.width)), height, shapes };
}

/** Numbers that stand in balloons. */
export function balloonNumbers(shapes: readonly Shape[]): number[] {
  return shapes.flatMap((shape, i) => {
    const next = shapes[i + 1];
    const round = shape.kind === 'circle' && shape.pen === 'thin' && Math.abs(shape.r - balloonRadius) < 1e-9;
    return round && next?.kind === 'text' && /^\d+$/.test(next.text) ? [Number(next.text)] : [];
  });
}

/**
 * The sheets of an adapter's drawing, each a drawing in mm of paper from the sheet's lower left corner.
 * @throws never; a part too large for the smallest standard scale runs out of its sheet
 */
export function adapterSheets(drawn: AdapterToDraw, choice: SheetChoice): Drawing[] {
  const cutting = cuttingLine(drawn);
  const details = detailsOf(drawn, cutting);
  const marks = details.flatMap(({ mark }) => (mark ? [mark] : []));
  const row = bestRow(drawn, cutting, choice, marks);
  const head = headOf(drawn);
  const frame = frameOf(choice.paper);
  const { title } = drawn;

  const room = columnRoom(choice.paper, head);
  const blocks: Block[] = [
    ...(row.whole ? [] : [blockOf(faceOnSheet(drawn, 'driving', row.scale, null))]),
    ...drawn.sets.flatMap((set) => setBlocks(drawn, set, room)),
    ...details.map((detail) => blockOf(drawDetail(detail))),
  ];
  const shown = new Set(balloonNumbers([...row.views.flat(), ...blocks.flatMap(({ shapes }) => shapes)]));
  const further = drawn.sizes.filter(
    ({ number, part }) => part === 'adapter' && !shown.has(number) && number !== title.massBalloon,
  );
  const missed =
    choice.scale !== null && row.scale !== choice.scale
      ? [`Scale ${scaleText(choice.scale)} was asked for, but does not fit on ${shopPapers[choice.paper].name}.`]
      : [];
  const notes = (width: number): Block =>
    stacked(
      [
        roughnessBlock(title.units, 'faces, registers, shoulder, bore', width),
        paragraphs(noteTexts(drawn, cutting, missed), width),
        furtherSizes(further, title.units, width),
      ],
      3,
    );

  // Beside the title block where there is room, else among the other blocks.
  const beside = notes(frame.xMax - titleWidth - 6 - frame.xMin - 6);
  const { up, down } = spaceOf(row);
  const high = Math.max(titleHeight, beside.height + 4);
  const isBeside = beside.width >= 130 && up + down + 2 * margin + head + high <= frame.yMax - frame.yMin;
  const floor = frame.yMin + (isBeside ? high : titleHeight) + margin;
  const first: Shape[] = [
    ...placed(row, drawn, choice, floor),
    ...(isBeside ? moved(beside.shapes, { x: frame.xMin + 6, y: frame.yMin + 3 }) : []),
  ];
  const bodies = [first, ...flowed([...blocks, ...(isBeside ? [] : [notes(76)])], choice.paper, head)];
  const { width, height } = shopPapers[choice.paper];
  return bodies.map((body, i): Drawing => {
    const about = { choice, scale: row.scale, sheet: i + 1, of: bodies.length };
    return {
      id: `adapter-drawing-${i + 1}`,
      title: `${title.number}, sheet ${i + 1} of ${bodies.length}`,
      description: `Workshop drawing of ${title.part} for ${title.job}, revision ${title.revision}, scale ${scaleText(row.scale)}.`,
      box: { xMin: 0, yMin: 0, xMax: width, yMax: height },
      shapes: [...sheetFace(title, about), ...body],
    };
  });
}
