/** Lines and arcs that lie on one another: drawn twice, or over part of their length. mm. */
import type { ArcStretch, LineStretch, Stretch } from '../geometry/contour.ts';
import { cos, sin } from '../units/trig.ts';
import { leastOverlap, sameWithin } from './limits.ts';

export interface Overlap {
  /** `same`: one is the other, whichever way it runs. `part`: they share a run and more. */
  readonly kind: 'same' | 'part';
  /** Middle of the common run. */
  readonly x: number;
  readonly y: number;
}

const near = (x1: number, y1: number, x2: number, y2: number): boolean => Math.hypot(x2 - x1, y2 - y1) <= sameWithin;

/** The run that two stretches share, or null. Only line with line and arc with arc of one circle can share one. */
export function overlapOf(a: Stretch, b: Stretch): Overlap | null {
  if (a.kind === 'line') return b.kind === 'line' ? lines(a, b) : null;
  return b.kind === 'arc' ? arcs(a, b) : null;
}

/** True where both have the same ends, either way round. */
function sameEnds(a: Stretch, b: Stretch): boolean {
  return (
    (near(a.x1, a.y1, b.x1, b.y1) && near(a.x2, a.y2, b.x2, b.y2)) ||
    (near(a.x1, a.y1, b.x2, b.y2) && near(a.x2, a.y2, b.x1, b.y1))
  );
}

function lines(a: LineStretch, b: LineStretch): Overlap | null {
  const length = Math.hypot(a.x2 - a.x1, a.y2 - a.y1);
  const other = Math.hypot(b.x2 - b.x1, b.y2 - b.y1);
  const [ux, uy] = [(a.x2 - a.x1) / length, (a.y2 - a.y1) / length];
  const along = (x: number, y: number) => (x - a.x1) * ux + (y - a.y1) * uy;
  const off = (x: number, y: number) => (y - a.y1) * ux - (x - a.x1) * uy;
  const [s1, s2] = [along(b.x1, b.y1), along(b.x2, b.y2)];
  const from = Math.max(0, Math.min(s1, s2));
  const to = Math.min(length, Math.max(s1, s2));
  // Short lines must share most of their length; a thousandth of a turn at a corner is no common run.
  if (to - from < Math.min(leastOverlap, 0.5 * Math.min(length, other)) || s1 === s2) return null;
  const [o1, o2] = [off(b.x1, b.y1), off(b.x2, b.y2)];
  const offAt = (s: number) => o1 + ((o2 - o1) * (s - s1)) / (s2 - s1);
  const stands = Math.min(sameWithin, 0.05 * (to - from));
  if (Math.abs(offAt(from)) > stands || Math.abs(offAt(to)) > stands) return null;
  const middle = (from + to) / 2;
  return { kind: sameEnds(a, b) ? 'same' : 'part', x: a.x1 + middle * ux, y: a.y1 + middle * uy };
}

function arcs(a: ArcStretch, b: ArcStretch): Overlap | null {
  if (Math.abs(a.r - b.r) > sameWithin || Math.hypot(a.x - b.x, a.y - b.y) > sameWithin) return null;
  const turn = 2 * Math.PI;
  const isFull = (arc: ArcStretch) => Math.abs(arc.sweep) > turn - 1e-9;
  const low = (arc: ArcStretch) => (arc.sweep > 0 ? arc.start : arc.start + arc.sweep);
  const [sizeA, sizeB] = [Math.abs(a.sweep), Math.abs(b.sweep)];
  const ahead = (((low(b) - low(a)) % turn) + turn) % turn;
  const least = Math.min(leastOverlap, 0.5 * a.r * Math.min(sizeA, sizeB)) / a.r;
  // The second may begin within the first, or reach into it from behind.
  const shared = isFull(a)
    ? { from: ahead, to: ahead + sizeB }
    : [0, -turn]
        .map((shift) => ({ from: Math.max(0, ahead + shift), to: Math.min(sizeA, ahead + shift + sizeB) }))
        .reduce((best, run) => (run.to - run.from > best.to - best.from ? run : best));
  if (shared.to - shared.from < least) return null;
  const middle = low(a) + (shared.from + shared.to) / 2;
  const isSame = (isFull(a) && isFull(b)) || (Math.abs(sizeA - sizeB) * a.r <= sameWithin && sameEnds(a, b));
  return { kind: isSame ? 'same' : 'part', x: a.x + a.r * cos(middle), y: a.y + a.r * sin(middle) };
}
