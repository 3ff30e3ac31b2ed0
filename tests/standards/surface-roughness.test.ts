/** Roughness grades against the rule behind them and a second print. */
import { describe, expect, it } from 'vitest';
import {
  gradeOfRoughness,
  processReaches,
  processRoughness,
  roughnessGrades,
} from '../../src/standards/surface-roughness.ts';
import { must } from '../../src/standards/table.ts';

describe('roughness grades', () => {
  it('double from grade to grade, within the rounding of preferred numbers', () => {
    roughnessGrades.rows.forEach((row, i) => {
      const before = roughnessGrades.rows[i - 1];
      if (before) expect(row.Ra / before.Ra).toBeCloseTo(2, 1);
      // 1 um is 39.37 microinches; the inch column is a preferred series of its own, within 2 % of that.
      expect(row.microinches / (row.Ra * 39.3701)).toBeCloseTo(1, 1);
    });
  });

  // A finishing handbook's question and answer: 7.4 to 7.8 does not qualify as N9, only as N10.
  it.each([
    [7.4, 'N10'],
    [6.3, 'N9'],
    [1.6, 'N7'],
    [0.8, 'N6'],
    [12.5, 'N10'],
  ])('Ra %f is %s', (Ra, grade) => {
    expect(must(gradeOfRoughness(Ra)).grade).toBe(grade);
  });

  it('says what it does not know', () => {
    expect(gradeOfRoughness(60)).toMatchObject({ ok: false, why: expect.stringContaining('N12') });
    expect(gradeOfRoughness(0)).toMatchObject({ ok: false });
    expect(processReaches('chewed', 1)).toMatchObject({ ok: false, why: expect.stringContaining('turned or bored') });
  });
});

describe('roughness by process', () => {
  it('lies on the grades, finest before coarsest', () => {
    for (const { finest, coarsest } of processRoughness.rows) {
      expect(finest).toBeLessThan(coarsest);
      for (const Ra of [finest, coarsest]) expect(roughnessGrades.rows.some((row) => row.Ra === Ra)).toBe(true);
    }
    expect(processReaches('turned or bored', 1.6)).toEqual({ ok: true, value: true });
    expect(processReaches('drilled', 0.8)).toEqual({ ok: true, value: false });
  });
});
