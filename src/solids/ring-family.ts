/**
 * Closed mesh of nested outlines: walls along every outline that bounds material, caps wherever material
 * starts or ends.
 *
 * At each height the outlines just below and just above it are taken together. They divide the plane into
 * areas; an area with material below only gets a cap facing up, with material above only one facing down.
 * Walls and caps share their vertices, so the result is closed by construction.
 */
import type { Slab } from '../geometry/nesting.ts';
import { type Curve, type FlatsPlane, radiusAt, SAME, type Stretch } from '../geometry/turned-curves.ts';
import type { Mesh } from '../model/mesh.ts';
import { cos } from '../units/trig.ts';
import { collarRound, collarWithin, type Round, roomsOf, roundOf } from './collar.ts';
import { loopOf, MeshBuilder, type Ring } from './mesh-builder.ts';
import { fillArea } from './triangulate.ts';
import { flatHalfWidth, type RingMaker } from './turned-ring.ts';

export interface RingedCurve {
  readonly curve: Curve;
  readonly rings: RingMaker;
}

/**
 * Outlines that do not cross, and their slabs from the lowest up, without gaps. Hole numbers are those of the
 * slabs.
 */
export interface Family {
  readonly outer: RingedCurve;
  readonly holes: readonly RingedCurve[];
  readonly flats: FlatsPlane | null;
  readonly slabs: readonly Slab[];
  readonly chordError: number;
}

/** One outline in the plane of a level. */
interface Node {
  /** Number of the hole; -1 for the outside. */
  readonly curve: number;
  readonly outer: boolean;
  readonly side: 'below' | 'above';
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly ring: Ring;
  readonly inner: Node[];
}

/** An area of a face: its outline, and the outlines of what is not part of it. */
interface Area {
  readonly outline: number[];
  readonly inner: Node[];
}

interface Loops {
  readonly outline: number[];
  readonly inner: number[][];
}

/** Builds the mesh of a family. Throws an Error when its outlines touch or cross. */
export function meshFamily(family: Family): Mesh {
  return new FamilyMesher(family).mesh();
}

/** A family of one curve, as a solid of its own. */
export function aloneFamily(ringed: RingedCurve, flats: FlatsPlane | null, chordError: number): Family {
  const slabs: Slab[] = [];
  for (const s of ringed.curve.stretches) {
    const last = slabs.at(-1);
    if (last && last.z1 < s.z0) slabs.push({ z0: last.z1, z1: s.z0, outer: null, holes: [] });
    slabs.push({ z0: s.z0, z1: s.z1, outer: { r0: s.r0, r1: s.r1 }, holes: [] });
  }
  return { outer: ringed, holes: [], flats, slabs, chordError };
}

class FamilyMesher {
  private readonly builder = new MeshBuilder();
  private readonly rings = new Map<string, Ring>();
  private readonly family: Family;

  constructor(family: Family) {
    this.family = family;
  }

  mesh(): Mesh {
    const { outer, holes, slabs } = this.family;
    this.walls(outer.curve, -1);
    for (const [i, hole] of holes.entries()) this.walls(hole.curve, i);
    for (let level = 0; level <= slabs.length; level++) this.caps(level);
    return this.builder.build();
  }

  /** Radius of a curve in a slab where it bounds material, at the slab's lower (0) or upper (1) end. */
  private radius(curve: number, slab: Slab | undefined, end: 0 | 1): number | null {
    if (!slab?.outer) return null;
    const here = curve < 0 ? slab.outer : slab.holes.find((h) => h.drilling === curve);
    if (!here) return null;
    return end === 0 ? here.r0 : here.r1;
  }

  /**
   * The ring of a curve at a level, as its stretch just below or just above meets it. Equal radii share one
   * ring.
   */
  private ringAt(curve: number, level: number, side: 'below' | 'above'): Ring {
    const { slabs, outer, holes, flats } = this.family;
    const below = this.radius(curve, slabs[level - 1], 1);
    const above = this.radius(curve, slabs[level], 0);
    const own = side === 'below' ? below : above;
    const other = side === 'below' ? above : below;
    if (own === null) throw new Error('a ring was asked for where its curve bounds nothing');
    // Two points that meet tip to tip stay two: one vertex between two cones would be a pinch.
    const same = other !== null && own > SAME && Math.abs(own - other) <= SAME;
    const key = `${curve} ${level} ${same ? 'both' : side}`;
    const known = this.rings.get(key);
    if (known) return known;
    const stepped = curve < 0 && flats !== null && other !== null && !same && other < own && other >= flats.half - SAME;
    const step = stepped ? this.ringAt(curve, level, side === 'below' ? 'above' : 'below') : undefined;
    const maker = curve < 0 ? outer.rings : (holes[curve] as RingedCurve).rings;
    const z = level < slabs.length ? (slabs[level] as Slab).z0 : (slabs[level - 1] as Slab).z1;
    const ring = maker(this.builder, z, same ? Math.min(own, other) : own, step);
    this.rings.set(key, ring);
    return ring;
  }

  /** Walls of one curve: each stretch in runs of slabs in which it bounds material. */
  private walls(curve: Curve, index: number): void {
    const { slabs } = this.family;
    for (const stretch of curve.stretches) {
      let from = -1;
      for (let i = 0; i <= slabs.length; i++) {
        const slab = slabs[i];
        const within = slab !== undefined && slab.z0 >= stretch.z0 && slab.z1 <= stretch.z1;
        const bounds = within && this.radius(index, slab, 0) !== null;
        if (bounds && from < 0) from = i;
        if (!bounds && from >= 0) {
          this.wall(index, stretch, from, i);
          from = -1;
        }
      }
    }
  }

  private wall(index: number, stretch: Stretch, from: number, to: number): void {
    const { slabs, outer, flats } = this.family;
    const facing = index < 0 ? 'out' : 'in';
    let lower = this.ringAt(index, from, 'above');
    if (index < 0 && flats) {
      const zs = flatHeights(
        stretch,
        (slabs[from] as Slab).z0,
        (slabs[to - 1] as Slab).z1,
        flats,
        this.family.chordError,
      );
      for (const z of zs) {
        const ring = outer.rings(this.builder, z, radiusAt(stretch, z));
        this.builder.wall(lower, ring, facing);
        lower = ring;
      }
    }
    this.builder.wall(lower, this.ringAt(index, to, 'below'), facing);
  }

  private caps(level: number): void {
    const { roots, outside } = this.tree(level);
    for (const root of roots) this.cap(root, outside, outside);
  }

  /** Outlines at which material changes in the plane of a level, each within the next larger one. */
  private tree(level: number): { roots: Node[]; outside: boolean } {
    const { slabs, outer, holes } = this.family;
    const nodes: Node[] = [];
    let outside = false;
    for (let i = -1; i < holes.length; i++) {
      const below = this.radius(i, slabs[level - 1], 1);
      const above = this.radius(i, slabs[level], 0);
      if (below !== null && above !== null && Math.abs(below - above) <= SAME) {
        if (i < 0) outside = below > SAME;
        continue;
      }
      const { x, y } = i < 0 ? outer.curve : (holes[i] as RingedCurve).curve;
      for (const [side, r] of [
        ['below', below],
        ['above', above],
      ] as const) {
        if (r === null || r <= SAME) continue;
        nodes.push({ curve: i, outer: i < 0, side, x, y, r, ring: this.ringAt(i, level, side), inner: [] });
      }
    }
    nodes.sort((a, b) => b.r - a.r);
    const roots: Node[] = [];
    for (const [i, node] of nodes.entries()) {
      const around = nodes.slice(0, i).findLast((n) => Math.hypot(n.x - node.x, n.y - node.y) < n.r);
      (around ? around.inner : roots).push(node);
    }
    return { roots, outside };
  }

  /**
   * Caps the area between an outline and those in it, then goes on inwards. `below`, `above`: material just
   * outside it.
   */
  private cap(node: Node, below: boolean, above: boolean): void {
    const inBelow = node.side === 'below' ? node.outer : below;
    const inAbove = node.side === 'above' ? node.outer : above;
    if (inBelow !== inAbove) {
      const annulus = this.annulusIn(node);
      if (annulus) this.strip(node.ring, annulus, inBelow);
      else for (const area of this.areas(node)) this.fill(node, area, inBelow);
    }
    for (const inner of node.inner) this.cap(inner, inBelow, inAbove);
  }

  /** A flat strip between a ring and a smaller one about the same middle: a flat cone, and one that narrows upwards faces up. */
  private strip(wide: Ring, narrow: Ring, up: boolean): void {
    if (up) this.builder.wall(wide, narrow, 'out');
    else this.builder.wall(narrow, wide, 'out');
  }

  /** One area of a face, facing up or down: strips where there is room for collars, and triangles between them. */
  private fill(node: Node, { outline, inner }: Area, up: boolean): void {
    const loops = this.collared(node, outline, inner, up);
    const triangles = fillArea(this.builder.xyz, loops.outline, loops.inner);
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
      if (up) this.builder.triangle(a, b, c);
      else this.builder.triangle(a, c, b);
    }
  }

  /** Lays the collars of an area, with their strips; what is left to be filled. */
  private collared(node: Node, outline: number[], inner: readonly Node[], up: boolean): Loops {
    const plain = { outline, inner: inner.map(({ ring }) => loopOf(ring)) };
    const { flats } = this.family;
    const rounds = inner.map(({ ring, x, y }) => roundOf(this.builder, ring, x, y));
    const whole = roundOf(this.builder, node.ring, node.x, node.y);
    // What is cut by flats is no circle: only the holes about which all is known get collars.
    if (rounds.includes(null) || (!whole && !flats) || outline.length !== loopOf(node.ring).length) return plain;
    const toOutline = ({ x, y, corner }: Round): number => {
      const toRim = (whole ? whole.corner * cos(Math.PI / whole.sides) : node.r) - Math.hypot(x - node.x, y - node.y);
      return Math.min(toRim, flats ? flats.half - Math.abs(x * flats.nx + y * flats.ny) : toRim) - corner;
    };
    const known = rounds as Round[];
    const rooms = roomsOf(known, toOutline);
    const loops = known.map((round, i) => {
      const collar = collarRound(this.builder, round, rooms[i] as number);
      if (collar) this.strip(collar, round.ring, up);
      return loopOf(collar ?? round.ring);
    });
    const least = Math.min(node.r, ...known.map(toOutline));
    const within = whole && collarWithin(this.builder, whole, least);
    if (within) this.strip(node.ring, within, up);
    return { outline: within ? loopOf(within) : outline, inner: loops };
  }

  /** The inner ring, where a step of one curve leaves nothing but a ring: its corners stand opposite those of the outer one. */
  private annulusIn({ curve, outer, inner }: Node): Ring | null {
    const [only] = inner;
    if (!only || inner.length > 1 || only.curve !== curve || (outer && this.family.flats)) return null;
    return only.ring;
  }

  /**
   * The areas of a node: one, or two crescents where a step of the outside is cut by the flats at both its
   * radii.
   */
  private areas(node: Node): Area[] {
    const { flats } = this.family;
    const step = node.inner.find((n) => n.outer);
    if (!flats || !node.outer || !step || step.r < flats.half - SAME)
      return [{ outline: loopOf(node.ring), inner: node.inner }];
    const others = node.inner.filter((n) => n !== step);
    return [0, 2].map((k) => {
      const far = node.ring.sections[k]?.ids ?? [];
      const near = step.ring.sections[k]?.ids ?? [];
      const onSide = (n: Node): boolean => n.y * flats.nx - n.x * flats.ny > 0 === (k === 0);
      return { outline: [...far, ...near.toReversed()], inner: others.filter(onSide) };
    });
  }
}

/**
 * Heights between z0 and z1 at which a cone cut by flats needs further rings: where its circle just reaches
 * the flats, and then so that the curved edge of the flat keeps within the chord error. Ascending, ends left
 * out.
 */
function flatHeights(s: Stretch, z0: number, z1: number, flats: FlatsPlane, chordError: number): number[] {
  const [r0, r1] = [radiusAt(s, z0), radiusAt(s, z1)];
  const [w0, w1] = [flatHalfWidth(r0, flats), flatHalfWidth(r1, flats)];
  if (w0 === w1) return [];
  const zs: number[] = [];
  const heightOf = (r: number): number => z0 + ((z1 - z0) * (r - r0)) / (r1 - r0);
  const crossing = Math.min(r0, r1) < flats.half - SAME;
  if (crossing) zs.push(heightOf(flats.half));
  // Equal steps along the flat: a chord of length c on a curve of radius half the width across errs by c^2 /
  // (8 half).
  const steps = Math.ceil(Math.abs(w1 - w0) / Math.sqrt(8 * flats.half * chordError));
  for (let k = 1; k < steps; k++) {
    const w = w0 + ((w1 - w0) * k) / steps;
    zs.push(heightOf(Math.hypot(flats.half, w)));
  }
  const inside = zs.filter((z) => z - z0 > SAME && z1 - z > SAME).sort((a, b) => a - b);
  return inside.filter((z, i) => i === 0 || z - (inside[i - 1] as number) > SAME);
}
