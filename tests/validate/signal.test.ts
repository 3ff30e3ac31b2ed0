/** The check of what the sensor will see: closed forms, and honest words where something is missing. */
import { describe, expect, it } from 'vitest';
import { studySignal } from '../../src/rotor/signal-study.ts';
import { findingOf, judge, type Patch } from './help.ts';

const round = (patch: Patch = {}): Patch => ({ sheet: { tolerance: '0.001 mm' }, ...patch });
const coil: Patch = { sensor: { kind: 'coil', gap: '0.8 mm' } };

function studied(...patches: readonly Patch[]) {
  const answer = studySignal(judge(...patches).joint);
  if (!answer.ok) throw new Error(answer.why);
  return answer.study;
}

describe('pulses', () => {
  it('are as many as the teeth, for each kind of sensor', () => {
    for (const kind of ['coil', 'hall', 'differential_hall', 'two_channel_hall', 'active_wheel_speed']) {
      const finding = findingOf(judge({ sensor: { kind, gap: '0.8 mm' } }), 'signal-pulses');
      expect(finding.verdict).toBe('pass');
      expect(finding.why).toContain('60 teeth make 60 pulses');
    }
  });

  it('a coil with a pole of one pitch gives no wave that can be counted to 60', () => {
    // The average over a whole pitch is the same everywhere but for the errors of the teeth.
    const pitch = (Math.PI * (178 + 1.6)) / 60;
    const study = studied(round(), { wheel: { set_true: '0.005 mm' } }, coil, { sensor: { pole: `${pitch} mm` } });
    const plain = studied(round(), { wheel: { set_true: '0.005 mm' } }, coil);
    const swing = (level: Float64Array) => Math.max(...level) - Math.min(...level);
    expect(swing(study.trace.level)).toBeLessThan(0.02 * swing(plain.trace.level));
  });
});

describe('jitter', () => {
  it('of a wheel cut without error and off centre by 0.1 is e / L: 0.1 / 89.8 = 0.111 %', () => {
    // Set true to 0.2 total reading: 0.1 off centre. The tolerance of the cut is a thousandth.
    const made = judge(round({ wheel: { set_true: '0.2 mm' } }), coil);
    const { value } = findingOf(made, 'signal-jitter');
    // The coil's zero leans by another 1 / 60 of it; a thousandth of cutting error makes 2 x 0.0005 / 9.3 = 0.011 %.
    expect(value).toBeGreaterThan(0.105);
    expect(value).toBeLessThan(0.111 * (1 + 1 / 60) + 0.012);
  });

  it('grows with the tolerance of the cut, up to twice the error over the pitch', () => {
    const at = (tolerance: number) => findingOf(judge({ sheet: { tolerance } }), 'signal-jitter').value ?? 0;
    const pitch = (Math.PI * 178) / 60;
    for (const tolerance of [0.05, 0.1, 0.2]) {
      expect(at(tolerance)).toBeGreaterThan((0.5 * 100 * tolerance) / pitch);
    }
    expect(at(0.2)).toBeGreaterThan(at(0.1));
    const sloppy = findingOf(
      judge({ sheet: { tolerance: '0.75 mm' }, wheel: { clearance: '1.6 mm' } }),
      'signal-jitter',
    );
    expect(sloppy.verdict).toBe('caution');
    expect(sloppy.remedy).toContain('sheet.tolerance');
  });

  it('is the same throw of chance every time', () => {
    expect(findingOf(judge(), 'signal-jitter')).toEqual(findingOf(judge(), 'signal-jitter'));
  });

  it('leaves the gap of missing teeth out, and tells how long it is', () => {
    const { why } = findingOf(judge({ wheel: { missing: 2 } }), 'signal-jitter');
    const long = Number(/gap of the missing teeth is ([\d.]+) periods/.exec(why)?.[1]);
    expect(Math.abs(long - 3)).toBeLessThan(0.1);
  });
});

describe('duty', () => {
  it('of narrow teeth under one element goes down, and the cure says wider', () => {
    const at = (ratio: number) =>
      findingOf(judge({ wheel: { ratio, root_radius: 0.2 }, sensor: { kind: 'hall', gap: '0.4 mm' } }), 'signal-duty');
    expect(at(0.5).verdict).toBe('pass');
    const narrow = at(0.25);
    expect(narrow.verdict).toBe('caution');
    expect(narrow.remedy).toContain('wider (wheel.ratio)');
    const broad = at(0.75);
    expect(broad.verdict).toBe('caution');
    expect(broad.remedy).toContain('narrower (wheel.ratio)');
  });
});

describe('honest', () => {
  it.each([
    ['no kind', { sensor: undefined }, /sensor\.kind/],
    [
      'too many teeth',
      { wheel: { teeth: 900, outside: 900, height: '1 mm', root_radius: 0, ratio: 0.5 } },
      /wheel\.teeth/,
    ],
  ] as const)('says what is missing: %s', (_, patch, remedy) => {
    const finding = findingOf(judge(patch), 'signal-jitter');
    expect(finding.verdict).toBe('not assessed');
    expect(finding.remedy).toMatch(remedy);
  });

  it('says nothing without a wheel', () => {
    const { findings } = judge({ wheel: undefined, sensor: undefined });
    expect(findings.filter(({ code }) => code.startsWith('signal'))).toEqual([]);
  });

  it('holds the run-out at nine tenths of the gap where more would touch, and says so', () => {
    const study = studied({ sensor: { gap: '0.1 mm' }, wheel: { set_true: '0.8 mm' } });
    expect(study.setting.eccentricity).toBeCloseTo(0.09, 12);
    expect(study.setting.worstEccentricity).toBeGreaterThan(0.39);
    expect(study.setting.taken.join()).toContain('would touch');
  });
});
