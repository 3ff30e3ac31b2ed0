/** One beam element alone, against its own energies: shapes of the textbook, integrated here; two unknowns, so a quadratic gives both modes. */
import { describe, expect, it } from 'vitest';
import { type BeamEnd, beamModes, pinned } from '../../src/formulas/beam-modes.ts';

const length = 400;
const bending = 3e9;
const mass = 2.5;

/**
 * Deflection of an element when one of its ends moves sideways by 1 or tilts by 1 and nothing else does, at the share x of its length.
 * Source: Przemieniecki, Theory of matrix structural analysis: cubic deflection with shear, phi = 12 E I/(kappa G A L2).
 */
const shapes = (phi: number): ((x: number) => number)[] =>
  [
    (x: number) => 1 - 3 * x ** 2 + 2 * x ** 3 + phi * (1 - x),
    (x: number) => length * (x - 2 * x ** 2 + x ** 3 + (phi / 2) * (x - x ** 2)),
    (x: number) => 3 * x ** 2 - 2 * x ** 3 + phi * x,
    (x: number) => length * (-(x ** 2) + x ** 3 + (phi / 2) * (x ** 2 - x)),
  ].map((shape) => (x: number) => shape(x) / (1 + phi));

/** Simpson's rule; 400 steps leave less than a part in a billion of a polynomial of the sixth degree. */
function integral(f: (x: number) => number): number {
  const steps = 400;
  let sum = f(0) + f(1);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(i / steps);
  return sum / (3 * steps);
}

/** Both frequencies, Hz, of the unknowns i and j with springs of their own. */
function modesOf(phi: number, i: number, j: number, springs: readonly [number, number]): number[] {
  const shape = shapes(phi);
  const inertia = (a: number, b: number) =>
    (mass / 1e6) * length * integral((x) => (shape[a]?.(x) ?? 0) * (shape[b]?.(x) ?? 0));
  // The textbook's stiffness, row by row over E I/((1 + phi) L3).
  const L = length;
  const table = [
    [12, 6 * L, -12, 6 * L],
    [6 * L, (4 + phi) * L * L, -6 * L, (2 - phi) * L * L],
    [-12, -6 * L, 12, -6 * L],
    [6 * L, (2 - phi) * L * L, -6 * L, (4 + phi) * L * L],
  ];
  const stiffness = (a: number, b: number) => ((table[a]?.[b] ?? 0) * bending) / ((1 + phi) * L ** 3);
  const [kii, kij, kjj] = [stiffness(i, i) + springs[0], stiffness(i, j), stiffness(j, j) + springs[1]];
  const [mii, mij, mjj] = [inertia(i, i), inertia(i, j), inertia(j, j)];
  // det(K - w2 M) = 0.
  const a = mii * mjj - mij ** 2;
  const b = -(kii * mjj + kjj * mii - 2 * kij * mij);
  const c = kii * kjj - kij ** 2;
  const root = Math.sqrt(b * b - 4 * a * c);
  return [(-b - root) / (2 * a), (-b + root) / (2 * a)].map((square) => Math.sqrt(square) / (2 * Math.PI));
}

describe('one element', () => {
  const spring = 800;
  const cases: readonly {
    name: string;
    ends: [BeamEnd, BeamEnd];
    open: [number, number];
    springs: [number, number];
  }[] = [
    {
      name: 'held at the first end',
      ends: [
        { sideways: 'held', tilt: 'held' },
        { sideways: 0, tilt: 0 },
      ],
      open: [2, 3],
      springs: [0, 0],
    },
    {
      name: 'held at the second end',
      ends: [
        { sideways: 0, tilt: 0 },
        { sideways: 'held', tilt: 'held' },
      ],
      open: [0, 1],
      springs: [0, 0],
    },
    {
      name: 'tilting at both ends',
      ends: [
        { sideways: 'held', tilt: 0 },
        { sideways: 'held', tilt: 0 },
      ],
      open: [1, 3],
      springs: [0, 0],
    },
    {
      name: 'on springs, neither end tilting',
      ends: [
        { sideways: spring, tilt: 'held' },
        { sideways: spring, tilt: 'held' },
      ],
      open: [0, 2],
      springs: [spring, spring],
    },
    {
      name: 'on a spring at the first end, tilting against one at the second',
      ends: [
        { sideways: spring, tilt: 'held' },
        { sideways: 'held', tilt: 5e6 },
      ],
      open: [0, 3],
      springs: [spring, 5e6],
    },
    {
      name: 'tilting at the first end, on a spring at the second',
      ends: [
        { sideways: 'held', tilt: 5e6 },
        { sideways: spring, tilt: 'held' },
      ],
      open: [1, 2],
      springs: [5e6, spring],
    },
  ];
  it.each(cases)('$name: both modes, stiff in shear and soft in shear', ({ ends, open, springs }) => {
    for (const phi of [0, 0.4, 3]) {
      const shear = phi === 0 ? {} : { shear: (12 * bending) / (phi * length ** 2) };
      const modes = beamModes({ pieces: [{ length, bending, mass, ...shear }], ends }, 2, 1);
      modesOf(phi, open[0], open[1], springs).forEach((hertz, i) => {
        expect((modes[i]?.frequency ?? 0) / hertz, `phi ${phi}, mode ${i + 1}`).toBeCloseTo(1, 7);
      });
    }
  });

  it('between pins: the square of its two speeds is 120 and 2520 E I/(m L4), known by hand', () => {
    // [4 2; 2 4] against [4 -3; -3 4]/420: (4 - 2)/(4 + 3) and (4 + 2)/(4 - 3), times 420.
    const pins: [BeamEnd, BeamEnd] = [
      { sideways: 'held', tilt: 0 },
      { sideways: 'held', tilt: 0 },
    ];
    const modes = beamModes({ pieces: [{ length, bending, mass }], ends: pins }, 2, 1);
    const unit = bending / ((mass / 1e6) * length ** 4);
    expect((2 * Math.PI * (modes[0]?.frequency ?? 0)) ** 2 / unit).toBeCloseTo(120, 5);
    expect((2 * Math.PI * (modes[1]?.frequency ?? 0)) ** 2 / unit).toBeCloseTo(2520, 4);
  });

  it('shapes are told with their largest deflection as 1, whichever way it points', () => {
    const pins: [BeamEnd, BeamEnd] = [
      { sideways: 'held', tilt: 0 },
      { sideways: 'held', tilt: 0 },
    ];
    // A sine of one, two and three half waves between pins; the nodes of 24 elements lie on every crest.
    for (const [i, { shape }] of beamModes({ pieces: [{ length, bending, mass }], ends: pins }, 3).entries()) {
      expect(Math.max(...shape.map(({ deflection }) => Math.abs(deflection)))).toBeCloseTo(1, 9);
      const sign = Math.sign(shape[1]?.deflection ?? 0);
      for (const { at, deflection } of shape)
        expect(sign * deflection).toBeCloseTo(Math.sin(((i + 1) * Math.PI * at) / length), 3);
    }
  });

  it('the crest that is told as 1 is the larger one, up or down: a shaft thinner, or laden, on one side', () => {
    const pins: [BeamEnd, BeamEnd] = [
      { sideways: 'held', tilt: 0 },
      { sideways: 'held', tilt: 0 },
    ];
    // By definition: no deflection is larger than 1, one of them is it.
    for (const at of [80, 120, 280, 320])
      for (const limp of [0, 1])
        for (const { shape } of beamModes(
          {
            pieces: [0, 1].map((half) => ({
              length: length / 2,
              bending: half === limp ? bending / 8 : bending,
              mass,
            })),
            ends: pins,
            masses: [{ at, mass: 400 }],
          },
          4,
        )) {
          const sizes = shape.map(({ deflection }) => Math.abs(deflection));
          expect(Math.max(...sizes)).toBeCloseTo(1, 9);
          expect(Math.max(...shape.map(({ deflection }) => deflection))).toBeCloseTo(1, 9);
        }
  });

  it('a mass on a shaft that weighs next to nothing: 3 E I L/(a2 b2), wherever between the pins it sits (beam tables)', () => {
    for (const a of [40, 100, 200, 310]) {
      const pieces = [{ length, bending, mass: 1e-6 }];
      const [mode] = beamModes({ pieces, ends: [pinned, pinned], masses: [{ at: a, mass: 5000 }] }, 1);
      const stiffness = (3 * bending * length) / (a * a * (length - a) ** 2);
      expect((2 * Math.PI * (mode?.frequency ?? 0)) ** 2 / (stiffness / 5e-3)).toBeCloseTo(1, 5);
    }
  });

  it('is refused without a length, a stiffness or a mass that can be, and with a mass that is not on it', () => {
    const modes = (pieces: Parameters<typeof beamModes>[0]['pieces'], at = 200) =>
      beamModes({ pieces, ends: [pinned, pinned], masses: [{ at, mass: 1 }] }, 1);
    const sound = { length, bending, mass };
    expect(modes([sound])).toHaveLength(1);
    expect(modes([{ ...sound, mass: 0 }])).toHaveLength(1);
    for (const wrong of [
      [],
      [sound, { ...sound, length: 0 }],
      [{ ...sound, length: Number.NaN }],
      [{ ...sound, bending: 0 }],
      [{ ...sound, mass: -1 }],
    ])
      expect(() => modes(wrong)).toThrow(/pieces with a length/);
    expect(() => modes([sound], -1)).toThrow(/sits on the shaft/);
    expect(() => modes([sound], 401)).toThrow(/sits on the shaft/);
  });
});
