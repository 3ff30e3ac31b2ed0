/** A circle with two parallel flats, as a closed loop with true arcs. */
import { acos, cos, sin, tan } from '../units/trig.ts';

/**
 * Corners of a circle of radius `r` (mm) about the origin cut by two flats `across` mm apart, whose normals point along `angle`
 * degrees. `across` < 2 r. Counter-clockwise; bulge = tan(sweep / 4) on the two arcs.
 */
export function flatOutline(r: number, across: number, angle: number): { x: number; y: number; bulge: number }[] {
  const half = acos(across / 2 / r);
  const turn = (angle * Math.PI) / 180;
  const bulge = tan((Math.PI - 2 * half) / 4);
  const corner = (a: number, b: number) => ({
    x: r * cos(turn + a),
    y: r * sin(turn + a),
    bulge: b,
  });
  return [corner(half, bulge), corner(Math.PI - half, 0), corner(Math.PI + half, bulge), corner(-half, 0)];
}
