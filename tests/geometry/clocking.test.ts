/** The clocking optimum: exact, against brute force over every thousandth of a degree and against the rule of 180 / lcm. */
import { describe, expect, it } from 'vitest';
import { bestClocking, webAtClocking } from '../../src/geometry/clocking.ts';
import type { Drilling } from '../../src/model/part.ts';

const radians = Math.PI / 180;

/** Plain through holes of one size at the given angles on one circle. */
function ring(angles: readonly number[], radius: number, hole: number): Drilling[] {
  const profile = [
    { z: 0, r: hole / 2 },
    { z: 20, r: hole / 2 },
  ];
  return angles.map((angle, i) => ({
    id: `h-${i + 1}`,
    feature: 'h',
    x: radius * Math.cos(angle * radians),
    y: radius * Math.sin(angle * radians),
    profile,
  }));
}

const regular = (count: number, first = 0) => Array.from({ length: count }, (_, i) => first + (i * 360) / count);

/** A small generator of repeatable random numbers in 0 to 1 (Park and Miller's minimal standard). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Cosine law: distance of two points on circles of radius a and b, an angle in degrees apart. */
const apart = (a: number, b: number, degrees: number) =>
  Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(degrees * radians));

/**
 * Best smallest angle between two patterns over every thousandth of a degree, by brute force on whole thousandths.
 * Shares nothing with the code under test.
 */
function bestGapByScan(fixed: readonly number[], moving: readonly number[]): number {
  const turn = 360_000;
  const differences = fixed.flatMap((f) =>
    moving.map((m) => (((Math.round((f - m) * 1000) % turn) + turn) % turn) | 0),
  );
  let best = 0;
  for (let angle = 0; angle < turn; angle++) {
    let least = turn;
    for (const difference of differences) {
      let gap = angle - difference;
      if (gap < 0) gap = -gap;
      if (gap > 180_000) gap = turn - gap;
      if (gap < least) least = gap;
      if (least <= best) break;
    }
    if (least > best) best = least;
  }
  return best / 1000;
}

describe('the best clocking', () => {
  // Published rule: the best clocking leaves 180 / lcm(n1, n2) degrees between nearest holes (derived, and brute-force checked, in the reference tables).
  it.each([
    [4, 4, 45],
    [4, 6, 15],
    [4, 8, 22.5],
    [6, 6, 30],
    [6, 8, 7.5],
    [8, 8, 22.5],
    [3, 4, 15],
    [3, 6, 30],
    [8, 12, 7.5],
  ])('%i against %i holes leaves %f degrees', (n1, n2, degrees) => {
    const { web } = bestClocking(ring(regular(n1), 42, 8.1), ring(regular(n2), 50.75, 10.1));
    expect(web).toBeCloseTo(apart(42, 50.75, degrees) - (8.1 + 10.1) / 2, 9);
  });

  it('the worked example: radii 42 and 50.75, 7.5 degrees, distance 10.632, web 1.532 (cosine law)', () => {
    const { web, angle } = bestClocking(ring(regular(6), 42, 8.1), ring(regular(8), 50.75, 10.1));
    expect(web).toBeCloseTo(1.532, 3);
    expect(angle).toBe(7.5);
  });

  it('is never beaten by a scan of every thousandth of a degree, on random patterns', () => {
    const next = random(20261125);
    for (let trial = 0; trial < 400; trial++) {
      const anglesOf = () => {
        const count = 2 + Math.floor(next() * 9);
        const first = Math.round(next() * 360_000) / 1000;
        if (next() < 0.5) return regular(count, first);
        return Array.from({ length: count }, () => Math.round(next() * 360_000) / 1000);
      };
      const [fixed, moving] = [anglesOf(), anglesOf()];
      const [a, b, hole1, hole2] = [30 + next() * 30, 30 + next() * 30, 5 + next() * 10, 5 + next() * 10];
      const found = bestClocking(ring(fixed, a, hole1), ring(moving, b, hole2));
      const scanned = apart(a, b, bestGapByScan(fixed, moving)) - (hole1 + hole2) / 2;
      // The scan stands on whole thousandths, and so rounds every hole's angle: a thousandth of a degree is that much web.
      const step = Math.max(a, b) * 0.001 * radians;
      expect(found.web as number).toBeGreaterThanOrEqual(scanned - 1.1 * step);
      expect(found.web as number).toBeLessThanOrEqual(scanned + 1.6 * step);
      expect(webAtClocking(ring(fixed, a, hole1), ring(moving, b, hole2), found.angle)).toBeCloseTo(
        found.web as number,
        6,
      );
    }
  });

  it('is never beaten by a scan where radii and shapes differ from hole to hole', () => {
    const next = random(7);
    for (let trial = 0; trial < 12; trial++) {
      const mixed = () =>
        Array.from({ length: 2 + Math.floor(next() * 4) }, () =>
          ring([next() * 360], 25 + next() * 30, 4 + next() * 10),
        ).flat();
      const [fixed, moving] = [mixed(), mixed()];
      const found = bestClocking(fixed, moving);
      let scanned = Number.NEGATIVE_INFINITY;
      for (let angle = 0; angle < 360; angle += 0.05) {
        let least = Number.POSITIVE_INFINITY;
        const [c, s] = [Math.cos(angle * radians), Math.sin(angle * radians)];
        for (const m of moving) {
          const [x, y] = [m.x * c - m.y * s, m.x * s + m.y * c];
          for (const f of fixed) {
            const sum = (f.profile[0]?.r ?? 0) + (m.profile[0]?.r ?? 0);
            least = Math.min(least, Math.hypot(x - f.x, y - f.y) - sum);
          }
        }
        scanned = Math.max(scanned, least);
      }
      expect(found.web as number).toBeGreaterThanOrEqual(scanned - 1e-9);
      expect(found.web as number).toBeLessThanOrEqual(scanned + 55 * 0.05 * radians);
    }
  });

  it('takes the smallest of equally good angles, and has nothing to say of an empty pattern', () => {
    expect(bestClocking(ring(regular(4), 40, 8), ring(regular(4), 50, 8)).angle).toBe(45);
    expect(bestClocking([], ring(regular(4), 50, 8))).toEqual({ angle: 0, web: null });
  });
});
