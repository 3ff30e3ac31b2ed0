/**
 * The outlines of a turned part as functions of height: one curve for the outside, one for each drilling
 * centre.
 *
 * A curve is a list of stretches in which its radius is linear in z. Drillings on one centre (a bore and a
 * recess, a hole and its countersink) are merged to the largest of their radii, so that nothing is ever
 * counted or cut twice.
 */

import type { Profile, TurnedPart } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { cos, sin } from '../units/trig.ts';

/** A conical or cylindrical piece: radius r0 at z0, r1 at z1, linear between. z0 < z1; mm. */
export interface Stretch {
  readonly z0: number;
  readonly z1: number;
  readonly r0: number;
  readonly r1: number;
}

/** One outline about its own centre. Stretches ascend in z and do not overlap; there may be gaps. */
export interface Curve {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly stretches: readonly Stretch[];
}

/** Two flats as numbers: half the distance across them, mm, and the unit normal of one. */
export interface FlatsPlane {
  readonly half: number;
  readonly angle: number;
  readonly nx: number;
  readonly ny: number;
}

/** Every outline of a part, and the heights at which anything changes, ascending. */
export interface TurnedCurves {
  readonly outer: Curve;
  readonly drillings: readonly Curve[];
  readonly flats: FlatsPlane | null;
  readonly heights: readonly number[];
}

/**
 * Heights and radii closer than this are one, mm. Far below any machining, far above rounding of the numbers.
 */
export const SAME = 1e-6;

/** Radius of a stretch at height z, mm. Exact at both ends. */
export function radiusAt(stretch: Stretch, z: number): number {
  if (z === stretch.z0) return stretch.r0;
  if (z === stretch.z1) return stretch.r1;
  return stretch.r0 + ((stretch.r1 - stretch.r0) * (z - stretch.z0)) / (stretch.z1 - stretch.z0);
}

/** The stretch of a curve that covers the heights from z0 to z1, or undefined where there is none. */
export function stretchOver(curve: Curve, z0: number, z1: number): Stretch | undefined {
  return curve.stretches.find((s) => s.z0 <= z0 && s.z1 >= z1);
}

/** A part never changes, and its mass, its sections and its body all start from its curves. */
const known = new WeakMap<TurnedPart, TurnedCurves>();

/**
 * The curves of a part. Throws a RangeError on a profile that no lathe could follow: heights that descend,
 * radii that are negative, numbers that are not finite, or an outside with no height.
 */
export function curvesOf(part: TurnedPart): TurnedCurves {
  const curves = known.get(part) ?? traced(part);
  known.set(part, curves);
  return curves;
}

function traced(part: TurnedPart): TurnedCurves {
  const snap = snapper([part.outer, ...part.drillings.map((d) => d.profile)].flatMap((p) => p.map((q) => q.z)));
  const outer: Curve = { id: part.id, x: 0, y: 0, stretches: stretchesOf(part.outer, part.id, snap) };
  if (outer.stretches.length === 0) throw new RangeError(`${part.id}: the outer profile has no height`);
  const single = part.drillings.map((d) => {
    if (!Number.isFinite(d.x) || !Number.isFinite(d.y)) throw new RangeError(`${d.id}: the centre is not a number`);
    return { id: d.id, x: d.x, y: d.y, stretches: stretchesOf(d.profile, d.id, snap) };
  });
  const drillings = mergeCoaxial(single.filter((c) => c.stretches.length > 0));
  const heights = new Set<number>();
  for (const curve of [outer, ...drillings]) {
    for (const s of curve.stretches) heights.add(s.z0).add(s.z1);
  }
  return { outer, drillings, flats: flatsOf(part), heights: [...heights].sort((a, b) => a - b) };
}

function flatsOf(part: TurnedPart): FlatsPlane | null {
  if (!part.flats) return null;
  const { across, angle } = part.flats;
  if (!(across > 0) || !Number.isFinite(across) || !Number.isFinite(angle)) {
    throw new RangeError(`${part.flats.feature}: flats need a positive width across and an angle`);
  }
  const a = (angle * Math.PI) / 180;
  return { half: across / 2, angle: a, nx: cos(a), ny: sin(a) };
}

/** Heights that differ only by rounding become the same number, so that no slab is thinner than SAME. */
function snapper(heights: readonly number[]): (z: number) => number {
  const sorted = [...heights].sort((a, b) => a - b);
  const to = new Map<number, number>();
  let first = Number.NaN;
  for (const z of sorted) {
    if (!(z - first <= SAME)) first = z;
    to.set(z, first);
  }
  return (z) => to.get(z) ?? z;
}

function stretchesOf(profile: Profile, id: string, snap: (z: number) => number): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [i, p] of profile.entries()) {
    if (!Number.isFinite(p.z) || !Number.isFinite(p.r) || p.r < 0) {
      throw new RangeError(`${id}: profile corner ${i + 1} is (z ${p.z}, r ${p.r})`);
    }
    const next = profile[i + 1];
    if (!next) break;
    const z0 = snap(p.z);
    const z1 = snap(next.z);
    if (z1 < z0) throw new RangeError(`${id}: the profile descends after corner ${i + 1}`);
    if (z1 > z0 && Math.max(p.r, next.r) > SAME) stretches.push({ z0, z1, r0: p.r, r1: next.r });
  }
  return stretches;
}

function mergeCoaxial(curves: readonly Curve[]): Curve[] {
  const groups: Curve[][] = [];
  for (const curve of curves) {
    const group = groups.find((g) => {
      const head = g[0];
      return head !== undefined && hypot(head.x - curve.x, head.y - curve.y) <= SAME;
    });
    if (group) group.push(curve);
    else groups.push([curve]);
  }
  return groups.map((group) => {
    const head = group[0] as Curve;
    if (group.length === 1) return head;
    const stretches = largest(group.flatMap((c) => c.stretches));
    return { id: group.map((c) => c.id).join(' + '), x: head.x, y: head.y, stretches };
  });
}

/** Upper envelope of stretches about one centre. */
function largest(stretches: readonly Stretch[]): Stretch[] {
  const cuts = [...new Set(stretches.flatMap((s) => [s.z0, s.z1]))].sort((a, b) => a - b);
  const out: Stretch[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const z0 = cuts[i] as number;
    const z1 = cuts[i + 1] as number;
    const here = stretches.filter((s) => s.z0 <= z0 && s.z1 >= z1);
    const inner = here.flatMap((a, k) => here.slice(k + 1).map((b) => meeting(a, b, z0, z1)));
    const zs = [z0];
    for (const z of inner.sort((a, b) => a - b)) {
      if (z - (zs.at(-1) as number) > SAME && z1 - z > SAME) zs.push(z);
    }
    zs.push(z1);
    for (let k = 0; k + 1 < zs.length; k++) {
      const a = zs[k] as number;
      const b = zs[k + 1] as number;
      const middle = (s: Stretch): number => radiusAt(s, (a + b) / 2);
      const widest = here.reduce<Stretch | null>((best, s) => (best && middle(best) >= middle(s) ? best : s), null);
      if (widest) out.push({ z0: a, z1: b, r0: radiusAt(widest, a), r1: radiusAt(widest, b) });
    }
  }
  return joined(out);
}

/** Height at which two stretches have the same radius; NaN when they are parallel. */
function meeting(a: Stretch, b: Stretch, z0: number, z1: number): number {
  const below = radiusAt(a, z0) - radiusAt(b, z0);
  const above = radiusAt(a, z1) - radiusAt(b, z1);
  return z0 + ((z1 - z0) * below) / (below - above);
}

/** Neighbouring stretches on one straight line become one, so that no needless ring of facets appears. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const s of stretches) {
    const last = out.at(-1);
    if (last && last.z1 === s.z0) {
      const through = { z0: last.z0, z1: s.z1, r0: last.r0, r1: s.r1 };
      const straight = Math.abs(last.r1 - s.r0) <= SAME && Math.abs(radiusAt(through, s.z0) - s.r0) <= SAME / 100;
      if (straight) {
        out[out.length - 1] = through;
        continue;
      }
    }
    out.push(s);
  }
  return out;
}
