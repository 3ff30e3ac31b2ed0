/**
 * Mass properties and size of a closed mesh, summed over its triangles. Shares nothing with the closed forms
 * it checks.
 */
import type { MassProperties } from '../model/mass.ts';
import type { Mesh } from '../model/mesh.ts';

/** Smallest and largest coordinate in each direction, mm. */
export interface MeshBox {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** Bounding box. Throws a RangeError on an empty mesh. */
export function meshBox(mesh: Mesh): MeshBox {
  if (mesh.positions.length === 0) throw new RangeError('an empty mesh has no bounding box');
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < mesh.positions.length; i++) {
    const value = mesh.positions[i] as number;
    const axis = (i % 3) as 0 | 1 | 2;
    if (value < min[axis]) min[axis] = value;
    if (value > max[axis]) max[axis] = value;
  }
  return { min, max };
}

/**
 * Mass properties of a closed, outward-oriented mesh of one density (g/mm3).
 *
 * Each triangle spans a signed tetrahedron with the origin. For corners a, b, c and s = a + b + c, the
 * tetrahedron's volume is V = a . (b x c) / 6, its first moment V s / 4, and its second moment V (a a' + b b'
 * + c c' + s s') / 20 (textbook). The origin is moved to the middle of the box first, so that little is lost
 * in the sum.
 */
export function meshMass(mesh: Mesh, density: number): MassProperties {
  const box = meshBox(mesh);
  const o = [0, 1, 2].map((k) => ((box.min[k] as number) + (box.max[k] as number)) / 2) as [number, number, number];
  const p = mesh.positions;
  let volume = 0;
  let [mx, my, mz] = [0, 0, 0];
  let [xx, yy, zz, xy, xz, yz] = [0, 0, 0, 0, 0, 0];
  const at = (id: number): [number, number, number] => [
    (p[3 * id] as number) - o[0],
    (p[3 * id + 1] as number) - o[1],
    (p[3 * id + 2] as number) - o[2],
  ];
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const [ax, ay, az] = at(mesh.triangles[t] as number);
    const [bx, by, bz] = at(mesh.triangles[t + 1] as number);
    const [cx, cy, cz] = at(mesh.triangles[t + 2] as number);
    const v = (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    const [sx, sy, sz] = [ax + bx + cx, ay + by + cy, az + bz + cz];
    volume += v;
    mx += v * sx;
    my += v * sy;
    mz += v * sz;
    xx += v * (ax * ax + bx * bx + cx * cx + sx * sx);
    yy += v * (ay * ay + by * by + cy * cy + sy * sy);
    zz += v * (az * az + bz * bz + cz * cz + sz * sz);
    xy += v * (ax * ay + bx * by + cx * cy + sx * sy);
    xz += v * (ax * az + bx * bz + cx * cz + sx * sz);
    yz += v * (ay * az + by * bz + cy * cz + sy * sz);
  }
  const [gx, gy, gz] = [mx / 4 / volume, my / 4 / volume, mz / 4 / volume];
  const about = (sum: number, g: number, h: number): number => density * (sum / 20 - volume * g * h);
  const [cxx, cyy, czz] = [about(xx, gx, gx), about(yy, gy, gy), about(zz, gz, gz)];
  return {
    volume,
    mass: volume * density,
    centre: [gx + o[0], gy + o[1], gz + o[2]],
    inertia: {
      xx: cyy + czz,
      yy: cxx + czz,
      zz: cxx + cyy,
      xy: about(xy, gx, gy),
      xz: about(xz, gx, gz),
      yz: about(yz, gy, gz),
    },
  };
}
