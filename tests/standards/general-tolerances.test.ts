/** ISO 2768-1 against published tables, and at the ends of its steps. */
import { describe, expect, it } from 'vitest';
import {
  angleTolerance,
  edgeTolerance,
  type GeneralClass,
  generalAngles,
  generalClasses,
  generalEdges,
  generalLinear,
  generalTolerance,
} from '../../src/standards/general-tolerances.ts';
import { must } from '../../src/standards/table.ts';

/**
 * [size, f, m, c, v] as an engineering page on ISO 2768 prints them; a machining shop's page prints the same f, m and c to 400 mm.
 * A dash in print is null here.
 */
const linearPrinted: readonly (readonly [number, number | null, number, number, number | null])[] = [
  [0.5, 0.05, 0.1, 0.2, null],
  [3, 0.05, 0.1, 0.2, null],
  [6, 0.05, 0.1, 0.3, 0.5],
  [30, 0.1, 0.2, 0.5, 1],
  [120, 0.15, 0.3, 0.8, 1.5],
  [400, 0.2, 0.5, 1.2, 2.5],
  [1000, 0.3, 0.8, 2, 4],
  [2000, 0.5, 1.2, 3, 6],
  [4000, null, 2, 4, 8],
];

/** Angles by shorter side, degrees and minutes as printed (two pages). */
const anglesPrinted: readonly (readonly [number, readonly [string, string, string]])[] = [
  [10, ['1 00', '1 30', '3 00']],
  [50, ['0 30', '1 00', '2 00']],
  [120, ['0 20', '0 30', '1 00']],
  [400, ['0 10', '0 15', '0 30']],
  [401, ['0 05', '0 10', '0 20']],
];

const at = (size: number, cls: GeneralClass) => {
  const answer = generalTolerance(size, cls);
  return answer.ok ? answer.value.plusMinus : null;
};

describe('general tolerances of ISO 2768-1', () => {
  it.each(linearPrinted)('%f mm', (size, ...printed) => {
    expect(generalClasses.map((cls) => at(size, cls))).toEqual(printed);
  });

  it('a published example: 120 mm at m may vary by 0.3, 150 mm by 0.5', () => {
    expect(must(generalTolerance(120, 'm'))).toMatchObject({
      plusMinus: 0.3,
      designation: 'ISO 2768-m',
      memory: false,
    });
    expect(must(generalTolerance(120.001, 'm')).plusMinus).toBe(0.5);
    expect(must(generalTolerance(150, 'm')).plusMinus).toBe(0.5);
  });

  it.each([
    [0.5, 0.2, 0.4],
    [3, 0.2, 0.4],
    [6, 0.5, 1],
    [6.01, 1, 2],
    [40, 1, 2],
  ])('a radius or chamfer of %f mm', (size, fine, coarse) => {
    expect(generalClasses.map((cls) => must(edgeTolerance(size, cls)).plusMinus)).toEqual([fine, fine, coarse, coarse]);
  });

  it.each(anglesPrinted)('an angle with a shorter side of %f mm', (side, [fm, c, v]) => {
    const degrees = (text: string) => Number(text.split(' ')[0]) + Number(text.split(' ')[1]) / 60;
    for (const [cls, text] of [
      ['f', fm],
      ['m', fm],
      ['c', c],
      ['v', v],
    ] as const) {
      expect(must(angleTolerance(side, cls)).plusMinus).toBeCloseTo(degrees(text), 9);
    }
  });

  it('never gets finer with size or coarser class, but angles do get finer with their side', () => {
    for (const table of [generalLinear, generalEdges, generalAngles]) {
      for (const [row, { over, upTo, ...byClass }] of table.rows.entries()) {
        const values = generalClasses.map((cls) => byClass[cls]).filter((value) => value !== null);
        expect([...values].sort((a, b) => a - b)).toEqual(values);
        expect(upTo ?? Infinity).toBeGreaterThan(over);
        const before = table.rows[row - 1];
        if (before === undefined) continue;
        expect(over).toBe(before.upTo);
        for (const cls of ['m', 'c'] as const) {
          if (table === generalAngles) expect(byClass[cls]).toBeLessThan(before[cls]);
          else expect(byClass[cls]).toBeGreaterThanOrEqual(before[cls]);
        }
      }
    }
  });

  it.each([0.49, 0, -5, 4000.1, Number.NaN, Number.POSITIVE_INFINITY])('misses %f mm in words', (size) => {
    expect(generalTolerance(size, 'm')).toEqual({
      ok: false,
      why: expect.stringContaining('write limits at the dimension'),
    });
  });

  it('says which class to take where one is not printed', () => {
    expect(generalTolerance(2, 'v')).toEqual({ ok: false, why: expect.stringContaining('take c') });
    expect(generalTolerance(3000, 'f')).toEqual({ ok: false, why: expect.stringContaining('take m') });
    expect(edgeTolerance(0.3, 'm').ok).toBe(false);
    expect(angleTolerance(0, 'm').ok).toBe(false);
    expect(angleTolerance(Number.POSITIVE_INFINITY, 'm').ok).toBe(false);
  });
});
