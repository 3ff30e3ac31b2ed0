/** Published and hand-worked strip figures. Shear areas and equal-strength lengths stand in standards-threads.truth.ts. */

/**
 * A published worked example (handbook of machine design, 10.9 M10x1.5-6g in cast aluminium of 130 MPa shear): 69 600 N need 21.6 mm.
 * It uses 9.968 mm for the screw's major diameter and 9.206 mm for the hole's pitch diameter. Tolerance 0.5 %.
 */
export const publishedEngagement = {
  thread: { pitch: 1.5, dMin: 9.968, d2Min: 8.862, D1Max: 8.676, D2Max: 9.206 },
  load: 69_600,
  parentShear: 130,
  length: 21.6,
} as const;

/**
 * M10, parent of Rm 290 MPa, shear 0.6 Rm, worked by hand from Bickford's area 214.77 mm2 at 10 mm (21.477 mm2 per mm):
 * 43 400 / (174 x 21.477) = 11.61 mm; 1040 x 57.99 / (174 x 21.477) = 16.14 mm. Tolerance 0.2 %.
 */
export const handEngagements = [
  { load: 43_400, length: 11.61 },
  { load: 60_310, length: 16.14 },
] as const;

/**
 * J and Q of the same pair, class 10.9, by hand from Bickford's areas 155.80 and 214.77:
 * J = 155.80 x 1040 / (214.77 x 290) = 2.602; Le = 2 x 58.0 / 15.58 = 7.445; Q = 19.37 mm. Tolerance 0.2 %.
 */
export const weakParent = { screwTensile: 1040, parentTensile: 290, J: 2.602, length: 19.37 } as const;
