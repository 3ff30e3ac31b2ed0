/**
 * A chain of small shifts as a staircase of bars, the widest link first: how much each adds to the worst case and to the likely one,
 * the sum against its limit, and what to improve first. The sheet is 100 mm wide; bars are to one scale of their own.
 */
import type { Drawing, Shape } from '../model/drawing.ts';
import { barHigh, type ChainViewInput, chainScale, limitAt, type Sheet, type Step, stairsOf } from './chain-sheet.ts';
import { total } from './chain-total.ts';
import { bar, columnWidth, label, letter, paragraph, smallLetter, stroke } from './column.ts';
import { fittedLines } from './fitted-lines.ts';
import { frame } from './frame.ts';
import { textWidth } from './text-size.ts';

/** Room for "100 %" and a gap before it. */
const percentWide = 6.2 * letter;
const percent = (part: number, whole: number): string => `${whole > 0 ? Math.round((100 * part) / whole) : 0}\u00a0%`;

/** A number in a ring, its middle at a point. */
function badge(x: number, y: number, number: number, isFirst: boolean, feature: string | null): Shape[] {
  const named = feature === null ? {} : { feature };
  return [
    {
      kind: 'circle',
      pen: 'outline',
      fill: isFirst ? 'doubtful' : 'void',
      centre: { x, y },
      r: 0.85 * letter,
      ...named,
    },
    label({ x, y: y - 0.44 * letter }, String(number), { size: smallLetter, align: 'middle', bold: true }),
  ];
}

/** The links in the order in which they follow each other, on a line from end to end. */
function strip(input: ChainViewInput, stairs: readonly Step[], top: number): { shapes: Shape[]; y: number } {
  const y = top - 3.1 * letter;
  const [from, to] = [0.5, columnWidth - 0.5];
  const byPlace = [...stairs].sort((a, b) => a.number - b.number);
  const end = (x: number): Shape => stroke('mark', { x, y: y + 0.9 * letter }, { x, y: y - 0.9 * letter });
  return {
    shapes: [
      label({ x: 0, y: top - letter }, input.from, { size: smallLetter }),
      label({ x: columnWidth, y: top - letter }, input.to, { size: smallLetter, align: 'end' }),
      stroke('outline', { x: from, y }, { x: to, y }),
      end(from),
      end(to),
      ...byPlace.flatMap((step, i) =>
        badge(
          from + ((i + 0.5) * (to - from)) / byPlace.length,
          y,
          step.number,
          step.number === input.start?.number,
          step.feature,
        ),
      ),
    ],
    y: y - 2.1 * letter,
  };
}

function rowOf(sheet: Sheet, step: Step, top: number): { shapes: Shape[]; y: number } {
  const { input, mm } = sheet;
  const isFirst = step.number === input.start?.number;
  const { what, worst, likely, from, to, read, number, feature } = step;
  const named = feature === null ? {} : { feature };
  const said = `${step.said} ${input.unit}`;
  const indent = 2.6 * letter;
  const room = columnWidth - indent - percentWide - textWidth(said, letter, true) - letter;
  const lines = fittedLines(what, letter, room, isFirst);
  const last = top - letter - (lines.length - 1) * 1.6 * letter;
  const note = read === null ? { shapes: [], y: last - 0.6 * letter } : readLine(read, last - 0.75 * letter, indent);
  const barTop = note.y;
  const [left, right] = [mm * Math.min(from, to), mm * Math.max(from, to)];
  const middle = barTop - barHigh / 2;
  return {
    shapes: [
      ...badge(0.9 * letter, top - 0.55 * letter, number, isFirst, feature),
      ...lines.map((line, i) =>
        label({ x: indent, y: top - letter - i * 1.6 * letter }, line, { bold: isFirst, ...named }),
      ),
      label({ x: columnWidth - percentWide, y: top - letter }, said, { align: 'end', bold: isFirst }),
      label({ x: columnWidth, y: top - letter }, percent(worst, input.worst), { align: 'end', bold: isFirst }),
      ...note.shapes,
      ...(left > 0 ? [stroke('dimension', { x: 0, y: middle }, { x: left, y: middle })] : []),
      bar(left, right, barTop, barHigh, {
        pen: 'thin',
        fill: worst < 0 ? 'void' : isFirst ? 'doubtful' : 'screw',
        ...named,
      }),
      ...(likely > 0 && worst > 0
        ? [
            bar(left, left + mm * likely, barTop - 0.3 * barHigh, 0.4 * barHigh, {
              pen: 'thin',
              fill: 'ink',
              ...named,
            }),
          ]
        : []),
      ...limitAt(sheet, barTop),
    ],
    y: barTop - barHigh - 0.95 * letter,
  };
}

const readLine = (read: string, top: number, x: number) =>
  paragraph(read, top, { size: smallLetter, x, room: columnWidth - x });

/** What the bars mean. */
function legend({ rows, notGiven }: ChainViewInput, top: number): Shape[] {
  const shapes: Shape[] = [];
  let y = top;
  const line = (text: string, swatch: Shape[] = []): void => {
    const said = paragraph(text, y, { size: smallLetter, x: 6 * letter, room: columnWidth - 6 * letter });
    shapes.push(...swatch, ...said.shapes);
    y = said.y - 0.35 * letter;
  };
  line('worst case: every link at its widest, all to one side', [
    bar(0, 4.6 * letter, y, letter, { pen: 'thin', fill: 'screw' }),
  ]);
  line('likely: independent links add by their squares', [
    bar(0, 4.6 * letter, y - 0.25 * letter, 0.5 * letter, { pen: 'thin', fill: 'ink' }),
  ]);
  if (rows.some(({ read }) => read !== null))
    line(
      'Read with a dial: the part along the sum of all such shifts counts, and the doubt. Angles from the index mark, counter-clockwise seen from the driven side.',
    );
  if (notGiven.length > 0) line(`Not given, counted as nothing: ${notGiven.join(', ')}.`);
  return shapes;
}

/** What to start with, and what helps: the same link as in words. Where nothing is left to do, that. */
function advice({ start, worst }: ChainViewInput, stairs: readonly Step[]): { first: string; helps: string } {
  const step = stairs.find(({ number }) => number === start?.number);
  if (!start || !step) return { first: 'Nothing is left to do about any of these links.', helps: '' };
  const gives = `${step.what} gives ${percent(step.worst, worst)} of the worst case`;
  return { first: `Start with ${start.number}: ${gives}.`, helps: `What helps: ${start.cure}.` };
}

/** Draws a chain. At least one link. */
export function chainView(input: ChainViewInput): Drawing {
  const { id, title, worst, likely, limit, sized, unit } = input;
  const sheet = { input, ...chainScale(input) };
  const stairs = stairsOf(input.rows);
  const { first, helps } = advice(input, stairs);
  const shapes: Shape[] = [];
  let y = 0;
  const add = (block: { readonly shapes: readonly Shape[]; readonly y: number }, after = 0): void => {
    shapes.push(...block.shapes);
    y = block.y - after * letter;
  };
  add(paragraph(title, y, { size: 1.2 * letter, bold: true }), 0.6);
  add(strip(input, stairs, y), 0);
  add(paragraph(first, y, { bold: true }), helps === '' ? 0.9 : 0.35);
  if (helps !== '') add(paragraph(helps, y, { size: smallLetter }), 0.9);
  for (const step of stairs) add(rowOf(sheet, step, y));
  add(total(sheet, y), 0.6);
  shapes.push(...legend(input, y));
  const against = limit === null ? 'no limit is known' : `the limit is ${sized(limit)}`;
  const each = stairs.map(({ what, said }) => `${what} ${said} ${unit}`).join(', ');
  return frame(
    {
      id,
      title,
      description: `At worst ${sized(worst)}, likely ${sized(likely)}; ${against}. ${[first, helps].join(' ').trim()} Widest first: ${each}.`,
    },
    shapes,
    2.5,
  );
}
