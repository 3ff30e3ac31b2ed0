/** Mesh of a folded sheet part: the flats as they are, each bend as strips of its cylinder. */
import { polygonise } from '../geometry/contour.ts';
import { bendZones, foldOf } from '../geometry/fold.ts';
import type { Mesh } from '../model/mesh.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { acos } from '../units/trig.ts';
import { finelyEnough } from './finely-enough.ts';
import { MeshBuilder } from './mesh-builder.ts';
import { cornersOf, meshSheet } from './sheet-mesh.ts';
import { fillArea } from './triangulate.ts';
import { CHORD_ERROR, type MeshOptions } from './turned-mesh.ts';

type Point = readonly [x: number, y: number];

/** Points nearer than this along x, mm, lie on a line. */
const onLine = 1e-9;

/**
 * Closed mesh of a part with its bends made; the flat mesh where there are none. Holes must lie clear of the bent stretches, and
 * the outline must cross each of them in two straight edges. Bends keep within the chord error (mm, default 0.01) on their outer
 * face, and closer where less metal than that is left between two cuts. Throws an Error otherwise.
 */
export function meshFolded(part: SheetPart, options: MeshOptions = {}): Mesh {
  if (!part.bends?.length) return meshSheet(part, options);
  return finelyEnough(options.chordError ?? CHORD_ERROR, (chordError) => meshedFolds(part, chordError));
}

function meshedFolds(part: SheetPart, chordError: number): Mesh {
  const zones = bendZones(part);
  const fold = foldOf(part);
  const builder = new MeshBuilder();
  const cuts = zones.flatMap((zone) => {
    const outer = zone.radius + part.thickness;
    const step = 2 * acos(Math.max(0, 1 - chordError / outer));
    const count = Math.max(2, Math.ceil(Math.abs(zone.turn) / step));
    return Array.from({ length: count + 1 }, (_, i) => zone.from + ((zone.to - zone.from) * i) / count);
  });
  const outline = withCuts(cornersOf(polygonise(part.outside, chordError, 'inside')), cuts);
  const holes = part.holes.map((hole) => cornersOf(polygonise(hole, chordError, 'outside')));
  for (const [i, hole] of holes.entries()) clearOfBends(part.holes[i] as Contour, hole, zones, part.id);

  /** Vertices of a closed run of points at both faces, and the wall between them. */
  const walled = (points: readonly Point[], facing: 'out' | 'in'): { low: number[]; high: number[] } => {
    const at = (z: number) => points.map(([x, y]) => builder.vertex(...fold(x, y, z)));
    const [low, high] = [at(0), at(part.thickness)];
    const ring = (ids: readonly number[]) => ({
      sections: [{ ids: [...ids, ids[0] as number], at: [...ids, 0].map((_, k) => k) }],
    });
    builder.wall(ring(low), ring(high), facing);
    return { low, high };
  };
  const rim = walled(outline, 'out');
  const rims = holes.map((hole) => walled(hole, 'in'));
  // Flat positions by vertex number, to fill each piece of the faces where it still lies flat.
  const flat: number[] = [];
  const remember = (ids: readonly number[], points: readonly Point[]) =>
    ids.forEach((id, i) => {
      const [x, y] = points[i] as Point;
      [flat[3 * id], flat[3 * id + 1], flat[3 * id + 2]] = [x, y, 0];
    });
  for (const face of ['low', 'high'] as const) {
    remember(rim[face], outline);
    rims.forEach((ring, i) => {
      remember(ring[face], holes[i] as readonly Point[]);
    });
  }
  const bounds = [-Infinity, ...cuts, Infinity];
  for (let i = 0; i + 1 < bounds.length; i++) {
    const [from, to] = [bounds[i] as number, bounds[i + 1] as number];
    const within = (x: number) => x >= from - onLine && x <= to + onLine;
    const inside = outline.flatMap(([x], k) => (within(x) ? [k] : []));
    const own = holes.flatMap((hole, k) => (hole.every(([x]) => within(x)) ? [k] : []));
    for (const face of ['low', 'high'] as const) {
      const triangles = fillArea(
        flat,
        inside.map((k) => rim[face][k] as number),
        own.map((k) => (rims[k] as { low: number[]; high: number[] })[face]),
      );
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
        if (face === 'high') builder.triangle(a, b, c);
        else builder.triangle(a, c, b);
      }
    }
  }
  return builder.build();
}

/** The outline with a corner wherever it crosses one of the lines x = cut. @throws where a line is not crossed exactly twice */
function withCuts(points: readonly Point[], cuts: readonly number[]): Point[] {
  const out: Point[] = [];
  const crossed = new Map<number, number>(cuts.map((cut) => [cut, 0]));
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] as Point;
    out.push(a);
    const between = cuts.filter((cut) => (cut - a[0]) * (cut - b[0]) < 0);
    between.sort((p, q) => (b[0] > a[0] ? p - q : q - p));
    for (const cut of between) {
      crossed.set(cut, (crossed.get(cut) ?? 0) + 1);
      const share = (cut - a[0]) / (b[0] - a[0]);
      out.push([cut, a[1] + share * (b[1] - a[1])]);
    }
  });
  for (const [cut, times] of crossed) {
    if (times !== 2) throw new Error(`The outline crosses the bend at x = ${cut} ${times} times, not twice.`);
  }
  return out;
}

function clearOfBends(
  hole: Contour,
  points: readonly Point[],
  zones: readonly { from: number; to: number }[],
  id: string,
): void {
  const xs = points.map(([x]) => x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  if (zones.some((zone) => low < zone.to && high > zone.from))
    throw new Error(`Part ${id}: ${hole.feature} lies in a bend and cannot be folded.`);
}
