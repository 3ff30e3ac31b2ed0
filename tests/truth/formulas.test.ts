/** Balance and fit formulas against worked numbers and hand statics. */
import { describe, expect, it } from 'vitest';
import {
  centrifugalForce,
  permissibleSpecificUnbalance,
  permissibleUnbalance,
  twoPlaneUnbalance,
} from '../../src/formulas/balance.ts';
import { clearanceRange, eccentricityOf } from '../../src/formulas/fit.ts';
import { leastWebUnderHead, webUnderHeadShare } from '../../src/formulas/head-web.ts';
import { profileMass, turnedMass } from '../../src/geometry/turned-mass.ts';
import type { MassProperties } from '../../src/model/mass.ts';
import type { TurnedPart } from '../../src/model/part.ts';
import { toleranceLimits } from '../../src/standards/iso286.ts';
import { screwHead } from '../../src/standards/screw-heads.ts';
import { must } from '../../src/standards/table.ts';
import {
  drilledTruths,
  drillPointTruth,
  forceTruths,
  offsetTruths,
  permissibleTruths,
  plateTruth,
  tiltedDiscTruth,
} from './formulas-balance.truth.ts';

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** A handful of point masses as one body. Grams, mm. The sums are the definitions. */
function bodyOf(points: readonly { m: number; x: number; y: number; z: number }[]): MassProperties {
  const mass = points.reduce((sum, p) => sum + p.m, 0);
  const mean = (axis: 'x' | 'y' | 'z') => points.reduce((sum, p) => sum + p.m * p[axis], 0) / mass;
  const [cx, cy, cz] = [mean('x'), mean('y'), mean('z')];
  const product = (of: (p: { x: number; y: number; z: number }) => number) =>
    points.reduce((sum, p) => sum + p.m * of({ x: p.x - cx, y: p.y - cy, z: p.z - cz }), 0);
  return {
    volume: Number.NaN,
    mass,
    centre: [cx, cy, cz],
    inertia: {
      xx: product(({ y, z }) => y * y + z * z),
      yy: product(({ x, z }) => x * x + z * z),
      zz: product(({ x, y }) => x * x + y * y),
      xy: product(({ x, y }) => x * y),
      yz: product(({ y, z }) => y * z),
      xz: product(({ x, z }) => x * z),
    },
  };
}

describe('permissible unbalance', () => {
  it.each(permissibleTruths)('$what ($source)', ({ G, rpm, kg, e, U, tolerance }) => {
    near(permissibleSpecificUnbalance(G, rpm), e, tolerance);
    near(permissibleUnbalance(1000 * kg, G, rpm), U, tolerance);
  });

  it('falls with speed and rises with the grade, by the definition e omega = G', () => {
    for (const rpm of [1, 60, 999, 12_345]) {
      for (const G of [0.4, 6.3, 40, 4000])
        near((permissibleSpecificUnbalance(G, rpm) / 1000) * ((2 * Math.PI * rpm) / 60), G, 1e-9 * G);
    }
  });
});

describe('unbalance, force and fits', () => {
  it.each(forceTruths)('$what ($source)', ({ U, rpm, N, tolerance }) => near(centrifugalForce(U, rpm), N, tolerance));

  it.each(offsetTruths)('$what: U = m e ($source)', ({ m, e, U }) => {
    const body = bodyOf([{ m, x: e, y: 0, z: 0 }]);
    near(body.mass * Math.hypot(body.centre[0], body.centre[1]), U, 1e-9);
  });

  it.each(drilledTruths)('$what ($source)', ({ density, d, h, r, U, tolerance }) => {
    const hole = profileMass(
      [
        { z: 0, r: d / 2 },
        { z: h, r: d / 2 },
      ],
      density,
      r,
      0,
    );
    near(hole.mass * Math.hypot(hole.centre[0], hole.centre[1]), U, tolerance);
  });

  it(`weighs the point of a drill (${drillPointTruth.source})`, () => {
    const { d, density, g, tolerance } = drillPointTruth;
    const height = d / 2 / Math.tan((59 * Math.PI) / 180);
    near(
      profileMass(
        [
          { z: 0, r: d / 2 },
          { z: height, r: 0 },
        ],
        density,
      ).mass,
      g,
      tolerance,
    );
  });

  it(`finds the centre of a plate with an off-centre hole (${plateTruth.source})`, () => {
    const { plate, hole, r, e, tolerance } = plateTruth;
    // Density 1/100 g/mm3 and 10 mm thick: an area of 10 mm2 weighs a gram.
    const radiusOf = (grams: number) => Math.sqrt((10 * grams) / Math.PI);
    const part: TurnedPart = {
      kind: 'turned',
      id: 'plate',
      name: 'plate',
      material: { id: 'test', name: 'test', density: 0.01 },
      outer: [
        { z: 0, r: radiusOf(plate) },
        { z: 10, r: radiusOf(plate) },
      ],
      drillings: [
        {
          id: 'hole-1',
          feature: 'hole',
          x: r,
          y: 0,
          profile: [
            { z: 0, r: radiusOf(hole) },
            { z: 10, r: radiusOf(hole) },
          ],
        },
      ],
      features: [],
      engravings: [],
    };
    const { mass, centre } = turnedMass(part);
    near(mass, plate - hole, 1e-9);
    near(centre[0], -e, tolerance);
    near(centre[1], 0, 1e-12);
  });

  it('lets a 75 H7/h7 register sit 0.030 mm off centre (ISO 286: IT7 of 50 to 80 is 30 um)', () => {
    const at = (zone: string) => {
      const { lower, upper } = must(toleranceLimits(75, zone));
      return { lower: 75 + lower, upper: 75 + upper };
    };
    const { least, greatest } = clearanceRange(at('H7'), at('h7'));
    near(least, 0, 1e-12);
    near(greatest, 0.06, 1e-12);
    near(eccentricityOf(greatest), 0.03, 1e-12);
  });

  it('counts interference as negative clearance that centres perfectly (25 H7/p6: 22 um p6 foundation deviation)', () => {
    // 25 H7 = 0/+21, 25 p6 = +22/+35 (ISO 286-2): clearance -35 to -1 um.
    const { least, greatest } = clearanceRange({ lower: 25, upper: 25.021 }, { lower: 25.022, upper: 25.035 });
    near(least, -0.035, 1e-12);
    near(greatest, -0.001, 1e-12);
    expect(eccentricityOf(greatest)).toBe(0);
  });
});

describe('two-plane split', () => {
  it('gives back the two masses that stand in the two planes (statics by hand)', () => {
    // Disc 1 at z = 0 carries 10 g at (30, 0); disc 2 at z = 40 carries 5 g at (0, -50); a balanced 1000 g between them.
    const body = bodyOf([
      { m: 10, x: 30, y: 0, z: 0 },
      { m: 5, x: 0, y: -50, z: 40 },
      { m: 500, x: 20, y: 10, z: 15 },
      { m: 500, x: -20, y: -10, z: 15 },
    ]);
    const { low, high } = twoPlaneUnbalance(body, 0, 40);
    near(low.x, 300, 1e-9);
    near(low.y, 0, 1e-9);
    near(high.x, 0, 1e-9);
    near(high.y, -250, 1e-9);
  });

  it('splits a mass between the planes by the lever rule (ISO 21940-11 allocation: b / (a + b))', () => {
    // Planes 300 mm and 900 mm from the mass: 271.62 g.mm becomes 203.715 and 67.905.
    const body = bodyOf([{ m: 271.62, x: 1, y: 0, z: 300 }]);
    const { low, high } = twoPlaneUnbalance(body, 0, 1200);
    near(low.x, 203.715, 1e-9);
    near(high.x, 67.905, 1e-9);
  });

  it('finds a pure couple where nothing is out statically', () => {
    // 8 g at (25, 0, 0) and 8 g at (-25, 0, 20): +-200 g.mm in planes 20 mm apart.
    const body = bodyOf([
      { m: 8, x: 25, y: 0, z: 0 },
      { m: 8, x: -25, y: 0, z: 20 },
    ]);
    const { low, high } = twoPlaneUnbalance(body, 0, 20);
    near(low.x, 200, 1e-9);
    near(high.x, -200, 1e-9);
    // In planes twice as far apart round the same middle the same couple is half as large.
    const wide = twoPlaneUnbalance(body, -10, 30);
    near(wide.low.x, 100, 1e-9);
    near(wide.high.x, -100, 1e-9);
  });

  it(`agrees with a tilted disc (${tiltedDiscTruth.source})`, () => {
    const { m, R, w, faceRunout, atDiameter, couple, L, each, tolerance } = tiltedDiscTruth;
    const tilt = Math.atan(faceRunout / atDiameter);
    const polar = (m * R * R) / 2;
    const across = (m * (3 * R * R + w * w)) / 12;
    // Tensor of the disc turned about y: the product xz = (I_p - I_t) sin cos, up to its sign.
    const xz = (polar - across) * Math.sin(tilt) * Math.cos(tilt);
    near(xz, couple, tolerance);
    const body: MassProperties = {
      volume: 0,
      mass: m,
      centre: [0, 0, 0],
      inertia: { xx: across, yy: across, zz: polar, xy: 0, xz, yz: 0 },
    };
    const { low, high } = twoPlaneUnbalance(body, -L / 2, L / 2);
    near(Math.hypot(high.x, high.y), each, 0.001);
    near(low.x + high.x, 0, 1e-9);
  });
});

describe('web under a head', () => {
  it('is never under the least web of the part', () => {
    expect(leastWebUnderHead(3, 3)).toBe(3);
    near(leastWebUnderHead(10, 3), 8, 1e-12);
  });

  // Preloads of class 10.9 at friction 0.12: VDI 2230 (M10 43.4 kN printed; M8 27.0 and M12 63.2 kN from its table, from memory).
  it.each([
    { size: 'M8', kN: 27 },
    { size: 'M10', kN: 43.4 },
    { size: 'M12', kN: 63.2 },
  ])(
    'keeps the shear of the web under $size well under what S355 yields at (355 / sqrt 3 = 205 MPa)',
    ({ size, kN }) => {
      const { d, dw = 0 } = must(screwHead('socket', size));
      const shear = (web: number) => (1000 * kN) / (Math.PI * dw * web);
      expect(shear(webUnderHeadShare * d)).toBeGreaterThan(105);
      expect(shear(webUnderHeadShare * d)).toBeLessThan(125);
      expect(shear(0.5 * d)).toBeGreaterThan(170);
    },
  );
});
