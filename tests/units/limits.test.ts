/** Limits are rounded inwards: what passes the paper passes the design. By hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsText as onPictures } from '../../src/drawing/length-text.ts';
import { limitTexts as onDrawings } from '../../src/drawing/shop/size-text.ts';
import { limitsText as inReports } from '../../src/report/numbers.ts';
import { limitTexts } from '../../src/units/limits.ts';
import { dialText } from '../../src/units/steady.ts';
import { roundedDown } from '../../src/validate/words.ts';
import '../seed.ts';

describe('limits', () => {
  it.each([
    // 60.3110 / 25.4 = 2.374449, 60.3290 / 25.4 = 2.375157: nearest would be 2.3744 to 2.3752, wider than the spigot may be.
    [60.311, 60.329, 'in', '2.3745', '2.3751'],
    [60.311, 60.329, 'mm', '60.311', '60.329'],
    [22.43, 22.7, 'in', '0.8831', '0.8937'],
    // Under 0.0004 in apart: a figure more. 10.000 / 25.4 = 0.3937008, 10.009 / 25.4 = 0.3940551.
    [10, 10.009, 'in', '0.39371', '0.39405'],
    // Nothing is moved by the last bit of a binary number.
    [0.1 + 0.2, 0.7, 'mm', '0.300', '0.700'],
    // A thousandth would shut these.
    [75.0004, 75.0007, 'mm', '75.0004', '75.0007'],
  ] as const)('%d to %d in %s', (lower, upper, units, low, high) => {
    expect(limitTexts(lower, upper, units)).toEqual({ lower: low, upper: high });
  });

  it('are never wider than what they stand for, nor more than a figure closer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        fc.double({ min: 0.002, max: 2, noNaN: true }),
        fc.constantFrom('mm', 'in'),
        (lower, wide, units) => {
          const texts = limitTexts(lower, lower + wide, units);
          const [step, size] = units === 'in' ? [25.4e-4, 25.4] : [1e-3, 1];
          const [from, to] = [Number(texts.lower) * size, Number(texts.upper) * size];
          expect(from - lower).toBeGreaterThan(-1e-6 * step - 1e-9);
          expect(lower + wide - to).toBeGreaterThan(-1e-6 * step - 1e-9);
          expect(Math.max(from - lower, lower + wide - to)).toBeLessThan(step + 1e-9);
          expect(to).toBeGreaterThan(from);
        },
      ),
    );
  });

  it('read alike in a picture, on a drawing and in a report', () => {
    expect(onPictures(60.311, 60.329, 'in')).toBe('60.311 to 60.329 [2.3745 to 2.3751 in]');
    expect(onDrawings(60.311, 60.329, 'in')).toEqual(['2.3751', '2.3745']);
    expect(inReports(60.311, 60.329, 'in')).toBe('60.311 to 60.329 mm (2.3745 to 2.3751 in)');
  });
});

describe('numbers beside a limit', () => {
  it('never round up to what they fall short of', () => {
    expect(roundedDown(1.2456, 2)).toBe('1.24');
    expect(roundedDown(1.25, 2)).toBe('1.25');
    expect(roundedDown(1.1 + 0.15, 2)).toBe('1.25');
  });
});

describe('a dial', () => {
  it('is told one way: half of 0.030, half of 0.005', () => {
    expect(dialText(0.03 / 2)).toBe('0.015');
    expect(dialText(0.0175 - 0.0025)).toBe('0.015');
    expect(dialText(0.005 / 2)).toBe('0.0025');
  });
});
