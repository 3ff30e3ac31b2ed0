/** A chain in words: amounts that add up to the number that is told, the same links as in its picture, and the same thing to do first. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Link } from '../../src/formulas/chain.ts';
import { addingUp, firstToDo, sharesOf, widestFirst } from '../../src/formulas/chain-shares.ts';
import { balanceToDraw } from '../../src/products/balance-to-draw.ts';
import { chainsToDraw } from '../../src/products/chain-to-draw.ts';
import { balanceGrade } from '../../src/standards/balance-grades.ts';
import { must } from '../../src/standards/table.ts';
import { asDesigned, listed, startWith } from '../../src/validate/chain-words.ts';
import { shipped } from '../presets/shipped.ts';
import { findingOf, type Judged, judge } from './help.ts';

const link = (what: string, most: number, more: Partial<Link> = {}): Link => ({
  id: what,
  what,
  least: 0,
  most,
  angle: null,
  doubt: 0,
  source: '',
  memory: false,
  cure: `mend ${what}`,
  ...more,
});

/** Links of a sentence that lists them: its name and its amount in mm. Commas inside brackets part nothing. */
function told(why: string): { readonly what: string; readonly amount: number }[] {
  const [, list = ''] = /sum of the links: (.*?[^\d])\. /.exec(`${why} `) ?? [];
  return list.split(/, (?![^(]*\))/).map((part) => {
    const [, what = part, amount = 'none'] = /^(.*?) (-?\d+\.\d{3}) mm\b/.exec(part) ?? [];
    return { what, amount: Number(amount) };
  });
}

const sum = (amounts: readonly number[]) => amounts.reduce((total, one) => total + one, 0);

describe('amounts of a list', () => {
  it('add up to the rounded sum: three of 0.0104 are 0.031, so one of them is told as 0.011', () => {
    expect(addingUp([0.0104, 0.0104, 0.0104], 3)).toEqual([0.011, 0.01, 0.01]);
    expect(addingUp([0.02, 0.01, -0.004], 3)).toEqual([0.02, 0.01, -0.004]);
    expect(addingUp([], 3)).toEqual([]);
  });

  it('add up whatever they are, each within one of its last digit', () => {
    const parts = fc.array(fc.double({ min: -0.3, max: 0.5, noNaN: true }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(parts, fc.integer({ min: 0, max: 3 }), (list, decimals) => {
        const step = 10 ** -decimals;
        const rounded = addingUp(list, decimals);
        // Half a step either way is all that rounding the sum may do.
        expect(Math.abs(sum(rounded) - sum(list))).toBeLessThanOrEqual(step * 0.5 + 1e-8);
        rounded.forEach((one, i) => {
          expect(Math.abs(one - (list[i] as number))).toBeLessThanOrEqual(step + 1e-8);
        });
      }),
    );
  });

  it('say what was read and what is doubt of the dial: a run-out of 0.010 that is good to 0.013', () => {
    const links = [link('fit', 0.02), link('run-out', 0.01, { angle: 90, doubt: 0.013 })];
    expect(listed(sharesOf(links))).toBe(
      'run-out 0.023 mm (0.010 read towards 90 degrees, 0.013 doubt of the dial), fit 0.020 mm',
    );
  });

  it('say how much of an arrow counts: 30 and 40 at right angles give 18 and 32 of their 50', () => {
    const links = [link('east', 0.03, { angle: 0, doubt: 0.01 }), link('north', 0.04, { angle: 90 })];
    expect(listed(sharesOf(links))).toBe(
      'north 0.032 mm (0.032 of the 0.040 towards 90 degrees), ' +
        'east 0.028 mm (0.018 of the 0.030 read towards 0 degrees, 0.010 doubt of the dial)',
    );
  });

  it('say which arrow pulls back', () => {
    const links = [link('on', 0.05, { angle: 0 }), link('back', 0.02, { angle: 180, doubt: 0.005 })];
    expect(listed(sharesOf(links))).toBe(
      'on 0.050 mm towards 0 degrees, ' +
        'back -0.015 mm (0.020 read towards 180 degrees, pulls back by 0.020, 0.005 doubt of the dial)',
    );
  });
});

describe('what to do first', () => {
  const links = [link('fit', 0.02, { cure: '' }), link('run-out', 0.03), link('setting', 0.01)];

  it('is the widest link that something is left to do about', () => {
    expect(firstToDo(sharesOf(links))?.link.what).toBe('run-out');
    expect(startWith(links)).toBe('Start with the biggest, run-out: mend run-out.');
    const trued = links.map((one) => (one.what === 'run-out' ? { ...one, cure: '' } : one));
    expect(startWith(trued)).toBe(
      'Start with setting: mend setting. Nothing is left to do about what is bigger: run-out, fit.',
    );
    expect(startWith(links.map((one) => ({ ...one, cure: '' })))).toBe('');
  });

  it('takes the one that comes first in the chain where two are equal', () => {
    expect(widestFirst(sharesOf([link('a', 1), link('b', 2), link('c', 2)])).map(({ link: { what } }) => what)).toEqual(
      ['b', 'c', 'a'],
    );
  });
});

describe('what a joint keeps as designed', () => {
  // 0.1 mm at 2600 rpm goes 0.1 x 2 pi x 2600 / 60 = 27.2 mm/s; 16 mm/s are reached at 16 x 60 / (2 pi x 0.1) = 1527.9 rpm.
  it('is the finest grade at its speed, and the speed up to which it keeps the grade that is asked for', () => {
    expect(asDesigned(0.1, 2600, must(balanceGrade('G16')))).toBe(
      'As designed it keeps G 40 at 2600 rpm (duty.grade: G40), and G 16 up to 1527 rpm.',
    );
  });

  it('is none where it goes faster than 4000 mm/s, the coarsest of ISO 21940-11: 20 mm at 2600 rpm go 5445', () => {
    expect(asDesigned(20, 2600, must(balanceGrade('G40')))).toMatch(
      /^As designed it keeps no grade of ISO 21940-11 at 2600 rpm/,
    );
  });

  it('is a finding of the joint: 0.0795 mm at 5000 rpm goes 41.6 mm/s, and keeps G 40 up to 4804 rpm', () => {
    const finding = findingOf(judge({ duty: { speed: '5000 rpm' } }), 'concentricity');
    expect(finding.remedy).toContain(
      'As designed it keeps G 100 at 5000 rpm (duty.grade: G100), and G 40 up to 4804 rpm.',
    );
  });

  it('is told with what is left to do at the place, where nothing is left on the drawing', () => {
    // A micrometer on both flanges, the closest fits, one chucking, and run-outs that the dial cannot tell from nothing.
    const flat = [0.001, 0, -0.001, 0, 0.001, 0, -0.001, 0];
    const register = (value: number) => ({ diameter: { value, instrument: 'micrometer', doubt: undefined } });
    const done = judge({
      duty: { speed: '20000 rpm' },
      driving: { register: register(62), runout: { rim: flat, face: flat } },
      driven: { register: { ...register(60), fit: undefined }, runout: { rim: flat, face: flat } },
      adapter: { setup: 'one chucking', driving: { fit: 'H6' }, driven: { fit: 'h5' } },
    });
    const finding = findingOf(done, 'concentricity');
    expect(finding.verdict).not.toBe('pass');
    expect(finding.remedy).toMatch(
      /^Have the shaft balanced in place: nothing is left to do about any of its links\. As designed it keeps G \d+ at 20000 rpm/,
    );
    expect(finding.remedy).not.toMatch(/micrometer|closer fit|one chucking/);
    expect(chainsToDraw(done.joint).find(({ name }) => name === 'chain-shaft')?.input.start).toBeNull();
  });
});

describe('a number that words and picture both tell', () => {
  // Half of 0.030 +- 0.005: 0.015 read, 0.0025 in doubt; in binary 0.0175 - 0.0025 is just below 0.015.
  const runout = link('run-out', 0.0175, { doubt: 0.0025 });
  it('is half of what the dial showed, not what rounding leaves of the sum', () => {
    expect(listed(sharesOf([runout]))).toMatch(/\(0\.015 read, 0\.0025 doubt of the dial\)/);
  });

  it.each(shipped.map(({ base, joint, findings }) => [base, joint, findings] as const))('%s', (_, joint, findings) => {
    const pulls = balanceToDraw(joint)?.pulls ?? [];
    const why = findings.find(({ code }) => code === 'joint-unbalance')?.why ?? '';
    const words = pulls.filter(({ what }) => why.includes(`${what} `));
    for (const { what, told: amount } of words) expect(why).toContain(`${what} ${amount}`);
    if (pulls.length > 0) {
      const total = pulls.reduce((all, { worst }) => all + worst, 0);
      expect(pulls.reduce((all, one) => all + (one.told ?? Number.NaN), 0)).toBe(Math.round(total));
    }
  });
});

/** Two flanges read with a dial, neither along nor across the other. */
const read = judge({
  driving: { runout: { rim: [0.008, 0.01, 0.006, -0.001, -0.008, -0.01, -0.006, 0.001], face: 0.02 } },
  driven: { runout: { rim: [0.02, 0.009, -0.004, -0.012, -0.018, -0.009, 0.003, 0.012], face: 0.02 } },
});

const jobs: readonly (readonly [string, Judged])[] = [
  ['dial readings on both rims', read],
  ['the sound joint', judge()],
  ...shipped.map((job) => [job.base, job] as const),
];

describe.each(jobs)('words and pictures of %s', (_, judged) => {
  const pictures = chainsToDraw(judged.joint);

  it.each([
    ['concentricity', 'chain-shaft'],
    ['face-runout', 'chain-lean'],
    ['wheel-runout', 'chain-teeth'],
  ])('%s lists the links of %s with the same amounts, which add up to its number', (code, name) => {
    const picture = pictures.find((one) => one.name === name);
    if (code === 'wheel-runout' && !judged.joint.wheelSpec) {
      expect(picture).toBeUndefined();
      return;
    }
    const finding = findingOf(judged, code);
    const list = told(finding.why);
    expect(list.length).toBeGreaterThan(0);
    expect(sum(list.map(({ amount }) => amount)).toFixed(3)).toBe((finding.value ?? Number.NaN).toFixed(3));
    expect(list).toEqual(picture?.input.rows.map(({ what, said }) => ({ what, amount: Number(said) })));
  });

  it('start with the same link', () => {
    for (const [code, name] of [
      ['concentricity', 'chain-shaft'],
      ['face-runout', 'chain-lean'],
    ] as const) {
      const { rows = [], start = null } = pictures.find((one) => one.name === name)?.input ?? {};
      const first = rows.find(({ number }) => number === start?.number);
      expect(findingOf(judged, code).improve).toContain(`${first?.what}: ${start?.cure}.`);
    }
    const pulls = balanceToDraw(judged.joint);
    const first = pulls?.pulls[(pulls.start?.number ?? 0) - 1];
    expect(findingOf(judged, 'joint-unbalance').improve).toContain(`${first?.what}: ${pulls?.start?.cure}.`);
  });
});
