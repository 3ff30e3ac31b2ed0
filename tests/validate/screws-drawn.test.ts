/** Screws, holes and sums of the small checks at their limits and just past them: drawn by hand. mm */
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/job/joint.ts';
import { judged, notAssessed, stated } from '../../src/validate/check.ts';
import { clocking } from '../../src/validate/clocking.ts';
import { holes } from '../../src/validate/holes-clear.ts';
import { print } from '../../src/validate/print.ts';
import { screws } from '../../src/validate/screws.ts';
import { thickness } from '../../src/validate/thickness.ts';
import { tightening } from '../../src/validate/tightening.ts';
import { angle, atLeast, mm, plain, plural, sourced } from '../../src/validate/words.ts';
import { drawn, shape } from './drawn-screws.ts';
import { expectSaid, findingOf, type Patch, patched } from './help.ts';

describe('a number against a limit', () => {
  const words = { code: 'c', feature: 'f', title: 't', unit: 'mm', why: 'w', cure: 'Do it.', source: 's' };
  it.each([
    // A millionth is rounding; more is not.
    ['at least', 0, 'pass', 0],
    ['at least', -1e-6, 'pass', 0],
    ['at least', -1.05e-6, 'caution', -0.000001],
    ['at least', -1, 'caution', -1],
    ['at least', -1.0000011, 'fail', -1.000001],
    ['at most', 0, 'pass', 0],
    ['at most', 1.05e-6, 'caution', -0.000001],
    ['at most', -2, 'pass', 2],
  ] as const)('%s 0, %f: %s', (sense, value, verdict, margin) => {
    const said = judged(words, value, { limit: 0, sense, hard: sense === 'at least' ? -1 : 1 });
    expect(said).toMatchObject({ verdict, limit: 0, sense, margin, remedy: verdict === 'pass' ? '' : 'Do it.' });
    expect(Object.is(said.value, -0)).toBe(false);
    expect(said).not.toHaveProperty('cure');
  });
  it('a limit for failing is met exactly as well: a caution', () => {
    const at = (value: number) => judged(words, value, { limit: 2, sense: 'at least', hard: 0 }).verdict;
    expect([at(0), at(-1e-6), at(-1.05e-6)]).toEqual(['caution', 'caution', 'fail']);
  });
  it('without one, missing the limit fails, or is the worst that may be said', () => {
    expect(judged(words, 1, { limit: 2, sense: 'at least' }).verdict).toBe('fail');
    expect(judged(words, 1, { limit: 2, sense: 'at least', worst: 'caution' }).verdict).toBe('caution');
    expect(judged(words, 1, { limit: 3, sense: 'at least', hard: 2, worst: 'caution' }).verdict).toBe('caution');
  });
  it('values are told to a millionth', () => {
    expect(judged(words, 1.23456789, { limit: 1, sense: 'at least' })).toMatchObject({
      value: 1.234568,
      margin: 0.234568,
    });
  });
  it('a statement and an open question carry no numbers', () => {
    expect(stated(words, 'pass')).toMatchObject({ value: null, limit: null, margin: null, remedy: '' });
    expect(stated(words, 'caution').remedy).toBe('Do it.');
    const open = notAssessed({ code: 'c', feature: 'f', title: 't', why: 'w', source: 's', missing: 'Give it.' });
    expect(open).toMatchObject({
      verdict: 'not assessed',
      value: null,
      limit: null,
      margin: null,
      unit: '',
      remedy: 'Give it.',
    });
  });
});

describe('numbers in words', () => {
  it.each([
    [mm(12.5), '12.50 mm'],
    [mm(0.0126, 3), '0.013 mm'],
    [mm(-0.001), '0.00 mm'],
    [atLeast(2.31), '2.4 mm'],
    [atLeast(2.3), '2.3 mm'],
    [atLeast(0.1 + 0.2), '0.3 mm'],
    [angle(15), '15 degrees'],
    [angle(7.125), '7.125 degrees'],
    [plain(-0.04, 1), '0.0'],
    [plain(-0.06, 1), '-0.1'],
    [plural(1, 'tooth', 'teeth'), '1 tooth'],
    [plural(2, 'tooth', 'teeth'), '2 teeth'],
    [plural(0, 'pin'), '0 pins'],
    [sourced('a book', true), 'a book (from memory)'],
    [sourced('a book', false), 'a book'],
  ])('%s', (said, wanted) => expect(said).toBe(wanted));
});

describe('lengths and threads', () => {
  const base: Patch = {
    engagement: { has: 10, needs: 8, rule: '1 d', memory: false },
    lengths: { least: 20, most: 30, mostWhy: 'the hole ends' },
  };
  const run = (patch: Patch = {}, of: Patch = {}) => screws.run(drawn(patched(base, patch), of).joint);
  const said = (code: string, patch: Patch = {}, of: Patch = {}) => findingOf({ findings: run(patch, of) }, code);
  const lengths = (least: number, most: number | null) => ({ lengths: { least, most } });

  it.each([
    [8, 'pass'],
    [7.9, 'fail'],
  ] as const)('%f of thread where 8 are needed: %s', (has, verdict) =>
    expectSaid(said('thread-engagement', { engagement: { has } }), { verdict, value: has, limit: 8 }),
  );

  it('too little thread: a longer screw where one fits, else a weaker one or another metal', () => {
    const cure = (length: number | null, least: number, most: number | null) =>
      said('thread-engagement', { length, engagement: { has: 6 }, ...lengths(least, most) }).remedy;
    expect(cure(18, 20, 30)).toMatch(/^Take screws 20\.00 mm long or longer/);
    expect(cure(18, 20, 20)).toMatch(/^Take screws 20\.00 mm/);
    expect(cure(18, 20, null)).toMatch(/^Take screws 20\.00 mm/);
    expect(cure(18, 20, 19)).toMatch(/^There is 2\.00 mm of thread too little/);
    expect(cure(20, 20, 30)).toMatch(/^There is 2\.00 mm of thread too little/);
    expect(cure(null, 20, 30)).toMatch(/^There is 2\.00 mm/);
  });

  it('what is not known names the flange that is not measured', () => {
    const unknown = (patch: Patch, of: Patch) => said('screw-length', { ...lengths(0, null), ...patch }, of).remedy;
    const none = { thickness: null };
    expect(unknown({ fastening: 'through' }, { driving: none, driven: none })).toBe(
      'Give driving.thickness and driven.thickness: the thickness at the holes.',
    );
    expect(unknown({ fastening: 'through' }, { driven: none })).toBe(
      'Give driven.thickness: the thickness at the holes.',
    );
    expect(unknown({ fastening: 'into_adapter', side: 'driven' }, { driving: none, driven: none })).toBe(
      'Give driven.thickness: the thickness at the holes.',
    );
    const open = said('thread-engagement', { engagement: { has: null }, ...lengths(0, null) }, { driving: none });
    expect(open.remedy).toMatch(/^Give driving\.thickness/);
    expect(said('thread-engagement', { engagement: { has: null } }).remedy).toContain('see screw-length');
  });

  it.each([
    [30, 'pass'],
    [30.1, 'fail'],
  ] as const)('a screw of %f where 30 fit: %s', (length, verdict) =>
    expectSaid(said('screw-length', { length }), { verdict, value: length, limit: 30 }),
  );

  it('too long: the next one that is made and holds', () => {
    // ISO 4762 M8: 20, 25, 30, 35, 40.
    const cure = (least: number, most: number) => said('screw-length', { length: 40, ...lengths(least, most) }).remedy;
    expect(cure(20, 34)).toContain('M8 x 30, or');
    expect(cure(20, 30)).toContain('M8 x 30, or');
    expect(cure(31, 34)).toBe('Take a screw of at most 34.00 mm.');
    expect(cure(25, 29)).toContain('M8 x 25, or');
    expect(said('screw-length', { length: 40, thread: 'M8.3' }).remedy).toBe('Take a screw of at most 30.00 mm.');
  });

  it('none that is made fits: thicker, or cut; none is as long as it must be; or too little thread altogether', () => {
    const none = (least: number, most: number | null) =>
      said('screw-length', { length: null, ...lengths(least, most) });
    expectSaid(none(21, 24), { verdict: 'fail', value: 25, limit: 24 });
    expect(none(21, 24).remedy).toBe(
      'Make the adapter 1 mm thicker (adapter.thickness: 21 mm), or cut 25.00 mm screws to 24.00 mm.',
    );
    expectSaid(none(25, 24.5), { verdict: 'fail', value: 25, limit: 24.5 });
    expect(none(25, 24.5).remedy).toMatch(/^There is 0\.50 mm of thread too little/);
    expect(none(9000, null)).toMatchObject({ verdict: 'fail', value: null });
    expect(none(25, null).limit).toBe(0);
  });

  it('room that is not known: of a thread its depth, of a bolt what is behind', () => {
    expect(said('screw-length', { ...lengths(20, null) }).remedy).toMatch(/^Give driving\.holes\.depth/);
    expect(said('screw-length', { fastening: 'through', ...lengths(20, null) }).remedy).toMatch(
      /^Give driving\.behind/,
    );
  });

  it('bolts reach through their nuts', () => {
    const bolt = (length: number | null, least = 60) =>
      run({ fastening: 'through', length, ...lengths(least, 90) }).filter(({ code }) => code === 'bolt-reaches-nut');
    const [met] = bolt(60);
    const [short] = bolt(59.9);
    if (!met || !short) throw new Error('nothing said');
    expectSaid(met, { verdict: 'pass', value: 60, limit: 60 });
    expectSaid(short, { verdict: 'fail', value: 59.9, limit: 60 });
    expect(bolt(null)).toEqual([]);
    expect(bolt(60, 0)).toEqual([]);
    expect(run().map(({ code }) => code)).toEqual(['thread-engagement', 'screw-length']);
  });
});

describe('screws through their holes', () => {
  const flange = (doubt: number, diameter = 8.5) => ({ kind: 'clear', diameter: { value: diameter, doubt: 0 }, doubt });
  const run = (doubt: number, hole: number, patch: Patch = {}) =>
    holes.run(
      drawn(patch, {
        ...shape({ kind: 'surface' }, hole),
        driving: { holes: flange(doubt) },
        driven: { holes: flange(doubt, 8.2) },
      }).joint,
    );
  const said = (doubt: number, hole: number, patch: Patch = {}) =>
    findingOf({ findings: run(doubt, hole, patch) }, 'holes-clear');

  it.each([
    // 0.05 drilled (common practice) and what was read, both twice: against the play in both holes.
    [0.1, 8.3, 0.8, 0.3, 'pass'],
    [0.35, 8.3, 0.8, 0.8, 'pass'],
    [0.36, 8.3, 0.8, 0.82, 'caution'],
  ] as const)('a pattern read to %f: %s', (doubt, hole, play, needs, verdict) =>
    expectSaid(said(doubt, hole), { verdict, value: play, limit: needs }),
  );

  it('a screw that does not go in at all fails: 0.05 of play at least', () => {
    const tight = (hole: number) => {
      const made = drawn({}, { ...shape({ kind: 'surface' }, hole), driving: { holes: flange(0.1, 8) } });
      return findingOf({ findings: holes.run(made.joint) }, 'holes-clear').verdict;
    };
    expect([tight(8.05), tight(8.04)]).toEqual(['caution', 'fail']);
  });

  it('a better reading is asked for where it could be enough', () => {
    const cure = (play: number) => {
      const made = drawn({}, { ...shape({ kind: 'surface' }, 8 + play), driving: { holes: flange(1, 8) } });
      return findingOf({ findings: holes.run(made.joint) }, 'holes-clear').remedy;
    };
    expect(cure(0.11)).toMatch(/^Measure the bolt circle better/);
    expect(cure(0.104)).toMatch(/^Drill through the flange/);
    expect(cure(0.11)).toContain('adapter.driving.hole: coarse');
    expect(said(1, 8.3, { fastening: 'through', seat: 'sunk' }).remedy).toContain('take a thinner screw');
  });

  it('bolts through both flanges go through both; the wheel\u2019s screws are not asked', () => {
    expect(run(0.1, 8.3, { fastening: 'through', seat: 'outside' }).map(({ title }) => title)).toEqual([
      'M8 screws go through, driving side',
      'M8 screws go through, driven side',
    ]);
    expect(run(0.1, 8.3, { fastening: 'through', seat: 'sunk' })).toHaveLength(1);
    expect(run(0.1, 8.3, { side: 'wheel' })).toEqual([]);
  });
});

describe('threads that strip', () => {
  const of: Patch = { adapterMaterial: { id: 'x', shearStrength: 100, shearRule: 'given', memory: false }, job: {} };
  const said = (patch: Patch) => tightening.run(drawn({ fastening: 'into_adapter', ...patch }, of).joint);
  it('is asked of threads in parts, not of nuts', () => {
    expect(said({})).toHaveLength(1);
    expect(said({ fastening: 'through' })).toEqual([]);
    expect(said({ engagement: { has: null } })[0]?.verdict).toBe('not assessed');
    expect(said({ thread: 'M8.3' })[0]?.verdict).toBe('not assessed');
  });
  it('weaker than the screw is a caution, weaker than its preload a failure', () => {
    const [at] = said({ engagement: { has: 4 } });
    const strips = at?.value ?? 0;
    // M8 10.9: 36.6 mm2 (ISO 898-1), 1040 MPa: 38.1 kN.
    expect(at?.limit).toBeCloseTo(38.1, 1);
    const pulled = (preload: number | null) => said({ engagement: { has: 4 }, tightening: { preload } })[0];
    expect(pulled(strips - 0.01)?.verdict).toBe('caution');
    expect(pulled(strips + 0.01)?.verdict).toBe('fail');
    expect(pulled(strips + 0.01)?.why).toContain('DO NOT use that torque');
    expect(pulled(strips - 0.01)?.why).not.toContain('DO NOT');
    expect(pulled(null)?.why).not.toContain('Tightening pulls');
    // As much more thread as it is weaker, while that is of use (1.5 d of it, published trials): else another metal.
    const needs = (4 * (at?.limit ?? 0)) / strips;
    const cure = at?.remedy ?? '';
    if (needs <= 12) expect(cure).toContain('of thread engage');
    else expect(cure).not.toContain('of thread engage');
    expect(cure).toMatch(/weaker screws \(adapter\.driving\.class: 8\.8\)/i);
    expect(said({ class: '8.8', engagement: { has: 2 } })[0]?.remedy).not.toContain('weaker screws');
  });
});

describe('bed, clocking, thickness', () => {
  const bed = (sizes: readonly number[] | undefined, wheel?: number) =>
    print.run({
      job: { print: { bed: sizes } },
      adapterSpec: { outside: 150 },
      wheelSpec: wheel === undefined ? null : { outside: wheel },
    } as unknown as Joint);
  it.each([
    [[155, 300], undefined, 5, 'pass'],
    [[300, 154.9], undefined, 4.9, 'caution'],
    [[200, 300], 190, 10, 'pass'],
    [[200, 300], 100, 50, 'pass'],
    [[140, 300], undefined, -10, 'caution'],
  ] as const)('a bed of %o: %f left, %s', (sizes, wheel, value, verdict) => {
    const [finding] = bed(sizes, wheel);
    if (!finding) throw new Error('nothing said');
    expectSaid(finding, { verdict, value, limit: 5 });
  });
  it('no bed, no question', () => expect(bed(undefined)).toEqual([]));

  it('clocking and thickness say nothing that is not known', () => {
    const none = (web: number | null, best: number | null) =>
      clocking.run({
        clocking: { mode: 'auto', angle: 0, web, best: { angle: 0, web: best } },
        job: { adapter: { web: 3 } },
      } as unknown as Joint)[0];
    expect(none(null, null)?.value).toBeNull();
    expect(none(5, null)?.value).toBeNull();
    expect(none(null, 5)?.value).toBeNull();
    expect(none(5, 5)?.verdict).toBe('pass');
    const made = (of: number) =>
      thickness.run({
        thickness: { mode: 'given', thickness: of, least: 20, demands: [] },
        adapterSpec: { thickness: of },
        job: {},
      } as unknown as Joint)[0];
    expect([made(20)?.verdict, made(19.9)?.verdict]).toEqual(['pass', 'fail']);
    expect(made(18.02)?.remedy).toContain('1.98 mm thicker (adapter.thickness: 20 mm)');
  });
});
