/** The gap of a sensor as a line from its face: what it bears, and where the teeth stand cold, set and hot. mm */
import type { Fill, Shape } from '../model/drawing.ts';
import type { Verdict } from '../model/finding.ts';
import { bar, columnWidth, label, letter, stroke } from './column.ts';

/** Where the gap comes to lie at one temperature, mm; `likely` is how far it likely moves either way. */
export interface GapState {
  readonly name: string;
  readonly nearest: number;
  readonly middle: number;
  readonly farthest: number;
  readonly likely: number;
}

/** What the line is drawn from. */
export interface GapLineInput {
  readonly states: readonly GapState[];
  /** What the sensor bears, mm; null where nobody knows. */
  readonly least: number | null;
  readonly most: number | null;
  readonly verdict: Verdict;
  readonly feature: string;
}

/** A line and its scale. */
interface GapLine {
  readonly input: GapLineInput;
  readonly mm: number;
}

/** Drawn millimetres for one millimetre of gap on the line below. */
export function gapLineScale({ states, most }: Pick<GapLineInput, 'states' | 'most'>): number {
  const farthest = Math.max(...states.map((state) => state.farthest));
  const reach = Math.max(1.15 * farthest, most !== null && most < 3 * farthest ? 1.05 * most : 0);
  return columnWidth / reach;
}

const barHigh = 1.25 * letter;

/** One temperature: from the high to the low spot at worst, and likely. */
function stateShapes({ input, mm }: GapLine, state: GapState, top: number): { shapes: Shape[]; y: number } {
  const { name, nearest, middle, farthest, likely } = state;
  const { verdict, feature, least, most } = input;
  const fill: Fill = verdict === 'fail' ? 'bad' : verdict === 'pass' ? 'screw' : 'doubtful';
  const barTop = top - 1.7 * letter;
  const limits = [least, most].filter((limit) => limit !== null && mm * limit < columnWidth) as number[];
  const said = `${nearest.toFixed(3)} to ${farthest.toFixed(3)} mm`;
  return {
    shapes: [
      label({ x: 0, y: top - letter }, name),
      label({ x: columnWidth, y: top - letter }, said, { align: 'end', bold: true, feature }),
      stroke('dimension', { x: 0, y: barTop - barHigh / 2 }, { x: columnWidth, y: barTop - barHigh / 2 }),
      bar(mm * Math.max(0, nearest), mm * farthest, barTop, barHigh, { pen: 'thin', fill, feature }),
      bar(mm * Math.max(0, middle - likely), mm * (middle + likely), barTop - 0.3 * barHigh, 0.4 * barHigh, {
        pen: 'thin',
        fill: 'ink',
        feature,
      }),
      ...limits.map((limit) =>
        stroke('mark', { x: mm * limit, y: barTop + 0.3 }, { x: mm * limit, y: barTop - barHigh - 0.3 }),
      ),
    ],
    y: barTop - barHigh - 0.95 * letter,
  };
}

/** What the sensor bears, on the same line. */
function borne({ input, mm }: GapLine, top: number): { shapes: Shape[]; y: number } {
  const { least, most } = input;
  if (least === null && most === null) return { shapes: [], y: top };
  const from = mm * (least ?? 0);
  const to = Math.min(columnWidth, most === null ? columnWidth : mm * most);
  const ends = `${least === null ? 'any' : least.toFixed(2)} to ${most === null ? 'not known' : `${most.toFixed(2)} mm`}`;
  const barTop = top - 1.7 * letter;
  return {
    shapes: [
      label({ x: 0, y: top - letter }, 'the sensor bears'),
      label({ x: columnWidth, y: top - letter }, ends, { align: 'end' }),
      bar(from, to, barTop, 0.7 * barHigh, { pen: 'thin', fill: 'good' }),
    ],
    y: barTop - barHigh - 0.95 * letter,
  };
}

/** Every line, the first one's upper edge at `top`. */
export function gapLines(input: GapLineInput, top: number): { shapes: Shape[]; y: number } {
  const line: GapLine = { input, mm: gapLineScale(input) };
  const first = borne(line, top);
  const shapes = [...first.shapes];
  let { y } = first;
  for (const state of input.states) {
    const one = stateShapes(line, state, y);
    shapes.push(...one.shapes);
    y = one.y;
  }
  return { shapes, y };
}
