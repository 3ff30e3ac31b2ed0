/** Published limits and fits: none of these numbers comes from this project. */

/** Limits of one tolerance zone, micrometres from the nominal size (mm). Tolerance of every row: exact as printed. */
export interface LimitTruth {
  readonly what: string;
  readonly size: number;
  readonly zone: string;
  readonly lower: number;
  readonly upper: number;
  readonly source: string;
  readonly memory: boolean;
}

export const limitTruths: readonly LimitTruth[] = [
  { what: '34 H11/c11, hole', size: 34, zone: 'H11', lower: 0, upper: 160, source: 'Shigley, Mechanical Engineering Design, 9th ed., example 7-7', memory: false },
  { what: '34 H11/c11, shaft', size: 34, zone: 'c11', lower: -280, upper: -120, source: 'Shigley, Mechanical Engineering Design, 9th ed., example 7-7', memory: false },
  { what: '50 H7/g6, hole', size: 50, zone: 'H7', lower: 0, upper: 25, source: 'Bhandari, Design of Machine Elements, example 3.3', memory: false },
  { what: '50 H7/g6, shaft', size: 50, zone: 'g6', lower: -25, upper: -9, source: 'an open table of composite ISO limits', memory: false },
  { what: '110 H7/h6, hole', size: 110, zone: 'H7', lower: 0, upper: 35, source: 'an open table of composite ISO limits', memory: false },
  { what: '110 H7/h6, shaft', size: 110, zone: 'h6', lower: -22, upper: 0, source: 'a rolling-bearing catalogue', memory: false },
  { what: '60 js6', size: 60, zone: 'js6', lower: -9.5, upper: 9.5, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '80 P7 (upper end of a step)', size: 80, zone: 'P7', lower: -51, upper: -21, source: 'a rolling-bearing catalogue', memory: false },
  { what: '50 H7/s6, shaft', size: 50, zone: 's6', lower: 43, upper: 59, source: 'Bhandari, Design of Machine Elements, example 3.3', memory: false },
  { what: '100 H7 housing with p6 bush, hole', size: 100, zone: 'H7', lower: 0, upper: 35, source: 'Narayana et al., Machine Drawing', memory: false },
  { what: '100 H7 with p6 bush, shaft', size: 100, zone: 'p6', lower: 37, upper: 59, source: 'Narayana et al., Machine Drawing', memory: false },
  { what: '25 H7', size: 25, zone: 'H7', lower: 0, upper: 21, source: 'Narayana et al., Machine Drawing', memory: false },
  { what: '10 h9', size: 10, zone: 'h9', lower: -36, upper: 0, source: 'Narayana et al., Machine Drawing', memory: false },
  { what: '40 h11', size: 40, zone: 'h11', lower: -160, upper: 0, source: 'Narayana et al., Machine Drawing', memory: false },
  { what: '6 H7/g6, hole (upper end of a step)', size: 6, zone: 'H7', lower: 0, upper: 12, source: 'metrology course notes', memory: false },
  { what: '6 H7/g6, shaft', size: 6, zone: 'g6', lower: -12, upper: -4, source: 'a mould-component catalogue', memory: false },
  { what: '50 H8/f7, hole', size: 50, zone: 'H8', lower: 0, upper: 39, source: 'encyclopaedia article on engineering fits', memory: false },
  { what: '50 H8/f7, shaft', size: 50, zone: 'f7', lower: -50, upper: -25, source: 'encyclopaedia article on engineering fits', memory: false },
  { what: '100 E8', size: 100, zone: 'E8', lower: 72, upper: 126, source: 'ISO 286-2:1988/Cor.1:2006', memory: false },
  { what: '45 H7', size: 45, zone: 'H7', lower: 0, upper: 25, source: 'an open limits library, its test example', memory: false },
  { what: '45 k8 (k above IT7 starts at zero)', size: 45, zone: 'k8', lower: 0, upper: 39, source: 'an open limits library, its test example', memory: false },
  { what: '45 js8', size: 45, zone: 'js8', lower: -19.5, upper: 19.5, source: 'an open limits library, its test example', memory: false },
  { what: '45 m6', size: 45, zone: 'm6', lower: 9, upper: 25, source: 'an open limits library, its test example', memory: false },
  { what: '16 e8', size: 16, zone: 'e8', lower: -59, upper: -32, source: 'a mould-component catalogue', memory: false },
  { what: '16 d9', size: 16, zone: 'd9', lower: -93, upper: -50, source: 'a mould-component catalogue', memory: false },
  { what: '28 d10', size: 28, zone: 'd10', lower: -149, upper: -65, source: 'a mould-component catalogue', memory: false },
  { what: '35 c11', size: 35, zone: 'c11', lower: -280, upper: -120, source: 'a mould-component catalogue', memory: false },
  { what: '42 c11 (c splits at 40)', size: 42, zone: 'c11', lower: -290, upper: -130, source: 'a mould-component catalogue', memory: false },
  { what: '40 f6', size: 40, zone: 'f6', lower: -41, upper: -25, source: 'a mould-component catalogue', memory: false },
  { what: '40 g5', size: 40, zone: 'g5', lower: -20, upper: -9, source: 'a mould-component catalogue', memory: false },
  { what: '5 f7', size: 5, zone: 'f7', lower: -22, upper: -10, source: 'a mould-component catalogue', memory: false },
  { what: '25 K7', size: 25, zone: 'K7', lower: -15, upper: 6, source: 'a mould-component catalogue', memory: false },
  { what: '45 K6', size: 45, zone: 'K6', lower: -13, upper: 3, source: 'a mould-component catalogue', memory: false },
  { what: '63 K8', size: 63, zone: 'K8', lower: -32, upper: 14, source: 'a mould-component catalogue', memory: false },
  { what: '100 K7', size: 100, zone: 'K7', lower: -25, upper: 10, source: 'a mould-component catalogue', memory: false },
  { what: '150 K7', size: 150, zone: 'K7', lower: -28, upper: 12, source: 'a mould-component catalogue', memory: false },
  { what: '8 K6', size: 8, zone: 'K6', lower: -7, upper: 2, source: 'a mould-component catalogue', memory: false },
  { what: '14 M7 (ES is zero for M7)', size: 14, zone: 'M7', lower: -18, upper: 0, source: 'a mould-component catalogue', memory: false },
  { what: '45 M6', size: 45, zone: 'M6', lower: -20, upper: -4, source: 'a mould-component catalogue', memory: false },
  { what: '63 M8', size: 63, zone: 'M8', lower: -41, upper: 5, source: 'a mould-component catalogue', memory: false },
  { what: '100 M7', size: 100, zone: 'M7', lower: -35, upper: 0, source: 'a mould-component catalogue', memory: false },
  { what: '5 N7', size: 5, zone: 'N7', lower: -16, upper: -4, source: 'a mould-component catalogue', memory: false },
  { what: '25 N6', size: 25, zone: 'N6', lower: -24, upper: -11, source: 'a mould-component catalogue', memory: false },
  { what: '45 N8', size: 45, zone: 'N8', lower: -42, upper: -3, source: 'a mould-component catalogue', memory: false },
  { what: '63 N7', size: 63, zone: 'N7', lower: -39, upper: -9, source: 'a mould-component catalogue', memory: false },
  { what: '200 N7', size: 200, zone: 'N7', lower: -60, upper: -14, source: 'a mould-component catalogue', memory: false },
  { what: '290 N7', size: 290, zone: 'N7', lower: -66, upper: -14, source: 'a rolling-bearing catalogue', memory: false },
  { what: '290 N6', size: 290, zone: 'N6', lower: -57, upper: -25, source: 'a rolling-bearing catalogue', memory: false },
  { what: '40 R7', size: 40, zone: 'R7', lower: -50, upper: -25, source: 'a mould-component catalogue', memory: false },
  { what: '70 R7 (r splits at 65)', size: 70, zone: 'R7', lower: -62, upper: -32, source: 'a mould-component catalogue', memory: false },
  { what: '130 R7', size: 130, zone: 'R7', lower: -88, upper: -48, source: 'a mould-component catalogue', memory: false },
  { what: '170 R7', size: 170, zone: 'R7', lower: -93, upper: -53, source: 'a mould-component catalogue', memory: false },
  { what: '190 R7', size: 190, zone: 'R7', lower: -106, upper: -60, source: 'a mould-component catalogue', memory: false },
  { what: '260 R7', size: 260, zone: 'R7', lower: -126, upper: -74, source: 'a mould-component catalogue', memory: false },
  { what: '8 P7', size: 8, zone: 'P7', lower: -24, upper: -9, source: 'a rolling-bearing catalogue', memory: false },
  { what: '40 P7', size: 40, zone: 'P7', lower: -42, upper: -17, source: 'a rolling-bearing catalogue', memory: false },
  { what: '110 P7', size: 110, zone: 'P7', lower: -59, upper: -24, source: 'a rolling-bearing catalogue', memory: false },
  { what: '200 P7', size: 200, zone: 'P7', lower: -79, upper: -33, source: 'a rolling-bearing catalogue', memory: false },
  { what: '300 P7', size: 300, zone: 'P7', lower: -88, upper: -36, source: 'a rolling-bearing catalogue', memory: false },
  { what: '5 P6', size: 5, zone: 'P6', lower: -17, upper: -9, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '60 P6', size: 60, zone: 'P6', lower: -45, upper: -26, source: 'a rolling-bearing catalogue', memory: false },
  { what: '200 P6', size: 200, zone: 'P6', lower: -70, upper: -41, source: 'a rolling-bearing catalogue', memory: false },
  { what: '5 S7', size: 5, zone: 'S7', lower: -27, upper: -15, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '25 S7', size: 25, zone: 'S7', lower: -48, upper: -27, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '60 S7', size: 60, zone: 'S7', lower: -72, upper: -42, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '75 S7', size: 75, zone: 'S7', lower: -78, upper: -48, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '110 S7', size: 110, zone: 'S7', lower: -101, upper: -66, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '90 E7', size: 90, zone: 'E7', lower: 72, upper: 107, source: 'a coupling catalogue', memory: false },
  { what: '200 G7', size: 200, zone: 'G7', lower: 15, upper: 61, source: 'a coupling catalogue', memory: false },
  { what: '270 F8', size: 270, zone: 'F8', lower: 56, upper: 137, source: 'a coupling catalogue', memory: false },
  { what: '25 k6', size: 25, zone: 'k6', lower: 2, upper: 15, source: 'a rolling-bearing catalogue', memory: false },
  { what: '45 k5', size: 45, zone: 'k5', lower: 2, upper: 13, source: 'a rolling-bearing catalogue', memory: false },
  { what: '45 n5', size: 45, zone: 'n5', lower: 17, upper: 28, source: 'a rolling-bearing catalogue', memory: false },
  { what: '60 k6', size: 60, zone: 'k6', lower: 2, upper: 21, source: 'a rolling-bearing catalogue', memory: false },
  { what: '60 m6', size: 60, zone: 'm6', lower: 11, upper: 30, source: 'a rolling-bearing catalogue', memory: false },
  { what: '100 h8', size: 100, zone: 'h8', lower: -54, upper: 0, source: 'a rolling-bearing catalogue', memory: false },
  { what: '200 h9', size: 200, zone: 'h9', lower: -115, upper: 0, source: 'a rolling-bearing catalogue', memory: false },
  { what: '150 f6', size: 150, zone: 'f6', lower: -68, upper: -43, source: 'a rolling-bearing catalogue', memory: false },
  { what: '200 g6', size: 200, zone: 'g6', lower: -44, upper: -15, source: 'a rolling-bearing catalogue', memory: false },
  { what: '100 f5', size: 100, zone: 'f5', lower: -51, upper: -36, source: 'a rolling-bearing catalogue', memory: false },
  { what: '100 j6', size: 100, zone: 'j6', lower: -9, upper: 13, source: 'a rolling-bearing catalogue', memory: false },
  { what: '150 j5', size: 150, zone: 'j5', lower: -11, upper: 7, source: 'a rolling-bearing catalogue', memory: false },
  { what: '40 n6', size: 40, zone: 'n6', lower: 17, upper: 33, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '40 p6', size: 40, zone: 'p6', lower: 26, upper: 42, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '60 r6', size: 60, zone: 'r6', lower: 41, upper: 60, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '75 s6', size: 75, zone: 's6', lower: 59, upper: 78, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '60 n6', size: 60, zone: 'n6', lower: 20, upper: 39, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '60 p6', size: 60, zone: 'p6', lower: 32, upper: 51, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '40 js6', size: 40, zone: 'js6', lower: -8, upper: 8, source: 'JIS B 0401 tables in a technical guide', memory: false },
  { what: '100 s6', size: 100, zone: 's6', lower: 71, upper: 93, source: 'a mould-component catalogue', memory: false },
  { what: '160 s6', size: 160, zone: 's6', lower: 100, upper: 125, source: 'a mould-component catalogue', memory: false },
  { what: '250 s6', size: 250, zone: 's6', lower: 140, upper: 169, source: 'a mould-component catalogue', memory: false },
  { what: '25 s6', size: 25, zone: 's6', lower: 35, upper: 48, source: 'a mould-component catalogue', memory: false },
];

/** A fit, micrometres: clearance positive, interference negative. */
export interface FitTruth {
  readonly what: string;
  readonly size: number;
  readonly hole: string;
  readonly shaft: string;
  readonly least: number;
  readonly most: number;
  readonly source: string;
}

export const fitTruths: readonly FitTruth[] = [
  { what: '34 H11/c11 clearance', size: 34, hole: 'H11', shaft: 'c11', least: 120, most: 440, source: 'Shigley, Mechanical Engineering Design, 9th ed., example 7-7' },
  { what: '50 H8/f7 clearance', size: 50, hole: 'H8', shaft: 'f7', least: 25, most: 89, source: 'encyclopaedia article on engineering fits' },
  { what: '100 H7/p6 interference', size: 100, hole: 'H7', shaft: 'p6', least: -59, most: -2, source: 'Narayana et al., Machine Drawing' },
  { what: '50 H7/s6 interference', size: 50, hole: 'H7', shaft: 's6', least: -59, most: -18, source: 'Bhandari, Design of Machine Elements, example 3.3, from its limits' },
  { what: '45 H7/m6 transition', size: 45, hole: 'H7', shaft: 'm6', least: -25, most: 16, source: 'limits of an open limits library, its test example' },
];
