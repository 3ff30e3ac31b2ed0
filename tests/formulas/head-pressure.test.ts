/** Pressure under heads against a fastener handbook, and plates under screws against statics. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forceOffset, greatestPitch, plateBending, punchShear } from '../../src/formulas/flange-bending.ts';
import { bearingArea, ringUnderWasher, seatPressure } from '../../src/formulas/head-pressure.ts';

const away = (ours: number, printed: number) => Math.abs(ours / printed - 1);

describe('pressure under heads', () => {
  // A fastener handbook, page 679: bearing areas with ISO 273 medium holes; dw by ISO 4762 and ISO 4017.
  it.each([
    ['M8 socket', 12.33, 9, 55.8],
    ['M10 socket', 15.33, 11, 89.5],
    ['M8 hexagon', 11.63, 9, 42.1],
    ['M12 hexagon', 16.63, 13.5, 74.1],
  ])('%s bears on the printed area', (_, outer, inner, area) => {
    expect(away(bearingArea({ outer, inner }), area)).toBeLessThan(0.015);
  });

  it.each([
    ['M8 8.8 hexagon', 18.6, 11.63, 9, 442],
    ['M10 10.9 socket', 43.4, 15.33, 11, 485],
  ])('%s presses as printed', (_, kN, outer, inner, MPa) => {
    expect(away(seatPressure(1000 * kN, { outer, inner }), MPa)).toBeLessThan(0.015);
  });

  it('is infinite without a ring', () => {
    expect(seatPressure(1, { outer: 9, inner: 9 })).toBe(Number.POSITIVE_INFINITY);
    expect(bearingArea({ outer: 8, inner: 9 })).toBe(0);
  });

  it('under a washer lies inside the wider of the two holes, and as far out as a spread of 1.6 times its thickness', () => {
    // VDI 2230-1 as in the module: 13 + 1.6 x 1.6 = 15.56, short of the washer's 16; a thin one of 15 ends at its own outside.
    const washer = { outside: 16, thickness: 1.6, hole: 8.4 };
    expect(ringUnderWasher(13, washer, 9)).toEqual({ outer: expect.closeTo(15.56, 9), inner: 9 });
    expect(ringUnderWasher(13, { ...washer, outside: 15 }, 8)).toEqual({ outer: 15, inner: 8.4 });
  });

  it('a washer never makes it worse than a bare head on its own hole, and never spreads beyond itself', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 30, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        (dw, t) => {
          const washer = { outside: 1.4 * dw, thickness: t, hole: 0.6 * dw };
          const ring = ringUnderWasher(dw, washer, 0.6 * dw);
          expect(ring.outer).toBeLessThanOrEqual(washer.outside);
          expect(bearingArea(ring)).toBeGreaterThanOrEqual(bearingArea({ outer: dw, inner: 0.6 * dw }));
        },
      ),
    );
  });
});

describe('plates under screws', () => {
  it('spacing 2 d + 12 t', () => {
    expect(greatestPitch(10, 9)).toBe(128);
  });

  it('force comes straight through where the metal reaches as far on both sides', () => {
    expect(forceOffset({ inwards: 20, outwards: 12 }, 24)).toBe(0);
    expect(forceOffset({ inwards: 8, outwards: 8 }, 24)).toBe(0);
  });

  it('else through the middle of what is backed, by integration', () => {
    // Even pressure from -9 to +12 about the screw: its centre lies at 1.5.
    const n = 1000;
    const steps = Array.from({ length: n }, (_, i) => -9 + ((i + 0.5) * 21) / n);
    const centre = steps.reduce((sum, x) => sum + x, 0) / n;
    expect(forceOffset({ inwards: 9, outwards: 30 }, 24)).toBeCloseTo(Math.abs(centre), 9);
    // Beside the face altogether: from 2 to 12.
    expect(forceOffset({ inwards: -2, outwards: 30 }, 24)).toBeCloseTo(7, 9);
  });

  it('bends like a beam: M/W with W = b t^2/6', () => {
    const [force, offset, b, t] = [20_000, 2, 25, 10];
    const inertia = (b * t ** 3) / 12;
    expect(plateBending(force, offset, b, t)).toBeCloseTo((force * offset * (t / 2)) / inertia, 9);
  });

  it('punches a cylinder: as the least web of 0.8 d was reasoned, 109 to 121 MPa for M8 to M12 of class 10.9', () => {
    // Preloads of a chuck manual and a handbook; dw of ISO 4762.
    expect(punchShear(27_300, 12.33, 0.8 * 8)).toBeCloseTo(110, 0);
    expect(punchShear(63_200, 17.23, 0.8 * 12)).toBeCloseTo(121.6, 0);
  });
});
