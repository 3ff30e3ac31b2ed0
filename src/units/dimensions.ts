/**
 * The units a job may be typed in, and what each is worth in the project's own unit.
 *
 * Exact by definition: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound agreement, 1959);
 * standard gravity 9.80665 m/s2 (3rd CGPM, 1901). The rest follows by arithmetic and agrees with NIST SP 811, appendix B.
 */

export type Dimension =
  | 'length'
  | 'torque'
  | 'speed'
  | 'angle'
  | 'mass'
  | 'temperature'
  | 'ratio'
  | 'stress'
  | 'frequency'
  | 'velocity'
  | 'resistance'
  | 'current'
  | 'stiffness';

/** One unit: its canonical name, other spellings (folded: lower case, no spaces), and internal = typed * times + plus. */
export interface UnitRow {
  readonly name: string;
  readonly spellings: readonly string[];
  readonly times: number;
  readonly plus: number;
}

export interface DimensionRow {
  /** As said in a sentence: "a length". */
  readonly noun: string;
  /** What a bare number means unless the caller says otherwise. */
  readonly bareUnit: string;
  /** A correct way to type one. */
  readonly example: string;
  /** Whether 2 1/4 is read as a mixed fraction. */
  readonly fractions: boolean;
  readonly units: readonly UnitRow[];
}

const inch = 25.4;
const pound = 453.59237;
const gravity = 9.80665;
const poundForce = (pound / 1000) * gravity;

function unit(name: string, times: number, ...spellings: string[]): UnitRow {
  return { name, spellings: [foldUnit(name), ...spellings], times, plus: 0 };
}

/** Spelling made comparable: lower case, no spaces, every product sign a point, superscript minus written out. */
export function foldUnit(text: string): string {
  return text
    .toLowerCase()
    .replace(/\s+/g, '')
    .replace(/[·⋅∙*×]/g, '.')
    .replace(/[º˚]/g, '°')
    .replace(/μ|µ/g, 'u')
    .replace(/[”“″]|''/g, '"')
    .replace(/[’′]/g, "'");
}

/** Internal units: mm, N.m, rpm, degrees, grams, degrees Celsius, plain number, MPa, Hz, m/s, ohm, mA. */
export const dimensions: Readonly<Record<Dimension, DimensionRow>> = {
  length: {
    noun: 'a length',
    bareUnit: 'mm',
    example: '57.15, 57.15 mm, 2.25 in or 2 1/4 in',
    fractions: true,
    units: [
      unit('mm', 1, 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
      unit('in', inch, '"', 'inch', 'inches', 'ins'),
      unit('thou', inch / 1000, 'mil', 'mils', 'thous'),
      unit('um', 0.001, 'micron', 'microns', 'micrometre', 'micrometres'),
      unit('cm', 10, 'centimetre', 'centimetres', 'centimeter', 'centimeters'),
      unit('m', 1000, 'metre', 'metres', 'meter', 'meters'),
      unit('ft', 12 * inch, "'", 'foot', 'feet'),
    ],
  },
  torque: {
    noun: 'a torque',
    bareUnit: 'N.m',
    example: '480, 480 N.m or 350 lbf.ft',
    fractions: false,
    units: [
      unit('N.m', 1, 'nm', 'n-m', 'newtonmetre', 'newtonmetres', 'newtonmeter', 'newtonmeters', 'newton.metres'),
      unit('kN.m', 1000, 'knm', 'kn-m'),
      unit('N.mm', 0.001, 'nmm', 'n-mm'),
      unit(
        'lbf.ft',
        poundForce * 12 * inch * 0.001,
        'lbfft',
        'lbf-ft',
        'lb.ft',
        'lbft',
        'lb-ft',
        'lbs.ft',
        'lbs-ft',
        'ft.lbf',
        'ftlbf',
        'ft-lbf',
        'ft.lb',
        'ftlb',
        'ft-lb',
        'ft.lbs',
        'ftlbs',
        'ft-lbs',
        'foot-pounds',
        'footpounds',
        'pound-feet',
      ),
      unit(
        'lbf.in',
        poundForce * inch * 0.001,
        'lbfin',
        'lbf-in',
        'lb.in',
        'lbin',
        'lb-in',
        'in.lbf',
        'inlbf',
        'in-lbf',
        'in.lb',
        'inlb',
        'in-lb',
        'in.lbs',
        'in-lbs',
        'inch-pounds',
      ),
      unit('kgf.m', gravity, 'kgfm', 'kgf-m', 'kg.m', 'kgm', 'kg-m', 'kp.m', 'kpm', 'mkp', 'mkgf'),
    ],
  },
  speed: {
    noun: 'a speed of turning',
    bareUnit: 'rpm',
    example: '4200, 4200 rpm or 440 rad/s',
    fractions: false,
    units: [
      unit('rpm', 1, 'r/min', 'rev/min', 'revs/min', 'u/min', 'min-1', 'min^-1', 'min⁻¹'),
      unit('1/min', 1, '/min'),
      unit('rad/s', 30 / Math.PI, 'rad.s-1', 'rad/sec'),
      unit('rps', 60, 'hz', '1/s', 'rev/s', 'revs/s', 'r/s', 's-1'),
    ],
  },
  angle: {
    noun: 'an angle',
    bareUnit: 'deg',
    example: `12.5, 12.5 deg, 12°30' or 12d30m`,
    fractions: false,
    units: [
      unit('deg', 1, '°', 'degree', 'degrees', 'd'),
      unit('rad', 180 / Math.PI, 'radian', 'radians'),
      unit('arcmin', 1 / 60, "'", 'minutes', 'minute'),
    ],
  },
  mass: {
    noun: 'a mass',
    bareUnit: 'kg',
    example: '8.4, 8.4 kg, 840 g or 18.5 lb',
    fractions: false,
    units: [
      unit('kg', 1000, 'kilo', 'kilos', 'kilogram', 'kilograms', 'kgs'),
      unit('g', 1, 'gram', 'grams'),
      unit('lb', pound, 'lbs', 'pound', 'pounds', 'lbm'),
      unit('oz', pound / 16, 'ounce', 'ounces'),
    ],
  },
  temperature: {
    noun: 'a temperature',
    bareUnit: 'degC',
    example: '80, 80 degC or 176 degF',
    fractions: false,
    units: [
      unit('degC', 1, 'c', '°c', 'celsius'),
      { name: 'degF', spellings: ['degf', 'f', '°f', 'fahrenheit'], times: 5 / 9, plus: (-32 * 5) / 9 },
      { name: 'K', spellings: ['k', 'kelvin'], times: 1, plus: -273.15 },
    ],
  },
  ratio: {
    noun: 'a ratio',
    bareUnit: '1',
    example: '3.73, 3.73:1 or 45 %',
    fractions: false,
    units: [unit('1', 1), unit('%', 0.01, 'percent')],
  },
  stress: {
    noun: 'a stress',
    bareUnit: 'MPa',
    example: '355, 355 MPa or 51 ksi',
    fractions: false,
    units: [
      unit('MPa', 1, 'n/mm2', 'n/mm²'),
      unit('GPa', 1000),
      unit('psi', poundForce / (inch * inch), 'lbf/in2'),
      unit('ksi', (1000 * poundForce) / (inch * inch)),
    ],
  },
  frequency: {
    noun: 'a frequency',
    bareUnit: 'Hz',
    example: '2500, 2500 Hz or 2.5 kHz',
    fractions: false,
    units: [unit('Hz', 1, 'hertz', '1/s', 'pulses/s'), unit('kHz', 1000)],
  },
  velocity: {
    noun: 'a speed along a line',
    bareUnit: 'm/s',
    example: '0.4, 0.4 m/s, 5 km/h or 3 mph',
    fractions: false,
    units: [
      unit('m/s', 1),
      unit('km/h', 1 / 3.6, 'kph', 'kmh'),
      unit('mph', (5280 * 12 * inch) / 3_600_000, 'mi/h'),
      unit('in/s', inch / 1000, 'ips'),
    ],
  },
  resistance: {
    noun: 'a resistance',
    bareUnit: 'ohm',
    example: '1100, 1100 ohm or 1.1 kohm',
    fractions: false,
    units: [
      unit('ohm', 1, 'ohms', 'ω', 'r'),
      unit('kohm', 1000, 'kohms', 'kω', 'k'),
      unit('Mohm', 1_000_000, 'mohms', 'mω', 'meg'),
    ],
  },
  current: {
    noun: 'a current',
    bareUnit: 'mA',
    example: '7, 7 mA or 0.007 A',
    fractions: false,
    units: [unit('mA', 1, 'milliamp', 'milliamps'), unit('A', 1000, 'amp', 'amps')],
  },
  stiffness: {
    noun: 'a stiffness',
    bareUnit: 'N/mm',
    example: '20000, 20 kN/mm or 110000 lbf/in',
    fractions: false,
    units: [
      unit('N/mm', 1),
      unit('kN/mm', 1000, 'n/um'),
      unit('N/m', 0.001),
      unit('lbf/in', poundForce / inch, 'lb/in', 'lbs/in'),
    ],
  },
};
