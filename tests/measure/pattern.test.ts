/** Patterns laid out by hand and at random, and what is recognised in them. */
import { describe, expect, it } from 'vitest';
import { distancesNeeded, type HoleDistance, patternFromDistances } from '../../src/measure/chord-network.ts';
import type { Point } from '../../src/measure/circle-fit.ts';
import { givenOnce } from '../../src/measure/measured.ts';
import { type Pattern, recognisePattern } from '../../src/measure/pattern.ts';
import { checkDiagonal, rectangleCircle } from '../../src/measure/rectangle.ts';
import { angleBetween, onCircle, randomFrom, within } from './random.ts';

function see(points: readonly Point[], doubt = 0.05): Pattern {
  const answer = recognisePattern(points, doubt);
  if (!answer.ok) throw new Error(answer.why);
  return answer.value;
}

const ring = (count: number, circle: number, first = 0, x = 0, y = 0) =>
  Array.from({ length: count }, (_, k) => onCircle(circle / 2, first + (360 * k) / count, x, y));

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  return list
    .map((value) => ({ value, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ value }) => value);
}

describe('even holes', () => {
  it('are recognised in any order, anywhere, with the truth inside the doubt while coordinates keep within theirs', () => {
    const random = randomFrom(41);
    for (let round = 0; round < 2000; round++) {
      const count = 2 + Math.floor(11 * random());
      const doubt = 0.05;
      const circle = Math.max(40, 20 * count) + 100 * random();
      const [x, y, first] = [within(random, 300), within(random, 300), 360 * random()];
      const points = shuffled(ring(count, circle, first, x, y), random).map((p) => ({
        x: p.x + within(random, doubt),
        y: p.y + within(random, doubt),
      }));
      const pattern = see(points, doubt);
      expect(pattern.kind).toBe('even');
      const { value, doubt: told } = pattern.circle ?? { value: 0, doubt: 0 };
      expect(Math.abs(value - circle)).toBeLessThanOrEqual(told * 1.001);
      expect(Math.hypot(pattern.centre.x - x, pattern.centre.y - y)).toBeLessThanOrEqual(pattern.centreDoubt * 1.001);
    }
  });

  it('have one least-squares answer: centre the mean, radius and turn the first Fourier term', () => {
    // Second method: for even slots the normal equations fall apart into means (discrete Fourier series).
    const random = randomFrom(43);
    const points = ring(6, 84, 20, 3, -2).map((p) => ({
      x: p.x + within(random, 0.05),
      y: p.y + within(random, 0.05),
    }));
    const pattern = see(points);
    const mean = { x: points.reduce((a, p) => a + p.x, 0) / 6, y: points.reduce((a, p) => a + p.y, 0) / 6 };
    let [u, v] = [0, 0];
    for (const [k, p] of points.entries()) {
      const t = (2 * Math.PI * k) / 6;
      u += ((p.x - mean.x) * Math.cos(t) + (p.y - mean.y) * Math.sin(t)) / 6;
      v += ((p.y - mean.y) * Math.cos(t) - (p.x - mean.x) * Math.sin(t)) / 6;
    }
    expect(pattern.centre.x).toBeCloseTo(mean.x, 9);
    expect(pattern.centre.y).toBeCloseTo(mean.y, 9);
    expect(pattern.circle?.value).toBeCloseTo(2 * Math.hypot(u, v), 9);
  });
});

describe('a pattern that is not even', () => {
  it.each([4, 5, 6, 8, 12])('names the odd hole of %i, and how far it is off', (count) => {
    for (let odd = 0; odd < count; odd++) {
      const points = ring(count, 100, 7).map((p, index) => (index === odd ? { x: p.x + 0.6, y: p.y - 0.8 } : p));
      const pattern = see(points, 0.03);
      expect(pattern.kind).toBe('odd hole');
      expect(pattern.oddHole).toBe(odd);
      // 3-4-5: the hole was moved by exactly 1 mm, and the others are exact.
      expect(pattern.residuals[odd]).toBeCloseTo(1, 6);
      expect(pattern.circle?.value).toBeCloseTo(100, 6);
      expect(pattern.sentence).toContain(`hole ${odd + 1} stands 1 mm off`);
    }
  });

  it('never blames a hole while the readings keep within their doubt', () => {
    const random = randomFrom(47);
    for (let round = 0; round < 500; round++) {
      const count = 4 + Math.floor(9 * random());
      const points = ring(count, 120).map((p) => ({
        x: p.x + (random() < 0.5 ? -0.05 : 0.05),
        y: p.y + (random() < 0.5 ? -0.05 : 0.05),
      }));
      expect(see(points).oddHole).toBeNull();
    }
  });

  it('knows a rectangle of four by its two spacings, turned any way', () => {
    for (const turn of [0, 10, 33, 45, 90, 200]) {
      const t = (turn * Math.PI) / 180;
      const points = [
        [29, 24],
        [-29, 24],
        [-29, -24],
        [29, -24],
      ].map(([x = 0, y = 0]) => ({ x: x * Math.cos(t) - y * Math.sin(t), y: x * Math.sin(t) + y * Math.cos(t) }));
      const pattern = see(points);
      expect(pattern.kind).toBe('rectangle');
      expect(pattern.sides?.a).toBeCloseTo(58, 6);
      expect(pattern.sides?.b).toBeCloseTo(48, 6);
      // 58 x 48 -> 75.286 by Pythagoras, as the forum's own numbers say.
      expect(pattern.circle?.value).toBeCloseTo(75.286, 3);
    }
  });

  it('knows three plus three on one circle, and on two', () => {
    const one = see([...ring(3, 84), ...ring(3, 84, 50)]);
    expect(one.kind).toBe('two sets');
    expect(one.circle?.value).toBeCloseTo(84, 6);
    expect([50, 70]).toContainEqual(Number(one.sets?.apart.toFixed(6)));
    expect(one.sentence).toMatch(/three and three.*one circle/);
    const two = see([...ring(3, 96), ...ring(3, 88, 60)]);
    expect(two.kind).toBe('two sets');
    expect([...(two.sets?.circles ?? [])].sort()).toEqual([expect.closeTo(88, 6), expect.closeTo(96, 6)]);
    expect(two.circle).toBeNull();
  });

  it('tells rectangles, two sets and odd holes apart through errors of every coordinate', () => {
    const random = randomFrom(59);
    const noisy = (p: Point) => ({ x: p.x + within(random, 0.05), y: p.y + within(random, 0.05) });
    for (let round = 0; round < 300; round++) {
      // Spacings a millimetre or more apart; sets two degrees or more from even; a hole 0.4 mm or more off its place.
      const a = 20 + 30 * random();
      const b = a + 0.5 + 10 * random();
      const corners = [onCircle(1, 45), onCircle(1, 135), onCircle(1, 225), onCircle(1, 315)];
      expect(see(corners.map(({ x, y }) => noisy({ x: x * Math.SQRT2 * a, y: y * Math.SQRT2 * b }))).kind).toBe(
        'rectangle',
      );
      const apart = (random() < 0.5 ? 20 : 62) + 38 * random();
      expect(see([...ring(3, 100), ...ring(3, 100, apart)].map(noisy)).kind).toBe('two sets');
      const count = 4 + Math.floor(9 * random());
      const odd = Math.floor(count * random());
      const shift = onCircle(0.4 + 2 * random(), 360 * random());
      const spoilt = ring(count, 100).map((p, k) => noisy(k === odd ? { x: p.x + shift.x, y: p.y + shift.y } : p));
      expect(see(spoilt).oddHole).toBe(odd);
    }
  });

  it('knows uneven spacing on one circle, and tells the angles', () => {
    const angles = [0, 70, 180, 250, 300];
    const pattern = see(angles.map((angle) => onCircle(50, angle, 10, 20)));
    expect(pattern.kind).toBe('uneven');
    expect(pattern.circle?.value).toBeCloseTo(100, 6);
    expect(pattern.sentence).toMatch(/70, 110, 70, 50 and 60 degrees apart/);
  });

  it('sees that holes of an even pattern were left out', () => {
    const pattern = see([0, 60, 120, 180, 240].map((angle) => onCircle(42, angle)));
    expect(pattern.kind).toBe('uneven');
    expect(pattern.notes.join(' ')).toMatch(/5 of 6 even places/);
  });

  it('says so when there is no circle', () => {
    expect(
      see([
        { x: 0, y: 0 },
        { x: 50, y: 0 },
        { x: 55, y: 30 },
        { x: 20, y: 22 },
        { x: 3, y: 40 },
      ]).kind,
    ).toBe('irregular');
  });

  it('refuses one hole, and two on one place', () => {
    const one = recognisePattern([{ x: 1, y: 1 }], 0.05);
    expect(one.ok ? '' : one.why).toMatch(/two holes or more/);
    const twice = recognisePattern([...ring(4, 80), { x: 40, y: 0 }], 0.05);
    expect(twice.ok ? '' : twice.why).toMatch(/Holes 1 and 5 stand on one place/);
  });
});

describe('a rectangle by its spacings', () => {
  it('gives the circle of 58 x 48, and holds a quoted diagonal against it', () => {
    const [a, b] = [givenOnce(58), givenOnce(48)];
    expect(rectangleCircle(a, b).value).toBeCloseTo(75.286, 3);
    // A forum post quotes 78 for these spacings; Pythagoras says 75.29.
    const quoted = checkDiagonal(a, b, givenOnce(78));
    expect(quoted.ok ? '' : quoted.why).toMatch(/75\.286 \+-0\.042 mm.*78 mm: 2\.71 mm apart/);
    expect(checkDiagonal(a, b, givenOnce(75.3)).ok).toBe(true);
  });
});

describe('distances between numbered holes', () => {
  const between = (
    points: readonly Point[],
    pairs: readonly (readonly [number, number])[],
    error: () => number = () => 0,
  ): HoleDistance[] =>
    pairs.map(([from, to]) => {
      const [a, b] = [points[from - 1] as Point, points[to - 1] as Point];
      return { from, to, over: 'centres', reading: givenOnce(Math.hypot(a.x - b.x, a.y - b.y) + error()) };
    });
  const allPairs = (count: number) =>
    Array.from({ length: count }, (_, i) =>
      Array.from({ length: count - i - 1 }, (_, j) => [i + 1, i + j + 2] as const),
    ).flat();

  it('find every hole again: each distance of the answer is the one that was read', () => {
    const points = [onCircle(50, 0), onCircle(50, 85), onCircle(46, 180), onCircle(50, 262), onCircle(48, 300)];
    const found = patternFromDistances(5, between(points, allPairs(5)), null);
    if (!found.ok) throw new Error(found.why);
    for (const [from, to] of allPairs(5)) {
      const [a, b] = [found.points[from - 1] as Point, found.points[to - 1] as Point];
      const [p, q] = [points[from - 1] as Point, points[to - 1] as Point];
      expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(Math.hypot(p.x - q.x, p.y - q.y), 4);
    }
  });

  it('recognise even holes and rectangles through caliper errors', () => {
    const random = randomFrom(53);
    for (let round = 0; round < 60; round++) {
      const count = 3 + Math.floor(6 * random());
      const found = patternFromDistances(
        count,
        between(ring(count, 100), allPairs(count), () => within(random, 0.03)),
        null,
      );
      if (!found.ok) throw new Error(found.why);
      expect(found.pattern.kind).toBe('even');
      expect(Math.abs((found.pattern.circle?.value ?? 0) - 100)).toBeLessThanOrEqual(
        (found.pattern.circle?.doubt ?? 0) + 1e-3,
      );
    }
    const corners = [
      { x: 29, y: 24 },
      { x: -29, y: 24 },
      { x: -29, y: -24 },
      { x: 29, y: -24 },
    ];
    const found = patternFromDistances(
      4,
      between(corners, allPairs(4), () => within(random, 0.03)),
      null,
    );
    expect(found.ok && found.pattern.kind).toBe('rectangle');
  });

  it('name the distance that the others do not leave room for', () => {
    const distances = between(ring(6, 84), allPairs(6)).map((one) =>
      one.from === 2 && one.to === 5 ? { ...one, reading: givenOnce(85.5) } : one,
    );
    const answer = patternFromDistances(6, distances, null);
    expect(answer.ok ? '' : answer.why).toMatch(/holes 2 and 5 read 85\.5 mm/);
  });

  it('take even spacing on trust when too few, and say no when even that fails', () => {
    const few = patternFromDistances(
      6,
      between(ring(6, 84), [
        [1, 2],
        [1, 3],
        [1, 4],
      ]),
      null,
    );
    if (!few.ok) throw new Error(few.why);
    expect(few.isSettled).toBe(false);
    expect(few.pattern.circle?.value).toBeCloseTo(84, 6);
    const bad = between(ring(6, 84), [
      [1, 2],
      [1, 3],
      [1, 4],
    ]).map((one) => (one.to === 3 ? { ...one, reading: givenOnce(71) } : one));
    const answer = patternFromDistances(6, bad, null);
    expect(answer.ok ? '' : answer.why).toMatch(/The odd one is skip one.*measure 9 distances/);
    expect(distancesNeeded(6)).toBe(9);
  });

  it('refuse holes that are not there', () => {
    const answer = patternFromDistances(6, [{ from: 1, to: 7, over: 'centres', reading: givenOnce(42) }], null);
    expect(answer.ok ? '' : answer.why).toMatch(/no hole 7 among 6/);
    const same = patternFromDistances(6, [{ from: 2, to: 2, over: 'centres', reading: givenOnce(42) }], null);
    expect(same.ok ? '' : same.why).toMatch(/named twice/);
  });
});

it('measures angles the short way round', () => {
  expect(angleBetween(350, 10)).toBe(20);
});
