/** Bolt-up positions: against rigid bodies put together in space, and against closed forms. mm, degrees. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Arrow, arrow } from '../../src/formulas/arrows.ts';
import { type BoltUp, type PhasingInput, phased, phasing } from '../../src/formulas/phasing.ts';
import { type FlangeBody, stacked } from './rigid-stack.ts';

const even = (count: number): BoltUp[] =>
  Array.from({ length: count }, (_, i) => ({ driving: 0, driven: (360 * i) / count }));
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const angle = between(0, 360);
/** A flange or an adapter, up to 0.1 mm off and, when `leaning`, 0.05 mm out of true at 50 mm. */
const bodies = (leaning: boolean): fc.Arbitrary<FlangeBody> =>
  fc.record({
    off: fc.record({ size: between(0, 0.1), angle }),
    face: fc.record({ high: leaning ? between(0, 0.05) : fc.constant(0), angle }),
  });
const stacks = (leaning: boolean) =>
  fc.record({
    driving: bodies(leaning),
    driven: bodies(leaning),
    adapter: bodies(leaning),
    thickness: between(10, 40),
  });
const off = ({ off: { size, angle: at } }: FlangeBody): Arrow => arrow(size, at);
const slope = ({ face }: FlangeBody): Arrow => arrow(face.high / 50, face.angle);
const each = (parts: Record<'driving' | 'driven' | 'adapter', FlangeBody>, what: (body: FlangeBody) => Arrow) => ({
  driving: what(parts.driving),
  driven: what(parts.driven),
  adapter: what(parts.adapter),
});
const asDrawn: BoltUp = { driving: 0, driven: 0 };
const rims = (driving: Arrow, driven: Arrow): PhasingInput => ({
  offsets: { driving, driven },
  slopes: null,
  thickness: 20,
  arm: 0,
  doubt: 0,
});

describe('one way round, against rigid bodies', () => {
  it('finds the driven axis where it ends, offset and lean, for any run-outs and turns', () => {
    fc.assert(
      fc.property(stacks(true), fc.record({ driving: angle, driven: angle }), (parts, turns) => {
        const put = stacked(parts, turns);
        const { thickness } = parts;
        const input = { offsets: each(parts, off), slopes: each(parts, slope), thickness, arm: 60, doubt: 0 };
        const got = phased(input, turns);
        const [face, out] = [put([0, 0, 0]), put([0, 0, 60])];
        // Leans of up to 0.003 leave products of small numbers: 0.003 x 0.1 mm.
        expect(Math.hypot(got.offset.x - face[0], got.offset.y - face[1])).toBeLessThan(3e-4);
        expect(Math.abs(got.eccentricity - Math.hypot(face[0], face[1]))).toBeLessThan(3e-4);
        const lean = { x: (out[0] - face[0]) / 60, y: (out[1] - face[1]) / 60 };
        expect(Math.hypot(got.lean.x - lean.x, got.lean.y - lean.y)).toBeLessThan(1e-5);
        expect(Math.abs(got.off - Math.max(Math.hypot(face[0], face[1]), Math.hypot(out[0], out[1])))).toBeLessThan(
          1e-3,
        );
      }),
      { numRuns: 300 },
    );
  });

  it('picks the way that a search over the put-together bodies picks', () => {
    fc.assert(
      fc.property(stacks(false), fc.integer({ min: 1, max: 8 }), (parts, count) => {
        const ways = even(4).flatMap(({ driven: driving }) => even(count).map(({ driven }) => ({ driving, driven })));
        const end = (turns: BoltUp) => {
          const [x, y] = stacked(parts, turns)([0, 0, 0]);
          return Math.hypot(x, y);
        };
        const input = { offsets: each(parts, off), slopes: null, thickness: parts.thickness, arm: 0, doubt: 0 };
        const { best, worst, ranked } = phasing(input, ways, asDrawn);
        expect(ranked).toHaveLength(ways.length);
        expect(best.off).toBeCloseTo(Math.min(...ways.map(end)), 9);
        expect(worst.off).toBeCloseTo(Math.max(...ways.map(end)), 9);
        expect(end(best)).toBeCloseTo(best.off, 9);
      }),
    );
  });
});

describe('closed forms', () => {
  it('equal rims cancel with their high spots together and double when opposite', () => {
    const result = phasing(rims(arrow(0.05, 30), arrow(0.05, 210)), even(4), asDrawn);
    expect(result.chosen.off).toBeCloseTo(0.1, 12);
    expect(result.best.driven).toBe(180);
    expect(result.best.off).toBeCloseTo(0, 12);
    expect([result.gain, result.span]).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.1, 12)]);
  });

  it('equal faces cancel with their high spots opposite and double when together', () => {
    const faces = (apart: number) =>
      phased(
        {
          ...rims(arrow(0, 0), arrow(0, 0)),
          slopes: { driving: arrow(0.001, 40), driven: arrow(0.001, 40 + apart) },
          thickness: 0,
          arm: 50,
        },
        asDrawn,
      );
    expect(faces(180).tilt).toBeCloseTo(0, 12);
    expect(faces(180).off).toBeCloseTo(0, 12);
    // Two wedges of 1 in 1000 lean the axis by 2 in 1000, away from the high side: 0.1 mm at 50.
    expect(faces(0).lean).toEqual(
      expect.objectContaining({ x: expect.closeTo(-0.002 * Math.cos((40 * Math.PI) / 180), 12) }),
    );
    expect(faces(0).off).toBeCloseTo(0.1, 12);
  });

  it('tells a lean in degrees: two wedges of 1 in 100 make one of 1 in 50, atan 0.02 = 1.145763', () => {
    const slopes = { driving: arrow(0.01, 0), driven: arrow(0.01, 0) };
    const { tilt } = phased({ ...rims(arrow(0, 0), arrow(0, 0)), slopes, thickness: 0 }, asDrawn);
    expect(tilt).toBeCloseTo(1.145763, 6);
  });

  it.each([2, 3, 4, 5, 6, 8, 12])('with %i even positions: best and worst within the law of cosines', (count) => {
    const flange = fc.record({ size: between(0, 0.1), angle });
    fc.assert(
      fc.property(flange, flange, ({ size: a, angle: one }, { size: b, angle: two }) => {
        const { best, worst } = phasing(rims(arrow(a, one), arrow(b, two)), even(count), asDrawn);
        // The nearest of n even positions misses the ideal by at most 180/n: c2 = a2 + b2 - 2ab cos(180/n).
        const most = Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(Math.PI / count));
        expect(best.off).toBeLessThanOrEqual(most + 1e-9);
        expect(best.off).toBeGreaterThanOrEqual(Math.abs(a - b) - 1e-9);
        expect(worst.off).toBeLessThanOrEqual(a + b + 1e-9);
        // In one half of all directions the two do not add up: never worse than the root of the sum of squares.
        expect(best.off).toBeLessThanOrEqual(Math.hypot(a, b) + 1e-9);
      }),
    );
  });

  it('indexed by half a turn, an error of the flange stays and one of the shaft goes to the other side', () => {
    // Common practice (a light-truck workshop manual's run-out procedure): index 180 degrees at the companion flange; the same clock
    // position afterwards means the shaft, the opposite one the flange: seen on the shaft.
    const onShaft = (offset: Arrow, turn: number) => (Math.atan2(offset.y, offset.x) * 180) / Math.PI - turn;
    const high = (input: PhasingInput, driven: number) => {
      const degrees = onShaft(phased(input, { driving: 0, driven }).offset, driven);
      return ((Math.round(degrees) % 360) + 360) % 360;
    };
    const shaftIsBad = rims(arrow(0, 0), arrow(0.05, 70));
    expect(high(shaftIsBad, 180)).toBe(high(shaftIsBad, 0));
    const flangeIsBad = rims(arrow(0.05, 70), arrow(0, 0));
    expect(high(flangeIsBad, 180)).toBe((high(flangeIsBad, 0) + 180) % 360);
  });

  it('an adapter known to be off is turned against both', () => {
    const ways = even(4).flatMap(({ driven: driving }) => even(4).map(({ driven }) => ({ driving, driven })));
    const input: PhasingInput = {
      ...rims(arrow(0.06, 0), arrow(0.02, 0)),
      offsets: { driving: arrow(0.06, 0), driven: arrow(0.02, 0), adapter: arrow(0.04, 0) },
    };
    // 0.06 - 0.04 - 0.02 = 0: the adapter opposite, the driven flange as it was in space.
    const { best, chosen } = phasing(input, ways, asDrawn);
    expect(chosen.off).toBeCloseTo(0.08, 12);
    expect(best).toMatchObject({ driving: 180, driven: 180 });
    expect(best.off).toBeCloseTo(0, 12);
  });

  it('says that it does not matter where the readings are no better than the difference', () => {
    const input = rims(arrow(0.05, 0), arrow(0.004, 0));
    // Four ways: 0.046 to 0.054.
    expect(phasing({ ...input, doubt: 0.007 }, even(4), asDrawn).matters).toBe(true);
    expect(phasing({ ...input, doubt: 0.009 }, even(4), asDrawn).matters).toBe(false);
  });

  it('a difference that is just the doubt is not seen, and none is seen below half a thousandth', () => {
    // 0.75 and 0.25, powers of two: 0.5 together, 1 opposite, exactly.
    const input = rims(arrow(0.75, 0), arrow(0.25, 0));
    const told = (doubt: number) => {
      const { matters, pays } = phasing({ ...input, doubt }, even(2), { driving: 0, driven: 180 });
      return [matters, pays];
    };
    expect(told(0.5)).toEqual([false, false]);
    expect(told(0.499)).toEqual([true, true]);
    const alike = phasing(rims(arrow(0.05, 0), arrow(0.0002, 0)), even(2), asDrawn);
    expect([alike.matters, alike.pays, alike.seen]).toEqual([false, false, 0.0005]);
    expect(phasing(rims(arrow(0.05, 0), arrow(0.0003, 0)), even(2), asDrawn).matters).toBe(true);
  });

  it('of equally good ways that all leave the adapter, or all move it, the smaller turn comes first', () => {
    const none = rims(arrow(0, 0), arrow(0, 0));
    const stay = [270, 90, 180].map((driven) => ({ driving: 0, driven }));
    expect(phasing(none, stay, asDrawn).ranked.map(({ driven }) => driven)).toEqual([90, 180, 270]);
    const move = [270, 90, 180].map((driving) => ({ driving, driven: 0 }));
    expect(phasing(none, move, asDrawn).ranked.map(({ driving }) => driving)).toEqual([90, 180, 270]);
  });

  it('prefers the least lean, then the adapter where it is, among equally good ways', () => {
    const none = rims(arrow(0, 0), arrow(0, 0));
    const leaning = { ...none, slopes: { driving: arrow(0.001, 0), driven: arrow(0.001, 0) }, thickness: 0 };
    expect(phasing(leaning, even(4), asDrawn).best.driven).toBe(180);
    const ways = [0, 90].flatMap((driving) => [0, 90].map((driven) => ({ driving, driven })));
    expect(phasing(none, ways, { driving: 90, driven: 90 }).best).toMatchObject({ driving: 90, driven: 0 });
  });

  it('takes no empty list', () => {
    expect(() => phasing(rims(arrow(0, 0), arrow(0, 0)), [], asDrawn)).toThrow('no way round');
  });
});
