/** The foot of a chain's picture: the sum against its limit, and the margin between them. */
import type { Fill, Shape } from '../model/drawing.ts';
import type { Verdict } from '../model/finding.ts';
import { barHigh, limitAt, type Sheet } from './chain-sheet.ts';
import { bar, columnWidth, label, letter, stroke } from './column.ts';
import { arrowHead } from './dimension.ts';
import { textWidth } from './text-size.ts';

const verdictFill: Readonly<Record<Verdict, Fill>> = {
  pass: 'good',
  caution: 'doubtful',
  fail: 'bad',
  'not assessed': 'screw',
};

/** How much is left, or too much, as a measure between the sum and its limit. */
function marginShapes({ input, mm }: Sheet, limit: number, y: number): Shape[] {
  const { worst, sized } = input;
  const [a, b] = [mm * Math.min(worst, limit), mm * Math.max(worst, limit)];
  const said = worst <= limit ? `${sized(limit - worst)} to spare` : `${sized(worst - limit)} too much`;
  const wide = textWidth(said, letter, true);
  const middle = Math.min(columnWidth - wide / 2, Math.max(wide / 2, (a + b) / 2));
  const tick = (x: number): Shape => stroke('dimension', { x, y: y + 1.1 * letter }, { x, y: y - 0.5 * letter });
  const arrows = b - a > 2.6 * letter ? [arrowHead({ x: a, y }, 180, letter), arrowHead({ x: b, y }, 0, letter)] : [];
  return [
    tick(a),
    tick(b),
    stroke('dimension', { x: a, y }, { x: b, y }),
    ...arrows,
    label({ x: middle, y: y - 2 * letter }, said, { align: 'middle', bold: true, feature: input.feature }),
  ];
}

/** The sum against its limit. */
export function total(sheet: Sheet, top: number): { shapes: Shape[]; y: number } {
  const { input, mm, isLimitShown } = sheet;
  const { worst, likely, limit, sized, verdict, feature } = input;
  const atWorst = `at worst ${sized(worst)}`;
  const allowed = limit === null ? 'no limit is known' : `limit ${sized(limit)}`;
  const isWide = textWidth(atWorst, letter, true) + textWidth(allowed, letter, true) + letter > columnWidth;
  const barTop = top - (isWide ? 6.9 : 5.1) * letter;
  const under = barTop - barHigh - 1.7 * letter;
  const far: Shape[] =
    limit === null || isLimitShown
      ? []
      : [
          stroke(
            'dimension',
            { x: mm * worst - 8 * letter, y: barTop - barHigh - 1.1 * letter },
            { x: columnWidth, y: barTop - barHigh - 1.1 * letter },
          ),
          arrowHead({ x: columnWidth, y: barTop - barHigh - 1.1 * letter }, 0, letter),
          label(
            { x: columnWidth, y: barTop - barHigh - 3.1 * letter },
            `the limit lies ${(limit / worst).toFixed(1)} times as far`,
            { align: 'end', bold: true, feature },
          ),
        ];
  return {
    shapes: [
      stroke('thin', { x: 0, y: top }, { x: columnWidth, y: top }),
      label({ x: 0, y: top - 2.3 * letter }, atWorst, { bold: true, feature }),
      label({ x: 0, y: top - 4.1 * letter }, `likely ${sized(likely)}`, { feature }),
      label({ x: isWide ? 0 : columnWidth, y: top - (isWide ? 5.9 : 2.3) * letter }, allowed, {
        align: isWide ? 'start' : 'end',
        bold: true,
        feature,
      }),
      bar(0, mm * worst, barTop, barHigh, { pen: 'outline', fill: verdictFill[verdict], feature }),
      bar(0, mm * likely, barTop - 0.3 * barHigh, 0.4 * barHigh, { pen: 'thin', fill: 'ink', feature }),
      ...limitAt(sheet, barTop),
      ...far,
      ...(isLimitShown && limit !== null ? marginShapes(sheet, limit, under) : []),
    ],
    y: limit === null ? under : under - 2.9 * letter,
  };
}
