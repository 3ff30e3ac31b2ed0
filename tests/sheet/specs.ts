/** Invented wheels for the sheet tests. */
import fc from 'fast-check';
import { type ToneWheelSpec, toneWheelFaults } from '../../src/parts/tone-wheel.ts';

/** Carbon steel, g/mm3: the density that the reference examples use. */
export const STEEL = { id: 'steel', name: 'low-carbon steel', density: 0.00785 };

/** A 60-tooth speed wheel of 120 mm with every feature, changed as asked. */
export function wheelSpec(change: Partial<ToneWheelSpec> = {}): ToneWheelSpec {
  return {
    id: 'wheel',
    name: 'Test wheel',
    material: STEEL,
    thickness: 5,
    teeth: 60,
    missing: 0,
    outside: 120,
    root: 113,
    ratio: 0.45,
    flanks: 'straight',
    rootRadius: 0.8,
    tipBreak: 0.3,
    bore: 50,
    screwHoles: {
      diameter: 6.6,
      positions: Array.from({ length: 4 }, (_, i) => ({
        x: 40 * Math.cos(Math.PI / 4 + (i * Math.PI) / 2),
        y: 40 * Math.sin(Math.PI / 4 + (i * Math.PI) / 2),
      })),
    },
    toothAngle: 0,
    kerf: 0,
    ...change,
  };
}

/** Any wheel that has no fault, of at most 40 positions. */
export const anyWheel: fc.Arbitrary<ToneWheelSpec> = fc
  .record({
    teeth: fc.integer({ min: 3, max: 40 }),
    missing: fc.integer({ min: 0, max: 3 }),
    outside: fc.double({ min: 40, max: 300, noNaN: true }),
    depth: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    ratio: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
    flanks: fc.constantFrom('straight' as const, 'radial' as const),
    rootRadius: fc.constantFrom(0, 0.2, 0.8, 1.5),
    tipBreak: fc.constantFrom(0, 0.1, 0.5),
    toothAngle: fc.double({ min: -360, max: 360, noNaN: true }),
    kerf: fc.constantFrom(0, 0.1, 0.3),
  })
  .map(({ depth, ...rest }) => {
    const root = rest.outside * (1 - depth);
    return wheelSpec({ ...rest, root, bore: root / 3, screwHoles: null });
  })
  .filter((spec) => toneWheelFaults(spec).length === 0);

/** The same wheel with windows 6 mm high in a rim of 4 mm: they lie between 100 and 112 mm, their middle on 106. */
export function windowSpec(change: Partial<ToneWheelSpec> = {}): ToneWheelSpec {
  return wheelSpec({ teeth: 36, root: 100, rim: 4, ratio: 0.5, tipBreak: 0, ...change });
}

/** Any window wheel that has no fault, of at most 40 positions. */
export const anyWindowWheel: fc.Arbitrary<ToneWheelSpec> = fc
  .record({
    teeth: fc.integer({ min: 3, max: 40 }),
    missing: fc.integer({ min: 0, max: 3 }),
    outside: fc.double({ min: 40, max: 300, noNaN: true }),
    rim: fc.double({ min: 0.5, max: 8, noNaN: true }),
    depth: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    ratio: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
    flanks: fc.constantFrom('straight' as const, 'radial' as const),
    rootRadius: fc.constantFrom(0, 0.2, 0.8, 1.5),
    toothAngle: fc.double({ min: -360, max: 360, noNaN: true }),
    kerf: fc.constantFrom(0, 0.1, 0.3),
  })
  .map(({ depth, ...rest }) => {
    const root = (rest.outside - 2 * rest.rim) * (1 - depth);
    return windowSpec({ ...rest, root, bore: root / 3, screwHoles: null });
  })
  .filter((spec) => toneWheelFaults(spec).length === 0);
