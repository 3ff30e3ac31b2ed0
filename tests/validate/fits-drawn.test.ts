/** Registers drawn by hand, each at its limits and just past them; sums on paper. mm */
import { describe, expect, it } from 'vitest';
import { madeToMate, registers } from '../../src/validate/registers.ts';
import { seating } from '../../src/validate/seating.ts';
import { joint } from './drawn-registers.ts';
import { expectSaid, findingOf, type Patch } from './help.ts';

const own = (patch: Patch): Patch => ({ adapterSpec: { registers: { driving: patch } } });
const mate = (patch: Patch): Patch => ({ driving: { register: patch } });

describe('how registers fit', () => {
  const said = (code: string, ...patches: Patch[]) =>
    findingOf({ findings: registers.run(joint(...patches)).filter(({ title }) => !title.startsWith('driven')) }, code);
  /** A spigot whose upper limit is `upper`, in a recess from 60. */
  const upper = (value: number) => own({ limits: { upper: value } });
  const asked = (fit: Patch) => ({ job: { adapter: { driving: { fit } } } });

  it.each([
    // By a zone none is meant; a light tap of 0.02 still puts it together (common practice).
    [60, undefined, 0, 'pass', 0],
    [60.001, undefined, -0.001, 'caution', 0],
    [60.021, undefined, -0.021, 'fail', 0],
    // Asked for: as far as it was asked.
    [60.01, { interference: 0.01 }, -0.01, 'pass', -0.01],
    [60.012, { interference: 0.01 }, -0.012, 'caution', -0.01],
    [60.02, { interference: 0.01 }, -0.02, 'caution', -0.01],
    [60.021, { interference: 0.01 }, -0.021, 'fail', -0.01],
    [60.02, { interference: 0.05 }, -0.02, 'pass', -0.02],
    [60.05, { interference: 0.05 }, -0.05, 'caution', -0.02],
    [60.051, { interference: 0.05 }, -0.051, 'fail', -0.02],
    [60.02, { clearance: 0.01 }, -0.02, 'caution', 0],
    [60.021, { clearance: 0.01 }, -0.021, 'fail', 0],
  ] as const)('spigot up to %f, %o: %f, %s', (top, fit, value, verdict, limit) => {
    const finding = said('register-goes-together', upper(top), ...(fit ? [asked(fit)] : []));
    expectSaid(finding, { verdict, value, limit });
  });

  it('warms the outer half: 0.05 of interference and 0.02 of play on 60 of steel, 12e-6 a kelvin: 97 K, so 100', () => {
    const tight = said('register-goes-together', upper(60.05), asked({ interference: 0.05 }));
    expect(tight.remedy).toContain('Warm the driving flange by 100 K');
    // 0.053 and 0.02: 101.4 K, so 110.
    expect(said('register-goes-together', upper(60.053), asked({ interference: 0.05 })).remedy).toContain('by 110 K');
    const recess: Patch[] = [
      own({ gender: 'female', limits: { lower: 59.95, upper: 60 } }),
      mate({ gender: 'male', limits: { lower: 59.98, upper: 60 } }),
    ];
    expect(said('register-goes-together', ...recess, asked({ interference: 0.05 })).remedy).toContain(
      'Warm the adapter by 100 K',
    );
  });

  it('a zone is no fit made to the mate, whatever else is typed', () => {
    const typed = (register: unknown, fit: unknown) =>
      madeToMate(joint({ job: { adapter: { driving: { register, fit } } } }), 'driving');
    expect(typed('auto', { clearance: 0.01 })).toEqual({ clearance: 0.01 });
    expect(typed({ depth: 3 }, { clearance: 0.01 })).toEqual({ clearance: 0.01 });
    expect(typed({ fit: 'h6' }, { clearance: 0.01 })).toBeNull();
    expect(typed('auto', 'h6')).toBeNull();
    expect(typed('auto', undefined)).toBeNull();
  });

  it.each([
    // 0.1 on the diameter still centres; three times that only looks like a register (common practice).
    [59.92, 0.1, 'pass'],
    [59.919, 0.101, 'caution'],
    [59.72, 0.3, 'caution'],
    [59.719, 0.301, 'fail'],
  ] as const)('spigot from %f: play up to %f, %s', (lower, value, verdict) =>
    expectSaid(said('register-centres', own({ limits: { lower } })), { verdict, value, limit: 0.1 }),
  );

  it('how it is made is told, but not of what is made already', () => {
    const made = {
      fits: {
        driving: { least: 0, greatest: 0.04, method: 'turn it', gauge: 'a micrometer', source: 'practice' },
        driven: null,
      },
    };
    const why = (...patches: Patch[]) => said('register-goes-together', made, ...patches).why;
    expect(why()).toContain('The spigot: turn it; measured with: a micrometer (practice).');
    expect(why(own({ limits: { zone: 'as measured' } }))).not.toContain('turn it');
    expect(why(own({ gender: 'female', limits: { lower: 60.03, upper: 60.05 } }), mate({ gender: 'male' }))).toContain(
      'The recess:',
    );
  });

  it('two of a kind fail; where one half is missing that is all that is said', () => {
    const codes = (...patches: Patch[]) =>
      registers.run(joint(...patches)).map(({ code, verdict }) => `${code} ${verdict}`);
    expect(codes(mate({ gender: 'male' }))).toEqual(['register-gender fail', 'register-missing caution']);
    expect(codes({ driving: { register: null } })).toEqual(['register-missing caution', 'register-missing caution']);
    expect(codes({ adapterSpec: { registers: { driving: null } } })).toEqual([
      'register-missing caution',
      'register-missing caution',
    ]);
    const cure = registers.run(joint({ adapterSpec: { registers: { driving: null } } }))[0]?.remedy;
    expect(cure).toBe('Let the adapter have one (adapter.driving.register: auto).');
  });
});

describe('faces that meet', () => {
  const said = (code: string, ...patches: Patch[]) => findingOf({ findings: seating.run(joint(...patches)) }, code);

  it.each([
    // The recess is 4 deep, read to 0.1: 3.8 leaves 0.1 of room (common practice).
    [3.8, 0.1, 'pass', ''],
    [3.85, 0.05, 'caution', 'Make the spigot 3.80 mm high or lower'],
    [3.9, 0, 'caution', ''],
    [3.95, -0.05, 'fail', '{ depth: 3.8 }'],
  ] as const)('a spigot %f high: %f of room, %s', (depth, value, verdict, says) => {
    const finding = said('faces-seat-first', own({ depth }));
    expectSaid(finding, { verdict, value, limit: 0.1 });
    expect(finding.remedy).toContain(says);
  });

  it.each([
    ['female', 'inner', 4.2, 0.1, 'Bore the recess 4.20 mm deep or more'],
    ['male', 'rim', 4.2, 0.1, 'Turn the step 4.20 mm deep or more'],
    ['female', 'rim', 3.8, 0.1, 'Make the ring 3.80 mm high or lower'],
  ] as const)('%s on the %s: %f', (gender, at, depth, value, says) => {
    const pair = [own({ gender, at, depth }), mate({ gender: gender === 'male' ? 'female' : 'male' })];
    expectSaid(said('faces-seat-first', ...pair), { verdict: 'pass', value, limit: 0.1 });
    const worse = said('faces-seat-first', ...pair, own({ depth: depth === 4.2 ? 4.1 : 3.9 }));
    expect(worse.remedy).toContain(says);
  });

  it.each([
    // Height less the foot, the wider of undercut and the mate's chamfer, less the own chamfer: 1 guides, 0.4 does a little (common practice).
    [2, 0.5, null, 1, 'pass'],
    [1.9, 0.5, null, 0.9, 'caution'],
    [1.4, 0.5, null, 0.4, 'caution'],
    [1.3, 0.5, null, 0.3, 'fail'],
    [2, 0.5, { width: 0.6, depth: 0.2 }, 0.9, 'caution'],
    [2, 0.5, { width: 0.4, depth: 0.2 }, 1, 'pass'],
    [2, 0.8, null, 0.7, 'caution'],
    // No more than the recess is deep.
    [9, 0.5, null, 3, 'pass'],
  ] as const)('a spigot %f high in a mouth of %f, undercut %o: %f, %s', (depth, corner, undercut, value, verdict) =>
    expectSaid(said('register-holds', own({ depth, undercut }), mate({ corner })), { verdict, value, limit: 1 }),
  );

  it('a recess loses its own mouth only', () =>
    expectSaid(said('register-holds', own({ gender: 'female', depth: 5 }), mate({ gender: 'male', corner: 2 })), {
      verdict: 'pass',
      value: 3.5,
      limit: 1,
    }));

  it('a higher spigot where the recess lets it, half of what is added being straight; else a dial', () => {
    // 0.9 straight: 0.2 more is 2.1. The recess read to 0.1 with 0.1 of room must be over 2.3.
    const at = (deep: number) => said('register-holds', own({ depth: 1.9 }), mate({ depth: { value: deep } })).remedy;
    expect(at(2.31)).toContain('at least 0.2 mm higher');
    expect(at(2.29)).toMatch(/only 2\.29 mm deep\. Centre the part with a dial/);
  });

  it('corners: undercut, unknown, mouth on a fillet, the foot of a rim', () => {
    expectSaid(said('register-corner', own({ undercut: { width: 1, depth: 0.2 } })), { verdict: 'pass' });
    expect(said('register-corner', mate({ corner: 0 })).why).toContain("mouth of the flange's recess");
    const recess = (chamfer: number, corner: number) =>
      said('register-corner', own({ gender: 'female', depth: 5, chamfer }), mate({ gender: 'male', corner }));
    expect(recess(0.5, 0).why).toContain('fillet');
    expectSaid(recess(0.5, 0.5), { verdict: 'pass', value: 0.5, limit: 0.5 });
    expectSaid(recess(0.4, 0.5), { verdict: 'fail', value: 0.4, limit: 0.5 });
    // A mouth takes at most 0.8 of the depth: 0.5 wants 0.625, in tenths 0.7.
    expect(recess(0.4, 0.5).remedy).toContain('{ depth: 0.7 }');
    const foot = (corner: number) => said('register-corner', mate({ corner }));
    expectSaid(foot(0.4), { verdict: 'pass', value: 0.4, limit: 0.4 });
    expectSaid(foot(0.3), { verdict: 'caution', value: 0.3, limit: 0.4 });
  });

  it('nothing is said where there are no two halves that go together', () => {
    expect(seating.run(joint(mate({ gender: 'male' })))).toEqual([]);
    expect(seating.run(joint({ driving: { register: null } }))).toEqual([]);
    expect(seating.run(joint({ adapterSpec: { registers: { driving: null } } }))).toEqual([]);
  });
});
