/** Blocks set into the free columns of sheets, one after the other. mm of paper. */
import type { Shape } from '../../model/drawing.ts';
import type { Block } from './hole-list.ts';
import { frameOf } from './paper-sizes.ts';
import { moved } from './shapes.ts';
import { titleHeight, titleWidth } from './title-block.ts';
import type { ShopPaperName } from './to-draw.ts';

const margin = 6;
const gap = 7;

interface Column {
  readonly x: number;
  width: number;
  readonly floor: number;
  top: number;
}

/** Room beside a narrow block that is worth a column of its own. */
const worth = 45;

/**
 * Sheets of blocks, each block in the first column with room for it, else in a new column, else on a new sheet.
 * @param head room kept free at the top of each sheet
 */
export function flowed(blocks: readonly Block[], paper: ShopPaperName, head: number): Shape[][] {
  const frame = frameOf(paper);
  const [left, right] = [frame.xMin + margin, frame.xMax - margin];
  const top = frame.yMax - margin - head;
  const sheets: { columns: Column[]; shapes: Shape[] }[] = [];
  const floorOf = (end: number): number =>
    end <= frame.xMax - titleWidth - 3 ? frame.yMin + margin : frame.yMin + titleHeight + margin;
  const newColumn = (sheet: { columns: Column[] }, block: Block): Column | null => {
    const x = sheet.columns.reduce((end, c) => Math.max(end, c.x + c.width + gap + 2), left);
    const floor = floorOf(x + block.width);
    if (x + block.width > right || top - block.height < floor) return null;
    const column = { x, width: block.width, floor, top };
    sheet.columns.push(column);
    return column;
  };
  for (const block of blocks) {
    if (block.height <= 0) continue;
    let sheet = sheets.at(-1);
    let column =
      sheet?.columns.find((c) => block.width <= c.width + 1e-6 && c.top - block.height >= c.floor) ??
      (sheet ? newColumn(sheet, block) : null);
    if (!sheet || !column) {
      sheet = { columns: [], shapes: [] };
      sheets.push(sheet);
      // A block too large for any sheet still stands on one: it would be worse to lose it.
      column = newColumn(sheet, block) ?? { x: left, width: block.width, floor: 0, top };
    }
    sheet.shapes.push(...moved(block.shapes, { x: column.x, y: column.top - block.height }));
    const beside = column.width - block.width - gap;
    if (beside > worth) {
      // The place beside a narrow block is not lost.
      const x = column.x + block.width + gap;
      sheet.columns.splice(sheet.columns.indexOf(column) + 1, 0, {
        x,
        width: beside,
        floor: floorOf(x + beside),
        top: column.top,
      });
      column.width = block.width;
    }
    column.top -= block.height + gap;
  }
  return sheets.map(({ shapes }) => shapes);
}

/** The highest block that a column over the title block takes. */
export function columnRoom(paper: ShopPaperName, head: number): number {
  const frame = frameOf(paper);
  return frame.yMax - margin - head - (frame.yMin + titleHeight + margin);
}
