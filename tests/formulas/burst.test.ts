/** Turning discs: the equilibrium equation integrated, limiting cases, and the free body of half a disc. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BarredRim,
  barredRimStress,
  discStress,
  greatestStress,
  hungMass,
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

/** A rim of 3 mm sheet from 90 to 95 mm, bars of 7.5 by 8 mm between 82 and 90, 36 places. */
const barred = (more: Partial<BarredRim> = {}): BarredRim => ({
  inner: 90,
  outer: 95,
  thickness: 3,
  density: 0.00785,
  nu: 0.3,
  bar: { mass: 7.5 * 8 * 3 * 0.00785, radius: 86, width: 7.5 },
  places: 36,
  missing: 0,
  ...more,
});

describe('a rim with windows', () => {
  const omega = 300;
  const load = 0.00785 * 3 * 5 * omega ** 2 * 1e-6 * 92.5;

  it('a thin rim without bars bears rho v^2 of hoop stress (textbook)', () => {
    const thin = barred({ inner: 99.99, outer: 100.01, bar: { mass: 0, radius: 98, width: 1 } });
    expect(barredRimStress(thin, omega).hoop).toBeCloseTo(0.00785 * (100 * omega) ** 2 * 1e-6, 2);
  });

  it('between even bars bends as a beam with both ends held, q s^2 / 12 over t w^2 / 6; each bar pulls a place of it', () => {
    const { bending, pull, barBending } = barredRimStress(barred(), omega);
    const place = (2 * Math.PI * 92.5) / 36;
    expect(bending).toBeCloseTo((load * place ** 2) / 12 / ((3 * 25) / 6), 9);
    const bar = 7.5 * 8 * 3 * 0.00785 * 86 * omega ** 2 * 1e-6;
    expect(pull).toBeCloseTo((load * place + bar) / (3 * 7.5), 9);
    expect(barBending).toBe(0);
  });

  it('carries its bars as dead mass: the rim alone and m r w^2 / (2 pi t w) more; as many as are there, or what they are told to weigh', () => {
    // 36 places less 2, 2 g each on 86: 68 g. Told to be 80 g: 80.
    const bar = { mass: 2, radius: 86, width: 7.5 };
    const bare = barredRimStress(barred({ bar: { ...bar, mass: 0 } }), omega).hoop;
    const more = (grams: number) => (grams * 86 * omega ** 2 * 1e-6) / (2 * Math.PI * 3 * 5);
    expect(hungMass(barred({ bar, missing: 2 }))).toBe(68);
    expect(barredRimStress(barred({ bar, missing: 2 }), omega).hoop - bare).toBeCloseTo(more(68), 9);
    expect(barredRimStress(barred({ bar, missing: 2, barMass: 80 }), omega).hoop - bare).toBeCloseTo(more(80), 9);
  });

  it('a bar beside missing ones holds half of either span: 2 missing, half of 1 and of 3 places, and itself', () => {
    const place = (2 * Math.PI * 92.5) / 36;
    const bar = 7.5 * 8 * 3 * 0.00785 * 86 * omega ** 2 * 1e-6;
    expect(barredRimStress(barred({ missing: 2 }), omega).pull).toBeCloseTo((load * 2 * place + bar) / (3 * 7.5), 9);
  });

  it('with one span shorter than the others: ends may turn, q s^2 / 8, and the bar there takes what the spans differ by', () => {
    const place = (2 * Math.PI * 92.5) / 36;
    const { bending, barBending, pull } = barredRimStress(
      barred({ shortest: 0.5, bar: { mass: 0, radius: 86, width: 7.5 } }),
      omega,
    );
    expect(bending).toBeCloseTo((load * place ** 2) / 8 / ((3 * 25) / 6), 9);
    // Fixed ends: q (1 - 1/4) s^2 / 12 over t b^2 / 6.
    expect(barBending).toBeCloseTo((6 * load * 0.75 * place ** 2) / 12 / (3 * 7.5 ** 2), 9);
    expect(pull).toBeCloseTo((load * place) / (3 * 7.5), 9);
  });

  it('with bars missing bends no more anywhere than it says: the beam over all its supports, by three moments', () => {
    // Clapeyron: M(i-1) s(i) + 2 M(i) (s(i) + s(i+1)) + M(i+1) s(i+1) = q (s(i)^3 + s(i+1)^3) / 4, bars that do not hold it from turning.
    for (const missing of [1, 2, 5]) {
      const place = (2 * Math.PI * 92.5) / 36;
      const spans = Array.from({ length: 36 - missing }, (_, i) => (i === 0 ? missing + 1 : 1) * place);
      const count = spans.length;
      let moments = spans.map(() => 0);
      for (let round = 0; round < 400; round++) {
        moments = moments.map((_, i) => {
          const [a, b] = [spans[i] as number, spans[(i + 1) % count] as number];
          const [before, after] = [moments[(i - 1 + count) % count] as number, moments[(i + 1) % count] as number];
          const side = (load * (a ** 3 + b ** 3)) / 4 - before * a - after * b;
          return 0.5 * (moments[i] as number) + (0.5 * side) / (2 * (a + b));
        });
      }
      const between = spans.map((s, i) => {
        const [from, to] = [moments[(i - 1 + count) % count] as number, moments[i] as number];
        return (load * s * s) / 8 - (from + to) / 2;
      });
      const worst = Math.max(...moments.map(Math.abs), ...between.map(Math.abs));
      const { bending, barBending } = barredRimStress(barred({ missing }), omega);
      expect(bending).toBeGreaterThan(worst / ((3 * 25) / 6));
      // And by no more than twice, so that the bound still means something.
      expect(bending).toBeLessThan((2 * worst) / ((3 * 25) / 6));
      // Bars that hold the rim quite still take what its fixed ends differ by.
      const fixed = (load * ((missing + 1) ** 2 - 1) * place ** 2) / 12;
      expect(barBending).toBeCloseTo((6 * fixed) / (3 * 7.5 ** 2), 9);
    }
  });
});
