/** The small sums that others stand on: arrows against complex numbers, matrices against hand sums and their own definitions. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  angleOf,
  apart,
  arrow,
  minus,
  mirrored,
  over,
  plus,
  scaled,
  sizeOf,
  sumOf,
  times,
} from '../../src/formulas/arrows.ts';
import { addingUp } from '../../src/formulas/chain-shares.ts';
import { frameFrequencies, tipFlexibility } from '../../src/formulas/frame-vibration.ts';
import { leastOf } from '../../src/formulas/least-of.ts';
import { workingStress } from '../../src/formulas/preload.ts';
import { axisTilt } from '../../src/formulas/rigid-bodies.ts';
import { shearShare, tubeBuckling } from '../../src/formulas/shaft-tube.ts';
import {
  backward,
  cell,
  cholesky,
  dot,
  forward,
  times as matrixTimes,
  symmetricEigen,
  zeros,
} from '../../src/formulas/small-matrices.ts';
import { nearerAndNearer } from '../../src/formulas/whole-ratio.ts';
import { must } from '../../src/standards/table.ts';
import { findThread } from '../../src/standards/threads.ts';

const near = (found: { x: number; y: number }, x: number, y: number) => {
  expect(found.x).toBeCloseTo(x, 9);
  expect(found.y).toBeCloseTo(y, 9);
};

describe('arrows', () => {
  it('by hand: 3 + 4i and 1 - 2i', () => {
    const [a, b] = [
      { x: 3, y: 4 },
      { x: 1, y: -2 },
    ];
    near(plus(a, b), 4, 2);
    near(minus(a, b), 2, 6);
    // (3 + 4i)(1 - 2i) = 11 - 2i; over: (3 + 4i)(1 + 2i)/5 = -1 + 2i.
    near(times(a, b), 11, -2);
    near(over(a, b), -1, 2);
    near(scaled(a, -2), -6, -8);
    near(mirrored(a), 3, -4);
    near(sumOf([a, b, b]), 5, 0);
    near(sumOf([]), 0, 0);
    expect(sizeOf(a)).toBe(5);
  });

  it.each([
    [0, 1, 0],
    [1, 1, 45],
    [1, 0, 90],
    [0, -1, 180],
    [-1, 0, 270],
    [-1, 1, 315],
    [0, 0, 0],
  ])('y %f, x %f point to %f degrees', (y, x, degrees) => {
    expect(angleOf({ x, y })).toBeCloseTo(degrees, 9);
    if (x !== 0 || y !== 0) near(arrow(Math.hypot(x, y), degrees), x, y);
  });

  it.each([
    [10, 350, 20],
    [350, 10, 20],
    [0, 180, 180],
    [90, 271, 179],
    [-10, 725, 15],
    [40, 40, 0],
    [0, 90, 90],
  ])('%f and %f degrees lie %f apart', (a, b, degrees) => expect(apart(a, b)).toBeCloseTo(degrees, 9));
});

describe('small matrices', () => {
  it('factor of a textbook matrix, and both ways of solving with it', () => {
    // [4 12 -16; 12 37 -43; -16 -43 98] = L L^T with L = [2; 6 1; -8 5 3]: the example that textbooks print.
    const matrix = [
      [4, 12, -16],
      [12, 37, -43],
      [-16, -43, 98],
    ];
    const factor = cholesky(matrix);
    expect(factor).toEqual([
      [2, 0, 0],
      [6, 1, 0],
      [-8, 5, 3],
    ]);
    // A (1, 2, 3) = (-20, -43, 192).
    const right = [4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294];
    expect(matrixTimes(matrix, [1, 2, 3])).toEqual(right);
    backward(factor, forward(factor, right)).forEach((value, i) => {
      expect(value).toBeCloseTo(i + 1, 9);
    });
  });

  it('knows no factor of what is not positive definite, and no cell outside', () => {
    expect(() =>
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(RangeError);
    expect(() => cholesky([[0]])).toThrow(RangeError);
    expect(() => cell([[1]], 0, 1)).toThrow(/cell 0, 1/);
    expect(() => cell([[1]], 1, 0)).toThrow(RangeError);
    expect(zeros(2)).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
  });

  it('eigenvalues by hand: [2 1; 1 2] has 3 and 1; a chain of three has 2 and 2 +- sqrt 2', () => {
    const two = symmetricEigen([
      [2, 1],
      [1, 2],
    ]);
    expect(two.map(({ value }) => Number(value.toFixed(12)))).toEqual([3, 1]);
    const chain = symmetricEigen([
      [2, -1, 0],
      [-1, 2, -1],
      [0, -1, 2],
    ]);
    [2 + Math.SQRT2, 2, 2 - Math.SQRT2].forEach((value, i) => {
      expect(chain[i]?.value).toBeCloseTo(value, 12);
    });
  });

  it('any symmetric matrix: A v = w v, vectors of length 1 and square to each other, greatest first', () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.array(number, { minLength: 36, maxLength: 36 }), (size, pool) => {
        const matrix = Array.from({ length: size }, (_, i) =>
          Array.from({ length: size }, (_, j) => pool[6 * Math.min(i, j) + Math.max(i, j)] as number),
        );
        const found = symmetricEigen(matrix);
        expect(found).toHaveLength(size);
        found.forEach(({ value, vector }, k) => {
          matrixTimes(matrix, vector).forEach((entry, i) => {
            expect(Math.abs(entry - value * (vector[i] as number))).toBeLessThan(1e-9 * 600);
          });
          found.forEach((other, l) => {
            expect(dot(vector, other.vector)).toBeCloseTo(k === l ? 1 : 0, 9);
          });
          if (k > 0) expect(value).toBeLessThanOrEqual((found[k - 1]?.value ?? 0) + 1e-9);
        });
        const trace = matrix.reduce((sum, row, i) => sum + (row[i] as number), 0);
        expect(found.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(trace, 8);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a hollow section in shear', () => {
  it('half way between bar and tube: d/D = 1/2 and v = 0.3 (Cowper 1966, by hand)', () => {
    // m2 = 1/4: 6 x 1.3 x 1.25^2 over 8.8 x 1.25^2 + 23.6 / 4.
    expect(shearShare({ outside: 50, wall: 12.5 }, 0.3)).toBeCloseTo((7.8 * 1.5625) / (8.8 * 1.5625 + 5.9), 12);
  });
});

describe('a strip held at one end', () => {
  const strip = { youngsModulus: 210_000, shearModulus: 80_000, width: 20, thickness: 3, density: 7.85e-3 };
  const [flat, edge] = [(20 * 3 ** 3) / 12, (3 * 20 ** 3) / 12];

  it.each([0, 30, 90, 135, 250])('gives by L3/(3 E I) flat and on edge, however it points: %i degrees', (degrees) => {
    const { x: p, y: q } = arrow(80, degrees);
    const { inPlane, across } = tipFlexibility(
      [
        { p: 0, q: 0 },
        { p: 0.3 * p, q: 0.3 * q },
        { p, q },
      ],
      strip,
    );
    expect(inPlane / (80 ** 3 / (3 * 210_000 * flat))).toBeCloseTo(1, 9);
    expect(across / (80 ** 3 / (3 * 210_000 * edge))).toBeCloseTo(1, 9);
  });
});

it('parts that add up: what is missing goes to those that lost most by rounding down', () => {
  // Tenths lost: 0.02, 0.09, 0.09; two are missing of 1.0.
  expect(addingUp([0.12, 0.49, 0.39], 1)).toEqual([0.1, 0.5, 0.4]);
  expect(addingUp([1.26, 2.37, 3.37], 1)).toEqual([1.2, 2.4, 3.4]);
  expect(addingUp([14.9, 3.6, 1.5], 0)).toEqual([15, 4, 1]);
});

describe('a bent strip with its own mass', () => {
  const strip = { youngsModulus: 210_000, shearModulus: 80_000, width: 20, thickness: 3, density: 7.85e-3 };
  const bent = [
    [0, 0],
    [10, 40],
    [70, 25],
  ] as const;
  const turned = (degrees: number, mirror: 1 | -1) => {
    const way = arrow(1, degrees);
    return bent.map(([x, y]) => times(way, { x, y: mirror * y })).map(({ x, y }) => ({ p: x, q: y }));
  };

  it('swings as fast however it is turned in its plane, or mirrored', () => {
    const { inPlane, across } = frameFrequencies(turned(0, 1), strip, 12);
    for (const [degrees, mirror] of [
      [90, 1],
      [35, -1],
      [200, 1],
      [300, -1],
    ] as const) {
      const here = frameFrequencies(turned(degrees, mirror), strip, 12);
      expect(here.inPlane / inPlane).toBeCloseTo(1, 9);
      expect(here.across / across).toBeCloseTo(1, 9);
    }
  });

  it('straight and upright: each bit of mass by its own give x^3/(3 E I), so w^2 = 12 E I/(m L^4) (Dunkerley)', () => {
    const [upright, bends, m] = [80, (210_000 * 20 * 3 ** 3) / 12, 7.85e-3 * 20 * 3 * 1e-6];
    const { inPlane } = frameFrequencies(
      [
        { p: 0, q: 0 },
        { p: 0, q: upright },
      ],
      strip,
      0,
    );
    expect((2 * Math.PI * inPlane) ** 2 / ((12 * bends) / (m * upright ** 4))).toBeCloseTo(1, 3);
  });
});

it('one of three axes that are square to each other is always within acos(1/sqrt 3) = 54.74 degrees of z', () => {
  const some = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(some, some, some, some, some, some, (xx, yy, zz, xy, yz, xz) => {
      expect(axisTilt({ xx, yy, zz, xy, yz, xz }).degrees).toBeLessThan(54.7357);
    }),
    { numRuns: 300 },
  );
});

it('stress of a tightened M10 at work: half of its torsion left (VDI 2230, by hand)', () => {
  // d2 9.026, d3 8.160 as printed: d0 8.593, A0 57.99 mm2. At 0.12: t/s = 1.5 x 9.026/8.593 x (1.5/(pi 9.026) + 1.155 x 0.12) = 0.3017.
  const area = (Math.PI / 4) * 8.593 ** 2;
  const torsion = 1.5 * (9.026 / 8.593) * (1.5 / (Math.PI * 9.026) + 1.155 * 0.12);
  const byHand = (now: number, then: number) => Math.sqrt((now / area) ** 2 + 3 * ((0.5 * torsion * then) / area) ** 2);
  const thread = must(findThread('M10'));
  for (const [now, then] of [
    [40_000, 40_000],
    [30_000, 45_000],
    [50_000, 0],
  ] as const)
    expect(workingStress(thread, now, then, 0.12) / byHand(now, then)).toBeCloseTo(1, 3);
});

it('a thin tube twisted until it buckles: 100 x 2 mm of steel at 438 MPa (Timoshenko and Gere, by hand)', () => {
  // 210000/(3 sqrt 2 x 0.91^0.75) = 53126; (2/49)^1.5 = 0.0082462.
  expect(tubeBuckling({ outside: 100, wall: 2 }, 210_000, 0.3)).toBeCloseTo(438.1, 0);
});

it('the lower of two valleys is found, wherever the search begins', () => {
  for (const deep of [1, 9]) {
    const cost = ([x = 0]: readonly number[]) => Math.min((x - deep) ** 2 - 1, (x - (10 - deep)) ** 2);
    expect(leastOf(cost, [{ least: 0, most: 10 }])[0]).toBeCloseTo(deep, 4);
  }
});

it('whole ratios beyond the dials: the end of their range is all there is; within it, the fractions of 0.3 up to tenths', () => {
  const told = (wanted: number, largest: number) => nearerAndNearer(wanted, largest).map(({ p, q }) => `${p}/${q}`);
  expect(told(0.095, 10)).toEqual(['1/10']);
  expect(told(0.1, 10)).toEqual(['1/10']);
  expect(told(10.5, 10)).toEqual(['10/1']);
  expect(told(10, 10)).toEqual(['10/1']);
  // By hand: 1 is off by 0.7, 1/2 by 0.2, 1/3 by 0.033, 2/7 by 0.014 and 3/10 is it.
  expect(told(0.3, 10)).toEqual(['1/1', '1/2', '1/3', '2/7', '3/10']);
});
