/** The title block in the lower right corner, 180 mm wide (ISO 7200), and the frame of the sheet. mm of paper. */
import type { Shape } from '../../model/drawing.ts';
import { generalTolerance } from '../../standards/general-tolerances.ts';
import { must } from '../../standards/table.ts';
import type { Box } from '../text-size.ts';
import { frameOf, scaleText, shopPapers } from './paper-sizes.ts';
import { cap, fitted, line, rectangle, text } from './shapes.ts';
import { massText, toleranceText } from './size-text.ts';
import { balloon, balloonRadius, projectionSymbol } from './symbols.ts';
import type { SheetChoice, TitleToDraw } from './to-draw.ts';

export const titleWidth = 180;
export const titleHeight = 40;
const rowHeight = 8;

export interface SheetAbout {
  readonly choice: SheetChoice;
  /** Paper mm for one mm of the part. */
  readonly scale: number;
  readonly sheet: number;
  readonly of: number;
}

/** The general tolerance that sizes without limits of their own carry: "ISO 2768-m". */
export const generalWords = (): string => must(generalTolerance(100, 'm')).designation;

/** What every sheet carries: frame, centring marks, title block, and a loud word where checks fail. */
export function sheetFace(title: TitleToDraw, { choice, scale, sheet, of }: SheetAbout): Shape[] {
  const { paper, angle } = choice;
  const box: Box = frameOf(paper);
  const { width, height, name } = shopPapers[paper];
  const left = box.xMax - titleWidth;
  const { yMin } = box;
  const rows: readonly (readonly {
    readonly label: string;
    readonly words: string;
    readonly width: number;
    readonly bold?: boolean;
  }[])[] = [
    [
      { label: 'part', words: title.part, width: 90, bold: true },
      { label: 'drawing', words: title.number, width: 90, bold: true },
    ],
    [{ label: 'for', words: title.job, width: 180 }],
    [
      { label: 'material', words: title.material, width: 76 },
      { label: 'mass', words: massText(title.mass, title.units), width: 34 },
      {
        label: 'sizes without limits',
        words: title.plusMinus === null ? generalWords() : `\u00b1${toleranceText(title.plusMinus, title.units)}`,
        width: 34,
      },
      { label: angle === 'first' ? 'first angle' : 'third angle', words: '', width: 36 },
    ],
    [
      { label: 'revision', words: title.revision, width: 34, bold: true },
      { label: 'scale', words: scaleText(scale), width: 22, bold: true },
      { label: 'sizes in', words: title.units === 'in' ? 'inches' : 'mm', width: 28, bold: true },
      { label: 'paper', words: name, width: 22 },
      { label: 'sheet', words: `${sheet} of ${of}`, width: 38 },
      { label: '', words: '', width: 36 },
    ],
    [
      { label: '', words: 'DO NOT SCALE: ask where a size is missing', width: 96, bold: true },
      { label: 'checked', words: '', width: 48 },
      { label: 'date', words: '', width: 36 },
    ],
  ];
  const out: Shape[] = [
    rectangle(box, 'outline'),
    line({ x: width / 2, y: height - 5 }, { x: width / 2, y: box.yMax }, 'outline'),
    line({ x: width / 2, y: 5 }, { x: width / 2, y: box.yMin }, 'outline'),
    line({ x: 5, y: height / 2 }, { x: box.xMin, y: height / 2 }, 'outline'),
    line({ x: width - 5, y: height / 2 }, { x: box.xMax, y: height / 2 }, 'outline'),
    rectangle({ xMin: left, yMin, xMax: box.xMax, yMax: yMin + titleHeight }, 'outline'),
  ];
  rows.forEach((cells, i) => {
    const base = yMin + titleHeight - (i + 1) * rowHeight;
    let x = left;
    cells.forEach((cell, k) => {
      const joined = (i === 2 || i === 3) && k === cells.length - 1;
      if (k > 0) out.push(line({ x, y: base }, { x, y: base + rowHeight }, 'thin'));
      if (cell.label !== '') out.push(text(cell.label, { x: x + 1.2, y: base + rowHeight - 2.4 }, cap.label));
      const size = cell.label === '' ? cap.size : 2.7;
      if (cell.words !== '')
        out.push(
          fitted(
            cell.words,
            { x: x + 1.6, y: base + 1.3 },
            size,
            cell.width - 3 - (cell.label === 'mass' && title.massBalloon !== null ? 7 : 0),
            cell.bold,
          ),
        );
      if (cell.label === 'mass' && title.massBalloon !== null) {
        out.push(...balloon(title.massBalloon, { x: x + cell.width - balloonRadius - 0.8, y: base + rowHeight / 2 }));
      }
      if (joined && i === 2) out.push(...projectionSymbol(angle, { x: x + cell.width / 2, y: base - 1.6 }));
      x += cell.width;
    });
    // The symbol's cell is two rows high.
    const end = i === 2 ? box.xMax - 36 : box.xMax;
    if (i < rows.length - 1) out.push(line({ x: left, y: base }, { x: end, y: base }, 'thin'));
  });
  if (title.warning !== '') {
    out.push(
      text(title.warning, { x: (box.xMin + box.xMax) / 2, y: box.yMax - 6.5 }, 4.5, { align: 'middle', bold: true }),
    );
  }
  return out;
}
