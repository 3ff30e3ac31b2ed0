/** Least-squares circles against closed forms and against two methods that share no code with the fit. */
import { describe, expect, it } from 'vitest';
import { type CircleFit, fitCircle, type Point } from '../../src/measure/circle-fit.ts';
import { normal, onCircle, randomFrom, within } from './random.ts';

function fitted(points: readonly Point[], doubt = 0.05): CircleFit {
  const answer = fitCircle(points, doubt);
  if (!answer.ok) throw new Error(answer.why);
  return answer.value;
}

/** Circle through three points by perpendicular bisectors (closed form of any geometry text). */
function circumcircle([a, b, c]: readonly [Point, Point, Point]) {
  const d = 2 * (a.x * (b.y - c.y) + b.x * (c.y - a.y) + c.x * (a.y - b.y));
  const [aa, bb, cc] = [a, b, c].map((p) => p.x ** 2 + p.y ** 2) as [number, number, number];
  const x = (aa * (b.y - c.y) + bb * (c.y - a.y) + cc * (a.y - b.y)) / d;
  const y = (aa * (c.x - b.x) + bb * (a.x - c.x) + cc * (b.x - a.x)) / d;
  return { x, y, r: Math.hypot(a.x - x, a.y - y) };
}

/** Sum of squared radial distances with the radius left to be best (the mean distance). */
function misfit(points: readonly Point[], x: number, y: number): number {
  const far = points.map((p) => Math.hypot(p.x - x, p.y - y));
  const mean = far.reduce((a, b) => a + b, 0) / far.length;
  return far.reduce((total, distance) => total + (distance - mean) ** 2, 0);
}

/** Second method: the least misfit by shrinking a search box round the best of 11 x 11 centres. No derivatives, no algebra. */
function bruteForce(points: readonly Point[], around: Point, reach: number) {
  let [best, box] = [around, reach];
  for (let round = 0; round < 60; round++) {
    let least = Number.POSITIVE_INFINITY;
    const middle = best;
    for (let i = -5; i <= 5; i++) {
      for (let j = -5; j <= 5; j++) {
        const [x, y] = [middle.x + (i * box) / 5, middle.y + (j * box) / 5];
        const value = misfit(points, x, y);
        if (value < least) [least, best] = [value, { x, y }];
      }
    }
    box *= 0.6;
  }
  const far = points.map((p) => Math.hypot(p.x - best.x, p.y - best.y));
  return { ...best, r: far.reduce((a, b) => a + b, 0) / far.length };
}

/** Third method: V. Pratt's algebraic fit by Newton's method on its characteristic polynomial, as N. Chernov writes it. */
function pratt(points: readonly Point[]) {
  const n = points.length;
  const mx = points.reduce((a, p) => a + p.x, 0) / n;
  const my = points.reduce((a, p) => a + p.y, 0) / n;
  let [xx, yy, xy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y] = [p.x - mx, p.y - my];
    const z = x * x + y * y;
    xx += (x * x) / n;
    yy += (y * y) / n;
    xy += (x * y) / n;
    xz += (x * z) / n;
    yz += (y * z) / n;
    zz += (z * z) / n;
  }
  const mz = xx + yy;
  const cov = xx * yy - xy * xy;
  const a2 = 4 * cov - 3 * mz * mz - zz;
  const a1 = zz * mz + 4 * cov * mz - xz * xz - yz * yz - mz ** 3;
  const a0 = xz * xz * yy + yz * yz * xx - zz * cov - 2 * xz * yz * xy + mz * mz * cov;
  let root = 0;
  for (let step = 0; step < 50; step++) {
    const slope = a1 + root * (2 * a2 + 16 * root * root);
    root -= (a0 + root * (a1 + root * (a2 + 4 * root * root))) / slope;
  }
  const det = root * root - root * mz + cov;
  const x = (xz * (yy - root) - yz * xy) / det / 2;
  const y = (yz * (xx - root) - xz * xy) / det / 2;
  return { x: x + mx, y: y + my, r: Math.sqrt(x * x + y * y + mz + 2 * root) };
}

describe('a circle through points', () => {
  it('is the closed form for three', () => {
    const random = randomFrom(3);
    for (let round = 0; round < 200; round++) {
      const three = [0, 1, 2].map((k) => onCircle(30 + 40 * random(), 120 * k + 60 * random(), 5, -7)) as [
        Point,
        Point,
        Point,
      ];
      const exact = circumcircle(three);
      const found = fitted(three);
      expect(found.centre.x).toBeCloseTo(exact.x, 7);
      expect(found.centre.y).toBeCloseTo(exact.y, 7);
      expect(found.diameter).toBeCloseTo(2 * exact.r, 7);
      expect(found.standardDeviation).toBeNull();
    }
  });

  it('is the brute-force least-squares circle, on whole turns and on arcs', () => {
    const random = randomFrom(11);
    for (let round = 0; round < 40; round++) {
      const count = 4 + Math.floor(9 * random());
      const arc = round % 2 === 0 ? 360 : 120;
      const radius = 20 + 80 * random();
      const points = Array.from({ length: count }, (_, k) => {
        const p = onCircle(radius, (arc * k) / count, 12, -3);
        return { x: p.x + normal(random, 0.2), y: p.y + normal(random, 0.2) };
      });
      const found = fitted(points);
      const searched = bruteForce(points, { x: 12, y: -3 }, 8);
      expect(misfit(points, found.centre.x, found.centre.y)).toBeLessThanOrEqual(
        misfit(points, searched.x, searched.y) + 1e-12,
      );
      expect(found.centre.x).toBeCloseTo(searched.x, 5);
      expect(found.centre.y).toBeCloseTo(searched.y, 5);
      expect(found.diameter / 2).toBeCloseTo(searched.r, 5);
    }
  });

  it("is near Pratt's algebraic circle for small errors, where both tend to the same", () => {
    const random = randomFrom(17);
    for (let round = 0; round < 50; round++) {
      const points = Array.from({ length: 6 }, (_, k) => onCircle(42 + within(random, 0.02), 60 * k + 3, 100, 50));
      const found = fitted(points);
      const algebraic = pratt(points);
      // They differ in the second order of error over radius: (0.02 / 42)^2 x 42 is below 2e-5.
      expect(Math.abs(found.centre.x - algebraic.x)).toBeLessThan(2e-5);
      expect(Math.abs(found.centre.y - algebraic.y)).toBeLessThan(2e-5);
      expect(Math.abs(found.diameter / 2 - algebraic.r)).toBeLessThan(2e-5);
    }
  });

  it('tells residuals as outside (+) and inside (-), and their scatter', () => {
    // Two opposite points 0.1 out and two 0.1 in: the best circle is the middle one; four points less three unknowns leave one.
    const points = [onCircle(50.1, 0), onCircle(49.9, 90), onCircle(50.1, 180), onCircle(49.9, 270)];
    const found = fitted(points);
    expect(found.diameter).toBeCloseTo(100, 9);
    expect(found.residuals.map((r) => Number(r.toFixed(6)))).toEqual([0.1, -0.1, 0.1, -0.1]);
    expect(found.standardDeviation).toBeCloseTo(0.2, 9);
    expect(found.explained).toBe(false);
    expect(fitted(points, 0.1).explained).toBe(true);
  });

  it('holds the true circle in its doubt always while points keep within theirs', () => {
    const random = randomFrom(23);
    for (let round = 0; round < 5000; round++) {
      const count = 3 + Math.floor(10 * random());
      const doubt = 0.05;
      const radius = 30 + 70 * random();
      const start = 360 * random();
      const points = Array.from({ length: count }, (_, k) =>
        onCircle(radius + within(random, doubt), start + (360 * k) / count, 3, 4),
      );
      const found = fitted(points, doubt);
      expect(found.explained).toBe(true);
      // 0.1 % more: the bound is of the first order in error over radius.
      expect(Math.abs(found.diameter - 2 * radius)).toBeLessThanOrEqual(found.doubt.diameter * 1.001);
      expect(Math.hypot(found.centre.x - 3, found.centre.y - 4)).toBeLessThanOrEqual(found.doubt.centre * 1.001);
    }
  });

  it('holds it 95 in 100 by its scatter when the points are worse than was said', () => {
    const random = randomFrom(29);
    let inside = 0;
    const rounds = 2000;
    for (let round = 0; round < rounds; round++) {
      const points = Array.from({ length: 8 }, (_, k) => onCircle(42 + normal(random, 0.1), 45 * k));
      if (Math.abs(fitted(points, 0.01).diameter - 84) <= fitted(points, 0.01).doubt.diameter) inside++;
    }
    expect(inside / rounds).toBeGreaterThan(0.94);
    expect(inside / rounds).toBeLessThan(0.97);
  });

  it.each([
    [[{ x: 1, y: 2 }], /three points or more; there is 1/],
    [[0, 1, 2, 3].map((x) => ({ x, y: 2 * x })), /one straight line/],
    [[1, 1, 1].map((x) => ({ x, y: x })), /one straight line \(or on one place\)/],
  ] as const)('refuses %j', (points, why) => {
    const answer = fitCircle(points, 0.05);
    expect(answer.ok ? '' : answer.why).toMatch(why);
  });
});
