/**
 * Metal left between the features of a turned part: the least distance in space between any two of them, at every depth.
 *
 * Every feature is a solid of revolution about an axis parallel to z, so the nearest points of two features lie in the plane through
 * both axes and the sum is exact (see chain-distance.ts). Overlap comes out negative: the depth of overlap seen along the axis.
 */
import type { Drilling, Profile, TurnedPart } from '../model/part.ts';
import { type Chain, type ChainPoint, chainDistance } from './chain-distance.ts';

/** The least metal between two features. */
export interface Web {
  /** Drilling id. */
  readonly a: string;
  /** Drilling id, or `outside`, or `flats`. */
  readonly b: string;
  /** mm; negative where they overlap. */
  readonly gap: number;
}

/** Radius of a profile just above or just below a height; NaN outside its range. */
export function radiusAt(profile: Profile, z: number, from: 'above' | 'below'): number {
  for (let i = 0; i + 1 < profile.length; i++) {
    const a = profile[i] as { z: number; r: number };
    const b = profile[i + 1] as { z: number; r: number };
    if (a.z === b.z) continue;
    const inside = from === 'above' ? a.z <= z && z < b.z : a.z < z && z <= b.z;
    if (inside) return a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z);
  }
  return Number.NaN;
}

const firstZ = (profile: Profile) => (profile[0] as { z: number }).z;
const lastZ = (profile: Profile) => (profile[profile.length - 1] as { z: number }).z;

/** The least value of f(first radius, second radius) over the heights that two profiles share; +Infinity when they share none. */
function leastOverSharedHeights(first: Profile, second: Profile, f: (r1: number, r2: number) => number): number {
  const low = Math.max(firstZ(first), firstZ(second));
  const high = Math.min(lastZ(first), lastZ(second));
  if (!(low < high)) return Number.POSITIVE_INFINITY;
  const heights = [low, high, ...[...first, ...second].map((p) => p.z).filter((z) => z > low && z < high)];
  let least = Number.POSITIVE_INFINITY;
  for (const z of heights) {
    // Radii run straight between corners, so a linear measure is least at a corner, on one side of it or the other.
    if (z < high) least = Math.min(least, f(radiusAt(first, z, 'above'), radiusAt(second, z, 'above')));
    if (z > low) least = Math.min(least, f(radiusAt(first, z, 'below'), radiusAt(second, z, 'below')));
  }
  return least;
}

/** A drilling's wall on one side of its axis at u = centre; closed to the axis at both ends. */
function wall(profile: Profile, centre: number, sign: 1 | -1): Chain {
  const first = profile[0] as ChainPoint & { r: number };
  const last = profile[profile.length - 1] as ChainPoint & { r: number };
  const points = [{ u: centre, z: first.z }, ...profile.map(({ z, r }) => ({ u: centre + sign * r, z })), { u: centre, z: last.z }];
  return stretches(points);
}

function stretches(points: readonly ChainPoint[]): [ChainPoint, ChainPoint][] {
  const out: [ChainPoint, ChainPoint][] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i] as ChainPoint;
    const b = points[i + 1] as ChainPoint;
    if (a.u !== b.u || a.z !== b.z) out.push([a, b]);
  }
  return out;
}

/**
 * Web between two drillings whose axes stand `distance` apart, mm; never falls as the distance grows.
 * @param first,second profiles, z ascending
 * @param distance centre distance, mm, >= 0
 */
export function webAtDistance(first: Profile, second: Profile, distance: number): number {
  const inPlan = leastOverSharedHeights(first, second, (r1, r2) => distance - r1 - r2);
  if (inPlan < 0) return inPlan;
  return chainDistance(wall(first, 0, 1), wall(second, distance, -1));
}

/** The parts of the outside that have metal towards a drilling at radius `offset`, less the faces that it opens on. */
function outsideTowards(outer: Profile, drilling: Profile, offset: number): Chain {
  const first = drilling[0] as { z: number; r: number };
  const last = drilling[drilling.length - 1] as { z: number; r: number };
  const opens = (z: number) => (first.r > 0 && z === first.z) || (last.r > 0 && z === last.z);
  const points = [{ u: 0, z: firstZ(outer) }, ...outer.map(({ z, r }) => ({ u: r, z })), { u: 0, z: lastZ(outer) }];
  return stretches(points).filter(([a, b]) => Math.max(a.u, b.u) > offset && !(a.z === b.z && opens(a.z)));
}

/** Web between a drilling and the outside of the part (rim, steps, and the face under a blind hole), mm. */
export function webToOutside(outer: Profile, drilling: Drilling): number {
  const offset = Math.hypot(drilling.x, drilling.y);
  const inPlan = leastOverSharedHeights(outer, drilling.profile, (outside, r) => outside - offset - r);
  if (inPlan < 0) return inPlan;
  const hole: Chain = [...wall(drilling.profile, offset, 1), ...wall(drilling.profile, offset, -1)];
  return chainDistance(hole, outsideTowards(outer, drilling.profile, offset));
}

/** Web between a drilling and the nearer of two flats, mm. */
export function webToFlats(flats: { readonly across: number; readonly angle: number }, drilling: Drilling): number {
  const a = (flats.angle * Math.PI) / 180;
  const along = Math.abs(drilling.x * Math.cos(a) + drilling.y * Math.sin(a));
  return flats.across / 2 - along - Math.max(...drilling.profile.map((p) => p.r));
}

/** Every pair of features with the metal left between them, mm, in the order of the part's drillings. */
export function allWebs(part: TurnedPart): Web[] {
  const webs: Web[] = [];
  const widest = Math.max(...part.outer.map((p) => p.r));
  part.drillings.forEach((a, i) => {
    for (const b of part.drillings.slice(i + 1)) {
      webs.push({ a: a.id, b: b.id, gap: webAtDistance(a.profile, b.profile, Math.hypot(a.x - b.x, a.y - b.y)) });
    }
    webs.push({ a: a.id, b: 'outside', gap: webToOutside(part.outer, a) });
    if (part.flats && part.flats.across < 2 * widest) webs.push({ a: a.id, b: 'flats', gap: webToFlats(part.flats, a) });
  });
  return webs;
}
