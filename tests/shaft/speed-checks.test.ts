/** What the checks say of a shaft's tube. By hand. */
import { describe, expect, it } from 'vitest';
import { errorsOf, expectSaid, findingOf, judge, type Patch } from '../validate/help.ts';

const tube = (more: Patch = {}): Patch => ({
  shaft: { tube: { outside: 76.2, wall: 2.11, length: 1300, ...more } },
});
const speed = (rpm: number): Patch => ({ duty: { speed: rpm } });
/** 1.21e8 sqrt(76.2^2 + 71.98^2)/1300^2 = 7505 rpm: the handbook. The beam between pins, with the shear of S355, comes to 7479. */
const critical = (() => {
  const [E, G, area, moment] = [
    210_000,
    210_000 / 2.6,
    (Math.PI / 4) * (76.2 ** 2 - 71.98 ** 2),
    (Math.PI / 64) * (76.2 ** 4 - 71.98 ** 4),
  ];
  const m = (71.98 / 76.2) ** 2;
  // Cowper 1966, hollow circle, v = 0.3.
  const share = (7.8 * (1 + m) ** 2) / (8.8 * (1 + m) ** 2 + 23.6 * m);
  const k = Math.PI / 1300;
  const soft = 1 + (E * moment * k * k) / (share * G * area);
  const beam = (30 / Math.PI) * k * k * Math.sqrt((E * moment) / (7.85e-9 * area * soft));
  return Math.min(beam, (1.21e8 * Math.hypot(76.2, 71.98)) / 1300 ** 2);
})();

describe('critical speed of the shaft', () => {
  it('passes up to 65 %, is a caution up to 70 %, and fails beyond', () => {
    const at = (share: number) => findingOf(judge(tube(), speed(share * critical)), 'shaft-critical-speed');
    expectSaid(at(0.649), { verdict: 'pass', value: 0.649 * critical, limit: 0.65 * critical, digits: 0 });
    expect(at(0.651).verdict).toBe('caution');
    expect(at(0.699).verdict).toBe('caution');
    expect(at(0.701).verdict).toBe('fail');
  });

  it('names a length that would do, and the same tube passes at that length', () => {
    const finding = findingOf(judge(tube(), speed(5600)), 'shaft-critical-speed');
    expect(finding.verdict).toBe('fail');
    const length = Number(/Shorten it to (\d+) mm \(shaft\.tube\.length\)/.exec(finding.remedy)?.[1]);
    expect(length).toBeCloseTo(1300 * Math.sqrt((0.65 * critical) / 5600), -1);
    expect(findingOf(judge(tube({ length }), speed(5600)), 'shaft-critical-speed').verdict).toBe('pass');
  });

  it('says what it took for granted, and lists it', () => {
    const { joint, findings } = judge(tube());
    expect(findingOf({ findings }, 'shaft-critical-speed').why).toMatch(
      /taken not to give.*shaft\.tube\.near\.stiffness/,
    );
    const paths = joint.assumptions.map(({ path }) => path);
    for (const key of ['material', 'near.stiffness', 'far.stiffness', 'near.reach', 'far.reach'])
      expect(paths).toContain(`shaft.tube.${key}`);
  });

  it('counts mounts, and adapter and wheel that ride on the near one', () => {
    const nearOf = (stiffness: string) =>
      findingOf(judge(tube({ near: { stiffness } }), speed(4000)), 'shaft-critical-speed').limit ?? 0;
    expect(nearOf('5 kN/mm')).toBeLessThan(nearOf('50 kN/mm'));
    expect(nearOf('50 kN/mm')).toBeLessThan(0.65 * critical);
  });

  it('needs a speed, and says nothing without a tube', () => {
    const finding = findingOf(judge(tube(), { duty: { speed: undefined } }), 'shaft-critical-speed');
    expectSaid(finding, { verdict: 'not assessed' });
    expect(finding.remedy).toMatch(/^Give duty\.speed/);
    expect(judge().findings.filter(({ code }) => code.startsWith('shaft-'))).toEqual([]);
  });
});

describe('half the critical speed', () => {
  const at = (cruise: number | undefined, most: number) =>
    findingOf(judge(tube(), speed(most), { shaft: { cruise } }), 'shaft-half-critical');
  it('is kept out of by 8 %, where the shaft runs for long', () => {
    expect(at(0.455 * critical, 4500).verdict).toBe('pass');
    expect(at(0.465 * critical, 4500).verdict).toBe('caution');
    expect(at(0.535 * critical, 4500).verdict).toBe('caution');
    expect(at(0.545 * critical, 4500).verdict).toBe('pass');
    expect(at(0.5 * critical, 4500).remedy).toMatch(/Cruise below \d+ rpm or above \d+ rpm \(shaft\.cruise\)/);
  });

  it('without a cruising speed is judged where the highest speed settles it', () => {
    expect(at(undefined, 0.4 * critical).verdict).toBe('pass');
    expect(at(undefined, 0.5 * critical).verdict).toBe('caution');
    const open = at(undefined, 0.6 * critical);
    expectSaid(open, { verdict: 'not assessed' });
    expect(open.remedy).toMatch(/shaft\.cruise/);
  });
});

describe('firing against bending', () => {
  const at = (cruise: number | undefined) =>
    findingOf(
      judge(tube(), speed(4500), { shaft: { cruise, engine: { cylinders: 6, gears: [1, 0.7] } } }),
      'shaft-orders',
    );
  it('meets it at a third of the critical speed in direct drive with six cylinders', () => {
    expect(at(critical / 3).verdict).toBe('caution');
    expect(at(critical / 2.1).verdict).toBe('caution');
    expect(at(2000).verdict).toBe('pass');
    expect(at(2000).why).toContain(`${Math.round(critical / 3)} rpm`);
    expect(at(undefined).verdict).toBe('not assessed');
  });
});

describe('torsion and twist of the tube', () => {
  // J 674533 mm4: 600 N.m gives 33.89 MPa; over 1300 mm with G 80.77 GPa 0.820 degrees; one degree in 20 diameters allows 0.853.
  it('are the textbook ones', () => {
    const judged = judge(tube(), { duty: { torque: '600 N.m' } });
    expectSaid(findingOf(judged, 'shaft-torsion'), {
      verdict: 'pass',
      value: 33.89,
      limit: 355 / Math.sqrt(3) / 1.5,
      digits: 2,
    });
    expectSaid(findingOf(judged, 'shaft-twist'), {
      verdict: 'pass',
      value: 0.8201,
      limit: 1300 / (20 * 76.2),
      digits: 3,
    });
  });

  it('fail beyond yield, and twist only ever cautions', () => {
    const at = (torque: number) => judge(tube(), { duty: { torque: `${torque} N.m` } });
    const yields = (600 * 355) / Math.sqrt(3) / 33.89;
    expect(findingOf(at(yields / 1.45), 'shaft-torsion').verdict).toBe('caution');
    expect(findingOf(at(yields * 1.01), 'shaft-torsion').verdict).toBe('fail');
    expect(findingOf(at(yields * 1.01), 'shaft-twist').verdict).toBe('caution');
  });

  it('count half the strength of aluminium beside its weld', () => {
    const finding = findingOf(judge(tube({ material: '6061-T6' })), 'shaft-torsion');
    expect(finding.limit).toBeCloseTo(((115 / 240) * 276) / Math.sqrt(3) / 1.5, 3);
  });

  it('count the buckling of a wall like foil', () => {
    const finding = findingOf(judge(tube({ outside: 200, wall: 0.6 })), 'shaft-torsion');
    expect(finding.why).toContain('buckles');
  });

  it('need a torque', () => {
    const judged = judge(tube(), { duty: { torque: undefined } });
    for (const code of ['shaft-torsion', 'shaft-twist'])
      expectSaid(findingOf(judged, code), { verdict: 'not assessed' });
  });
});

describe('keys that cannot be', () => {
  it('are named', () => {
    const wrong = (more: Patch) => errorsOf(tube(more)).map(({ path }) => path);
    expect(wrong({ wall: 40 })).toEqual(['shaft.tube.wall']);
    expect(wrong({ near: { fork: '1 kg' } })).toEqual(['shaft.tube.near.reach']);
    expect(wrong({ near: { reach: 500 }, far: { reach: 500 } })).toEqual(['shaft.tube.length']);
    expect(wrong({ material: 'unobtainium' })).toEqual(['shaft.tube.material']);
    expect(wrong({ near: { stiffness: '20' } })).toEqual(['shaft.tube.near.stiffness']);
  });
});
