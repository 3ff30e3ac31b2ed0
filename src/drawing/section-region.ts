/**
 * The area that a cut through a turned part leaves, as exact closed outlines.
 *
 * The picture's plane is made of two half-planes that meet on the axis: x >= 0 is the cut at one angle, x <= 0 the cut at another.
 * At each height the material is a few intervals of x whose ends run straight between the corners of profiles. So the area is
 * built slab by slab between those corners, and its outline is what the slabs do not share. mm throughout.
 */
import type { Point } from '../model/drawing.ts';
import type { Profile } from '../model/part.ts';
import { cos, sin } from '../units/trig.ts';
import { slopes } from './turned-profile.ts';

/** Between two heights: everything from the left line to the right line. */
export interface Band {
  readonly z0: number;
  readonly z1: number;
  readonly left: readonly [number, number];
  readonly right: readonly [number, number];
}

interface Line {
  readonly z0: number;
  readonly z1: number;
  readonly x: readonly [number, number];
}

interface Span {
  readonly left: Line;
  readonly right: Line;
}

interface Slab {
  readonly z0: number;
  readonly z1: number;
  readonly spans: readonly Span[];
}

const least = 1e-7;

const lineAt = (line: Line, z: number): number =>
  line.x[0] + ((line.x[1] - line.x[0]) * (z - line.z0)) / (line.z1 - line.z0);

const leftOf = (b: Band): Line => ({ z0: b.z0, z1: b.z1, x: b.left });
const rightOf = (b: Band): Line => ({ z0: b.z0, z1: b.z1, x: b.right });

/** Bands of the outside, from -r to r; `limit` holds each side's reach where flats cut the round. */
export function outsideBands(outer: Profile, limit: { left: number; right: number }): Band[] {
  return slopes(outer).flatMap((s) => {
    const cuts = [limit.left, limit.right].flatMap((x) => {
      const t = (x - s.r0) / (s.r1 - s.r0);
      return t > 0 && t < 1 ? [t] : [];
    });
    const ts = [0, ...cuts.sort((a, b) => a - b), 1];
    return ts.slice(1).flatMap((t1, i) => {
      const t0 = ts[i] as number;
      const r = (t: number): number => s.r0 + (s.r1 - s.r0) * t;
      const z = (t: number): number => s.z0 + (s.z1 - s.z0) * t;
      if (z(t1) - z(t0) < least) return [];
      return [
        {
          z0: z(t0),
          z1: z(t1),
          left: [-Math.min(r(t0), limit.left), -Math.min(r(t1), limit.left)] as const,
          right: [Math.min(r(t0), limit.right), Math.min(r(t1), limit.right)] as const,
        },
      ];
    });
  });
}

/**
 * Bands of one drilling where the half-plane at `angle` degrees cuts it, x positive outwards. A hole whose axis lies beside the
 * plane shows its chord; a cone beside the plane shows a hyperbola, drawn in twelve steps.
 */
export function drillingBands(
  hole: { readonly x: number; readonly y: number; readonly profile: Profile },
  angle: number,
): Band[] {
  const a = (angle * Math.PI) / 180;
  const along = hole.x * cos(a) + hole.y * sin(a);
  const beside = Math.abs(-hole.x * sin(a) + hole.y * cos(a));
  // Most holes of a part lie beside the plane, clear of it.
  if (hole.profile.every(({ r }) => r <= beside)) return [];
  return slopes(hole.profile).flatMap((s) => {
    const steps = beside < 1e-6 || Math.abs(s.r1 - s.r0) < 1e-9 ? 1 : 12;
    return Array.from({ length: steps }, (_, i): Band => {
      const at = (k: number): { z: number; half: number } => {
        const r = s.r0 + ((s.r1 - s.r0) * k) / steps;
        return {
          z: s.z0 + ((s.z1 - s.z0) * k) / steps,
          half: Math.sqrt(Math.max(0, r * r - beside * beside)),
        };
      };
      const from = at(i);
      const to = at(i + 1);
      const inner = (x: number): number => Math.max(0, x);
      return {
        z0: from.z,
        z1: to.z,
        left: [inner(along - from.half), inner(along - to.half)],
        right: [inner(along + from.half), inner(along + to.half)],
      };
    }).filter((b) => b.right[0] - b.left[0] > least || b.right[1] - b.left[1] > least);
  });
}

/** The same bands on the other side of the axis. */
export const mirrored = (bands: readonly Band[]): Band[] =>
  bands.map((b) => ({ ...b, left: [0 - b.right[0], 0 - b.right[1]], right: [0 - b.left[0], 0 - b.left[1]] }));

function heights(bands: readonly Band[]): number[] {
  const lines = bands.flatMap((b) => [leftOf(b), rightOf(b)]);
  const zs = bands.flatMap((b) => [b.z0, b.z1]);
  for (let i = 0; i < lines.length; i++) {
    const p = lines[i] as Line;
    for (let k = i + 1; k < lines.length; k++) {
      const q = lines[k] as Line;
      const low = Math.max(p.z0, q.z0);
      const high = Math.min(p.z1, q.z1);
      if (high - low < least) continue;
      const d0 = lineAt(p, low) - lineAt(q, low);
      const d1 = lineAt(p, high) - lineAt(q, high);
      if (d0 * d1 < 0) zs.push(low + ((high - low) * d0) / (d0 - d1));
    }
  }
  const sorted = zs.sort((a, b) => a - b);
  return sorted.filter((z, i) => i === 0 || z - (sorted[i - 1] as number) > least);
}

function slabSpans(solid: readonly Band[], voids: readonly Band[], z: number): Span[] {
  const within = (b: Band): boolean => b.z0 < z && b.z1 > z;
  let spans: Span[] = solid.filter(within).map((b) => ({ left: leftOf(b), right: rightOf(b) }));
  for (const v of voids.filter(within)) {
    const from = leftOf(v);
    const to = rightOf(v);
    const a = lineAt(from, z);
    const b = lineAt(to, z);
    spans = spans.flatMap((s) => {
      const left = lineAt(s.left, z);
      const right = lineAt(s.right, z);
      if (b <= left || a >= right) return [s];
      const out: Span[] = [];
      if (a > left + least) out.push({ left: s.left, right: from });
      if (b < right - least) out.push({ left: to, right: s.right });
      return out;
    });
  }
  return spans.sort((p, q) => lineAt(p.left, z) - lineAt(q.left, z));
}

/** The cut area, slab by slab. */
export function cutSlabs(solid: readonly Band[], voids: readonly Band[]): Slab[] {
  const zs = heights([...solid, ...voids]);
  return zs.slice(1).map((z1, i) => {
    const z0 = zs[i] as number;
    return { z0, z1, spans: slabSpans(solid, voids, (z0 + z1) / 2) };
  });
}

type Edge = readonly [Point, Point];

/** Where one set of intervals has material and the other has not, along a common height. */
function differences(below: readonly [number, number][], above: readonly [number, number][], z: number): Edge[] {
  const xs = [...below, ...above].flat().sort((a, b) => a - b);
  const has = (set: readonly [number, number][], x: number): boolean => set.some(([a, b]) => x > a && x < b);
  return xs.slice(1).flatMap((b, i): Edge[] => {
    const a = xs[i] as number;
    if (b - a < least) return [];
    const under = has(below, (a + b) / 2);
    const over = has(above, (a + b) / 2);
    if (under === over) return [];
    // Material lies to the left of every edge: it runs towards +x where the material is above it.
    return [
      over
        ? [
            { x: a, y: z },
            { x: b, y: z },
          ]
        : [
            { x: b, y: z },
            { x: a, y: z },
          ],
    ];
  });
}

function boundary(slabs: readonly Slab[]): Edge[] {
  const edges: Edge[] = [];
  const at = (slab: Slab | undefined, z: number): [number, number][] =>
    slab?.spans.map((s) => [lineAt(s.left, z), lineAt(s.right, z)]) ?? [];
  slabs.forEach((slab, i) => {
    for (const s of slab.spans) {
      const low = [lineAt(s.left, slab.z0), lineAt(s.right, slab.z0)] as const;
      const high = [lineAt(s.left, slab.z1), lineAt(s.right, slab.z1)] as const;
      edges.push(
        [
          { x: high[0], y: slab.z1 },
          { x: low[0], y: slab.z0 },
        ],
        [
          { x: low[1], y: slab.z0 },
          { x: high[1], y: slab.z1 },
        ],
      );
    }
    edges.push(...differences(at(slabs[i - 1], slab.z0), at(slab, slab.z0), slab.z0));
    if (i === slabs.length - 1) edges.push(...differences(at(slab, slab.z1), [], slab.z1));
  });
  return edges;
}

const key = (p: Point): string => `${Math.round(p.x * 1e5)},${Math.round(p.y * 1e5)}`;

function straightened(loop: readonly Point[]): Point[] {
  return loop.filter((p, i) => {
    const a = loop.at(i - 1) as Point;
    const b = loop[(i + 1) % loop.length] as Point;
    const cross = (p.x - a.x) * (b.y - p.y) - (p.y - a.y) * (b.x - p.x);
    return Math.abs(cross) > 1e-6 * Math.hypot(b.x - a.x, b.y - a.y);
  });
}

/** Outlines of the cut area: closed loops, material on the left, so inner loops run clockwise. */
export function outlines(slabs: readonly Slab[]): Point[][] {
  const from = new Map<string, Edge[]>();
  for (const edge of boundary(slabs)) {
    if (key(edge[0]) === key(edge[1])) continue;
    from.set(key(edge[0]), [...(from.get(key(edge[0])) ?? []), edge]);
  }
  const loops: Point[][] = [];
  for (const start of from.keys()) {
    for (let first = from.get(start)?.pop(); first !== undefined; first = from.get(start)?.pop()) {
      const loop = [first[0]];
      let end = first[1];
      while (key(end) !== start) {
        const next = from.get(key(end))?.pop();
        if (next === undefined) break;
        loop.push(next[0]);
        end = next[1];
      }
      const corners = straightened(loop);
      if (corners.length > 2) loops.push(corners);
    }
  }
  return loops;
}

/** The stretches of a level line from x0 to x1 that lie in air just below and just above it. */
export function openStretches(slabs: readonly Slab[], z: number, x0: number, x1: number): [number, number][] {
  const near = slabs.filter((s) => Math.abs(s.z0 - z) < 1e-6 || Math.abs(s.z1 - z) < 1e-6 || (s.z0 < z && s.z1 > z));
  const solid = near
    .flatMap((s) => s.spans.map((p): [number, number] => [lineAt(p.left, z), lineAt(p.right, z)]))
    .sort((a, b) => a[0] - b[0]);
  const out: [number, number][] = [];
  let x = x0;
  for (const [a, b] of solid) {
    if (a > x && x < x1) out.push([x, Math.min(a, x1)]);
    x = Math.max(x, b);
  }
  if (x < x1) out.push([x, x1]);
  return out.filter(([a, b]) => b - a > 1e-4);
}
