/**
 * Moments of what drillings take away together where they cross one another or break out of the part.
 *
 * At each height that is an area bounded by lines and arcs, whose moments are closed forms. Over the height they are summed by
 * quadrature between the heights at which two outlines begin or cease to meet; parallel walls need none.
 */
import { hypot } from '../units/hypot.ts';
import { stretchMoments } from './contour-area.ts';
import { discUnion } from './disc-union.ts';
import type { FlatsPlane } from './turned-curves.ts';
import { addMoments, GAUSS_3, GAUSS_16, type Moments, noMoments } from './turned-moments.ts';

/** A drilling over a slab: radii at the slab's ends, linear between. mm */
export interface ConicHole {
  readonly x: number;
  readonly y: number;
  readonly r0: number;
  readonly r1: number;
}

/** The outside over a slab, about the axis. mm */
export interface ConicBody {
  readonly r0: number;
  readonly r1: number;
  readonly flats: FlatsPlane | null;
}

/** Halvings of a stretch of height at most; each narrows what a corner of three outlines can hide by four or more. */
const deepest = 12;
/** Two sums of one stretch that agree to this share of the whole are right. */
const agreed = 1e-11;
/** Turning points nearer to each other than this share of the height are one. */
const same = 1e-9;

const between = (a: number, b: number, t: number) => a + (b - a) * t;

/** Shares of a slab's height, 0 and 1 included, at which two outlines begin or cease to meet. */
function turningPoints(holes: readonly ConicHole[], body: ConicBody | null): number[] {
  const rings = body ? [...holes, { x: 0, y: 0, r0: body.r0, r1: body.r1 }] : holes;
  const shares = [0, 1];
  const note = (below: number, above: number) => {
    if (below * above < 0) shares.push(below / (below - above));
  };
  rings.forEach((a, i) => {
    for (const b of rings.slice(i + 1)) {
      const d = hypot(a.x - b.x, a.y - b.y);
      note(d - a.r0 - b.r0, d - a.r1 - b.r1);
      note(d - a.r0 + b.r0, d - a.r1 + b.r1);
      note(d + a.r0 - b.r0, d + a.r1 - b.r1);
    }
    if (!body?.flats) return;
    const offset = a.x * body.flats.nx + a.y * body.flats.ny;
    for (const gap of [body.flats.half - offset, body.flats.half + offset]) {
      note(gap - a.r0, gap - a.r1);
      note(gap + a.r0, gap + a.r1);
    }
  });
  shares.sort((a, b) => a - b);
  // Equal holes meet at equal heights, but for rounding.
  return [...shares.filter((share, i) => share < 1 && share - (shares[i - 1] ?? -1) > same), 1];
}

/**
 * Moments, about the origin, of all that the holes take away together between two heights, counted once.
 * @param holes that cross; no two about one centre
 * @param body only what lies within it counts; null where the holes keep within it
 * @returns exact to rounding between parallel walls, to 1e-10 of the volume where walls are conical
 */
export function crossingMoments(z0: number, z1: number, holes: readonly ConicHole[], body: ConicBody | null): Moments {
  const sum = noMoments();
  const areaAt = (t: number) => {
    const discs = holes.map(({ x, y, r0, r1 }) => ({ x, y, r: between(r0, r1, t) }));
    const bounds = body && { r: between(body.r0, body.r1, t), flats: body.flats };
    return stretchMoments(discUnion(discs, bounds));
  };
  const addLevel = (to: Moments, level: ReturnType<typeof areaAt>, t: number, share: number) => {
    const [z, dz] = [between(z0, z1, t), share * (z1 - z0)];
    to.v += dz * level.area;
    to.x += dz * level.x;
    to.y += dz * level.y;
    to.z += dz * level.area * z;
    to.xx += dz * level.xx;
    to.yy += dz * level.yy;
    to.zz += dz * level.area * z * z;
    to.xy += dz * level.xy;
    to.xz += dz * level.x * z;
    to.yz += dz * level.y * z;
  };

  const isUpright = [...holes, ...(body ? [body] : [])].every(({ r0, r1 }) => r0 === r1);
  if (isUpright) {
    const level = areaAt(0.5);
    for (const [node, weight] of GAUSS_3) addLevel(sum, level, (1 + node) / 2, weight / 2);
    return sum;
  }

  // s runs from 0 to 1 between two turning points, at rest at both: there the area grows as a root or a power of 3/2 of the height.
  const panel = (low: number, high: number, from: number, to: number): Moments => {
    const m = noMoments();
    for (const [node, weight] of GAUSS_16) {
      const s = between(from, to, (1 + node) / 2);
      const t = between(low, high, s * s * (3 - 2 * s));
      addLevel(m, areaAt(t), t, (((high - low) * (to - from) * weight) / 2) * 6 * s * (1 - s));
    }
    return m;
  };
  const whole = holes.reduce((volume, { r0, r1 }) => volume + Math.PI * Math.max(r0, r1) ** 2 * (z1 - z0), 0);
  const refine = (low: number, high: number, from: number, to: number, coarse: Moments, depth: number): void => {
    const middle = (from + to) / 2;
    const first = panel(low, high, from, middle);
    const second = panel(low, high, middle, to);
    if (depth === deepest || Math.abs(first.v + second.v - coarse.v) <= agreed * whole) {
      addMoments(sum, first, 1);
      addMoments(sum, second, 1);
      return;
    }
    refine(low, high, from, middle, first, depth + 1);
    refine(low, high, middle, to, second, depth + 1);
  };
  const turns = turningPoints(holes, body);
  turns.slice(1).forEach((high, i) => {
    const low = turns[i] as number;
    refine(low, high, 0, 1, panel(low, high, 0, 1), 0);
  });
  return sum;
}
