/** Mesh of a sheet part: its face filled twice, and walls along every contour. */
import { polygonise } from '../geometry/contour-polygon.ts';
import type { Mesh } from '../model/mesh.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { finelyEnough } from './finely-enough.ts';
import { loopOf, MeshBuilder, type Ring } from './mesh-builder.ts';
import { fillArea } from './triangulate.ts';
import { CHORD_ERROR, type MeshOptions } from './turned-mesh.ts';

/**
 * Closed mesh of a flat sheet part from z = 0 to z = thickness, without its engravings. The outside is never
 * larger than drawn and holes never smaller; arcs keep within the chord error (mm, default 0.01), and closer
 * where less metal than that is left between two cuts. Throws OutlinesMeet when contours touch or cross.
 */
export function meshSheet(part: SheetPart, options: MeshOptions = {}): Mesh {
  return finelyEnough(options.chordError ?? CHORD_ERROR, (chordError) => meshedSheet(part, chordError));
}

function meshedSheet(part: SheetPart, chordError: number): Mesh {
  const builder = new MeshBuilder();
  const ring = (points: readonly Point[], z: number): Ring => {
    const ids = points.map(([x, y]) => builder.vertex(x, y, z));
    ids.push(ids[0] as number);
    return { sections: [{ ids, at: ids.map((_, k) => k) }] };
  };
  /** Corner of the upper face over each corner of the lower one. */
  const over = new Map<number, number>();
  /** Walls along a contour; the corners of its lower edge. */
  const walled = (contour: Contour, side: 'inside' | 'outside', facing: 'out' | 'in'): number[] => {
    const points = cornersOf(polygonise(contour, chordError, side));
    const [lower, upper] = [ring(points, 0), ring(points, part.thickness)];
    builder.wall(lower, upper, facing);
    const [below, above] = [loopOf(lower), loopOf(upper)];
    for (const [i, id] of below.entries()) over.set(id, above[i] as number);
    return below;
  };
  const outside = walled(part.outside, 'inside', 'out');
  const holes = part.holes.map((hole) => walled(hole, 'outside', 'in'));
  // Both faces are alike: what fills one fills the other.
  const triangles = fillArea(builder.xyz, outside, holes);
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
    builder.triangle(a, c, b);
  }
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
    builder.triangle(over.get(a) as number, over.get(b) as number, over.get(c) as number);
  }
  return builder.build();
}

type Point = readonly [number, number];

/**
 * Counter-clockwise corners: points on a straight line between their neighbours, and repeated ones, are left
 * out.
 */
export function cornersOf(points: readonly Point[]): readonly Point[] {
  let area = 0;
  const corners = points.filter(([x, y], i) => {
    const [px, py] = points.at(i - 1) as Point;
    const [nx, ny] = points[(i + 1) % points.length] as Point;
    area += px * y - x * py;
    const cross = (x - px) * (ny - y) - (y - py) * (nx - x);
    return Math.abs(cross) > 1e-9 * Math.hypot(x - px, y - py) * Math.hypot(nx - x, ny - y);
  });
  return area < 0 ? corners.toReversed() : corners;
}
