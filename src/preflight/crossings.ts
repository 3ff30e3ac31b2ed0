/** Places where contours cross or touch, themselves or each other. mm. */
import { meetings } from '../geometry/contour-meet.ts';
import { type Box, type Stretch, stretchBox } from '../geometry/contour-stretch.ts';
import type { Place } from '../model/preflight.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import type { FaultLog } from './fault-log.ts';
import { type Budget, joinWithin, sameWithin } from './limits.ts';
import { eachNearPair } from './near-pairs.ts';
import { overlapOf } from './overlap.ts';

/** A run of stretches that follow one another, closed or not. */
export interface Track {
  readonly stretches: readonly Stretch[];
  readonly isClosed: boolean;
  readonly places: readonly Place[];
}

export interface Crossings {
  /** Tracks that cross themselves or others, by their number. */
  readonly crossed: ReadonlySet<number>;
  readonly isWhole: boolean;
}

/** A drawing with more crossings is a knot: no more are looked for. */
const mostFound = 5000;

/** Notes every crossing. */
export function crossingsOf(tracks: readonly Track[], unit: number, log: FaultLog, budget: Budget): Crossings {
  const stretches: Stretch[] = [];
  const track: number[] = [];
  const index: number[] = [];
  for (const [t, { stretches: list }] of tracks.entries()) {
    for (const [i, stretch] of list.entries()) {
      stretches.push(stretch);
      track.push(t);
      index.push(i);
    }
  }
  const boxes: Box[] = stretches.map(stretchBox);
  const crossed = new Set<number>();
  const seen = new Map<string, { x: number; y: number }[]>();
  let found = 0;
  const isWhole = eachNearPair(
    boxes,
    () => 1e-6,
    budget,
    (i, k) => {
      if (found > mostFound) budget.left = -1;
      if (budget.left < 0) return;
      const [a, b] = [stretches[i] as Stretch, stretches[k] as Stretch];
      const [s, t] = [track[i] as number, track[k] as number];
      const points = meetings(a, b);
      if (points.length === 0) return;
      const joints = s === t ? jointsOf(tracks[s] as Track, index[i] as number, index[k] as number) : [];
      for (const [x, y] of points) {
        if (s !== t && isLooseEnd(tracks[s] as Track, x, y) && isLooseEnd(tracks[t] as Track, x, y)) continue;
        if (joints.some((joint) => isOnlyJoint(a, b, joint, x, y)) || overlapOf(a, b) !== null) continue;
        found += 1;
        crossed.add(s).add(t);
        // A crossing at a corner belongs to several stretches: it is told once.
        const key = `${Math.min(s, t)} ${Math.max(s, t)}`;
        const told = seen.get(key) ?? [];
        seen.set(key, told);
        if (told.some((at) => Math.hypot(at.x - x, at.y - y) < 2 * joinWithin)) continue;
        told.push({ x, y });
        const place = (tracks[s] as Track).places[index[i] as number] as Place;
        const other = (tracks[t] as Track).places[index[k] as number] as Place;
        log.add(
          s === t ? 'dxf-self-crossing' : 'dxf-crossing',
          { ...place, x: x / unit, y: y / unit },
          s === t ? '' : `with entity ${other.entity}`,
        );
      }
    },
  );
  return { crossed, isWhole };
}

/** True at an end of an open run: where such ends meet has been said already. */
function isLooseEnd({ stretches, isClosed }: Track, x: number, y: number): boolean {
  const [first, last] = [stretches[0], stretches.at(-1)];
  if (isClosed || first === undefined || last === undefined) return false;
  return Math.min(Math.hypot(first.x1 - x, first.y1 - y), Math.hypot(last.x2 - x, last.y2 - y)) <= 2 * joinWithin;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Corners at which two stretches of one track follow each other. */
function jointsOf({ stretches, isClosed }: Track, i: number, k: number): Point[] {
  const count = stretches.length;
  const joints: Point[] = [];
  const follows = (before: number, after: number): void => {
    const stretch = stretches[before] as Stretch;
    if (before + 1 === after || (isClosed && before === count - 1 && after === 0)) {
      joints.push({ x: stretch.x2, y: stretch.y2 });
    }
  };
  follows(i, k);
  follows(k, i);
  return joints;
}

/**
 * True where a meeting point of two neighbours is their common corner, or so nearly that between the two the curves never part:
 * tangent neighbours meet twice when their numbers are rounded.
 */
function isOnlyJoint(a: Stretch, b: Stretch, joint: Point, x: number, y: number): boolean {
  const away = Math.hypot(x - joint.x, y - joint.y);
  if (away <= 2 * sameWithin) return true;
  const [p, q] = [middleOf(a, joint, { x, y }), middleOf(b, joint, { x, y })];
  return Math.hypot(p.x - q.x, p.y - q.y) < sameWithin;
}

/** The point of a stretch midway between two of its points. */
function middleOf(stretch: Stretch, p: Point, q: Point): Point {
  if (stretch.kind === 'line') return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  const turn = 2 * Math.PI;
  const ahead = (at: Point) => {
    const angle = atan2(at.y - stretch.y, at.x - stretch.x);
    const way = stretch.sweep > 0 ? angle - stretch.start : stretch.start - angle;
    const wrapped = ((way % turn) + turn) % turn;
    return wrapped > turn - 1e-6 ? 0 : wrapped;
  };
  const angle = stretch.start + (Math.sign(stretch.sweep) * (ahead(p) + ahead(q))) / 2;
  return { x: stretch.x + stretch.r * cos(angle), y: stretch.y + stretch.r * sin(angle) };
}
