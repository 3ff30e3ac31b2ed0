/** Turning discs: the equilibrium equation integrated, limiting cases, and the free body of half a disc. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  discStress,
  greatestStress,
  meanHoopStress,
  rimPull,
  speedAtStress,
  type TurningDisc,
} from '../../src/formulas/burst.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const discs: fc.Arbitrary<TurningDisc> = fc
  .record({
    outer: between(20, 300),
    share: between(0.05, 0.9),
    thickness: between(2, 40),
    density: between(0.0027, 0.008),
    nu: between(0.2, 0.4),
    mass: between(0, 500),
  })
  .map(({ share, mass, ...disc }) => ({
    ...disc,
    inner: share * disc.outer,
    rim: { mass, radius: 1.05 * disc.outer },
  }));

const away = (ours: number, other: number) => Math.abs(ours - other) / Math.max(1e-12, Math.abs(other));

/**
 * Second method: displacement u(r) of a thin disc from its two first-order equations, by Runge-Kutta, started at the bore (radial stress 0) with
 * two guesses of the bore's hoop strain that are mixed so that the rim carries its pull. E cancels out.
 */
function integrated({ inner: a, outer: b, density, nu, ...rest }: TurningDisc, omega: number, n = 2000): number {
  const load = density * omega * omega * 1e-6;
  // State: u and radial stress s (E = 1); hoop t = nu s + u/r.
  const slope = (r: number, [u, s]: readonly [number, number]): [number, number] => {
    const t = nu * s + u / r;
    return [s - nu * t, (t - s) / r - load * r];
  };
  const rimStress = (u0: number, weight: number): number => {
    const h = (b - a) / n;
    let y: [number, number] = [u0, 0];
    const f = (r: number, v: readonly [number, number]): [number, number] => {
      const [du, ds] = slope(r, v);
      return [du, ds + (1 - weight) * load * r];
    };
    for (let i = 0; i < n; i++) {
      const r = a + i * h;
      const k1 = f(r, y);
      const k2 = f(r + h / 2, [y[0] + (h / 2) * k1[0], y[1] + (h / 2) * k1[1]]);
      const k3 = f(r + h / 2, [y[0] + (h / 2) * k2[0], y[1] + (h / 2) * k2[1]]);
      const k4 = f(r + h, [y[0] + h * k3[0], y[1] + h * k3[1]]);
      y = [
        y[0] + (h / 6) * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]),
        y[1] + (h / 6) * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]),
      ];
    }
    return y[1];
  };
  const pull = rimPull({ inner: a, outer: b, density, nu, ...rest }, omega);
  // Linear: rim stress = own (u0 = 0, turning) + u0 x unit (still).
  const u0 = (pull - rimStress(0, 1)) / rimStress(1, 0);
  return u0 / a;
}

describe('a turning disc', () => {
  it('agrees with its equations integrated from the bore', () => {
    fc.assert(
      fc.property(discs, between(10, 1000), (disc, omega) => {
        expect(away(greatestStress(disc, omega), integrated(disc, omega))).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  it('has Roark and Hearn at the bore: rho w^2/4 ((3 + nu) b^2 + (1 - nu) a^2)', () => {
    const disc = { inner: 50, outer: 300, thickness: 40, density: 0.00747, nu: 0.3 };
    const printed = ((7470 * 100 ** 2) / 4) * (3.3 * 0.3 ** 2 + 0.7 * 0.05 ** 2);
    expect(greatestStress(disc, 100)).toBeCloseTo(printed / 1e6, 6);
  });

  it('is a thin ring in the end: rho w^2 r^2', () => {
    const disc = { inner: 99.9, outer: 100, thickness: 5, density: 0.00785, nu: 0.3 };
    expect(away(greatestStress(disc, 300), 7850 * 300 ** 2 * 0.1 ** 2 * 1e-6)).toBeLessThan(0.002);
    expect(away(meanHoopStress(disc, 300), 7850 * 300 ** 2 * 0.1 ** 2 * 1e-6)).toBeLessThan(0.002);
  });

  it('is half as strained at the middle of a full disc as at a pin hole', () => {
    const full = { inner: 0, outer: 100, thickness: 5, density: 0.00785, nu: 0.3 };
    expect(greatestStress({ ...full, inner: 1e-6 }, 300) / greatestStress(full, 300)).toBeCloseTo(2, 6);
    // Timoshenko: (3 + nu)/8 rho w^2 b^2, radial and hoop alike.
    const middle = (3.3 / 8) * 7850 * 300 ** 2 * 0.1 ** 2 * 1e-6;
    expect(greatestStress(full, 300)).toBeCloseTo(middle, 9);
    expect(discStress(full, 300, 0).radial).toBeCloseTo(middle, 9);
  });

  it('has no radial stress at the bore and the pull of its dead rim at the edge', () => {
    fc.assert(
      fc.property(discs, (disc) => {
        const size = greatestStress(disc, 100);
        expect(Math.abs(discStress(disc, 100, disc.inner).radial) / size).toBeLessThan(1e-9);
        expect(discStress(disc, 100, disc.outer).radial / size).toBeCloseTo(rimPull(disc, 100) / size, 9);
      }),
    );
  });

  it('has a rim pull that holds the mass on its circle', () => {
    // 200 blades of 0.153 kg at 320 mm on a rim of 600 x 40 mm: 30.6 x 0.32 w^2 newtons on pi x 600 x 40 mm2. A textbook's rotor.
    const disc = {
      inner: 50,
      outer: 300,
      thickness: 40,
      density: 0.00747,
      nu: 0.3,
      rim: { mass: 30_600, radius: 320 },
    };
    expect(rimPull(disc, 700)).toBeCloseTo((30.6 * 0.32 * 700 ** 2) / (Math.PI * 600 * 40), 9);
  });

  it('holds its halves together by the mean of its hoop stresses', () => {
    fc.assert(
      fc.property(discs, (disc) => {
        const n = 4000;
        const h = (disc.outer - disc.inner) / n;
        let sum = 0;
        for (let i = 0; i < n; i++) sum += discStress(disc, 100, disc.inner + (i + 0.5) * h).hoop * h;
        const mean = sum / (disc.outer - disc.inner);
        expect(away(meanHoopStress(disc, 100), mean)).toBeLessThan(1e-5);
      }),
      { numRuns: 50 },
    );
  });

  it('reaches a stress at the root of its ratio', () => {
    const disc = { inner: 20, outer: 90, thickness: 3, density: 0.00785, nu: 0.3 };
    const rpm = speedAtStress(355, greatestStress(disc, 1));
    expect(greatestStress(disc, (rpm * Math.PI) / 30)).toBeCloseTo(355, 6);
  });

  it('loses what holes take out of the section', () => {
    const disc = { inner: 20, outer: 90, thickness: 3, density: 0.00785, nu: 0.3 };
    expect(meanHoopStress(disc, 100, 35) / meanHoopStress(disc, 100)).toBeCloseTo(2, 9);
  });
});
