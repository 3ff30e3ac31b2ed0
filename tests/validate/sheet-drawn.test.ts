/** What a cutting service can cut: wheels with holes drawn by hand. Sheet of 3. mm */
import { describe, expect, it } from 'vitest';
import { sheetLimit } from '../../src/standards/sheet-cutting.ts';
import { must } from '../../src/standards/table.ts';
import { sheet } from '../../src/validate/sheet.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const { joint } = judge({});
const circle = (x: number, r: number) => ({ kind: 'circle', x, y: 0, r, feature: 'hole' });
const at = (code: string, holes: readonly Patch[], settings: Patch = {}, more: Patch = {}) =>
  findingOf(
    {
      findings: sheet.run(bent(joint, { wheel: { outside: circle(0, 89), holes }, job: { sheet: settings } }, more)),
    },
    code,
  );

describe('holes and webs, in thicknesses of the sheet', () => {
  // What the loosest of services cuts: it shifts where a caution ends.
  const loosest = (feature: 'hole' | 'web') => must(sheetLimit(feature, 3)).loosest;

  it('the smallest hole', () => {
    const hole = (r: number, share: number) =>
      at('sheet-hole', [circle(0, 50), circle(60, r), circle(70, 4)], { hole: share });
    expectSaid(hole(1.5, 1), { verdict: 'pass', value: 3, limit: 3 });
    expect(hole(1.45, 1).verdict).not.toBe('pass');
    expectSaid(hole(loosest('hole') / 2, 5), { verdict: 'caution', value: loosest('hole'), limit: 15 });
    expectSaid(hole(loosest('hole') / 2 - 0.01, 5), { verdict: 'fail', value: loosest('hole') - 0.02, limit: 15 });
    // A service that cuts finer than any that is known is believed.
    expectSaid(hole(0.1, 0.1), { verdict: 'fail', value: 0.2, limit: 0.3 });
  });

  it('the least web: from hole to hole, to the bore, to the outside', () => {
    const web = (x: number, share = 1) =>
      at('sheet-web', [circle(0, 50), circle(x, 4), circle(-70, 4)], { web: share });
    // 50 + 4 + 3 = 57 from the middle; 89 - 4 - 3 = 82.
    expectSaid(web(57), { verdict: 'pass', value: 3, limit: 3 });
    expectSaid(web(82), { verdict: 'pass', value: 3, limit: 3 });
    expect(web(56.9).value).toBeCloseTo(2.9, 6);
    expect(web(82.1).value).toBeCloseTo(2.9, 6);
    expect(web(56.9).verdict).not.toBe('pass');
    expectSaid(web(54 + loosest('web'), 5), { verdict: 'caution', value: loosest('web'), limit: 15 });
    expectSaid(web(54 + loosest('web') - 0.01, 5), { verdict: 'fail', value: loosest('web') - 0.01, limit: 15 });
    const near = at('sheet-web', [circle(0, 40), circle(60, 4), circle(69, 4)], { web: 1 });
    expect(near.value).toBeCloseTo(1, 9);
    expect(near.remedy).toContain('use fewer or smaller screws');
  });

  it('the radius in the corners: the service\u2019s own, else the usual one', () => {
    const radius = (rootRadius: number, own?: number) =>
      at('sheet-inside-radius', [circle(0, 50)], { inside_radius: own }, { wheelSpec: { rootRadius } });
    expectSaid(radius(0.8, 0.8), { verdict: 'pass', value: 0.8, limit: 0.8 });
    expectSaid(radius(0.79, 0.8), { verdict: 'caution', value: 0.79, limit: 0.8 });
    expect(radius(0.79, 0.8).remedy).toBe('Make the radius at least 0.80 mm (wheel.root_radius: 0.80 mm).');
    const usual = must(sheetLimit('corner', 3)).usual;
    expectSaid(radius(usual), { verdict: 'pass', value: usual, limit: usual });
    expect(radius(usual - 0.01).verdict).toBe('caution');
    expect(radius(usual, usual).source).toContain('sheet.inside_radius');
    expect(radius(usual).source).not.toContain('sheet.inside_radius');
  });

  it('teeth and valleys: sheet as thin as they want, in proportion', () => {
    const slot = (thickness: number) => at('sheet-slot', [circle(0, 50)], {}, { wheelSpec: { thickness } });
    const { value, limit } = slot(3);
    const met = (3 * (value ?? 0)) / (limit ?? 1);
    expect(slot(met - 1e-6).verdict).toBe('pass');
    const thick = slot(met * 1.1);
    expect(thick.verdict).not.toBe('pass');
    expect(thick.remedy).toContain(`sheet of at most ${met.toFixed(2)} mm`);
    expect(slot(met * 9).verdict).toBe('fail');
  });

  it('nothing without a wheel', () => {
    expect(sheet.run(bent(joint, { wheel: null }))).toEqual([]);
    expect(sheet.run(bent(joint, { wheelSpec: null }))).toEqual([]);
  });
});
