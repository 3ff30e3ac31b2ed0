/** The chooser by behaviour: what each kind does on a meter leads to it, and the count of leads to nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerSensor, readJob } from '../../src/core.ts';
import { meterTests, nextTest, suspects } from '../../src/measure/sensor-evidence.ts';
import { must } from '../../src/standards/table.ts';
import { sensorKinds } from '../../src/standards/tooth-rules.ts';
import { folder, run } from '../cli/terminal.ts';

const by = { units: 'mm', instrument: 'caliper', side: 'driving' } as const;
const told = (keys: object) => must(answerSensor({ ...by, ...keys })).result as { kind: string | null; share: number };

describe('what the leads do', () => {
  // 387 to 473, 560 to 680 ohm: a workshop manual's coils; 800 to 2000: a guide to wheel-speed sensors. 7 and 14 mA, 5.9 to 8.4 and 11.8 to
  // 16.8: a workshop manual. A single element does not mind being turned: its data sheet.
  it.each([
    ['coil', { resistance: '430 ohm', supply: 'none' }],
    ['coil', { resistance: '1.1 kohm', polarity: 'same' }],
    ['coil', { resistance: '2000', output: 'grows' }],
    ['active_wheel_speed', { resistance: 'open', current: '7 mA, 14 mA' }],
    ['active_wheel_speed', { supply: 'needed', current: '0.0059 A, 11.8' }],
    ['hall', { output: 'switches', turned: 'same' }],
    ['differential_hall', { output: 'switches', turned: 'fades', slow: 'yes' }],
    ['two_channel_hall', { output: 'two' }],
  ])('leads to %s', (kind, keys) => {
    const { kind: likeliest, share } = told(keys);
    expect(likeliest).toBe(kind);
    expect(share).toBeGreaterThan(0.6);
  });

  it('learns nothing from the number of leads', () => {
    for (const leads of ['2', '3', '4'])
      expect(told({ output: 'switches', turned: 'same', leads }).share).toBe(
        told({ output: 'switches', turned: 'same' }).share,
      );
    expect(answerSensor({ ...by, leads: '2' })).toMatchObject({ ok: false });
  });

  it('stays open where two kinds do the same, and names the test that parts them', () => {
    const answer = must(answerSensor({ ...by, output: 'switches' }));
    expect(answer.block).toBeNull();
    expect(answer.title).toMatch(/^Not told yet/);
    expect(answer.result).toMatchObject({ kind: null, next: 'turned' });
  });

  it('gives no section for a sensor without a magnet', () => {
    const answer = must(answerSensor({ ...by, output: 'two', magnet: 'no' }));
    expect(answer.block).toBeNull();
    expect(answer.notes.join(' ')).toMatch(/will not see steel teeth/);
  });

  it.each([
    [{}, /Say what the leads do/],
    [{ resistance: 'lots' }, /Or write open/],
    [{ resistance: '-5' }, /below 0/],
    [{ polarity: 'maybe' }, /same .*or differs/],
    [{ current: '7 mA' }, /both levels/],
    [{ current: '7 mA, 14 mA', output: 'two' }, /not both/],
    [{ output: 'two', magnet: 'perhaps' }, /paper clip/],
  ])('refuses %j', (keys, why) => {
    expect(answerSensor({ ...by, ...keys })).toEqual({ ok: false, why: expect.stringMatching(why) });
  });
});

describe('the likelihoods', () => {
  it('make a whole for every test and kind', () => {
    for (const { sights } of meterTests)
      for (const i of sensorKinds.keys())
        expect(sights.reduce((sum, { likelihood }) => sum + (likelihood[i] as number), 0)).toBeCloseTo(1, 9);
  });

  // Bayes by hand: a winding is seen on 95, 5, 5, 5 and 3 of a hundred each, so 95 / 113 of those seen are coils.
  it('weigh as Bayes does', () => {
    const winding = meterTests[0]?.sights[0];
    expect(winding && suspects([winding])[0]?.share).toBeCloseTo(95 / 113, 12);
    expect(suspects([]).map(({ share }) => share)).toEqual(sensorKinds.map(() => 1 / 5));
  });

  it('lead to the true kind when every test is made and shows what that kind mostly shows', () => {
    for (const [i, kind] of sensorKinds.entries()) {
      const seen = meterTests.map(({ sights }) =>
        sights.reduce((a, b) => ((b.likelihood[i] as number) > (a.likelihood[i] as number) ? b : a)),
      );
      expect(suspects(seen)[0]?.kind).toBe(kind);
    }
  });

  it('propose a test that is not made yet, until none is left', () => {
    fc.assert(
      fc.property(fc.subarray([...meterTests]), (made) => {
        const seen = made.flatMap(({ sights }) => sights.slice(0, 1));
        const next = nextTest(
          seen,
          made.map(({ id }) => id),
        );
        expect(next === null).toBe(made.length === meterTests.length);
        if (next) expect(made).not.toContain(next);
      }),
    );
  });
});

describe('the command', () => {
  it('prints a section that a job takes', async () => {
    const { code, out } = await run(folder(), [
      'measure',
      'sensor',
      '--resistance',
      '1100 ohm',
      '--supply',
      'none',
      '--json',
    ]);
    expect(code).toBe(0);
    const { block, subject } = JSON.parse(out) as { block: string; subject: string };
    expect(subject).toBe('sensor');
    const read = readJob(`job: 1\ndriving: {}\ndriven: {}\n${block}`, 'x');
    expect(read.ok || read.errors.every(({ path }) => !path.startsWith('sensor'))).toBe(true);
  });

  it('knows the subject by its flags, and refuses those of another', async () => {
    const alone = await run(folder(), ['measure', '--output', 'two']);
    expect(alone.out).toMatch(/two-channel/);
    const mixed = await run(folder(), ['measure', 'sensor', '--output', 'two', '--bore', '57']);
    expect(mixed.code).toBe(2);
    expect(mixed.err).toMatch(/--bore does not belong to a sensor/);
  });
});
