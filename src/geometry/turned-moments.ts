/** Moments of plain volumes about the origin, and how they add up to mass properties. */
import type { MassProperties } from '../model/mass.ts';
import { hypot } from '../units/hypot.ts';
import { atan2, cos } from '../units/trig.ts';
import type { FlatsPlane } from './turned-curves.ts';

/** Volume, first and second moments about the origin: integrals of 1, x, y, z, x2, y2, z2, xy, xz, yz. mm. */
export interface Moments {
  v: number;
  x: number;
  y: number;
  z: number;
  xx: number;
  yy: number;
  zz: number;
  xy: number;
  xz: number;
  yz: number;
}

export function noMoments(): Moments {
  return { v: 0, x: 0, y: 0, z: 0, xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
}

/** Adds (sign 1) or takes away (sign -1) moments in place. */
export function addMoments(sum: Moments, part: Moments, sign: 1 | -1): void {
  sum.v += sign * part.v;
  sum.x += sign * part.x;
  sum.y += sign * part.y;
  sum.z += sign * part.z;
  sum.xx += sign * part.xx;
  sum.yy += sign * part.yy;
  sum.zz += sign * part.zz;
  sum.xy += sign * part.xy;
  sum.xz += sign * part.xz;
  sum.yz += sign * part.yz;
}

/**
 * Nodes and weights of Gauss-Legendre quadrature with 3 points on -1 to 1: exact for polynomials to the fifth
 * degree.
 */
export const GAUSS_3 = [
  [-Math.sqrt(3 / 5), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(3 / 5), 5 / 9],
] as const;

/**
 * Moments of an upright truncated cone about (x, y): radius r0 at z0, r1 at z1. Exact: the integrands are
 * polynomials of degree 4 in z at most. The section of radius r has area pi r2 and second moment pi r4 / 4
 * about its diameter.
 */
export function coneMoments(x: number, y: number, z0: number, z1: number, r0: number, r1: number): Moments {
  const m = noMoments();
  const half = (z1 - z0) / 2;
  for (const [node, weight] of GAUSS_3) {
    const z = (z0 + z1) / 2 + half * node;
    const r = (r0 + r1) / 2 + ((r1 - r0) / 2) * node;
    const area = Math.PI * r * r;
    addSection(m, half * weight, z, area, (area * r * r) / 4, (area * r * r) / 4, 0);
  }
  m.xx += x * x * m.v;
  m.yy += y * y * m.v;
  m.xy += x * y * m.v;
  m.x = x * m.v;
  m.y = y * m.v;
  m.xz = x * m.z;
  m.yz = y * m.z;
  return m;
}

/**
 * Moments of a truncated cone about the axis, cut by two flats. Where the circle reaches the flats, its
 * section is a disc less two segments, in closed form; it is summed over the height with the half width of
 * the flat as the variable, in which it is smooth, so that 16-point Gauss-Legendre on each panel errs by less
 * than 1e-10 of the whole.
 */
export function flattenedConeMoments(z0: number, z1: number, r0: number, r1: number, flats: FlatsPlane): Moments {
  const d = flats.half;
  if (Math.max(r0, r1) <= d) return coneMoments(0, 0, z0, z1, r0, r1);
  const m = noMoments();
  if (r0 === r1) {
    const s = flattenedDisc(r0, flats);
    for (const [node, weight] of GAUSS_3) {
      const half = (z1 - z0) / 2;
      addSection(m, half * weight, (z0 + z1) / 2 + half * node, s.area, s.xx, s.yy, s.xy);
    }
    return m;
  }
  const zOf = (r: number): number => z0 + ((z1 - z0) * (r - r0)) / (r1 - r0);
  if (Math.min(r0, r1) < d) {
    const zd = zOf(d);
    addMoments(m, r0 < d ? coneMoments(0, 0, z0, zd, r0, d) : coneMoments(0, 0, zd, z1, d, r1), 1);
  }
  const [ra, rb] = [Math.max(r0, d), Math.max(r1, d)];
  const [wa, wb] = [Math.sqrt((ra - d) * (ra + d)), Math.sqrt((rb - d) * (rb + d))];
  const panels = Math.min(64, Math.max(1, Math.ceil(Math.abs(wb - wa) / d)));
  const slope = (z1 - z0) / (r1 - r0);
  for (let k = 0; k < panels; k++) {
    const from = wa + ((wb - wa) * k) / panels;
    const half = (wb - wa) / panels / 2;
    for (const [node, weight] of GAUSS_16) {
      const w = from + half * (1 + node);
      const r = hypot(d, w);
      const s = flattenedDisc(r, flats);
      // dz = slope dr and dr = (w / r) dw
      addSection(m, slope * (w / r) * half * weight, zOf(r), s.area, s.xx, s.yy, s.xy);
    }
  }
  return m;
}

/**
 * Area and second moments of a disc of radius r >= half cut by two flats, about x and y. With u along the
 * flats' normal, d = half, h = sqrt(r2 - d2) and s = asin(d / r): area 2 (d h + r2 s); integral of u2 is r4 s
 * / 2 - d h (r2 - 2 d2) / 2; integral of v2 is d h3 / 3 + r2 (d h + r2 s) / 2 (textbook integrals of the
 * circle).
 */
function flattenedDisc(r: number, flats: FlatsPlane): { area: number; xx: number; yy: number; xy: number } {
  const d = flats.half;
  const h = Math.sqrt((r - d) * (r + d));
  const s = atan2(d, h);
  const area = 2 * (d * h + r * r * s);
  const uu = (r ** 4 * s - d * h * (r * r - 2 * d * d)) / 2;
  const vv = (d * h ** 3) / 3 + (r * r * (d * h + r * r * s)) / 2;
  const { nx, ny } = flats;
  return { area, xx: uu * nx * nx + vv * ny * ny, yy: uu * ny * ny + vv * nx * nx, xy: (uu - vv) * nx * ny };
}

function addSection(m: Moments, dz: number, z: number, area: number, xx: number, yy: number, xy: number): void {
  m.v += dz * area;
  m.z += dz * area * z;
  m.zz += dz * area * z * z;
  m.xx += dz * xx;
  m.yy += dz * yy;
  m.xy += dz * xy;
}

/**
 * Nodes and weights of n-point Gauss-Legendre quadrature on -1 to 1: roots of the Legendre polynomial by
 * Newton's rule.
 */
function gaussLegendre(n: number): readonly (readonly [number, number])[] {
  return Array.from({ length: n }, (_, i) => {
    let x = cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let pass = 0; pass < 20; pass++) {
      let [p0, p1] = [1, x];
      for (let k = 2; k <= n; k++) [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k];
      slope = (n * (x * p1 - p0)) / (x * x - 1);
      x -= p1 / slope;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)] as const;
  });
}

/** Nodes and weights with 16 points. */
export const GAUSS_16 = gaussLegendre(16);

/** Mass properties from moments and a density in g/mm3. Without volume the centre is the origin. */
export function massOf(m: Moments, density: number): MassProperties {
  if (m.v === 0) {
    return { volume: 0, mass: 0, centre: [0, 0, 0], inertia: { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 } };
  }
  const [cx, cy, cz] = [m.x / m.v, m.y / m.v, m.z / m.v];
  const xx = density * (m.xx - m.x * cx);
  const yy = density * (m.yy - m.y * cy);
  const zz = density * (m.zz - m.z * cz);
  return {
    volume: m.v,
    mass: m.v * density,
    centre: [cx, cy, cz],
    inertia: {
      xx: yy + zz,
      yy: xx + zz,
      zz: xx + yy,
      xy: density * (m.xy - m.x * cy),
      xz: density * (m.xz - m.x * cz),
      yz: density * (m.yz - m.y * cz),
    },
  };
}
