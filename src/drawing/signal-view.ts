/**
 * What the sensor sees, on one sheet: the gap over one turn, a few teeth near to with what the controller times, and how far each
 * tooth's time is off. The sheet is 200 mm wide; the axes carry their own units.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import { withinTurn } from '../units/turn.ts';
import { shortLines } from './captions.ts';
import { frame } from './frame.ts';
import { niceAbove, type Panel, panel, panelFrame, plotted } from './plot-panel.ts';

/** A point of a curve: degrees of turn, and a value. */
export interface CurvePoint {
  readonly degrees: number;
  readonly value: number;
}

export interface SignalViewInput {
  readonly id: string;
  readonly wheel: string;
  readonly sensor: string;
  /** Whether bars between windows are counted, not teeth; left out for teeth. */
  readonly isBars?: boolean;
  /** What marks a position where it is no gap: "wide tooth"; left out: missing teeth. */
  readonly mark?: string;
  readonly isCoil: boolean;
  /** Speed that the times and the voltage are drawn for, rpm. */
  readonly rpm: number;
  /** Gap under the sensor down to the steel over one turn, mm. */
  readonly gap: readonly CurvePoint[];
  /** The few teeth near to: what the sensor reads, relative, and when the output is on. */
  readonly near: {
    readonly from: number;
    readonly to: number;
    readonly signal: readonly CurvePoint[];
    readonly on: readonly { readonly from: number; readonly to: number }[];
    readonly periods: readonly { readonly from: number; readonly to: number; readonly error: number | null }[];
  };
  /** Every tooth's error of its time, as a share, at the turn where it starts; null at the mark of a position. */
  readonly errors: readonly { readonly degrees: number; readonly period: number; readonly error: number | null }[];
  /** Sentences to stand below. */
  readonly words: readonly string[];
}

const oneOf = ({ isBars }: SignalViewInput): string => (isBars ? 'bar' : 'tooth');
const manyOf = ({ isBars }: SignalViewInput): string => (isBars ? 'bars' : 'teeth');

const size = 2.5;
const wide = 168;
const left = 26;
const turnMarks = [0, 60, 120, 180, 240, 300, 360];

const text = (at: Point, words: string, more: Partial<Extract<Shape, { kind: 'text' }>> = {}): Shape => ({
  kind: 'text',
  at,
  text: words,
  size,
  align: 'middle',
  angle: 0,
  ...more,
});

const percent = (share: number, decimals = 2): string => {
  const shown = (100 * share).toFixed(decimals);
  return `${Number(shown) > 0 ? '+' : ''}${Number(shown) === 0 ? shown.replace('-', '') : shown} %`;
};

/** Time of a turn of some degrees, with a unit that keeps it readable. */
export function timeText(degrees: number, rpm: number): string {
  const ms = (degrees / 6 / rpm) * 1000;
  return ms < 1 ? `${(1000 * ms).toPrecision(3)} \u00b5s` : `${Number(ms.toPrecision(3))} ms`;
}

/** Least and greatest value of a curve. A fine curve has more points than a call takes arguments. */
function reachOf(curve: readonly CurvePoint[]): { readonly least: number; readonly most: number } {
  let [least, most] = [Infinity, -Infinity];
  for (const { value } of curve) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return { least, most };
}

function gapPanel({ gap }: SignalViewInput, top: number): Shape[] {
  const { most } = reachOf(gap);
  const view = panel({ left, top, wide, high: 34, from: 0, to: 360, low: 0, most: Math.ceil(most * 1.02) });
  return [
    text({ x: left, y: top + 1.2 * size }, 'Air gap under the sensor over one turn', { align: 'start', bold: true }),
    ...panelFrame(view, turnMarks, (degrees) => `${degrees}\u00b0`, 'mm', size),
    plotted(view, gap, 'thin'),
  ];
}

/** An arrow-ended bar from edge to edge, with its time and its error. */
function periodBar(
  view: Panel,
  bar: SignalViewInput['near']['periods'][number],
  y: number,
  rpm: number,
  overGap: string,
): Shape[] {
  const a = view.at(bar.from, 0).x;
  const b = view.at(bar.to, 0).x;
  const tick = (x: number): Shape => ({
    kind: 'line',
    pen: 'dimension',
    from: { x, y: y + 1 },
    to: { x, y: view.floor },
  });
  const said = bar.error === null ? overGap : percent(bar.error);
  const fits = b - a > 15;
  return [
    tick(a),
    tick(b),
    { kind: 'line', pen: 'dimension', from: { x: a, y }, to: { x: b, y } },
    ...(fits
      ? [
          text({ x: (a + b) / 2, y: y + 0.4 * size }, timeText(bar.to - bar.from, rpm), {
            size: 0.85 * size,
            bold: true,
          }),
          text({ x: (a + b) / 2, y: y - 1.3 * size }, said, { size: 0.85 * size }),
        ]
      : []),
  ];
}

function nearPanel(input: SignalViewInput, top: number): Shape[] {
  const { near, isCoil, rpm } = input;
  const range = reachOf(near.signal);
  const reach = Math.max(1e-9, Math.abs(range.least), Math.abs(range.most));
  const low = isCoil ? -1.15 * reach : range.least - 0.08 * reach;
  const most = isCoil ? 1.15 * reach : 1.08 * range.most;
  const curve = panel({ left, top, wide, high: 34, from: near.from, to: near.to, low, most });
  const out = panel({ left, top: top - 38, wide, high: 9, from: near.from, to: near.to, low: -0.15, most: 1.15 });
  const step = niceAbove((near.to - near.from) / 8);
  const marks: number[] = [];
  for (let m = Math.ceil(near.from / step) * step; m <= near.to + 1e-9; m += step) marks.push(Number(m.toFixed(6)));
  const square = near.on.flatMap(({ from, to }) => [
    { degrees: from, value: 0 },
    { degrees: from, value: 1 },
    { degrees: to, value: 1 },
    { degrees: to, value: 0 },
  ]);
  const line = [{ degrees: near.from, value: 0 }, ...square, { degrees: near.to, value: 0 }];
  const zero: Shape[] = isCoil
    ? [{ kind: 'line', pen: 'centre', from: curve.at(near.from, 0), to: curve.at(near.to, 0) }]
    : [];
  return [
    text(
      { x: left, y: top + 1.2 * size },
      `A few ${manyOf(input)}: ${isCoil ? 'voltage of the coil' : 'field at the sensor'}`,
      {
        align: 'start',
        bold: true,
      },
    ),
    ...panelFrame(curve, marks, (m) => `${Number(withinTurn(m).toFixed(3))}\u00b0`, 'relative', size, false),
    ...zero,
    plotted(curve, near.signal, 'outline'),
    text({ x: left - 1.6, y: out.floor + 3.4 }, 'output', { align: 'end', size: 0.85 * size }),
    plotted(out, clippedLine(line, near.from, near.to), 'outline'),
    ...near.periods.flatMap((bar) =>
      periodBar(out, bar, out.floor - 5.5, rpm, input.mark ?? `${manyOf(input)} missing`),
    ),
  ];
}

/** A square wave cut at both ends of its window. */
function clippedLine(line: readonly CurvePoint[], from: number, to: number): CurvePoint[] {
  return line.map(({ degrees, value }) => ({ degrees: Math.min(to, Math.max(from, degrees)), value }));
}

function errorPanel(input: SignalViewInput, top: number): Shape[] {
  const { errors } = input;
  const greatest = Math.max(1e-4, ...errors.map(({ error }) => Math.abs(error ?? 0)));
  const reach = niceAbove(100 * greatest);
  const view = panel({ left, top, wide, high: 30, from: 0, to: 360, low: -reach, most: reach });
  const bars = errors.flatMap(({ degrees, period, error }, i): Shape[] => {
    const from = degrees;
    const to = Math.min(360, degrees + 0.8 * period);
    if (error === null) {
      // Two periods of one mark are named once.
      if (i > 0 && errors[i - 1]?.error === null) return [];
      const middle = view.at(Math.min(352, Math.max(8, (degrees + period / 2) % 360)), 0);
      return [
        text({ x: middle.x, y: middle.y + 0.4 * size }, input.mark === undefined ? 'gap' : 'mark', {
          size: 0.85 * size,
        }),
      ];
    }
    const a = view.at(from, 0);
    const b = view.at(to, 100 * error);
    const corners = [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }].map(({ x, y }) => ({ x, y, bulge: 0 }));
    return [{ kind: 'path', pen: 'thin', fill: 'adapter', closed: true, loops: [corners] }];
  });
  return [
    text(
      { x: left, y: top + 1.2 * size },
      `Error of each ${oneOf(input)}'s time, which a speed taken ${oneOf(input)} by ${oneOf(input)} shows`,
      {
        align: 'start',
        bold: true,
      },
    ),
    ...panelFrame(view, turnMarks, (degrees) => `${degrees}\u00b0`, '%', size),
    ...bars,
    { kind: 'line', pen: 'thin', from: view.at(0, 0), to: view.at(360, 0) },
  ];
}

/** Draws the sheet. */
export function signalView(input: SignalViewInput): Drawing {
  const { id, wheel, sensor, rpm, words } = input;
  const said = words.flatMap((sentence) => shortLines(sentence, 92));
  const shapes: Shape[] = [
    text({ x: left, y: 6 }, `What the sensor will see: ${sensor}, ${Number(rpm.toFixed(2))} rpm`, {
      align: 'start',
      bold: true,
      size: 1.25 * size,
    }),
    ...gapPanel(input, -4),
    ...nearPanel(input, -54),
    ...errorPanel(input, -121),
    text({ x: left + wide / 2, y: -161.5 }, `turn of the shaft; ${oneOf(input)} 1 at the sensor at 0\u00b0`, {
      size: 0.9 * size,
    }),
    ...said.map((line, i) => text({ x: left, y: -168 - 1.75 * size * i }, line, { align: 'start' })),
  ];
  return frame(
    {
      id,
      title: `${wheel}: what the sensor will see`,
      description: `Gap over one turn, signal and output over a few ${manyOf(input)}, and the error of each ${oneOf(input)}'s time, for a ${sensor} at ${Number(rpm.toFixed(2))} rpm. ${words.join(' ')}`,
    },
    shapes,
    4,
  );
}
