/** Published figures on screws, holes and strengths: none of these numbers comes from this project. */

/**
 * Head bearing areas over an ISO 273 medium hole, mm2; tolerance 1 %. Source: a fastener handbook.
 * Its M8 hexagon goes back to dw = 11.6 of an older print (42.07 mm2); ISO 4014 has 11.63, so that row gets 1.5 %.
 */
export const bearingAreaTruths = [
  { size: 'M6', kind: 'hex', area: 28, tolerance: 0.01, memory: false },
  { size: 'M8', kind: 'hex', area: 42.1, tolerance: 0.015, memory: false },
  { size: 'M10', kind: 'hex', area: 73.1, tolerance: 0.01, memory: false },
  { size: 'M12', kind: 'hex', area: 74.1, tolerance: 0.01, memory: false },
  { size: 'M14', kind: 'hex', area: 114.3, tolerance: 0.01, memory: false },
  { size: 'M16', kind: 'hex', area: 157.1, tolerance: 0.01, memory: false },
  { size: 'M20', kind: 'hex', area: 244.4, tolerance: 0.01, memory: false },
  { size: 'M6', kind: 'socket', area: 34.9, tolerance: 0.01, memory: false },
  { size: 'M8', kind: 'socket', area: 55.8, tolerance: 0.01, memory: false },
  { size: 'M10', kind: 'socket', area: 89.5, tolerance: 0.01, memory: false },
  { size: 'M12', kind: 'socket', area: 90, tolerance: 0.01, memory: false },
  { size: 'M14', kind: 'socket', area: 130.8, tolerance: 0.01, memory: false },
  { size: 'M16', kind: 'socket', area: 181.1, tolerance: 0.01, memory: false },
  { size: 'M20', kind: 'socket', area: 274.5, tolerance: 0.01, memory: false },
] as const;

/** Pressure under the head at the VDI 2230 preload, N/mm2; tolerance 1 %, M8 1.5 % for the same dw. Source: a fastener handbook. */
export const headPressureTruths = [
  {
    what: 'M8 8.8, hexagon head',
    size: 'M8',
    kind: 'hex',
    preload: 18_600,
    pressure: 442,
    tolerance: 0.015,
    memory: false,
  },
  {
    what: 'M10 10.9, socket head',
    size: 'M10',
    kind: 'socket',
    preload: 43_400,
    pressure: 485,
    tolerance: 0.01,
    memory: false,
  },
] as const;

/** Counterbores for ISO 4762, mm, exact. Source: two published DIN 974-1 tables. */
export const counterboreTruths = [
  { size: 'M6', diameter: 11, depth: 6.4, memory: false },
  { size: 'M10', diameter: 18, depth: 10.6, memory: false },
  { size: 'M24', diameter: 40, depth: 24.8, memory: false },
] as const;

/** Loads of one thread and class, tolerance 0.6 % (metric, N) or 1 % (inch, lbf: rounded to 50 lbf in the print). */
export const loadTruths = [
  {
    what: 'proof load M8 10.9',
    thread: 'M8',
    cls: '10.9',
    load: 'proof',
    newtons: 30_400,
    tolerance: 0.006,
    source: 'ISO 898-1 reprints',
  },
  {
    what: 'proof load M10 8.8',
    thread: 'M10',
    cls: '8.8',
    load: 'proof',
    newtons: 33_700,
    tolerance: 0.006,
    source: 'ISO 898-1 reprints',
  },
  {
    what: 'proof load M20 8.8',
    thread: 'M20',
    cls: '8.8',
    load: 'proof',
    newtons: 147_000,
    tolerance: 0.006,
    source: 'ISO 898-1 reprints',
  },
  {
    what: 'ultimate load M16 12.9',
    thread: 'M16',
    cls: '12.9',
    load: 'ultimate',
    newtons: 192_000,
    tolerance: 0.006,
    source: 'ISO 898-1 reprints',
  },
  {
    what: 'ultimate load M24 8.8',
    thread: 'M24',
    cls: '8.8',
    load: 'ultimate',
    newtons: 293_000,
    tolerance: 0.006,
    source: 'ISO 898-1 reprints',
  },
  {
    what: 'ultimate load M6 10.9',
    thread: 'M6',
    cls: '10.9',
    load: 'ultimate',
    newtons: 20_900,
    tolerance: 0.006,
    source: 'ISO 898-1 reprints',
  },
  {
    what: 'proof load 1/4-20 grade 8',
    thread: '1/4-20',
    cls: '8',
    load: 'proof',
    newtons: 3800 * 4.448222,
    tolerance: 0.01,
    source: 'SAE J429 load table',
  },
  {
    what: 'tensile load 3/8-16 grade 5',
    thread: '3/8-16',
    cls: '5',
    load: 'ultimate',
    newtons: 9300 * 4.448222,
    tolerance: 0.01,
    source: 'SAE J429 load table',
  },
  {
    what: 'proof load 3/4-10 grade 5',
    thread: '3/4-10',
    cls: '5',
    load: 'proof',
    newtons: 28_400 * 4.448222,
    tolerance: 0.01,
    source: 'SAE J429 load table',
  },
  {
    what: 'tensile load 3/4-10 grade 8',
    thread: '3/4-10',
    cls: '8',
    load: 'ultimate',
    newtons: 50_100 * 4.448222,
    tolerance: 0.01,
    source: 'SAE J429 load table',
  },
] as const;

/**
 * Engagement worked out elsewhere: M10 10.9 in soft aluminium of 130 MPa shear strength needs 21.6 mm.
 * Source: worked example of a handbook of bolted joints (it loads the screw with 1200 MPa). A published least
 * engagement for pure aluminium must not be shorter.
 */
export const softAluminiumEngagement = {
  thread: 'M10',
  cls: '10.9',
  shearStrength: 130,
  length: 21.6,
  memory: false,
} as const;

/** Material figures from sources other than the table's own. Each row names its source and tolerance. */
export const materialTruths = [
  {
    what: '7075-T6 shear modulus',
    id: '7075-T6',
    field: 'shearModulus',
    expected: 26_900,
    tolerance: 100,
    source: 'an open material card',
    memory: false,
  },
  {
    what: '6061-T6 shear modulus',
    id: '6061-T6',
    field: 'shearModulus',
    expected: 26_000,
    tolerance: 100,
    source: 'a 6061-T6 data sheet',
    memory: false,
  },
  {
    what: '2024-T351 tensile, 68 ksi',
    id: '2024-T351',
    field: 'tensileStrength',
    expected: 68 * 6.894757,
    tolerance: 1,
    source: 'Metals Handbook Desk Edition',
    memory: false,
  },
  {
    what: '2024-T351 yield, 47 ksi',
    id: '2024-T351',
    field: 'yieldStrength',
    expected: 47 * 6.894757,
    tolerance: 1,
    source: 'Metals Handbook Desk Edition',
    memory: false,
  },
  {
    what: '2024-T351 shear, 41 ksi',
    id: '2024-T351',
    field: 'shearStrength',
    expected: 41 * 6.894757,
    tolerance: 1,
    source: 'Metals Handbook Desk Edition',
    memory: false,
  },
  {
    what: '7075-T6 shear, 48 ksi',
    id: '7075-T6',
    field: 'shearStrength',
    expected: 48 * 6.894757,
    tolerance: 1,
    source: 'a published property table',
    memory: false,
  },
  {
    what: 'S235JR shear modulus',
    id: 'S235JR',
    field: 'shearModulus',
    expected: 81_000,
    tolerance: 500,
    source: 'an open material card',
    memory: false,
  },
] as const;
