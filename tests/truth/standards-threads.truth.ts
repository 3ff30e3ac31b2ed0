/** Published thread figures: none of these numbers comes from this project. */

/** Basic diameters, mm; tolerance 0.001 mm. */
export const basicDiameterTruths = [
  { thread: 'M8', d2: 7.188, D1: 6.647, d3: 6.466, source: 'a published thread guide', memory: false },
  { thread: 'M10', d2: 9.026, D1: 8.376, d3: 8.16, source: 'a published thread guide', memory: false },
  { thread: 'M12', d2: 10.863, D1: 10.106, d3: 9.853, source: 'a published thread guide', memory: false },
  { thread: 'M16', d2: 14.701, D1: 13.835, d3: 13.546, source: 'a published thread guide', memory: false },
  { thread: 'M8x1', d2: 7.35, D1: 6.917, d3: 6.773, source: 'a published ISO 724 fine-thread table', memory: false },
  {
    thread: 'M10x1.25',
    d2: 9.188,
    D1: 8.647,
    d3: 8.466,
    source: 'a published ISO 724 fine-thread table',
    memory: false,
  },
  {
    thread: 'M12x1.5',
    d2: 11.026,
    D1: 10.376,
    d3: 10.16,
    source: 'a published ISO 724 fine-thread table',
    memory: false,
  },
  {
    thread: 'M16x1.5',
    d2: 15.026,
    D1: 14.376,
    d3: 14.16,
    source: 'a published ISO 724 fine-thread table',
    memory: false,
  },
] as const;

/** Stress areas, mm2; tolerance 0.5 %, for three printed figures. */
export const stressAreaTruths = [
  {
    thread: 'M6',
    As: 20.1,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M8',
    As: 36.6,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M10',
    As: 58,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M12',
    As: 84.3,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M14',
    As: 115,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M16',
    As: 157,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M20',
    As: 245,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  {
    thread: 'M24',
    As: 353,
    source: 'ISO 898-1 as tabulated by two fastener suppliers; Shigley table 8-1',
    memory: false,
  },
  { thread: 'M8x1', As: 39.2, source: 'a published ISO 724 fine-thread table', memory: false },
  { thread: 'M10x1.25', As: 61.2, source: 'a published ISO 724 fine-thread table', memory: false },
  { thread: 'M12x1.25', As: 92.1, source: 'a published ISO 724 fine-thread table', memory: false },
  { thread: 'M14x1.5', As: 125, source: 'a published ISO 724 fine-thread table', memory: false },
] as const;

/** Tensile stress areas, in2; tolerance half of the last printed digit. */
export const inchStressAreaTruths = [
  {
    thread: '1/4-20',
    At: 0.0318,
    halfDigit: 5e-5,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '5/16-18',
    At: 0.0524,
    halfDigit: 5e-5,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '3/8-16',
    At: 0.0775,
    halfDigit: 5e-5,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '3/8-24',
    At: 0.0878,
    halfDigit: 5e-5,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '1/2-13',
    At: 0.1419,
    halfDigit: 5e-5,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '1/2-20',
    At: 0.1599,
    halfDigit: 5e-5,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '5/8-11',
    At: 0.226,
    halfDigit: 0.0005,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
  {
    thread: '3/4-16',
    At: 0.373,
    halfDigit: 0.0005,
    source: 'four unified thread tables that agree; Shigley table 8-2',
    memory: false,
  },
] as const;

/** Limits of 6g screws and 6H holes, mm; tolerance 0.001 mm. */
export const threadLimitTruths = [
  {
    thread: 'M6',
    limits: { dmax: 5.974, dmin: 5.794, d2max: 5.324, d2min: 5.212 },
    source: 'an ASME B1.13M chart and a fastener handbook',
    memory: false,
  },
  {
    thread: 'M10',
    limits: { dmax: 9.968, dmin: 9.732, d2max: 8.994, d2min: 8.862 },
    source: 'an ASME B1.13M chart and a fastener handbook',
    memory: false,
  },
  {
    thread: 'M10',
    limits: { D1max: 8.676, D2max: 9.206 },
    source: 'ASME B1.13M internal limits, an engineering reference',
    memory: false,
  },
  {
    thread: 'M12',
    limits: { D1max: 10.441, D2max: 11.063 },
    source: 'ASME B1.13M internal limits, an engineering reference',
    memory: false,
  },
  {
    thread: 'M10x1.25',
    limits: { dmax: 9.972, dmin: 9.76, d2max: 9.16, d2min: 9.042, D1max: 8.912, D2max: 9.348 },
    source: 'a fastener handbook and an engineering reference',
    memory: false,
  },
];

/** Thread shear areas at an engagement Le, 6H/6g, mm2; tolerance 0.1 %. */
export const shearAreaTruths = [
  { thread: 'M6', Le: 6, internal: 73.145, external: 51.875, source: 'Bickford, thread shear areas', memory: false },
  { thread: 'M8', Le: 8, internal: 134.63, external: 97.29, source: 'Bickford, thread shear areas', memory: false },
  { thread: 'M10', Le: 10, internal: 214.77, external: 155.8, source: 'Bickford, thread shear areas', memory: false },
  { thread: 'M12', Le: 12, internal: 313.41, external: 227.72, source: 'Bickford, thread shear areas', memory: false },
] as const;

/** Least engagement for equal strength, 2A/2B, inches; tolerance 3 %. */
export const equalStrengthTruths = [
  { thread: '1/4-20', Le: 0.173, source: 'FED-STD-H28 as quoted in a units reference', memory: false },
  { thread: '3/8-16', Le: 0.269, source: 'FED-STD-H28 as quoted in a units reference', memory: false },
  { thread: '1/2-13', Le: 0.36, source: 'FED-STD-H28 as quoted in a units reference', memory: false },
  { thread: '5/8-11', Le: 0.45, source: 'FED-STD-H28 as quoted in a units reference', memory: false },
  { thread: '1/2-20', Le: 0.4, source: 'FED-STD-H28 as quoted in a units reference', memory: false },
] as const;

/** UNC 2B limits, inches; tolerance 0.0001 in on D2, half of the last printed digit on D1. */
export const unc2bTruths = [
  { thread: '1/4-20', D2max: 0.2224, D1max: 0.207, source: 'a published ASME B1.1 limits table', memory: false },
  { thread: '5/16-18', D2max: 0.2817, D1max: 0.265, source: 'a published ASME B1.1 limits table', memory: false },
  { thread: '3/8-16', D2max: 0.3401, D1max: 0.321, source: 'a published ASME B1.1 limits table', memory: false },
  { thread: '7/16-14', D2max: 0.3972, D1max: 0.376, source: 'a published ASME B1.1 limits table', memory: false },
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a printed limit in inches, not a logarithm.
  { thread: '1/2-13', D2max: 0.4565, D1max: 0.434, source: 'a published ASME B1.1 limits table', memory: false },
  { thread: '5/8-11', D2max: 0.5732, D1max: 0.546, source: 'a published ASME B1.1 limits table', memory: false },
  { thread: '3/4-10', D2max: 0.6927, D1max: 0.663, source: 'a published ASME B1.1 limits table', memory: false },
] as const;
