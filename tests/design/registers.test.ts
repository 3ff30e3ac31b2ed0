/** Registers made to the measured mate, by hand. ISO 286 grade 6 over 50 up to 80 mm is 19 um (Machine Drawing, chapter 15). */
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/job/joint.ts';
import { keyNumbers } from '../../src/report/key-numbers.ts';
import { validate } from '../../src/validate/all.ts';
import { errorsOf, expectSaid, findingOf, judge, type Patch } from '../validate/help.ts';

const driving = (fit: unknown, register?: unknown): Patch => ({
  adapter: { driving: register === undefined ? { fit } : { fit, register } },
});
const made = (...patches: readonly Patch[]): Joint => judge(...patches).joint;
const limits = (patch: Patch, side: 'driving' | 'driven' = 'driving') => made(patch).adapterSpec.registers[side];

describe('a register made to its mate', () => {
  // The driving spigot was read as 62 within 0.01.
  it('keeps the clearance whatever the mate turns out to be', () => {
    const joint = made(driving({ clearance: '0.02 mm' }));
    expect(joint.adapterSpec.registers.driving).toMatchObject({
      gender: 'female',
      diameter: 62.03,
      limits: { lower: 62.03, upper: 62.049, zone: 'to fit' },
    });
    // 62.03 - 62.01 and 62.049 - 61.99: the doubt of the reading is in the sum.
    expect(joint.fits?.driving).toMatchObject({ least: 0.02, greatest: 0.059 });
    expectSaid(findingOf({ findings: validate(joint) }, 'register-goes-together@driving'), {
      verdict: 'pass',
      value: 0.02,
      limit: 0,
    });
  });

  it('widens with the doubt of the reading, and not without', () => {
    const read = (doubt: number) =>
      made(driving({ clearance: '0.02 mm' }), { driving: { register: { diameter: { value: 62, doubt } } } }).fits
        ?.driving;
    expect(read(0.002)).toMatchObject({ least: 0.02, greatest: 0.043 });
    expect(read(0.03)).toMatchObject({ least: 0.02, greatest: 0.099 });
  });

  it('turns a spigot down from the least recess', () => {
    // 60 H7 is 60.000 to 60.030.
    expect(limits({ adapter: { driven: { fit: { clearance: '0.01 mm' } } } }, 'driven')).toMatchObject({
      gender: 'male',
      diameter: 59.99,
      limits: { lower: 59.971, upper: 59.99 },
    });
  });

  it('takes a tolerance of its own, and inches', () => {
    expect(limits(driving({ clearance: 0, tolerance: '0.01 mm' }))?.limits).toMatchObject({
      lower: 62.01,
      upper: 62.02,
    });
    // 0.001 in is 0.0254: 62.0354 goes up to the next micrometre, for the promise is a least clearance.
    expect(limits(driving({ clearance: '0.001 in' }))?.limits).toMatchObject({ lower: 62.036, upper: 62.055 });
  });

  it('never squeezes more than asked, and does not call that a fault', () => {
    const tap = made(driving({ interference: '0.01 mm' }));
    expect(tap.adapterSpec.registers.driving?.limits).toMatchObject({ lower: 62, upper: 62.019 });
    expectSaid(findingOf({ findings: validate(tap) }, 'register-goes-together@driving'), {
      verdict: 'pass',
      value: -0.01,
      limit: -0.01,
    });
    const press = made(driving({ interference: '0.05 mm' }));
    const finding = findingOf({ findings: validate(press) }, 'register-goes-together@driving');
    expectSaid(finding, { verdict: 'caution', value: -0.05, limit: -0.02 });
    // 0.05 and 0.02 of play over 61.96 x 12e-6: 94 K, and the next ten.
    expect(finding.remedy).toMatch(/^Warm the adapter by 100 K .*adapter\.driving\.fit: \{ interference: 0\.02 mm \}/);
    const less = judge(driving({ interference: '0.02 mm' }));
    expect(findingOf(less, 'register-goes-together@driving').verdict).toBe('pass');
  });

  it('gives way to a zone on the register itself', () => {
    expect(limits(driving({ clearance: '0.02 mm' }, { fit: 'H7' }))?.limits.zone).toBe('H7');
  });

  it('says how a shop reaches it (common practice), and what it comes to', () => {
    // 19 um is grade 6: honed or ground. 35 um holds grade 7 (30) and not grade 8 (46). 80 um holds 9 (74).
    const way = (tolerance: string) => made(driving({ clearance: 0, tolerance })).fits?.driving?.method;
    expect(way('0.019 mm')).toBe('bored a little under size and honed, or ground');
    expect(way('0.035 mm')).toMatch(/^bored with care/);
    expect(way('0.08 mm')).toBe('bored');
    expect(made().fits?.driving?.method).toMatch(/^bored with care/);
    expect(made({ driving: { register: 'none' } }).fits?.driving).toBeNull();
    const finding = findingOf({ findings: validate(made()) }, 'register-goes-together@driving');
    expect(finding.why).toContain('The recess: bored with care');
  });

  it('lists limits, clearance and way among the key numbers, in inches too when asked', () => {
    const line = (units: 'mm' | 'in') =>
      keyNumbers(made(driving({ clearance: '0.02 mm' })), units).find(
        ({ label }) => label === 'Register, driving side',
      );
    expect(line('mm')).toMatchObject({
      value: 'recess 62.030 to 62.049 mm',
      note: expect.stringContaining('turn between these limits (to fit), 4.30 mm deep; clearance 0.020 mm to 0.059 mm'),
    });
    // 62.030 / 25.4 = 2.442126 goes up, 62.049 / 25.4 = 2.442874 goes down: still within the limits.
    expect(line('in')?.value).toBe('recess 62.030 to 62.049 mm (2.4422 to 2.4428 in)');
    expect(line('in')?.note).toContain('clearance 0.020 mm (0.0008 in) to 0.059 mm (0.0023 in)');
  });
});

describe('a fit that cannot be read', () => {
  const said = (fit: unknown, register?: unknown) => errorsOf(driving(fit, register));

  it('is named at its key', () => {
    expect(said({})).toMatchObject([
      { path: 'adapter.driving.fit', message: expect.stringContaining('one of the two') },
    ]);
    expect(said({ clearance: 0.02, interference: 0.01 })).toMatchObject([{ path: 'adapter.driving.fit' }]);
    expect(said({ clearance: -0.02 })).toMatchObject([{ path: 'adapter.driving.fit.clearance' }]);
    expect(said({ clearance: 20 })).toMatchObject([{ path: 'adapter.driving.fit.clearance' }]);
    expect(said({ interference: 0 })).toMatchObject([{ path: 'adapter.driving.fit.interference' }]);
    expect(said({ clearance: 0.02, tolerance: 0 })).toMatchObject([{ path: 'adapter.driving.fit.tolerance' }]);
    expect(said('loose')).toMatchObject([{ path: 'adapter.driving.fit' }]);
    expect(said([0.02])).toMatchObject([{ path: 'adapter.driving.fit' }]);
  });

  it('suggests the key that was meant', () => {
    const [error] = said({ clearence: 0.02 });
    expect(error?.path).toMatch(/^adapter\.driving\.fit/);
    expect(error?.message).toContain('clearance');
  });

  it('does not let a diameter and the mate both decide', () => {
    expect(said({ clearance: 0.02 }, { diameter: 62 })).toMatchObject([
      { path: 'adapter.driving.register.diameter', message: expect.stringContaining('leave out one of the two') },
    ]);
  });
});
