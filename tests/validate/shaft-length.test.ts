/** The length of the shaft: adapter counted once, travel, cutting, and slips named. Sums by hand; the adapter of the sound job is asked to be 20 mm. */
import { describe, expect, it } from 'vitest';
import { shaftLines } from '../../src/report/shaft-lines.ts';
import { studyFit } from '../../src/rotor/shaft-fit.ts';
import { errorsOf, expectSaid, findingOf, judge, type Patch } from './help.ts';

const shaft = (keys: Patch): Patch => ({ adapter: { thickness: 20 }, shaft: keys });
const measured = { from: 'mock-up', value: 1294, at: 'ride height' };
const ends = { adapter: 60, far: 54 };
const slip = { stroke: 90, engaged: 140 };

function fitOf(keys: Patch) {
  const fit = studyFit(judge(shaft(keys)).joint);
  if (!fit?.ok) throw new Error('no length');
  return fit;
}

describe('the adapter is counted exactly once', () => {
  it('read on the mock-up it is in the reading already', () => {
    expect(fitOf({ measured, ends })).toMatchObject({ faces: 1294, centres: 1180, takenOff: 0 });
  });

  it('read on the bare flange it comes off, once; spacers come off whichever', () => {
    expect(fitOf({ measured: { ...measured, from: 'flange', value: 1314 }, ends }).faces).toBe(1294);
    expect(fitOf({ measured: { ...measured, from: 'flange', value: 1314 }, spacers: 4 }).faces).toBe(1290);
    expect(fitOf({ measured, spacers: 4 }).faces).toBe(1290);
  });

  it('both ways of reading the same vehicle tell the same shaft, with and without wheel, from either end', () => {
    for (const bolts_to of ['driven', 'driving']) {
      for (const patch of [{}, { wheel: undefined }]) {
        const one = studyFit(judge(shaft({ measured, ends, bolts_to }), patch).joint);
        const other = studyFit(
          judge(shaft({ measured: { ...measured, from: 'flange', value: 1314 }, ends, bolts_to }), patch).joint,
        );
        expect(one?.ok && other?.ok && one.faces - other.faces).toBe(0);
      }
    }
  });

  it('a mock-up of another thickness is made good, and one of another design is called so', () => {
    const thin = judge(shaft({ measured: { ...measured, mock_up: 19.6 } }));
    const fit = studyFit(thin.joint);
    expect(fit?.ok && fit.faces).toBeCloseTo(1293.6, 9);
    expectSaid(findingOf(thin, 'mock-up-thickness'), { verdict: 'pass', value: 0.4, limit: 1 });
    const other = judge(shaft({ measured: { ...measured, mock_up: 26 } }));
    expectSaid(findingOf(other, 'mock-up-thickness'), { verdict: 'caution', value: 6, limit: 1 });
  });

  it('inches and repeats are read: 51 in', () => {
    expect(fitOf({ measured: { ...measured, value: '51 in' } }).faces).toBeCloseTo(1295.4, 9);
    expect(fitOf({ measured: { ...measured, value: [1294, 1293, 1295] } }).reading).toBe(1294);
  });

  it('joints that bend hide length: at 6 degrees both ends and 114 mm of ends, 114 (1 - cos 6)', () => {
    const angles = { line: [{ side: 0 }, { side: 6 }, { side: 0 }] };
    const fit = fitOf({ measured, ends, angles });
    // Chord: the ends lie level, the shaft slopes by 6 degrees.
    const c = Math.cos((6 * Math.PI) / 180);
    const centres = fit.centres as number;
    expect(Math.hypot(114 + centres * c, centres * Math.sqrt(1 - c * c))).toBeCloseTo(1294, 6);
    expect(fit.bend).toBeCloseTo(114 + centres - 1294, 9);
    expect(fit.bend).toBeGreaterThan(0.5);
  });
});

describe('slip and travel', () => {
  // Ride 1294, bump 1284, droop 1300: pushed home at 1294 - 30 = 1264; 20 before it bottoms, 90 - 36 = 54 before it comes apart.
  const full = { measured: { ...measured, at_bump: 1284, at_droop: 1300 }, ends, slip };

  it('tells the length to order, what is left at both ends, and the spline engaged', () => {
    const judged = judge(shaft(full));
    const fit = studyFit(judged.joint);
    expect(fit?.ok && fit.ordered).toMatchObject({ compressed: 1264, extended: 1354, governs: 'share' });
    expectSaid(findingOf(judged, 'shaft-plunge@bump'), { verdict: 'pass', value: 20, limit: 20 });
    expectSaid(findingOf(judged, 'shaft-plunge@droop'), { verdict: 'pass', value: 54, limit: 20 });
    // 140 engaged, 36 drawn out at the longest.
    expectSaid(findingOf(judged, 'spline-engagement'), { verdict: 'pass', value: 104, limit: 50 });
    // Doubt of the tape, 1 mm, and of the thickness, 0.13 mm, as squares; beside travel 20 mm are to spare.
    expectSaid(findingOf(judged, 'shaft-length'), { verdict: 'pass', value: Math.hypot(1, 0.13), limit: 20 });
    const [line] = shaftLines(judged.joint, 'mm');
    expect(line).toMatchObject({ label: 'Shaft length to order', value: '1264.0 mm' });
    expect(line?.note).toContain('1150.0 mm between joint centres');
  });

  it('a length that cannot be reached inside the plunge fails, and says what stroke would do', () => {
    const judged = judge(shaft({ ...full, slip: { stroke: 12, engaged: 60 } }));
    const bump = findingOf(judged, 'shaft-plunge@bump');
    // Travel 16 in a stroke of 12: 2 too much at either end.
    expectSaid(bump, { verdict: 'fail', value: -2, limit: 20 });
    expect(bump.remedy).toMatch(/stroke of 56 mm or more.*No length of shaft reaches both ends.*another face/);
  });

  it('the spline: cautions short of 50 mm, fails short of three quarters, and the cure cures', () => {
    const engaged = (mm: number) => judge(shaft({ ...full, slip: { stroke: 90, engaged: mm } }));
    // 36 drawn out at the longest.
    expectSaid(findingOf(engaged(80), 'spline-engagement'), { verdict: 'caution', value: 44, limit: 50 });
    const short = findingOf(engaged(70), 'spline-engagement');
    expectSaid(short, { verdict: 'fail', value: 34, limit: 50 });
    expect(short.remedy).toContain('86 mm');
    expectSaid(findingOf(engaged(86), 'spline-engagement'), { verdict: 'pass', value: 50, limit: 50 });
  });

  it('by geometry: 80 mm straight down on 900 mm level adds 3.549 mm (worked sum of the trade)', () => {
    const angles = { line: [{ side: 0 }, { side: 0 }, { side: 0 }] };
    const fit = fitOf({ measured: { ...measured, value: 1014 }, ends, slip, angles, travel: { bump: 0, droop: 80 } });
    expect(fit.centres).toBeCloseTo(900, 9);
    expect((fit.travel?.longest ?? 0) - 1014).toBeCloseTo(3.549, 3);
    expect(fit.travel?.shortest).toBe(1014);
    expect(fit.travelFrom).toBe('geometry');
  });

  it('asks for what is missing', () => {
    const bare = judge(shaft({ measured }));
    expectSaid(findingOf(bare, 'shaft-plunge'), { verdict: 'not assessed' });
    expect(findingOf(bare, 'shaft-plunge').remedy).toContain('shaft.slip');
    const still = judge(shaft({ measured, slip: { stroke: 90 } }));
    expect(findingOf(still, 'shaft-plunge').remedy).toContain('at_bump');
    expect(findingOf(still, 'spline-engagement').remedy).toContain('shaft.slip.engaged');
    const unread = judge(shaft({ slip }));
    expect(findingOf(unread, 'shaft-length')).toMatchObject({ verdict: 'not assessed' });
    expect(judge().findings.some(({ code }) => code.startsWith('shaft-length'))).toBe(false);
  });
});

describe('the shaft at hand', () => {
  it('takes out what is too much, and tells the tube left: 1320 to 1264 takes 56', () => {
    const at_hand = { length: 1320, tube: 900 };
    const judged = judge(shaft({ measured, slip, at_hand }));
    expectSaid(findingOf(judged, 'shaft-to-cut'), { verdict: 'pass', value: 844, limit: 100 });
    expect(shaftLines(judged.joint, 'mm')[1]).toMatchObject({ label: 'Take out of the shaft', value: '56.0 mm' });
  });

  it('counts how it was measured: between centres, and with the slip drawn out', () => {
    // 1206 between centres and 114 of ends are 1320 between faces; 10 drawn out are not its own.
    const fit = fitOf({ measured, ends, slip, at_hand: { length: 1216, between: 'centres', pulled_out: 10 } });
    expect(fit.toCut?.out).toBeCloseTo(56, 9);
  });

  it('says when it is too short, and when hardly a tube is left', () => {
    const short = judge(shaft({ measured, slip, at_hand: { length: 1250, tube: 900 } }));
    expectSaid(findingOf(short, 'shaft-to-cut'), { verdict: 'caution' });
    expect(findingOf(short, 'shaft-to-cut').remedy).toContain('914.0 mm weld to weld');
    const stubby = judge(shaft({ measured, slip, at_hand: { length: 2100, tube: 900 } }));
    expectSaid(findingOf(stubby, 'shaft-to-cut'), { verdict: 'caution', value: 64, limit: 100 });
    const none = judge(shaft({ measured, slip, at_hand: { length: 2200, tube: 900 } }));
    expectSaid(findingOf(none, 'shaft-to-cut'), { verdict: 'fail', value: -36, limit: 100 });
  });
});

describe('slips', () => {
  it('a hanging axle is refused', () => {
    const judged = judge(shaft({ measured: { ...measured, at: 'hanging' } }));
    expectSaid(findingOf(judged, 'shaft-length'), { verdict: 'fail' });
    expect(findingOf(judged, 'shaft-length').remedy).toContain('at_droop');
  });

  it('parts longer than the reading: the unit is asked for', () => {
    const judged = judge(shaft({ measured: { ...measured, value: 51 }, ends }));
    expectSaid(findingOf(judged, 'shaft-length'), { verdict: 'fail' });
    expect(findingOf(judged, 'shaft-length').remedy).toContain('51 in');
  });

  it('a tube length that is out by the adapter is called a double count', () => {
    const tube = (length: number) =>
      findingOf(judge(shaft({ measured, ends, tube: { outside: 76, wall: 2, length } })), 'shaft-length@tube');
    expectSaid(tube(1180), { verdict: 'pass', value: 0, limit: 5 });
    expectSaid(tube(1200), { verdict: 'caution', value: 20, limit: 5 });
    expect(tube(1200).why).toContain('counted twice');
    expect(tube(1240).why).not.toContain('counted twice');
  });

  it('a pivot that the axle cannot swing about by so much', () => {
    const angles = { line: [{ side: 0 }, { side: 0 }, { side: 0 }] };
    const travel = { bump: 300, droop: 300, pivot: { ahead: 100 } };
    const judged = judge(shaft({ measured, ends, slip, angles, travel }));
    expectSaid(findingOf(judged, 'shaft-length'), { verdict: 'fail' });
    expect(findingOf(judged, 'shaft-length').remedy).toContain('pivot');
  });

  it('bad readings are named by their place', () => {
    expect(errorsOf(shaft({ measured: { ...measured, value: [1294, 'long'] } }))[0]?.path).toBe(
      'shaft.measured.value[1]',
    );
    expect(errorsOf(shaft({ measured: { value: 1294 } })).map(({ path }) => path)).toEqual(
      expect.arrayContaining(['shaft.measured.from', 'shaft.measured.at']),
    );
  });
});
