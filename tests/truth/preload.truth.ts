/** Published preloads and torques: none of these numbers comes from this project. */

const manual = 'screw table of a chuck manual (MA); head pressures of a fastener handbook x area (FM)';
const handbook = 'fastener handbook, VDI 2230:2001, fine threads';
const example = 'fastener handbook, worked VDI 2230 example';

type Row = readonly [thread: string, cls: string, mu: number, FM: number, MA: number | null, source: string];

/**
 * VDI 2230 at 90 % of yield, hexagon head, medium hole, same friction in thread and under the head. FM kN, MA N.m.
 * Tolerance: FM 1 %, MA 1.1 %; prints are cut to two or three figures rather than rounded. Rows that rest on memory are left out;
 * MA of M12 8.8 at 0.14 is null for that reason.
 */
// biome-ignore format: a table is read row by row
export const vdiRows: readonly Row[] = [
  ['M6', '8.8', 0.12, 10.2, 10.1, manual],
  ['M6', '10.9', 0.12, 14.9, 14.9, manual],
  ['M6', '12.9', 0.12, 17.5, 17.4, manual],
  ['M8', '8.8', 0.12, 18.6, 24.6, manual],
  ['M8', '10.9', 0.12, 27.3, 36.1, manual],
  ['M8', '12.9', 0.12, 32, 42.2, manual],
  ['M10', '8.8', 0.12, 29.6, 48, manual],
  ['M10', '10.9', 0.12, 43.4, 71, manual],
  ['M10', '12.9', 0.12, 50.8, 83, manual],
  ['M12', '8.8', 0.12, 43, 84, manual],
  ['M12', '8.8', 0.14, 41.9, null, example],
  ['M12', '10.9', 0.12, 63.2, 123, manual],
  ['M12', '12.9', 0.12, 74, 144, manual],
  ['M14', '8.8', 0.12, 59.1, 133, manual],
  ['M14', '10.9', 0.12, 86.7, 195, manual],
  ['M14', '12.9', 0.12, 101.5, 229, manual],
  ['M16', '8.8', 0.12, 80.9, 206, manual],
  ['M16', '10.9', 0.12, 118.8, 302, manual],
  ['M16', '12.9', 0.12, 139, 354, manual],
  ['M8x1', '8.8', 0.1, 20.7, 22.8, handbook],
  ['M8x1', '8.8', 0.12, 20.2, 26.1, handbook],
  ['M8x1', '8.8', 0.14, 19.7, 29.2, handbook],
  ['M8x1', '10.9', 0.1, 30.4, 33.5, handbook],
  ['M8x1', '10.9', 0.12, 29.7, 38.3, handbook],
  ['M8x1', '10.9', 0.14, 28.9, 42.8, handbook],
  ['M8x1', '12.9', 0.1, 35.6, 39.2, handbook],
  ['M8x1', '12.9', 0.12, 34.7, 44.9, handbook],
  ['M8x1', '12.9', 0.14, 33.9, 50.1, handbook],
  ['M14x1.5', '8.8', 0.1, 66.4, 124, handbook],
  ['M14x1.5', '8.8', 0.12, 64.8, 142, handbook],
  ['M14x1.5', '8.8', 0.14, 63.2, 159, handbook],
  ['M14x1.5', '10.9', 0.1, 97.5, 182, handbook],
  ['M14x1.5', '10.9', 0.12, 95.2, 209, handbook],
  ['M14x1.5', '10.9', 0.14, 92.9, 234, handbook],
  ['M14x1.5', '12.9', 0.1, 114.1, 213, handbook],
  ['M14x1.5', '12.9', 0.12, 111.4, 244, handbook],
  ['M14x1.5', '12.9', 0.14, 108.7, 274, handbook],
];

/**
 * The rest of the same handbook page: fine threads that were not used while the formula was chosen.
 * M10x1.25 to M24x2. M22x1.5 is taken with the ISO hexagon of 34 mm.
 */
// biome-ignore format: a table is read row by row
export const moreFineRows: readonly Row[] = [
  ['M10x1.25', '8.8', 0.1, 32.4, 44, handbook],
  ['M10x1.25', '10.9', 0.1, 47.5, 65, handbook],
  ['M10x1.25', '12.9', 0.1, 55.6, 76, handbook],
  ['M10x1.25', '8.8', 0.12, 31.6, 51, handbook],
  ['M10x1.25', '10.9', 0.12, 46.4, 75, handbook],
  ['M10x1.25', '12.9', 0.12, 54.3, 87, handbook],
  ['M10x1.25', '8.8', 0.14, 30.8, 57, handbook],
  ['M10x1.25', '10.9', 0.14, 45.2, 83, handbook],
  ['M10x1.25', '12.9', 0.14, 52.9, 98, handbook],
  ['M12x1.25', '8.8', 0.1, 49.1, 79, handbook],
  ['M12x1.25', '10.9', 0.1, 72.1, 116, handbook],
  ['M12x1.25', '12.9', 0.1, 84.4, 135, handbook],
  ['M12x1.25', '8.8', 0.12, 48.0, 90, handbook],
  ['M12x1.25', '10.9', 0.12, 70.5, 133, handbook],
  ['M12x1.25', '12.9', 0.12, 82.5, 155, handbook],
  ['M12x1.25', '8.8', 0.14, 46.8, 101, handbook],
  ['M12x1.25', '10.9', 0.14, 68.7, 149, handbook],
  ['M12x1.25', '12.9', 0.14, 80.4, 174, handbook],
  ['M16x1.5', '8.8', 0.1, 89.6, 189, handbook],
  ['M16x1.5', '10.9', 0.1, 131.6, 278, handbook],
  ['M16x1.5', '12.9', 0.1, 154.0, 325, handbook],
  ['M16x1.5', '8.8', 0.12, 87.6, 218, handbook],
  ['M16x1.5', '10.9', 0.12, 128.7, 320, handbook],
  ['M16x1.5', '12.9', 0.12, 150.6, 374, handbook],
  ['M16x1.5', '8.8', 0.14, 85.5, 244, handbook],
  ['M16x1.5', '10.9', 0.14, 125.5, 359, handbook],
  ['M16x1.5', '12.9', 0.14, 146.9, 420, handbook],
  ['M18x1.5', '8.8', 0.1, 120, 283, handbook],
  ['M18x1.5', '10.9', 0.1, 171, 403, handbook],
  ['M18x1.5', '12.9', 0.1, 200, 472, handbook],
  ['M18x1.5', '8.8', 0.12, 117, 327, handbook],
  ['M18x1.5', '10.9', 0.12, 167, 465, handbook],
  ['M18x1.5', '12.9', 0.12, 196, 544, handbook],
  ['M18x1.5', '8.8', 0.14, 115, 368, handbook],
  ['M18x1.5', '10.9', 0.14, 163, 523, handbook],
  ['M18x1.5', '12.9', 0.14, 191, 613, handbook],
  ['M20x1.5', '8.8', 0.1, 151, 392, handbook],
  ['M20x1.5', '10.9', 0.1, 215, 558, handbook],
  ['M20x1.5', '12.9', 0.1, 252, 653, handbook],
  ['M20x1.5', '8.8', 0.12, 148, 454, handbook],
  ['M20x1.5', '10.9', 0.12, 211, 646, handbook],
  ['M20x1.5', '12.9', 0.12, 246, 756, handbook],
  ['M20x1.5', '8.8', 0.14, 144, 511, handbook],
  ['M20x1.5', '10.9', 0.14, 206, 728, handbook],
  ['M20x1.5', '12.9', 0.14, 241, 852, handbook],
  ['M22x1.5', '8.8', 0.1, 186, 529, handbook],
  ['M22x1.5', '10.9', 0.1, 264, 754, handbook],
  ['M22x1.5', '12.9', 0.1, 309, 882, handbook],
  ['M22x1.5', '8.8', 0.12, 182, 613, handbook],
  ['M22x1.5', '10.9', 0.12, 259, 873, handbook],
  ['M22x1.5', '12.9', 0.12, 303, 1022, handbook],
  ['M22x1.5', '8.8', 0.14, 178, 692, handbook],
  ['M22x1.5', '10.9', 0.14, 253, 985, handbook],
  ['M22x1.5', '12.9', 0.14, 296, 1153, handbook],
  ['M24x2', '8.8', 0.1, 213, 666, handbook],
  ['M24x2', '10.9', 0.1, 304, 949, handbook],
  ['M24x2', '12.9', 0.1, 355, 1110, handbook],
  ['M24x2', '8.8', 0.12, 209, 769, handbook],
  ['M24x2', '10.9', 0.12, 297, 1095, handbook],
  ['M24x2', '12.9', 0.12, 348, 1282, handbook],
  ['M24x2', '8.8', 0.14, 204, 865, handbook],
  ['M24x2', '10.9', 0.14, 290, 1232, handbook],
  ['M24x2', '12.9', 0.14, 339, 1442, handbook],
];

/**
 * Stainless screws of class 70 (Rp0.2 450 MPa: ISO 3506-1, from memory), coarse thread, 90 % of yield: [thread, mu, FM kN, MA N.m].
 * Source: fastener handbook, page on austenitic steels. They reach friction 0.2 and 0.3, which the steel table does not.
 * Tolerance 2 %: prints of two figures.
 */
// biome-ignore format: a table is read row by row
export const stainlessRows: readonly (readonly [thread: string, mu: number, FM: number, MA: number])[] = [
  ['M6', 0.1, 7.3, 6.3],
  ['M6', 0.2, 6.4, 10],
  ['M6', 0.3, 5.5, 12.2],
  ['M8', 0.1, 13.4, 15.2],
  ['M8', 0.2, 11.6, 24.1],
  ['M8', 0.3, 9.9, 30],
  ['M10', 0.1, 21.3, 30],
  ['M10', 0.2, 18.5, 47.7],
  ['M10', 0.3, 15.8, 59],
  ['M20', 0.1, 91, 247],
  ['M20', 0.2, 79.6, 401],
  ['M20', 0.3, 68, 501],
  ['M24', 0.1, 131, 426],
  ['M24', 0.2, 115, 690],
  ['M24', 0.3, 98, 863],
];
export const stainlessYield = 450;

/**
 * Shigley's Mechanical Engineering Design, example 8-3: 3/4-16 UNF, Fi 25 000 lbf, f = fc = 0.15. Inputs, stress and the answer of
 * part (b) were read in a stored copy of the page; the printed answer of part (c), 3551 lbf.in, is from memory.
 */
export const shigley = {
  preload: 25_000,
  stressArea: 0.373,
  stress: 67_020,
  K: 0.2,
  torqueByK: 3750,
  d: 0.75,
  tpi: 16,
  root: 0.6685,
  f: 0.15,
  torqueByStatics: 3551,
} as const;

/** Proof and ultimate loads as four reprints of ISO 898-1 give them, N; tolerance 0.6 %. */
export const loadRows = [
  { thread: 'M8', cls: '10.9', load: 'proof', newtons: 30_400 },
  { thread: 'M10', cls: '8.8', load: 'proof', newtons: 33_700 },
  { thread: 'M20', cls: '8.8', load: 'proof', newtons: 147_000 },
  { thread: 'M16', cls: '12.9', load: 'ultimate', newtons: 192_000 },
] as const;

/** Scatter: 41.9 kN at alphaA 1.8 leaves 23.3 kN (fastener handbook, worked example); tolerance half a digit. */
export const scatterExample = { greatest: 41.9, alphaA: 1.8, least: 23.3 } as const;

/** M12 8.8 at 70 % of proof, K 0.2: 34.2 kN, 82 N.m (a published worked example); tolerance 1 %. */
export const shareExample = {
  stressArea: 84.3,
  proofStress: 580,
  share: 0.7,
  K: 0.2,
  d: 12,
  kN: 34.2,
  Nm: 82,
} as const;
