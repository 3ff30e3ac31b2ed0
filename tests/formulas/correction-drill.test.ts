/** Correction holes and flats, against worked sums and against adding up thin slices. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  depthAlong,
  depthInwards,
  drilledAlong,
  drilledInwards,
  flatFor,
  pointHeight,
} from '../../src/formulas/correction-drill.ts';

const steel = 0.00785;

describe('holes along the axis', () => {
  // Worked sums of a hand reckoning: m = rho pi d^2/4 h, U = m r; the point of 118 degrees adds pi (d/2)^2 h/3, h = (d/2)/tan 59.
  it('10 mm, 12 deep, at 55: 406.91 g.mm in steel and 139.96 in aluminium, besides the point of 0.6174 g', () => {
    const point = 0.6174;
    expect(drilledAlong({ diameter: 10 }, 12, 55, steel).moment).toBeCloseTo(406.9148 + 55 * point, 1);
    expect(drilledAlong({ diameter: 10 }, 0, 55, steel).mass).toBeCloseTo(point, 4);
    expect(drilledAlong({ diameter: 10, point: 180 }, 12, 55, steel).moment).toBeCloseTo(406.9148, 4);
    expect(drilledAlong({ diameter: 10, point: 180 }, 12, 55, 0.0027).moment).toBeCloseTo(139.958, 3);
  });

  it('250 g.mm by a flat-bottomed 10 mm hole at 55 takes 7.3726 mm', () => {
    expect(depthAlong({ diameter: 10, point: 180 }, 250, 55, steel)).toBeCloseTo(7.3726, 4);
  });

  it('less than a millimetre deep, and not at all where the point alone takes more', () => {
    // Flat-bottomed: 4 U/(pi rho d^2 r). With its point of 0.6174 g, 33.96 g.mm at 55, nothing is left to drill for 30.
    const half = (steel * Math.PI * 100 * 55 * 0.5) / 4;
    expect(depthAlong({ diameter: 10, point: 180 }, half, 55, steel)).toBeCloseTo(0.5, 9);
    expect(depthAlong({ diameter: 10 }, 30, 55, steel)).toBe(0);
  });

  it('goes back and forth', () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 16, noNaN: true }), fc.double({ min: 1, max: 30, noNaN: true }), (d, h) => {
        const { moment } = drilledAlong({ diameter: d }, h, 50, steel);
        expect(depthAlong({ diameter: d }, moment, 50, steel)).toBeCloseTo(h, 8);
      }),
    );
  });
});

describe('holes from the rim inwards', () => {
  it('equals the sum of thin slices', () => {
    const drill = { diameter: 10 };
    const [rim, depth, slices] = [60, 18, 20_000];
    const whole = depth + pointHeight(drill);
    let moment = 0;
    for (let i = 0; i < slices; i++) {
      const deep = ((i + 0.5) * whole) / slices;
      const r = deep < depth ? 5 : (5 * (whole - deep)) / (whole - depth);
      moment += steel * Math.PI * r * r * (whole / slices) * (rim - deep);
    }
    expect(drilledInwards(drill, depth, rim, steel).moment / moment).toBeCloseTo(1, 6);
  });

  it('finds the depth again, and says when a drill is too small', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 16, noNaN: true }),
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        (d, h) => {
          const { moment } = drilledInwards({ diameter: d }, h, 70, steel);
          expect(depthInwards({ diameter: d }, moment, 70, steel)).toBeCloseTo(h, 6);
        },
      ),
    );
    expect(depthInwards({ diameter: 3 }, 1e6, 70, steel)).toBeNull();
    expect(depthInwards({ diameter: 16 }, 0.01, 70, steel)).toBe(0);
  });
});

it('a hole until its point reaches the axis, and none beyond: 10 mm at 118 degrees in a radius of 30', () => {
  // Point of 5 / tan 59 = 3.0043. Shank of h at 30 - h/2 and a cone, a third of as high a cylinder, at a quarter of its height.
  const point = 5 / Math.tan((59 * Math.PI) / 180);
  const by = (h: number) => steel * Math.PI * 25 * (h * (30 - h / 2) + (point / 3) * (30 - h - point / 4));
  expect(depthInwards({ diameter: 10 }, by(26.9), 30, steel)).toBeCloseTo(26.9, 6);
  expect(depthInwards({ diameter: 10 }, by(27), 30, steel)).toBeNull();
});

it('a hole in a part hardly larger than its drill: 1 mm flat-bottomed in a radius of 0.9 (closed form)', () => {
  // U = rho pi d^2/4 (r h - h^2/2): 0.9 x 0.5 - 0.125 = 0.325.
  const moment = steel * (Math.PI / 4) * 0.325;
  expect(depthInwards({ diameter: 1, point: 180 }, moment, 0.9, steel)).toBeCloseTo(0.5, 9);
  // The point alone, 3 mm of 10 mm at 118 degrees, goes through a radius of 2.
  expect(depthInwards({ diameter: 10 }, 1, 2, steel)).toBeNull();
});

describe('flats', () => {
  const plain = [
    { z: 0, r: 60 },
    { z: 20, r: 60 },
  ];
  // Chamfers of 1 mm, and a shoulder of 52 for 3 mm.
  const stepped = [
    { z: 0, r: 59 },
    { z: 1, r: 60 },
    { z: 16, r: 60 },
    { z: 17, r: 59 },
    { z: 17, r: 52 },
    { z: 20, r: 52 },
  ];
  const radiusAt = (outer: typeof plain, z: number) => {
    for (let i = 1; i < outer.length; i++) {
      const [a, b] = [outer[i - 1], outer[i]];
      if (a && b && z >= a.z && z < b.z) return a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z);
    }
    return 0;
  };

  it.each([
    ['a plain disc', plain, 300],
    ['chamfers and a shoulder', stepped, 300],
    ['a flat so shallow that it runs out in the chamfers', stepped, 50],
    ['a flat so deep that it meets the shoulder', stepped, 9000],
  ])('of %s: equals the moment of thin strips of the segment', (_, outer, wanted) => {
    const flat = flatFor(wanted, outer, steel);
    expect(flat).not.toBeNull();
    const from = 60 - (flat?.depth ?? 0);
    let moment = 0;
    const [layers, strips] = [400, 2000];
    for (let layer = 0; layer < layers; layer++) {
      const R = radiusAt(outer, ((layer + 0.5) * 20) / layers);
      for (let i = 0; i < strips; i++) {
        const x = from + ((i + 0.5) * (R - from)) / strips;
        if (R > from) moment += steel * (20 / layers) * 2 * Math.sqrt(R * R - x * x) * x * ((R - from) / strips);
      }
    }
    expect(moment / wanted).toBeCloseTo(1, 3);
    expect(flat?.chord).toBeCloseTo(2 * Math.sqrt(3600 - from * from), 9);
  });

  it('says when a flat would have to pass the middle', () => {
    expect(flatFor(1e9, plain, steel)).toBeNull();
  });
});
