/** Bolt circle from one chord: published factors, geometry done the other way round, jaws in a bore. */
import { describe, expect, it } from 'vitest';
import {
  bestChord,
  chordAdvice,
  chordChoices,
  chordFactor,
  jawError,
  jawNote,
  positionsOf,
  spanName,
} from '../../src/measure/chord.ts';
import { onCircle } from './random.ts';

describe('the factor from chord to bolt circle', () => {
  // A metal supplier's note on flange pitch circles prints these four, to three decimals.
  it.each([
    [4, '1.414'],
    [8, '2.613'],
    [12, '3.864'],
    [16, '5.126'],
  ])('is the published one for neighbours of %i holes', (holes, published) => {
    expect(chordFactor(holes, 1).toFixed(3)).toBe(published);
  });

  it('is one over the published sine of 36 degrees for five holes', () => {
    // 0.5878 is printed as sin 36 in a towing-parts note.
    expect(1 / chordFactor(5, 1)).toBeCloseTo(0.5878, 4);
  });

  it('magnifies 1.70 between neighbours of five and 1.05 skipping one', () => {
    // sin 36 = sqrt(10 - 2 sqrt 5) / 4 and sin 72 = sqrt(10 + 2 sqrt 5) / 4, closed forms of the pentagon.
    expect(chordFactor(5, 1)).toBeCloseTo(4 / Math.sqrt(10 - 2 * Math.sqrt(5)), 12);
    expect(chordFactor(5, 2)).toBeCloseTo(4 / Math.sqrt(10 + 2 * Math.sqrt(5)), 12);
    expect(chordFactor(5, 1).toFixed(2)).toBe('1.70');
    expect(chordFactor(5, 2).toFixed(2)).toBe('1.05');
    expect(chordAdvice(5)).toContain('neighbours 1.70 and skip one 1.05');
  });

  it('agrees with the distance of two points of the pattern, for every chord of 2 to 72 holes', () => {
    for (let holes = 2; holes <= 72; holes++) {
      for (const { positions, factor } of chordChoices(holes)) {
        const [a, b] = [onCircle(50, 17), onCircle(50, 17 + (360 * positions) / holes)];
        expect(Math.hypot(a.x - b.x, a.y - b.y) * factor).toBeCloseTo(100, 9);
      }
    }
  });

  it('is least for the farthest chord: one across, and 1 / cos(90 / n) for an odd count', () => {
    for (let holes = 2; holes <= 40; holes++) {
      const best = bestChord(holes);
      expect(best.factor).toBe(Math.min(...chordChoices(holes).map(({ factor }) => factor)));
      // B = c / cos(90 / n) for odd n: geometry of the centre to the farthest hole.
      expect(best.factor).toBeCloseTo(holes % 2 === 0 ? 1 : 1 / Math.cos(Math.PI / 2 / holes), 12);
    }
  });
});

describe('spans', () => {
  it('reads words and numbers', () => {
    expect(positionsOf('neighbours', 6)).toEqual({ ok: true, value: 1 });
    expect(positionsOf('skip_one', 6)).toEqual({ ok: true, value: 2 });
    expect(positionsOf('farthest', 7)).toEqual({ ok: true, value: 3 });
    expect(positionsOf(3, 6)).toEqual({ ok: true, value: 3 });
    expect([1, 2, 3].map((k) => spanName(k, 6))).toEqual(['neighbours', 'skip one', 'opposite']);
  });

  it.each([
    ['skip_one', 3, /no hole is left to skip/],
    [4, 6, /4 positions on is 2 the other way round/],
    [0, 6, /1 to 3 positions/],
    [1.5, 6, /1 to 3 positions/],
    ['neighbours', 1, /2 or more/],
    ['neighbours', 4.5, /whole number/],
  ] as const)('says why %s of %s holes is none', (span, holes, why) => {
    const answer = positionsOf(span, holes);
    expect(answer.ok ? '' : answer.why).toMatch(why);
  });
});

describe('caliper jaws in a bore', () => {
  it('read short by what their flats cannot reach', () => {
    // Two flats 3 wide in a bore of 5: the 3-4-5 triangle leaves 4.
    expect(jawError(5, 3)).toBeCloseTo(1, 12);
    // For a narrow flat the error tends to w^2 / 2D (first term of the series).
    expect(jawError(20, 0.3)).toBeCloseTo(0.09 / 40, 6);
    expect(jawError(20, 0)).toBe(0);
  });

  it('are warned of in small bores only, with the ring check', () => {
    expect(jawNote(8, 0.5)).toMatch(/common practice.*0\.016 mm short \(geometry\).*fit rings/s);
    expect(jawNote(57)).toBeNull();
  });
});
