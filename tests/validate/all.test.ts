/** All checks together: a sound joint passes them, and what one says is well formed. */
import { describe, expect, it } from 'vitest';
import { checks } from '../../src/validate/all.ts';
import { judge } from './help.ts';

describe('the list of checks', () => {
  it('names each check once', () => {
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
    for (const { title, source } of checks) expect([title, source]).not.toContain('');
  });

  it('passes a sound joint, but never speaks for what it cannot know', () => {
    const open = judge({ duty: { torque: '280 N.m' }, wheel: { set_true: 0.15 } }).findings.filter(
      ({ verdict }) => verdict !== 'pass',
    );
    expect(open.map(({ code, verdict, why }) => `${verdict} ${code}: ${why}`)).toEqual([
      // Total readings of the rims have no direction.
      expect.stringContaining('not assessed phasing'),
      expect.stringContaining('not assessed joint-strength'),
    ]);
  });

  it('gives each finding a stable code, a title, a reason and a source, and a remedy unless it passes', () => {
    for (const finding of judge({
      duty: undefined,
      driven: { behind: undefined, register: 'none' },
      wheel: { missing: 2 },
    }).findings) {
      expect(finding.code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      for (const text of [finding.title, finding.why, finding.source]) expect(text.trim()).not.toBe('');
      expect(finding.remedy !== '').toBe(finding.verdict !== 'pass');
      expect(`${finding.why} ${finding.remedy}`).not.toMatch(/NaN|undefined|Infinity|null/);
    }
  });
});
