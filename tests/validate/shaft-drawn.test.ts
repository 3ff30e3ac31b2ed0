/** The shaft's length and angles at their limits and just past them: by hand. The adapter is asked to be 20 mm. mm, degrees */
import { describe, expect, it } from 'vitest';
import { jointAngleCheck } from '../../src/validate/joint-angles.ts';
import { shaftLength } from '../../src/validate/shaft-length.ts';
import { shaftSpeed } from '../../src/validate/shaft-speed.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const measured = { from: 'mock-up', value: 1294, at: 'ride height' };
const ends = { adapter: 60, far: 54 };
const { joint } = judge({
  adapter: { thickness: 20 },
  duty: { speed: 3000 },
  shaft: { measured, ends, slip: { stroke: 90, engaged: 140 }, at_hand: { length: 1320, tube: 900 } },
});
/** As read from a job: each reading is a list. */
const readings = { ...measured, value: [1294] };
const of = (keys: Patch) => bent(joint, { job: { shaft: keys } });
const said = (code: string, keys: Patch) => findingOf({ findings: shaftLength.run(of(keys)) }, code);

describe('the length of the shaft', () => {
  // Doubt of tape and thickness as squares; the thickness is good to 0.13 mm.
  const doubtOf = (doubt: number) => Math.hypot(doubt, 0.13);
  const doubtful = (doubt: number, slip: Patch | undefined, more: Patch = {}) =>
    said('shaft-length', { measured: { ...readings, doubt, ...more }, slip });

  it.each([
    // A third of a stroke of 90 is drawn out: 30 before it bottoms; 20 are kept in reserve whatever happens.
    [19, 'pass'],
    [21, 'fail'],
  ] as const)('a doubt of %f beside a slip: %s', (doubt, verdict) => {
    const finding = doubtful(doubt, { stroke: 90, engaged: 140 });
    expectSaid(finding, { verdict, value: doubtOf(doubt), limit: 20, digits: 2 });
    // A third of the stroke is printed in a joint maker's catalogues.
    expect(finding.source).not.toContain('(from memory)');
  });

  it.each([
    // Without slip two millimetres are what a tape may be out; twice that, or worse, is told and no more.
    [1.9, 'pass'],
    [2.1, 'caution'],
    [4.1, 'caution'],
    [9, 'caution'],
  ] as const)('a doubt of %f without slip: %s', (doubt, verdict) => {
    const finding = doubtful(doubt, undefined);
    expectSaid(finding, { verdict, value: doubtOf(doubt), limit: 2, digits: 2 });
    if (verdict !== 'pass') expect(finding.remedy).toContain('or give shaft.slip');
  });

  it('a slip with little to spare: what is left before it bottoms or comes apart', () => {
    // Travel 16 in a stroke of 20: 2 at either end; one of 12 has nothing to spare.
    const stroke = (mm: number) =>
      said('shaft-length', {
        measured: { ...readings, at_bump: [1284], at_droop: [1300] },
        slip: { stroke: mm, engaged: 140 },
      });
    expect(stroke(20).limit).toBeCloseTo(2, 6);
    expect(stroke(12).limit).toBe(0);
    expect(stroke(12).verdict).toBe('caution');
  });

  it('a mock-up thicker or thinner than the adapter by more than 1 (common practice)', () => {
    const at = (mock_up: number) => said('mock-up-thickness', { measured: { ...readings, mock_up } });
    expectSaid(at(21), { verdict: 'pass', value: 1, limit: 1 });
    expectSaid(at(19), { verdict: 'pass', value: 1, limit: 1 });
    expectSaid(at(21.05), { verdict: 'caution', value: 1.05, limit: 1 });
    expectSaid(at(18.9), { verdict: 'caution', value: 1.1, limit: 1 });
    const codes = (keys: Patch) => shaftLength.run(of(keys)).map(({ code }) => code);
    expect(codes({ measured: { ...readings, from: 'flange', mock_up: 30 } })).not.toContain('mock-up-thickness');
    expect(codes({})).not.toContain('mock-up-thickness');
  });

  it('a tube length off the reading by more than 5, either way; by the adapter it was counted twice or not at all', () => {
    const centres = 1294 - 114;
    const tube = (off: number) => said('shaft-length@tube', { tube: { outside: 76, wall: 2, length: centres + off } });
    for (const sign of [1, -1]) {
      // A slip of 90 takes a third of its stroke off what is ordered; the reading is what counts here.
      expect(tube(0).value).toBe(0);
      expectSaid(tube(5 * sign), { verdict: 'pass', value: 5, limit: 5 });
      expectSaid(tube(5.1 * sign), { verdict: 'caution', value: 5.1, limit: 5 });
      expect(tube(21.9 * sign).why).toContain('counted twice');
      expect(tube(22.1 * sign).why).not.toContain('counted twice');
      expect(tube(18.1 * sign).why).toContain('counted twice');
      expect(tube(17.9 * sign).why).not.toContain('counted twice');
    }
  });

  it('what is cut out: a tube of 100 is left at least (common practice)', () => {
    // To order: 1294 - 30 = 1264 pushed home.
    const cut = (length: number, tube: number | undefined = 900) => said('shaft-to-cut', { at_hand: { length, tube } });
    expectSaid(cut(2064), { verdict: 'pass', value: 100, limit: 100 });
    expectSaid(cut(2064.1), { verdict: 'caution', value: 99.9, limit: 100 });
    expectSaid(cut(2164), { verdict: 'caution', value: 0, limit: 100 });
    expectSaid(cut(2164.1), { verdict: 'fail', value: -0.1, limit: 100 });
    // Just as long as it must be, nothing comes out.
    expectSaid(cut(1264), { verdict: 'pass', value: 900, limit: 100 });
    expect(cut(1263.9).remedy).toContain('A new tube, 0.1 mm longer: 900.1 mm weld to weld');
    const open = { at_hand: { length: 1320, tube: undefined } };
    expect(said('shaft-to-cut', open)).toMatchObject({ verdict: 'not assessed', why: 'Take 56.0 mm out of the tube.' });
    const centres = { at_hand: { length: 1320, tube: 900, between: 'centres' }, ends: undefined };
    expect(said('shaft-to-cut', centres).remedy).toMatch(/^Give shaft\.ends/);
    expect(shaftLength.run(of({ at_hand: undefined })).map(({ code }) => code)).not.toContain('shaft-to-cut');
  });

  it('a reading shorter than the parts in it: the shortest of all that were taken is named', () => {
    const why = said('shaft-length', {
      measured: { ...readings, value: [51, 50.5], at_bump: [49], at_droop: [52] },
    }).why;
    expect(why).toContain('A reading of 49.0 mm leaves nothing');
    expect(why).toContain("adapter 20.00 mm, spacers 0.00 mm, the shaft's own ends 114.00 mm");
  });

  it('any key that asks for a length is answered', () => {
    const asked = (keys: Patch) =>
      shaftLength
        .run(of({ measured: undefined, ends: undefined, slip: undefined, at_hand: undefined, ...keys }))
        .map(({ verdict }) => verdict);
    expect(asked({})).toEqual([]);
    for (const keys of [
      { ends },
      { slip: { stroke: 90 } },
      { at_hand: { length: 1300 } },
      { spacers: 4 },
      { travel: { bump: 50, droop: 50 } },
    ])
      expect(asked(keys)).toEqual(['not assessed']);
  });
});

describe('angles that were read across, forks that are turned', () => {
  const lying = (line: readonly Patch[], more: Patch = {}) =>
    jointAngleCheck.run(judge({ duty: { speed: 3000 }, shaft: { angles: { line, ...more } } }).joint);
  it.each([
    [[{ side: 87 }, { side: 3 }, { side: 3 }], 'side', '3.0'],
    [[{ side: -86 }, { side: 3 }, { side: 3 }], 'side', '4.0'],
    [[{ side: 3, plan: 88 }, { side: 3 }, { side: 3 }], 'plan', '2.0'],
    [[{ side: 3, plan: -88 }, { side: 3 }, { side: 3 }], 'plan', '2.0'],
  ] as const)('%o: the %s angle looks like 90 less %s', (line, which, meant) => {
    const [finding] = lying(line);
    expect(finding).toMatchObject({ code: 'angle-reading', verdict: 'fail', feature: 'shaft-1' });
    expect(finding?.why).toContain(`${which} angle`);
    expect(finding?.remedy).toContain(`or write ${meant} with the sign`);
    expect(finding?.remedy).toContain(which === 'side' ? 'the lower one' : 'one farther left');
  });

  it.each([
    // In line up to 5 degrees, either way round (common practice).
    [5, true],
    [-5, true],
    [5.1, false],
    [-5.1, false],
    [175, true],
    [180, true],
    [-176, true],
    [174.9, false],
    [90, false],
  ] as const)('forks turned by %f: the difference of the angles is told: %s', (yokes, isTold) => {
    const codes = lying([{ side: 3 }, { side: 6 }, { side: 3 }], { joints: [{}, { yokes: `${yokes} deg` }] }).map(
      ({ code }) => code,
    );
    expect(codes.includes('angle-difference')).toBe(isTold);
  });

  it('a joint of constant velocity takes no part in the difference, nor needs its needles rolled', () => {
    const kind = { kind: 'constant velocity', most: '20 deg' };
    const findings = (joints: readonly Patch[]) =>
      lying([{ side: 3 }, { side: 3 }, { side: 6 }, { side: 3 }], { joints });
    const said = (joints: readonly Patch[]) => findings(joints).filter(({ code }) => code === 'angle-difference');
    expect(said([kind, {}, {}]).map(({ feature }) => feature)).toEqual(['joint-2']);
    expect(said([{}, {}, kind]).map(({ feature }) => feature)).toEqual(['joint-1']);
    expect(said([{}, kind, {}])).toEqual([]);
    expect(said([{}, {}, {}])).toEqual([]);
    const needles = findings([kind, {}, {}]).filter(({ code }) => code === 'needle-angle');
    expect(needles.map(({ feature }) => feature)).toEqual(['joint-2', 'joint-3']);
  });
});

describe('what a wedge mends', () => {
  const left = (shim: Patch) =>
    findingOf(
      judge({
        duty: { speed: 3000 },
        shaft: { angles: { line: [{ side: 0 }, { side: 5 }, { side: 2 }], torsional: 100, shim } },
      }),
      'train-residual',
    );
  it('the rule of the handbooks fails past 500 rad/s2, a limit of one\u2019s own at once', () => {
    const at = (side: number, torsional: number | undefined) =>
      findingOf(
        judge({
          duty: { speed: 3000 },
          shaft: { angles: { line: [{ side: 0 }, { side }, { side: 2 }], torsional, shim: { wedge: 0 } } },
        }),
        'train-residual',
      );
    // Joints at 5 and 3: 481; at 5.2 and 3.2: (100 pi)^2 (5.2^2 - 3.2^2) (pi/180)^2 = 505.
    expect(at(5, undefined)).toMatchObject({ verdict: 'caution', limit: 400 });
    expect(at(5.2, undefined).verdict).toBe('fail');
    expect(at(5, 470).verdict).toBe('fail');
    expect(at(5, undefined).source).toContain('(from memory)');
    expect(at(5, 470).source).not.toContain('(from memory)');
  });

  it('is not told where it would leave the train less even', () => {
    // Joints at 8 and 6 leave sqrt(64 - 36) = 5.29 degrees; two degrees of wedge would even them out, at 8 degrees each: far beyond the
    // 5.8 degrees that 1000 rad/s2 allow at 3000 rpm, and flattening the one leaves more.
    const steep = findingOf(
      judge({ duty: { speed: 3000 }, shaft: { angles: { line: [{ side: 0 }, { side: 8 }, { side: 2 }] } } }),
      'train-residual',
    );
    expect(steep.why).toContain('As uneven as one joint at 5.29 degrees');
    expect(steep.remedy).toContain('nearer to one line first');
    expect(steep.remedy).not.toMatch(/instead of/);
    expect(left({}).remedy).toMatch(/^Wedge of 2 degrees.* leaves 0\.00 degrees instead of 4\.00 degrees/);
  });

  it('does not hold the metal back, though it is past the limit; what it cannot mend does', () => {
    // Joints at 5 and 3: sqrt(25 - 9) = 4 degrees, (100 pi)^2 (4 degrees)^2 = 481 rad/s2; two degrees of wedge leave none.
    const value = (100 * Math.PI) ** 2 * ((4 * Math.PI) / 180) ** 2;
    expectSaid(left({}), { verdict: 'caution', value, limit: 100, digits: 3 });
    expectSaid(left({ wedge: 0 }), { verdict: 'fail', value, limit: 100, digits: 3 });
  });
});

describe('half the critical speed and the firing of the engine', () => {
  const tubed = judge({
    duty: { speed: 4000 },
    shaft: { tube: { outside: 76.2, wall: 2.11, length: 1300 }, engine: { cylinders: 6, gears: [1, 0.8] } },
  }).joint;
  const run = (shaft: Patch, duty: Patch = {}) => shaftSpeed.run(bent(tubed, { job: { shaft, duty } }));
  const half = (cruise: number | undefined, speed: number | undefined = 4000) =>
    findingOf({ findings: run({ cruise }, { speed }) }, 'shaft-half-critical');
  const [from, to] = (/keep out of (\d+) rpm to (\d+) rpm/.exec(half(100).why) ?? []).slice(1).map(Number) as [
    number,
    number,
  ];
  const critical = (findingOf({ findings: run({}) }, 'shaft-critical-speed').limit ?? 0) / 0.65;

  it('a band of 8 % on both sides (common practice)', () => {
    expect(from).toBeCloseTo(0.92 * (critical / 2), -1);
    expect(to).toBeCloseTo(1.08 * (critical / 2), -1);
    expect([from - 2, from + 2, to - 2, to + 2].map((cruise) => half(cruise).verdict)).toEqual([
      'pass',
      'caution',
      'caution',
      'pass',
    ]);
    expect(half(from - 2).why).toContain('below it');
    expect(half(to + 2).why).toContain('above it');
    expect(half(to - 2).remedy).toMatch(/^Cruise below \d+ rpm or above \d+ rpm/);
  });

  it('forks and mounts that were not given are taken for granted, and told', () => {
    const why = (tube: Patch) => findingOf({ findings: run({ tube }) }, 'shaft-critical-speed').why;
    expect(why({})).toContain('as a beam between pins');
    expect(why({})).toContain('The forks are taken as more of the tube');
    const forked = why({ near: { reach: 150, neck: 35, fork: 2500 } });
    expect(forked).toContain('as a beam with its forks');
    expect(forked).not.toContain('The forks are taken');
    expect(forked).toContain('Both ends are taken not to give');
  });

  it('of handbook and beam the lower counts', () => {
    const { why } = findingOf({ findings: run({}) }, 'shaft-critical-speed');
    const [book = 0, beam = 0] = (/: (\d+) rpm by the handbook .*?, (\d+) rpm as a beam/.exec(why) ?? [])
      .slice(1)
      .map(Number);
    expect(Math.abs(Math.min(book, beam) - critical)).toBeLessThan(1);
    expect(beam).toBeGreaterThan(0);
  });

  it('a shaft that only passes through it: where it runs for long is asked', () => {
    expect(half(undefined, to + 2).remedy).toMatch(/^Give shaft\.cruise/);
    expect(half(undefined, to - 2).verdict).toBe('caution');
    expect(half(undefined, from - 2).verdict).toBe('pass');
  });

  it('six cylinders fire three times a turn: in direct drive the bending is met at a third of the critical speed', () => {
    const orders = (cruise: number | undefined, speed = 9000) =>
      findingOf({ findings: run({ cruise }, { speed }) }, 'shaft-orders');
    const met = critical / 3;
    expect(orders(undefined).why).toContain('fires 3 times a turn');
    expect(orders(undefined).why).toContain(`${met.toFixed(0)} rpm in direct drive`);
    // In a gear of 0.8 the engine turns 0.8 times as fast: 1.25 times the shaft speed.
    expect(orders(undefined).why).toContain(`${(met / 0.8).toFixed(0)} rpm in a gear of 0.8`);
    expect(orders(undefined).verdict).toBe('not assessed');
    const at = [0.915, 0.925, 1.075, 1.085].map((share) => orders(share * met).verdict);
    expect(at).toEqual(['pass', 'caution', 'caution', 'pass']);
    expect(orders(undefined, met - 1).why.match(/never reached/g)).toHaveLength(2);
    expect(orders(undefined, met + 1).why.match(/never reached/g)).toHaveLength(1);
    expect(run({ engine: undefined }).map(({ code }) => code)).not.toContain('shaft-orders');
  });
});
