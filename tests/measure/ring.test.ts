/** What a printed gauge's answer is worth: bracketed by its own steps, in both directions. Source of every expected value: geometry. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerRing, learnedAllowance, sizeByGauge } from '../../src/measure/answer-ring.ts';

const by = { side: 'driving', units: 'mm', instrument: 'caliper' } as const;

describe('a gauge that is trusted', () => {
  it('a ring of 62.1 that goes on where 62.0 does not: between the two', () => {
    expect(sizeByGauge('ring', 62.1, 0.1)).toEqual({ value: expect.closeTo(62.05, 9), doubt: 0.05 });
    expect(sizeByGauge('plug', 62.1, 0.1)).toEqual({ value: expect.closeTo(62.15, 9), doubt: 0.05 });
  });

  it('always brackets the true size, whatever it is', () => {
    const cases = fc.record({
      truth: fc.double({ min: 20, max: 200, noNaN: true }),
      step: fc.constantFrom(0.05, 0.1, 0.2),
      gauge: fc.constantFrom('ring' as const, 'plug' as const),
      from: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ truth, step, gauge, from }) => {
        // A ladder of marks that straddles the truth, and the mark that a fitter would report.
        const ladder = Array.from({ length: 9 }, (_, i) => truth + (i - 4 + from) * step);
        const fits = ladder.filter((mark) => (gauge === 'ring' ? mark >= truth : mark <= truth));
        const marked = gauge === 'ring' ? Math.min(...fits) : Math.max(...fits);
        const { value, doubt } = sizeByGauge(gauge, marked, step);
        expect(Math.abs(value - truth)).toBeLessThanOrEqual(doubt + 1e-9);
      }),
    );
  });

  it('comes back as a section that the job reads', () => {
    const answer = answerRing({ ...by, ring: '62.1', step: '0.1' });
    expect(answer.ok && answer.value.block).toContain('diameter: { value: 62.05, doubt: 0.05, proven: true }');
  });
});

describe('a size that is trusted', () => {
  it('a ring printed 0.15 too small tells 0.15 too much: allow that much more', () => {
    expect(learnedAllowance('ring', 62.15, 62, 0.3).value).toBeCloseTo(0.45, 9);
    // A plug is turned down by the allowance: one printed 0.15 too small wants less taken off.
    expect(learnedAllowance('plug', 62.15, 62, 0.3).value).toBeCloseTo(0.15, 9);
  });

  it('learns the printer to within half a step, whatever its error', () => {
    const cases = fc.record({
      error: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
      gauge: fc.constantFrom('ring' as const, 'plug' as const),
      from: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ error, gauge, from }) => {
        const [truth, step, allowance] = [62, 0.1, 0.3];
        const ladder = Array.from({ length: 21 }, (_, i) => truth + (i - 10 + from) * step);
        // Modelled with the allowance, printed with an error: a ring's bore grows by both, a plug's outside loses the allowance.
        const printed = (mark: number) => (gauge === 'ring' ? mark + allowance + error : mark - allowance + error);
        const fits = ladder.filter((mark) => (gauge === 'ring' ? printed(mark) >= truth : printed(mark) <= truth));
        const marked = gauge === 'ring' ? Math.min(...fits) : Math.max(...fits);
        const told = sizeByGauge(gauge, marked, step).value;
        // The right allowance cancels the error exactly.
        const right = gauge === 'ring' ? -error : error;
        expect(Math.abs(learnedAllowance(gauge, told, truth, allowance).value - right)).toBeLessThanOrEqual(
          step / 2 + 1e-9,
        );
      }),
    );
  });
});

describe('slips', () => {
  it.each([
    [{}, /one of the two/],
    [{ ring: '62', plug: '62' }, /one of the two/],
    [{ ring: '-5' }, /above 0/],
    [{ ring: '62', step: '9' }, /at most 2 mm/],
    [{ ring: '62', trusted: '31' }, /radius/],
    [{ ring: 'sixty' }, /Ring/],
  ])('%j', (typed, sentence) => {
    const answer = answerRing({ ...by, ...typed });
    expect(answer.ok ? '' : answer.why).toMatch(sentence);
  });
});
