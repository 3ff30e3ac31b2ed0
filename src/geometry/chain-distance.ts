/**
 * Distance between two profiles of solids of revolution with parallel axes.
 *
 * The nearest points of two such solids lie in the plane that holds both axes, so the three-dimensional question is a flat one:
 * the distance between two chains of straight lines in that plane. Coordinates: u across, z along the axes; mm.
 */

import type { Profile } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';

export interface ChainPoint {
  readonly u: number;
  readonly z: number;
}
export type Stretch = readonly [ChainPoint, ChainPoint];
export type Chain = readonly Stretch[];

/** Distance from a point to a straight stretch. */
function pointToStretch(p: ChainPoint, a: ChainPoint, b: ChainPoint): number {
  const du = b.u - a.u;
  const dz = b.z - a.z;
  const length2 = du * du + dz * dz;
  const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.z - a.z) * dz) / length2));
  return hypot(a.u + t * du - p.u, a.z + t * dz - p.z);
}

const side = (a: ChainPoint, b: ChainPoint, p: ChainPoint) => (b.u - a.u) * (p.z - a.z) - (b.z - a.z) * (p.u - a.u);

/** True where two stretches properly cross. */
function cross(a: ChainPoint, b: ChainPoint, c: ChainPoint, d: ChainPoint): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Distance between two ranges of numbers; 0 where they overlap. */
function between(a: number, b: number, c: number, d: number): number {
  return Math.max(0, Math.min(c, d) - Math.max(a, b), Math.min(a, b) - Math.max(c, d));
}

/** True where the boxes of two stretches stand farther apart than a distance, beyond rounding. */
function boxesApart(a: ChainPoint, b: ChainPoint, c: ChainPoint, d: ChainPoint, distance: number): boolean {
  const du = between(a.u, b.u, c.u, d.u);
  const dz = between(a.z, b.z, c.z, d.z);
  return du * du + dz * dz > distance * distance * (1 + 1e-12);
}

/** Least distance between two chains, mm; 0 where they cross. Infinity when one is empty. */
export function chainDistance(first: Chain, second: Chain): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of first) {
    for (const [c, d] of second) {
      if (boxesApart(a, b, c, d, least)) continue;
      if (cross(a, b, c, d)) return 0;
      least = Math.min(
        least,
        pointToStretch(a, c, d),
        pointToStretch(b, c, d),
        pointToStretch(c, a, b),
        pointToStretch(d, a, b),
      );
    }
  }
  return least;
}

/** Corners joined one to the next; stretches of no length are left out. */
export function chainThrough(points: readonly ChainPoint[]): Chain {
  const out: Stretch[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i] as ChainPoint;
    const b = points[i + 1] as ChainPoint;
    if (a.u !== b.u || a.z !== b.z) out.push([a, b]);
  }
  return out;
}

/** A profile about an axis at u = `centre`, drawn to one side of it and closed to the axis at both ends. */
export function profileChain(profile: Profile, centre: number, sign: 1 | -1): Chain {
  const first = profile[0];
  const last = profile[profile.length - 1];
  if (!first || !last) return [];
  const corners: ChainPoint[] = [{ u: centre, z: first.z }];
  for (const { z, r } of profile) corners.push({ u: centre + sign * r, z });
  corners.push({ u: centre, z: last.z });
  return chainThrough(corners);
}

/** The part of each stretch on which a measure that runs straight along it is above zero. */
function keepPositive(chain: Chain, measure: (p: ChainPoint) => number): Chain {
  const kept: Stretch[] = [];
  for (const stretch of chain) {
    const [a, b] = stretch;
    const ma = measure(a);
    const mb = measure(b);
    if (ma <= 0 && mb <= 0) continue;
    if (ma >= 0 && mb >= 0) {
      kept.push(stretch);
      continue;
    }
    const t = ma / (ma - mb);
    const at = { u: a.u + t * (b.u - a.u), z: a.z + t * (b.z - a.z) };
    kept.push(ma > 0 ? [a, at] : [at, b]);
  }
  return kept;
}

/** What of a chain lies strictly between two heights; level stretches at the heights themselves go. */
export function chainBetween(chain: Chain, from: number, to: number): Chain {
  const above = Number.isFinite(from) ? keepPositive(chain, (p) => p.z - from) : chain;
  return Number.isFinite(to) ? keepPositive(above, (p) => to - p.z) : above;
}

/** What of a one-sided chain about u = `centre` is wider than a radius. */
export function chainWider(chain: Chain, centre: number, sign: 1 | -1, radius: number): Chain {
  return keepPositive(chain, (p) => sign * (p.u - centre) - radius);
}

/** The level stretches of a chain at one height. */
export function levelAt(chain: Chain, z: number): Chain {
  return chain.filter(([a, b]) => a.z === z && b.z === z);
}
