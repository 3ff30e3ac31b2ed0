/** Length arithmetic, against shafts built in space, against brute force, and against worked sums of the trade. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { directionOf } from '../../src/formulas/shaft-direction.ts';
import { centreDistance, meanReading, orderedLength } from '../../src/formulas/shaft-length.ts';
import { add, lengthOf, less, stretched, type Vector } from '../../src/formulas/vectors.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const angle = number(-12, 12);
const direction = fc.tuple(angle, angle).map(([side, plan]) => directionOf({ side, plan }));

describe('joint centres from a reading between faces', () => {
  it('1320 mm between faces less 22 mm of adapter and 4 mm of spacer leaves 1294 (arithmetic of the trade)', () => {
    const between = { reading: 1320, near: 22 + 4, far: 0, nearEnd: 0, farEnd: 0 };
    expect(centreDistance(between, null)).toBe(1294);
  });

  it('finds the shaft that was built into space, whatever its angles', () => {
    fc.assert(
      fc.property(
        fc.record({
          ahead: direction,
          shaft: direction,
          behind: direction,
          near: number(-5, 60),
          far: number(0, 60),
          nearEnd: number(0, 150),
          farEnd: number(0, 150),
          length: number(200, 3000),
        }),
        ({ ahead, shaft, behind, near, far, nearEnd, farEnd, length }) => {
          // Faces, adapter and joint centres set out one after another; the reading is what a tape would show.
          const face: Vector = [17, -4, 230];
          const first = add(face, stretched(ahead, near + nearEnd));
          const second = add(first, stretched(shaft, length));
          const end = add(second, stretched(behind, farEnd + far));
          const reading = lengthOf(less(end, face));
          const found = centreDistance({ reading, near, far, nearEnd, farEnd }, { ahead, shaft, behind });
          expect(found).toBeCloseTo(length, 6);
          // Taken as straight the answer is shorter, never longer, by what the bends hide.
          const straight = centreDistance({ reading, near, far, nearEnd, farEnd }, null);
          if (near >= 0) expect(straight as number).toBeLessThanOrEqual(length + 1e-6);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('says so when the parts between are longer than the reading', () => {
    const between = { reading: 100, near: 60, far: 0, nearEnd: 30, farEnd: 30 };
    expect(centreDistance(between, null)).toBeNull();
    const level = directionOf({ side: 0, plan: 0 });
    expect(centreDistance(between, { ahead: level, shaft: level, behind: level })).toBeNull();
    // An end of 90 square to the shaft is farther across than a reading of 80 reaches.
    const square: Vector = [0, 1, 0];
    const across = { reading: 80, near: 60, far: 0, nearEnd: 30, farEnd: 0 };
    expect(centreDistance(across, { ahead: square, shaft: level, behind: level })).toBeNull();
    // 3, 4, 5: with a reading of 150 it leaves 120.
    expect(centreDistance({ ...across, reading: 150 }, { ahead: square, shaft: level, behind: level })).toBeCloseTo(
      120,
      9,
    );
    // Half a millimetre is left.
    const half = { ...between, reading: 120.5 };
    expect(centreDistance(half, null)).toBeCloseTo(0.5, 9);
    expect(centreDistance(half, { ahead: level, shaft: level, behind: level })).toBeCloseTo(0.5, 9);
  });

  it('no perturbation of the readings moves the length by more than the readings moved', () => {
    fc.assert(
      fc.property(number(-2, 2), number(800, 2000), direction, direction, (by, reading, ahead, shaft) => {
        const at = (value: number) =>
          centreDistance(
            { reading: value, near: 20, far: 0, nearEnd: 60, farEnd: 60 },
            { ahead, shaft, behind: ahead },
          ) as number;
        // A chord that is inclined to the shaft by up to its joint angles magnifies by 1 / cos at most.
        expect(Math.abs(at(reading + by) - at(reading))).toBeLessThanOrEqual(Math.abs(by) * 1.05 + 1e-9);
      }),
    );
  });
});

describe('the length to order', () => {
  it('1200 pushed home with a stroke of 90 works at 1230 (joint maker: a third of the stroke)', () => {
    const made = orderedLength({ ride: 1230, shortest: 1228, longest: 1233 }, { stroke: 90, reserve: 20 });
    expect(made.compressed).toBeCloseTo(1200, 9);
    expect(made.extended).toBeCloseTo(1290, 9);
    expect(made.governs).toBe('share');
  });

  it('leaves the reserve at both ends whenever any length does, and is nearest to a third of the stroke', () => {
    fc.assert(
      fc.property(
        number(900, 1500),
        number(0, 60),
        number(0, 60),
        number(20, 200),
        number(0, 25),
        (ride, bump, droop, stroke, reserve) => {
          const travel = { ride, shortest: ride - bump, longest: ride + droop };
          const made = orderedLength(travel, { stroke, reserve });
          // Brute force: every pushed-home length in steps of a tenth.
          let best: number | null = null;
          for (let home = ride - stroke - 80; home <= ride + 80; home += 0.1) {
            const fits = travel.shortest - home >= reserve - 1e-9 && home + stroke - travel.longest >= reserve - 1e-9;
            const off = Math.abs(home - (ride - stroke / 3));
            if (fits && (best === null || off < Math.abs(best - (ride - stroke / 3)))) best = home;
          }
          if (best === null) {
            // Between two steps of the search a length may just do.
            if (made.governs !== 'neither') expect(stroke - (bump + droop) - 2 * reserve).toBeLessThan(0.11);
            else expect(made.beforeBottom).toBeCloseTo(made.beforeApart, 9);
            return;
          }
          expect(made.governs).not.toBe('neither');
          expect(made.beforeBottom).toBeGreaterThanOrEqual(reserve - 1e-9);
          expect(made.beforeApart).toBeGreaterThanOrEqual(reserve - 1e-9);
          expect(Math.abs(made.compressed - best)).toBeLessThan(0.11);
        },
      ),
      { numRuns: 60 },
    );
  });

  it.each([
    // Ride 1230, stroke 90, reserve 20: 1200 wanted; at most the shortest less 20, at least the longest less 70.
    [1225, 1265, 1200, 'share'],
    [1215, 1240, 1195, 'bump'],
    [1229, 1275, 1205, 'droop'],
    [1222, 1280, 1206, 'neither'],
  ] as const)('between %d and %d: %d pushed home, by %s', (shortest, longest, compressed, governs) => {
    const made = orderedLength({ ride: 1230, shortest, longest }, { stroke: 90, reserve: 20 });
    expect([made.compressed, made.governs]).toEqual([expect.closeTo(compressed, 9), governs]);
    expect([made.beforeBottom, made.beforeApart]).toEqual([
      expect.closeTo(shortest - compressed, 9),
      expect.closeTo(compressed + 90 - longest, 9),
    ]);
  });

  it('never loses length: what is drawn out and what is left make the stroke', () => {
    const made = orderedLength({ ride: 1000, shortest: 970, longest: 1010 }, { stroke: 50, reserve: 20 });
    expect(made.governs).toBe('neither');
    expect(made.out.longest + made.beforeApart).toBeCloseTo(50, 9);
    expect(made.beforeBottom).toBeCloseTo(5, 9);
  });
});

describe('repeated readings', () => {
  it('average, and doubt by tape and by half of their spread as squares', () => {
    expect(meanReading([1294, 1293, 1295], 1)).toEqual({ value: 1294, doubt: Math.hypot(1, 1) });
    expect(meanReading([1294], 1)).toEqual({ value: 1294, doubt: 1 });
  });
});
