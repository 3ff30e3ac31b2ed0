/**
 * Circles as polygons, one rule for the outside and one for holes.
 *
 * Outside: inscribed, so never larger than the true part; corners on the axes, so that its bounding box is
 * exact. Holes: circumscribed, so never smaller; flats on the axes, so that a hole measures its nominal size
 * across them. Every ring of a curve has the same directions, so walls between rings are plain strips.
 */
import { type Curve, type FlatsPlane, SAME } from '../geometry/turned-curves.ts';
import { acos, atan2, cos, sin } from '../units/trig.ts';
import type { MeshBuilder, Ring, RingSection } from './mesh-builder.ts';

/**
 * Makes the ring of one curve at height z and radius r, mm. `step` is the smaller outside ring of a step on
 * flats.
 */
export type RingMaker = (builder: MeshBuilder, z: number, r: number, step?: Ring) => Ring;

/**
 * Corners of a ring are not put closer to a flat's edge than this, mm: shorter facets only trouble other
 * programs.
 */
const SHORTEST = 0.005;

/**
 * Sides of the polygon of a circle of radius r whose distance from the circle is at most chordError; a
 * multiple of 4 and at least 16. `inscribed` tells on which side of the circle it lies. Throws a RangeError
 * unless chordError > 0.
 */
export function sidesFor(r: number, chordError: number, inscribed: boolean): number {
  if (!(chordError > 0)) throw new RangeError(`the chord error must be more than 0 mm, not ${chordError}`);
  const cosine = inscribed ? 1 - chordError / r : r / (r + chordError);
  const needed = cosine > 0 ? Math.PI / acos(cosine) : 0;
  return Math.max(16, 4 * Math.ceil(needed / 4 - 1e-9));
}

/** Largest radius of a curve, mm. */
export function largestRadius(curve: Curve): number {
  return curve.stretches.reduce((r, s) => Math.max(r, s.r0, s.r1), 0);
}

/**
 * Unit vector at `turn` of a whole turn given as a fraction k / sides; exact on the axes and alike in all
 * quadrants.
 */
function direction(k: number, sides: number): readonly [number, number] {
  const quarter = sides / 4;
  const q = ((Math.floor(k / quarter) % 4) + 4) % 4;
  const within = ((k % quarter) + quarter) % quarter;
  const a = (2 * Math.PI * within) / sides;
  const c = within === 0 ? 1 : cos(a);
  const s = within === 0 ? 0 : sin(a);
  if (q === 0) return [c, s];
  if (q === 1) return [-s, c];
  if (q === 2) return [-c, -s];
  return [s, -c];
}

/** Most circles that are kept: parts have few kinds of holes. */
const mostKept = 64;
const kept = new Map<string, Float64Array>();

/** Directions once round, x and y in turn, from `first` of a side on. Holes of one size share them. */
function directions(sides: number, first: 0 | 0.5): Float64Array {
  const key = `${sides} ${first}`;
  const known = kept.get(key);
  if (known) return known;
  const made = new Float64Array(2 * sides);
  for (let k = 0; k < sides; k++) made.set(direction(k + first, sides), 2 * k);
  if (kept.size === mostKept) kept.clear();
  kept.set(key, made);
  return made;
}

/** Rings of a hole about (x, y): circumscribed. A radius of nought is a point. */
export function holeRings(x: number, y: number, sides: number): RingMaker {
  const grown = 1 / cos(Math.PI / sides);
  return (builder, z, r) =>
    r <= SAME ? point(builder, x, y, z) : circle(builder, sides, 0.5, { x, y, z, r: r * grown });
}

/** Rings of the outside: inscribed, and cut by the flats where the circle reaches them. */
export function outerRings(sides: number, flats: FlatsPlane | null): RingMaker {
  return (builder, z, r, step) => {
    if (r <= SAME) return point(builder, 0, 0, z, flats ? 4 : 1);
    if (flats) return flattened(builder, sides, flats, z, r, step);
    return circle(builder, sides, 0, { x: 0, y: 0, z, r });
  };
}

/** Half the width of the flat at radius r, mm: 0 where the circle does not reach it. */
export function flatHalfWidth(r: number, flats: FlatsPlane): number {
  return r <= flats.half + SAME ? 0 : Math.sqrt((r - flats.half) * (r + flats.half));
}

function point(builder: MeshBuilder, x: number, y: number, z: number, sections = 1): Ring {
  const section = { ids: [builder.vertex(x, y, z)], at: [0] };
  return { sections: Array.from({ length: sections }, () => section) };
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly r: number;
}

function circle(builder: MeshBuilder, sides: number, first: 0 | 0.5, { x, y, z, r }: Circle): Ring {
  const towards = directions(sides, first);
  const ids: number[] = [];
  const at: number[] = [];
  for (let k = 0; k < sides; k++) {
    ids.push(builder.vertex(x + r * (towards[2 * k] as number), y + r * (towards[2 * k + 1] as number), z));
    at.push(k);
  }
  ids.push(ids[0] as number);
  at.push(sides);
  return { sections: [{ ids, at }] };
}

/**
 * Four sections: arc, flat, arc, flat, starting at the end of the flat with the normal at +angle. Where the
 * circle does not reach the flats, they shrink to one point each, so that rings of all sizes correspond.
 */
function flattened(builder: MeshBuilder, sides: number, flats: FlatsPlane, z: number, r: number, step?: Ring): Ring {
  const w = flatHalfWidth(r, flats);
  const h = w > 0 ? flats.half : r;
  const corner = (sign: 1 | -1, along: number): number =>
    builder.vertex(sign * (h * flats.nx - along * flats.ny), sign * (h * flats.ny + along * flats.nx), z);
  const start1 = corner(1, -w);
  const end1 = w > 0 ? corner(1, w) : start1;
  const start2 = corner(-1, -w);
  const end2 = w > 0 ? corner(-1, w) : start2;
  const phi = atan2(w, h);
  const arc = (from: number, to: number, fromId: number, toId: number): RingSection => {
    const gap = SHORTEST / r;
    const ids = [fromId];
    const at = [from];
    const unit = (2 * Math.PI) / sides;
    for (let k = Math.ceil((from + gap) / unit); k * unit < to - gap; k++) {
      const [c, s] = direction(k, sides);
      ids.push(builder.vertex(r * c, r * s, z));
      at.push(k * unit);
    }
    ids.push(toId);
    at.push(to);
    return { ids, at };
  };
  const a = flats.angle;
  return {
    sections: [
      arc(a + phi, a + Math.PI - phi, end1, start2),
      flat(start2, end2, w, step?.sections[1]),
      arc(a + Math.PI + phi, a + 2 * Math.PI - phi, end2, start1),
      flat(start1, end1, w, step?.sections[3]),
    ],
  };
}

/** The edge along a flat, with the ends of the shorter flat of a step on it as further vertices. */
function flat(from: number, to: number, w: number, shorter: RingSection | undefined): RingSection {
  if (from === to) return { ids: [from], at: [0] };
  return { ids: [from, ...(shorter?.ids ?? []), to], at: [-w, ...(shorter?.at ?? []), w] };
}
