/** Distances between numbered holes, three or more from each, turned into places and then into a pattern. mm. */
import { cos, sin } from '../units/trig.ts';
import { type ChordOver, farthestSpan } from './chord.ts';
import { circleFromChords } from './chord-set.ts';
import type { Point } from './circle-fit.ts';
import { leastSquares, mixBound, sum } from './least-squares.ts';
import type { Measured } from './measured.ts';
import { type Pattern, recognisePattern } from './pattern.ts';
import { mm, tidy } from './words.ts';

export interface HoleDistance {
  /** Hole numbers, from 1, counted counter-clockwise looking at the flange's own face. */
  readonly from: number;
  readonly to: number;
  readonly over: ChordOver;
  readonly reading: Measured;
}

export type ChordNetwork =
  | {
      readonly ok: true;
      readonly pattern: Pattern;
      /** False when there were too few distances to settle the shape, and even spacing was taken. */
      readonly isSettled: boolean;
      /** Places of the holes about the pattern's centre. */
      readonly points: readonly Point[];
      /** For each distance between centres: which holes, and reading less fitted, mm. */
      readonly distances: readonly {
        readonly from: number;
        readonly to: number;
        readonly centres: number;
        readonly residual: number;
      }[];
    }
  | { readonly ok: false; readonly why: string };

interface Distance {
  readonly i: number;
  readonly j: number;
  readonly centres: number;
  readonly doubt: number;
}

/** Distances that settle the shape of n holes: 2 n - 3 (geometry: two coordinates a hole, less place and turn of the whole). */
export function distancesNeeded(holes: number): number {
  return 2 * holes - 3;
}

/**
 * The pattern of `holes` holes from the distances between them. The places are found by least squares from the even pattern that
 * fits best (Levenberg's damped steps, which also settle the free place and turn of the whole), and then recognised. Fewer
 * distances than settle the shape are held against an even pattern only. `hole` is the hole size for readings that are not
 * taken as outside and inside pairs.
 */
export function patternFromDistances(
  holes: number,
  given: readonly HoleDistance[],
  hole: Measured | null,
): ChordNetwork {
  const distances = distancesOf(holes, given, hole);
  if (!distances.ok) return distances;
  const spans = distances.value.map(({ i, j, centres, doubt }) => ({
    span: spanOf(i, j, holes),
    over: 'centres' as const,
    reading: { value: centres, doubt, basis: 'given' as const },
  }));
  const even = circleFromChords(holes, spans, null);
  const bare =
    [...new Set(distances.value.flatMap(({ i, j }) => [i, j]))].length < holes ||
    distances.value.length < distancesNeeded(holes);
  if (bare) {
    if (!even.ok) {
      return {
        ok: false,
        why: `${even.why} To tell where each hole stands, measure ${distancesNeeded(holes)} distances, three or more from each hole.`,
      };
    }
    const ring = settled(distances.value, evenRing(holes, even.circle.value), even.circle.doubt / 2 + 1e-6);
    return ring.ok ? { ...ring, isSettled: false, pattern: { ...ring.pattern, notes: [] } } : ring;
  }
  const start = evenRing(holes, even.ok ? even.circle.value : meanCircle(holes, distances.value));
  const places = solve(start, distances.value);
  const last = leastSquares(
    [...distances.value.map((d) => row(places, d)), ...ridge(2 * holes, 1e-5)],
    [...distances.value.map((d) => d.centres - apart(places, d)), ...new Array<number>(2 * holes).fill(0)],
  );
  if (last === null)
    return {
      ok: false,
      why: 'These distances do not settle where the holes stand: measure from each hole to three others.',
    };
  const doubts = [...distances.value.map(({ doubt }) => doubt), ...new Array<number>(2 * holes).fill(0)];
  const bounds = last.residualBounds(doubts);
  const odd = distances.value
    .map((d, index) => ({ d, off: d.centres - apart(places, d), bound: bounds[index] ?? 0 }))
    .filter(({ off, bound }) => Math.abs(off) > 1.5 * bound + 0.01)
    .sort((a, b) => Math.abs(b.off) - Math.abs(a.off))[0];
  if (odd !== undefined) {
    const { d, off } = odd;
    return {
      ok: false,
      why: `These distances cannot all be true: holes ${d.i + 1} and ${d.j + 1} read ${mm(d.centres)} between centres, ${mm(Math.abs(off), 2)} ${off > 0 ? 'more' : 'less'} than the others leave. Measure that one again.`,
    };
  }
  const unit = (column: number) => Object.assign(new Array<number>(2 * holes).fill(0), { [column]: 1 });
  const doubt = Math.max(
    ...start.flatMap((_, index) => [
      mixBound(last, unit(2 * index), doubts),
      mixBound(last, unit(2 * index + 1), doubts),
    ]),
  );
  return settled(distances.value, places, doubt);
}

function settled(distances: readonly Distance[], free: readonly Point[], doubt: number): ChordNetwork {
  const loose = recognisePattern(free, doubt);
  if (!loose.ok) return loose;
  // Distances tell no angles: the first hole is put on the x axis.
  const places = turnedBack(free, loose.value.centre, loose.value.angles[0] ?? 0);
  const pattern = recognisePattern(places, doubt);
  if (!pattern.ok) return pattern;
  return {
    ok: true,
    pattern: pattern.value,
    isSettled: true,
    points: places,
    distances: distances.map((d) => ({
      from: d.i + 1,
      to: d.j + 1,
      centres: tidy(d.centres, 6),
      residual: d.centres - apart(places, d),
    })),
  };
}

/** Places about `centre`, turned by minus `angle` degrees. */
function turnedBack(places: readonly Point[], centre: Point, angle: number): Point[] {
  const [c, s] = [cos((angle * Math.PI) / 180), sin((angle * Math.PI) / 180)];
  return places.map((p) => ({
    x: (p.x - centre.x) * c + (p.y - centre.y) * s,
    y: (p.y - centre.y) * c - (p.x - centre.x) * s,
  }));
}

/** Each pair of holes once: outside and inside averaged, else the hole size taken off or added. */
function distancesOf(
  holes: number,
  given: readonly HoleDistance[],
  hole: Measured | null,
): { ok: true; value: Distance[] } | { ok: false; why: string } {
  const pairs = new Map<string, HoleDistance[]>();
  for (const one of given) {
    for (const number of [one.from, one.to]) {
      if (!Number.isInteger(number) || number < 1 || number > holes)
        return { ok: false, why: `There is no hole ${number} among ${holes}: holes are numbered from 1.` };
    }
    if (one.from === one.to) return { ok: false, why: `A distance needs two holes; hole ${one.from} was named twice.` };
    const key = [one.from, one.to].sort((a, b) => a - b).join('-');
    pairs.set(key, [...(pairs.get(key) ?? []), one]);
  }
  const value: Distance[] = [];
  for (const [key, readings] of pairs) {
    const [from = 0, to = 0] = key.split('-').map(Number);
    // The same sums as for any chord: a pair of holes is a pattern of two.
    const joint = circleFromChords(
      2,
      readings.map(({ over, reading }) => ({ span: 1, over, reading })),
      hole,
    );
    if (!joint.ok) return { ok: false, why: `Holes ${from} and ${to}: ${joint.why}` };
    value.push({ i: from - 1, j: to - 1, centres: joint.circle.value, doubt: joint.circle.doubt });
  }
  return { ok: true, value };
}

function spanOf(i: number, j: number, holes: number): number {
  const steps = Math.abs(i - j);
  return Math.max(1, Math.min(steps, holes - steps, farthestSpan(holes)));
}

function evenRing(holes: number, circle: number): Point[] {
  return Array.from({ length: holes }, (_, index) => {
    const turn = (2 * Math.PI * index) / holes;
    return { x: (circle / 2) * cos(turn), y: (circle / 2) * sin(turn) };
  });
}

function meanCircle(holes: number, distances: readonly Distance[]): number {
  return (
    sum(distances.map(({ i, j, centres }) => centres / sin((spanOf(i, j, holes) * Math.PI) / holes))) / distances.length
  );
}

function apart(places: readonly Point[], { i, j }: Distance): number {
  const [a, b] = [places[i] as Point, places[j] as Point];
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function row(places: readonly Point[], d: Distance): number[] {
  const [a, b] = [places[d.i] as Point, places[d.j] as Point];
  const away = apart(places, d) || 1;
  const cells = new Array<number>(2 * places.length).fill(0);
  cells[2 * d.i] = (a.x - b.x) / away;
  cells[2 * d.i + 1] = (a.y - b.y) / away;
  cells[2 * d.j] = (b.x - a.x) / away;
  cells[2 * d.j + 1] = (b.y - a.y) / away;
  return cells;
}

function ridge(unknowns: number, weight: number): number[][] {
  return Array.from({ length: unknowns }, (_, index) =>
    Object.assign(new Array<number>(unknowns).fill(0), { [index]: weight }),
  );
}

function solve(start: readonly Point[], distances: readonly Distance[]): Point[] {
  let places = [...start];
  let damping = 0.1;
  const misfit = (at: readonly Point[]) => sum(distances.map((d) => (d.centres - apart(at, d)) ** 2));
  for (let step = 0; step < 200; step++) {
    const fit = leastSquares(
      [...distances.map((d) => row(places, d)), ...ridge(2 * places.length, damping)],
      [...distances.map((d) => d.centres - apart(places, d)), ...new Array<number>(2 * places.length).fill(0)],
    );
    if (fit === null) break;
    const moved = places.map(({ x, y }, index) => ({
      x: x + (fit.solution[2 * index] ?? 0),
      y: y + (fit.solution[2 * index + 1] ?? 0),
    }));
    const better = misfit(moved) <= misfit(places);
    if (better) places = moved;
    damping = better ? Math.max(damping / 3, 1e-5) : damping * 4;
    if (Math.max(...fit.solution.map(Math.abs)) < 1e-10) break;
  }
  return places;
}
