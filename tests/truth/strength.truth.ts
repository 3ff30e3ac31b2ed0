/** Published figures for joints that carry torque: none of these numbers comes from this project. */

/**
 * Worked example of a machine design textbook (rigid coupling held by friction, bolts in large holes): 50 kW at 300 rpm, six bolts,
 * flanges touching from 150 to 200 mm, friction 0.15. Preload 20 072.51 N a bolt; it rounds the friction radius to 88.1 mm. 0.02 %.
 */
export const frictionCoupling = {
  torque: 1591.5494,
  bolts: 6,
  outside: 100,
  inside: 75,
  mu: 0.15,
  radius: 88.1,
  preload: 20_072.51,
} as const;

/**
 * Slip resistance of one preloaded bolt, kN: Fp,C = 0.7 fub As. A steelmaker's design tables (ultimate loads in shear, slip at
 * service, gamma 1.1), printed to three figures; the last row is a published worked example with two faces and gamma 1.25.
 */
export const slipRows = [
  { size: 'M12 8.8', As: 84.3, fub: 800, mu: 0.5, faces: 1, gamma: 1.1, kN: 21.5 },
  { size: 'M16 8.8', As: 157, fub: 800, mu: 0.3, faces: 1, gamma: 1.1, kN: 24 },
  { size: 'M20 8.8', As: 245, fub: 800, mu: 0.4, faces: 1, gamma: 1.1, kN: 49.9 },
  { size: 'M24 10.9', As: 353, fub: 1000, mu: 0.2, faces: 1, gamma: 1.1, kN: 44.9 },
  { size: 'M30 10.9', As: 561, fub: 1000, mu: 0.5, faces: 1, gamma: 1.1, kN: 178 },
  { size: 'M20 10.9', As: 245, fub: 1000, mu: 0.4, faces: 2, gamma: 1.25, kN: 109.8 },
] as const;

/** Shear resistance of one bolt, thread in the plane, kN. The same tables, EN 1993-1-8, gamma 1.25. */
export const shearRows = [
  { cls: '8.8', size: 'M16', As: 157, kN: 60.3 },
  { cls: '8.8', size: 'M20', As: 245, kN: 94.1 },
  { cls: '8.8', size: 'M24', As: 353, kN: 136 },
  { cls: '8.8', size: 'M30', As: 561, kN: 215 },
  { cls: '10.9', size: 'M16', As: 157, kN: 62.8 },
  { cls: '10.9', size: 'M20', As: 245, kN: 98 },
  { cls: '10.9', size: 'M24', As: 353, kN: 141 },
  { cls: '10.9', size: 'M30', As: 561, kN: 224 },
] as const;

/**
 * Bearing coefficients of an M20 bolt in 22 mm holes of S355, from a published guide to EN 1993-1-8: edge 30 mm gives k1 2.118, pitch
 * 70 mm gives alpha_b 0.811. In a lap joint with one row the same tables limit the product to 1.5.
 */
export const bearing = {
  d: 20,
  hole: 22,
  edge: 30,
  pitch: 70,
  k1: 2.118,
  alphaB: 0.811,
  oneRow: 1.5,
  fu: 470,
} as const;

/**
 * Flanged bolt couplings, textbook problems. Ten 20 mm bolts on 400 mm at 40 MPa carry 8 pi kN.m. Eight 10 mm bolts on 400 mm and six
 * on 300 mm at 60 MPa carry 3.4125 pi kN.m (statement as printed; the answers from memory, and they follow from the text by hand).
 */
export const boltCouplings = [
  { circles: [{ count: 10, diameter: 400 }], bolt: 20, stress: 40, torque: 8000 * Math.PI },
  {
    circles: [
      { count: 8, diameter: 400 },
      { count: 6, diameter: 300 },
    ],
    bolt: 10,
    stress: 60,
    torque: 3412.5 * Math.PI,
  },
] as const;

/** A university's worked hollow shaft: 40 mm outside, 5 mm wall, polar moment 171 805.85 mm4. */
export const hollowShaft = { outside: 20, inside: 15, J: 171_805.85 } as const;

/** A drive shaft tube of 76.2 x 2.11 mm under 600 N.m: J 674 533 mm4, 33.89 MPa. Driveline handbook formulas, recomputed. 0.02 %. */
export const tube = { outside: 38.1, inside: 35.99, torque: 600, J: 674_533, stress: 33.89 } as const;

/** Application factors for a smooth driver, as a gear research association prints ISO 6336 and DIN 3990-41. */
export const applicationFactorsPrinted = { smooth: 1, light: 1.25, moderate: 1.5, heavy: 1.75 } as const;
