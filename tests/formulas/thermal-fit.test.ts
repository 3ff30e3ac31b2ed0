/** Thermal clearance against the closed form, by hand, and by expanding each part alone. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceRange } from '../../src/formulas/fit.ts';
import {
  clearanceAt,
  clearanceChange,
  coldAndHot,
  diameterAt,
  referenceTemperature,
  temperatureOfContact,
} from '../../src/formulas/thermal-fit.ts';
import { allMaterials, findMaterial } from '../../src/standards/materials.ts';
import { must } from '../../src/standards/table.ts';
import { alphaAluminium, alphaSteel, openingTruths } from '../truth/thermal.truth.ts';

const register = {
  recess: { lower: 75.02, upper: 75.05 },
  spigot: { lower: 74.97, upper: 75 },
  alphaRecess: alphaAluminium,
  alphaSpigot: alphaSteel,
};

describe('a register between two materials', () => {
  it.each(openingTruths)('$what: $dc mm by hand', ({ recess, spigot, d, dT, dc, half }) => {
    expect(Math.abs(clearanceChange(d, recess, spigot, dT) - dc)).toBeLessThan(half);
  });

  it('uses the same coefficients as the table of materials', () => {
    expect(must(findMaterial('6061-T6')).thermalExpansion).toBeCloseTo(alphaAluminium, 12);
    expect(must(findMaterial('1018-CD')).thermalExpansion).toBeCloseTo(alphaSteel, 12);
  });

  it('opens hot and closes cold when the recess is aluminium', () => {
    const { cold, at20, hot, worst } = coldAndHot(register, -30, 100);
    // By hand: 0.020 - 11.9e-6 x 75 x 50 = -0.0246; 0.080 + 11.9e-6 x 75 x 80 = 0.1514.
    expect(at20.least).toBeCloseTo(0.02, 9);
    expect(cold.least).toBeCloseTo(-0.0246, 4);
    expect(hot.greatest).toBeCloseTo(0.1514, 3);
    expect(worst).toEqual({ least: cold.least, greatest: hot.greatest });
    expect(coldAndHot(register, 100, -30)).toEqual(coldAndHot(register, -30, 100));
  });

  const sizes = fc.record({
    d: fc.double({ min: 10, max: 500, noNaN: true }),
    clearance: fc.double({ min: -0.2, max: 0.5, noNaN: true }),
    temperature: fc.double({ min: -60, max: 200, noNaN: true }),
    recess: fc.constantFrom(...allMaterials()),
    spigot: fc.constantFrom(...allMaterials()),
  });

  it('agrees with two parts expanded alone, within what the closed form leaves out', () => {
    fc.assert(
      fc.property(sizes, ({ d, clearance, temperature, recess, spigot }) => {
        const warming = temperature - referenceTemperature;
        const exact =
          diameterAt(d + clearance, recess.thermalExpansion, temperature) -
          diameterAt(d, spigot.thermalExpansion, temperature);
        const closed = clearance + clearanceChange(d, recess.thermalExpansion, spigot.thermalExpansion, warming);
        const leftOut = Math.abs(clearance * recess.thermalExpansion * warming);
        expect(Math.abs(exact - closed)).toBeLessThanOrEqual(leftOut + 1e-9);
        // Metals: below a micrometre over the valid range up to 0.2 mm of clearance.
        if (recess.thermalExpansion < 25e-6 && Math.abs(clearance) <= 0.2) expect(leftOut).toBeLessThan(0.001);
      }),
    );
  });

  it('changes nothing between like materials but the clearance itself, and nothing at 20 degrees', () => {
    fc.assert(
      fc.property(sizes, ({ d, clearance, temperature, recess }) => {
        const alike = {
          recess: { lower: d + clearance, upper: d + clearance + 0.03 },
          spigot: { lower: d - 0.02, upper: d },
          alphaRecess: recess.thermalExpansion,
          alphaSpigot: recess.thermalExpansion,
        };
        const at20 = clearanceRange(alike.recess, alike.spigot);
        expect(clearanceAt(alike, referenceTemperature)).toEqual(at20);
        const scale = 1 + recess.thermalExpansion * (temperature - referenceTemperature);
        expect(clearanceAt(alike, temperature).least).toBeCloseTo(at20.least * scale, 9);
        expect(temperatureOfContact(clearance, d, recess.thermalExpansion, recess.thermalExpansion)).toBeNull();
      }),
    );
  });

  it('has no clearance left at the temperature of contact', () => {
    fc.assert(
      fc.property(sizes, ({ d, clearance, recess, spigot }) => {
        const at = temperatureOfContact(clearance, d, recess.thermalExpansion, spigot.thermalExpansion);
        fc.pre(at !== null);
        const left = clearance + clearanceChange(d, recess.thermalExpansion, spigot.thermalExpansion, (at ?? 0) - 20);
        expect(left).toBeCloseTo(0, 9);
      }),
    );
    // By hand: 0.03 mm on 75 mm, 11.9e-6: 33.6 K below 20.
    expect(temperatureOfContact(0.03, 75, alphaAluminium, alphaSteel)).toBeCloseTo(-13.6, 1);
  });

  it('is never worse between the ends than at them', () => {
    fc.assert(
      fc.property(sizes, fc.double({ min: 0, max: 1, noNaN: true }), ({ d, recess, spigot }, part) => {
        const any = {
          recess: { lower: d + 0.01, upper: d + 0.04 },
          spigot: { lower: d - 0.03, upper: d },
          alphaRecess: recess.thermalExpansion,
          alphaSpigot: spigot.thermalExpansion,
        };
        const { worst } = coldAndHot(any, -40, 120);
        const between = clearanceAt(any, -40 + 160 * part);
        expect(between.least).toBeGreaterThanOrEqual(worst.least - 1e-9);
        expect(between.greatest).toBeLessThanOrEqual(worst.greatest + 1e-9);
      }),
    );
  });
});
