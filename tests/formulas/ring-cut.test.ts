/** What a hole takes out of a bearing ring: closed forms of known cases, and a count of small squares as the second method. Lengths in mm. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingArea } from '../../src/formulas/head-pressure.ts';
import { commonArea, cutFromRing, roomBeside } from '../../src/formulas/ring-cut.ts';

describe('area common to two discs', () => {
  it('of two unit discs through each other’s middle is 2 pi / 3 - sqrt(3) / 2 (the vesica piscis)', () => {
    expect(commonArea(1, 1, 1)).toBeCloseTo((2 * Math.PI) / 3 - Math.sqrt(3) / 2, 12);
  });

  it('is nothing apart or touching, the smaller disc within the larger, and half a disc cut through its middle by a very large one', () => {
    expect(commonArea(2, 1, 3)).toBe(0);
    expect(commonArea(2, 1, 7)).toBe(0);
    expect(commonArea(2, 1, 0.9)).toBeCloseTo(Math.PI, 12);
    expect(commonArea(1, 2, 0)).toBeCloseTo(Math.PI, 12);
    expect(commonArea(1, 1e6, 1e6)).toBeCloseTo(Math.PI / 2, 5);
  });

  it('holds for slivers, where the chord runs close to the edge: 10 and 1 that overlap by 0.1, and 10 with 1 all but within', () => {
    // Height of the sliver over its chord, integrated: the strip at x is the lower of both circles' half chords, twice.
    const strips = (a: number, b: number, d: number) => {
      const [from, to, n] = [d - b, Math.min(a, d + b), 200_000];
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const x = from + ((i + 0.5) * (to - from)) / n;
        sum += 2 * Math.sqrt(Math.min(a * a - x * x, b * b - (x - d) ** 2)) * ((to - from) / n);
      }
      return sum;
    };
    expect(commonArea(10, 1, 10.9)).toBeCloseTo(strips(10, 1, 10.9), 6);
    expect(commonArea(10, 1, 9.05)).toBeCloseTo(strips(10, 1, 9.05), 6);
  });

  it('is what a count of small squares finds', () => {
    const size = fc.double({ min: 0.5, max: 10, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 0, max: 20, noNaN: true }), (a, b, d) => {
        const n = 400;
        const step = (2 * a) / n;
        let inside = 0;
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++) {
            const [x, y] = [-a + (i + 0.5) * step, -a + (j + 0.5) * step];
            if (x * x + y * y < a * a && (x - d) ** 2 + y * y < b * b) inside++;
          }
        expect(Math.abs(commonArea(a, b, d) - inside * step * step)).toBeLessThan(0.004 * Math.PI * a * a);
      }),
      { numRuns: 25 },
    );
  });
});

describe('a ring that a hole cuts', () => {
  it('loses the hole’s part beyond the ring’s own hole', () => {
    // Ring 1 to 2 (radii), a hole of 0.5 whose middle stands on the outer edge: all it takes is the lens with the outer circle. Its two
    // segments: cos A = (4 + 4 - 0.25) / 8, cos B = 0.25 / 2.
    const [A, B] = [Math.acos(7.75 / 8), Math.acos(0.25 / 2)];
    const lens = 4 * (A - Math.sin(A) * Math.cos(A)) + 0.25 * (B - Math.sin(B) * Math.cos(B));
    const hole = { distance: 2, radius: 0.5 };
    expect(cutFromRing(4, 2, [hole])).toBeCloseTo(lens, 12);
    expect(cutFromRing(4, 2, [hole, hole])).toBeCloseTo(2 * lens, 12);
    expect(bearingArea({ outer: 4, inner: 2, beside: [hole] })).toBeCloseTo(3 * Math.PI - lens, 12);
    expect(roomBeside(4, [hole, { distance: 9, radius: 0.5 }])).toBeCloseTo(-0.5, 12);
    expect(roomBeside(4, [])).toBe(Number.POSITIVE_INFINITY);
  });

  it('never bears less than nothing', () => {
    const wide = { distance: 2, radius: 4 };
    expect(bearingArea({ outer: 4, inner: 2, beside: [wide] })).toBeCloseTo(0, 9);
    expect(bearingArea({ outer: 4, inner: 4, beside: [wide] })).toBe(0);
    expect(bearingArea({ outer: 3, inner: 4, beside: [{ distance: 2, radius: 0.5 }] })).toBe(0);
  });
});
