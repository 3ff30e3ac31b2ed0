/** Flat areas to triangles. */
import earcut, { refine } from 'earcut';
import { cos, sin } from '../units/trig.ts';
import { OutlinesMeet } from './finely-enough.ts';

/**
 * Triangles that fill an area, as vertex numbers, each counter-clockwise seen from +z.
 *
 * @param xyz positions of all vertices, three numbers each; only x and y are used
 * @param outline vertex numbers once round the area; `holes` the same for each hole in it; either direction
 * Every vertex given is a corner of some triangle, so that a wall that meets the area at its edge fits it
 * without gaps. Throws OutlinesMeet when the outlines touch or cross one another.
 */
export function fillArea(
  xyz: ArrayLike<number>,
  outline: readonly number[],
  holes: readonly (readonly number[])[],
): number[] {
  const ids = [...outline, ...holes.flat()];
  const starts: number[] = [];
  let count = outline.length;
  for (const hole of holes) {
    starts.push(count);
    count += hole.length;
  }
  const expected = ids.length + 2 * holes.length - 2;
  let spare: number[] | null = null;
  // Corners on one line may be dropped as needless, or make a triangle too thin to keep its area in single
  // precision. They are all needed here, and a turned copy has other corners on one line.
  for (const angle of [0, 0.35, 1.1, 2.3]) {
    const flat = turned(xyz, ids, angle);
    const triangles = earcut(flat, starts);
    if (triangles.length !== 3 * expected) continue;
    refine(triangles, flat);
    const thinnest = orient(triangles, flat);
    if (thinnest > THINNEST) return triangles.map((i) => ids[i] as number);
    if (thinnest > 0) spare ??= triangles.map((i) => ids[i] as number);
  }
  if (spare) return spare;
  throw new OutlinesMeet();
}

/**
 * Height of a triangle over its longest side, mm, that single precision is sure to keep at the size of such
 * parts.
 */
const THINNEST = 1e-4;

function turned(xyz: ArrayLike<number>, ids: readonly number[], angle: number): Float64Array {
  const flat = new Float64Array(ids.length * 2);
  const c = cos(angle);
  const s = sin(angle);
  for (let i = 0; i < ids.length; i++) {
    const id = ids[i] as number;
    const x = xyz[3 * id] as number;
    const y = xyz[3 * id + 1] as number;
    flat[2 * i] = c * x - s * y;
    flat[2 * i + 1] = s * x + c * y;
  }
  return flat;
}

/** Turns every triangle counter-clockwise; the least height of any over its longest side, mm. */
function orient(triangles: number[], flat: Float64Array): number {
  let thinnest = Infinity;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [
      2 * (triangles[t] as number),
      2 * (triangles[t + 1] as number),
      2 * (triangles[t + 2] as number),
    ];
    const [ax, ay] = [flat[a] as number, flat[a + 1] as number];
    const [ux, uy] = [(flat[b] as number) - ax, (flat[b + 1] as number) - ay];
    const [vx, vy] = [(flat[c] as number) - ax, (flat[c + 1] as number) - ay];
    const area = ux * vy - vx * uy;
    const longest2 = Math.max(ux * ux + uy * uy, vx * vx + vy * vy, (vx - ux) ** 2 + (vy - uy) ** 2);
    thinnest = Math.min(thinnest, Math.abs(area) / Math.sqrt(longest2));
    if (area < 0) {
      const second = triangles[t + 1] as number;
      triangles[t + 1] = triangles[t + 2] as number;
      triangles[t + 2] = second;
    }
  }
  return thinnest;
}
