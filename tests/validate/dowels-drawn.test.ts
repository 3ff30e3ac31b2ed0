/** Dowels drawn by hand, each at its limits and just past them; sums on paper. mm */
import { describe, expect, it } from 'vitest';
import { dowels } from '../../src/validate/dowels.ts';
import { joint } from './drawn-registers.ts';
import { expectSaid, findingOf, type Patch } from './help.ts';

describe('dowels', () => {
  const half = (patch: Patch = {}) => ({
    limits: { lower: 8, upper: 8.015, zone: 'H7' },
    least: -0.01,
    greatest: 0.01,
    method: 'ream',
    gauge: 'plug',
    source: 'ISO',
    ...patch,
  });
  const set: Patch = {
    side: 'driving',
    pin: {
      d: 8,
      chamfer: 1.6,
      lengths: [16, 19.2, 24, 40],
      limits: { lower: 8.006, upper: 8.015 },
      standard: 'ISO 8734',
      memory: false,
      shear: 40,
    },
    count: 2,
    length: 24,
    isStandard: true,
    circle: 90,
    reamed: 'together',
    isMeasured: false,
    positions: [],
    inside: { adapter: 12, flange: 12 },
    depth: 14,
    fits: { adapter: half(), flange: half() },
    flangeWeb: { gap: 5, what: 'the rim' },
  };
  const run = (patch: Patch = {}, of: Patch = {}) =>
    dowels.run(joint({ dowels: { driving: set, driven: null } }, { dowels: { driving: patch } }, of));
  const said = (code: string, patch: Patch = {}, of: Patch = {}, about = '') =>
    findingOf({ findings: run(patch, of) }, code, about);
  const fits = (adapter: Patch, flange: Patch = {}) => ({ fits: { adapter, flange } });

  it.each([
    [0.05, 'pass'],
    [0.051, 'caution'],
    [0.1, 'caution'],
    [0.101, 'fail'],
  ] as const)('clearance of %f: %s', (greatest, verdict) => {
    expectSaid(said('dowel-fit-driving', fits({ greatest }), {}, 'adapter'), { verdict, value: greatest, limit: 0.05 });
    expectSaid(said('dowel-fit-driving', fits({}, { greatest }), {}, 'flange'), {
      verdict,
      value: greatest,
      limit: 0.05,
    });
  });

  it.each([
    [0.03, 'pass'],
    [0.031, 'caution'],
    [0.06, 'caution'],
    [0.061, 'fail'],
  ] as const)('interference of %f in either half: %s', (tight, verdict) => {
    for (const which of [fits({ least: -tight }), fits({}, { least: -tight })])
      expectSaid(said('dowel-press-driving', which), { verdict, value: tight, limit: 0.03 });
  });

  it('names the half that it is pressed into; a pin that just touches is not pressed', () => {
    const why = (a: number, f: number) => said('dowel-press-driving', fits({ least: a }, { least: f })).why;
    expect(why(0, 0)).toContain('slide into both');
    expect(why(-0.01, 0)).toContain('pressed into the adapter.');
    expect(why(-0.01, -0.01)).toContain('pressed into the adapter and the flange. They may sit tight in both');
    expectSaid(said('dowel-press-driving', fits({ least: 0.01 }, { least: 0.02 })), {
      verdict: 'pass',
      value: 0,
      limit: 0.03,
    });
    const cure = (isMeasured: boolean, a: number, f: number) =>
      said('dowel-press-driving', { isMeasured, ...fits({ least: a }, { least: f }) }).remedy;
    expect(cure(true, -0.02, -0.05)).toMatch(/^The flange's holes are small/);
    expect(cure(true, -0.05, -0.02)).toMatch(/^Choose a freer fit/);
    expect(cure(false, -0.02, -0.05)).toMatch(/^Choose a freer fit/);
  });

  it.each([
    // One diameter of full pin holds well, half of one at all (common practice); a chamfer of 1.6 does not count.
    [9.6, 8, 'pass'],
    [9.5, 7.9, 'caution'],
    [5.6, 4, 'caution'],
    [5.5, 3.9, 'fail'],
  ] as const)('%f of pin in a part: %f, %s', (inside, value, verdict) => {
    const short = said('dowel-length-driving', { inside: { adapter: inside } });
    expectSaid(short, { verdict, value, limit: 8 });
    expect(short.title).toContain('in the adapter');
    // 2 x (8 + 1.6) = 19.2 is the shortest length that has a diameter in both.
    if (verdict !== 'pass') expect(short.remedy).toContain('dowels.length: 19.2 mm');
    const flange = said('dowel-length-driving', { inside: { flange: inside } });
    expect([flange.value, flange.title]).toEqual([value, 'depth of the dowels in the driving flange']);
  });

  it('a flange too thin for its pin wants a thinner one', () => {
    const cure = (thickness: number) =>
      said('dowel-length-driving', { inside: { flange: 9 } }, { driving: { thickness: { value: thickness } } }).remedy;
    expect(cure(9.5)).toMatch(/^The flange is thin/);
    expect(cure(9.6)).toMatch(/^Take longer pins/);
    expect(
      said('dowel-length-driving', { inside: { adapter: 9 } }, { driving: { thickness: { value: 5 } } }).remedy,
    ).toMatch(/^Take longer pins/);
  });

  it('room beyond their ends: a blind hole, one right through, a flange as thick as it was read', () => {
    const room = (about: string, patch: Patch, of: Patch = {}) => said('dowel-room-driving', patch, of, about);
    expectSaid(room('adapter', { inside: { adapter: 14 } }), { verdict: 'pass', value: 0, limit: 0 });
    expectSaid(room('adapter', { inside: { adapter: 14.1 } }), { verdict: 'fail', value: -0.1, limit: 0 });
    expectSaid(room('adapter', { depth: null, inside: { adapter: 14.1 } }), { verdict: 'pass', value: 5.9, limit: 0 });
    // 14 read to 0.2.
    expectSaid(room('flange', { inside: { flange: 13.8 } }), { verdict: 'pass', value: 0, limit: 0 });
    expectSaid(room('flange', { inside: { flange: 13.9 } }), { verdict: 'caution', value: -0.1, limit: 0 });
    expect(room('flange', {}, { driving: { thickness: null } }).remedy).toBe('Give driving.thickness.');
  });

  it('right through, the face that the pins end below is the other one', () => {
    for (const [side, face] of [
      ['driving', 'driven'],
      ['driven', 'driving'],
    ] as const) {
      const findings = dowels.run(
        joint({ dowels: { driving: null, driven: null, [side]: { ...set, side, depth: null } } }),
      );
      const room = findingOf({ findings }, `dowel-room-${side}`, 'adapter');
      expect(room.why).toContain(`8.00 mm below the ${face} face`);
    }
  });

  it.each([
    [3, 3, 'pass'],
    [2.9, 3, 'caution'],
    [1, 3, 'caution'],
    [0.9, 3, 'fail'],
    [0.8, 0.9, 'fail'],
  ] as const)('metal of %f round them where %f is asked: %s', (gap, web, verdict) =>
    expectSaid(said('dowel-web-driving', { flangeWeb: { gap } }, { job: { adapter: { web } } }), {
      verdict,
      value: gap,
      limit: web,
    }),
  );

  it('made apart: one pin without a register is no trouble, more are, and so is one beside a register', () => {
    const setting = (count: number, register: boolean, reamed = 'separately', of: Patch = {}) =>
      said('dowel-setting-driving', { count, reamed }, register ? of : { driving: { register: null }, ...of });
    expectSaid(setting(1, false), { verdict: 'pass' });
    expectSaid(setting(2, false), { verdict: 'caution' });
    expectSaid(setting(1, true), { verdict: 'caution' });
    expectSaid(setting(2, true, 'together'), { verdict: 'pass' });
    expect(setting(1, true).why).toContain('The register centres it as well');
    expect(setting(1, true, 'separately', { adapterSpec: { registers: { driving: null } } }).why).not.toContain(
      'centres it as well',
    );
    expect(setting(2, true, 'together').why).toContain('seat it in its register');
    expect(setting(2, false, 'together').why).toContain('with a dial');
    // Adapter's greatest play and the flange's least.
    expect(
      said('dowel-setting-driving', { reamed: 'separately', ...fits({ greatest: 0.03 }, { least: 0.02 }) }).why,
    ).toContain('within 0.050 mm');
  });

  it('goes on in as many positions as pins where the flange\u2019s holes come onto themselves', () => {
    const at = (radius: number, ...degrees: number[]) =>
      degrees.map((d) => ({ x: radius * Math.cos((d * Math.PI) / 180), y: radius * Math.sin((d * Math.PI) / 180) }));
    const marked = (count: number, positions: readonly Patch[]) =>
      said('dowel-setting-driving', { count }, { driving: { holes: { positions } } }).why.includes(
        `in ${count} positions`,
      );
    expect(marked(2, at(50, 10, 100, 190, 280))).toBe(true);
    expect(marked(3, at(50, 10, 130, 250))).toBe(true);
    expect(marked(2, at(50, 10, 130, 250))).toBe(false);
    expect(marked(3, at(50, 10, 100, 190, 280))).toBe(false);
    // One hole that is half a millimetre and more out of place tells the way round: 0.6 degrees on 50 are 0.52.
    expect(marked(2, at(50, 10, 100, 190, 280.5))).toBe(true);
    expect(marked(2, at(50, 10, 100, 190, 280.6))).toBe(false);
    expect(marked(1, at(50, 10, 100, 190, 280))).toBe(false);
  });

  it('holes that are there need no work; nothing is said of a side without pins', () => {
    const codes = (patch: Patch) => run(patch).map(({ code }) => code);
    expect(codes({})).toContain('dowel-work-driving');
    expect(codes({ isMeasured: true })).not.toContain('dowel-work-driving');
    expect(dowels.run(joint({ dowels: { driving: null, driven: null } }))).toEqual([]);
    expect(dowels.run(joint())).toEqual([]);
  });
});
