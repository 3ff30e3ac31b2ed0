/** How likely a joint is to pass: shares of even throws that can be told by hand. Per cent */
import { describe, expect, it } from 'vitest';
import { chance } from '../../src/validate/chances.ts';
import { concentricity } from '../../src/validate/concentricity.ts';
import { jointBalance } from '../../src/validate/joint-unbalance.ts';
import { plain } from '../../src/validate/words.ts';
import { bent, findingOf, judge } from './help.ts';

const { joint } = judge({});
const at = (speed: number) => bent(joint, { job: { duty: { speed } } });
const said = (code: string, speed: number) => findingOf({ findings: chance.run(at(speed)) }, code);

describe('the chance of passing', () => {
  it('is certain where even the worst possible is allowed, and next to nothing where almost nothing is', () => {
    for (const code of ['centring-chance', 'balance-chance']) {
      expect(said(code, 10)).toMatchObject({ verdict: 'pass', value: 100, limit: 95, unit: '%' });
      expect(said(code, 1e6)).toMatchObject({ verdict: 'fail' });
      expect(said(code, 1e6).value ?? 100).toBeLessThan(1);
    }
  });

  it('passes from nineteen of twenty on, is a caution down to half (common practice), and falls as the speed rises', () => {
    for (const code of ['centring-chance', 'balance-chance']) {
      const rows = Array.from({ length: 50 }, (_one, i) => 600 * 1.12 ** i).map((speed) => said(code, speed));
      const shares = rows.map(({ value }) => value ?? 0);
      expect([...shares].sort((a, b) => b - a)).toEqual(shares);
      for (const { value, verdict } of rows)
        expect(verdict).toBe((value ?? 0) >= 95 ? 'pass' : (value ?? 0) >= 50 ? 'caution' : 'fail');
      expect(new Set(rows.map(({ verdict }) => verdict)).size).toBe(3);
    }
  });

  it('half come out within the median that is told: at the speed that allows just that, half pass', () => {
    const median = Number(/half come out within ([\d.]+) mm/.exec(said('centring-chance', 2600).why)?.[1]);
    // e allowed = G / omega (ISO 21940-11), G 40: omega = 40 / e.
    const speed = ((40 / median) * 60) / (2 * Math.PI);
    expect(Math.abs((said('centring-chance', speed).value ?? 0) - 50)).toBeLessThan(2);
  });

  it('the worst possible is the one that the sums of the links tell, rounded as they round it', () => {
    const [shaft, whole] = [concentricity.run(joint), jointBalance.run(joint)].map(
      (findings) => findings[0]?.value ?? 0,
    );
    expect(said('centring-chance', 2600).why).toContain(`The worst possible is ${plain(shaft ?? 0, 3)} mm`);
    expect(said('balance-chance', 2600).why).toContain(`The worst possible is ${plain(whole ?? 0, 0)} g.mm`);
    expect(chance.run(bent(joint, { job: { duty: { speed: undefined } } }))).toEqual([]);
  });
});

describe('the sums that it is thrown from', () => {
  it.each([
    ['concentricity', concentricity],
    ['joint-unbalance', jointBalance],
  ] as const)('%s passes up to its limit, is a caution while the likely sum keeps it, else fails', (code, check) => {
    const finding = (speed: number) => findingOf({ findings: check.run(at(speed)) }, code);
    const { value, limit } = finding(2600);
    // What is allowed falls with the speed: so fast that the worst just meets it.
    const met = (2600 * (limit ?? 0)) / (value ?? 1);
    expect(finding(met * 0.9999).verdict).toBe('pass');
    expect(finding(met * 1.001).verdict).toBe('caution');
    expect(finding(met * 50).verdict).toBe('fail');
    expect(finding(met).value).toBeCloseTo(value ?? 0, 6);
    const open = findingOf({ findings: check.run(bent(joint, { job: { duty: { speed: undefined } } })) }, code);
    expect(open.verdict).toBe('not assessed');
  });
});
