/** Bodies put together, against textbook bodies and a mesh. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisTilt, principalAxes, together } from '../../src/formulas/rigid-bodies.ts';
import { profileMass } from '../../src/geometry/turned-mass.ts';
import type { MassProperties } from '../../src/model/mass.ts';

/** A box by its sides and centre, density 1. Textbook: m (b^2 + c^2)/12. */
function box([a, b, c]: readonly [number, number, number], centre: readonly [number, number, number]): MassProperties {
  const mass = a * b * c;
  return {
    volume: mass,
    mass,
    centre,
    inertia: {
      xx: (mass * (b * b + c * c)) / 12,
      yy: (mass * (a * a + c * c)) / 12,
      zz: (mass * (a * a + b * b)) / 12,
      xy: 0,
      xz: 0,
      yz: 0,
    },
  };
}

const inertiaList = ({ xx, yy, zz, xy, xz, yz }: MassProperties['inertia']) => [xx, yy, zz, xy, xz, yz];

describe('together', () => {
  it('makes eight small boxes into the large one', () => {
    const half = [1, 2, 3] as const;
    const parts = [-1, 1].flatMap((i) =>
      [-1, 1].flatMap((j) => [-1, 1].map((k) => ({ mass: box(half, [5 + i / 2, -3 + j, 2 + 1.5 * k] as const) }))),
    );
    const whole = together(parts);
    const large = box([2, 4, 6], [5, -3, 2]);
    expect(whole.mass).toBeCloseTo(48, 12);
    whole.centre.forEach((c, i) => {
      expect(c).toBeCloseTo(large.centre[i] as number, 12);
    });
    const [got, want] = [inertiaList(whole.inertia), inertiaList(large.inertia)];
    got.forEach((value, i) => {
      expect(value).toBeCloseTo(want[i] as number, 9);
    });
  });

  it('three points, wherever their middle is, of 4 g or of 1 g in all: sums of m y z and the like by hand', () => {
    const points = [
      [1, 1, 2, 3],
      [1, -1, 0, 2],
      [2, 0, -1, -2.5],
    ] as const;
    const still = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
    for (const share of [1, 0.25])
      for (const [a, b, c] of [
        [0, 0, 0],
        [5, -3, 2],
      ] as const) {
        const bodies = points.map(([m, x, y, z]) => ({
          mass: { volume: m, mass: share * m, centre: [x + a, y + b, z + c] as const, inertia: still },
        }));
        const { centre, inertia, mass } = together(bodies);
        expect(mass).toBe(4 * share);
        expect(centre).toEqual([a, b, c].map((value) => expect.closeTo(value, 12)));
        // 13 + 4 + 2 x 7.25; 10 + 5 + 2 x 6.25; 5 + 1 + 2; 2; 3 - 2; 6 + 2 x 2.5.
        const want = [31.5, 27.5, 8, 2, 1, 11];
        expect(inertiaList(inertia)).toEqual(want.map((value) => expect.closeTo(share * value, 9)));
      }
    expect(together([])).toEqual({ volume: 0, mass: 0, centre: [0, 0, 0], inertia: still });
  });

  it('takes a hole away: a plate with an off-centre hole (statics: e = -m_h r_h/(m_plate - m_h), 2000 g, 15 g at 42: 0.3174)', () => {
    const plate: MassProperties = {
      volume: 1,
      mass: 2000,
      centre: [0, 0, 0],
      inertia: box([1, 1, 1], [0, 0, 0]).inertia,
    };
    const hole: MassProperties = {
      volume: 1,
      mass: 15,
      centre: [42, 0, 0],
      inertia: box([1, 1, 1], [0, 0, 0]).inertia,
    };
    expect(together([{ mass: plate }, { mass: hole, sign: -1 }]).centre[0]).toBeCloseTo(-0.3174, 4);
  });

  it('makes a tube of two cylinders: m (R^2 + r^2)/2 (textbook)', () => {
    const cylinder = (r: number) =>
      profileMass(
        [
          { z: 0, r },
          { z: 30, r },
        ],
        0.00785,
      );
    const tube = together([{ mass: cylinder(40) }, { mass: cylinder(25), sign: -1 }]);
    expect(tube.inertia.zz).toBeCloseTo((tube.mass * (40 * 40 + 25 * 25)) / 2, 6);
  });

  it('knows nothing at all', () => {
    expect(together([]).mass).toBe(0);
  });
});

describe('principal axes', () => {
  it('holds what an axis is by definition: I v = moment v, axes square to each other, trace kept', () => {
    const part = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(part, part, part, part, part, part, (xx, yy, zz, xy, xz, yz) => {
        const axes = principalAxes({ xx, yy, zz, xy, xz, yz });
        const rows = [
          [xx, -xy, -xz],
          [-xy, yy, -yz],
          [-xz, -yz, zz],
        ];
        for (const { moment, axis } of axes) {
          expect(Math.hypot(...axis)).toBeCloseTo(1, 10);
          rows.forEach((row, i) => {
            const product = row.reduce((sum, cell, j) => sum + cell * (axis[j] as number), 0);
            expect(product).toBeCloseTo(moment * (axis[i] as number), 8);
          });
        }
        const [a, b] = [axes[0].axis, axes[1].axis];
        expect(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]).toBeCloseTo(0, 8);
        expect(axes[0].moment + axes[1].moment + axes[2].moment).toBeCloseTo(xx + yy + zz, 8);
      }),
    );
  });

  it('finds the lean of a disc that wobbles: 0.05 over 100, with a couple of 1040 g.mm2 (rigid-body dynamics, recomputed)', () => {
    // 2400 g, radius 60, 20 wide. I_p = m R^2/2; I_t = m (3 R^2 + w^2)/12; turned about y by the lean.
    const [m, R, w] = [2400, 60, 20];
    const [polar, across] = [(m * R * R) / 2, (m * (3 * R * R + w * w)) / 12];
    const lean = Math.atan(0.05 / 100);
    const [c, s] = [Math.cos(lean), Math.sin(lean)];
    const xz = (across - polar) * s * c;
    expect(Math.abs(xz)).toBeCloseTo(1040, 1);
    const inertia = {
      xx: across * c * c + polar * s * s,
      yy: across,
      zz: polar * c * c + across * s * s,
      xy: 0,
      xz,
      yz: 0,
    };
    const { degrees, towards } = axisTilt(inertia);
    expect(degrees).toBeCloseTo((lean * 180) / Math.PI, 9);
    // The axis is (sin, 0, cos), so the products of inertia pull -xz = (polar - across) s c.
    expect(towards % 180).toBeCloseTo(0, 6);
  });

  it('finds the axis nearest to z of a body that was turned any way, up or down, and where it leans', () => {
    const part = fc.integer({ min: -50, max: 50 });
    fc.assert(
      fc.property(part, part, part, part, (w, x, y, z) => {
        const size = w * w + x * x + y * y + z * z;
        fc.pre(size > 0);
        // Rotation of a quaternion; its columns are where the body's own axes end, with moments 2, 3.5 and 5.
        const turned: [number, number, number][] = [
          [1 - (2 * (y * y + z * z)) / size, (2 * (x * y + w * z)) / size, (2 * (x * z - w * y)) / size],
          [(2 * (x * y - w * z)) / size, 1 - (2 * (x * x + z * z)) / size, (2 * (y * z + w * x)) / size],
          [(2 * (x * z + w * y)) / size, (2 * (y * z - w * x)) / size, 1 - (2 * (x * x + y * y)) / size],
        ];
        const tensor = (i: 0 | 1 | 2, j: 0 | 1 | 2) =>
          turned.reduce((sum, axis, k) => sum + (2 + 1.5 * k) * axis[i] * axis[j], 0);
        const byHeight = [...turned].sort((a, b) => Math.abs(b[2]) - Math.abs(a[2])) as typeof turned;
        const [near, next] = byHeight as [[number, number, number], [number, number, number]];
        fc.pre(Math.abs(near[2]) - Math.abs(next[2]) > 1e-3 && Math.hypot(near[0], near[1]) > 1e-3);
        const up = Math.sign(near[2]);
        const { degrees, towards } = axisTilt({
          xx: tensor(0, 0),
          yy: tensor(1, 1),
          zz: tensor(2, 2),
          xy: -tensor(0, 1),
          xz: -tensor(0, 2),
          yz: -tensor(1, 2),
        });
        expect(degrees).toBeCloseTo((Math.acos(Math.abs(near[2])) * 180) / Math.PI, 6);
        const wanted = (Math.atan2(up * near[1], up * near[0]) * 180) / Math.PI;
        expect(((towards - wanted + 540) % 360) - 180).toBeCloseTo(0, 6);
        expect(towards).toBeGreaterThanOrEqual(0);
        expect(towards).toBeLessThanOrEqual(360);
      }),
      { numRuns: 300 },
    );
  });
});
