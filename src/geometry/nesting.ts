/**
 * How the outlines of a turned part lie in one another, at every height.
 *
 * At each height the outside and the drillings are closed curves. When no two of them cross they are nested
 * or side by side, and the part is called laminar: its mesh can be built ring by ring and its mass is an
 * exact sum. Centres do not move with height and radii are linear in z between corners, so every clearance is
 * linear too and it is enough to look at both ends of every slab between two neighbouring heights.
 */
import type { TurnedPart } from '../model/part.ts';
import {
  type Curve,
  curvesOf,
  type FlatsPlane,
  radiusAt,
  SAME,
  stretchOver,
  type TurnedCurves,
} from './turned-curves.ts';

/**
 * A drilling that opens in the material of a slab: number in `TurnedCurves.drillings`, radii at the slab's
 * ends, mm.
 */
export interface SlabHole {
  readonly drilling: number;
  readonly r0: number;
  readonly r1: number;
}

/**
 * What lies between two neighbouring heights: the outside (null where there is no material) and the holes
 * that bound it.
 */
export interface Slab {
  readonly z0: number;
  readonly z1: number;
  readonly outer: { readonly r0: number; readonly r1: number } | null;
  /** Only holes whose wall is material: not those outside the part, nor those inside a wider hole. */
  readonly holes: readonly SlabHole[];
  /** Pairs of outlines that cross, by their places in `holes`; null stands for the outside. Absent where none do. */
  readonly crossings?: readonly (readonly [number, number | null])[];
}

/** Two outlines that cross: their ids and a height at which they do, mm. */
export interface Crossing {
  readonly a: string;
  readonly b: string;
  readonly z: number;
}

/** How far the facets of a mesh stand off from the true circles. The default is the true part. */
export interface Facets {
  /** Inscribed radius of the outside's polygon over its true radius; at most 1. */
  readonly outerInside: number;
  /** Circumscribed radius of each drilling's polygon over its true radius; at least 1. */
  readonly holeOutside: readonly number[];
  /** Least distance kept between two polygons, mm. */
  readonly margin: number;
}

export interface Nesting {
  readonly slabs: readonly Slab[];
  readonly crossing: Crossing | null;
}

/**
 * Circle between two bounds: the polygon lies between `inside` and `outside`. One pair for each end of a
 * slab.
 */
interface Ring {
  readonly x: number;
  readonly y: number;
  readonly inside: readonly [number, number];
  readonly outside: readonly [number, number];
}

type Relation = 'apart' | 'first in second' | 'second in first' | 'cross';

/** Rounding must not turn a tangent into a crossing. */
const ROUNDING = 1e-9;

/**
 * Slabs of a part and the first pair of outlines that cross, from the lowest height up. When outlines cross,
 * both are listed in their slabs as if they did not.
 */
export function nestingOf(curves: TurnedCurves, facets?: Facets): Nesting {
  const margin = facets ? facets.margin : -ROUNDING;
  const slabs: Slab[] = [];
  let crossing: Crossing | null = null;
  for (let i = 0; i + 1 < curves.heights.length; i++) {
    const z0 = curves.heights[i] as number;
    const z1 = curves.heights[i + 1] as number;
    const { slab, pair } = slabAt(curves, z0, z1, facets, margin);
    if (!crossing) crossing = levelCrossing(curves, slabs.at(-1), slab, facets, margin);
    if (!crossing && pair) crossing = named(curves, pair[0], pair[1], (z0 + z1) / 2);
    slabs.push(slab);
  }
  return { slabs, crossing };
}

/** The first two outlines of a part that cross at any height, or null for a laminar part. */
export function firstCrossing(part: TurnedPart): Crossing | null {
  return nestingOf(curvesOf(part)).crossing;
}

/** True when no two outlines of the part cross at any height. */
export function isLaminar(part: TurnedPart): boolean {
  return firstCrossing(part) === null;
}

/**
 * Outlines that bound material just above height z (mm), the outside first: id, centre and radius. Empty
 * above the part.
 */
export function nestingAt(part: TurnedPart, z: number): { id: string; x: number; y: number; r: number }[] {
  const curves = curvesOf(part);
  const slab = nestingOf(curves).slabs.find((s) => s.z0 <= z && z < s.z1);
  if (!slab?.outer) return [];
  const at = (r0: number, r1: number): number => radiusAt({ z0: slab.z0, z1: slab.z1, r0, r1 }, z);
  const outer = { id: curves.outer.id, x: 0, y: 0, r: at(slab.outer.r0, slab.outer.r1) };
  const holes = slab.holes.map((h) => {
    const c = curves.drillings[h.drilling] as Curve;
    return { id: c.id, x: c.x, y: c.y, r: at(h.r0, h.r1) };
  });
  return [outer, ...holes];
}

function slabAt(
  curves: TurnedCurves,
  z0: number,
  z1: number,
  facets: Facets | undefined,
  margin: number,
): { slab: Slab; pair: readonly [Curve, Curve] | null } {
  const body = stretchOver(curves.outer, z0, z1);
  if (!body) return { slab: { z0, z1, outer: null, holes: [] }, pair: null };
  const outer = { r0: radiusAt(body, z0), r1: radiusAt(body, z1) };
  const bodyRing = outerRing(outer, facets);
  const met: { hole: SlabHole; ring: Ring; curve: Curve; crosses: boolean }[] = [];
  for (const [drilling, curve] of curves.drillings.entries()) {
    const s = stretchOver(curve, z0, z1);
    if (!s) continue;
    const hole = { drilling, r0: radiusAt(s, z0), r1: radiusAt(s, z1) };
    const ring = holeRing(curve, hole, facets);
    const relation = againstBody(ring, bodyRing, curves.flats, margin);
    if (relation === 'second in first') return { slab: { z0, z1, outer: null, holes: [] }, pair: null };
    if (relation !== 'apart') met.push({ hole, ring, curve, crosses: relation === 'cross' });
  }
  // A hole within a wider hole bounds nothing, whatever else it meets.
  const open = met.filter((m) => !met.some((n) => n !== m && relate(m.ring, n.ring, margin) === 'first in second'));
  const crossings: [number, number | null][] = open.flatMap((m, i) => (m.crosses ? [[i, null]] : []));
  for (const [i, a] of open.entries()) {
    for (const [k, b] of open.entries()) {
      if (k > i && relate(a.ring, b.ring, margin) === 'cross') crossings.push([i, k]);
    }
  }
  const slab = { z0, z1, outer, holes: open.map((m) => m.hole) };
  const [first] = crossings;
  if (!first) return { slab, pair: null };
  const curveOf = (i: number | null): Curve => (i === null ? curves.outer : (open[i] as (typeof open)[number]).curve);
  return { slab: { ...slab, crossings }, pair: [curveOf(first[0]), curveOf(first[1])] };
}

/** Drillings are named in the order of the part, the outside last. */
function named(curves: TurnedCurves, a: Curve, b: Curve, z: number): Crossing {
  const rank = (c: Curve): number => (c === curves.outer ? Infinity : curves.drillings.indexOf(c));
  return rank(a) <= rank(b) ? { a: a.id, b: b.id, z } : { a: b.id, b: a.id, z };
}

/** Outlines that end in the plane between two slabs must not cross those that begin there. */
function levelCrossing(
  curves: TurnedCurves,
  below: Slab | undefined,
  above: Slab,
  facets: Facets | undefined,
  margin: number,
): Crossing | null {
  const z = above.z0;
  const flats = curves.flats;
  if (facets && flats && below?.outer && above.outer && below.outer.r1 !== above.outer.r0) {
    // A step whose smaller circle all but touches the flats leaves a strip too thin for facets.
    const gap = flats.half - Math.min(below.outer.r1, above.outer.r0);
    if (gap > SAME && gap < margin) return named(curves, curves.outer, curves.outer, z);
  }
  const lower = below ? levelRings(curves, below, 1, facets) : [];
  const upper = levelRings(curves, above, 0, facets);
  for (const a of lower) {
    for (const b of upper) {
      if (a.curve === b.curve) continue;
      const relation =
        a.curve === curves.outer
          ? againstBody(b.ring, a.ring, flats, margin)
          : b.curve === curves.outer
            ? againstBody(a.ring, b.ring, flats, margin)
            : relate(a.ring, b.ring, margin);
      if (relation === 'cross') return named(curves, a.curve, b.curve, z);
    }
  }
  return null;
}

function levelRings(
  curves: TurnedCurves,
  slab: Slab,
  end: 0 | 1,
  facets: Facets | undefined,
): { curve: Curve; ring: Ring }[] {
  if (!slab.outer) return [];
  const flat = (r: number): { r0: number; r1: number } => ({ r0: r, r1: r });
  const pick = (s: { r0: number; r1: number }): { r0: number; r1: number } => flat(end === 0 ? s.r0 : s.r1);
  const rings = [{ curve: curves.outer, ring: outerRing(pick(slab.outer), facets) }];
  for (const hole of slab.holes) {
    const curve = curves.drillings[hole.drilling] as Curve;
    rings.push({ curve, ring: holeRing(curve, { drilling: hole.drilling, ...pick(hole) }, facets) });
  }
  return rings;
}

function outerRing(outer: { r0: number; r1: number }, facets: Facets | undefined): Ring {
  const k = facets ? facets.outerInside : 1;
  return { x: 0, y: 0, inside: [outer.r0 * k, outer.r1 * k], outside: [outer.r0, outer.r1] };
}

function holeRing(curve: Curve, hole: SlabHole, facets: Facets | undefined): Ring {
  const k = facets ? (facets.holeOutside[hole.drilling] ?? 1) : 1;
  return { x: curve.x, y: curve.y, inside: [hole.r0, hole.r1], outside: [hole.r0 * k, hole.r1 * k] };
}

/** Relation of two circles over a slab, with the same sense at both ends. */
function relate(a: Ring, b: Ring, margin: number): Relation {
  const d = Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);
  const [outA, outB, inA, inB] = [a.outside, b.outside, a.inside, b.inside];
  if (d - outA[0] - outB[0] >= margin && d - outA[1] - outB[1] >= margin) return 'apart';
  if (inB[0] - outA[0] - d >= margin && inB[1] - outA[1] - d >= margin) return 'first in second';
  if (inA[0] - outB[0] - d >= margin && inA[1] - outB[1] - d >= margin) return 'second in first';
  return 'cross';
}

/**
 * Relation of a hole (first) and the outside with its flats (second). A hole that lies in the corner between
 * rim and flat without touching either is called a crossing: it is rare, and a general boolean is right for
 * it too.
 */
function againstBody(hole: Ring, body: Ring, flats: FlatsPlane | null, margin: number): Relation {
  const relation = relate(hole, body, margin);
  if (!flats || relation === 'apart' || relation === 'second in first') return relation;
  const offset = Math.abs(hole.x * flats.nx + hole.y * flats.ny);
  const both = (clearance: (end: 0 | 1) => number): boolean => clearance(0) >= margin && clearance(1) >= margin;
  if (both((e) => offset - hole.outside[e] - flats.half)) return 'apart';
  if (relation === 'first in second' && both((e) => flats.half - offset - hole.outside[e])) return relation;
  return 'cross';
}
