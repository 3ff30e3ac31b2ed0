/**
 * Thin places within one contour: a neck has metal between two stretches of the same cut, a slot has air. mm.
 *
 * A place counts where the segment between two points of the contour runs clear through metal, or clear through air, and no small
 * step of either end makes it shorter: then it crosses the medial axis at a waist. Edges that are parallel, or nearly so, count by the
 * narrow end of their run side by side. What merely follows along the contour is no such place. Exact for lines and arcs.
 */
import { meetings } from '../geometry/contour-meet.ts';
import { type Box, type Stretch, stretchBox, stretchLength } from '../geometry/contour-stretch.ts';
import { signedArea } from './contour-facts.ts';
import type { Budget } from './limits.ts';
import { type End, isShortest, isSquareTo, sideOf, wayFrom } from './neck-ends.ts';
import { facing, type Span, turning } from './neck-facing.ts';
import { besides, nearestPairs, type Pair, type Spot } from './neck-pairs.ts';
import type { Nested } from './nest.ts';
import { roundDiameter } from './round.ts';
import { type StretchGrid, stretchGrid } from './stretch-grid.ts';

/** A thin place of one contour. */
export interface Neck {
  readonly gap: number;
  /** Its ends and the middle. */
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly x: number;
  readonly y: number;
  readonly contour: number;
  /** Number of the stretch at its first end, within its contour. */
  readonly stretch: number;
}

export interface Necks {
  /** The narrowest with metal between, and with air; null where there is none up to `upTo`. */
  readonly metal: Neck | null;
  readonly air: Neck | null;
  /** How wide a place was looked for, mm; 0 where the budget ran out at once. */
  readonly upTo: number;
}

/** Edges less than this from square to the segment between them, radians (5 degrees), are a web of some length, not a corner. */
export const usualTaper = (5 * Math.PI) / 180;

/** Such edges run side by side for at least this share of the gap between them. */
const leastRun = 0.25;

/** Cost of a stretch's squares, of a pair that is passed over, and of one that is worked out. */
const squareCost = 200;
const passCost = 4;
const pairCost = 500;

/** Edges that are square to the segment within this, radians, are parallel. */
const parallel = 1e-6;

/** Nearer than this, mm, is a touch: another check names it. */
const touch = 1e-6;

interface Track {
  readonly stretches: readonly Stretch[];
  readonly boxes: readonly Box[];
  readonly contour: readonly number[];
  /** Number of each stretch within its contour. */
  readonly index: readonly number[];
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** 1 where metal lies to the left of the contour's travel, else -1. */
  readonly metal: readonly (1 | -1)[];
  /** A round hole has a diameter, not a width. */
  readonly isRound: readonly boolean[];
  readonly taper: number;
  readonly canFace: (i: number, k: number) => boolean;
  readonly faced: (i: number) => Span;
}

function trackOf(contours: readonly Nested[], taper: number): Track {
  const stretches: Stretch[] = [];
  const contour: number[] = [];
  const index: number[] = [];
  const before: number[] = [];
  const after: number[] = [];
  const metal: (1 | -1)[] = [];
  for (const [c, { loop, depth }] of contours.entries()) {
    const first = stretches.length;
    const count = loop.stretches.length;
    for (const [k, stretch] of loop.stretches.entries()) {
      stretches.push(stretch);
      contour.push(c);
      index.push(k);
      before.push(first + ((k + count - 1) % count));
      after.push(first + ((k + 1) % count));
    }
    metal.push(signedArea(loop.stretches) > 0 === (depth % 2 === 0) ? 1 : -1);
  }
  const isRound = contours.map((nested) => roundDiameter(nested) !== null);
  const canFace = facing(stretches, before, after, taper);
  const faced = turning(stretches, before, taper);
  return {
    stretches,
    boxes: stretches.map(stretchBox),
    contour,
    index,
    before,
    after,
    metal,
    isRound,
    taper,
    canFace,
    faced,
  };
}

/**
 * The thinnest places up to `widest`, mm. The reach grows from narrow to wide and ends where both kinds are found, so that a part
 * with many teeth costs no more than its teeth.
 * @param from the first reach, mm, above 0
 * @param taper how far from square nearly parallel edges may be, radians, 0 or more
 */
export function thinPlaces(
  contours: readonly Nested[],
  from: number,
  widest: number,
  budget: Budget,
  taper = usualTaper,
): Necks {
  const track = trackOf(contours, taper);
  const length = track.stretches.reduce((sum, stretch) => sum + stretchLength(stretch), 0);
  let found: Necks = { metal: null, air: null, upTo: 0 };
  // A grid finer than this costs more than it saves.
  for (let reach = Math.max(from, length / 200_000); ; reach *= 2) {
    const side = Math.min(reach, Math.max(widest, length / 200_000));
    const next = searched(track, side, budget);
    if (next === null) return found;
    found = next;
    if ((found.metal && found.air) || side < reach || side >= widest) return found;
  }
}

interface Found extends Neck {
  readonly isMiddle: boolean;
}

/** Both kinds within one reach; null when the budget ran out. */
function searched(track: Track, reach: number, budget: Budget): Necks | null {
  const grid = stretchGrid(track.stretches, reach);
  budget.left -= 10 * grid.entries;
  let metal: Found | null = null;
  let air: Found | null = null;
  const limit = () => Math.max(metal?.gap ?? reach, air?.gap ?? reach);
  for (const i of track.stretches.keys()) {
    if (budget.left < 0) return null;
    if (track.isRound[track.contour[i] as number]) continue;
    const { first, last } = track.faced(i);
    budget.left -= squareCost;
    grid.near(i, first, last, (k) => {
      budget.left -= passCost;
      if (budget.left < 0) return;
      if (boxGap(track, i, k) > limit() || !track.canFace(i, k) || !track.canFace(k, i)) return;
      budget.left -= pairCost;
      for (const { pair, isRun, isMiddle } of pairsOf(track, i, k)) {
        const [p, q] = pair;
        const gap = Math.hypot(q.at[0] - p.at[0], q.at[1] - p.at[1]);
        if (gap < touch || gap > limit()) continue;
        const side = sideBetween(track, i, k, pair, gap, isRun);
        if (side === 0) continue;
        const best = side > 0 ? metal : air;
        // Teeth that are alike differ in their last bit: the first of them will do; of a parallel run the middle is told.
        const tie = isMiddle && best?.isMiddle === false ? 1e-9 : -1e-9;
        if (gap >= (best?.gap ?? reach) + tie || !isClear(track, grid, pair, gap)) continue;
        const [[x1, y1], [x2, y2]] = [p.at, q.at];
        const contour = track.contour[i] as number;
        const stretch = track.index[i] as number;
        const at = { x: (x1 + x2) / 2, y: (y1 + y2) / 2 };
        const neck: Found = { gap, from: p.at, to: q.at, ...at, contour, stretch, isMiddle };
        if (side > 0) metal = neck;
        else air = neck;
      }
    });
  }
  return { metal, air, upTo: reach };
}

function boxGap({ boxes }: Track, i: number, k: number): number {
  const [a, b] = [boxes[i] as Box, boxes[k] as Box];
  const dx = Math.max(0, a.xMin - b.xMax, b.xMin - a.xMax);
  const dy = Math.max(0, a.yMin - b.yMax, b.yMin - a.yMax);
  return Math.hypot(dx, dy);
}

/** A pair to be looked at. Those of a run of nearly parallel edges are shortest along that run, whatever follows on their edges. */
interface Candidate {
  readonly pair: Pair;
  readonly isRun: boolean;
  readonly isMiddle: boolean;
}

function pairsOf({ stretches, taper }: Track, i: number, k: number): Candidate[] {
  const [a, b] = [stretches[i] as Stretch, stretches[k] as Stretch];
  const list: Candidate[] = nearestPairs(a, b).map((pair) => ({ pair, isRun: false, isMiddle: false }));
  const run = besides(a, b).flatMap((pair) => {
    const tilt = tiltOf(a, b, pair, taper);
    return tilt === null ? [] : [{ pair, tilt }];
  });
  const middle = a.kind === 'line' && b.kind === 'line' ? middleOf(run.filter(({ tilt }) => tilt < parallel)) : null;
  if (middle !== null) list.unshift({ pair: middle, isRun: true, isMiddle: true });
  for (const { pair, tilt } of run) {
    const [p, q] = pair;
    const gap = Math.hypot(q.at[0] - p.at[0], q.at[1] - p.at[1]);
    const least = tilt < parallel ? touch : leastRun * gap;
    if (run.some(({ pair: [other] }) => Math.hypot(other.at[0] - p.at[0], other.at[1] - p.at[1]) > least)) {
      list.push({ pair, isRun: true, isMiddle: false });
    }
  }
  return list;
}

/** Half way between the ends of a parallel run; null where it has no length. */
function middleOf(run: readonly { readonly pair: Pair }[]): Pair | null {
  const [first] = run;
  if (first === undefined) return null;
  const [p] = first.pair;
  const away = ({ pair: [other] }: { readonly pair: Pair }) => Math.hypot(other.at[0] - p.at[0], other.at[1] - p.at[1]);
  const far = run.reduce((best, one) => (away(one) > away(best) ? one : best), first);
  if (away(far) <= touch) return null;
  const half = (a: Spot, b: Spot): Spot => ({
    at: [(a.at[0] + b.at[0]) / 2, (a.at[1] + b.at[1]) / 2],
    where: 'within',
  });
  return [half(p, far.pair[0]), half(first.pair[1], far.pair[1])];
}

/** How far the segment is from square to the edges, radians; null where it is too far, or an edge closes round the other. */
function tiltOf(a: Stretch, b: Stretch, [p, q]: Pair, taper: number): number | null {
  const gap = Math.hypot(q.at[0] - p.at[0], q.at[1] - p.at[1]);
  if (gap < touch) return null;
  const [ux, uy] = [(q.at[0] - p.at[0]) / gap, (q.at[1] - p.at[1]) / gap];
  const [mine, theirs] = [wayFrom(a, p.at, 1), wayFrom(b, q.at, 1)];
  if (!isSquareTo(mine, ux, uy, gap, taper) || !isSquareTo(theirs, -ux, -uy, gap, taper)) return null;
  return Math.max(Math.abs(ux * mine.tx + uy * mine.ty), Math.abs(ux * theirs.tx + uy * theirs.ty));
}

/** 1 for a place with metal between, -1 for one with air, 0 where it is none. */
function sideBetween(track: Track, i: number, k: number, [p, q]: Pair, gap: number, isRun: boolean): -1 | 0 | 1 {
  const [ux, uy] = [(q.at[0] - p.at[0]) / gap, (q.at[1] - p.at[1]) / gap];
  const mine = isRun ? alone(track, i, p) : endOf(track, i, p);
  const theirs = isRun ? alone(track, k, q) : endOf(track, k, q);
  if (!isRun && !isShortest(mine, theirs, gap)) return 0;
  const side = sideOf(mine, ux, uy);
  if (side === 0 || side !== sideOf(theirs, -ux, -uy)) return 0;
  return side === track.metal[track.contour[i] as number] ? 1 : -1;
}

/** The ways off from a spot along its own stretch, as if that went on. */
function alone({ stretches }: Track, i: number, { at }: Spot): End {
  const stretch = stretches[i] as Stretch;
  return { at, ahead: wayFrom(stretch, at, 1), back: wayFrom(stretch, at, -1) };
}

/** The ways off from a spot along the contour: at an end of its stretch one of them is the neighbour's. */
function endOf(track: Track, i: number, spot: Spot): End {
  const { stretches, before, after } = track;
  const { ahead, back } = alone(track, i, spot);
  const { at } = spot;
  if (spot.where === 'end') return { at, ahead: wayFrom(stretches[after[i] as number] as Stretch, at, 1), back };
  if (spot.where === 'start') return { at, ahead, back: wayFrom(stretches[before[i] as number] as Stretch, at, -1) };
  return { at, ahead, back };
}

/** True where no cut of the drawing lies across the segment. */
function isClear({ stretches }: Track, grid: StretchGrid, [p, q]: Pair, gap: number): boolean {
  const [[x1, y1], [x2, y2]] = [p.at, q.at];
  const segment: Stretch = { kind: 'line', x1, y1, x2, y2 };
  const atEnd = Math.max(touch, 1e-6 * gap);
  let clear = true;
  grid.along(x1, y1, x2, y2, (n) => {
    if (!clear) return;
    clear = meetings(segment, stretches[n] as Stretch).every(
      ([x, y]) => Math.min(Math.hypot(x - x1, y - y1), Math.hypot(x - x2, y - y2)) <= atEnd,
    );
  });
  return clear;
}
