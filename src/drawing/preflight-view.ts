/** A drawing file as it was read, with a numbered mark at every place that the pre-flight blames. */
import type { Drawing, Fill, Shape } from '../model/drawing.ts';
import type { Verdict } from '../model/finding.ts';
import type { DrawnCuts, PlacedFinding } from '../model/preflight.ts';
import { cos, sin } from '../units/trig.ts';
import { frame } from './frame.ts';

/** A mark on the picture: its number, and the finding that it stands for. */
export interface FaultMark {
  readonly number: number;
  readonly finding: PlacedFinding;
}

/** Places of one finding that are marked; the rest is counted in the words. */
const mostPlaces = 12;

const tints: Readonly<Partial<Record<Verdict, Fill>>> = { fail: 'bad', caution: 'doubtful' };

/** Findings that get a mark, in the order given: those that ask for something and have a place. */
export function faultMarks(findings: readonly PlacedFinding[]): FaultMark[] {
  return findings
    .filter(
      ({ verdict, places }) => tints[verdict] !== undefined && places.some(({ x, y }) => x !== null && y !== null),
    )
    .map((finding, i) => ({ number: i + 1, finding }));
}

/**
 * The picture. Closed cuts are tinted by the even-odd rule, so that holes stay open; loose lines are drawn thick.
 * @param findings worst first: that is the order of the numbers
 */
export function preflightView(file: string, cuts: DrawnCuts, findings: readonly PlacedFinding[]): Drawing {
  const xs = cuts.runs.flatMap(({ corners }) => corners.map(({ x }) => x));
  const ys = cuts.runs.flatMap(({ corners }) => corners.map(({ y }) => y));
  const range = (list: readonly number[]) =>
    list.reduce((a, b) => Math.max(a, b), 0) - list.reduce((a, b) => Math.min(a, b), 0);
  const wide = Math.max(range(xs), range(ys), 1e-3);
  const size = wide / 42;
  const closed = cuts.runs
    .filter(({ isClosed, corners }) => isClosed && corners.length > 1)
    .map(({ corners }) => corners);
  const loose = cuts.runs.filter(({ isClosed, corners }) => !isClosed && corners.length > 1);
  const marks = faultMarks(findings);
  const shapes: Shape[] = [
    ...(closed.length > 0
      ? [{ kind: 'path', pen: 'cut', fill: 'screw', closed: true, loops: closed } satisfies Shape]
      : []),
    ...loose.map(
      ({ corners }): Shape => ({ kind: 'path', pen: 'mark', fill: 'none', closed: false, loops: [corners] }),
    ),
    ...marks.flatMap((mark) => markShapes(mark, cuts.unit, size)),
  ];
  const count = marks.length === 1 ? 'one finding is marked' : `${marks.length} findings are marked`;
  return frame(
    {
      id: 'preflight',
      title: `${file}, as it was read`,
      description: `${closed.length} closed contours, ${loose.length} open runs of lines; ${count}.`,
    },
    shapes.length > 0 ? shapes : [{ kind: 'circle', pen: 'thin', fill: 'none', centre: { x: 0, y: 0 }, r: 1 }],
    2.5 * size,
  );
}

/** A ring round the place, and the number in a disc beside it; several findings at one place stand side by side. */
function markShapes({ number, finding }: FaultMark, unit: number, size: number): Shape[] {
  const { verdict, places, code } = finding;
  const seen: { x: number; y: number }[] = [];
  for (const { x, y } of places) {
    if (x === null || y === null || seen.length >= mostPlaces) continue;
    const at = { x: x * unit, y: y * unit };
    if (!seen.some((other) => Math.hypot(other.x - at.x, other.y - at.y) < size / 2)) seen.push(at);
  }
  // Each number leaves its place in a direction of its own.
  const turn = (Math.PI / 4) * (1 + (number % 8));
  const [dx, dy] = [cos(turn), sin(turn)];
  return seen.flatMap((at): Shape[] => {
    const disc = { x: at.x + 3.4 * size * dx, y: at.y + 3.4 * size * dy };
    return [
      { kind: 'circle', pen: 'dimension', fill: 'none', centre: at, r: 0.8 * size, feature: code },
      {
        kind: 'line',
        pen: 'dimension',
        from: { x: at.x + 0.8 * size * dx, y: at.y + 0.8 * size * dy },
        to: { x: disc.x - 1.2 * size * dx, y: disc.y - 1.2 * size * dy },
      },
      { kind: 'circle', pen: 'thin', fill: tints[verdict] ?? 'paper', centre: disc, r: 1.2 * size, feature: code },
      {
        kind: 'text',
        at: { x: disc.x, y: disc.y - size / 2 },
        text: String(number),
        size,
        align: 'middle',
        angle: 0,
        bold: true,
        feature: code,
      },
    ];
  });
}
