/** Speed against frequency: lines of what shakes, levels of what answers, and where they meet. Read like a map before a run-up. */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import { type Caption, drawCaptions, obstaclesOver, shortLines } from './captions.ts';
import { frame } from './frame.ts';
import { textWidth } from './text-size.ts';

/** Something that shakes `perTurn` times a turn of the shaft. */
export interface OrderLine {
  readonly name: string;
  readonly perTurn: number;
}

/** Something that answers at a frequency, Hz. */
export interface AnsweringLevel {
  readonly name: string;
  readonly frequency: number;
}

export interface OrderChartInput {
  readonly id: string;
  readonly orders: readonly OrderLine[];
  /** The first is the one that counts: the chart reaches a little beyond it. */
  readonly levels: readonly AnsweringLevel[];
  /** Speeds to be marked, rpm. */
  readonly speeds: readonly { readonly name: string; readonly rpm: number }[];
  /** Stretches of speed to keep out of; without an end where `to` is null. rpm */
  readonly bands: readonly { readonly name: string; readonly from: number; readonly to: number | null }[];
}

/** Plot and letters, mm. */
const wide = 170;
const high = 112;
const size = 3;

interface Scale {
  readonly rpm: number;
  readonly hertz: number;
  readonly x: (rpm: number) => number;
  readonly y: (hertz: number) => number;
}

/** 1, 2 or 5 times a power of ten, so that about `parts` of them make `whole`. */
function step(whole: number, parts: number): number {
  const rough = whole / parts;
  const power = 10 ** Math.floor(Math.log10(rough));
  const lead = rough / power;
  return (lead > 5 ? 10 : lead > 2 ? 5 : lead > 1 ? 2 : 1) * power;
}

/** As far as the first level reaches, and as the fastest mark goes, with room beyond. */
function scaleOf({ levels, speeds, bands }: OrderChartInput): Scale {
  const lowest = levels[0]?.frequency ?? 1;
  const fastest = Math.max(...speeds.map(({ rpm }) => rpm), ...bands.map(({ from, to }) => to ?? from));
  const rpmStep = step(1.15 * fastest, 6);
  const hertzStep = step(1.25 * lowest, 5);
  const rpm = Math.ceil((1.1 * fastest) / rpmStep) * rpmStep;
  const hertz = Math.ceil((1.2 * lowest) / hertzStep) * hertzStep;
  return { rpm, hertz, x: (value) => (wide * value) / rpm, y: (value) => (high * value) / hertz };
}

const line = (pen: 'outline' | 'thin' | 'hidden' | 'centre' | 'mark', from: Point, to: Point): Shape => ({
  kind: 'line',
  pen,
  from,
  to,
});

const text = (at: Point, words: string, align: 'start' | 'middle' | 'end', bold = false): Shape => ({
  kind: 'text',
  at,
  text: words,
  size: bold ? size : 0.9 * size,
  align,
  angle: 0,
  bold,
});

function axes({ rpm, hertz, x, y }: Scale): Shape[] {
  const ticks = (whole: number, by: number) =>
    Array.from({ length: Math.round(whole / by) + 1 }, (_, i) => Number((i * by).toPrecision(6)));
  const corner = { x: 0, y: 0 };
  return [
    ...ticks(rpm, step(rpm, 6)).flatMap((value) => [
      line('thin', { x: x(value), y: 0 }, { x: x(value), y: -1.2 }),
      text({ x: x(value), y: -2.2 * size }, String(value), 'middle'),
    ]),
    ...ticks(hertz, step(hertz, 5)).flatMap((value) => [
      line('thin', { x: 0, y: y(value) }, { x: -1.2, y: y(value) }),
      text({ x: -2.4, y: y(value) - 0.4 * size }, String(value), 'end'),
    ]),
    line('thin', corner, { x: wide, y: 0 }),
    line('thin', corner, { x: 0, y: high }),
    line('thin', { x: wide, y: 0 }, { x: wide, y: high }),
    line('thin', { x: 0, y: high }, { x: wide, y: high }),
    text({ x: wide / 2, y: -4.6 * size }, 'speed of the shaft, rpm', 'middle', true),
    {
      kind: 'text',
      at: { x: -5.2 * size, y: high / 2 },
      text: 'frequency, Hz',
      size,
      align: 'middle',
      angle: 90,
      bold: true,
    },
  ];
}

/** Where an order leaves the plot. */
function leaves({ perTurn }: OrderLine, { rpm, hertz, x, y }: Scale): Point {
  const far = (perTurn * rpm) / 60;
  return far <= hertz ? { x: wide, y: y(far) } : { x: x((60 * hertz) / perTurn), y: high };
}

const shares = Array.from({ length: 15 }, (_, i) => 0.96 - 0.05 * i);
const whole = (rpm: number): string => `${Math.round(rpm)} rpm`;

/** Speed at which an order meets the first level, in words; where that is off the chart, nothing. */
function meetingWords(order: OrderLine, { levels }: OrderChartInput, scale: Scale): string[] {
  const [first] = levels;
  if (!first) return [];
  const at = (60 * first.frequency) / order.perTurn;
  return at > scale.rpm ? [] : [`meets the ${first.name} at ${whole(at)}`];
}

function captionsOf(input: OrderChartInput, scale: Scale): Caption[] {
  const { orders, levels, bands } = input;
  const { x, y, hertz } = scale;
  return [
    ...orders.map((order): Caption => {
      const end = leaves(order, scale);
      return {
        lines: [...shortLines(order.name, 34), ...meetingWords(order, input, scale)],
        anchors: shares.map((share) => ({ x: share * end.x, y: share * end.y })),
      };
    }),
    ...levels
      .filter(({ frequency }) => frequency <= hertz)
      .map(
        ({ name, frequency }): Caption => ({
          lines: [...shortLines(name, 34), `${frequency.toFixed(1)} Hz, once a turn at ${whole(60 * frequency)}`],
          anchors: shares.slice(0, 8).map((share) => ({ x: share * wide, y: y(frequency) })),
        }),
      ),
    ...bands.map(({ name, from, to }): Caption => {
      const [start, end] = [x(from), to === null ? wide : Math.min(wide, x(to))];
      return {
        lines: [...shortLines(name, 34), to === null ? `over ${whole(from)}` : `${Math.round(from)} to ${whole(to)}`],
        anchors: [0.9, 0.7, 0.5, 0.3, 0.1].map((share) => ({ x: start + share * (end - start), y: 0 })),
      };
    }),
  ];
}

/** Marked speeds: the slowest stands highest, so that no line runs through another's words. */
function markedSpeeds({ speeds }: OrderChartInput, { x }: Scale): Shape[] {
  const sorted = [...speeds].sort((a, b) => a.rpm - b.rpm);
  return sorted.flatMap(({ name, rpm }, i) => {
    const top = high + size + 1.8 * size * (sorted.length - 1 - i);
    const words = `${name} ${whole(rpm)}`;
    return [
      line('centre', { x: x(rpm), y: 0 }, { x: x(rpm), y: top + size }),
      text({ x: x(rpm) + 0.4 * size, y: top }, words, 'start', true),
    ];
  });
}

/** Draws the chart. At least one level and one speed or band: without them there is nothing to hold the orders against. */
export function orderChart(input: OrderChartInput): Drawing {
  const scale = scaleOf(input);
  const { x, y, hertz, rpm } = scale;
  const levels = input.levels.filter(({ frequency }) => frequency <= hertz);
  const meetings = input.orders.flatMap(({ perTurn }) =>
    levels
      .map(({ frequency }) => ({ x: x((60 * frequency) / perTurn), y: y(frequency) }))
      .filter((at) => at.x <= wide + 1e-9),
  );
  const last = Math.max(
    ...input.speeds.map(({ name, rpm: at }) => x(at) + textWidth(`${name} ${whole(at)}`, size, true)),
    0,
  );
  const words = input.orders.map(
    (order) =>
      `${order.name}${meetingWords(order, input, scale)
        .map((at) => ` ${at}`)
        .join('')}`,
  );
  return frame(
    {
      id: input.id,
      title: 'order chart',
      description: `Frequency against speed of the shaft, up to ${rpm} rpm and ${hertz} Hz. ${words.join('. ')}. Levels: ${levels.map(({ name, frequency }) => `${name} ${frequency.toFixed(1)} Hz`).join(', ')}.`,
    },
    [
      ...axes(scale),
      ...input.bands.map(({ from, to }) =>
        line('mark', { x: x(from), y: 0 }, { x: to === null ? wide : Math.min(wide, x(to)), y: 0 }),
      ),
      ...levels.map(({ frequency }) => line('hidden', { x: 0, y: y(frequency) }, { x: wide, y: y(frequency) })),
      ...input.orders.map((order) => line('outline', { x: 0, y: 0 }, leaves(order, scale))),
      ...markedSpeeds(input, scale),
      ...meetings.map((centre): Shape => ({ kind: 'circle', pen: 'outline', fill: 'screw', centre, r: 0.5 * size })),
      ...drawCaptions(captionsOf(input, scale), {
        x: Math.max(wide + 6 * size, last > wide + 4 * size ? wide + 6 * size : 0),
        side: 'right',
        yMin: 0,
        yMax: high,
        size,
        obstacles: meetings.flatMap((at) =>
          obstaclesOver({ xMin: at.x - size / 2, xMax: at.x + size / 2, yMin: at.y - size / 2, yMax: at.y + size / 2 }),
        ),
      }),
    ],
    size,
  );
}
