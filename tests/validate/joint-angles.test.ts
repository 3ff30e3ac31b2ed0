/** Joint angles: each check by hand sums at 3000 rpm, slips of sign and of reading, shims against a plain grid, the swing of the signal. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/core.ts';
import { residualAngle } from '../../src/formulas/joint-train.ts';
import { directionOf } from '../../src/formulas/shaft-direction.ts';
import { shaftLines } from '../../src/report/shaft-lines.ts';
import { studyAngles } from '../../src/rotor/shaft-angles.ts';
import { studyShims } from '../../src/rotor/shaft-shims.ts';
import { errorsOf, expectSaid, findingOf, judge, type Patch } from './help.ts';

const rad = Math.PI / 180;
/** rad/s2 at 3000 rpm for an angle in degrees: (100 pi)^2 b^2. */
const acceleration = (degrees: number): number => (100 * Math.PI) ** 2 * (degrees * rad) ** 2;
/** Angle for an acceleration at 3000 rpm: 400 gives 3.648, 1000 gives 5.767 degrees. */
const angleFor = (a: number): number => Math.sqrt(a) / (100 * Math.PI) / rad;

const lying = (sides: readonly number[], more: Patch = {}, shaft: Patch = {}): Patch => ({
  duty: { speed: 3000 },
  shaft: { angles: { line: sides.map((side) => ({ side })), ...more }, ...shaft },
});

describe('the train as a whole', () => {
  it('3, 6, 3: both joints at 3 degrees, and they cancel', () => {
    const judged = judge(lying([3, 6, 3]));
    expectSaid(findingOf(judged, 'train-residual'), { verdict: 'pass', value: 0, limit: 400 });
    expectSaid(findingOf(judged, 'joint-angle-1'), { verdict: 'pass', value: 3, limit: angleFor(1000) });
    expectSaid(findingOf(judged, 'angle-difference'), { verdict: 'pass', value: 0, limit: 1 });
    expectSaid(findingOf(judged, 'needle-angle', 'joint 2'), { verdict: 'pass', value: 3, limit: 1 });
  });

  it('bends up and down lie in one plane, a bend up and one aside a quarter turn apart', () => {
    const why = (patch: Patch) => findingOf(judge(patch), 'angle-difference').why;
    expect(why(lying([0, 5, 2]))).not.toContain('planes');
    const line = [{ side: 0 }, { side: 5 }, { side: 5, plan: 5 }];
    expect(why(lying([], { line }))).toContain('Their planes lie 90 degrees apart');
  });

  it('0, 5, 2: joints at 5 and 3 leave 4 degrees; the wedge that mends it turns the far end to 0', () => {
    const judged = judge(lying([0, 5, 2]));
    const finding = findingOf(judged, 'train-residual');
    expectSaid(finding, { verdict: 'caution', value: acceleration(4), limit: 400 });
    expect(finding.remedy).toMatch(/Wedge of 2 degrees, the near end \(nose\) of the driven shaft down/);
    expect(finding.remedy).toContain('leaves 0.00 degrees');
    // The cure, applied.
    expectSaid(findingOf(judge(lying([0, 5, 0])), 'train-residual'), { verdict: 'pass', value: 0, limit: 400 });
    expect(shaftLines(judged.joint, 'mm').find(({ label }) => label === 'Wedge')?.value).toBe('2 degrees, nose down');
  });

  it('fails where no wedge is allowed', () => {
    const finding = findingOf(judge(lying([0, 6, 2], { shim: { wedge: 0 } })), 'train-residual');
    expectSaid(finding, { verdict: 'fail', value: acceleration(Math.sqrt(20)), limit: 400 });
  });

  it('a limit of its own, and a pass that the doubt of the readings puts in question', () => {
    const finding = findingOf(judge(lying([0, 4, 2.2], { torsional: 700, doubt: 0.1 })), 'train-residual');
    expectSaid(finding, { verdict: 'pass', value: acceleration(Math.sqrt(4 ** 2 - 1.8 ** 2)), limit: 700 });
    const near = findingOf(judge(lying([0, 4, 2.2], { torsional: 700, doubt: 1 })), 'train-residual');
    expect(near.verdict).toBe('caution');
    expect(near.remedy).toContain('inclinometer');
  });

  it('a constant-velocity joint takes no part', () => {
    const joints = [{ kind: 'constant velocity', most: 12 }, { kind: 'universal' }];
    const judged = judge(lying([0, 8, 5.5], { joints }));
    expectSaid(findingOf(judged, 'train-residual'), { verdict: 'pass', value: acceleration(2.5), limit: 400 });
    expectSaid(findingOf(judged, 'joint-angle-1'), { verdict: 'pass', value: 8, limit: 12 });
    const open = judge(lying([0, 8, 5.5], { joints: [{ kind: 'constant velocity' }, {}] }));
    expectSaid(findingOf(open, 'joint-angle-1'), { verdict: 'not assessed' });
  });

  it('forks a quarter turn out add up instead of cancelling: 3 and 3 leave 4.243', () => {
    const finding = findingOf(judge(lying([3, 6, 3], { joints: [{}, { yokes: 90 }] })), 'train-residual');
    expect(finding.value).toBeCloseTo(acceleration(Math.sqrt(18)), 4);
  });

  it('coordinates tell the same as angles', () => {
    const points = [
      [0, 0, 0],
      [300, 0, -300 * Math.tan(3 * rad)],
      [1300, 0, -300 * Math.tan(3 * rad) - 1000 * Math.tan(5 * rad)],
      [1500, 0, -300 * Math.tan(3 * rad) - 1000 * Math.tan(5 * rad) - 200 * Math.tan(1 * rad)],
    ];
    const [byPoints, byAngles] = [
      judge({ duty: { speed: 3000 }, shaft: { angles: { points } } }),
      judge(lying([3, 5, 1])),
    ];
    expect(findingOf(byPoints, 'train-residual').value).toBeCloseTo(
      findingOf(byAngles, 'train-residual').value as number,
      4,
    );
  });

  it('without a speed it tells how fast it may run, and asks for the speed', () => {
    const finding = findingOf(judge(lying([0, 5, 2]), { duty: { speed: undefined } }), 'train-residual');
    expectSaid(finding, { verdict: 'not assessed' });
    // 400 rad/s2 at 4 degrees: sqrt(400) / (4 pi / 180) rad/s = 2736 rpm.
    expect(finding.why).toContain('2736 rpm');
  });
});

describe('each joint', () => {
  it('beyond 1000 rad/s2 it cautions, beyond what any maker allows it fails', () => {
    expectSaid(findingOf(judge(lying([0, 7, 0])), 'joint-angle-1'), {
      verdict: 'caution',
      value: 7,
      limit: angleFor(1000),
    });
    expectSaid(findingOf(judge(lying([0, 9.5, 0])), 'joint-angle-1'), {
      verdict: 'fail',
      value: 9.5,
      limit: angleFor(1000),
    });
    expect(findingOf(judge(lying([0, 7, 0])), 'joint-angle-1').why).toContain('5.8 degrees at this speed');
  });

  it('dead straight is wrong', () => {
    expectSaid(findingOf(judge(lying([2, 2.2, 2])), 'needle-angle', 'joint 1'), {
      verdict: 'caution',
      value: 0.2,
      limit: 1,
    });
  });

  it('unequal angles caution', () => {
    expectSaid(findingOf(judge(lying([0, 3, 1.3])), 'angle-difference'), { verdict: 'caution', value: 1.3, limit: 1 });
  });
});

describe('slips', () => {
  it('90 less the angle is named', () => {
    const finding = findingOf(judge(lying([3, 84, 3])), 'angle-reading');
    expectSaid(finding, { verdict: 'fail' });
    expect(finding.why).toContain('90 less the angle');
    expect(finding.remedy).toContain('write 6.0');
    expect(judge(lying([3, 84, 3])).findings.some(({ code }) => code === 'train-residual')).toBe(false);
  });

  it('a sign that was swapped between the ends is named: 3, 6, -3 wants +3', () => {
    const finding = findingOf(judge(lying([3, 6, -3])), 'angle-signs');
    expectSaid(finding, { verdict: 'caution' });
    expect(finding.why).toContain('side angle of the driven shaft');
    expect(finding.why).toContain('leave 0.00 degrees instead of 8.49 degrees');
    expect(judge(lying([3, 6, 3])).findings.some(({ code }) => code === 'angle-signs')).toBe(false);
  });

  it('keys that do not go together', () => {
    const paths = (angles: Patch) => errorsOf({ shaft: { angles } }).map(({ path }) => path);
    expect(paths({ doubt: 0.1 })).toEqual(['shaft.angles']);
    expect(paths({ line: [{ side: 1 }, { plan: 2 }] })).toEqual(['shaft.angles.line[1]']);
    expect(paths({ line: [{ side: 1 }, { side: 2 }], joints: [{}, {}] })).toEqual(['shaft.angles.joints']);
    expect(paths({ line: [{ side: 1 }, { side: 2 }], measures: 3 })).toEqual(['shaft.angles.measures']);
    expect(paths({ line: [{ side: 1 }, { side: 2 }], joints: [{ kind: 'belt' }] })).toEqual([
      'shaft.angles.joints[0].kind',
    ]);
    expect(
      paths({
        points: [
          [0, 0, 0],
          [1, 0],
          [2, 0, 0],
        ],
      }),
    ).toEqual(['shaft.angles.points[1]']);
  });
});

describe('shims', () => {
  it('are never beaten by a plain grid of wedges, with plan angles and any forks', () => {
    const angle = fc.double({ min: -5, max: 5, noNaN: true });
    const { joint: base } = judge({ duty: { speed: 3000 } });
    fc.assert(
      fc.property(fc.tuple(angle, angle, angle), fc.tuple(angle, angle, angle), (sides, plans) => {
        const line = sides.map((side, i) => ({ side, plan: plans[i] }));
        const joint: Joint = { ...base, job: { ...base.job, shaft: { bolts_to: 'driven', angles: { line } } } };
        const study = studyAngles(joint);
        const shims = study && studyShims(joint, study);
        if (!study || !shims) throw new Error('no shims');
        const at = (wedge: number) => {
          const shafts = line.map(({ side, plan = 0 }, i) =>
            directionOf({ side: i === 2 ? side + wedge : side, plan }),
          );
          return { shafts, joints: study.line.train.joints };
        };
        // Wedges that leave both joints between their limits.
        let grid = Infinity;
        for (let wedge = -6; wedge <= 6; wedge += 0.05) {
          const train = at(wedge);
          const [a, b] = [train.shafts[0], train.shafts[1]].map((v, i) => {
            const w = train.shafts[i + 1] as readonly number[];
            return Math.acos((v as readonly number[]).reduce((sum, x, k) => sum + x * (w[k] as number), 0)) / rad;
          }) as [number, number];
          if (a < 1 || b < 1 || a > angleFor(1000) || b > angleFor(1000)) continue;
          grid = Math.min(grid, residualAngle(train));
        }
        if (grid < Infinity) expect(shims.best).toBeLessThanOrEqual(grid + 0.002);
        expect(shims.exact[0]?.what).toBe('wedge');
        const by = shims.shims[0]?.by ?? 0;
        expect(Math.abs(by * 2 - Math.round(by * 2))).toBeLessThan(1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('raise a centre bearing where three joints ask for it', () => {
    const line = [{ side: 0 }, { side: 1, length: 700 }, { side: 5, length: 900 }, { side: 4 }];
    const { joint } = judge({ duty: { speed: 3000 }, shaft: { angles: { line, shim: { bearing: 40 } } } });
    const study = studyAngles(joint);
    const shims = study && studyShims(joint, study);
    expect(shims?.shims.map(({ what }) => what)).toEqual(['wedge', 'bearing']);
    expect(shims?.best).toBeLessThan(0.05);
    expect(shims?.after).toBeLessThanOrEqual(shims?.before ?? 0);
  });

  it('say what they could not try', () => {
    const finding = findingOf(judge(lying([0, 5, 2], { shim: { mount: 20 } })), 'train-residual');
    expect(finding.remedy).toContain('mount_pivot');
  });

  it('look at bump and droop where lengths and travel are known', () => {
    const line = [{ side: 3 }, { side: 6, length: 1000 }, { side: 3 }];
    const judged = judge({ duty: { speed: 3000 }, shaft: { angles: { line }, travel: { bump: 60, droop: 80 } } });
    // An axle that keeps its slope keeps both joints equal.
    expectSaid(findingOf(judged, 'train-residual@bump'), { verdict: 'pass', value: 0, limit: 400 });
    const swung = judge({
      duty: { speed: 3000 },
      shaft: { angles: { line }, travel: { bump: 60, droop: 80, arm: 250, pivot: { ahead: 600 } } },
    });
    expect(findingOf(swung, 'train-residual@bump').verdict).toBe('caution');
  });
});

describe('the swing of the signal', () => {
  it('one joint at 5 degrees: tan 5 sin 5 = 0.7625 %, greatest less least', () => {
    const finding = findingOf(judge(lying([0, 5])), 'signal-ripple');
    expectSaid(finding, { verdict: 'pass', value: 100 * Math.tan(5 * rad) * Math.sin(5 * rad), limit: 1, digits: 4 });
  });

  it('beyond what is allowed it cautions; on the shaft that is meant it reads true', () => {
    const at7 = findingOf(judge(lying([0, 7, 0], { measures: 2 })), 'signal-ripple');
    expectSaid(at7, { verdict: 'caution', value: 100 * Math.tan(7 * rad) * Math.sin(7 * rad), limit: 1, digits: 4 });
    expectSaid(findingOf(judge(lying([0, 7, 0], { measures: 1 })), 'signal-ripple'), {
      verdict: 'pass',
      value: 0,
      limit: 1,
    });
    expectSaid(findingOf(judge(lying([0, 7, 0])), 'signal-ripple'), { verdict: 'pass', value: 0, limit: 1 });
    expectSaid(findingOf(judge(lying([0, 7, 0], { measures: 2, ripple: '2 %' })), 'signal-ripple'), {
      verdict: 'pass',
      value: 100 * Math.tan(7 * rad) * Math.sin(7 * rad),
      limit: 2,
      digits: 4,
    });
  });

  it('is asked of wheels only', () => {
    expect(
      judge(lying([0, 5]), { wheel: undefined, sensor: undefined }).findings.some(
        ({ code }) => code === 'signal-ripple',
      ),
    ).toBe(false);
  });
});

describe('what was taken for granted', () => {
  it('is listed, with what rests on memory', () => {
    const { joint } = judge(
      lying([0, 5, 2], {}, { measured: { from: 'mock-up', value: 1294, at: 'ride height' }, slip: { stroke: 90 } }),
    );
    const paths = joint.assumptions.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining([
        'shaft.measured.doubt',
        'shaft.measured.mock_up',
        'shaft.spacers',
        'shaft.slip.reserve',
        'shaft.angles.doubt',
        'shaft.angles.line.plan',
        'shaft.angles.joints',
        'shaft.angles.joints.yokes',
        'shaft.angles.torsional',
        'shaft.angles.inertial',
        'shaft.angles.measures',
        'shaft.angles.ripple',
      ]),
    );
    expect(joint.assumptions.find(({ path }) => path === 'shaft.angles.torsional')).toMatchObject({
      value: '400 rad/s2',
      memory: true,
    });
  });
});
