/** Resilience, settling and heat: worked examples of VDI 2230 and Shigley, finite sums, limiting cases. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ClampedStack,
  clampedResilience,
  coneTangent,
  embeddingLoss,
  frustumResilience,
  heatChange,
  screwResilience,
} from '../../src/formulas/preload-change.ts';

const away = (ours: number, printed: number) => Math.abs(ours / printed - 1);
const steel = { E: 210_000, alpha: 12e-6 };

/** Exercise to VDI 2230 of a university of applied sciences: hydraulic piston held by an M12 of 10.9, screwed into the rod. */
const piston = {
  screw: {
    d: 12,
    d3: 9.853,
    head: 'socket',
    shank: 20.5,
    freeThread: 21.5,
    E: 210_000,
    parentE: 210_000,
    heldBy: 'part',
  },
  stack: { layers: [{ thickness: 42, ...steel }], dw: 21.11, hole: 13.5, outside: 80, ends: 2 },
} as const;

describe('a worked example of VDI 2230', () => {
  it('screw 2.95e-6 mm/N', () => {
    expect(away(screwResilience(piston.screw), 2.95e-6)).toBeLessThan(0.003);
  });

  it('cone: tangent 0.566, parts 0.3546e-6 mm/N', () => {
    expect(away(coneTangent(piston.stack), 0.566)).toBeLessThan(0.002);
    expect(away(clampedResilience(piston.stack), 0.3546e-6)).toBeLessThan(0.003);
  });

  it('8 um cost 2475 N', () => {
    // The example carries rounded figures on: 2 %.
    const loss = embeddingLoss(0.008, screwResilience(piston.screw), clampedResilience(piston.stack));
    expect(away(loss, 2475)).toBeLessThan(0.025);
  });
});

describe('the parts of a screw', () => {
  // VDI 2230-1 as above: 0.5 d of a hexagon head and 0.4 d of others on the full section, 0.5 d of thread on its core, 0.4 d of nut or 0.33 d of
  // a part, by that part's own modulus. M10, core 8.16.
  const [full, core] = [(Math.PI / 4) * 100, (Math.PI / 4) * 8.16 ** 2];
  it.each([
    ['hex', 'nut', 5, 4],
    ['socket', 'nut', 4, 4],
    ['flat', 'part', 4, 3.3],
    ['button', 'part', 4, 3.3],
    ['hex', 'part', 5, 3.3],
  ] as const)('%s head held by a %s', (head, heldBy, headLength, heldLength) => {
    const screw = { d: 10, d3: 8.16, head, shank: 7, freeThread: 11, E: 205_000, parentE: 70_000, heldBy };
    const byHand = (headLength + 7) / (205_000 * full) + (11 + 5) / (205_000 * core) + heldLength / (70_000 * full);
    expect(screwResilience(screw) / byHand).toBeCloseTo(1, 12);
  });

  it('cone of a screw in a thread, its room counted from 1 to 10 heads, and never flatter than a tenth', () => {
    const cone = (thickness: number, outside: number, ends: 1 | 2) =>
      coneTangent({ layers: [{ thickness, ...steel }], dw: 10, outside, ends });
    // lK = dw e: its logarithm is 1.
    const e = 10 * Math.E;
    expect(cone(e, 10, 1)).toBeCloseTo(0.361, 12);
    expect(cone(e, 5, 1)).toBeCloseTo(0.361, 12);
    expect(cone(e, e, 1)).toBeCloseTo(0.554, 12);
    expect(cone(e, 100, 1)).toBeCloseTo(0.361 + 0.193 * Math.LN10, 12);
    expect(cone(e, 1000, 1)).toBeCloseTo(0.361 + 0.193 * Math.LN10, 12);
    expect(cone(2 * e, e, 2)).toBeCloseTo(0.547, 12);
    // And 2 at lK = dw e^2.
    expect(cone(10 * Math.E ** 2, 10, 1)).toBeCloseTo(0.348 + 2 * 0.013, 12);
    expect(cone(20 * Math.E ** 2, 10 * Math.E ** 2, 2)).toBeCloseTo(0.362 + 2 * 0.032 + 2 * 0.153, 12);
    expect(cone(1e-5, 10, 2)).toBe(0.1);
  });
});

describe('frusta of Shigley, 30 degrees', () => {
  const tangent = Math.tan(Math.PI / 6);
  // Solutions to problems 8-24 and 8-25: D, t, d in inches, E in Mpsi, k in Mlbf/in.
  it.each([
    [0.75, 0.5, 0.5, 30, 33.3],
    [1.327, 0.11, 0.5, 14.5, 173.8],
    [0.86, 0.515, 0.5, 14.5, 21.47],
    [0.75, 0.095, 0.5, 30, 97.27],
    [0.75, 0.4225, 0.5, 30, 36.14],
    [0.75, 0.25, 0.5, 14.5, 23.49],
  ])('D %f, t %f in on d %f, E %f: %f Mlbf/in', (D, t, d, E, k) => {
    expect(away(1 / frustumResilience(E, D, t, d, tangent), k)).toBeLessThan(0.003);
  });

  // The same in millimetres and GPa: kN/mm is MN/m.
  it.each([
    [15, 20, 10, 207, 3503],
    [38.09, 2.5, 10, 96, 44_044],
    [15, 22.5, 10, 96, 1567],
  ])('D %f, t %f mm on d %f, E %f GPa: %f MN/m', (D, t, d, E, k) => {
    expect(away(1 / frustumResilience(E, D, t, d, tangent), k)).toBeLessThan(0.003);
  });
});

/** Second method: thin slices, each a ring of the diameter that the cone has there. */
function slices(stack: ClampedStack, n = 4000): number {
  const tangent = coneTangent(stack);
  const total = stack.layers.reduce((sum, { thickness }) => sum + thickness, 0);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const z = ((i + 0.5) * total) / n;
    let below = 0;
    const layer = stack.layers.find(({ thickness }) => {
      below += thickness;
      return z < below;
    });
    const depth = stack.ends === 2 ? Math.min(z, total - z) : z;
    const D = Math.min(Math.max(stack.outside, stack.dw), stack.dw + 2 * depth * tangent);
    sum += total / n / ((layer?.E ?? Number.NaN) * (Math.PI / 4) * (D * D - stack.hole * stack.hole));
  }
  return sum;
}

const stacks: fc.Arbitrary<ClampedStack> = fc
  .record({
    layers: fc.array(
      fc.record({
        thickness: fc.double({ min: 1, max: 40, noNaN: true }),
        E: fc.constantFrom(69_000, 170_000, 210_000),
        alpha: fc.constantFrom(11e-6, 12e-6, 23.6e-6),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    hole: fc.double({ min: 5, max: 20, noNaN: true }),
    wide: fc.double({ min: 1.2, max: 2, noNaN: true }),
    room: fc.double({ min: 0.8, max: 12, noNaN: true }),
    ends: fc.constantFrom(1 as const, 2 as const),
  })
  .map(({ layers, hole, wide, room, ends }) => ({ layers, hole, dw: hole * wide, outside: hole * wide * room, ends }));

describe('clamped parts', () => {
  it('agree with thin slices, whatever the layers, the room and the ends', () => {
    fc.assert(
      fc.property(stacks, (stack) => {
        expect(away(clampedResilience(stack), slices(stack))).toBeLessThan(2e-3);
      }),
    );
  });

  it('without room are a plain sleeve: l/(E A)', () => {
    const stack = { ...piston.stack, outside: 21.11 };
    const area = (Math.PI / 4) * (21.11 ** 2 - 13.5 ** 2);
    expect(clampedResilience(stack)).toBeCloseTo(42 / (210_000 * area), 15);
  });

  it('do not care where a layer is cut in two', () => {
    fc.assert(
      fc.property(stacks, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (stack, at) => {
        const cut = stack.layers.flatMap((layer) => [
          { ...layer, thickness: at * layer.thickness },
          { ...layer, thickness: (1 - at) * layer.thickness },
        ]);
        expect(away(clampedResilience({ ...stack, layers: cut }), clampedResilience(stack))).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('heat', () => {
  const layers = [{ thickness: 20, E: 69_000, alpha: 23.6e-6 }];

  it('aluminium pulls a steel screw tighter by mismatch x length x heat over resilience', () => {
    expect(heatChange(layers, 12.3e-6, 60, 2e-6, 1e-6)).toBeCloseTo((11.3e-6 * 20 * 60) / 3e-6, 6);
    expect(heatChange(layers, 12.3e-6, -60, 2e-6, 1e-6)).toBeLessThan(0);
  });

  it('does nothing where all grows alike', () => {
    expect(heatChange([{ thickness: 20, ...steel }], steel.alpha, 100, 2e-6, 1e-6)).toBe(0);
  });

  it('is what lets screw and parts end at one length again', () => {
    fc.assert(
      fc.property(fc.double({ min: -80, max: 200, noNaN: true }), (warming) => {
        const [dS, dP, aS] = [2.3e-6, 0.7e-6, 12.3e-6];
        const F = heatChange(layers, aS, warming, dS, dP);
        // Screw: grows with heat and stretches with F. Parts: grow with heat and are squeezed by F. Both ends must meet.
        const screw = aS * 20 * warming + F * dS;
        const parts = 23.6e-6 * 20 * warming - F * dP;
        expect(screw).toBeCloseTo(parts, 12);
      }),
    );
  });
});
