/** A size as made is held against the limit that it is nearer to. */
import { describe, expect, it } from 'vitest';
import { judge } from './help.ts';

describe('a size as made', () => {
  // H7 on 62.01 (ISO 286-2: 30 micrometres): 62.010 to 62.040.
  it.each([
    [62.015, 62.01, 'at least'],
    [62.035, 62.04, 'at most'],
  ])('%d mm stands nearer to %d mm: %s', (value, limit, sense) => {
    const { findings } = judge({ built: { adapter: { driving: { register: { value, doubt: 0.002 } } } } });
    const [finding, ...more] = findings.filter(({ code }) => code === 'built-size');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ verdict: 'pass', sense, limit: expect.closeTo(limit, 6) });
    expect(finding?.margin).toBeCloseTo(0.005, 6);
  });
});
