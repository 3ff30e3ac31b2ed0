import { describe, expect, it } from 'vitest';
import { parseZone, standardTolerance, toleranceLimits } from '../../src/standards/iso286.ts';
import { shaftDeviations } from '../../src/standards/iso286-deviations.ts';
import { holeDeltas, standardTolerances } from '../../src/standards/iso286-grades.ts';
import { must } from '../../src/standards/table.ts';

/** One size inside each step of the deviation table, and both its ends. */
const sizes = shaftDeviations.rows.flatMap(({ over, upTo }) => [over + 0.001, (over + upTo) / 2, upTo]);
const shaftLetters = ['c', 'd', 'e', 'f', 'g', 'h', 'js', 'k', 'm', 'n', 'p', 'r', 's', 'u'];

describe('toleranceLimits', () => {
  it('is as wide as the standard tolerance for every letter, grade and step', () => {
    for (const size of sizes) {
      for (const grade of ['5', '6', '7', '8', '9', '11']) {
        const IT = must(standardTolerance(size, grade));
        for (const letter of [...shaftLetters, ...shaftLetters.map((each) => each.toUpperCase())]) {
          if (letter === 'K' && Number(grade) > 8) continue;
          const { lower, upper } = must(toleranceLimits(size, letter + grade));
          expect(Math.abs(upper - lower - IT), `${size} ${letter}${grade}`).toBeLessThan(1.1e-4);
        }
      }
    }
  });

  // Why delta exists: the fit of a hole in grade n with a shaft in grade n - 1 is the same in both systems (ISO 286-1).
  it('makes H7/p6 and P7/h6 the same fit, and so on, in every step above 3 mm', () => {
    for (const size of sizes.filter((each) => each > 3)) {
      for (const letter of ['k', 'm', 'n', 'p', 'r', 's', 'u']) {
        for (const grade of [6, 7]) {
          // The one printed exception: M6 over 250 up to 315 mm is -9, not the -11 of the rule.
          if (letter === 'm' && grade === 6 && size > 250 && size <= 315) continue;
          const shaft = must(toleranceLimits(size, `${letter}${grade - 1}`));
          const hole = must(toleranceLimits(size, `${letter.toUpperCase()}${grade}`));
          const basicHole = must(toleranceLimits(size, `H${grade}`));
          const basicShaft = must(toleranceLimits(size, `h${grade - 1}`));
          const what = `${size} ${letter}${grade}`;
          expect(basicHole.lower - shaft.upper, what).toBeCloseTo(hole.lower - basicShaft.upper, 9);
          expect(basicHole.upper - shaft.lower, what).toBeCloseTo(hole.upper - basicShaft.lower, 9);
        }
      }
    }
  });

  it('has delta = IT(n) - IT(n - 1) in every step above 3 mm', () => {
    holeDeltas.rows.slice(1).forEach((row, at) => {
      const IT = standardTolerances.rows[at + 1]?.IT ?? {};
      for (let grade = 3; grade <= 8; grade++) {
        expect(row.delta[grade]).toBeCloseTo((IT[grade] ?? 0) - (IT[grade - 1] ?? 0), 9);
      }
    });
  });

  it('mirrors clearance holes and shafts', () => {
    for (const size of sizes) {
      for (const letter of ['c', 'd', 'e', 'f', 'g', 'h']) {
        const shaft = must(toleranceLimits(size, `${letter}7`));
        const hole = must(toleranceLimits(size, `${letter.toUpperCase()}7`));
        expect(hole.lower).toBeCloseTo(-shaft.upper, 9);
        expect(hole.upper).toBeCloseTo(-shaft.lower, 9);
      }
    }
  });

  it('goes outward from c to u at every size', () => {
    for (const size of sizes) {
      const lower = shaftLetters
        .filter((letter) => letter !== 'js')
        .map((letter) => must(toleranceLimits(size, `${letter}6`)).lower);
      expect(lower.every((each, at) => at === 0 || each >= (lower[at - 1] ?? 0))).toBe(true);
    }
  });

  it('rounds no odd js tolerance: 40 js7 is +-12.5 um, where some tables print 12', () => {
    expect(must(toleranceLimits(40, 'js7'))).toEqual({ lower: -0.0125, upper: 0.0125 });
  });

  it('never returns minus zero', () => {
    expect(Object.is(must(toleranceLimits(50, 'H7')).lower, 0)).toBe(true);
    expect(Object.is(must(toleranceLimits(50, 'h6')).upper, 0)).toBe(true);
  });

  it.each([
    [50, 'x7', /letter of "x7"/],
    [50, 'H', /not a tolerance zone/],
    [50, '', /not a tolerance zone/],
    [50, 'Js7', /mixes capitals/],
    [50, 'H19', /has no tolerance grade/],
    [50, 'H99', /has no tolerance grade/],
    [600, 'H7', /over 0 up to 500/],
    [0, 'H7', /over 0 up to 500/],
    [Number.NaN, 'H7', /over 0 up to 500/],
    [20, 't6', /does not use the letter t/],
    [20, 'T7', /does not use the letter T/],
    [20, 'j9', /j5, j6 and j7/],
    [20, 'J9', /J6, J7 and J8/],
    [20, 'K9', /no hole K coarser/],
    [20, 'P2', /start at grade 3/],
    [0.8, 'h14', /up to 1 mm/],
  ])('says why %s %s has no limits', (size, zone, why) => {
    expect(toleranceLimits(size, zone)).toEqual({ ok: false, why: expect.stringMatching(why) });
  });

  it('accepts spaces and takes zones apart', () => {
    expect(must(parseZone(' JS 7 '))).toEqual({ kind: 'hole', letter: 'JS', grade: '7' });
    expect(must(parseZone('g6'))).toEqual({ kind: 'shaft', letter: 'g', grade: '6' });
  });
});
