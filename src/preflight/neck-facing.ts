/** Which pairs of stretches can be a thin place at all: passes over the many short lines that merely follow one another. mm. */
import { type Stretch, stretchLength } from '../geometry/contour-stretch.ts';
import { atan2 } from '../units/trig.ts';
import { wayFrom } from './neck-ends.ts';

/**
 * A test that is false only where no point of straight stretch `i` can be an end of a least distance to stretch `k`: within `i` the
 * way across is square to it, at its start and end it lies between the squares of both neighbours. Directions are taken from middle
 * to middle, and given all the room that the lengths of both allow.
 */
export function facing(
  stretches: readonly Stretch[],
  before: readonly number[],
  after: readonly number[],
  taper: number,
): (i: number, k: number) => boolean {
  const n = stretches.length;
  const [mx, my, half] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  // Directions of travel where a stretch begins and where it ends.
  const [sx, sy, ex, ey] = [new Float64Array(n), new Float64Array(n), new Float64Array(n), new Float64Array(n)];
  for (const [i, stretch] of stretches.entries()) {
    const { x1, y1, x2, y2 } = stretch;
    [mx[i], my[i], half[i]] = [(x1 + x2) / 2, (y1 + y2) / 2, stretchLength(stretch) / 2];
    const [from, to] = [wayFrom(stretch, [x1, y1], 1), wayFrom(stretch, [x2, y2], 1)];
    [sx[i], sy[i], ex[i], ey[i]] = [from.tx, from.ty, to.tx, to.ty];
  }
  const at = (list: Float64Array, i: number): number => list[i] as number;
  return (i, k) => {
    if ((stretches[i] as Stretch).kind === 'arc') return true;
    const [dx, dy] = [at(mx, k) - at(mx, i), at(my, k) - at(my, i)];
    const away = Math.hypot(dx, dy);
    const size = at(half, i) + at(half, k);
    if (size >= away) return true;
    // The true way across turns from this one by at most the angle whose sine is size / away, and a chord is under 1.5 times a sine.
    const room = (1.5 * size) / away;
    const [ux, uy] = [dx / away, dy / away];
    const own = ux * at(sx, i) + uy * at(sy, i);
    if (Math.abs(own) <= taper + room) return true;
    const [b, a] = [before[i] as number, after[i] as number];
    if (own <= room && ux * at(ex, b) + uy * at(ey, b) >= -room) return true;
    return own >= -room && ux * at(sx, a) + uy * at(sy, a) <= room;
  };
}

/** Stretches of one contour, by their numbers: from `first` to `last`. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

/**
 * Which later stretches of its contour a stretch can face: the contour between the two must turn enough. Segment and contour close a
 * loop, which turns by a full turn; at each end of a least distance the loop turns by a right angle at most, so the contour between
 * turns by half a turn at least, on both ways round. Source: the turning of a closed curve (Hopf).
 */
export function turning(stretches: readonly Stretch[], before: readonly number[], taper: number): (i: number) => Span {
  const n = stretches.length;
  // Turn along the contour, taken without its sign, up to where a stretch begins and where it ends; contours one after the other.
  const [begin, end] = [new Float64Array(n), new Float64Array(n)];
  const [whole, lastOf] = [new Float64Array(n), new Int32Array(n)];
  let sum = 0;
  for (let first = 0; first < n; ) {
    const last = before[first] as number;
    const start = sum;
    for (let i = first; i <= last; i++) {
      const stretch = stretches[i] as Stretch;
      sum += cornerTurn(stretches[before[i] as number] as Stretch, stretch);
      begin[i] = sum;
      sum += stretch.kind === 'arc' ? Math.abs(stretch.sweep) : 0;
      end[i] = sum;
    }
    whole.fill(sum - start, first, last + 1);
    lastOf.fill(last, first, last + 1);
    first = last + 1;
  }
  const least = Math.PI - 2 * taper - 1e-6;
  /** The first number from `low` to `high` with at least so much turn before it; one more than `high` where there is none. */
  const firstFrom = (list: Float64Array, low: number, high: number, turn: number): number => {
    let [a, b] = [low, high + 1];
    while (a < b) {
      const middle = (a + b) >> 1;
      if ((list[middle] as number) < turn) a = middle + 1;
      else b = middle;
    }
    return a;
  };
  return (i) => {
    const high = lastOf[i] as number;
    const first = firstFrom(end, i + 1, high, (begin[i] as number) + least);
    const most = (whole[i] as number) + (end[i] as number) - least;
    return { first, last: firstFrom(begin, i + 1, high, most + 1e-9) - 1 };
  };
}

function cornerTurn(a: Stretch, b: Stretch): number {
  const [u, v] = [wayFrom(a, [a.x2, a.y2], 1), wayFrom(b, [b.x1, b.y1], 1)];
  return Math.abs(atan2(u.tx * v.ty - u.ty * v.tx, u.tx * v.tx + u.ty * v.ty));
}
