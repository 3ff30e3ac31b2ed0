/** Concentricity and balance, against sums by hand. mm, g.mm. */
import { describe, expect, it } from 'vitest';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import { screwMasses } from '../../src/rotor/screw-body.ts';
import { mostOneSided } from '../../src/rotor/unbalance.ts';
import { type Case, expectSaid, findingOf, judge, type Patch, prove } from './help.ts';

const noWheel = { wheel: undefined, sensor: undefined };

/*
 * The chain of the sound joint, radial: run-out of the driving flange 0.02/2 = 0.010; its register 62.04 over 61.99, 0.025; turned over and
 * indicated 0.02/2 = 0.010; the driven register 60.03 over 59.981, 0.0245; run-out of the driven flange 0.010. Worst: 0.0795. Likely:
 * sqrt(3 x 0.01^2 + 0.025^2 + 0.0245^2) = 0.03905. Allowed: 9549.3 G / n micrometres.
 */
const worst = 0.0795;
const allowed = (G: number, rpm: number) => (G * 60) / (2 * Math.PI * rpm);

const chainCases: readonly Case[] = [
  {
    what: 'G 40 at 2600 rpm',
    code: 'concentricity',
    patch: {},
    verdict: 'pass',
    value: worst,
    limit: allowed(40, 2600),
  },
  {
    what: 'at 5000 rpm (0.0764) only the likely case is good enough',
    code: 'concentricity',
    patch: { duty: { speed: '5000 rpm' } },
    verdict: 'caution',
    value: worst,
    limit: allowed(40, 5000),
    says: /^Start with the biggest, driving register fit: a closer fit \(adapter\.driving\.fit: H6\)/,
    cure: { adapter: { driving: { fit: 'H6' } } },
  },
  {
    what: 'at 12000 rpm (0.0318) not even that',
    code: 'concentricity',
    patch: { duty: { speed: '12000 rpm' } },
    verdict: 'fail',
    value: worst,
    limit: allowed(40, 12_000),
  },
  {
    // 9 mm holes round M8 instead of the register: 0.5 for 0.025.
    what: 'screws do not centre',
    code: 'concentricity',
    patch: { adapter: { driving: { register: 'none' } } },
    verdict: 'fail',
    value: worst - 0.025 + 0.5,
    limit: allowed(40, 2600),
    says: /^Start with the biggest, play of the driving screws: a register on the driving flange/,
    cure: { adapter: { driving: { register: 'auto' } } },
  },
  {
    what: 'gripped again in a three-jaw chuck, 0.08/2 instead of 0.02/2; in one chucking 0.01/2',
    code: 'concentricity',
    patch: { adapter: { setup: 'three jaw' }, duty: { speed: '3600 rpm' } },
    verdict: 'caution',
    value: worst + 0.03,
    limit: allowed(40, 3600),
    says: /^Start with the biggest, turning the part over: both registers in one chucking/,
    cure: { adapter: { setup: 'one chucking' } },
  },
  {
    what: 'nobody said how fast it turns',
    code: 'concentricity',
    patch: { duty: { speed: undefined } },
    verdict: 'not assessed',
    says: /^Give duty\.speed/,
    cure: { duty: { speed: '2600 rpm' } },
  },
];

describe('concentricity', () => {
  it.each(chainCases)('$verdict: $what', (row) => prove(row));

  it('lets bolts through both flanges play in every hole: (9 - 8 + 8.4 - 8) / 2 on each side', () => {
    const holes = { count: 6, circle: 84, diameter: 8.4 };
    const { findings } = judge(
      { ...noWheel, driving: { holes: undefined, register: 'none' }, driven: { holes: undefined, register: 'none' } },
      {
        driving: { holes },
        driven: { holes },
        adapter: { driving: { fastening: 'through' }, driven: { fastening: 'through' } },
      },
    );
    // With run-outs of 0.010 at both ends and 0.010 for the turning over.
    expectSaid(findingOf({ findings }, 'concentricity'), {
      verdict: 'fail',
      value: 0.7 + 0.7 + 0.03,
      limit: allowed(40, 2600),
    });
  });

  it('makes the unbalance of everything that rides on it: adapter and screws 0.035 off, the wheel more, half the shaft 0.0795', () => {
    const { joint, findings } = judge();
    const screws = joint.screws.reduce((sum, group) => sum + group.count * screwMasses(group).screw, 0);
    const own = joint.adapterMass.mass + screws;
    const wheel = joint.wheelMass?.mass ?? Number.NaN;
    // The wheel's seat is turned in the second set-up, and its bore of 0.12 with 0.03 either way lies over an h7 shoulder (0.04).
    const wheelOff = 0.035 + 0.01 + (0.12 + 0.03 + 0.04) / 2;
    const scatter = joint.screws.reduce(
      (sum, group) => sum + 0.01 * screwMasses(group).screw * mostOneSided(group.positions),
      0,
    );
    const said = findingOf({ findings }, 'joint-unbalance');
    expectSaid(said, {
      verdict: 'pass',
      value: own * 0.035 + wheel * wheelOff + 4500 * worst + scatter,
      limit: (own + wheel + 4500) * allowed(40, 2600),
      digits: 3,
    });
    // Both grades that ISO 21940-11 lists for drive shafts.
    const both = [16, 40].map((G) => `G ${G} allows ${((own + wheel + 4500) * allowed(G, 2600)).toFixed(0)}`);
    expect(said.why).toContain(both.join(', '));
    expect(said.why).toContain('greatest first: driving register fit');
  });

  it.each([
    { rpm: 6500, verdict: 'caution' as const },
    { rpm: 14_000, verdict: 'fail' as const },
  ])('says $verdict about that unbalance at $rpm rpm', ({ rpm, verdict }) => {
    const finding = findingOf(judge({ duty: { speed: `${rpm} rpm` } }), 'joint-unbalance');
    expect(finding.verdict).toBe(verdict);
    expect(finding.remedy).toMatch(/^Start with the biggest/);
  });

  it('says how likely it is to pass, and that nobody can be worse than the worst', () => {
    const slow = findingOf(judge(), 'centring-chance');
    expectSaid(slow, { verdict: 'pass', value: 100, limit: 95 });
    // ISO 21940-11: e = G / omega = 40 / (2600 pi / 30) = 0.1469 mm.
    expect(slow.why).toContain('0.147 mm is allowed');
    const fast = findingOf(judge({ duty: { speed: '12000 rpm' } }), 'centring-chance');
    expect(fast.value).toBeGreaterThan(5);
    expect(fast.value).toBeLessThan(95);
    expect(findingOf(judge({ duty: { speed: '12000 rpm' } }), 'centring-chance')).toEqual(fast);
    expect(findingOf(judge(), 'balance-chance').verdict).toBe('pass');
  });

  it('adds up what tilts the driven flange: 0.05 over the outside of the adapter, seen over 128; with face run-outs more', () => {
    const { joint, findings } = judge();
    const own = (0.05 / joint.adapterSpec.outside) * 128;
    expectSaid(findingOf({ findings }, 'face-runout'), { verdict: 'pass', value: own, limit: 0.1 });
    // Both faces from one chucking: 0.02 (common practice, no source), in the chain and in what is measured.
    const one = judge({ adapter: { setup: 'one chucking' } });
    expect(findingOf(one, 'face-runout').value).toBeCloseTo((0.02 / one.joint.adapterSpec.outside) * 128, 6);
    const limitOf = ({ joint: of }: typeof one) => characteristicsOf(of).find(({ id }) => id === 'face-parallel');
    expect(limitOf(one)).toMatchObject({ upper: 0.02, from: 'both faces in one chucking, common practice' });
    expect(limitOf(judge())).toMatchObject({ upper: 0.05, from: 'face parallelism, common practice' });
    const tilted = judge({ driving: { runout: { face: 0.04 } }, driven: { runout: { face: 0.03 } } });
    // Each face as read, and one graduation of the dial.
    const value = (0.05 / tilted.joint.adapterSpec.outside + 0.05 / 112 + 0.04 / 128) * 128;
    expectSaid(findingOf(tilted, 'face-runout'), { verdict: 'caution', value, limit: 0.1 });
  });

  it('says that the shaft is not counted while its mass is not known', () => {
    expect(findingOf(judge({ shaft: undefined }), 'joint-unbalance').why).toMatch(/give shaft\.mass/);
    expectSaid(findingOf(judge({ duty: { speed: undefined } }), 'joint-unbalance'), { verdict: 'not assessed' });
  });
});

/*
 * A driven flange with one of its four holes missing, at the bottom, in an adapter 20 thick. The M10 is tapped right through: 8.5 wide for
 * 19.25, and a mouth from 8.5 to 10 in 0.75. By hand, steel of 7.85: 8.571 g and 0.397 g at 54 from the axis.
 */
const density = 0.00785;
const core = { g: density * Math.PI * 4.25 ** 2 * 19.25, z: 19.25 / 2 };
const mouth = {
  g: ((density * Math.PI * 0.75) / 3) * (4.25 ** 2 + 4.25 * 5 + 5 ** 2),
  // Centroid of a frustum from its small end: h/4 (r^2 + 2 r R + 3 R^2) / (r^2 + r R + R^2).
  z: 19.25 + (0.75 / 4) * ((4.25 ** 2 + 2 * 4.25 * 5 + 3 * 5 ** 2) / (4.25 ** 2 + 4.25 * 5 + 5 ** 2)),
};
const oneHole = 54 * (core.g + mouth.g);
const lopsided: Patch = {
  ...noWheel,
  driven: {
    holes: {
      count: undefined,
      circle: undefined,
      at: [
        [54, 0],
        [0, 54],
        [-54, 0],
      ],
    },
  },
  adapter: { thickness: 20 },
};
const even: Patch = {
  driven: {
    holes: {
      at: [
        [54, 0],
        [0, 54],
        [-54, 0],
        [0, -54],
      ],
    },
  },
};
const massOf = (...patches: Patch[]) => judge(...patches).joint.adapterMass.mass;

describe('symmetry and balance by shape', () => {
  it('passes even patterns with nothing out', () => {
    const made = judge();
    expectSaid(findingOf(made, 'balance-adapter'), {
      verdict: 'pass',
      value: 0,
      limit: made.joint.adapterMass.mass * allowed(40, 2600),
      digits: 4,
    });
    expectSaid(findingOf(made, 'couple-adapter'), {
      verdict: 'pass',
      value: 0,
      limit: (made.joint.adapterMass.mass * allowed(40, 2600)) / 2,
      digits: 4,
    });
    expectSaid(findingOf(made, 'balance-wheel'), {
      verdict: 'pass',
      value: 0,
      limit: (made.joint.wheelMass?.mass ?? 0) * allowed(40, 2600),
      digits: 4,
    });
    expect(findingOf(made, 'symmetry').verdict).toBe('pass');
    expect(findingOf(made, 'symmetry').value).toBeCloseTo(0, 6);
  });

  it('names the group that spoils it', () => {
    const finding = findingOf(judge(lopsided), 'symmetry');
    expectSaid(finding, { verdict: 'caution', value: oneHole, limit: 0.05 * oneHole, digits: 3 });
    expect(finding.feature).toBe('driven-screws');
    expect(finding.why).toMatch(/driven flange holes/);
    expect(findingOf(judge(lopsided, even), 'symmetry').verdict).toBe('pass');
  });

  it('fails what one missing hole leaves at G 6.3 and 6000 rpm, and says where the metal is', () => {
    const fast = { duty: { speed: '6000 rpm', grade: 'G6.3' } };
    const made = judge(lopsided, fast);
    const finding = findingOf(made, 'balance-adapter');
    expectSaid(finding, { verdict: 'fail', value: oneHole, limit: massOf(lopsided) * allowed(6.3, 6000), digits: 3 });
    // The heavy side is where the hole is missing: at the bottom, turned by the clocking.
    const heavy = (270 + made.joint.clocking.angle) % 360;
    expect(finding.why).toMatch(/Most of it comes from: driven flange holes/);
    expect(findingOf(judge(lopsided, even, fast), 'balance-adapter').why).toMatch(/holes and flats are symmetrical/);
    const grams = (oneHole / (made.joint.adapterSpec.outside / 2)).toFixed(1);
    expect(finding.remedy).toContain(`Take ${grams} g off the rim at ${heavy} degrees`);
    expect(findingOf(judge(lopsided, even, fast), 'balance-adapter').verdict).toBe('pass');
  });

  it('splits it into the end planes by the lever rule', () => {
    const slow = { duty: { speed: '20000 rpm', grade: 'G6.3' } };
    const finding = findingOf(judge(lopsided, slow), 'couple-adapter');
    // The part runs from z = 0 to the end of the driven spigot, 20 + 2.7.
    const moment = 54 * (core.g * core.z + mouth.g * mouth.z);
    const high = moment / 22.7;
    expectSaid(finding, {
      verdict: 'fail',
      value: Math.max(high, oneHole - high),
      limit: (massOf(lopsided) * allowed(6.3, 20_000)) / 2,
      digits: 3,
    });
    expect(findingOf(judge(lopsided, even, slow), 'couple-adapter').verdict).toBe('pass');
  });

  it('weighs missing teeth: one tooth of 36 on 150 is 80.13 g.mm (geometry, reference pack example, to 1 per cent)', () => {
    // The example counts a tooth of 4.45 degrees between radial flanks, 5 high and 5 thick. 4.45 degrees of a pitch of 10.
    const wheel = {
      teeth: 36,
      missing: 1,
      outside: 150,
      height: 5,
      thickness: 5,
      ratio: 0.445,
      flanks: 'radial',
      root_radius: 0,
    };
    const made = judge(
      {
        driving: { outside: 100 },
        driven: { outside: 100, holes: { circle: 70, diameter: 8.4 }, register: { diameter: 50 } },
      },
      { driving: { register: { diameter: 40 }, holes: { circle: 64, thread: 'M6' } }, wheel },
    );
    const finding = findingOf(made, 'balance-wheel');
    expect(Math.abs((finding.value ?? 0) - 80.1283)).toBeLessThan(0.8);
    expect(finding.why).toMatch(/gap of 1 missing tooth/);
  });

  it.each(['balance-adapter', 'couple-adapter', 'balance-wheel', 'couple-wheel'])(
    'does not assess %s without a speed',
    (code) => {
      const finding = findingOf(judge({ duty: { speed: undefined } }), code);
      expectSaid(finding, { verdict: 'not assessed' });
      expect(finding.remedy).toMatch(/^Give duty\.speed/);
    },
  );

  it('weighs an adapter whose holes run into each other: four and six in line, even, so nothing is out', () => {
    const crossed = judge({ ...noWheel, adapter: { clocking: 0 } });
    expect(findingOf(crossed, 'balance-adapter').value).toBeCloseTo(0, 6);
    // Metal that two holes share is taken away once: such an adapter is heavier than one whose holes stand apart, less one hole's worth.
    const apart = judge({ ...noWheel });
    expect(crossed.joint.adapterMass.mass).toBeGreaterThan(apart.joint.adapterMass.mass);
  });
});
