/** The torque a joint is sized for, by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designTorque, engineTorque, tyreTorque } from '../../src/formulas/design-torque.ts';
import { applicationFactor } from '../../src/standards/service-factors.ts';
import { must } from '../../src/standards/table.ts';
import { applicationFactorsPrinted } from '../truth/strength.truth.ts';
import '../seed.ts';

const engine = { torque: 120, ratios: [3.5, 1], converter: 2, efficiency: 0.95 };
const tyre = { load: 900, radius: 320, grip: 1, ratio: 4.1 };

describe('design torque', () => {
  it('multiplies down from the engine: 120 x 2 x 3.5 x 1 x 0.95', () => {
    expect(engineTorque(engine).value).toBeCloseTo(798, 9);
    expect(engineTorque(engine).steps.map(({ value }) => value)).toEqual([120, 2, 3.5, 1, 0.95]);
    expect(engineTorque({ torque: 120, ratios: [] }).value).toBe(120);
  });

  it('works back from the tyres: 900 x 9.80665 x 0.32 / 4.1', () => {
    expect(tyreTorque(tyre).value).toBeCloseTo(688.857, 3);
    expect(tyreTorque({ ...tyre, ratio: 1, grip: 0.7 }).value).toBeCloseTo(900 * 9.80665 * 0.32 * 0.7, 9);
  });

  it('takes the lower of engine and tyres, the given torque before both, and shock on top', () => {
    expect(designTorque({ engine, tyre })).toMatchObject({ governs: 'tyres', shock: 1 });
    expect(designTorque({ engine: { ...engine, converter: undefined }, tyre })?.governs).toBe('engine');
    expect(designTorque({ engine })).toMatchObject({ governs: 'engine', value: expect.closeTo(798, 9) });
    const given = designTorque({ given: 320, engine, tyre, shock: 1.5 });
    expect(given).toMatchObject({ governs: 'given', peak: 320, value: 480, chain: expect.closeTo(688.857, 3) });
    expect(designTorque({ shock: 2 })).toBeNull();
  });

  it('shows factors that come to the value', () => {
    const positive = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(positive, positive, positive, positive, (a, b, c, d) => {
        const { value, steps } = tyreTorque({ load: 100 * a, radius: 100 * b, grip: c, ratio: d });
        const shown = steps.reduce(
          (product, step) => (step.unit === '/' ? product / step.value : product * step.value),
          1,
        );
        expect(shown / 1000 / value).toBeCloseTo(1, 9);
      }),
    );
  });

  it.each(Object.entries(applicationFactorsPrinted))('%s load counts %f (ISO 6336 as printed)', (shock, KA) => {
    expect(must(applicationFactor(shock)).KA).toBe(KA);
  });

  it('names the words on a miss', () => {
    expect(applicationFactor('rough')).toEqual({
      ok: false,
      why: expect.stringContaining('smooth, light, moderate, heavy'),
    });
  });
});
