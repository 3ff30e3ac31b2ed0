/** Cures of webs, with their numbers, and of the wheel: joints with a part of them drawn by hand. mm */
import { describe, expect, it } from 'vitest';
import { webs } from '../../src/validate/webs.ts';
import { wheel } from '../../src/validate/wheel.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const { joint } = judge({ adapter: { flats: 'auto' } });
/** Every web fails where so much is asked. */
const much: Patch = { job: { adapter: { web: 40 } } };
const said = (code: string, ...patches: Patch[]) =>
  findingOf({ findings: webs.run(bent(joint, much, ...patches)) }, code);
/** What is missing, rounded up to the tenth as a bench works. */
const short = (code: string, times: number) => {
  const missing = times * (40 - (said(code).value ?? 0));
  return `${Number((Math.ceil(missing * 10 - 1e-6) / 10).toFixed(1))} mm`;
};

describe('what to do about a web', () => {
  it('bore and flats: twice what is missing, on the diameter', () => {
    expect(said('wall-bore-to-outside').remedy).toBe(
      `Make the bore at least ${short('wall-bore-to-outside', 2)} smaller (adapter.bore).`,
    );
    expect(said('wall-to-flats').remedy).toContain(`at least ${short('wall-to-flats', 2)} further apart`);
  });

  it('the part of the outside that a hole comes near: the rim, a spigot, the wheel seat, the far face', () => {
    const cure = (spec: Patch) => said('wall-to-rim', { adapterSpec: spec }).remedy;
    const bare = { registers: { driving: null, driven: null }, wheelSeat: null };
    expect(cure({ ...bare, outside: 100 })).toContain(
      `outside at least ${short('wall-to-rim', 2)} larger (adapter.outside: `,
    );
    // On the face that the hole opens on.
    const seats = ['driving', 'driven'].map((face) =>
      cure({ ...bare, outside: 900, wheelSeat: { face, diameter: 100 } }),
    );
    expect(seats.join(' ')).toContain(`wheel's bore at least ${short('wall-to-rim', 2)} larger (wheel.bore: `);
    const blind = { ...bare, outside: 900, thickness: 20 };
    const far = said('wall-to-rim', { adapterSpec: blind });
    if (far.remedy.includes('thicker')) expect(far.remedy).toContain(`at least ${short('wall-to-rim', 1)} thicker`);
    const spigot = { gender: 'male', at: 'inner', diameter: 100 };
    const both = cure({ ...bare, outside: 900, registers: { driving: spigot, driven: spigot } });
    expect(both).toMatch(/no register on the other side \(adapter\.(driving|driven)\.register: none\)/);
  });

  it('the bore where that can be smaller at all, else the screws', () => {
    const near = joint.adapterSpec.bore ?? 0;
    const gap = findingOf({ findings: webs.run(joint) }, 'wall-to-bore').value ?? 0;
    const at = (web: number, bore: number | null) =>
      findingOf(
        { findings: webs.run(bent(joint, { job: { adapter: { web } }, adapterSpec: { bore } })) },
        'wall-to-bore',
      ).remedy;
    const features = joint.adapter.features.filter(({ purpose }) => purpose === 'recess').length;
    expect(near).toBeGreaterThan(0);
    // Where the recess is nearer than the bore, a smaller bore leaves it as it is.
    const smaller = /^Make the bore at least/.test(at(gap + 1, 500));
    if (!smaller) expect(features).toBeGreaterThan(0);
    expect(at(gap + 1, null)).toMatch(/^Use smaller screws or heads on the (driving|driven) side\.$/);
    expect(at(gap + 1, 1.9)).toMatch(/^Use smaller screws/);
  });

  it('between holes: turn the pattern where an angle is good enough, else fasten another way', () => {
    const best = (web: number | null) => said('web-between-holes', { clocking: { best: { web } } }).remedy;
    expect(best(40)).toBe('Turn the driven pattern: see clocking.');
    expect(best(39.9)).toContain('No angle leaves enough metal (best 39.90 mm)');
    const gap = said('web-between-holes').value ?? 0;
    expect(best(null)).toContain(`(best ${gap.toFixed(2)} mm)`);
  });

  it('of the wheel\u2019s screws, and of neighbours of one pattern, the words are their own', () => {
    const sides = (side: string) => ({
      adapter: {
        features: joint.adapter.features.map((feature) =>
          feature.purpose === 'bore' || feature.purpose === 'recess' || feature.side !== side
            ? feature
            : { ...feature, side: 'wheel' },
        ),
      },
    });
    const one = said('web-between-holes', sides('driven')).remedy;
    const other = said('web-between-holes', sides('driving')).remedy;
    expect([one, other]).toEqual([
      expect.stringMatching(/^Turn the wheel's screws/),
      expect.stringMatching(/^Turn the wheel's screws/),
    ]);
    const alike = {
      adapter: {
        features: joint.adapter.features.map((feature) =>
          feature.side === 'driven' ? { ...feature, side: 'driving' } : feature,
        ),
      },
    };
    expect(said('web-between-holes', alike).remedy).toMatch(/^Neighbours of the driving pattern/);
  });

  it('dowels move or get thinner, but not for the flats', () => {
    const pins = {
      adapter: {
        features: joint.adapter.features.map((feature) =>
          feature.group === undefined || feature.side === 'wheel'
            ? feature
            : { ...feature, purpose: 'dowel hole', side: 'driven' },
        ),
      },
    };
    const leave = /^Leave adapter\.driven\.dowels\.circle and \.first on auto/;
    expect(said('web-between-holes', pins).remedy).toMatch(leave);
    expect(said('web-between-holes', pins).why).toContain('driven dowel hole');
    expect(said('wall-to-bore', pins).remedy).toMatch(leave);
    expect(said('wall-to-flats', pins).remedy).toMatch(/^Set the flats/);
  });
});

describe('the wheel on the joint', () => {
  const at = (code: string, ...patches: Patch[]) => findingOf({ findings: wheel.run(bent(joint, ...patches)) }, code);

  it.each([
    // A root of 169; other steel 3 below it (common practice), a failure where it reaches the tips of 178.
    [163, 3, 'pass'],
    [163.2, 2.9, 'caution'],
    [178, -4.5, 'caution'],
    [178.2, -4.6, 'fail'],
  ] as const)('a rim of %f: %f below the roots, %s', (outside, value, verdict) => {
    const limit = at('rim-below-roots').limit ?? 0;
    for (const [patch, name] of [
      [{ adapterSpec: { outside } }, 'adapter'],
      [{ driving: { outside: { value: outside } } }, 'driving flange'],
      [{ driven: { outside: { value: outside } } }, 'driven flange'],
    ] as const) {
      const finding = at('rim-below-roots', { adapterSpec: { outside: 20 } }, patch);
      expectSaid(finding, {
        verdict: value >= limit ? 'pass' : verdict === 'pass' ? 'caution' : verdict,
        value,
        limit,
      });
      expect(finding.title).toContain(name);
    }
  });

  it('its own heads: the outermost one', () => {
    const group = joint.screws.find(({ side }) => side === 'wheel');
    if (!group) throw new Error('no screws');
    const screws = (radius: number) => ({
      screws: [
        {
          ...group,
          washer: null,
          head: { ...group.head, diameter: 10 },
          positions: [
            { x: 60, y: 0 },
            { x: 0, y: radius },
          ],
        },
      ],
    });
    // 84.5 - 5 less its radius.
    expect(at('heads-below-roots', screws(70)).value).toBeCloseTo(9.5, 9);
    expect(at('heads-below-roots', screws(79.5)).verdict).toBe('caution');
    expect(at('heads-below-roots', screws(79.6)).verdict).toBe('fail');
    expect(wheel.run(bent(joint, { screws: [] })).map(({ code }) => code)).not.toContain('heads-below-roots');
  });

  it.each([
    // The wheel stands 1 proud of a shoulder of 2; its seat against the flange's rim and its doubt: 0.2 (common practice).
    [120, 0, 120.2, 'pass'],
    [120, 0.1, 120.3, 'pass'],
    [120, 0.1, 120.2, 'fail'],
  ] as const)('a flange of %f +-%f inside a seat of %f: %s', (outside, doubt, diameter, verdict) => {
    const on = {
      job: { wheel: { on: 'adapter', face: 'driven', shoulder: 2, clearance: 0.1 } },
      wheelRegister: { diameter },
      wheelSpec: { bore: diameter + 0.1 },
    };
    const finding = at('wheel-clears-flange', on, { driven: { outside: { value: outside, doubt } } });
    expectSaid(finding, { verdict, value: diameter - outside - doubt, limit: 0.2 });
    if (verdict === 'fail') expect(finding.remedy).toContain(`Make the bore ${(120.3 + 0.1).toFixed(1)} mm or more`);
  });

  it('one that lies below the face is clear of any flange; on a flange there is none beside it', () => {
    const on = (shoulder: number, of = 'adapter') => ({
      job: { wheel: { on: of, face: 'driven', shoulder, clearance: 0.1 } },
    });
    expectSaid(at('wheel-clears-flange', on(3)), { verdict: 'pass', value: 0, limit: 0 });
    expectSaid(at('wheel-clears-flange', on(3.5)), { verdict: 'pass', value: 0.5, limit: 0 });
    expect(wheel.run(bent(joint, on(2, 'driven'))).map(({ code }) => code)).not.toContain('wheel-clears-flange');
  });

  it('nothing is said of no wheel, or of one that is half known', () => {
    for (const patch of [{ wheel: null }, { wheelSpec: null }, { wheelRegister: null }, { job: { wheel: undefined } }])
      expect(wheel.run(bent(joint, patch))).toEqual([]);
  });

  it('a wheel without screw holes has no ring beside them', () => {
    const holes = joint.wheel?.holes.filter((hole) => hole.feature === 'wheel-bore') ?? [];
    expect(wheel.run(bent(joint, { wheel: { holes } })).map(({ code }) => code)).not.toContain('root-web');
    expect(wheel.run(joint).map(({ code }) => code)).toContain('root-web');
  });

  it.each([
    // As wide as the sheet is thick and 3 at least; half of the sheet is too little (common practice).
    [3, 3, 3, 'pass'],
    [2.9, 3, 3, 'caution'],
    [1.5, 3, 3, 'caution'],
    [1.4, 3, 3, 'fail'],
    [3, 2, 3, 'pass'],
    [2.9, 2, 3, 'caution'],
    [5, 5, 5, 'pass'],
    [2.5, 5, 5, 'caution'],
    [2.4, 5, 5, 'fail'],
  ] as const)('a rim of %f outside of windows in sheet of %f: %f wanted, %s', (rim, thickness, limit, verdict) => {
    const windows = judge({
      wheel: { form: 'windows', outside: 190, height: 8, rim: 5 },
      sensor: { direction: 'axial' },
    }).joint;
    const finding = findingOf({ findings: wheel.run(bent(windows, { wheelSpec: { rim, thickness } })) }, 'window-rim');
    expectSaid(finding, { verdict, value: rim, limit });
    expect(finding.why).not.toContain('missing');
  });
});
