/** ISO 2768-2 flatness against two printed tables (an engineering reference page, a cutting group's page). */
import { describe, expect, it } from 'vitest';
import { flatness } from '../../src/standards/flatness.ts';

/** [largest size of the step, H, K, L], as both pages print them. */
const printed: readonly (readonly [number, number, number, number])[] = [
  [10, 0.02, 0.05, 0.1],
  [30, 0.05, 0.1, 0.2],
  [100, 0.1, 0.2, 0.4],
  [300, 0.2, 0.4, 0.8],
  [1000, 0.3, 0.6, 1.2],
  [3000, 0.4, 0.8, 1.6],
];

describe('flatness of ISO 2768-2', () => {
  it.each(printed)('up to %d mm', (size, h, k, l) => {
    expect((['H', 'K', 'L'] as const).map((cls) => flatness(size, cls))).toEqual(
      [h, k, l].map((value) => ({ ok: true, value })),
    );
    expect(flatness(size)).toEqual({ ok: true, value: k });
  });

  it('steps up just over the end of a step, and ends', () => {
    expect(flatness(100.001)).toEqual({ ok: true, value: 0.4 });
    for (const size of [0, -1, 3001, Number.NaN]) expect(flatness(size).ok).toBe(false);
  });
});
