/** A wide or an extra tooth as a position mark: keys, pulses, periods, sizes, balance and words, by hand. */
import { describe, expect, it } from 'vitest';
import { controllerNumber } from '../../src/job/controller-number.ts';
import { revisionOf } from '../../src/job/revision.ts';
import { studySignal } from '../../src/rotor/signal-study.ts';
import { errorsOf, findingOf, judge, type Patch, prove } from './help.ts';

const wheel = (keys: Patch): Patch => ({ wheel: keys });
/** 36 places on 178: a pitch of 10 degrees, 15.53 mm along the tips; 173.5 is halfway up. A true wheel: set with a dial, cut well. */
const true36: Patch = {
  wheel: { teeth: 36, ratio: 0.3, root_radius: 0.3, set_true: 0.01 },
  sheet: { tolerance: 0.001 },
};
const windows: Patch = {
  wheel: { form: 'windows', teeth: 36, ratio: 0.3, outside: 190, rim: 5, height: 8, root_radius: 0.3, set_true: 0.01 },
  sensor: { kind: 'hall', direction: 'axial', gap: 0.6, float: 0.2, pole: 0.3 },
  sheet: { tolerance: 0.001 },
};
const hall: Patch = { sensor: { kind: 'hall', gap: 0.6, pole: 0.3 } };
const coil: Patch = { sensor: { kind: 'coil', gap: 0.6, pole: 0.3 } };
function studied(...patches: readonly Patch[]) {
  const answer = studySignal(judge(...patches).joint);
  if (!answer.ok) throw new Error(answer.why);
  return answer.study;
}

describe('keys', () => {
  it.each([
    [
      { missing: 2, wide: 1 },
      'wheel.wide',
      /wheel\.missing and wheel\.wide are given: keep one, such as wheel\.missing/,
    ],
    [{ wide: 1, extra: 1 }, 'wheel.extra', /wheel\.wide and wheel\.extra are given/],
    [
      { teeth: 12, wide: 11 },
      'wheel.wide',
      /11 valleys filled of 12 make a wide tooth of 12 places.*Give 10 or less\./,
    ],
    [{ teeth: 12, missing: 12 }, 'wheel.missing', /at least one must be left/],
    [{ extra: 2 }, 'wheel.extra', /whole number, 0 to 1|0 to 1/],
    [{ wide: 61 }, 'wheel.wide', /0 to 60/],
    [{ extra: 1, ratio: 0.5 }, 'wheel.extra', /no room midway in a valley.*a ratio below 0\.5/],
    [{ extra: 1 }, 'wheel.root_radius', /0\.8 mm does not fit the valley beside the extra tooth\. Allowed: up to/],
    [{ longtooth: 1 }, 'wheel.longtooth', /here it is called wide/],
  ] as const)('%o is an error with its sentence', (keys, path, sentence) => {
    const found = errorsOf(wheel(keys)).find((error) => error.path === path);
    expect(found?.message).toMatch(sentence);
  });

  it('the cures of these sentences are sound jobs', () => {
    for (const keys of [
      { missing: 2 },
      { wide: 1 },
      { teeth: 12, wide: 10 },
      { extra: 1, ratio: 0.4, root_radius: 0.3 },
    ])
      expect(errorsOf(wheel(keys))).toEqual([]);
  });

  it('a job without them is the job it was: nothing of them in the wheel that is read', () => {
    const { joint } = judge({});
    expect(Object.keys(joint.job.wheel ?? {})).not.toContain('wide');
    expect(Object.keys(joint.wheelSpec ?? {})).not.toContain('wide');
    expect(revisionOf(joint)).not.toBe(revisionOf(judge(wheel({ wide: 1 })).joint));
  });
});

describe('pulses', () => {
  it.each([
    [{}, 36],
    [{ missing: 2 }, 34],
    [{ wide: 2 }, 34],
    [{ extra: 1 }, 37],
  ])('%o: as the controller counts them and as the signal shows them', (mark, pulses) => {
    const patch = [true36, hall, wheel(mark)];
    expect(studied(...patch).pulses).toBe(pulses);
    expect(controllerNumber(judge(...patch).joint)?.made).toBe(pulses);
    const said = findingOf(judge(...patch), 'signal-pulses');
    expect(said.verdict).toBe('pass');
    expect(said.why).toContain(`${pulses} teeth make ${pulses} pulses`);
  });

  it('auto makes up for the mark: 40 pulses wanted are 42 places with 2 valleys filled, 39 with one tooth more', () => {
    const expects = { pulses: 40, per: 'shaft', adjustable: false };
    const count = (mark: Patch) =>
      judge(true36, { sensor: { expects } }, wheel({ teeth: 'auto', ...mark })).joint.wheelSpec?.teeth;
    expect(count({ wide: 2 })).toBe(42);
    expect(count({ extra: 1 })).toBe(39);
  });

  it('an extra tooth comes twice as fast: 36 teeth at 2600 rpm are 1560 Hz, 3120 beside it', () => {
    const limited: Patch = { sensor: { kind: 'hall', gap: 0.6, controller: { most: '3000 Hz' } } };
    expect(findingOf(judge(true36, limited), 'sensor-frequency').value).toBeCloseTo(1560, 6);
    const twice = findingOf(judge(true36, limited, wheel({ extra: 1 })), 'sensor-frequency');
    expect(twice.value).toBeCloseTo(3120, 6);
    expect(twice.verdict).not.toBe('pass');
    expect(twice.remedy).toContain('at most 34 teeth');
    expect(findingOf(judge(true36, limited, wheel({ extra: 1, teeth: 34 })), 'sensor-frequency').verdict).toBe('pass');
  });
});

describe('periods', () => {
  it.each([1, 2, 3])('%d valleys filled: a switch times one period of as many places more', (wide) => {
    const { readings } = studied(true36, hall, wheel({ wide }));
    expect(readings?.markRatios).toHaveLength(1);
    expect(Math.abs((readings?.markRatios[0] ?? 0) - (wide + 1))).toBeLessThan(0.05);
    expect(readings?.teeth).toHaveLength(36 - wide);
  });

  it.each([1, 2, 3])('%d valleys filled: a coil times two, of half as many places more', (wide) => {
    const { readings } = studied(true36, coil, wheel({ wide }));
    expect(readings?.markRatios).toHaveLength(2);
    for (const ratio of readings?.markRatios ?? []) expect(Math.abs(ratio - 1 - wide / 2)).toBeLessThan(0.02);
    expect(readings?.peak).toBeLessThan(0.01);
  });

  it.each([
    ['a switch', hall, 0.02],
    ['a coil', coil, 0.02],
  ] as const)('one tooth more: %s times two halves, the others stay even', (_, sensor, near) => {
    const { readings } = studied(true36, sensor, wheel({ extra: 1 }));
    expect(readings?.markRatios).toHaveLength(2);
    for (const ratio of readings?.markRatios ?? []) expect(Math.abs(ratio - 0.5)).toBeLessThan(near);
    expect(readings?.peak).toBeLessThan(0.02);
  });

  it('bars between windows the same: n + 1 places, and two halves', () => {
    const long = studied(windows, wheel({ wide: 2 }));
    expect(long.pulses).toBe(34);
    expect(Math.abs((long.readings?.markRatios[0] ?? 0) - 3)).toBeLessThan(0.03);
    const more = studied(windows, wheel({ extra: 1 }));
    expect(more.pulses).toBe(37);
    for (const ratio of more.readings?.markRatios ?? []) expect(Math.abs(ratio - 0.5)).toBeLessThan(0.03);
  });

  it('steel under the sensor: no valley within the wide tooth, one tooth midway in the last valley', () => {
    const height = 4.5;
    const at = (study: ReturnType<typeof studied>, place: number) => study.steelBelow((-place * 2 * Math.PI) / 36, 0.6);
    const long = studied(true36, hall, wheel({ wide: 2 }));
    for (const place of [33.5, 34, 34.5]) expect(at(long, place)).toBeCloseTo(0.6, 9);
    expect(at(long, 35.5)).toBeCloseTo(0.6 + height, 9);
    expect(at(long, 32.5)).toBeCloseTo(0.6 + height, 9);
    const more = studied(true36, hall, wheel({ extra: 1 }));
    expect(at(more, 35.5)).toBeCloseTo(0.6, 9);
    expect(at(more, 35.25)).toBeCloseTo(0.6 + height, 9);
    const bars = studied(windows, wheel({ wide: 2 }));
    expect(at(bars, 33.5)).toBeCloseTo(0.6, 9);
    expect(at(bars, 35.5)).toBeCloseTo(3.6, 9);
    expect(at(studied(windows, wheel({ extra: 1 })), 35.5)).toBeCloseTo(0.6, 9);
  });

  it('the finding tells the mark and does not count it', () => {
    const why = (...patches: readonly Patch[]) => findingOf(judge(true36, ...patches), 'signal-jitter').why;
    expect(why(hall, wheel({ wide: 1 }))).toMatch(
      /The wide tooth makes one period [12]\.\d\d times as long as the others, which is not counted/,
    );
    expect(why(coil, wheel({ extra: 1 }))).toMatch(
      /The extra tooth makes 2 periods, 0\.\d\d and 0\.\d\d times as long/,
    );
  });

  it('where the edge beside the mark is the worst, it says so', () => {
    const wide = findingOf(judge(wheel({ wide: 2 })), 'signal-jitter');
    expect(wide.verdict).toBe('caution');
    expect(wide.why).toContain('beside the mark');
    expect(wide.remedy).toContain('away from the mark');
    expect(findingOf(judge({}), 'signal-jitter').why).not.toContain('beside the mark');
  });
});

describe('sizes and words', () => {
  /** Between the extra tooth and its neighbour: half a pitch less a tooth, across 178. */
  const narrow = 178 * Math.sin(((5 - 3) / 2) * (Math.PI / 180));
  it('valley and pitch beside an extra tooth are held against the sensor', () => {
    const typed: Patch = { sensor: { kind: 'hall', gap: 0.6, valley: 3.2, tooth: 2, pitch: 5 } };
    prove({
      what: 'a valley of 3.11',
      code: 'valley-width',
      patch: { ...true36, ...typed, wheel: { ...(true36.wheel as Patch), extra: 1 } },
      verdict: 'fail',
      value: narrow,
      limit: 3.2,
      cure: wheel({ extra: 0 }),
    });
    expect(findingOf(judge(true36, typed, wheel({ extra: 1 })), 'valley-width').title).toContain(
      'beside the extra tooth',
    );
  });

  it('the narrow valley is held against the sheet: 2 degrees on 169 less what parallel flanks take', () => {
    const slot = findingOf(judge(true36, wheel({ extra: 1 })), 'sheet-slot');
    // Parallel flanks 89 sin 1.5 off the middle reach further round at the root of 84.5.
    const root = Math.asin((89 * Math.sin(1.5 * (Math.PI / 180))) / 84.5);
    expect(slot.value).toBeCloseTo(84.5 * (5 * (Math.PI / 180) - 2 * root), 6);
    expect(slot.verdict).toBe('caution');
    expect(findingOf(judge(true36), 'sheet-slot').verdict).toBe('pass');
  });

  it('the length of a wide tooth is held against the widest that the sensor reads', () => {
    const { value, title, remedy } = findingOf(judge(wheel({ wide: 2 })), 'tooth-width-most');
    // 0.4 of a pitch and two pitches more, 60 places along 178.
    expect(value).toBeCloseTo((2.4 * Math.PI * 178) / 60, 6);
    expect(title).toContain('wide tooth');
    expect(remedy).toContain('wheel.wide');
  });

  it('a speed wheel keeps all its teeth alike', () => {
    for (const [mark, words] of [
      [{ wide: 2 }, /a wide tooth over 3 places before tooth 1.*dip/s],
      [{ extra: 1 }, /an extra tooth before tooth 1.*twice the speed/s],
    ] as const) {
      const { verdict, title, why, remedy } = findingOf(judge(true36, wheel(mark)), 'position-mark');
      expect(verdict).toBe('caution');
      expect(`${title} ${why}`).toMatch(words);
      expect(remedy).toMatch(/keep all teeth alike \(leave out wheel\.(wide|extra)\)/);
    }
    expect(findingOf(judge({}), 'missing-teeth').verdict).toBe('pass');
    expect(findingOf(judge(windows, wheel({ extra: 1 })), 'position-mark').title).toBe('an extra bar before bar 1');
  });

  it('pulls by its own moment: a tooth more is one tooth, on the side before tooth 1', () => {
    const radial: Patch = wheel({ flanks: 'radial', root_radius: 0, extra: 1 });
    const { joint, findings } = judge(true36, radial);
    const tooth = (0.00785 * 3 * (89 ** 3 - 84.5 ** 3) * 2 * Math.sin(1.5 * (Math.PI / 180))) / 3;
    const density = (joint.wheelMaterial?.density ?? 0) / 0.00785;
    const { value, why, remedy } = findingOf({ findings }, 'balance-wheel');
    expect((value ?? 0) / (tooth * density)).toBeCloseTo(1, 6);
    expect(why).toContain('The extra tooth makes that side heavy.');
    expect(remedy).toContain('at 355 degrees');
    const wide = findingOf(judge(true36, wheel({ wide: 2 })), 'balance-wheel');
    expect(wide.why).toContain('The wide tooth, 3 places long, makes that side heavy.');
    expect(wide.remedy).toContain('at 340 degrees');
  });

  it('a wide tooth is judged for burst as if the ring of teeth were solid, an extra one with its own mass', () => {
    const hung = (mark: Patch) =>
      Number(/\((\d+) g/.exec(findingOf(judge(true36, wheel(mark)), 'burst-wheel').why)?.[1]);
    const solid = Math.PI * (89 ** 2 - 84.5 ** 2) * 3 * (judge(true36).joint.wheelMaterial?.density ?? 0);
    expect(Math.abs(hung({ wide: 1 }) - solid)).toBeLessThan(0.51);
    expect(Math.abs(hung({ extra: 1 }) - 0.3 * solid * (37 / 36))).toBeLessThan(0.51);
  });
});
