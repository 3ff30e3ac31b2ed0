/**
 * The unbalance of a joint as an arrow seen from the driven side: where its tip may lie at worst and likely, against the circle that the
 * balance grade allows; beside it the arrows that are known, larger; below what pulls most. The sheet is 100 mm wide; one drawn
 * millimetre is so many g.mm.
 */
import type { Drawing, Fill, Point, Shape } from '../model/drawing.ts';
import { type BalanceViewInput, numbered, type PullToDraw, verdictFill } from './balance-input.ts';
import { balancePlot } from './balance-plot.ts';
import { columnWidth, label, letter, paragraph, smallLetter, stroke } from './column.ts';
import { fittedLines } from './fitted-lines.ts';
import { frame } from './frame.ts';
import { textWidth } from './text-size.ts';

/** So many of the greatest pulls are listed. */
const mostListed = 7;

const grams = (value: number): string => `${value.toFixed(value < 10 && !Number.isInteger(value) ? 1 : 0)} g.mm`;
const toldOf = ({ worst, told }: PullToDraw): number => told ?? worst;
const degreesText = (angle: number): string => `${Math.round(angle) % 360}\u00b0`;

/** One line of the list: number, name, and its size. */
function listLine(
  pull: ReturnType<typeof numbered>[number],
  isFirst: boolean,
  top: number,
): { shapes: Shape[]; y: number } {
  const { what, size, angle, doubt, number, feature } = pull;
  const named = feature === null ? {} : { feature };
  const said =
    angle === null
      ? `${grams(toldOf(pull))} any side`
      : `${grams(size)} at ${degreesText(angle)}${doubt >= 0.05 ? ` \u00b1 ${doubt.toFixed(doubt < 10 ? 1 : 0)}` : ''}`;
  const indent = 2.2 * letter;
  const lines = fittedLines(
    what,
    smallLetter,
    columnWidth - indent - textWidth(said, smallLetter, isFirst) - letter,
    isFirst,
  );
  return {
    shapes: [
      label({ x: 0, y: top - smallLetter }, String(number), { size: smallLetter, bold: true }),
      ...lines.map((line, i) =>
        label({ x: indent, y: top - smallLetter - 1.6 * smallLetter * i }, line, {
          size: smallLetter,
          bold: isFirst,
          ...named,
        }),
      ),
      label({ x: columnWidth, y: top - smallLetter }, said, { size: smallLetter, align: 'end', bold: isFirst }),
    ],
    y: top - 1.6 * smallLetter * (lines.length - 1) - 1.75 * smallLetter,
  };
}

/** What the marks of the picture mean, a line each: a sample of the mark, and words. */
function legend(input: BalanceViewInput, top: number): { shapes: Shape[]; y: number } {
  const { verdict, marks, corrections, limit, allowed, loose, known, worst, likely, notGiven } = input;
  const shapes: Shape[] = [];
  let y = top;
  const line = (words: string, mark: readonly Shape[], bold = false): void => {
    const said = paragraph(words, y, { size: smallLetter, bold, x: 3 * letter, room: columnWidth - 3 * letter });
    shapes.push(...mark, ...said.shapes);
    y = said.y - 0.55 * letter;
  };
  const at = (): Point => ({ x: letter, y: y - 0.5 * letter });
  const ring = (pen: 'mark' | 'hidden' | 'thin', fill: Fill): Shape => ({
    kind: 'circle',
    pen,
    fill,
    centre: at(),
    r: 0.8 * letter,
  });
  if (limit !== null) line(`allowed: ${grams(limit)}, ${allowed}`, [ring('mark', 'none')]);
  line(`at worst the sum lies in here: up to ${grams(worst)}`, [ring('thin', verdictFill[verdict])]);
  line(`likely in here: ${grams(likely)}, by the squares`, [ring('hidden', 'none')]);
  if (known.size > 0.05)
    line(`sum of the known arrows: ${grams(known.size)} at ${degreesText(known.angle)}`, [
      stroke('mark', { x: 0.2 * letter, y: y - 0.5 * letter }, { x: 1.8 * letter, y: y - 0.5 * letter }),
    ]);
  else if (loose.worst > 0) line('No pull has a known side: nothing may be taken to cancel.', []);
  for (const { name, at: angle } of marks)
    line(`${name} at ${degreesText(angle)}`, [{ kind: 'circle', pen: 'thin', fill: 'ink', centre: at(), r: 0.9 }]);
  for (const { words } of corrections)
    line(words, [{ kind: 'circle', pen: 'outline', fill: 'doubtful', centre: at(), r: 0.7 * letter }], true);
  if (notGiven.length > 0) line(`Not given, counted as nothing: ${notGiven.join(', ')}.`, []);
  return { shapes, y };
}

/** What is left to the limit. */
function marginText({ worst, limit }: BalanceViewInput): string {
  if (limit === null) return `At worst ${grams(worst)}; no limit is known.`;
  return worst <= limit
    ? `At worst ${grams(worst)}: ${grams(limit - worst)} to spare.`
    : `At worst ${grams(worst)}: ${grams(worst - limit)} too much.`;
}

/** What to start with, and what helps: the same pull as in words. Where nothing is left to do, that. */
function adviceOf({ start, worst }: BalanceViewInput, pulls: ReturnType<typeof numbered>): string {
  const first = pulls.find(({ number }) => number === start?.number);
  if (!start || !first) return 'Nothing is left to do about any of these pulls.';
  const share = Math.round((100 * first.worst) / worst);
  return `Start with ${start.number}: ${first.what} gives ${share}\u00a0% of it. What helps: ${start.cure}.`;
}

/** Draws the unbalance. At least one pull. */
export function balanceView(input: BalanceViewInput): Drawing {
  const ranked = numbered(input.pulls);
  const advice = adviceOf(input, ranked);
  const shapes: Shape[] = [];
  let y = 0;
  const add = (block: { readonly shapes: readonly Shape[]; readonly y: number }, after = 0): void => {
    shapes.push(...block.shapes);
    y = block.y - after * letter;
  };
  add(paragraph('What pulls the joint to one side', y, { size: 1.2 * letter, bold: true }), 0.5);
  add(paragraph(marginText(input), y, { bold: true, feature: input.feature }), 0.3);
  add(paragraph(advice, y, { size: smallLetter }), 0.8);
  add(balancePlot(input, y), 0);
  add(legend(input, y), 0.3);
  shapes.push(stroke('thin', { x: 0, y }, { x: columnWidth, y }));
  y -= 0.7 * letter;
  for (const pull of ranked.slice(0, mostListed)) add(listLine(pull, pull.number === input.start?.number, y));
  const rest = ranked.slice(mostListed);
  if (rest.length > 0) {
    const sum = rest.reduce((total, pull) => total + toldOf(pull), 0);
    add(paragraph(`and ${rest.length} smaller, together ${grams(sum)}`, y, { size: smallLetter, x: 2.2 * letter }));
  }
  const each = ranked.map((pull) => `${pull.what} ${grams(toldOf(pull))}`).join(', ');
  return frame(
    {
      id: input.id,
      title: 'what pulls the joint to one side',
      description:
        `Unbalance seen from the driven side, angles counter-clockwise from the index mark. ${marginText(input)} Likely ${grams(input.likely)}. ${advice} Greatest first: ${each}. ${input.corrections.map(({ words }) => words).join(' ')}`.trim(),
    },
    shapes,
    2.5,
  );
}
