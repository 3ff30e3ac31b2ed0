/** What finished parts say: sizes and dispositions made up, each sentence and verdict as the list of dispositions has it. mm, g */
import { describe, expect, it } from 'vitest';
import type { Judgement } from '../../src/inspect/disposition.ts';
import type { Joint } from '../../src/job/joint.ts';
import type { Finding } from '../../src/model/finding.ts';
import { builtFindings, newFailures } from '../../src/validate/built.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

/** A spigot of 60, 59.98 to 60, found at 60.03. */
const size = (disposition: string, patch: Patch = {}, more: Patch = {}): Judgement =>
  ({
    characteristic: {
      id: 'driving-register',
      number: 3,
      what: 'driving spigot',
      verb: 'turn',
      feature: 'driving-register',
      from: 'h6',
      gauge: 'a micrometer',
      unit: 'mm',
      nominal: 60,
      lower: 59.98,
      upper: 60,
      found: { value: 60.03, doubt: 0.004, with: 'caliper' },
      ...patch,
    },
    disposition,
    takeOff: { from: 0.03, to: 0.05 },
    beyond: 0.03,
    fails: ['centring'],
    ...more,
  }) as unknown as Judgement;
const nothing = { found: null, what: 'driven recess', id: 'driven-register' };
const fail = (code: string, title = code, feature = 'body') => ({ code, title, feature, verdict: 'fail' }) as Finding;
const real = { asMeasured: null } as unknown as Joint;
const said = (judgements: readonly Judgement[], fails: readonly Finding[] = []) =>
  builtFindings(real, fails, judgements);
const verdict = (judgements: readonly Judgement[], fails: readonly Finding[] = []) =>
  findingOf({ findings: said(judgements, fails) }, 'built-verdict');
const one = (judgement: Judgement) => findingOf({ findings: said([judgement]) }, 'built-size');

describe('one size', () => {
  it.each([
    ['accept', 'pass', /^$/],
    ['use as it is', 'caution', /^Out by 0\.030 mm and no metal left to mend it, but every sum still passes/],
    [
      'measure again',
      'caution',
      /^Out by 0\.030 mm, which is less than its doubt of 0\.004 mm: measure again with a finer instrument \(a micrometer\)/,
    ],
    ['look into it', 'caution', /^60\.030 mm is far from 60\.000 mm/],
    ['rework', 'fail', /^Turn the driving spigot: take off 0\.030 mm to 0\.050 mm, to 59\.980 mm to 60\.000 mm\.$/],
    ['scrap', 'fail', /^Out by 0\.030 mm, no metal left to mend it, and with it centring fails\./],
  ] as const)('%s: %s', (disposition, wanted, cure) => {
    const finding = one(size(disposition));
    expect([finding.verdict, finding.value, finding.limit]).toEqual([wanted, 60.03, 60]);
    expect(finding.remedy).toMatch(cure);
    expect(finding.why).toContain(`Verdict: ${disposition}.`);
    expect(verdict([size(disposition)]).verdict).toBe(wanted);
  });

  it('out by less than nothing is told by its size; within the limits but not by its doubt', () => {
    expect(one(size('scrap', {}, { beyond: -0.03 })).remedy).toMatch(/^Out by 0\.030 mm/);
    expect(one(size('use as it is', {}, { beyond: -0.03 })).remedy).toMatch(/^Out by 0\.030 mm/);
    expect(one(size('measure again', {}, { beyond: -0.03 })).remedy).toMatch(/^Out by 0\.030 mm/);
    expect(one(size('measure again', {}, { beyond: 0 })).remedy).toMatch(/^Within the limits, but not by its doubt/);
    expect(one(size('rework', {}, { takeOff: null })).remedy).toBe('');
  });

  it('a radius, a weight, or another size', () => {
    expect(one(size('look into it', { found: { value: 30.2, doubt: 0.01, with: 'caliper' } })).remedy).toContain(
      'was a radius typed?',
    );
    const weight = {
      unit: 'g',
      nominal: 900,
      lower: 800,
      upper: 1000,
      found: { value: 1200, doubt: 1, with: 'scales' },
    };
    expect(one(size('look into it', weight)).remedy).toMatch(/^The scales and the drawing differ/);
    expect(one(size('look into it', weight)).why).toContain('1200 g +-1 g (scales), limits 800 g to 1000 g');
  });

  it.each([
    // Held against the nearer limit; a lower limit of nothing is none.
    [59.995, 59.98, 60, 'at most', 60],
    [59.985, 59.98, 60, 'at least', 59.98],
    [59.99, 59.98, 60, 'at most', 60],
    [0.001, 0, 0.05, 'at most', 0.05],
  ] as const)('%f between %f and %f: %s %f', (value, lower, upper, sense, limit) => {
    const finding = one(size('accept', { lower, upper, found: { value, doubt: 0.001, with: 'x' } }));
    expect(finding).toMatchObject({ sense, limit, verdict: 'pass' });
  });
});

describe('all of them together', () => {
  it.each([
    ['nothing measured', [size('not measured', nothing)], [], 'not assessed', 'nothing measured yet'],
    ['all right', [size('accept')], [], 'pass', 'accept'],
    ['right so far', [size('accept'), size('not measured', nothing)], [], 'caution', 'accept so far'],
    [
      'what is not a register may wait',
      [size('accept'), size('not measured', { ...nothing, id: 'driven-depth' })],
      [],
      'pass',
      'accept',
    ],
    ['one sum fails', [size('accept')], [fail('centring')], 'fail', 'sizes right, sums fail'],
    ['a size that cannot be mended', [size('use as it is')], [fail('centring')], 'fail', 'use as it is'],
    ['the worst counts', [size('accept'), size('scrap'), size('rework')], [], 'fail', 'scrap'],
    ['not so far where one is out', [size('rework'), size('not measured', nothing)], [], 'fail', 'rework'],
  ] as const)('%s: %s', (_, judgements, fails, wanted, named) => {
    const finding = verdict(judgements, fails);
    expect([finding.verdict, finding.title]).toEqual([wanted, `the finished parts: ${named}`]);
  });

  it('counts what was measured, and names what was not', () => {
    expect(verdict([size('accept'), size('not measured', nothing)]).why).toBe(
      '1 of 2 sizes measured; not yet: driven recess. With the measured numbers every sum that passed on paper still passes.',
    );
    expect(verdict([size('accept')], [fail('a', 'centring'), fail('b', 'centring'), fail('c', 'grip')]).why).toBe(
      '1 of 1 sizes measured. With the measured numbers these fail: centring, grip.',
    );
  });

  it('says what to do, the worst first', () => {
    const cure = (judgements: readonly Judgement[], fails: readonly Finding[] = []) =>
      verdict(judgements, fails).remedy;
    const all = [
      size('look into it', { what: 'bore' }),
      size('measure again', { what: 'depth' }),
      size('use as it is', { what: 'ring' }),
      size('rework'),
      size('scrap'),
    ];
    expect(cure(all)).toMatch(
      /^Out by .*fails\. Make it again, or bush it\. Turn the driving spigot.* Look into: bore\. Measure again: depth\. Out of limits but usable: ring\.$/,
    );
    expect(cure(all, [fail('centring')])).not.toContain('See:');
    expect(cure([size('accept')], [fail('centring')])).toBe('See: centring.');
    expect(cure([size('rework')], [fail('centring')])).not.toContain('See:');
    expect(cure([size('accept'), size('not measured', nothing)])).toBe(
      'Measure driven recess too: the centring hangs on it.',
    );
    expect(cure([size('not measured', nothing)])).toMatch(/^Measure the finished parts and give built/);
  });

  it('only what did not fail on paper is new', () => {
    const [a, b] = [fail('grip', 'x', 'driving'), fail('grip', 'x', 'driven')];
    const passes = { ...a, verdict: 'pass' } as Finding;
    expect(newFailures([a], [a, b])).toEqual([b]);
    expect(newFailures([passes], [a, passes])).toEqual([a]);
    expect(newFailures([], [passes])).toEqual([]);
  });
});

describe('a joint that runs out by more than can cause it', () => {
  const { joint } = judge({});
  const dial = (jointRim: Patch | null, more: Patch = {}) =>
    builtFindings(bent(joint, { asMeasured: jointRim === null ? null : { jointRim } }, more), [], []).filter(
      ({ code }) => code === 'built-runout',
    );
  it('half a total reading, or the arrow of readings with its doubt', () => {
    const [total] = dial({ tir: 0.06, doubt: 0.01, arrow: null });
    const [arrow] = dial({ tir: 0.06, doubt: 0.01, arrow: { size: 0.02, angle: 10, doubt: 0.004 } });
    if (!total || !arrow) throw new Error('nothing said');
    expect(total.value).toBeCloseTo(0.03, 9);
    expect(arrow.value).toBeCloseTo(0.02, 9);
    // Off centre is half of a total reading, and so is its doubt; an arrow has its own.
    expect((total.limit ?? 0) - (arrow.limit ?? 0)).toBeCloseTo(0.001, 9);
    const worst = (total.limit ?? 0) - 0.005;
    const at = (off: number) => dial({ tir: 2 * off, doubt: 0.01, arrow: null })[0];
    expectSaid(at(worst + 0.005) ?? total, { verdict: 'pass', value: worst + 0.005, limit: worst + 0.005 });
    expectSaid(at(worst + 0.006) ?? total, { verdict: 'caution', value: worst + 0.006, limit: worst + 0.005 });
  });
  it('a flange that was not read is told; no dial, nothing to say', () => {
    expect(dial({ tir: 0.06, doubt: 0.01, arrow: null })[0]?.why).not.toContain('give driving.runout.rim');
    expect(dial({ tir: 0.06, doubt: 0.01, arrow: null }, { driving: { runout: { rim: null } } })[0]?.why).toContain(
      'give driving.runout.rim',
    );
    expect(dial(null)).toEqual([]);
  });
});
