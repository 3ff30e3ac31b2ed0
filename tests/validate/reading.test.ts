/** A controller that reads wrong: what can be entered in it is no failure, however far off it is now. */
import { describe, expect, it } from 'vitest';
import { reading } from '../../src/validate/reading.ts';
import { expectSaid, findingOf, judge, type Patch } from './help.ts';

describe('60 pulses where 50 are expected: 20 %, twice what UN Regulation 39 lets a speedometer be off', () => {
  const said = (expects: Patch) =>
    findingOf({ findings: reading.run(judge({ sensor: { expects } }).joint) }, 'reading-error');

  it('is a caution where the number can be entered', () => {
    const finding = said({ pulses: 50 });
    expectSaid(finding, { verdict: 'caution', value: 20, limit: 1 });
    expect(finding.remedy).toMatch(/^Enter 60 pulses/);
  });

  it('fails where it cannot', () => {
    expectSaid(said({ pulses: 50, adjustable: false }), { verdict: 'fail', value: 20, limit: 1 });
  });
});

it('says nothing of a joint without a wheel', () => {
  expect(reading.run(judge({ wheel: undefined, sensor: undefined }).joint)).toEqual([]);
});
