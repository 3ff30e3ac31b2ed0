/** Area, centroid and second moments of a contour, exactly, and the mass of a sheet part from them. */
import type { MassProperties } from '../model/mass.ts';
import type { Contour, SheetPart } from '../model/sheet.ts';
import { cos, sin } from '../units/trig.ts';
import { type ArcStretch, type Stretch, stretchesOf } from './contour-stretch.ts';

/**
 * Integrals over the area within a contour, about the origin. All of them change sign with the direction of
 * travel.
 */
export interface AreaMoments {
  /** Signed area, mm2: positive where the contour runs counter-clockwise. */
  readonly area: number;
  /** First moments: integrals of x and of y, mm3. */
  readonly x: number;
  readonly y: number;
  /** Second moments: integrals of x^2, y^2 and x y, mm4. */
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

interface MutableMoments {
  area: number;
  x: number;
  y: number;
  xx: number;
  yy: number;
  xy: number;
}

/**
 * The moments of the area within one contour, about the origin, in closed form: the polygon of the chords
 * (Green's theorem on straight lines), and the circular segment between each arc and its chord (sector less
 * triangle). Meant for arcs whose radius is at most some thousand times the part's size: flatter ones lose
 * digits.
 * Source: Green's theorem; sector and triangle integrals, integral calculus.
 */
export function areaMoments(contour: Contour): AreaMoments {
  return stretchMoments(stretchesOf(contour));
}

/** The moments within stretches that bound an area together, in any order, each with the area on its left. */
export function stretchMoments(stretches: readonly Stretch[]): AreaMoments {
  const sum: MutableMoments = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  for (const stretch of stretches) {
    addChord(sum, stretch.x1, stretch.y1, stretch.x2, stretch.y2);
    if (stretch.kind === 'arc') addSegment(sum, stretch);
  }
  return sum;
}

/** The triangle from the origin to one chord. */
function addChord(sum: MutableMoments, x1: number, y1: number, x2: number, y2: number): void {
  const cross = x1 * y2 - x2 * y1;
  sum.area += cross / 2;
  sum.x += (cross * (x1 + x2)) / 6;
  sum.y += (cross * (y1 + y2)) / 6;
  sum.xx += (cross * (x1 * x1 + x1 * x2 + x2 * x2)) / 12;
  sum.yy += (cross * (y1 * y1 + y1 * y2 + y2 * y2)) / 12;
  sum.xy += (cross * (x1 * y2 + 2 * x1 * y1 + 2 * x2 * y2 + x2 * y1)) / 24;
}

/**
 * The circular segment between an arc and its chord. u points from the centre to the arc's middle, v across
 * it.
 */
function addSegment(sum: MutableMoments, arc: ArcStretch): void {
  const half = arc.sweep / 2;
  const sine = sin(half);
  const cosine = cos(half);
  const area = arc.r ** 2 * (half - sine * cosine);
  const u = (2 / 3) * arc.r ** 3 * sine ** 3;
  const uu = (arc.r ** 4 / 4) * (half + sine * cosine - 2 * sine * cosine ** 3);
  const vv = (arc.r ** 4 / 4) * (half - sine * cosine - (2 / 3) * sine ** 3 * cosine);
  const middle = arc.start + half;
  const c = cos(middle);
  const s = sin(middle);
  const { x, y } = arc;
  sum.area += area;
  sum.x += x * area + u * c;
  sum.y += y * area + u * s;
  sum.xx += x * x * area + 2 * x * u * c + uu * c * c + vv * s * s;
  sum.yy += y * y * area + 2 * y * u * s + uu * s * s + vv * c * c;
  sum.xy += x * y * area + (x * s + y * c) * u + (uu - vv) * s * c;
}

/** Signed area of a contour, mm2: positive counter-clockwise; a circle counts as counter-clockwise. */
export function contourArea(contour: Contour): number {
  return areaMoments(contour).area;
}

/** Centroid of the area within a contour, mm. */
export function contourCentroid(contour: Contour): { readonly x: number; readonly y: number } {
  const { area, x, y } = areaMoments(contour);
  return { x: x / area, y: y / area };
}

/** Moments of a sheet part's face about the origin: outside less holes, whichever way the contours run. */
export function faceMoments(part: SheetPart): AreaMoments {
  const sum: MutableMoments = { area: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  const add = (contour: Contour, sign: number): void => {
    const m = areaMoments(contour);
    const k = m.area < 0 ? -sign : sign;
    sum.area += k * m.area;
    sum.x += k * m.x;
    sum.y += k * m.y;
    sum.xx += k * m.xx;
    sum.yy += k * m.yy;
    sum.xy += k * m.xy;
  };
  add(part.outside, 1);
  for (const hole of part.holes) add(hole, -1);
  return sum;
}

/**
 * Mass properties of a sheet part in closed form: a prism over its face from z = 0 to z = thickness.
 * Engravings do not count. Volume mm3, mass g, inertia about the centre of mass g.mm2.
 * @throws where the holes take the whole face
 */
export function sheetMass(part: SheetPart): MassProperties {
  const { thickness, material } = part;
  const face = faceMoments(part);
  if (!(face.area > 0)) throw new Error(`Part ${part.id}: the holes leave no area.`);
  const volume = face.area * thickness;
  const mass = volume * material.density;
  const x = face.x / face.area;
  const y = face.y / face.area;
  const sheet = thickness * material.density;
  const xx = sheet * (face.xx - face.area * x * x);
  const yy = sheet * (face.yy - face.area * y * y);
  const xy = sheet * (face.xy - face.area * x * y);
  const zz = (mass * thickness ** 2) / 12;
  return {
    volume,
    mass,
    centre: [x, y, thickness / 2],
    inertia: { xx: yy + zz, yy: xx + zz, zz: xx + yy, xy, xz: 0, yz: 0 },
  };
}
