/** The load of one dowel: against equilibrium solved by bisection, and against cases that are plain. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dowelCapacity, dowelTorque, mostUsefulDepth, type PinSeat } from '../../src/formulas/dowel-shear.ts';

const unbreakable = 1e12;

/**
 * Second method. A straight pin tilts: in each part the metal pushes one way down to a depth b and the other way below it, at its
 * full strength q per mm. Force F = q (2 b - t) in both parts; the moments about the plane cancel: sum of q (b^2 - t^2 / 2) is zero.
 */
function tiltingByBisection(q1: number, t1: number, q2: number, t2: number): number {
  const moment = (q: number, t: number, force: number) => q * (((force / q + t) / 2) ** 2 - t ** 2 / 2);
  let [low, high] = [0, Math.min(q1 * t1, q2 * t2)];
  for (let i = 0; i < 200; i++) {
    const force = (low + high) / 2;
    if (moment(q1, t1, force) + moment(q2, t2, force) < 0) low = force;
    else high = force;
  }
  return (low + high) / 2;
}

describe('one dowel', () => {
  it('carries what equilibrium of a tilting pin allows', () => {
    const seat = fc.record({
      depth: fc.double({ min: 0.2, max: 1.5, noNaN: true }),
      yield: fc.double({ min: 80, max: 900, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.double({ min: 3, max: 20, noNaN: true }), seat, seat, (d, one, other) => {
        const [a, b] = [one, other].map((s): PinSeat => ({ ...s, depth: s.depth * d })) as [PinSeat, PinSeat];
        const { load } = dowelCapacity(d, unbreakable, a, b);
        const q = (s: PinSeat) => 1.5 * s.yield * d;
        expect(load / tiltingByBisection(q(a), a.depth, q(b), b.depth)).toBeCloseTo(1, 6);
        expect(dowelCapacity(d, unbreakable, b, a).load / load).toBeCloseTo(1, 9);
      }),
    );
  });

  it.each([10, 1])('in two equal parts, %i deep, tilts at (root 2 - 1) of even bearing', (depth) => {
    const seat = { depth, yield: 355 };
    const { load, weakness } = dowelCapacity(8, unbreakable, seat, seat);
    expect(weakness).toBe('tilting');
    expect(load).toBeCloseTo((Math.SQRT2 - 1) * 1.5 * 355 * 8 * depth, 6);
  });

  it('in metal that does not give is cut through, at its breaking load over 1.25', () => {
    const hard = { depth: 12, yield: 1e6 };
    expect(dowelCapacity(8, 52_500, hard, hard)).toEqual({ load: 42_000, weakness: 'pin' });
  });

  it('counts nothing beyond 1.5 diameters, and carries nothing where it does not sit', () => {
    const at = (depth: number) => dowelCapacity(8, unbreakable, { depth, yield: 355 }, { depth, yield: 355 }).load;
    expect(mostUsefulDepth).toBe(1.5);
    expect(at(50)).toBe(at(12));
    // Only one of the parts is too deep: 12 of it count.
    const uneven = (depth: number) =>
      dowelCapacity(8, unbreakable, { depth, yield: 355 }, { depth: 5, yield: 700 }).load;
    expect([uneven(40), uneven(12)]).toEqual([uneven(12), expect.closeTo(tiltingByBisection(4260, 12, 8400, 5), 3)]);
    // 1.5 x 355 x 8 = 4260 N a mm and 1.5 x 700 x 8 = 8400.
    expect(at(11)).toBeLessThan(at(12));
    expect(at(0)).toBe(0);
    expect(dowelCapacity(8, unbreakable, { depth: -2, yield: 355 }, { depth: 9, yield: 355 }).load).toBe(0);
  });

  it('turns with its lever: 10 kN on 84 mm, two of them, 840 N.m', () => {
    expect(dowelTorque(10_000, 84, 2)).toBeCloseTo(840, 9);
  });
});
