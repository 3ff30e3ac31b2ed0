/**
 * Metal left between the features of a turned part: the least distance in space between any two of them, at every depth.
 *
 * Every feature is a solid of revolution about an axis parallel to z, so the nearest points of two features lie in the plane through
 * both axes and the sum is exact (see chain-distance.ts). Overlap comes out negative.
 *
 * Where a hole opens there is no metal, so what lies on the far side of its mouth (the wall of a spigot that stands beside it, the
 * wall of the recess that it opens in) leaves no web; a face leaves one only towards the parts of the hole that are wider than
 * its mouth, such as the floor of a counterbore.
 */

import type { Drilling, Profile } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { cos, sin } from '../units/trig.ts';
import { type Chain, chainBetween, chainDistance, chainWider, levelAt, profileChain } from './chain-distance.ts';

/** Below this an overlap is rounding, mm. */
const rounding = 1e-9;

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

const firstOf = (profile: Profile) => profile[0] as { z: number; r: number };
const lastOf = (profile: Profile) => profile[profile.length - 1] as { z: number; r: number };

/** Heights, from and to. */
interface Span {
  readonly low: number;
  readonly high: number;
}
const everywhere: Span = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

function shared(first: Profile, second: Profile, within: Span): Span {
  return {
    low: Math.max(firstOf(first).z, firstOf(second).z, within.low),
    high: Math.min(lastOf(first).z, lastOf(second).z, within.high),
  };
}

/** Radii of two profiles at one height, on one side of it. */
interface RadiusPair {
  readonly first: number;
  readonly second: number;
}

/**
 * The radii that meet at the heights which two profiles share; none when they share none. Radii run straight between corners, so a linear
 * measure is least at a corner, on one side of it or the other.
 */
function radiiAtSharedHeights(first: Profile, second: Profile, within: Span = everywhere): RadiusPair[] {
  const { low, high } = shared(first, second, within);
  const pairs: RadiusPair[] = [];
  if (!(low < high)) return pairs;
  const add = (z: number, from: 'above' | 'below') =>
    pairs.push({ first: radiusAt(first, z, from), second: radiusAt(second, z, from) });
  add(low, 'above');
  add(high, 'below');
  for (const profile of [first, second])
    for (const { z } of profile) {
      if (z <= low || z >= high) continue;
      add(z, 'above');
      add(z, 'below');
    }
  return pairs;
}

/** The least of a linear measure of both radii over shared heights; +Infinity where there are none. */
function leastOver(pairs: readonly RadiusPair[], f: (r1: number, r2: number) => number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { first, second } of pairs) least = Math.min(least, f(first, second));
  return least;
}

/**
 * Web between two drillings, mm, by how far their axes stand apart, mm, >= 0; it never falls as the distance grows. An overlap is its depth
 * as seen along the axis. What hangs on the shapes alone is worked out once for all distances.
 * @param first,second profiles, z ascending
 */
export function webByDistance(first: Profile, second: Profile): (distance: number) => number {
  const radii = radiiAtSharedHeights(first, second);
  const wall = profileChain(first, 0, 1);
  return (distance) => {
    const inPlan = leastOver(radii, (r1, r2) => distance - r1 - r2);
    return inPlan < 0 ? inPlan : chainDistance(wall, profileChain(second, distance, -1));
  };
}

/** Web between two drillings whose axes stand `distance` apart; see webByDistance. */
export const webAtDistance = (first: Profile, second: Profile, distance: number): number =>
  webByDistance(first, second)(distance);

/** The same profile seen from the other side: z becomes -z. */
const turnedOver = (profile: Profile): Profile => [...profile].reverse().map(({ z, r }) => ({ z: 0 - z, r }));

/**
 * Height at which a hole's lower end opens on the floor of a wider feature on the axis, or comes out of it; null when it does not.
 * @param distance of the hole's axis from the wide feature's axis
 */
function opensBelow(hole: Profile, wide: Profile, distance: number): number | null {
  const end = firstOf(hole);
  if (end.r <= 0) return null;
  const inside = (z: number, from: 'above' | 'below') =>
    distance + radiusAt(hole, z, from) <= radiusAt(wide, z, from) + rounding;
  const onFloor = distance + end.r <= radiusAt(wide, end.z, 'below') + rounding;
  let open = onFloor ? end.z : null;
  const { low, high } = shared(hole, wide, everywhere);
  if (low !== end.z) return open;
  const heights = [...new Set([low, high, ...[...hole, ...wide].map((p) => p.z)])].filter((z) => z >= low && z <= high);
  heights.sort((a, b) => a - b);
  for (let i = 0; i + 1 < heights.length; i++) {
    const [from, to] = [heights[i] as number, heights[i + 1] as number];
    if (!inside(from, 'above') || !inside(to, 'below')) break;
    open = to;
  }
  return open;
}

/** Heights between which a hole is a hole of its own, not part of a wider feature that it opens in. */
function ownHeights(hole: Profile, wide: Profile, distance: number): Span {
  const low = opensBelow(hole, wide, distance);
  const high = opensBelow(turnedOver(hole), turnedOver(wide), distance);
  return { low: low ?? everywhere.low, high: high === null ? everywhere.high : 0 - high };
}

/** A hole's walls on both sides of its axis at u = centre, between two heights. */
const bothWalls = (hole: Profile, centre: number, { low, high }: Span): Chain => [
  ...chainBetween(profileChain(hole, centre, 1), low, high),
  ...chainBetween(profileChain(hole, centre, -1), low, high),
];

/** Web between a face or floor that a hole opens on and the parts of the hole that are wider than its mouth. */
function webBehindMouth(hole: Profile, centre: number, own: Span, at: 'low' | 'high', faces: Chain): number {
  const z = own[at];
  if (!Number.isFinite(z)) return Number.POSITIVE_INFINITY;
  const mouth = radiusAt(hole, z, at === 'low' ? 'above' : 'below');
  const wide = ([1, -1] as const).flatMap((sign) =>
    chainWider(chainBetween(profileChain(hole, centre, sign), own.low, own.high), centre, sign, mouth + rounding),
  );
  return chainDistance(wide, levelAt(faces, z));
}

/** True for what is turned on the part's axis: bore and recesses. */
export const onAxis = (d: Drilling) => d.x === 0 && d.y === 0;
/** Greatest radius of a profile, mm. */
export const widest = (profile: Profile) => Math.max(...profile.map((p) => p.r));

/** Web between two drillings of a part, mm; null where one only opens in the other. */
export function webBetween(a: Drilling, b: Drilling): number | null {
  const distance = hypot(a.x - b.x, a.y - b.y);
  if (!onAxis(a) && !onAxis(b)) return webAtDistance(a.profile, b.profile, distance);

  const aIsWide = onAxis(a) && !(onAxis(b) && widest(b.profile) > widest(a.profile));
  const [wide, hole] = aIsWide ? [a.profile, b.profile] : [b.profile, a.profile];
  const own = ownHeights(hole, wide, distance);
  if (!(own.low < own.high)) return null;
  const inPlan = leastOver(radiiAtSharedHeights(wide, hole, own), (r1, r2) => distance - r1 - r2);
  if (inPlan < -rounding) {
    // Beside each other or one above the other: the lesser overlap is what would have to be cleared.
    const both = shared(wide, hole, own);
    return Math.max(inPlan, both.low - both.high);
  }
  const wideWall = profileChain(wide, 0, 1);
  const gap = Math.min(
    chainDistance(
      chainBetween(wideWall, own.low, own.high),
      chainBetween(profileChain(hole, distance, -1), own.low, own.high),
    ),
    webBehindMouth(hole, distance, own, 'low', wideWall),
    webBehindMouth(hole, distance, own, 'high', wideWall),
  );
  return Number.isFinite(gap) ? gap : null;
}

/** Web between two recesses that one bore joins, mm; null where there are none: the floors below its narrowest stretch against those above it. */
export function webWithin({ profile }: Drilling): number | null {
  const neck = profile.reduce((least, p) => (p.r < least.r ? p : least), firstOf(profile) as Profile[number]);
  const at = profile.indexOf(neck);
  const chainOf = (points: Profile) =>
    points.slice(0, -1).flatMap((p, i) => {
      const next = points[i + 1] as Profile[number];
      const level = p.z === next.z && p.r !== next.r;
      return level
        ? [
            [
              { u: p.r, z: p.z },
              { u: next.r, z: next.z },
            ] as const,
          ]
        : [];
    });
  const gap = chainDistance(chainOf(profile.slice(0, at + 1)), chainOf(profile.slice(at)));
  return Number.isFinite(gap) ? gap : null;
}

/** Heights between which the body is there at a distance from the axis. */
function bodyHeights(outer: Profile, radius: number): Span {
  const reached = chainWider(profileChain(outer, 0, 1), 0, 1, Math.max(0, radius)).flat();
  return { low: Math.min(...reached.map((p) => p.z)), high: Math.max(...reached.map((p) => p.z)) };
}

/**
 * How deep the lower mouth of a hole lies under metal of the body that goes on below it, mm: a spigot, a shoulder or a raised ring.
 * 0 where it opens freely. `clear` is the radius of the pocket that frees the middle of that metal.
 */
function coveredBelow(outer: Profile, hole: Profile, offset: number, mouth: number, clear: number): number {
  const below = [...outer.filter((p) => p.z < mouth - rounding).map((p) => p.r), radiusAt(outer, mouth, 'below')];
  const metal = Math.max(0, ...below.filter((r) => !Number.isNaN(r)));
  const r = radiusAt(hole, mouth, 'above');
  const covered = Math.min(metal - clear, metal - (offset - r), offset + r - clear);
  return covered > rounding ? covered : 0;
}

/**
 * Web between a drilling and the outside of the part (rim, steps, and the face under a blind hole), mm. Negative: where it breaks out
 * of the rim, how far a blind end stands out of the face, or how far its mouth reaches under a spigot or shoulder.
 * @param pockets drillings on the axis that free the middle of a face (a raised ring's inside); none by default
 */
export function webToOutside(outer: Profile, drilling: Drilling, pockets: readonly Drilling[] = []): number {
  const { profile } = drilling;
  const offset = hypot(drilling.x, drilling.y);
  const inPlan = leastOver(radiiAtSharedHeights(outer, profile), (outside, r) => outside - offset - r);
  if (inPlan < 0) return inPlan;

  const body = bodyHeights(outer, offset);
  const [first, last] = [firstOf(profile), lastOf(profile)];
  if (first.r <= 0 && first.z < body.low) return first.z - body.low;
  if (last.r <= 0 && last.z > body.high) return body.high - last.z;
  const mouths: Span = {
    low: first.r > 0 ? Math.max(first.z, body.low) : everywhere.low,
    high: last.r > 0 ? Math.min(last.z, body.high) : everywhere.high,
  };
  const freed = (z: number, from: 'above' | 'below') =>
    Math.max(0, ...pockets.map((p) => radiusAt(p.profile, z, from)).filter((r) => !Number.isNaN(r)));
  const covered = Math.max(
    Number.isFinite(mouths.low) ? coveredBelow(outer, profile, offset, mouths.low, freed(mouths.low, 'below')) : 0,
    Number.isFinite(mouths.high)
      ? coveredBelow(turnedOver(outer), turnedOver(profile), offset, 0 - mouths.high, freed(mouths.high, 'above'))
      : 0,
  );
  if (covered > 0) return 0 - covered;

  const outside = profileChain(outer, 0, 1);
  return Math.min(
    chainDistance(bothWalls(profile, offset, mouths), chainBetween(outside, mouths.low, mouths.high)),
    webBehindMouth(profile, offset, mouths, 'low', outside),
    webBehindMouth(profile, offset, mouths, 'high', outside),
  );
}

/**
 * Web between a drilling and the nearer of two flats, mm. Infinity where the outside is given and no flat is cut in it beside the
 * drilling.
 * @param outer outside of the part: flats are there only where it is wider than they are; without it they have no ends
 */
export function webToFlats(
  flats: { readonly across: number; readonly angle: number },
  drilling: Drilling,
  outer?: Profile,
): number {
  const a = (flats.angle * Math.PI) / 180;
  const half = flats.across / 2;
  const towards = Math.abs(drilling.x * cos(a) + drilling.y * sin(a));
  const aside = Math.abs(drilling.y * cos(a) - drilling.x * sin(a));
  const { profile } = drilling;
  const ends = [firstOf(profile).z, lastOf(profile).z];
  // Beside a flat that does not reach so far, the rim is nearer than its plane.
  const reached = outer
    ? chainWider(profileChain(outer, 0, 1), 0, 1, hypot(half, aside)).map((s) => s.map((p) => p.z))
    : [ends];
  const heights = reached.filter(([from, to]) => from !== to) as [number, number][];
  const inPlan = heights.map(([from, to]) =>
    leastOver(
      radiiAtSharedHeights(profile, [
        { z: Math.min(from, to), r: half },
        { z: Math.max(from, to), r: half },
      ]),
      (r, flat) => flat - towards - r,
    ),
  );
  const least = Math.min(Number.POSITIVE_INFINITY, ...inPlan);
  if (least < 0) return least;
  const wall: Chain = heights.map(([from, to]) => [
    { u: half, z: from },
    { u: half, z: to },
  ]);
  return chainDistance(profileChain(profile, towards, 1), wall);
}
