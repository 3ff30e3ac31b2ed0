import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensions } from '../../src/units/dimensions.ts';
import type { Dimension } from '../../src/units/quantity.ts';
import { parseQuantity } from '../../src/units/quantity.ts';

/** [typed, dimension, internal value, where the expected number comes from] */
const readings: readonly (readonly [string | number, Dimension, number, string])[] = [
  [57.15, 'length', 57.15, 'millimetres are the internal unit'],
  ['2.25 in', 'length', 57.15, '1 in = 25.4 mm exactly: international yard and pound agreement, 1959'],
  ['2 1/4 in', 'length', 57.15, 'same'],
  ['2-1/4"', 'length', 57.15, 'same'],
  ['2¼ in', 'length', 57.15, 'same'],
  ['7/16"', 'length', 11.1125, 'same: 7 x 25.4 / 16'],
  ["3/8''", 'length', 9.525, 'same'],
  ['1 in', 'length', 25.4, 'same'],
  ['1 ft', 'length', 304.8, 'same: 12 in'],
  ['40 thou', 'length', 1.016, 'same: 0.001 in'],
  ['40 mil', 'length', 1.016, 'same'],
  ['5.7 cm', 'length', 57, 'SI prefix'],
  ['30 um', 'length', 0.03, 'SI prefix'],
  ['30 µm', 'length', 0.03, 'SI prefix'],
  ['0.057 m', 'length', 57, 'SI prefix'],
  ['Ø57', 'length', 57, 'a drawing writes diameters so'],
  ['-3.5', 'length', -3.5, 'ranges are not judged here'],
  ['−3.5', 'length', -3.5, 'a typographic minus'],
  ['  57  mm ', 'length', 57, 'blanks'],
  ['1 lbf.ft', 'torque', 1.3558179483314, 'NIST SP 811 appendix B: 1.355 818; in full 0.45359237 x 9.80665 x 0.3048'],
  ['100 ft-lb', 'torque', 135.58179483314004, 'same'],
  ['350 lb·ft', 'torque', 474.5362819159901, 'same, times 350'],
  ['1 lbf.in', 'torque', 0.1129848290276167, 'NIST SP 811 appendix B: 0.112 984 8'],
  ['1 kgf.m', 'torque', 9.80665, 'NIST SP 811 appendix B: 9.806 65'],
  ['480 Nm', 'torque', 480, 'internal unit'],
  ['480 N m', 'torque', 480, 'internal unit'],
  ['0.48 kN.m', 'torque', 480, 'SI prefix'],
  [4200, 'speed', 4200, 'internal unit'],
  ['4200 1/min', 'speed', 4200, 'same unit by another name'],
  ['70 rps', 'speed', 4200, '60 s = 1 min'],
  ['439.822971502571 rad/s', 'speed', 4200, '4200 x 2 pi / 60 = 439.822971502571'],
  ["12°30'", 'angle', 12.5, '60 minutes in a degree'],
  ['12d30m', 'angle', 12.5, 'same'],
  [`12° 30' 36"`, 'angle', 12.51, '3600 seconds in a degree'],
  [`-0°30'`, 'angle', -0.5, 'the sign belongs to the whole angle'],
  ['1 rad', 'angle', 57.29577951308232, '180 / pi'],
  ['8.4', 'mass', 8400, 'bare masses are kilograms, inside are grams'],
  ['840 g', 'mass', 840, 'internal unit'],
  ['1 lb', 'mass', 453.59237, 'international yard and pound agreement, 1959, exact'],
  ['16 oz', 'mass', 453.59237, 'same: 16 oz = 1 lb'],
  ['212 degF', 'temperature', 100, 'boiling point of water on both scales'],
  ['-40 °F', 'temperature', -40, 'where both scales meet'],
  ['273.15 K', 'temperature', 0, 'definition of the Celsius scale'],
  ['3.73', 'ratio', 3.73, 'a plain number'],
  ['41:11', 'ratio', 41 / 11, 'teeth over teeth'],
  ['45 %', 'ratio', 0.45, 'per cent'],
  [
    '1 ksi',
    'stress',
    6.894757293168361,
    'NIST SP 811 appendix B: 6.894 757 MPa; in full 0.45359237 x 9.80665 / 25.4^2 x 1000',
  ],
  ['1 psi', 'stress', 0.006894757293168361, 'same'],
];

describe('quantities as people type them', () => {
  it.each(readings)('%s is a %s of %d (%s)', (typed, dimension, expected) => {
    const read = parseQuantity(typed, dimension);
    expect(read).toMatchObject({ ok: true });
    if (read.ok) expect(Math.abs(read.value - expected)).toBeLessThanOrEqual(1e-13 * Math.max(1, Math.abs(expected)));
  });

  it('takes the unit of a bare length from the caller', () => {
    expect(parseQuantity('2.25', 'length', 'in')).toMatchObject({
      ok: true,
      value: 57.15,
      unit: 'in',
      bare: true,
    });
    expect(parseQuantity('57.15 mm', 'length', 'in')).toMatchObject({
      ok: true,
      value: 57.15,
      unit: 'mm',
      bare: false,
    });
  });

  const refusals: readonly (readonly [unknown, Dimension, RegExp])[] = [
    ['57,15', 'length', /Use a point for decimals, not a comma: 57\.15/],
    ['62,05, 62,06', 'length', /not a comma: 62\.05, 62\.06\.$/],
    ['57,15 mm', 'length', /57\.15 mm/],
    ['1,234.5', 'length', /nothing between thousands: 1234\.5/],
    ['1.234.5', 'length', /two points/],
    ['0x10', 'length', /Hexadecimal/],
    ['1_000', 'length', /without anything between thousands/],
    ['', 'length', /no value here/],
    ['   ', 'torque', /no value here/],
    ['57 ± 0.02', 'length', /doubt/],
    ['57-58', 'length', /looks like a range/],
    ['57 to 58', 'length', /looks like a range/],
    ['about 57', 'length', /does not start with a number/],
    ['NaN', 'length', /not a number/],
    ['.nan', 'length', /not a number/],
    ['-Infinity', 'speed', /infinite/],
    [Number.NaN, 'length', /not a number/],
    [Number.POSITIVE_INFINITY, 'length', /infinite/],
    ['1e999', 'length', /infinite/],
    ['1/0 in', 'length', /divides by zero/],
    ['2:0', 'ratio', /divides by zero/],
    ['1/2 N.m', 'torque', /Fractions are read for lengths only/],
    ["12°75'", 'angle', /below 60/],
    ['0.02 micrometer', 'length', /A micrometer is what it was measured with, not a unit/],
    ['57 parsecs', 'length', /allowed: mm, in, thou, um, cm, m, ft/],
    ['57 inchs', 'length', /Did you mean in\?/],
    ['480 Nn', 'torque', /Did you mean N\.m\?/],
    ['480 mm', 'torque', /"mm" is the unit of a length, but a torque belongs here/],
    ['9'.repeat(500), 'length', /too long/],
    [true, 'length', /Expected a length/],
    [null, 'length', /Expected a length/],
    [{}, 'length', /Expected a length/],
  ];
  it.each(refusals)('%j as %s is answered by a sentence', (typed, dimension, phrase) => {
    const read = parseQuantity(typed, dimension);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.why).toMatch(phrase);
  });

  it('never throws, whatever is typed, and says why or gives a finite number', () => {
    const names = Object.keys(dimensions) as Dimension[];
    const anything = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.stringMatching(/^[-+0-9., /:°'"a-zA-Z]{0,30}$/),
      fc.double(),
      fc.anything(),
    );
    fc.assert(
      fc.property(anything, fc.constantFrom(...names), (typed, dimension) => {
        const read = parseQuantity(typed, dimension);
        if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
        else expect(read.why).toMatch(/^[^\p{C}]{10,300}[.!?]$/u);
      }),
      { numRuns: 2000 },
    );
  });

  it('reads every spelling of every unit, and no two units of a dimension share one', () => {
    for (const [dimension, row] of Object.entries(dimensions)) {
      const spellings = row.units.flatMap((unit) => unit.spellings);
      expect(new Set(spellings).size, dimension).toBe(spellings.length);
      for (const unit of row.units) {
        for (const spelling of unit.spellings) {
          if (spelling === '1') continue;
          expect(parseQuantity(`3 ${spelling}`, dimension as Dimension), spelling).toMatchObject({
            ok: true,
            unit: unit.name,
          });
        }
      }
    }
  });
});
