/** Puts a mesh on the printer's bed. */
import type { Mesh } from '../model/mesh.ts';

/**
 * The mesh moved along z so that its lowest point is at z = 0 exactly. With `flip` it is first turned half
 * round about the x axis, so that the face that was up lies on the bed; what was right way out stays so. A
 * new mesh; an empty one stays empty.
 */
export function seat(mesh: Mesh, flip = false): Mesh {
  const positions = mesh.positions.slice();
  let lowest = Infinity;
  for (let i = 0; i < positions.length; i += 3) {
    if (flip) {
      positions[i + 1] = 0 - (positions[i + 1] as number);
      positions[i + 2] = 0 - (positions[i + 2] as number);
    }
    lowest = Math.min(lowest, positions[i + 2] as number);
  }
  for (let i = 2; i < positions.length; i += 3) positions[i] = (positions[i] as number) - lowest;
  return { positions, triangles: mesh.triangles.slice() };
}
