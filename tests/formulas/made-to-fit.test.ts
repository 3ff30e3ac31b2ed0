/** Registers made to a measured mate: the promise must hold for whatever the two parts turn out to be. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coarsestGradeWithin,
  howMade,
  limitsOfClass,
  limitsOfMeasured,
  makeToFit,
  toleranceLeft,
} from '../../src/formulas/made-to-fit.ts';
import { standardTolerance, toleranceLimits } from '../../src/standards/iso286.ts';
import { must } from '../../src/standards/table.ts';

describe('a register made to its mate, by hand', () => {
  const mate = limitsOfMeasured({ value: 95, doubt: 0.01 });

  it('starts a recess above the largest spigot', () => {
    const { limits, clearance } = makeToFit({
      make: 'recess',
      mate,
      wanted: { leastClearance: 0.01 },
      tolerance: 0.03,
    });
    expect(limits).toEqual({ lower: 95.02, upper: 95.05 });
    expect(clearance.least).toBeCloseTo(0.01, 9);
    expect(clearance.greatest).toBeCloseTo(0.06, 9);
  });

  it('ends a spigot below the smallest recess', () => {
    const { limits, clearance } = makeToFit({
      make: 'spigot',
      mate,
      wanted: { leastClearance: 0.01 },
      tolerance: 0.03,
    });
    expect(limits).toEqual({ lower: 94.95, upper: 94.98 });
    expect(clearance.least).toBeCloseTo(0.01, 9);
    expect(clearance.greatest).toBeCloseTo(0.06, 9);
  });

  it('lets a greatest interference be', () => {
    const wanted = { greatestInterference: 0.02 };
    const { limits, clearance } = makeToFit({ make: 'spigot', mate, wanted, tolerance: 0.02 });
    expect(limits).toEqual({ lower: 94.99, upper: 95.01 });
    expect(clearance.least).toBeCloseTo(-0.02, 9);
    expect(clearance.greatest).toBeCloseTo(0.02, 9);
  });

  it('rounds to the side that keeps the promise', () => {
    const odd = { lower: 94.9871, upper: 95.0042 };
    const wanted = { leastClearance: 0.01 };
    const recess = makeToFit({ make: 'recess', mate: odd, wanted, tolerance: 0.03, step: 0.01 });
    expect(recess.limits).toEqual({ lower: 95.02, upper: 95.05 });
    const spigot = makeToFit({ make: 'spigot', mate: odd, wanted, tolerance: 0.03, step: 0.01 });
    expect(spigot.limits).toEqual({ lower: 94.94, upper: 94.97 });
  });

  it('repeats a 75 H7/h6 fit made to the h6 shaft (ISO 286: IT7 30 um, IT6 19 um)', () => {
    const shaft = limitsOfClass(75, must(toleranceLimits(75, 'h6')));
    const { limits, clearance } = makeToFit({
      make: 'recess',
      mate: shaft,
      wanted: { leastClearance: 0 },
      tolerance: must(standardTolerance(75, 7)),
    });
    expect(limits).toEqual({ lower: 75, upper: 75.03 });
    expect(clearance.greatest).toBeCloseTo(0.049, 9);
  });

  it('says what tolerance is left, and that none may be', () => {
    expect(toleranceLeft(mate, 0.01, 0.06)).toBeCloseTo(0.03, 9);
    expect(toleranceLeft(limitsOfMeasured({ value: 95, doubt: 0.03 }), 0, 0.05)).toBeLessThan(0);
  });
});

describe('the promise of a register made to its mate', () => {
  const part = fc.double({ min: 0, max: 1, noNaN: true });
  const request = fc.record({
    make: fc.constantFrom('recess' as const, 'spigot' as const),
    value: fc.double({ min: 10, max: 500, noNaN: true }),
    doubt: fc.double({ min: 0, max: 0.1, noNaN: true }),
    wanted: fc.oneof(
      fc.double({ min: 0, max: 0.5, noNaN: true }).map((leastClearance) => ({ leastClearance })),
      fc.double({ min: 0, max: 0.1, noNaN: true }).map((greatestInterference) => ({ greatestInterference })),
    ),
    tolerance: fc.double({ min: 0.001, max: 0.2, noNaN: true }),
    step: fc.constantFrom(undefined, 0.001, 0.005, 0.01),
  });

  it('holds for every pair of sizes within the limits', () => {
    fc.assert(
      fc.property(request, part, part, ({ value, doubt, ...rest }, a, b) => {
        const mate = limitsOfMeasured({ value, doubt });
        const { limits, clearance } = makeToFit({ ...rest, mate });
        const pick = ({ lower, upper }: { lower: number; upper: number }, share: number) =>
          lower + share * (upper - lower);
        const own = pick(limits, a);
        const other = pick(mate, b);
        const actual = rest.make === 'recess' ? own - other : other - own;
        const asked = 'leastClearance' in rest.wanted ? rest.wanted.leastClearance : -rest.wanted.greatestInterference;
        const step = rest.step ?? 0.001;
        // A nanometre, for binary noise and for the millionth of a step that the rounding takes as noise.
        const noise = 1e-6;
        expect(limits.upper).toBeGreaterThanOrEqual(limits.lower);
        expect(actual).toBeGreaterThanOrEqual(clearance.least - noise);
        expect(actual).toBeLessThanOrEqual(clearance.greatest + noise);
        expect(clearance.least).toBeGreaterThanOrEqual(asked - noise);
        expect(clearance.greatest).toBeLessThanOrEqual(asked + 2 * doubt + rest.tolerance + step + noise);
        expect(limits.upper - limits.lower).toBeLessThanOrEqual(rest.tolerance + noise);
      }),
      { numRuns: 1000 },
    );
  });

  it('is the same seen from either side', () => {
    fc.assert(
      fc.property(request, ({ value, doubt, wanted, tolerance, step }) => {
        // A hole turned inside out is a shaft: every size changes its sign.
        const hole = makeToFit({ make: 'recess', mate: limitsOfMeasured({ value, doubt }), wanted, tolerance, step });
        const mirrored = limitsOfMeasured({ value: -value, doubt });
        const shaft = makeToFit({ make: 'spigot', mate: mirrored, wanted, tolerance, step });
        expect(shaft.limits.upper).toBeCloseTo(-hole.limits.lower, 6);
        expect(shaft.limits.lower).toBeCloseTo(-hole.limits.upper, 6);
      }),
    );
  });
});

describe('how a shop reaches it (common practice)', () => {
  const IT = (size: number) => (grade: number) => must(standardTolerance(size, grade));

  it('bores holes and turns shafts to IT9, each with what measures it; polishes or hones to IT6', () => {
    // ISO 286-1, 80 to 120 mm: IT9 87 um, IT6 22 um.
    expect(howMade('hole', 0.087, IT(95))).toMatchObject({ grade: 9, method: 'bored', gauge: 'inside micrometer' });
    expect(howMade('shaft', 0.087, IT(95))).toMatchObject({ grade: 9, method: 'turned', gauge: 'micrometer' });
    expect(howMade('hole', 0.022, IT(95))).toMatchObject({ grade: 6, method: expect.stringContaining('honed') });
    expect(howMade('shaft', 0.022, IT(95))).toMatchObject({ grade: 6, method: expect.stringContaining('polished') });
  });

  it.each([
    { size: 75, tolerance: 0.03, grade: 7 },
    { size: 75, tolerance: 0.029, grade: 6 },
    { size: 75, tolerance: 0.05, grade: 8 },
    { size: 95, tolerance: 0.087, grade: 9 },
    { size: 95, tolerance: 1, grade: 14 },
    { size: 95, tolerance: 0.01, grade: null },
  ])('$tolerance mm on $size mm is grade $grade (ISO 286 table 1)', ({ size, tolerance, grade }) => {
    expect(coarsestGradeWithin(tolerance, IT(size))).toBe(grade);
  });

  it('names a way and a gauge for every grade, finer gauges for finer grades', () => {
    for (const kind of ['hole', 'shaft'] as const) {
      const ways = [5, 6, 7, 8, 9, 10, 11, 12].map((grade) => howMade(kind, IT(75)(grade), IT(75)));
      expect(ways.map(({ grade }) => grade)).toEqual([5, 6, 7, 8, 9, 10, 11, 12]);
      expect(ways[0]?.method).toContain('ground');
      expect(ways[2]?.method).toContain('with care');
      expect(ways.at(-1)?.gauge).toBe('caliper');
      for (const { gauge } of ways.slice(0, 6)) expect(gauge).not.toBe('caliper');
    }
  });

  it('reams whole millimetres to H7 and nothing else', () => {
    const at = (size: number, grade: number) => howMade('hole', IT(size)(grade), IT(size), size).method;
    expect(at(10, 7)).toContain('reamed');
    expect(at(10, 6)).not.toContain('reamed');
    expect(at(75, 7)).not.toContain('reamed');
    expect(at(10.5, 7)).not.toContain('reamed');
    expect(howMade('shaft', IT(10)(7), IT(10), 10).method).not.toContain('reamed');
  });

  it('asks for more clearance below grade 5', () => {
    expect(howMade('hole', 0.001, IT(75)).method).toContain('ask for more clearance');
  });
});
