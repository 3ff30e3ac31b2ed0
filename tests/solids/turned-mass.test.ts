import { describe, expect, it } from 'vitest';
import { profileMass, turnedMass } from '../../src/geometry/turned-mass.ts';
import { drilling, profile, ringOf, steel, turned } from './fixtures.ts';

const rho = steel.density;
const disc = (r: number, h: number) => profile([0, r], [h, r]);

function near(actual: number, expected: number, relative = 1e-12): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

describe('closed forms of textbook mechanics', () => {
  it('cylinder: m r2 / 2 about its axis, m (3 r2 + h2) / 12 across', () => {
    const { mass, centre, inertia } = turnedMass(turned('c', disc(60, 23)));
    const m = rho * Math.PI * 60 ** 2 * 23;
    near(mass, m);
    near(inertia.zz, (m * 60 ** 2) / 2);
    near(inertia.xx, (m * (3 * 60 ** 2 + 23 ** 2)) / 12);
    near(inertia.yy, inertia.xx);
    expect(centre[0]).toBe(0);
    near(centre[2], 11.5);
  });

  it('annulus: m (R2 + r2) / 2 about its axis', () => {
    const { mass, inertia } = turnedMass(turned('a', disc(60, 23), [drilling('bore', 0, 0, [0, 20], [23, 20])]));
    const m = rho * Math.PI * (60 ** 2 - 20 ** 2) * 23;
    near(mass, m);
    near(inertia.zz, (m * (60 ** 2 + 20 ** 2)) / 2);
    near(inertia.xx, (m * (3 * (60 ** 2 + 20 ** 2) + 23 ** 2)) / 12);
  });

  it('frustum: volume, height of centroid, 3 m (R5 - r5) / 10 (R3 - r3) about its axis', () => {
    const [R, r, h] = [30, 12, 40];
    const { volume, mass, centre, inertia } = turnedMass(turned('f', profile([0, R], [h, r])));
    near(volume, (Math.PI * h * (R * R + R * r + r * r)) / 3);
    near(centre[2], (h * (R * R + 2 * R * r + 3 * r * r)) / (4 * (R * R + R * r + r * r)));
    near(inertia.zz, (3 * mass * (R ** 5 - r ** 5)) / (10 * (R ** 3 - r ** 3)));
  });

  it('cone: 3 m (r2 + h2 / 4) / 20 about the cross axis through its centre of mass', () => {
    const { mass, centre, inertia } = turnedMass(turned('k', profile([0, 25], [36, 0])));
    near(centre[2], 9);
    near(inertia.xx, (3 * mass * (25 ** 2 + 36 ** 2 / 4)) / 20);
  });

  it('a hole off the axis obeys the parallel axis theorem', () => {
    const [R, r, h, x, y] = [60, 8, 20, 30, -21];
    const { mass, centre, inertia } = turnedMass(turned('p', disc(R, h), [drilling('hole', x, y, [0, r], [h, r])]));
    const body = rho * Math.PI * R * R * h;
    const plug = rho * Math.PI * r * r * h;
    near(mass, body - plug);
    near(centre[0], (-plug * x) / mass);
    near(centre[1], (-plug * y) / mass);
    const aboutOrigin = (body * R * R) / 2 - plug * ((r * r) / 2 + x * x + y * y);
    near(inertia.zz, aboutOrigin - mass * (centre[0] ** 2 + centre[1] ** 2));
    near(inertia.xy, -plug * x * y - mass * centre[0] * centre[1]);
  });

  it('two blind holes opposite each other from opposite faces are a pure couple: sum of m x z', () => {
    const part = turned('couple', disc(60, 20), [
      drilling('below', 50, 0, [0, 5], [8, 5]),
      drilling('above', -50, 0, [12, 5], [20, 5]),
    ]);
    const { centre, inertia } = turnedMass(part);
    const plug = rho * Math.PI * 25 * 8;
    expect(Math.hypot(centre[0], centre[1])).toBeLessThan(1e-13);
    // Plugs at (50, z 4) and (-50, z 16), taken away; the centre of mass stays at z = 10.
    near(inertia.xz, -plug * (50 * (4 - 10) + -50 * (16 - 10)));
    expect(Math.abs(inertia.yz)).toBeLessThan(1e-9);
  });
});

describe('worked examples of the balance reference (recomputed there from textbook formulas)', () => {
  const unbalanceOf = (density: number, corners: readonly (readonly [number, number])[], at: number): number => {
    const part = turned('b', disc(70, 20), [drilling('h', at, 0, ...corners)], {
      material: { id: 'm', name: 'm', density },
    });
    const { mass, centre } = turnedMass(part);
    return -mass * centre[0];
  };

  it('a flat hole of 10 x 12 at radius 55 in steel: 406.9148 g.mm', () => {
    expect(
      unbalanceOf(
        0.00785,
        [
          [8, 5],
          [20, 5],
        ],
        55,
      ),
    ).toBeCloseTo(406.9148, 4);
  });

  it('the same hole in aluminium: 139.958 g.mm', () => {
    expect(
      unbalanceOf(
        0.0027,
        [
          [8, 5],
          [20, 5],
        ],
        55,
      ),
    ).toBeCloseTo(139.958, 3);
  });

  it('a drill point of 118 degrees below a 10 mm hole: 0.6174 g more in steel', () => {
    const depth = 5 / Math.tan((59 * Math.PI) / 180);
    expect(profileMass(profile([0, 0], [depth, 5]), 0.00785).mass).toBeCloseTo(0.6174, 4);
  });

  it('a plate of 2000 g less a hole of 15 g at 42 mm: 0.3174 mm off', () => {
    const r = (grams: number): number => Math.sqrt(grams / (rho * Math.PI * 10));
    const part = turned('plate', disc(r(2000), 10), [drilling('h', 42, 0, [0, r(15)], [10, r(15)])]);
    expect(-turnedMass(part).centre[0]).toBeCloseTo(0.3174, 4);
  });
});

describe('what holes take away, and what they do not', () => {
  const plain = turnedMass(turned('d', disc(60, 20)));

  it('nested, coaxial and outside drillings are not counted twice', () => {
    const bore = drilling('bore', 0, 0, [-5, 20], [30, 20]);
    const recess = drilling('recess', 0, 0, [15, 40], [20, 40]);
    const within = drilling('within', 30, 0, [15, 4], [25, 4]);
    const beside = drilling('beside', 90, 0, [0, 10], [20, 10]);
    const { volume } = turnedMass(turned('n', disc(60, 20), [bore, recess, within, beside]));
    near(volume, plain.volume - Math.PI * (20 ** 2 * 15 + 40 ** 2 * 5));
  });

  it('coaxial cones that cross count as the wider one at each height', () => {
    const a = drilling('a', 0, 0, [0, 10], [20, 30]);
    const b = drilling('b', 0, 0, [0, 30], [20, 10]);
    const { volume } = turnedMass(turned('x', disc(60, 20), [a, b]));
    // Two frusta of height 10 between radii 20 and 30 (textbook).
    near(volume, plain.volume - (2 * Math.PI * 10 * (30 ** 2 + 30 * 20 + 20 ** 2)) / 3);
  });

  it('a full ring of equal holes leaves no unbalance and no product of inertia', () => {
    const { mass, centre, inertia } = turnedMass(
      turned('r', disc(60, 20), ringOf('h', 5, 45, 12, [3, 0], [6, 4], [20, 4])),
    );
    expect(mass * Math.hypot(centre[0], centre[1])).toBeLessThan(1e-9);
    expect(Math.max(Math.abs(inertia.xy), Math.abs(inertia.xz), Math.abs(inertia.yz)) / inertia.zz).toBeLessThan(1e-14);
  });

  it('engravings never count', () => {
    const mark = { kind: 'index', angle: 0, radius: 60, zFrom: 0, zTo: 20, grooveRadius: 2 } as const;
    expect(turnedMass(turned('e', disc(60, 20), [], { engravings: [mark] }))).toEqual(plain);
  });

  it('refuses profiles that are none', () => {
    expect(() => turnedMass(turned('t', profile([0, 10], [-1, 10])))).toThrow(RangeError);
    expect(() => turnedMass(turned('t', profile([0, 10], [Number.NaN, 10])))).toThrow(RangeError);
    expect(() => turnedMass(turned('t', profile([0, -1], [5, 10])))).toThrow(RangeError);
    expect(() => turnedMass(turned('t', profile([3, 10], [3, 20])))).toThrow(/no height/);
  });
});

describe('flats', () => {
  const flats = (across: number, angle = 0) => ({ flats: { feature: 'flats', across, angle } });

  it('a disc less two segments: r2 (t - sin t cos t) each, t = acos(d / r) (textbook)', () => {
    const [r, d, h] = [60, 55, 20];
    const t = Math.acos(d / r);
    const { volume } = turnedMass(turned('f', disc(r, h), [], flats(2 * d)));
    near(volume, h * (Math.PI * r * r - 2 * r * r * (t - Math.sin(t) * Math.cos(t))));
  });

  it('wide flats touch nothing, and narrow ones leave nearly a plate 2 d wide', () => {
    near(turnedMass(turned('w', disc(60, 20), [], flats(120))).volume, Math.PI * 3600 * 20);
    const { volume, mass, inertia } = turnedMass(turned('s', disc(1000, 20), [], flats(2, 90)));
    near(volume, 2 * 2000 * 20, 1e-6);
    near(inertia.yy, (mass * (2000 ** 2 + 20 ** 2)) / 12, 1e-5);
  });

  it('turning the flats turns the inertia with them', () => {
    const at0 = turnedMass(turned('f', disc(60, 20), [], flats(100, 0))).inertia;
    const at30 = turnedMass(turned('f', disc(60, 20), [], flats(100, 30))).inertia;
    // Mohr's circle (textbook): half the difference of the moments times sin 60; the long way lies at 120
    // degrees, so negative.
    expect(at30.xy).toBeLessThan(0);
    near(at30.xy, ((at0.yy - at0.xx) / 2) * Math.sin(Math.PI / 3), 1e-10);
    near(at30.xx + at30.yy, at0.xx + at0.yy);
  });

  it.each([
    [60, 58, 56],
    [40, 80, 50],
    [80, 20, 30],
    [30, 60, 2],
  ])('a cone from %d to %d cut at %d agrees with slices taken the other way', (r0, r1, d) => {
    const h = 12;
    const { volume } = turnedMass(turned('k', profile([0, r0], [h, r1]), [], flats(2 * d)));
    near(volume, slicedCone(Math.min(r0, r1), Math.max(r0, r1), d, h), 1e-10);
  });
});

/**
 * Second method: slices parallel to the flats, at distance u from the axis. Over r from a to R the slice is
 * the integral of 2 sqrt(r2 - u2), which is F(R) - F(a), F(r) = r sqrt(r2 - u2) - u2 ln(r + sqrt(r2 - u2));
 * then Simpson over u, with u = b sin t on each piece so that the root at the end does no harm.
 */
function slicedCone(small: number, large: number, d: number, h: number): number {
  const F = (r: number, u: number): number => {
    const root = Math.sqrt(Math.max(0, r * r - u * u));
    return r * root - (u === 0 ? 0 : u * u * Math.log(r + root));
  };
  const slice = (u: number): number => (h / (large - small)) * (F(large, u) - F(Math.max(small, u), u));
  const simpson = (f: (t: number) => number, a: number, b: number, n = 4000): number => {
    let sum = f(a) + f(b);
    for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * f(a + ((b - a) * i) / n);
    return (sum * (b - a)) / n / 3;
  };
  const piece = (b: number, from: number, to: number): number =>
    simpson((t) => slice(b * Math.sin(t)) * b * Math.cos(t), Math.asin(from / b), Math.asin(to / b));
  const inner = Math.min(small, d);
  const outer = d > small ? piece(large, small, d) : 0;
  return 2 * (piece(small, 0, inner) + outer);
}
