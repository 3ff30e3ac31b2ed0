/** A circle with two parallel flats, as a closed loop with true arcs. */

/**
 * Corners of a circle of radius `r` (mm) about the origin cut by two flats `across` mm apart, whose normals point along `angle`
 * degrees. `across` < 2 r. Counter-clockwise; bulge = tan(sweep / 4) on the two arcs.
 */
export function flatOutline(r: number, across: number, angle: number): { x: number; y: number; bulge: number }[] {
  const half = Math.acos(across / 2 / r);
  const turn = (angle * Math.PI) / 180;
  const bulge = Math.tan((Math.PI - 2 * half) / 4);
  const corner = (a: number, b: number) => ({
    x: r * Math.cos(turn + a),
    y: r * Math.sin(turn + a),
    bulge: b,
  });
  return [corner(half, bulge), corner(Math.PI - half, 0), corner(Math.PI + half, bulge), corner(-half, 0)];
}
