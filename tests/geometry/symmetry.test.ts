/** Turns that bring holes onto holes: against patterns whose symmetry is known, and against a scan. mm, degrees. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Place, symmetryTurns, turnsOnto } from '../../src/geometry/symmetry.ts';

const at = (r: number, degrees: number): Place => ({
  x: r * Math.cos((degrees * Math.PI) / 180),
  y: r * Math.sin((degrees * Math.PI) / 180),
});
const ring = (count: number, r: number, first = 0): Place[] =>
  Array.from({ length: count }, (_, i) => at(r, first + (360 * i) / count));

describe('symmetryTurns', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 12, 36])('%i even holes: as many turns, evenly', (count) => {
    const turns = symmetryTurns(ring(count, 47, 13), 0.02);
    expect(turns).toEqual(ring(count, 1).map((_, i) => (360 * i) / count));
  });

  it('takes coordinates rounded to a hundredth as even', () => {
    const typed = ring(6, 47, 13).map(({ x, y }) => ({ x: Number(x.toFixed(2)), y: Number(y.toFixed(2)) }));
    expect(symmetryTurns(typed, 0.02)).toEqual([0, 60, 120, 180, 240, 300]);
  });

  it.each([
    ['a rectangle', [at(40, 35), at(40, 145), at(40, 215), at(40, 325)], [0, 180]],
    ['one hole out of place', [at(40, 0), at(40, 90), at(40, 180), at(40, 272)], [0]],
    ['two on one circle, two on another', [at(40, 0), at(45, 90), at(40, 180), at(45, 270)], [0, 180]],
    ['three pairs', [0, 120, 240].flatMap((a) => [at(50, a), at(50, a + 20)]), [0, 120, 240]],
    ['two kinds of spacing that mirror but do not turn', [at(50, 0), at(50, 60), at(50, 180)], [0]],
  ] as const)('%s', (_, holes, turns) => {
    expect(symmetryTurns(holes, 0.1)).toEqual(turns);
  });

  it('lets a hole miss as far as it is told and no farther', () => {
    // One of four holes moved 0.4 mm along the circle: best shared out, half of it is left.
    const shifted = [at(50, 0), at(50, 90), at(50, 180), at(50, 270 + (0.4 / 50) * (180 / Math.PI))];
    expect(symmetryTurns(shifted, 0.41)).toHaveLength(4);
    expect(symmetryTurns(shifted, 0.19)).toEqual([0]);
  });
});

describe('turnsOnto', () => {
  it('finds the turns from one pattern to another that it was made from', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 9 }),
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.double({ min: 0, max: 359, noNaN: true }),
        (count, first, turn) => {
          const turns = turnsOnto(ring(count, 60, first), ring(count, 60, first + turn), 0.05);
          expect(turns).toHaveLength(count);
          // Any of them differs from the one that was used by whole steps.
          for (const found of turns) {
            const steps = ((found - turn) * count) / 360;
            expect(Math.abs(steps - Math.round(steps))).toBeLessThan(0.01);
          }
        },
      ),
    );
  });

  it('finds what a scan in steps of a hundredth of a degree finds, for uneven patterns', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 23 }), { minLength: 2, maxLength: 6 }), (slots) => {
        const holes = [...new Set(slots)].map((slot) => at(50, 15 * slot));
        const fits = (turn: number) =>
          holes.every((p) => {
            const q = at(50, (Math.atan2(p.y, p.x) * 180) / Math.PI + turn);
            return holes.some((h) => Math.hypot(h.x - q.x, h.y - q.y) < 0.02);
          });
        const scan = Array.from({ length: 36_000 }, (_, i) => i / 100).filter(fits);
        const starts = scan.filter((turn, i) => i === 0 || turn - (scan[i - 1] as number) > 1);
        // A turn of nothing shows at both ends of the scan.
        const seen = starts.filter((turn) => turn < 359);
        expect(symmetryTurns(holes, 0.02)).toHaveLength(seen.length);
      }),
      { numRuns: 30 },
    );
  });

  it('finds none where there is none', () => {
    expect(turnsOnto([], ring(4, 50), 1)).toEqual([]);
    expect(turnsOnto(ring(6, 50), ring(4, 50), 1)).toEqual([]);
    expect(turnsOnto(ring(4, 50), ring(4, 52), 1)).toEqual([]);
  });
});
