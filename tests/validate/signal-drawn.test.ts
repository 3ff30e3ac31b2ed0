/** What is told of a simulated signal: each number against the others of the same finding, and against geometry. Per cent, mm */
import { describe, expect, it } from 'vitest';
import { signal } from '../../src/validate/signal.ts';
import { findingOf, judge } from './help.ts';

const wheel = (ratio: number) => signal.run(judge({ wheel: { ratio }, sensor: { gap: 1.5, pole: 2 } }).joint);

describe('the output', () => {
  it.each([0.3, 0.7])('a ratio of %f: off half by the farther end of its span', (ratio) => {
    const duty = findingOf({ findings: wheel(ratio) }, 'signal-duty');
    const [least = 0, most = 0, mean = 0] = (
      /on for ([\d.]+) % to ([\d.]+) % of a period, ([\d.]+) % on average/.exec(duty.why) ?? []
    )
      .slice(1)
      .map(Number);
    // Told to a tenth of a per cent.
    expect(Math.abs((duty.value ?? 0) - Math.max(Math.abs(least - 50), Math.abs(most - 50)))).toBeLessThan(0.06);
    expect(least).toBeLessThanOrEqual(mean);
    expect(mean).toBeLessThanOrEqual(most);
    expect(duty.limit).toBe(10);
    // Narrow teeth and wide ones stand on the two sides of half.
    expect(mean > 50).toBe(ratio < 0.5);
  });

  it('run-out alone: off centre over the radius of 89', () => {
    const jitter = findingOf({ findings: wheel(0.4) }, 'signal-jitter');
    const [off = 0, share = 0] = (/running out \(([\d.]+) mm off centre\) gives ([\d.]+) %/.exec(jitter.why) ?? [])
      .slice(1)
      .map(Number);
    expect(off).toBeGreaterThan(0);
    expect(Math.abs(share - (100 * off) / 89)).toBeLessThan(0.006);
    // One tooth's error is never less than what all of them have on average.
    const rms = Number(/root mean square ([\d.]+) %/.exec(jitter.why)?.[1]);
    expect(jitter.value ?? 0).toBeGreaterThanOrEqual(rms - 0.006);
    expect(jitter.limit).toBe(5);
  });
});

describe('the height of what is seen from the side', () => {
  const seen = (pole: number) => {
    const made = judge({
      wheel: { outside: 190, height: 5 },
      sensor: { direction: 'axial', pole, gap: 1, float: 0.1 },
    });
    return findingOf({ findings: signal.run(made.joint) }, 'signal-tooth-height');
  };
  it('a fifth of the swing may be lost, half of it may not (common practice); a larger face loses more', () => {
    const rows = [3, 5, 6, 8, 14].map(seen);
    const shares = rows.map(({ value }) => value ?? 0);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
    for (const { value, limit, verdict } of rows) {
      expect(limit).toBe(80);
      expect(verdict).toBe((value ?? 0) >= 80 ? 'pass' : (value ?? 0) >= 50 ? 'caution' : 'fail');
    }
    expect(new Set(rows.map(({ verdict }) => verdict)).size).toBe(3);
  });
});
