/** The plot of the unbalance: where its sum may lie against what is allowed, and the arrows that are known. */
import type { Point, Shape } from '../model/drawing.ts';
import { cos, sin } from '../units/trig.ts';
import { type BalanceViewInput, numbered, verdictFill } from './balance-input.ts';
import { columnWidth, label, letter, smallLetter, stroke } from './column.ts';
import { arrowHead, centreCross } from './dimension.ts';

/** Greatest drawn radius of the allowed circle or of the worst case: alone on the sheet, and beside the larger arrows. */
const alone = 32;
const beside = 24;
const largerRadius = 13;
/** Arrows that would be drawn shorter than this are drawn larger beside, mm. */
const shortest = 9;

const polar = (centre: Point, r: number, degrees: number): Point => ({
  x: centre.x + r * cos((degrees * Math.PI) / 180),
  y: centre.y + r * sin((degrees * Math.PI) / 180),
});

/** Drawn millimetres for one g.mm: of the whole, and of the larger arrows beside it (null: none are needed). */
export function balanceScale({
  worst,
  limit,
  pulls,
  known: sum,
}: Pick<BalanceViewInput, 'worst' | 'limit' | 'pulls' | 'known'>): {
  readonly whole: number;
  readonly larger: number | null;
} {
  const known = pulls.filter(({ angle }) => angle !== null);
  const longest = Math.max(sum.size, ...known.map(({ size }) => size));
  const reach = Math.max(worst, limit ?? 0);
  const isShort = longest > 0 && (longest * alone) / reach < shortest;
  return { whole: (isShort ? beside : alone) / reach, larger: isShort ? largerRadius / longest : null };
}

/** An arrow from a point, to its tip. */
function arrowShapes(from: Point, r: number, degrees: number, isSum: boolean, feature: string | null): Shape[] {
  const tip = polar(from, r, degrees);
  const named = feature === null ? {} : { feature };
  const head = arrowHead(tip, degrees, Math.min(letter, 0.6 * r));
  return [
    { kind: 'line', pen: isSum ? 'mark' : 'outline', from, to: tip, ...named },
    { ...head, pen: isSum ? 'mark' : 'outline', ...named } as Shape,
  ];
}

/** Known arrows from one centre, each with its number at its tip, and their sum. */
function star(input: BalanceViewInput, centre: Point, mm: number): Shape[] {
  const known = numbered(input.pulls).flatMap((pull) => (pull.angle === null ? [] : [{ ...pull, at: pull.angle }]));
  const sum = mm * input.known.size;
  return [
    ...known.flatMap(({ size, at, feature }) => arrowShapes(centre, mm * size, at, false, feature)),
    ...(sum > 0.3 ? arrowShapes(centre, sum, input.known.angle, true, input.feature) : []),
    ...known.map(({ size, at, number }): Shape => {
      const place = polar(centre, mm * size + 0.95 * letter, at);
      return label({ x: place.x, y: place.y - 0.4 * letter }, String(number), {
        align: 'middle',
        bold: true,
        size: smallLetter,
      });
    }),
  ];
}

/** The ring outside of the plot: degrees, and what can be found on the parts. */
function compass({ marks, corrections }: BalanceViewInput, centre: Point, r: number): Shape[] {
  const ring = r + 1.6;
  const ticks = Array.from({ length: 12 }, (_, i) => 30 * i);
  const named = [0, 90, 180, 270].map((at) => {
    const place = polar(centre, ring + 1.3 + 0.4 * letter, at);
    const align = at === 0 ? 'start' : at === 180 ? 'end' : 'middle';
    const shift = at === 90 ? 0 : at === 270 ? -letter : -0.4 * letter;
    return label({ x: place.x, y: place.y + shift }, `${at}\u00b0`, { align, size: smallLetter });
  });
  return [
    { kind: 'circle', pen: 'thin', fill: 'none', centre, r: ring },
    ...ticks.map((at) => stroke('thin', polar(centre, ring, at), polar(centre, ring + 1, at))),
    ...named,
    ...marks.map(
      ({ at }): Shape => ({ kind: 'circle', pen: 'thin', fill: 'ink', centre: polar(centre, ring, at), r: 0.9 }),
    ),
    ...corrections.flatMap(({ at, feature }): Shape[] => [
      { kind: 'circle', pen: 'outline', fill: 'doubtful', centre: polar(centre, ring, at), r: 1.7, feature },
      stroke('thin', polar(centre, ring - 1.7, at), polar(centre, ring + 1.7, at)),
    ]),
  ];
}

/** What is left between the farthest that the sum may lie and the allowed circle, or how far it lies beyond. */
function marginArrow(centre: Point, from: number, to: number, degrees: number): Shape[] {
  const [a, b] = [polar(centre, from, degrees), polar(centre, to, degrees)];
  const out = to > from ? 0 : 180;
  const heads =
    Math.abs(to - from) > 3.5
      ? [arrowHead(a, degrees + 180 + out, 0.7 * letter), arrowHead(b, degrees + out, 0.7 * letter)]
      : [];
  return [stroke('dimension', a, b), ...heads];
}

/** Where the sum may lie, against what is allowed. */
function whole(input: BalanceViewInput, centre: Point, mm: number, r: number, hasStar: boolean): Shape[] {
  const { known, loose, limit, verdict, feature, worst } = input;
  const tip = polar(centre, mm * known.size, known.angle);
  const margin = limit === null ? [] : marginArrow(centre, mm * worst, mm * limit, known.angle);
  return [
    { kind: 'circle', pen: 'thin', fill: verdictFill[verdict], centre: tip, r: mm * loose.worst, feature },
    { kind: 'circle', pen: 'hidden', fill: 'none', centre: tip, r: mm * loose.likely, feature },
    ...(limit === null
      ? []
      : [{ kind: 'circle', pen: 'mark', fill: 'none', centre, r: mm * limit, feature } satisfies Shape]),
    ...centreCross(centre, r + 0.8),
    ...margin,
    ...(hasStar
      ? star(input, centre, mm)
      : arrowShapes(centre, mm * known.size, known.angle, true, feature).slice(0, 1)),
  ];
}

/** The plot, its upper edge at `top`. */
export function balancePlot(input: BalanceViewInput, top: number): { shapes: Shape[]; y: number } {
  const { whole: mm, larger } = balanceScale(input);
  const r = larger === null ? alone : beside;
  const room = r + 1.6 + 2.4 * letter;
  const centre = { x: larger === null ? columnWidth / 2 : room + letter, y: top - room };
  const hasStar = larger === null && input.pulls.some(({ angle }) => angle !== null);
  const shapes = [...compass(input, centre, r), ...whole(input, centre, mm, r, hasStar)];
  if (larger !== null) {
    const other = { x: columnWidth - largerRadius - 2 * letter, y: centre.y };
    const times = larger / mm;
    const said = ['known arrows,', `${times < 10 ? times.toFixed(1) : Math.round(times)} times larger`];
    shapes.push(
      ...centreCross(other, largerRadius + 1),
      ...star(input, other, larger),
      ...said.map((line, i) =>
        label({ x: other.x, y: other.y - largerRadius - (3.4 + 1.6 * i) * letter }, line, {
          align: 'middle',
          size: smallLetter,
        }),
      ),
    );
  }
  return { shapes, y: centre.y - room - 0.6 * letter };
}
