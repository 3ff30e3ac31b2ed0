import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastGap, stretchesOf, stretchLength } from '../../src/geometry/contour.ts';
import type { Contour } from '../../src/model/sheet.ts';
import { anyStar, circle, path, roundedRectangle, slot } from './contour-shapes.ts';

const square = (x: number, y: number, a: number): Contour => path([x, y], [x + a, y], [x + a, y + a], [x, y + a]);

describe('least gap, against plane geometry', () => {
  it('two circles: distance of centres less both radii, in the middle between them', () => {
    const found = leastGap(circle(0, 0, 3), circle(10, 0, 2));
    expect(found.gap).toBeCloseTo(5, 12);
    expect(found.at[0]).toBeCloseTo(5.5, 12);
    expect(found.from[0]).toBeCloseTo(3, 12);
    expect(found.to[0]).toBeCloseTo(8, 12);
  });

  it('a circle within a circle: R - r - e, and R - r where they share a centre', () => {
    expect(leastGap(circle(0, 0, 20), circle(5, 0, 3)).gap).toBeCloseTo(12, 12);
    expect(leastGap(circle(5, 0, 3), circle(0, 0, 20)).gap).toBeCloseTo(12, 12);
    expect(leastGap(circle(1, 1, 20), circle(1, 1, 3)).gap).toBeCloseTo(17, 12);
  });

  it('crossing and touching curves have none', () => {
    expect(leastGap(circle(0, 0, 3), circle(4, 0, 2)).gap).toBe(0);
    expect(leastGap(square(0, 0, 10), square(5, 5, 10)).gap).toBe(0);
    expect(leastGap(square(0, 0, 10), circle(10, 5, 2)).gap).toBe(0);
    expect(leastGap(circle(0, 0, 3), circle(5, 0, 2)).gap).toBeCloseTo(0, 9);
  });

  it('squares: side to side, corner to corner', () => {
    expect(leastGap(square(0, 0, 10), square(12, 3, 4)).gap).toBeCloseTo(2, 12);
    expect(leastGap(square(0, 0, 10), square(13, 14, 4)).gap).toBeCloseTo(5, 12);
  });

  it('circle against side and against corner', () => {
    expect(leastGap(square(0, 0, 10), circle(14, 5, 1)).gap).toBeCloseTo(3, 12);
    expect(leastGap(square(0, 0, 10), circle(13, 14, 1)).gap).toBeCloseTo(4, 12);
    expect(leastGap(square(0, 0, 10), circle(5, 5, 1)).gap).toBeCloseTo(4, 12);
  });

  it('rounded corner against a hole on its diagonal: distance of centres less both radii, or the part within', () => {
    const plate = roundedRectangle(30, 20, 4);
    expect(leastGap(plate, circle(20, 15, 2)).gap).toBeCloseTo(Math.hypot(20 - 11, 15 - 6) - 6, 12);
    expect(leastGap(plate, circle(11, 6, 1)).gap).toBeCloseTo(3, 12);
  });

  it('slot beside slot', () => {
    const other = path([-5, 7], [5, 7, 1], [5, 13], [-5, 13, 1]);
    expect(leastGap(slot(10, 3), other).gap).toBeCloseTo(4, 12);
  });

  it('never more than a dense sampling finds, and never less by more than the sampling step', () => {
    const samples = (contour: Contour, step: number): [number, number][] => {
      return stretchesOf(contour).flatMap((s) => {
        const count = Math.ceil(stretchLength(s) / step);
        return Array.from({ length: count }, (_, i): [number, number] => {
          const t = i / count;
          if (s.kind === 'line') return [s.x1 + t * (s.x2 - s.x1), s.y1 + t * (s.y2 - s.y1)];
          return [s.x + s.r * Math.cos(s.start + t * s.sweep), s.y + s.r * Math.sin(s.start + t * s.sweep)];
        });
      });
    };
    fc.assert(
      fc.property(anyStar, anyStar, (a, b) => {
        const step = 0.2;
        const exact = leastGap(a, b);
        const [pa, pb] = [samples(a, step), samples(b, step)];
        let least = Infinity;
        for (const [x, y] of pa) for (const [u, v] of pb) least = Math.min(least, Math.hypot(x - u, y - v));
        expect(exact.gap).toBeLessThanOrEqual(least + 1e-9);
        expect(exact.gap).toBeGreaterThanOrEqual(least - step);
        expect(leastGap(b, a).gap).toBeCloseTo(exact.gap, 9);
      }),
      { numRuns: 60 },
    );
  });
});
