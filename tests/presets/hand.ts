/**
 * Volumes as a machinist adds them up on paper: cylinders and cones put together and taken away, from the sizes on the
 * drawing. Nothing here is taken from the program. Lengths mm, volumes mm3.
 */

export const cylinder = (r: number, h: number) => Math.PI * r * r * h;
/** Frustum of a cone. */
export const cone = (r1: number, r2: number, h: number) => (Math.PI * h * (r1 * r1 + r1 * r2 + r2 * r2)) / 3;

/** What a 45 degree chamfer takes off the edge of a cylinder. */
export const chamferOff = (r: number, c: number) => cylinder(r, c) - cone(r - c, r, c);
/** What a 45 degree chamfer takes out at the mouth of a hole, beyond the hole itself. */
export const mouthOff = (r: number, c: number) => cone(r, r + c, c) - cylinder(r, c);

/** A spigot with a lead chamfer, and the undercut at its foot. */
export const spigot = (r: number, h: number, lead: number, width: number, depth: number) =>
  cylinder(r, h) - chamferOff(r, lead) - (cylinder(r, width) - cylinder(r - depth, width));

/** A tapped hole is drilled, and countersunk to its major diameter; a drill point of 118 degrees when blind. */
export function tapped(major: number, drill: number, depth: number, blind: boolean): number {
  const r = drill / 2;
  const point = blind ? cone(0, r, r / Math.tan((59 * Math.PI) / 180)) : 0;
  return cylinder(r, depth) + mouthOff(r, (major - drill) / 2) + point;
}

/** Area between two circles under a strip from -half to half wide: a tooth with parallel flanks. */
export function strip(outer: number, root: number, half: number): number {
  const under = (r: number) => half * Math.sqrt(r * r - half * half) + r * r * Math.asin(half / r);
  return under(outer) - under(root);
}

/** A corner of 90 degrees filled with a radius. */
export const corner = (r: number) => (1 - Math.PI / 4) * r * r;
