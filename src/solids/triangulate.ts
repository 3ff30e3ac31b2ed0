/** Flat areas to triangles. */
import earcut from 'earcut';

/**
 * Triangles that fill an area, as vertex numbers, each counter-clockwise seen from +z.
 *
 * @param xyz positions of all vertices, three numbers each; only x and y are used
 * @param outline vertex numbers once round the area; `holes` the same for each hole in it; either direction
 * Every vertex given is a corner of some triangle, so that a wall that meets the area at its edge fits it without gaps.
 * Throws an Error when the outlines touch or cross one another.
 */
export function fillArea(xyz: ArrayLike<number>, outline: readonly number[], holes: readonly (readonly number[])[]): number[] {
  const ids = [...outline, ...holes.flat()];
  const starts: number[] = [];
  let count = outline.length;
  for (const hole of holes) {
    starts.push(count);
    count += hole.length;
  }
  const expected = ids.length + 2 * holes.length - 2;
  // Corners on one line may be dropped as needless. They are needed here, and a turned copy has none on one line.
  for (const angle of [0, 0.35, 1.1, 2.3]) {
    const flat = turned(xyz, ids, angle);
    const triangles = orient(earcut(flat, starts), flat);
    if (triangles && triangles.length === 3 * expected) return triangles.map((i) => ids[i] as number);
  }
  throw new Error('an area with touching or crossing outlines cannot be filled');
}

function turned(xyz: ArrayLike<number>, ids: readonly number[], angle: number): Float64Array {
  const flat = new Float64Array(ids.length * 2);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  for (const [i, id] of ids.entries()) {
    const x = xyz[3 * id] as number;
    const y = xyz[3 * id + 1] as number;
    flat[2 * i] = c * x - s * y;
    flat[2 * i + 1] = s * x + c * y;
  }
  return flat;
}

/** Null when a triangle has no area. */
function orient(triangles: number[], flat: Float64Array): number[] | null {
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
    const [ax, ay] = [flat[2 * a] as number, flat[2 * a + 1] as number];
    const area =
      ((flat[2 * b] as number) - ax) * ((flat[2 * c + 1] as number) - ay) -
      ((flat[2 * c] as number) - ax) * ((flat[2 * b + 1] as number) - ay);
    if (area === 0) return null;
    if (area < 0) {
      triangles[t + 1] = c;
      triangles[t + 2] = b;
    }
  }
  return triangles;
}
