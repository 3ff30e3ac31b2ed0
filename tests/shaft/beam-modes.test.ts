/** The beam of finite elements against closed forms, textbook bounds and a textbook example. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BeamEnd, beamModes, clamped, freeEnd, pinned } from '../../src/formulas/beam-modes.ts';

/** A steel tube of 76.2 x 2.11 mm, 1300 mm long: E I in N.mm2, g/mm. */
const tube = { length: 1300, bending: 207_000 * 337_266, mass: 491.15 * 7.85e-3 };

/** Circular frequency of a number of waves (beta L), 1/s. */
const omega = (waves: number, { length, bending, mass } = tube) =>
  (waves / length) ** 2 * Math.sqrt(bending / (mass / 1e6));
const hertz = (value: number) => value / (2 * Math.PI);

/** Root of a function that changes sign once between two places. */
function root(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (f(low) * f(middle) <= 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

const { cos, cosh, tan, tanh } = Math;

describe('a bare beam against its closed form, within 0.1 %', () => {
  // Characteristic equations of the Euler-Bernoulli beam: any textbook on vibration. The roots are found here, not copied.
  const nearHalves = (f: (x: number) => number, shift: number) =>
    [0, 1, 2].map((i) => root(f, (i + shift - 0.4) * Math.PI, (i + shift + 0.4) * Math.PI));
  const cases: readonly { name: string; ends: [BeamEnd, BeamEnd]; waves: number[] }[] = [
    { name: 'pinned, pinned', ends: [pinned, pinned], waves: [Math.PI, 2 * Math.PI, 3 * Math.PI] },
    { name: 'clamped, free', ends: [clamped, freeEnd], waves: nearHalves((x) => cos(x) + 1 / cosh(x), 0.5) },
    { name: 'free, clamped', ends: [freeEnd, clamped], waves: nearHalves((x) => cos(x) + 1 / cosh(x), 0.5) },
    { name: 'clamped, clamped', ends: [clamped, clamped], waves: nearHalves((x) => cos(x) - 1 / cosh(x), 1.5) },
    { name: 'clamped, pinned', ends: [clamped, pinned], waves: nearHalves((x) => tan(x) - tanh(x), 1.25) },
  ];
  it.each(cases)('$name', ({ ends, waves }) => {
    const modes = beamModes({ pieces: [tube], ends }, 3);
    modes.forEach(({ frequency }, i) => {
      const exact = hertz(omega(waves[i] as number));
      expect(Math.abs(frequency / exact - 1)).toBeLessThan(1e-3);
    });
  });

  it('gives the shape of the mode: a sine between pins', () => {
    const [first] = beamModes({ pieces: [tube], ends: [pinned, pinned] }, 1);
    for (const { at, deflection } of first?.shape ?? [])
      expect(Math.abs(deflection)).toBeCloseTo(Math.sin((Math.PI * at) / 1300), 5);
  });

  it('does not care how the same tube is cut into pieces', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.1, max: 1, noNaN: true }), { minLength: 2, maxLength: 6 }), (shares) => {
        const sum = shares.reduce((a, b) => a + b, 0);
        const pieces = shares.map((share) => ({ ...tube, length: (1300 * share) / sum }));
        const [cut] = beamModes({ pieces, ends: [pinned, pinned] }, 1);
        expect((cut?.frequency ?? 0) / hertz(omega(Math.PI))).toBeCloseTo(1, 4);
      }),
      { numRuns: 20 },
    );
  });

  it('refuses a shaft that nothing holds, and sizes that are none', () => {
    expect(() => beamModes({ pieces: [tube], ends: [freeEnd, freeEnd] }, 1)).toThrow(RangeError);
    expect(() => beamModes({ pieces: [{ ...tube, length: 0 }], ends: [pinned, pinned] }, 1)).toThrow(RangeError);
    expect(() => beamModes({ pieces: [tube], ends: [pinned, pinned], masses: [{ at: 1400, mass: 1 }] }, 1)).toThrow(
      RangeError,
    );
  });
});

describe('shear', () => {
  it('lowers the modes of a pinned beam by the closed form', () => {
    // Pinned beam, shear without rotary inertia: w2 = E I k4/(m (1 + E I k2/S)), by putting a sine into the equations.
    fc.assert(
      fc.property(fc.double({ min: 1e6, max: 5e7, noNaN: true }), (shear) => {
        const modes = beamModes({ pieces: [{ ...tube, shear }], ends: [pinned, pinned] }, 2);
        modes.forEach(({ frequency }, i) => {
          const k = ((i + 1) * Math.PI) / tube.length;
          const exact = omega((i + 1) * Math.PI) / Math.sqrt(1 + (tube.bending * k * k) / shear);
          expect(Math.abs(frequency / hertz(exact) - 1)).toBeLessThan(2e-3);
        });
      }),
      { numRuns: 20 },
    );
  });
});

describe('masses and mounts', () => {
  it('a mass in the middle: the closed form over the whole range', () => {
    // Half the beam with half the mass: x (tan x - tanh x) = 2/mu, x = beta L/2, mu = M/(m L). Derived from the end conditions.
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 30, noNaN: true }), (mu) => {
        const x = root((v) => v * (tan(v) - tanh(v)) - 2 / mu, 1e-6, Math.PI / 2 - 1e-12);
        const masses = [{ at: 650, mass: mu * tube.mass * tube.length }];
        const [first] = beamModes({ pieces: [tube], ends: [pinned, pinned], masses }, 1);
        expect(Math.abs((first?.frequency ?? 0) / hertz(omega(2 * x)) - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 40 },
    );
  });

  it('equal springs under both ends: the closed form over the whole range', () => {
    // 4 x3 (tan x + tanh x) = k L3/(E I), x = beta L/2: from the shear at a pinned end on a spring.
    fc.assert(
      fc.property(fc.double({ min: -1, max: 5, noNaN: true }), (power) => {
        const kappa = 10 ** power;
        const x = root((v) => 4 * v ** 3 * (tan(v) + tanh(v)) - kappa, 1e-6, Math.PI / 2 - 1e-12);
        const end = { sideways: (kappa * tube.bending) / tube.length ** 3, tilt: 0 };
        const [first] = beamModes({ pieces: [tube], ends: [end, end] }, 2);
        expect(Math.abs((first?.frequency ?? 0) / hertz(omega(2 * x)) - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 40 },
    );
  });

  it('a light stiff bar with masses on its end springs: each hangs on its own', () => {
    const stiff = { length: 1000, bending: 1e14, mass: 1e-4 };
    const ends: [BeamEnd, BeamEnd] = [
      { sideways: 1000, tilt: 0 },
      { sideways: 4000, tilt: 0 },
    ];
    const masses = [
      { at: 0, mass: 5000 },
      { at: 1000, mass: 5000 },
    ];
    // 1000 N/mm under 5 kg: sqrt(1e6/5) 1/s; the other twice that.
    const [low, high] = beamModes({ pieces: [stiff], ends, masses }, 2);
    expect(low?.frequency).toBeCloseTo(hertz(Math.sqrt(1e6 / 5)), 2);
    expect(high?.frequency).toBeCloseTo(2 * hertz(Math.sqrt(1e6 / 5)), 2);
  });

  it("the handbook's shaft with two gears lies between Dunkerley and Rayleigh", () => {
    // Shigley's Mechanical Engineering Design, 9th edition, example 7-5: 1 in shaft, 31 in between bearings, 35 lbf at 7 in and 55 lbf at
    // 20 in, E 30e6 psi, I 0.04909 in4; 6 E I l = 0.2739e9 lbf.in3 as printed. Influence coefficients by its equation 7-24.
    const inch = 25.4;
    const weight = 4.448222;
    const influence = (b: number, x: number) => (b * x * (31 ** 2 - b ** 2 - x ** 2)) / 0.2739e9;
    const [d11, d22, d12] = [influence(24, 7), influence(11, 20), influence(11, 7)];
    const [m1, m2] = [35 / 386.1, 55 / 386.1];
    const dunkerley = 1 / Math.sqrt(m1 * d11 + m2 * d22);
    const y1 = 35 * d11 + 55 * d12;
    const y2 = 35 * d12 + 55 * d22;
    const rayleigh = Math.sqrt((386.1 * (35 * y1 + 55 * y2)) / (35 * y1 ** 2 + 55 * y2 ** 2));
    // Two masses on a massless shaft: the quadratic of their influence matrix.
    const [trace, det] = [m1 * d11 + m2 * d22, m1 * m2 * (d11 * d22 - d12 ** 2)];
    const exact = 1 / Math.sqrt((trace + Math.sqrt(trace ** 2 - 4 * det)) / 2);
    const bending = (0.2739e9 / (6 * 31)) * weight * inch ** 2;
    const [first] = beamModes(
      {
        pieces: [{ length: 31 * inch, bending, mass: 1e-9 }],
        ends: [pinned, pinned],
        masses: [
          { at: 7 * inch, mass: 35 * 453.592 },
          { at: 20 * inch, mass: 55 * 453.592 },
        ],
      },
      1,
    );
    const found = 2 * Math.PI * (first?.frequency ?? 0);
    expect(Math.round(dunkerley)).toBe(120);
    expect(found).toBeGreaterThan(dunkerley);
    expect(found).toBeLessThan(rayleigh);
    expect(Math.abs(found / exact - 1)).toBeLessThan(1e-3);
  });

  it("a stepped shaft: the textbook's deflection under its flywheel", () => {
    // Ugural, Mechanical Design of Machine Components, example 9.6: middle half of twice the stiffness, W = 400 N at mid-span, L 1 m,
    // I 0.3e-6 m4 at the ends, E 200 GPa, shaft without weight; deflection 3 W L3/(256 E I) as printed. One mass: w2 = g/deflection.
    const bending = 200_000 * 0.3e6;
    const deflection = (3 * 400 * 1000 ** 3) / (256 * bending);
    const pieces = [
      { length: 250, bending, mass: 1e-9 },
      { length: 500, bending: 2 * bending, mass: 1e-9 },
      { length: 250, bending, mass: 1e-9 },
    ];
    const masses = [{ at: 500, mass: (400 / 9.81) * 1000 }];
    const [first] = beamModes({ pieces, ends: [pinned, pinned], masses }, 1);
    expect(Math.abs((first?.frequency ?? 0) / hertz(Math.sqrt(9810 / deflection)) - 1)).toBeLessThan(1e-4);
  });

  it('any masses on a pinned tube lie between Dunkerley and Rayleigh', () => {
    const mass = fc.record({
      at: fc.double({ min: 20, max: 1280, noNaN: true }),
      mass: fc.double({ min: 10, max: 20_000, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(mass, { minLength: 1, maxLength: 4 }), (masses) => {
        const L = tube.length;
        const own = omega(Math.PI) ** 2;
        // Dunkerley: 1/w2 <= sum of 1/w2 of each mass alone; deflection under a unit load a from one end: a2 b2/(3 E I L).
        const low =
          1 /
          (1 / own +
            masses.reduce(
              (sum, { at, mass: m }) => sum + ((m / 1e6) * at ** 2 * (L - at) ** 2) / (3 * tube.bending * L),
              0,
            ));
        // Rayleigh with a sine: too high whatever the masses.
        const half = ((tube.mass / 1e6) * L) / 2;
        const added = masses.reduce((sum, { at, mass: m }) => sum + (m / 1e6) * Math.sin((Math.PI * at) / L) ** 2, 0);
        const high = (own * half) / (half + added);
        const [first] = beamModes({ pieces: [tube], ends: [pinned, pinned], masses }, 1);
        const found = (2 * Math.PI * (first?.frequency ?? 0)) ** 2;
        expect(found / low).toBeGreaterThan(1 - 1e-4);
        expect(found / high).toBeLessThan(1 + 1e-4);
      }),
      { numRuns: 40 },
    );
  });
});
