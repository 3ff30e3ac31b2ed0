import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FreeArc, freeArcs, layText } from '../../src/parts/lay-text.ts';

/** A font of square letters: as wide as they are tall. */
const measure = (text: string, height: number) => text.length * height;
const arcLength = (degrees: number, radius: number) => (degrees * Math.PI * radius) / 180;
const apart = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);

describe('free arcs', () => {
  it('are the full turn less what is blocked', () => {
    expect(freeArcs([])).toEqual([{ from: 0, to: 360 }]);
    expect(
      freeArcs([
        { from: 80, to: 100 },
        { from: 260, to: 280 },
      ]),
    ).toEqual([
      { from: 100, to: 260 },
      { from: 280, to: 440 },
    ]);
    expect(freeArcs([{ from: -10, to: 10 }])).toEqual([{ from: 10, to: 350 }]);
    expect(
      freeArcs([
        { from: 350, to: 370 },
        { from: 5, to: 20 },
      ]),
    ).toEqual([{ from: 20, to: 350 }]);
  });

  it('together with what is blocked are the full turn', () => {
    const blocked = fc.array(
      fc.record({ from: fc.integer({ min: -180, max: 540 }), width: fc.integer({ min: 1, max: 60 }) }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(blocked, fc.integer({ min: 0, max: 359 }), (spans, degree) => {
        const at = degree + 0.5;
        const within = ({ from, to }: FreeArc) =>
          [-720, -360, 0, 360, 720].some((turn) => from <= at + turn && at + turn <= to);
        const arcs = spans.map(({ from, width }) => ({ from, to: from + width }));
        expect(freeArcs(arcs).some(within)).toBe(!arcs.some(within));
      }),
      { numRuns: 500, seed: 1 },
    );
  });
});

describe('laying texts', () => {
  const full = [{ from: 0, to: 360 }];

  it('at the height asked for where there is room, in the middle of the arc', () => {
    expect(layText(['ABCD'], [{ from: 10, to: 50 }], 100, 5, 2, measure)).toEqual([
      { text: 'ABCD', angle: 30, height: 5 },
    ]);
  });

  it('leaves blanks out, and nothing where there is nothing', () => {
    expect(layText(['', '  '], full, 100, 5, 2, measure)).toEqual([]);
    expect(layText(['A'], [], 100, 5, 2, measure)).toEqual([]);
  });

  it('always lays the first, smaller than legible where it must', () => {
    const [laid] = layText(['A LONG WARNING', 'NAME'], [{ from: 0, to: 10 }], 50, 5, 2, measure);
    // An arc of 8.727 mm for 14 letters.
    expect(laid?.text).toBe('A LONG WARNING');
    expect(laid?.height).toBeCloseTo((10 * Math.PI * 50) / 180 / 14, 9);
  });

  it('rather leaves the last out than makes all small', () => {
    // Two of ten letters on an arc of 104.7: at 5 high they are 100 and a gap of 7.5.
    const laid = layText(
      ['ABCDEFGHIJ', 'ABCDEFGHIJ', 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'],
      [{ from: 0, to: 60 }],
      100,
      5,
      2.5,
      measure,
    );
    expect(laid).toHaveLength(2);
    expect(laid[0]?.height).toBeGreaterThanOrEqual(3);
  });

  it('texts never run into one another nor out of their arcs, and keep their order of priority', () => {
    const cases = fc.record({
      texts: fc.array(
        fc.string({ minLength: 1, maxLength: 24 }).map((t) => t.replace(/\s/g, 'X')),
        { minLength: 1, maxLength: 5 },
      ),
      blocked: fc.array(fc.record({ from: fc.integer({ min: 0, max: 359 }), width: fc.integer({ min: 5, max: 80 }) }), {
        maxLength: 4,
      }),
      radius: fc.integer({ min: 20, max: 120 }),
      height: fc.integer({ min: 3, max: 8 }),
    });
    fc.assert(
      fc.property(cases, ({ texts, blocked, radius, height }) => {
        const arcs = freeArcs(blocked.map(({ from, width }) => ({ from, to: from + width })));
        const laid = layText(texts, arcs, radius, height, 2.5, measure);
        if (arcs.length === 0) return;
        expect(laid.map((l) => l.text).sort()).toEqual(texts.slice(0, laid.length).sort());
        const half = (l: (typeof laid)[number]) => ((measure(l.text, l.height) / radius) * 90) / Math.PI;
        // Where a text stands along the arc that holds all of it.
        const placeOf = (l: (typeof laid)[number]) =>
          arcs.flatMap(({ from, to }, arc) =>
            [-360, 0, 360]
              .map((turn) => l.angle + turn)
              .filter((at) => from - 1e-6 <= at - half(l) && at + half(l) <= to + 1e-6)
              .map((at) => ({ arc, at })),
          )[0];
        for (const [i, a] of laid.entries()) {
          expect(a.height).toBeLessThanOrEqual(height);
          if (laid.length > 1) expect(a.height).toBeGreaterThanOrEqual(2.5 - 1e-9);
          for (const b of laid.slice(0, i)) {
            const [p, q] = [placeOf(a), placeOf(b)];
            const clear = (between: number) => arcLength(between - half(a) - half(b), radius);
            expect(clear(apart(a.angle, b.angle))).toBeGreaterThan(0);
            if (p && p.arc === q?.arc)
              expect(clear(Math.abs(p.at - q.at))).toBeGreaterThanOrEqual(1.5 * a.height - 1e-6);
          }
          expect(placeOf(a)).toBeDefined();
        }
      }),
      { numRuns: 1000, seed: 8 },
    );
  });
});
