/** Worked numbers of balance and of registers that centre: none of them comes from this project. */

/** Permissible unbalance. e in micrometres, U in g.mm, mass in kg. */
export interface PermissibleTruth {
  readonly what: string;
  readonly G: number;
  readonly rpm: number;
  readonly kg: number;
  readonly e: number;
  readonly U: number;
  /** Half of the last printed digit. */
  readonly tolerance: number;
  readonly source: string;
}

const article = "ISO 21940-11 as a balancing-machine maker's article explains it: e = 9549.3 G / n; recomputed";

export const permissibleTruths: readonly PermissibleTruth[] = [
  {
    what: 'G 16 at 4500 rpm, 8 kg',
    G: 16,
    rpm: 4500,
    kg: 8,
    e: 33.9531,
    U: 271.6244,
    tolerance: 0.0005,
    source: article,
  },
  {
    what: 'G 40 at 4500 rpm, 1 kg',
    G: 40,
    rpm: 4500,
    kg: 1,
    e: 84.8826,
    U: 84.8826,
    tolerance: 0.00005,
    source: article,
  },
  // e omega = G: 6.3 mm/s at 9549.3 / 6.3 = 1515.76 rpm is 6.3 mm/s over 158.73 rad/s = 0.03969 mm.
  {
    what: 'G 6.3 at 1515.76 rpm, 2 kg',
    G: 6.3,
    rpm: 1515.76,
    kg: 2,
    e: 39.69,
    U: 79.38,
    tolerance: 0.005,
    source: 'definition: e times angular speed is G',
  },
];

/** Centrifugal force F = U omega^2. */
export const forceTruths = [
  {
    what: '200 g.mm at 4500 rpm',
    U: 200,
    rpm: 4500,
    N: 44.4132,
    tolerance: 0.00005,
    source: 'textbook, reference pack example',
  },
  // 1 kg a metre off the axis at 1 rad/s (9.5493 rpm) pulls 1 N: U = 1e6 g.mm.
  {
    what: 'one kilogram metre at one radian a second',
    U: 1e6,
    rpm: 30 / Math.PI,
    N: 1,
    tolerance: 1e-9,
    source: 'definition of the newton',
  },
];

/** Offsets: U = m e. Masses in g, lengths in mm. */
export const offsetTruths = [
  {
    what: 'a part of 2400 g with 0.05 mm run-out',
    m: 2400,
    e: 0.05 / 2,
    U: 60,
    source: 'definition: eccentricity is half the total indicator reading',
  },
  {
    what: 'the same on a 75 H7/h7 register at its loosest',
    m: 2400,
    e: 0.03,
    U: 72,
    source: 'reference pack, recomputed',
  },
  {
    what: 'half of a shaft of 8000 g, 0.05 mm off',
    m: 8000 / 2,
    e: 0.05,
    U: 200,
    source: 'statics: each end carries half',
  },
];

/** What a drill takes away. */
export const drilledTruths = [
  {
    what: 'd 10 x 12 in steel at r 55',
    density: 0.00785,
    d: 10,
    h: 12,
    r: 55,
    U: 406.9148,
    tolerance: 0.00005,
    source: 'textbook: rho pi d^2/4 h r',
  },
  {
    what: 'the same in aluminium',
    density: 0.0027,
    d: 10,
    h: 12,
    r: 55,
    U: 139.958,
    tolerance: 0.0005,
    source: 'textbook: rho pi d^2/4 h r',
  },
  {
    what: '250 g.mm at r 55 in steel takes 7.3726 mm',
    density: 0.00785,
    d: 10,
    h: 7.3726,
    r: 55,
    U: 250,
    tolerance: 0.0018,
    source: 'textbook, solved for the depth; half of its last digit is 0.0017 g.mm',
  },
];

/** The point of a twist drill, 118 degrees, in steel: h = (d/2) / tan 59, V = pi (d/2)^2 h / 3. Grams. */
export const drillPointTruth = {
  d: 10,
  g: 0.6174,
  tolerance: 0.00005,
  density: 0.00785,
  source: 'geometry, reference pack example',
};

/** A plate with an off-centre hole: e = m_h r_h / (m_plate - m_h). Grams and mm; 0.3174 printed. */
export const plateTruth = {
  plate: 2000,
  hole: 15,
  r: 42,
  e: 0.3174,
  tolerance: 0.00005,
  source: 'statics, reference pack example',
};

/** A tilted disc: U_c = (I_p - I_t) sin t cos t, I_p = m R^2/2, I_t = m (3 R^2 + w^2)/12; in two planes U = U_c / L. */
export const tiltedDiscTruth = {
  m: 2400,
  R: 60,
  w: 20,
  faceRunout: 0.05,
  atDiameter: 100,
  couple: 1039.9997,
  L: 20,
  each: 52,
  tolerance: 0.0005,
  source: 'rigid-body dynamics, reference pack example',
};
