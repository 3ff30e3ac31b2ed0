/** Where the torque comes from, and what the job file says of it. */
import { describe, expect, it } from 'vitest';
import { gripCheck, nothingLost } from '../../src/validate/grip.ts';
import { errorsOf, expectSaid, findingOf, judge, type Patch } from './help.ts';

const engine = { torque: '120 N.m', ratios: [3.5], converter: 2, efficiency: '95 %' };
const tyre = { load: '900 kg', radius: 320, ratio: 4.1 };
const duty = (more: Patch, given?: string): Patch => ({ duty: { torque: given, ...more } });
const design = (patch: Patch) => findingOf(judge(patch), 'design-torque');

describe('design torque', () => {
  it('is the one given', () => {
    expectSaid(design({}), { verdict: 'pass' });
    expect(design({}).why).toBe('Taken from the job: peak torque 320 N.m. The joint is sized for 320 N.m.');
    expect(design(duty({ shock: 'heavy', reversing: true }, '320 N.m')).why).toContain(
      'sized for 560 N.m (320 N.m x shock 1.75), both ways.',
    );
    expect(design(duty({ shock: 2 }, '320 N.m')).why).toContain('640 N.m (320 N.m x shock 2)');
  });

  it('is the lower of engine and tyres, factor by factor', () => {
    // 120 x 2 x 3.5 x 0.95 = 798; 900 x 9.80665 x 0.32 / 4.1 = 689.
    const slip = design(duty({ engine, tyre }));
    expect(slip.verdict).toBe('pass');
    expect(slip.why).toBe(
      'The tyres slip first: load on the driven axle 900 kg, gravity 9.807 m/s2, grip of the tyres x 1, rolling radius 320 mm, ratio to the wheels / 4.1. The engine could give 798 N.m. The joint is sized for 689 N.m.',
    );
    const pull = design(duty({ engine: { ...engine, converter: undefined }, tyre }));
    expect(pull.why).toContain(
      'The engine governs: engine torque 120 N.m, ratio x 3.5, efficiency x 0.95. The tyres would slip at 689 N.m.',
    );
    expect(findingOf(judge(duty({ engine })), 'grip-driving').why).toContain('against 798 N.m');
  });

  it('is doubted where engine and tyres give more than was given', () => {
    const low = design(duty({ engine, tyre }, '320 N.m'));
    expectSaid(low, { verdict: 'caution', value: 320, limit: 688.857, digits: 2 });
    expect(low.remedy).toContain('duty.torque: 689 N.m');
    expect(design(duty({ engine, tyre }, '700 N.m')).verdict).toBe('pass');
  });

  it('asks for what is missing', () => {
    const none = design({ duty: undefined });
    expectSaid(none, { verdict: 'not assessed' });
    for (const key of ['duty.torque', 'duty.engine', 'duty.tyre']) expect(none.remedy).toContain(key);
  });
});

it.each(['driving', 'driven'])(
  'a torque that the %s face does not hold is shown at the screws that press it',
  (side) => {
    expect(findingOf(judge(duty({}, '5000 N.m')), `grip-${side}`)).toMatchObject({
      verdict: 'fail',
      feature: `${side}-screws`,
    });
  },
);

it('a stronger class is asked of what holds the thread, the adapter, not of a flange too soft for any thread', () => {
  // DC01, 300 MPa, is weaker than any tapped part listed. 1.25 x 600 / (0.15 x 4 x 0.054) = 23.15 of 21.7 kN: 1.07 times, 12.9 pulls 1.17.
  const { joint } = judge(duty({}, '600 N.m'), { driven: { material: 'DC01' } });
  const { remedy } = findingOf({ findings: gripCheck(nothingLost).run(joint) }, 'grip-driven');
  // It goes in with a hexagon head, which no standard lists in 12.9: socket heads are (ISO 4762, from memory).
  expect(remedy).toContain('take socket heads of class 12.9 (adapter.driven.head: socket; adapter.driven.class: 12.9)');
});

describe('the keys of the duty', () => {
  it.each([
    ['duty.shock', duty({ shock: 'rough' })],
    ['duty.shock', duty({ shock: 0.5 })],
    ['duty.engine.ratios[1]', duty({ engine: { ...engine, ratios: [3.5, -1] } })],
    ['duty.engine.torque', duty({ engine: { ratios: [3] } })],
    ['duty.engine.efficiency', duty({ engine: { ...engine, efficiency: '120 %' } })],
    ['duty.engine.converter', duty({ engine: { ...engine, converter: 0.5 } })],
    ['duty.tyre.load', duty({ tyre: { radius: 320 } })],
    ['duty.tyre.radius', duty({ tyre: { ...tyre, radius: 3 } })],
    ['duty.tyre.grip', duty({ tyre: { ...tyre, grip: 9 } })],
    ['duty.slip_safety', duty({ slip_safety: 0.9 })],
    ['duty.reversing', duty({ reversing: 'yes' })],
    ['adapter.driving.face_friction', { adapter: { driving: { face_friction: 2 } } }],
  ] as const)('%s is held to its range', (path, patch) => {
    expect(errorsOf(patch).map((error) => error.path)).toEqual([path]);
  });

  it('reads units', () => {
    const { joint } = judge(
      duty({ engine: { ...engine, torque: '88.5 lbf.ft' }, tyre: { ...tyre, load: '2000 lb', radius: '13 in' } }),
    );
    expect(joint.job.duty?.engine?.torque).toBeCloseTo(119.99, 2);
    expect(joint.job.duty?.tyre?.load).toBeCloseTo(907_184.74, 2);
    expect(joint.job.duty?.tyre?.radius).toBeCloseTo(330.2, 6);
  });
});
