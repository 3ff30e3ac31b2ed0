/** The hole table: each set with what is cut, how true it stands, and every hole's place in both kinds of coordinates. mm of paper. */
import type { Shape } from '../../model/drawing.ts';
import { machiningRule } from '../../standards/machining-practice.ts';
import { must } from '../../standards/table.ts';
import type { LabelUnits } from '../length-text.ts';
import { ringOf } from './bolt-circles.ts';
import { calloutLines } from './callout.ts';
import { framed } from './hung.ts';
import { cap, fitted, line, rectangle, text } from './shapes.ts';
import { degreesText, placeText } from './size-text.ts';
import type { AdapterToDraw, SetToDraw } from './to-draw.ts';

/** A piece of a sheet: its size, and its shapes with the lower left corner at the origin. */
export interface Block {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

interface Column {
  readonly head: string;
  readonly width: number;
  readonly of: (hole: SetToDraw['holes'][number]) => string;
}

function columnsOf(units: LabelUnits): Column[] {
  const common: Column[] = [
    { head: 'hole', width: 11, of: ({ tag }) => tag },
    { head: `X ${units}`, width: 19, of: ({ x }) => placeText(x, units) },
    { head: `Y ${units}`, width: 19, of: ({ y }) => placeText(y, units) },
    { head: `radius ${units}`, width: 18, of: ({ radius }) => placeText(radius, units) },
    { head: 'angle \u00b0', width: 18, of: ({ angle }) => degreesText(angle) },
  ];
  if (units === 'mm') return common;
  // Read-outs come in both: the same place in mm beside it.
  return [
    ...common,
    { head: 'X mm', width: 18, of: ({ x }) => placeText(x, 'mm') },
    { head: 'Y mm', width: 18, of: ({ y }) => placeText(y, 'mm') },
  ];
}

const row = 4.2;

/** One set as blocks no higher than `most`: it is carried over where it is longer. */
export function setBlocks(drawn: AdapterToDraw, set: SetToDraw, most: number): Block[] {
  const { units } = drawn.title;
  const columns = columnsOf(units);
  const width = columns.reduce((sum, c) => sum + c.width, 0);
  // The datum direction makes no odds to whether they are even.
  const isRing = ringOf(set.holes, 0) !== null;
  const said = [...calloutLines(set, units), ...(isRing ? [`circle dimensioned on the ${set.from} face`] : [])];
  const stray = must(machiningRule('hole_position', 0)).value;
  const size = drawn.sizes.find(({ id }) => id === `${set.side}-holes`);
  const reamed = set.limits !== null;
  const head = 6 + said.length * 4 + 8.4 + row;
  const blocks: Block[] = [];
  let rest = set.holes;
  for (let part = 0; rest.length > 0; part++) {
    const top = part === 0 ? head : 6 + row;
    const fits = Math.max(1, Math.floor((most - top - 1) / row));
    const [now, later] = [rest.slice(0, fits), rest.slice(fits)];
    const height = top + now.length * row;
    const shapes: Shape[] = [];
    const title = `${set.letter}  ${set.what}: seen from the ${set.from} side${part === 0 ? '' : ', carried over'}`;
    shapes.push(fitted(title, { x: 0, y: height - 4 }, cap.size, width, true));
    let y = height - 6;
    if (part === 0) {
      for (const words of said) {
        y -= 4;
        shapes.push(fitted(words, { x: 2, y: y + 0.8 }, cap.table, width - 2));
      }
      y -= 8.4;
      const number = reamed ? null : (size?.number ?? null);
      shapes.push(...framed('position', { upper: size?.upper ?? stray, number }, 'A', { x: 2, y: y + 1.6 }, drawn));
    }
    const table = y;
    const rights = columns.map((_, i) => columns.slice(0, i + 1).reduce((sum, c) => sum + c.width, 0));
    const cells = (words: readonly string[], base: number, bold: boolean) =>
      words.map((one, i) => {
        const size = bold ? 1.9 : cap.table;
        return i === 0
          ? text(one, { x: 1.4, y: base }, size, { bold })
          : text(one, { x: (rights[i] as number) - 1.4, y: base }, size, { align: 'end', bold });
      });
    shapes.push(
      ...cells(
        columns.map((c) => c.head),
        y - row + 1.1,
        true,
      ),
    );
    now.forEach((hole, i) => {
      const base = y - (i + 2) * row + 1.1;
      shapes.push(
        ...cells(
          columns.map((c) => c.of(hole)),
          base,
          false,
        ),
      );
    });
    const low = y - (now.length + 1) * row;
    for (let i = 1; i <= now.length; i++)
      shapes.push(line({ x: 0, y: y - i * row }, { x: width, y: y - i * row }, 'thin'));
    for (const x of rights.slice(0, -1)) shapes.push(line({ x, y: low }, { x, y: table }, 'thin'));
    shapes.push(rectangle({ xMin: 0, yMin: low, xMax: width, yMax: table }, 'dimension'));
    blocks.push({ width, height, shapes });
    rest = later;
  }
  return blocks;
}
