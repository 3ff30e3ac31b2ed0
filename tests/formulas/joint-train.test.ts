/**
 * Trains of joints: published figures, and a second method that shares nothing with the first. The second method follows the angles of the
 * forks from joint to joint by tan(out) = tan(in) / cos(b) (a joint maker's technical annex), with the angle between the planes of two bends
 * taken about the shaft between them, and differentiates them numerically.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accelerationOf,
  angleFor,
  jointAngles,
  residualAngle,
  shaftUnevenness,
  speedFor,
  type Train,
  type TrainJoint,
} from '../../src/formulas/joint-train.ts';
import { compoundAngle, directionOf, readingOf } from '../../src/formulas/shaft-direction.ts';
import { exactAcceleration, speedRange, speedSwing, speedsAt } from '../../src/formulas/train-motion.ts';
import { cross, dot, unit, type Vector } from '../../src/formulas/vectors.ts';
import { jointAngleTable } from '../../src/standards/shaft-practice.ts';

const universal: TrainJoint = { kind: 'universal', yokes: 0 };
const rad = Math.PI / 180;

/** A train from side and plan angles. */
function trainFrom(readings: readonly (readonly [number, number])[], joints?: readonly TrainJoint[]): Train {
  return {
    shafts: readings.map(([side, plan]) => directionOf({ side, plan })),
    joints: joints ?? readings.slice(1).map(() => universal),
  };
}

/** Angle from a to b about the axis, degrees. */
const about = (axis: Vector, a: Vector, b: Vector): number => Math.atan2(dot(axis, cross(a, b)), dot(a, b)) / rad;

/** Turn of the last shaft for a turn of the first one, degrees, continuous. The second method. */
function turnOfLast({ shafts, joints }: Train, turn: number): number {
  const normals = joints.map((_, i) => unit(cross(shafts[i] as Vector, shafts[i + 1] as Vector)));
  let first = true;
  let fork = turn;
  joints.forEach(({ kind, yokes }, i) => {
    const b = Math.acos(dot(shafts[i] as Vector, shafts[i + 1] as Vector));
    const turnOfPlane = i === 0 ? 0 : about(shafts[i] as Vector, normals[i - 1] as Vector, normals[i] as Vector);
    const own = kind === 'universal' && !first ? yokes : 0;
    const into = fork + own - turnOfPlane;
    if (kind === 'constant velocity') {
      fork = into;
      return;
    }
    first = false;
    // The same quadrant as the input: tan alone does not know it.
    const whole = Math.round(into / 180) * 180;
    fork = whole + Math.atan(Math.tan((into - whole) * rad) / Math.cos(b)) / rad + 90;
  });
  return fork;
}

/** Greatest acceleration of the last shaft, rad/s2, by second differences. */
function acceleration(train: Train, speed: number): number {
  const step = 0.05;
  let most = 0;
  for (let turn = 0.013; turn < 180; turn += 0.5) {
    const [a, b, c] = [-step, 0, step].map((by) => turnOfLast(train, turn + by)) as [number, number, number];
    most = Math.max(most, Math.abs(a - 2 * b + c) / step ** 2 / rad);
  }
  return most * ((speed * Math.PI) / 30) ** 2;
}

describe('published figures', () => {
  it.each([
    {
      what: 'one joint at 6 degrees (textbook)',
      train: trainFrom([
        [0, 0],
        [6, 0],
      ]),
      residual: 6,
      exact: 1084.3454,
    },
    {
      what: '8 then 5 in line (technical annex, recomputed)',
      train: trainFrom([
        [0, 0],
        [8, 0],
        [13, 0],
      ]),
      residual: 6.245,
      exact: 1177.9,
    },
    {
      what: 'yokes 2 degrees out at 5 and 5',
      train: trainFrom(
        [
          [0, 0],
          [5, 0],
          [10, 0],
        ],
        [universal, { kind: 'universal', yokes: 2 }],
      ),
      residual: 1.321,
      exact: 52.53,
    },
  ])('$what at 3000 rpm', ({ train, residual, exact }) => {
    expect(residualAngle(train)).toBeCloseTo(residual, 3);
    expect(Math.abs(exactAcceleration(train, 3000) / exact - 1)).toBeLessThan(2e-4);
    expect(Math.abs(acceleration(train, 3000) / exact - 1)).toBeLessThan(2e-4);
  });

  it('three joints of 1, 5 and 4.5 degrees with signs + + - leave 2.398 (technical annex)', () => {
    // In one plane forks in line alternate in sign: a quarter turn at the second joint makes + - + into + + -.
    const joints: TrainJoint[] = [universal, { kind: 'universal', yokes: 90 }, universal];
    expect(
      residualAngle(
        trainFrom(
          [
            [0, 0],
            [1, 0],
            [6, 0],
            [1.5, 0],
          ],
          joints,
        ),
      ),
    ).toBeCloseTo(2.3979, 3);
  });

  it('equal angles in planes 30 degrees apart do not cancel: 4 and 4 leave 4', () => {
    const second: Vector = [Math.cos(4 * rad), 0, -Math.sin(4 * rad)];
    const third = unit([
      1,
      Math.sin(30 * rad) * Math.tan(4 * rad),
      -Math.tan(4 * rad) - Math.cos(30 * rad) * Math.tan(4 * rad),
    ]);
    const train: Train = { shafts: [[1, 0, 0], second, third], joints: [universal, universal] };
    expect(Math.abs(residualAngle(train) - 4)).toBeLessThan(0.03);
    expect(Math.abs(exactAcceleration(train, 3000) / acceleration(train, 3000) - 1)).toBeLessThan(1e-3);
  });

  it('a joint at 10 degrees: speed 1.0154 to 0.9848, swing 0.0306 (technical annex)', () => {
    const { least, most } = speedRange(
      trainFrom([
        [0, 0],
        [10, 0],
      ]),
      1,
      0,
    );
    expect(most).toBeCloseTo(1.0154, 4);
    expect(least).toBeCloseTo(0.9848, 4);
    expect(most - least).toBeCloseTo(speedSwing(10), 6);
    expect(speedSwing(10)).toBeCloseTo(0.0306, 4);
    expect(speedSwing(2.9765)).toBeCloseTo(0.0027, 6);
  });

  it('small-angle acceleration: 1082.32 at 6 degrees and 3000 rpm, 4.3 % low at 25 degrees (textbook)', () => {
    expect(accelerationOf(3000, 6)).toBeCloseTo(1082.3232, 3);
    expect(accelerationOf(1000, 25) / 2181.9004).toBeCloseTo(1 - 0.043, 3);
    expect(
      Math.abs(
        exactAcceleration(
          trainFrom([
            [0, 0],
            [25, 0],
          ]),
          1000,
        ) /
          2181.9004 -
          1,
      ),
    ).toBeLessThan(3e-4);
  });

  it("a joint maker's table of angles by speed comes to 850 to 1030 rad/s2", () => {
    for (const { n, angle } of jointAngleTable.rows) {
      expect(accelerationOf(n, angle)).toBeGreaterThan(850);
      expect(accelerationOf(n, angle)).toBeLessThan(1030);
    }
  });

  // Allowable angle of joint 2 by angle of joint 1 and speed: engineering reference page quoting the automotive engineers' handbook.
  it.each([
    { rpm: 1500, angles: [7.3, 7.4, 7.6, 7.9, 8.3] },
    { rpm: 1600, angles: [6.9, 6.9, 7.1, 7.5, 7.9] },
  ])('the published two-joint table at $rpm rpm comes to 396 to 408 rad/s2', ({ rpm, angles }) => {
    angles.forEach((two, one) => {
      // One plane, forks in line, bent the same way.
      const train = trainFrom([
        [0, 0],
        [one, 0],
        [one + two, 0],
      ]);
      const found = accelerationOf(rpm, residualAngle(train));
      expect(found).toBeGreaterThan(396);
      expect(found).toBeLessThan(408);
    });
  });

  it('compound angle of 3 and 4 degrees: 4.9942 exactly (geometry), 5.0 in a manual', () => {
    expect(compoundAngle(3, 4)).toBeCloseTo(4.9942, 4);
    expect(compoundAngle(3, 4)).toBeCloseTo(5, 1);
  });
});

const side = fc.double({ min: -9, max: 9, noNaN: true });
const anyJoint = fc.record({
  kind: fc.constantFrom('universal' as const, 'universal' as const, 'constant velocity' as const),
  yokes: fc.double({ min: -180, max: 180, noNaN: true }),
});
/** Two to four joints at any angles up to a dozen degrees; no joint so straight that its plane is undefined. */
const anyTrain = fc
  .integer({ min: 1, max: 4 })
  .chain((count) =>
    fc.record({
      readings: fc.array(fc.tuple(side, side), { minLength: count + 1, maxLength: count + 1 }),
      joints: fc.array(anyJoint, { minLength: count, maxLength: count }),
    }),
  )
  .map(({ readings, joints }) => trainFrom(readings, joints))
  .filter((train) => jointAngles(train).every((angle) => angle > 0.3));

/** Sum of the squares of the universal joints' angles, rad2: the size of what the rule leaves out, squared. */
const sizeOfRest = (train: Train): number =>
  jointAngles(train).reduce((sum, b, i) => sum + (train.joints[i]?.kind === 'universal' ? 1 : 0.5) * (b * rad) ** 2, 0);

describe('random trains in space', () => {
  it('turns by forks in space as it does by tangents from joint to joint', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const [exact, second] = [exactAcceleration(train, 1000), acceleration(train, 1000)];
        expect(Math.abs(exact - second)).toBeLessThan(0.003 * Math.max(exact, second) + 0.05);
      }),
      { numRuns: 150 },
    );
  });

  it('agrees with the second-order rule up to the fourth power of the angles', () => {
    let worst = 0;
    fc.assert(
      fc.property(anyTrain, (train) => {
        const omega2 = ((1000 * Math.PI) / 30) ** 2;
        const gap = Math.abs(acceleration(train, 1000) - accelerationOf(1000, residualAngle(train))) / omega2;
        const rest = sizeOfRest(train) ** 2;
        worst = Math.max(worst, gap / rest);
        expect(gap).toBeLessThan(1.2 * rest + 1e-6);
      }),
      { numRuns: 300 },
    );
    // The bound is not so wide that anything would pass.
    expect(worst).toBeGreaterThan(0.1);
  });

  it('keeps its mean speed: over a turn every shaft turns once', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const sums = train.shafts.map(() => 0);
        const steps = 720;
        for (let k = 0; k < steps; k++)
          speedsAt(train, (360 * k) / steps).forEach((v, i) => {
            sums[i] = (sums[i] as number) + v / steps;
          });
        for (const mean of sums) expect(mean).toBeCloseTo(1, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('does not care how the line as a whole lies: a slope of the floor is in every reading', () => {
    fc.assert(
      fc.property(anyTrain, fc.double({ min: -5, max: 5, noNaN: true }), (train, tip) => {
        const lean = ([x, y, z]: Vector): Vector => [
          x * Math.cos(tip * rad) + z * Math.sin(tip * rad),
          y,
          -x * Math.sin(tip * rad) + z * Math.cos(tip * rad),
        ];
        const leaned = { ...train, shafts: train.shafts.map(lean) };
        const [before, after] = [exactAcceleration(train, 1000), exactAcceleration(leaned, 1000)];
        expect(Math.abs(after - before)).toBeLessThan(1e-3 * before + 1e-3);
        const parts = shaftUnevenness(train);
        expect(parts[0]?.fromFirst).toBe(0);
        expect(parts[0]?.fromLast).toBeCloseTo(residualAngle(train), 9);
        expect(parts.at(-1)?.fromFirst).toBeCloseTo(residualAngle(train), 9);
      }),
      { numRuns: 60 },
    );
  });

  it('reads a direction back as it was given', () => {
    fc.assert(
      fc.property(side, side, (s, p) => {
        const read = readingOf(directionOf({ side: s, plan: p }));
        expect(read.side).toBeCloseTo(s, 9);
        expect(read.plan).toBeCloseTo(p, 9);
      }),
    );
  });
});

describe('speeds and angles for an acceleration', () => {
  it('undo each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 9000, noNaN: true }),
        fc.double({ min: 50, max: 3000, noNaN: true }),
        (n, a) => {
          expect(accelerationOf(n, angleFor(n, a)) / a).toBeCloseTo(1, 9);
          expect(speedFor(angleFor(n, a), a) / n).toBeCloseTo(1, 9);
        },
      ),
    );
    expect(speedFor(0, 400)).toBe(Infinity);
  });
});
