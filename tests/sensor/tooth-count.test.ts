/** Tooth counts from what the controller expects: by hand, and a second way for many jobs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reportData } from '../../src/core.ts';
import { controllerNumber, readsText } from '../../src/job/controller-number.ts';
import { pulsesWanted } from '../../src/job/pulses-wanted.ts';
import { type CountJob, chooseTeeth, toothCandidates } from '../../src/job/tooth-count.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { reportText } from '../../src/report/report-text.ts';
import { judge, type Patch } from '../validate/help.ts';

const auto = (sensor: object, wheel: object = {}): Patch => ({
  wheel: { teeth: 'auto', set_true: 0.1, ...wheel },
  sensor: { kind: 'coil', ...sensor },
});

const chosen = (...patches: Patch[]) => judge(...patches).joint.wheelSpec?.teeth;

describe('the count that is chosen', () => {
  it('is what the controller expects', () => {
    expect(chosen(auto({ expects: { pulses: 60 } }))).toBe(60);
    // 20 a turn of the engine, which turns 1.8 times: 36. The other way up: a shaft that turns 4 times a wheel turn, 192 wanted: 48.
    expect(chosen(auto({ expects: { pulses: 20, per: 'engine', ratio: 1.8 } }))).toBe(36);
    expect(chosen(auto({ axle: 4, expects: { pulses: 192, per: 'wheel' } }))).toBe(48);
    // 8000 a km on 2 m at 4 turns: 8000 x 0.002 / 4 = 4 a turn; 64000: 32.
    expect(chosen(auto({ axle: 4, tyre: { rolled: 2000 }, expects: { pulses: 64_000, per: 'km' } }))).toBe(32);
    // A mile is 1.609344 km.
    expect(
      chosen(
        auto({ axle: 4, tyre: { rolled: 2000 }, expects: { pulses: 64_000 * 1.609344, per: 'mile', whole: false } }),
      ),
    ).toBe(32);
  });

  it('follows the wheel that was there before, through both ratios and both tyres', () => {
    // 44 teeth at 5.4 on 2.2 m: 108 a metre; 2.0 m at 4.8 turns: 108 x 2 / 4.8 = 45.
    const was = { teeth: 44, ratio: 5.4, tyre: { rolled: 2200 } };
    expect(chosen(auto({ axle: 4.8, tyre: { rolled: 2000 }, was }))).toBe(45);
    expect(chosen(auto({ axle: 5.4, was: { teeth: 44, ratio: 5.4 } }))).toBe(44);
    // duty.tyre stands in for both.
    const duty = { duty: { tyre: { load: '800 kg', radius: 320, ratio: 4.8 } } };
    const wanted = pulsesWanted(judge(auto({ was: { teeth: 44, ratio: 5.4 } }), duty).joint.job);
    expect(wanted).toMatchObject({ ok: true, value: { perTurn: (44 * 5.4) / 4.8 } });
  });

  it('a machine without road wheels is told how to say so', () => {
    const wanted = pulsesWanted(judge(auto({ was: { teeth: 48 } }, { teeth: 48 })).joint.job);
    expect(wanted).toMatchObject({ ok: false });
    if (wanted?.ok === false) expect(wanted.missing).toMatch(/sensor\.axle.*sensor\.expects: \{ pulses: 48 \}\.$/);
  });

  it('counts missing places in', () => {
    expect(chosen(auto({ expects: { pulses: 58, adjustable: false } }, { missing: 2 }))).toBe(60);
  });

  it('is said among the assumptions, with its reason', () => {
    const { joint } = judge(auto({ expects: { pulses: 59 } }));
    const said = joint.assumptions.find(({ path }) => path === 'wheel.teeth');
    expect(said).toMatchObject({ value: '59', from: expect.stringMatching(/^auto: the controller expects 59 pulses/) });
    expect(judge().joint.assumptions.some(({ path }) => path === 'wheel.teeth')).toBe(false);
  });

  // A coil wants teeth of 2.3: on 178 with ratio 0.4 that is N = pi 0.4 178 / 2.3 = 97. 120 a turn cannot be read, 60 and a new number can.
  it('leaves what the sensor cannot read, when the controller can be told', () => {
    expect(chosen(auto({ tooth: 2.3, thickness: 2, expects: { pulses: 120 } }, { thickness: 2 }))).toBeLessThanOrEqual(
      97,
    );
    const fixed = judge(
      auto({ tooth: 2.3, thickness: 2, expects: { pulses: 120, adjustable: false } }, { thickness: 2 }),
    );
    expect(fixed.findings.some(({ verdict, code }) => verdict === 'fail' && code === 'tooth-width')).toBe(true);
  });
});

describe('the ranked list', () => {
  const job = judge(auto({ expects: { pulses: 50 } })).joint.job;

  it('puts passes first, then what leaves least error, then what needs least change', () => {
    const list = toothCandidates(job);
    const rank = { pass: 0, 'not assessed': 1, caution: 2, fail: 3 } as const;
    for (const [i, one] of list.entries()) {
      const next = list[i + 1];
      if (next) expect(rank[one.verdict]).toBeLessThanOrEqual(rank[next.verdict]);
      expect(one.reasons.length > 0).toBe(one.verdict !== 'pass');
      // Widths by the definition of a chord.
      expect(one.tooth).toBeCloseTo(178 * Math.sin((0.4 * Math.PI) / one.teeth), 9);
      expect(one.valley).toBeCloseTo(178 * Math.sin((0.6 * Math.PI) / one.teeth), 9);
      expect(one.error).toBeCloseTo(one.teeth / 50 - 1, 12);
    }
    expect(new Set(list.map(({ teeth }) => teeth)).size).toBe(list.length);
  });

  it('offers the nearest whole number for any demand, when the number is fixed', () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 75, noNaN: true }), (pulses) => {
        const sensor = {
          direction: 'radial',
          expects: { pulses, per: 'shaft', adjustable: false, whole: true },
        } as const;
        const fixed: CountJob = { ...job, sensor };
        const choice = chooseTeeth(fixed);
        expect(choice).toMatchObject({ ok: true });
        if (choice.ok) expect(Math.abs(choice.teeth - pulses)).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the number to enter', () => {
  const figures = (sensor: object, wheel: object = {}) => {
    const joint = judge({ wheel, sensor }).joint;
    const numbers = controllerNumber(joint);
    if (!numbers?.wanted) throw new Error('nothing is wanted');
    return numbers;
  };

  it('is what a simulated drive counts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1500, max: 3000 }), fc.integer({ min: 200, max: 600 }), (rolled, hundredths) => {
        const axle = hundredths / 100;
        const numbers = figures({ axle, tyre: { rolled }, expects: { pulses: 100_000, per: 'km' } });
        // Turn by turn of the road wheels over a km, the teeth of each: the second method.
        const turns = 1e6 / rolled;
        const counted = Array.from({ length: Math.floor(turns) }, () => 60 * axle).reduce((a, b) => a + b, 0);
        expect(numbers.perKm).toBeCloseTo(counted + (turns % 1) * 60 * axle, 3);
        expect(numbers.wanted?.enter?.number).toBe(Math.round(numbers.perKm ?? 0));
        expect(Math.abs(numbers.wanted?.enter?.error ?? 1)).toBeLessThanOrEqual(0.5 / ((numbers.perKm ?? 0) - 0.5));
      }),
      { numRuns: 25 },
    );
  });

  it('corrects both ways round', () => {
    const { wanted } = figures({ expects: { pulses: 58 } });
    expect(wanted?.error).toBeCloseTo(2 / 58, 12);
    expect(readsText(wanted?.error ?? 0)).toBe('reads 3.4 % fast');
    expect(readsText(-0.0042)).toBe('reads 0.42 % slow');
    expect(readsText(0.321)).toBe('reads 32 % fast');
    expect(readsText(0.00001)).toBe('reads true');
    // The box makes 58 pulses of 60: 29/30.
    expect(wanted?.ratios.at(-1)).toMatchObject({ p: 29, q: 30 });
    expect(wanted?.ratios.at(-1)?.error).toBeCloseTo(0, 12);
  });

  it('stands in both reports', () => {
    const judged = judge({
      sensor: { axle: 4.1, tyre: '205/65R16', expects: { pulses: 58 }, converter: { largest: 20 } },
    });
    const data = reportData(judged.joint, judged.findings);
    const text = reportText(data).replace(/\s+/g, ' ');
    for (const part of [
      'What to tell the controller',
      'Pulses in a turn of the road wheels: 246',
      'it reads 3.4 % fast (at a true 100 it shows 103.4)',
      'Number to enter: 60 pulses in a turn of this shaft (exact)',
      'truth = shown x 0.9667',
      'shown = truth x 1.0345',
      'from memory',
      '19 out for 20 in: reads 1.7 % slow',
      'Tooth counts that the wheel may have',
      '60 teeth (this wheel): pass',
    ])
      expect(text).toContain(part);
    const page = reportHtml(data);
    expect(page).toContain('What to tell the controller');
    expect(page).toContain('19 out for 20 in: reads 1.7 % slow');
  });

  it('says what is missing, and says nothing without a sensor', () => {
    const bare = judge();
    const text = reportText(reportData(bare.joint, bare.findings)).replace(/\s+/g, ' ');
    expect(text).toContain('What the controller expects: not known');
    const none = judge({ sensor: undefined });
    expect(reportData(none.joint, none.findings).controller).toBeNull();
  });
});
