/** Wedges, mounts and travel against plane trigonometry; the search for the best against plain grids and closed forms. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointAngles, residualAngle, type Train, type TrainJoint } from '../../src/formulas/joint-train.ts';
import { leastOf } from '../../src/formulas/least-of.ts';
import { directionOf, readingOf } from '../../src/formulas/shaft-direction.ts';
import {
  bearingRaised,
  lastLength,
  mountRaised,
  type PlacedTrain,
  placed,
  trainOf,
  travelled,
  wedged,
} from '../../src/formulas/train-moves.ts';
import { add, lengthOf, less, stretched, type Vector } from '../../src/formulas/vectors.ts';

const universal: TrainJoint = { kind: 'universal', yokes: 0 };
const train = (sides: readonly number[]): Train => ({
  shafts: sides.map((side) => directionOf({ side, plan: 0 })),
  joints: sides.slice(1).map(() => universal),
});
const sidesOf = (there: PlacedTrain): number[] => trainOf(there).shafts.map((shaft) => readingOf(shaft).side);
const rad = Math.PI / 180;

describe('moves in the side view', () => {
  it('sets a train out and reads it back', () => {
    expect(sidesOf(placed(train([3, 6, 1, 4]), [700, 900]))).toEqual(
      [3, 6, 1, 4].map((side) => expect.closeTo(side, 9)),
    );
  });

  it('is set out from its first joint centre, along a level shaft', () => {
    expect(placed(train([0, 0, 0]), [900]).centres).toEqual([
      [0, 0, 0],
      [expect.closeTo(900, 9), expect.closeTo(0, 9), expect.closeTo(0, 9)],
    ]);
  });

  it('straight droop of 80 mm on 900 mm level: 903.549 mm long (worked sum of the trade)', () => {
    const there = travelled(placed(train([0, 0, 0]), [900]), -80, { arm: 0, pivot: null }) as PlacedTrain;
    expect(lastLength(there)).toBeCloseTo(903.549, 3);
    expect(sidesOf(there)[1]).toBeCloseTo(Math.atan(80 / 900) / rad, 9);
    expect(sidesOf(there)[2]).toBeCloseTo(0, 9);
  });

  it('a wedge turns the last shaft by its angle, and moves the joint about the middle of the axle', () => {
    const start = placed(train([3, 5, 2]), [1000]);
    expect(sidesOf(wedged(start, 1.5, 0))).toEqual([3, 5, 3.5].map((side) => expect.closeTo(side, 9)));
    const there = wedged(start, 2, 250);
    const axle = (t: PlacedTrain): Vector => add(t.centres[1] as Vector, stretched(t.last, 250));
    expect(lengthOf(less(axle(there), axle(start)))).toBeCloseTo(0, 9);
    // Nose up: the joint rises by 250 (sin 4 - sin 2), so the shaft ahead lies flatter.
    const rise = 250 * (Math.sin(4 * rad) - Math.sin(2 * rad));
    expect((there.centres[1] as Vector)[2] - (start.centres[1] as Vector)[2]).toBeCloseTo(rise, 9);
    expect(sidesOf(there)[1] as number).toBeLessThan(5);
  });

  it('a raised mount tips the gearbox tail up by asin(height / pivot)', () => {
    const there = mountRaised(placed(train([3, 5, 3]), [1000]), 10, 700);
    expect(sidesOf(there)[0]).toBeCloseTo(3 - Math.asin(10 / 700) / rad, 9);
    expect(sidesOf(there)[1]).toBeCloseTo(Math.atan2(1000 * Math.sin(5 * rad) + 10, 1000 * Math.cos(5 * rad)) / rad, 9);
  });

  it('a mount raised by more than it is off tips it upright, and no further', () => {
    const level = placed(train([0, 0, 0]), [1000]);
    expect(sidesOf(mountRaised(level, 720, 700))[0]).toBeCloseTo(-90, 6);
    expect(sidesOf(mountRaised(level, -720, 700))[0]).toBeCloseTo(90, 6);
  });

  it('a raised centre bearing flattens the shaft ahead and steepens the one behind', () => {
    const there = bearingRaised(placed(train([2, 2, 2, 2]), [600, 900]), 1, 20);
    const [, ahead, behind] = sidesOf(there);
    expect(ahead).toBeCloseTo(Math.atan2(600 * Math.sin(2 * rad) - 20, 600 * Math.cos(2 * rad)) / rad, 9);
    expect(behind).toBeCloseTo(Math.atan2(900 * Math.sin(2 * rad) + 20, 900 * Math.cos(2 * rad)) / rad, 9);
  });

  it('an axle that swings keeps its distance from the pivot, rises as told, and turns with the swing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -80, max: 80, noNaN: true }),
        fc.double({ min: 400, max: 1200, noNaN: true }),
        fc.double({ min: -150, max: 150, noNaN: true }),
        (up, ahead, above) => {
          const start = placed(train([3, 6, 2]), [1100]);
          const path = { arm: 250, pivot: { ahead, above } };
          const there = travelled(start, up, path) as PlacedTrain;
          const pivot = add(start.centres[1] as Vector, [-ahead, 0, above]);
          const axle = (t: PlacedTrain): Vector => add(t.centres[1] as Vector, stretched(t.last, 250));
          expect(axle(there)[2] - axle(start)[2]).toBeCloseTo(up, 8);
          expect(lengthOf(less(axle(there), pivot))).toBeCloseTo(lengthOf(less(axle(start), pivot)), 8);
          const bearing = (t: PlacedTrain) => {
            const [x, , z] = less(axle(t), pivot);
            return Math.atan2(z, x) / rad;
          };
          expect(readingOf(there.last).side - 2).toBeCloseTo(-(bearing(there) - bearing(start)), 8);
        },
      ),
    );
  });

  it('says so where the swing does not reach', () => {
    expect(travelled(placed(train([0, 0, 0]), [900]), 400, { arm: 100, pivot: { ahead: 200, above: 0 } })).toBeNull();
  });
});

describe('the least of a function', () => {
  it('finds the bottom of a slanted bowl (closed form)', () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 4, noNaN: true }), fc.double({ min: -8, max: 8, noNaN: true }), (a, b) => {
        const bowl = ([x = 0, y = 0]: readonly number[]) => (x - a) ** 2 + 3 * (y - b) ** 2 + 1.2 * (x - a) * (y - b);
        const found = leastOf(bowl, [
          { least: -5, most: 5 },
          { least: -10, most: 10 },
        ]);
        expect(found[0]).toBeCloseTo(a, 3);
        expect(found[1]).toBeCloseTo(b, 3);
      }),
      { numRuns: 40 },
    );
  });

  it('stays within what may be set', () => {
    expect(leastOf(([x = 0]) => x, [{ least: -2, most: 7 }])[0]).toBeCloseTo(-2, 9);
  });

  it('is never beaten by a fine grid over wedge and bearing height', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -6, max: 6, noNaN: true }), { minLength: 4, maxLength: 4 }), (sides) => {
        const start = placed(train(sides), [650, 950]);
        const cost = ([wedge = 0, height = 0]: readonly number[]) => {
          const there = trainOf(bearingRaised(wedged(start, wedge, 250), 1, height));
          return residualAngle(there) ** 2 + jointAngles(there).reduce((sum, b) => sum + Math.max(0, 1 - b), 0);
        };
        const found = cost(
          leastOf(cost, [
            { least: -6, most: 6 },
            { least: -30, most: 30 },
          ]),
        );
        let grid = Infinity;
        for (let w = -6; w <= 6; w += 0.13) for (let h = -30; h <= 30; h += 0.7) grid = Math.min(grid, cost([w, h]));
        expect(found).toBeLessThanOrEqual(grid + 1e-6);
      }),
      { numRuns: 12 },
    );
  });
});
