/**
 * The angle between two hole patterns that leaves the most metal: the exact optimum, not a scan.
 *
 * Turning one pattern moves each pair of holes along cos of their angle, and the web of a pair never falls as their distance grows.
 * So between the angles at which some pair is nearest or farthest, every pair either only opens or only closes. Within such a stretch
 * the least opening web rises and the least closing web falls; the best angle is where the two meet, found by bisection to the last bit.
 *
 * Once some web is known to be reached, each pair bars the angles at which it leaves no more. Only what no pair bars need be looked at:
 * equal holes in equal steps repeat one stretch many times, and all but the first are barred.
 */

import type { Drilling, Profile } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { acos, atan2, cos, sin } from '../units/trig.ts';
import { webByDistance } from './webs.ts';

/** Best clocking of a moving pattern against a fixed one. */
export interface Clocking {
  /** Degrees, 0 <= angle < 360, the smallest of equally good ones. */
  readonly angle: number;
  /** Smallest web at that angle, mm; null when one of the patterns is empty. */
  readonly web: number | null;
}

interface Pair {
  /** Squared distance = a - b cos(angle - nearest). */
  readonly a: number;
  readonly b: number;
  /** Angle at which the pair is nearest, radians in [0, 2 pi). */
  readonly nearest: number;
  /** Which pair of shapes it is: equal shapes share one web curve. */
  readonly shape: number;
}

const full = 2 * Math.PI;
/** Webs that differ by no more than this are equally good, mm. */
const tie = 1e-9;
/** A range of equally good angles narrower than this is only the flat top of a curve, radians. */
const leastRange = 1e-3;
const wrap = (angle: number) => ((angle % full) + full) % full;

interface Study {
  readonly pairs: readonly Pair[];
  /** Web by distance, for each pair of shapes. */
  readonly curves: readonly ((distance: number) => number)[];
}

function study(fixed: readonly Drilling[], moving: readonly Drilling[]): Study {
  const curves: ((distance: number) => number)[] = [];
  const known = new Map<Profile, Map<Profile, number>>();
  const shapeOf = (p: Profile, q: Profile) => {
    const row = known.get(p) ?? new Map<Profile, number>();
    known.set(p, row);
    const shape = row.get(q) ?? curves.push(webByDistance(p, q)) - 1;
    row.set(q, shape);
    return shape;
  };
  const pairs = fixed.flatMap((f) =>
    moving.map((m): Pair => {
      const rf = hypot(f.x, f.y);
      const rm = hypot(m.x, m.y);
      return {
        a: rf * rf + rm * rm,
        b: 2 * rf * rm,
        nearest: wrap(atan2(f.y, f.x) - atan2(m.y, m.x)),
        shape: shapeOf(f.profile, m.profile),
      };
    }),
  );
  return { pairs, curves };
}

/** Least web among the given pairs at an angle: only the nearest pair of each shape matters. */
function leastWeb({ curves }: Study, pairs: readonly Pair[], angle: number): number {
  const nearest = new Array<number>(curves.length).fill(Number.POSITIVE_INFINITY);
  for (const pair of pairs) {
    const d2 = pair.a - pair.b * cos(angle - pair.nearest);
    if (d2 < (nearest[pair.shape] as number)) nearest[pair.shape] = d2;
  }
  let least = Number.POSITIVE_INFINITY;
  curves.forEach((webAt, shape) => {
    const d2 = nearest[shape] as number;
    if (Number.isFinite(d2)) least = Math.min(least, webAt(Math.sqrt(Math.max(0, d2))));
  });
  return least;
}

/**
 * Smallest web between two patterns when the moving one is turned by `degrees` from where its drillings stand, mm.
 * Null when one of them is empty.
 */
export function webAtClocking(fixed: readonly Drilling[], moving: readonly Drilling[], degrees: number): number | null {
  const all = study(fixed, moving);
  return all.pairs.length === 0 ? null : leastWeb(all, all.pairs, (degrees * Math.PI) / 180);
}

/** The greatest distance at which a pair of shapes surely leaves no more than `web`, mm; infinite when it never leaves more. */
function barredDistance(webAt: (distance: number) => number, web: number, farthest: number): number {
  const most = webAt(farthest);
  if (most <= web) return Number.POSITIVE_INFINITY;
  if (webAt(0) > web) return 0;
  // A web never grows faster than the distance, and mostly as fast.
  let more = farthest - (most - web);
  let no = Math.max(0, more - 1e-12 * farthest);
  if (webAt(no) > web) [no, more] = [0, no];
  for (let step = 0; step < 60 && more - no > 1e-13; step++) {
    const at = (no + more) / 2;
    if (webAt(at) <= web) no = at;
    else more = at;
  }
  // Rounding must not bar an angle that is better.
  return no * (1 - 1e-12);
}

/** Stretches of angle at which every pair may leave more than `web`, ascending, within 0 to a full turn, radians. */
function openAngles({ pairs, curves }: Study, web: number): [number, number][] {
  const farthest = new Array<number>(curves.length).fill(0);
  for (const { a, b, shape } of pairs) farthest[shape] = Math.max(farthest[shape] as number, Math.sqrt(a + b));
  const barred = curves.map((curve, shape) => barredDistance(curve, web, farthest[shape] as number));
  const bars: [number, number][] = [];
  for (const { a, b, nearest, shape } of pairs) {
    const d = barred[shape] as number;
    const cosine = (a - d * d) / b;
    if (d === Number.POSITIVE_INFINITY || cosine <= -1) return [];
    if (!(cosine < 1)) continue;
    const half = acos(cosine);
    const [from, to] = [nearest - half, nearest + half];
    bars.push([from, to]);
    if (from < 0) bars.push([from + full, to + full]);
    if (to > full) bars.push([from - full, to - full]);
  }
  bars.sort((x, y) => x[0] - y[0]);
  const open: [number, number][] = [];
  let reached = 0;
  for (const [from, to] of bars) {
    if (from > reached) open.push([reached, Math.min(from, full)]);
    reached = Math.max(reached, to);
    if (reached >= full) return open;
  }
  return [...open, [reached, full]];
}

/**
 * Turn the moving drillings about the axis so that the smallest web to the fixed ones is as large as it can be.
 * @param fixed,moving drillings as they stand at angle 0, mm
 * @returns the exact optimum; of equally good angles (within 1e-9 mm) the smallest
 */
export function bestClocking(fixed: readonly Drilling[], moving: readonly Drilling[]): Clocking {
  const all = study(fixed, moving);
  if (all.pairs.length === 0) return { angle: 0, web: null };

  const turns = [...all.pairs.flatMap((p) => [p.nearest, wrap(p.nearest + Math.PI)]), 0].sort((x, y) => x - y);
  const marks = turns.filter((t, i) => i === 0 || t - (turns[i - 1] as number) > 1e-12);
  let best = { angle: 0, web: leastWeb(all, all.pairs, 0) };
  let open = openAngles(all, best.web + tie);
  const consider = (angle: number) => {
    const web = leastWeb(all, all.pairs, angle);
    if (web <= best.web + tie) return;
    best = { angle, web };
    open = openAngles(all, web + tie);
  };

  marks.forEach((low, i) => {
    const high = marks[i + 1] ?? full;
    if (!open.some(([from, to]) => from <= high && to >= low)) return;
    const middle = (low + high) / 2;
    const opening = all.pairs.filter((p) => sin(middle - p.nearest) > 0);
    const closing = all.pairs.filter((p) => sin(middle - p.nearest) <= 0);
    const opened = (angle: number) => (opening.length ? leastWeb(all, opening, angle) : Number.POSITIVE_INFINITY);
    const closed = (angle: number) => (closing.length ? leastWeb(all, closing, angle) : Number.POSITIVE_INFINITY);
    // The most this stretch could give; most stretches end here.
    if (Math.min(opened(high), closed(low)) <= best.web + tie) return;
    let from = low;
    let to = high;
    for (let step = 0; step < 80 && to - from > 1e-15; step++) {
      const at = (from + to) / 2;
      if (opened(at) < closed(at)) from = at;
      else to = at;
    }
    consider(to);
    consider(from);
    // Where something else than distance limits the web (the depth of a pocket), a whole range of angles is equally good.
    if (best.angle !== from && best.angle !== to) return;
    let [short, enough] = [low, best.angle];
    for (let step = 0; step < 80 && enough - short > 1e-15; step++) {
      const at = (short + enough) / 2;
      if (opened(at) < best.web - tie) short = at;
      else enough = at;
    }
    if (best.angle - enough > leastRange) best = { angle: enough, web: leastWeb(all, all.pairs, enough) };
  });
  return { angle: tidy((best.angle * 180) / Math.PI), web: best.web };
}

/** Drops the last-bit noise of the search: 14.999999999999 is 15. */
function tidy(degrees: number): number {
  const rounded = Math.round(degrees * 1e9) / 1e9;
  return rounded >= 360 ? 0 : rounded;
}
