/** Whether a mesh is a solid: closed, rightly oriented, in how many pieces and with how many openings. */
import type { Mesh } from '../model/mesh.ts';

export interface MeshHealth {
  /** Edges that do not occur exactly once in each direction. 0 for a closed, consistently oriented mesh. */
  readonly badEdges: number;
  /** Triangles whose area is nought. */
  readonly flatTriangles: number;
  /** Vertices - edges + faces. */
  readonly euler: number;
  /** Closed shells that enclose material. */
  readonly bodies: number;
  /** Closed shells that enclose a void within material. */
  readonly voids: number;
  /** Openings right through: the handles of all shells together. Meaningful only when `badEdges` is 0. */
  readonly genus: number;
}

/** Looks at every edge of a mesh. Vertices are told apart by number, and unused ones are not counted. */
export function checkMesh(mesh: Mesh): MeshHealth {
  const { positions: p, triangles } = mesh;
  const count = p.length / 3;
  const parent = new Int32Array(count).fill(-1);
  const find = (i: number): number => {
    let root = i;
    while ((parent[root] as number) >= 0 && parent[root] !== root) root = parent[root] as number;
    for (let k = i; k !== root; ) {
      const next = parent[k] as number;
      parent[k] = root;
      k = next;
    }
    return root;
  };
  const edges = new Map<number, number>();
  let flatTriangles = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const corner = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
    for (let k = 0; k < 3; k++) {
      const a = corner[k] as number;
      const b = corner[(k + 1) % 3] as number;
      const key = a * count + b;
      edges.set(key, (edges.get(key) ?? 0) + 1);
      if ((parent[a] as number) < 0) parent[a] = a;
      if ((parent[b] as number) < 0) parent[b] = b;
      parent[find(a)] = find(b);
    }
    if (!(doubleArea(p, corner) > 0)) flatTriangles++;
  }
  let badEdges = 0;
  for (const [key, times] of edges) {
    const a = Math.floor(key / count);
    const back = (key - a * count) * count + a;
    if (times !== 1 || edges.get(back) !== 1) badEdges++;
  }
  const volumes = new Map<number, number>();
  for (let t = 0; t < triangles.length; t += 3) {
    const shell = find(triangles[t] as number);
    volumes.set(shell, (volumes.get(shell) ?? 0) + spanned(p, triangles, t));
  }
  let vertices = 0;
  for (const root of parent) if (root >= 0) vertices++;
  const euler = vertices - edges.size / 2 + triangles.length / 3;
  let bodies = 0;
  for (const v of volumes.values()) if (v > 0) bodies++;
  return {
    badEdges,
    flatTriangles,
    euler,
    bodies,
    voids: volumes.size - bodies,
    genus: volumes.size - euler / 2,
  };
}

function doubleArea(p: Float64Array, [a, b, c]: [number, number, number]): number {
  const d = (i: number, j: number, k: number): number => (p[3 * i + k] as number) - (p[3 * j + k] as number);
  const [ux, uy, uz] = [d(b, a, 0), d(b, a, 1), d(b, a, 2)];
  const [vx, vy, vz] = [d(c, a, 0), d(c, a, 1), d(c, a, 2)];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
}

function spanned(p: Float64Array, triangles: Uint32Array, t: number): number {
  const at = (k: number, axis: number): number => p[3 * (triangles[t + k] as number) + axis] as number;
  return (
    at(0, 0) * (at(1, 1) * at(2, 2) - at(1, 2) * at(2, 1)) +
    at(0, 1) * (at(1, 2) * at(2, 0) - at(1, 0) * at(2, 2)) +
    at(0, 2) * (at(1, 0) * at(2, 1) - at(1, 1) * at(2, 0))
  );
}
