/** Thickness, the print bed, where numbers come from, and what is not judged. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import { type Case, expectSaid, findingOf, judge, prove } from './help.ts';

const noWheel = { wheel: undefined, sensor: undefined };

const cases: readonly Case[] = [
  {
    what: 'a head of 8.6 and 0.8 d under it: 15',
    code: 'thickness',
    patch: { adapter: { thickness: 15 } },
    verdict: 'pass',
    value: 15,
    limit: 15,
  },
  {
    what: 'the same in 10',
    code: 'thickness',
    patch: { adapter: { thickness: 10 } },
    verdict: 'fail',
    value: 10,
    limit: 15,
    says: /^Make the adapter 5\.00 mm thicker \(adapter\.thickness: 15 mm\)/,
    cure: { adapter: { thickness: 15 } },
  },
  {
    what: '210 less 178',
    code: 'fits-the-bed',
    patch: { print: { bed: [250, 210] } },
    verdict: 'pass',
    value: 32,
    limit: 5,
  },
  {
    what: '180 less 178',
    code: 'fits-the-bed',
    patch: { print: { bed: [180, 180] } },
    verdict: 'caution',
    value: 2,
    limit: 5,
    says: /^Print it elsewhere/,
    cure: { print: { bed: [250, 210] } },
  },
  {
    what: 'larger than the bed',
    code: 'fits-the-bed',
    patch: { print: { bed: [150, 150] } },
    verdict: 'caution',
    value: -28,
    limit: 5,
  },
];

describe('thickness and the print bed', () => {
  it.each(cases)('$code, $verdict: $what', (row) => prove(row));

  it('says which demand governs', () => {
    expect(findingOf(judge({ adapter: { thickness: 10 } }), 'thickness').why).toBe(
      'The least that works is 15.00 mm, set by: M8 head and the web under it (driving).',
    );
  });
});

describe('where the numbers come from', () => {
  const whole = {
    driven: { outside: undefined, thickness: undefined, register: undefined, holes: undefined, runout: undefined },
  };
  const from = (id: string, more: object = {}) =>
    judge({ ...noWheel, adapter: { thickness: 30 } }, whole, { driven: { from: id, thickness: 9, ...more } });

  it('passes a pattern from a source that was read, but says that it was not measured', () => {
    const at = [
      [42, 0],
      [21, 36.373],
      [-21, 36.373],
      [-42, 0],
      [-21, -36.373],
      [21, -36.373],
    ];
    const { joint, findings } = from('DIN100-shaft', { register: { depth: 2.5 }, holes: { at, diameter: 8.1 } });
    expect(joint.driven.memory).toEqual([]);
    expectSaid(findingOf({ findings }, 'pattern-not-measured'), { verdict: 'pass' });
  });

  it('cautions where it rests on memory, names the keys, and passes once they are measured', () => {
    const { findings, joint } = from('DIN100-shaft');
    const finding = findingOf({ findings }, 'rests-on-memory');
    expectSaid(finding, { verdict: 'caution' });
    expect(joint.driven.memory.length).toBeGreaterThan(0);
    for (const path of joint.driven.memory) expect(finding.why).toContain(path);
    expect(finding.remedy).toMatch(/under driven/);
  });

  it('says nothing about a flange that was measured', () => {
    expect(
      judge().findings.filter(({ code }) => code === 'rests-on-memory' || code === 'pattern-not-measured'),
    ).toEqual([]);
  });
});

describe('what is not judged', () => {
  it('says so, with the torque where it is known', () => {
    const finding = findingOf(judge(), 'joint-strength');
    expectSaid(finding, { verdict: 'not assessed' });
    expect(finding.why).toContain('320 N.m');
    expect(findingOf(judge({ duty: { torque: undefined } }), 'joint-strength').remedy).toMatch(/^Give duty\.torque/);
  });
});
