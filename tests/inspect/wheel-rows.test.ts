/** Lines of the inspection record for windows, by hand, and the same limits on the workshop drawing. mm */
import { describe, expect, it } from 'vitest';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import { sheetsOf, texts } from '../drawing/shop/help.ts';
import { judge, type Patch } from '../validate/help.ts';

/** 36 windows 6 high, a rim of 5: they end at 190 / 2 - 5 = 90, begin at 84, and their middle is at 87. The service holds 0.1. */
const windows: Patch = {
  wheel: { form: 'windows', teeth: 36, ratio: 0.5, outside: 190, height: 6, rim: 5, root_radius: 0.8 },
  sensor: { direction: 'axial' },
  sheet: { tolerance: 0.1 },
};

const rowsOf = (...patches: Patch[]) =>
  characteristicsOf(judge(...patches).joint).filter(({ part }) => part === 'wheel');

describe('a wheel with windows', () => {
  it.each([
    ['wheel-rim', 5, 0.1],
    ['wheel-window-inside', 168, 0.1],
    ['wheel-window-height', 6, 0.1],
    // Straight across at 87: 2 x 87 sin(a quarter of 10 degrees).
    ['wheel-bar', 174 * Math.sin((2.5 * Math.PI) / 180), 0.1],
    ['wheel-window-corner', 0.8, 0.1],
  ])('%s', (id, nominal, off) => {
    const row = rowsOf(windows).find((one) => one.id === id);
    expect(row?.nominal).toBeCloseTo(nominal, 9);
    expect(row?.lower).toBeCloseTo(nominal - off, 9);
    expect(row?.upper).toBeCloseTo(nominal + off, 9);
    expect(row).toMatchObject({ unit: 'mm', mend: 'never', found: null, feature: 'wheel-outline' });
  });

  it('allows no corner below nothing', () => {
    const sharp = rowsOf(windows, { wheel: { root_radius: 0.05 } }).find(({ id }) => id === 'wheel-window-corner');
    expect(sharp).toMatchObject({ lower: 0, upper: 0.15000000000000002 });
  });

  it('keeps the mass last, and counts on', () => {
    const rows = rowsOf(windows);
    expect(rows.map(({ id }) => id)).toEqual([
      'wheel-bore',
      'wheel-outside',
      'wheel-rim',
      'wheel-window-inside',
      'wheel-window-height',
      'wheel-bar',
      'wheel-window-corner',
      'wheel-mass',
    ]);
    rows.forEach(({ number }, i) => {
      expect(number).toBe((rows[0]?.number ?? 0) + i);
    });
    // Open teeth have none of them.
    expect(rowsOf().map(({ id }) => id)).toEqual(['wheel-bore', 'wheel-outside', 'wheel-mass']);
  });

  it('has the same limits on the workshop drawing, each with its number in a balloon', () => {
    const { joint } = judge(windows);
    const sheets = sheetsOf(joint, 'wheel');
    const words = sheets.flatMap((sheet) => texts(sheet).map(({ text }) => text));
    for (const text of [
      '5  (4.900 to 5.100)',
      '\u00d8168  (167.900 to 168.100)',
      '6  (5.900 to 6.100)',
      '7.59  (7.490 to 7.689)',
      'R0.8  (0.700 to 0.900)',
    ])
      expect(words).toContain(text);
    const numbers = sheets.flatMap((sheet) => {
      const rings = sheet.shapes.flatMap((s) => (s.kind === 'circle' && Math.abs(s.r - 2.7) < 1e-9 ? [s.centre] : []));
      return texts(sheet).flatMap((t) =>
        rings.some((c) => Math.abs(c.x - t.at.x) < 0.01 && Math.abs(c.y - t.at.y) < 1.5) ? [Number(t.text)] : [],
      );
    });
    for (const { number } of rowsOf(windows)) expect(numbers).toContain(number);
  });
});
