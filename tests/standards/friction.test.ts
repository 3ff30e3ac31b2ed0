/** Friction classes, joint faces and tightening factors against published figures. */
import { describe, expect, it } from 'vitest';
import { tighteningFactorOf } from '../../src/formulas/preload.ts';
import {
  designFriction,
  faceFriction,
  slipClasses,
  threadFriction,
  threadFrictionClass,
} from '../../src/standards/friction.ts';
import { must } from '../../src/standards/table.ts';
import { tighteningFactor, tighteningFactors, torqueFactor, torqueFactors } from '../../src/standards/tightening.ts';

describe('friction of threads', () => {
  it.each([
    ['A', 0.04, 0.1],
    ['B', 0.08, 0.16],
    ['C', 0.14, 0.24],
    ['D', 0.2, 0.35],
    ['E', 0.3, null],
  ])('class %s is %f to %f (VDI 2230, as an online reference page prints it)', (cls, from, to) => {
    expect(must(threadFrictionClass(cls))).toMatchObject({ from, to });
  });

  it('overlaps from class to class, so no friction falls between two', () => {
    const { rows } = threadFriction;
    for (let at = 1; at < rows.length; at++) expect(rows[at]?.from).toBeLessThan(rows[at - 1]?.to ?? 0);
  });

  it('lists its classes on a miss', () => {
    expect(threadFrictionClass('F')).toEqual({ ok: false, why: expect.stringContaining('A, B, C, D, E') });
  });
});

describe('friction of joint faces', () => {
  it('designs within a published band, never with clean laboratory figures', () => {
    for (const pair of ['steel on steel', 'steel on aluminium'] as const) {
      const published = faceFriction.rows.filter((row) => row.pair === pair && row.use === 'design');
      const least = Math.min(...published.map(({ from }) => from));
      const most = Math.max(...published.map(({ to }) => to));
      for (const oiled of [true, false]) {
        const { mu, band, memory } = must(designFriction(pair, oiled));
        expect(mu).toBeGreaterThanOrEqual(band.from);
        expect(mu).toBeLessThanOrEqual(band.to);
        expect(band.from).toBeGreaterThanOrEqual(least);
        expect(band.to).toBeLessThanOrEqual(most);
        expect(memory).toBe(true);
      }
      expect(must(designFriction(pair, true)).mu).toBeLessThan(must(designFriction(pair, false)).mu);
    }
  });

  it('has none for aluminium on aluminium', () => {
    expect(designFriction('aluminium on aluminium', false)).toEqual({
      ok: false,
      why: expect.stringContaining('dowel'),
    });
  });

  it('has the four slip classes of EN 1993-1-8 (published tables)', () => {
    expect(slipClasses.rows.map(({ cls, mu }) => [cls, mu])).toEqual([
      ['A', 0.5],
      ['B', 0.4],
      ['C', 0.3],
      ['D', 0.2],
    ]);
  });
});

describe('tightening', () => {
  it.each(tighteningFactors.rows.filter(({ memory }) => memory !== true))(
    '$method: the band covers (1 + x)/(1 - x) of its scatter',
    ({ scatterFrom, scatterTo, alphaFrom, alphaTo }) => {
      expect(alphaFrom).toBeCloseTo(tighteningFactorOf(scatterFrom / 100), 1);
      expect(alphaTo).toBeGreaterThan(tighteningFactorOf(scatterTo / 100) - 0.05);
    },
  );

  it('counts with 2.0 for a torque wrench, as a published example does for a click wrench', () => {
    expect(must(tighteningFactor('torque wrench'))).toMatchObject({
      alphaA: 2,
      band: { from: 1.6, to: 2 },
      memory: false,
    });
    expect(must(tighteningFactor('Yield or Angle')).memory).toBe(true);
  });

  it('guesses a slip', () => {
    expect(tighteningFactor('torque wrenhc')).toEqual({
      ok: false,
      why: expect.stringContaining('did you mean torque wrench?'),
    });
  });

  it('gets worse from row to row', () => {
    const { rows } = tighteningFactors;
    for (let at = 1; at < rows.length; at++) {
      expect(rows[at]?.alphaTo).toBeGreaterThan(rows[at - 1]?.alphaTo ?? 0);
      expect(rows[at]?.scatterTo).toBeGreaterThan(rows[at - 1]?.scatterTo ?? 0);
    }
  });

  it("has the K of Shigley's table 8-15", () => {
    expect(torqueFactors.rows.map(({ K }) => K)).toEqual([0.3, 0.2, 0.18, 0.16, 0.12]);
    expect(must(torqueFactor('Zinc plated')).K).toBe(0.2);
  });
});
