/** The sensor's gap, room and speeds at their limits and just past them; sums on paper. mm, Hz, rpm, degC */
import { describe, expect, it } from 'vitest';
import { findMaterial } from '../../src/standards/materials.ts';
import { must } from '../../src/standards/table.ts';
import { sensorGap } from '../../src/validate/sensor-gap.ts';
import { sensorSpeed } from '../../src/validate/sensor-speed.ts';
import { teeth } from '../../src/validate/teeth.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

const alpha = (id: string) => must(findMaterial(id)).thermalExpansion;
/** Sixty teeth on 178, sheet of 3, set true to 0.1: they move by 0.05 either way. */
const { joint } = judge({ wheel: { set_true: 0.1 }, sensor: { kind: 'coil', gap: 1 } });
const job = (...patches: Patch[]) => bent(joint, ...patches.map((patch) => ({ job: patch })));
const gap = (code: string, ...patches: Patch[]) => findingOf({ findings: sensorGap.run(job(...patches)) }, code);
const gapCodes = (...patches: Patch[]) => sensorGap.run(job(...patches)).map(({ code }) => code);
const sensor = (patch: Patch): Patch => ({ sensor: patch });
const temperature = (cold: number, hot: number): Patch => ({ duty: { temperature: { cold, hot } } });

describe('the gap', () => {
  // A sensor of no kind, its own data sheet: nothing but what is typed counts.
  const own = (least: number, most: number, patch: Patch = {}) =>
    sensor({ kind: undefined, gap_range: { least, most }, ...patch });

  it.each([
    // 1 - 0.05 at the high spot. Its own sheet: a failure where not even the likely sum keeps it.
    [0.95, 'pass'],
    [0.951, 'fail'],
  ] as const)('no nearer than %f: %s', (least, verdict) =>
    expectSaid(gap('sensor-gap-high', own(least, 2)), { verdict, value: 0.95, limit: least }),
  );

  it.each([
    [1.05, 'pass'],
    [1.049, 'fail'],
  ] as const)('no farther than %f: %s', (most, verdict) =>
    expectSaid(gap('sensor-gap-low', own(0.5, most)), { verdict, value: 1.05, limit: most }),
  );

  it('the likely sum, the root of the squares, makes it a caution: 0.05 and 0.12 of play make 0.13', () => {
    const play = { bearing_play: 0.12 };
    expect(gap('sensor-gap-high', own(0.86, 2, play)).verdict).toBe('caution');
    expect(gap('sensor-gap-high', own(0.88, 2, play)).verdict).toBe('fail');
    expect(gap('sensor-gap-low', own(0.5, 1.14, play)).verdict).toBe('caution');
    expect(gap('sensor-gap-low', own(0.5, 1.12, play)).verdict).toBe('fail');
    expectSaid(gap('sensor-gap-high', own(0.83, 2, play)), { verdict: 'pass', value: 0.83, limit: 0.83 });
    expectSaid(gap('sensor-gap-low', own(0.5, 1.17, play)), { verdict: 'pass', value: 1.17, limit: 1.17 });
  });

  it('a sensor that is nearer than it should be still reads until 0.05 is left; one that is too far until twice its gap', () => {
    // A coil: 0.2 to 1.2 (a diesel workshop manual); caution until it is all but hit (common practice).
    const coil = (value: number) => [
      gap('sensor-gap-high', sensor({ gap: value })),
      gap('sensor-gap-low', sensor({ gap: value })),
    ];
    const [high, low] = [(value: number) => coil(value)[0]?.verdict, (value: number) => coil(value)[1]?.verdict];
    expect([0.25, 0.24, 0.1, 0.09].map(high)).toEqual(['pass', 'caution', 'caution', 'fail']);
    expect([1.15, 1.16, 2.35].map(low)).toEqual(['pass', 'caution', 'caution']);
    expect(low(2.36)).not.toBe('pass');
    expect(coil(0.24)[0]?.remedy).toBe('Set the gap to 0.70 mm (sensor.gap).');
  });

  it('heat opens and closes it: wheel and housing grow unlike', () => {
    const [steel, aluminium] = [alpha('DC01'), alpha('6061-T6')];
    // In aluminium it closes cold and opens hot; 40 K down, 80 K up from 20.
    const opens = (kelvin: number) => (aluminium * 90 - steel * 89) * kelvin;
    const warm = [temperature(-20, 100), sensor({ carrier: '6061-T6' })];
    expect(gap('sensor-gap-high', ...warm).value).toBeCloseTo(0.95 + opens(-40), 6);
    expect(gap('sensor-gap-low', ...warm).value).toBeCloseTo(1.05 + opens(80), 6);
    expect(gap('sensor-gap-high', ...warm).why).toContain(
      `Cold ${(0.95 + opens(-40)).toFixed(3)} mm, at 20 degC 0.950 mm, hot ${(0.95 + opens(80)).toFixed(3)} mm`,
    );
    // The likely sum has it as well: 0.13 with play, and what 80 K open and 40 K close, whatever is likely.
    const far = (most: number) => gap('sensor-gap-low', ...warm, own(0.5, most, { bearing_play: 0.12 })).verdict;
    expect([1.131, 1.129].map((most) => far(most + opens(80)))).toEqual(['caution', 'fail']);
    const near = (least: number) => gap('sensor-gap-high', ...warm, own(least, 2, { bearing_play: 0.12 })).verdict;
    expect([0.869, 0.871].map((least) => near(least + opens(-40)))).toEqual(['caution', 'fail']);
    expect(gap('sensor-gap-low', ...warm).why).toContain(`hot ${(1.05 + opens(80)).toFixed(3)} mm`);
    // What carries it is not known: the wheel alone grows.
    expect(gap('sensor-gap-high', temperature(-20, 100)).value).toBeCloseTo(0.95 - steel * 89 * 80, 6);
    expect(gap('sensor-gap-low', temperature(-20, 100)).value).toBeCloseTo(1.05 + steel * 89 * 40, 6);
  });

  it('where it cannot be set anywhere the sum that must shrink is told, and just where it can the gap', () => {
    // Moves 0.1 in all.
    expect(gap('sensor-gap-high', own(1, 1.1)).remedy).toBe('Set the gap to 1.05 mm (sensor.gap).');
    expect(gap('sensor-gap-high', own(1, 1.09)).remedy).toContain('the gap moves by 0.10 mm, the sensor bears 0.09 mm');
  });

  it('off the usual gap of its kind by its tolerance is a caution', () => {
    const kind = (value: number) => gap('sensor-gap', sensor({ gap: value }));
    const { value, limit } = kind(1);
    const usual = 1 - (value ?? 0);
    expectSaid(kind(usual + (limit ?? 0)), { verdict: 'pass', value: limit, limit });
    expectSaid(kind(usual - (limit ?? 0) - 0.01), { verdict: 'caution', value: (limit ?? 0) + 0.01, limit });
    expect(kind(usual + (limit ?? 0) + 0.01).verdict).toBe('caution');
    expect(gapCodes(sensor({ gap: undefined }))).not.toContain('sensor-gap');
  });

  it('of nothing known nothing is said', () => {
    expect(gapCodes(sensor({ kind: undefined, gap: undefined }))).toEqual([]);
    expect(gapCodes(sensor({ kind: undefined }))).toEqual(['sensor-gap-high', 'sensor-gap-low']);
    expect(gapCodes({ sensor: undefined })).toEqual([]);
    expect(sensorGap.run(bent(joint, { wheelSpec: null, job: { wheel: { room: 9 } } }))).toEqual([]);
    expect(gap('sensor-gap-low', sensor({ kind: undefined })).verdict).toBe('not assessed');
    // Its least gap is not known either: 0.05 is kept so that nothing touches.
    expectSaid(gap('sensor-gap-high', sensor({ kind: undefined, gap: 0.1 })), {
      verdict: 'pass',
      value: 0.05,
      limit: 0.05,
    });
    const hit = gap('sensor-gap-high', sensor({ kind: undefined, gap: 0.09 }));
    expectSaid(hit, { verdict: 'fail', value: 0.04, limit: 0.05 });
    expect(hit.remedy).toMatch(/^Set the gap 0\.01 mm wider/);
  });
});

describe('what stays in front of the sensor', () => {
  it.each([
    // Seen from the side: 4.5 of height against the pole and twice what moves it: run-out 0.05, play, travel.
    [3.6, { bearing_play: 0.1, travel: 0.3 }, 4.5, 'pass'],
    [3.7, { bearing_play: 0.1, travel: 0.3 }, 4.6, 'caution'],
    [3.7, { bearing_play: 0.35 }, 4.5, 'pass'],
    [4.4, {}, 4.5, 'pass'],
    [4.6, {}, 4.7, 'fail'],
  ] as const)('a pole of %f, %o: %f wanted, %s', (pole, keys, limit, verdict) => {
    const finding = gap('sensor-over-teeth', sensor({ direction: 'axial', float: 0.1, pole, ...keys }));
    expectSaid(finding, { verdict, value: 4.5, limit });
    if (verdict !== 'pass') expect(finding.remedy).toContain(`higher teeth (wheel.height): ${limit.toFixed(2)} mm`);
  });

  it('from outside: the thickness against pole and float', () => {
    expectSaid(gap('sensor-over-teeth', sensor({ float: 1, pole: 2 })), { verdict: 'pass', value: 3, limit: 3 });
    expectSaid(gap('sensor-over-teeth', sensor({ float: 1.1, pole: 2 })), { verdict: 'caution', value: 3, limit: 3.1 });
    expectSaid(gap('sensor-over-teeth', sensor({ float: 1, pole: 3.1 })), { verdict: 'fail', value: 3, limit: 4.1 });
    expect(gap('sensor-over-teeth', sensor({ float: 1 })).remedy).toMatch(/^Give sensor\.pole/);
    expect(gapCodes(sensor({ pole: 2 }))).not.toContain('sensor-over-teeth');
  });

  it('room round the wheel: what moves it and the heat that closes it are taken off', () => {
    const steel = alpha('DC01');
    const room = (wide: number, ...patches: Patch[]) =>
      gap('wheel-room', { wheel: { room: wide }, sensor: undefined }, ...patches);
    expectSaid(room(1.05), { verdict: 'pass', value: 1, limit: 1 });
    expectSaid(room(1.04), { verdict: 'caution', value: 0.99, limit: 1 });
    expectSaid(room(0.05), { verdict: 'caution', value: 0, limit: 1 });
    expectSaid(room(0.04), { verdict: 'fail', value: -0.01, limit: 1 });
    // 80 K up the wheel grows by 0.085.
    const grown = steel * 89 * 80;
    const hot = room(0.5, temperature(-20, 100));
    expectSaid(hot, { verdict: 'caution', value: 0.45 - grown, limit: 1 });
    expect(hot.remedy).toContain(
      `Make room: ${(1.05 + grown).toFixed(2)} mm at rest, or a wheel ${(2 * (1.05 + grown - 0.5)).toFixed(2)} mm smaller`,
    );
    expect(hot.why).toContain(`less ${grown.toFixed(3)} mm of heat`);
    // Never warmer than at 20: cold shrinks the wheel, and that is not counted on.
    const cold = room(0.5, temperature(-20, 20));
    expect(cold.value).toBeCloseTo(0.45, 6);
    expect(cold.why).not.toContain('of heat');
    expect(room(0.5, temperature(-20, 10)).value).toBeCloseTo(0.45, 6);
    expect(gapCodes({ sensor: undefined })).not.toContain('wheel-room');
  });
});

describe('two channels', () => {
  const phase = (degrees: number) => {
    const pitch = (Math.PI * 178) / 60;
    return findingOf(
      { findings: teeth.run(job(sensor({ kind: 'two_channel_hall', spacing: (pitch * degrees) / 360 }))) },
      'sensor-phase',
    );
  };
  it.each([
    [90, 0, 'pass'],
    [45, 45, 'pass'],
    [44, 46, 'caution'],
    [20, 70, 'caution'],
    [19, 71, 'fail'],
    [135, 45, 'pass'],
    [180, 90, 'fail'],
    [250, 20, 'pass'],
    [290, 20, 'pass'],
    [340, 70, 'caution'],
    [341, 71, 'fail'],
    [450, 0, 'pass'],
  ] as const)('elements %d degrees of a pitch apart are %d off a quarter: %s', (degrees, off, verdict) =>
    expectSaid(phase(degrees), { verdict, value: off, limit: 45, digits: 3 }),
  );
});

describe('speeds', () => {
  const said = (code: string, ...patches: Patch[]) => findingOf({ findings: sensorSpeed.run(job(...patches)) }, code);

  it.each([
    // Sixty teeth pass as many times a second as the shaft turns a minute.
    [2600, 'pass', 'fail'],
    [2599, 'fail', 'caution'],
  ] as const)('an upper frequency of %d Hz, the sensor\u2019s or the controller\u2019s', (most, verdict, _) => {
    const own = said('sensor-frequency', sensor({ kind: undefined, frequency: { least: 0, most } }));
    expectSaid(own, { verdict, value: 2600, limit: most });
    const input = said('sensor-frequency', sensor({ kind: undefined, controller: { least: 0, most } }));
    expectSaid(input, { verdict: verdict, value: 2600, limit: most });
    if (verdict === 'fail') {
      expect(own.remedy).toContain('Use at most 59 teeth (wheel.teeth), or another sensor');
      expect(input.remedy).toContain('or another input');
    }
  });

  it('the lower of the two counts', () => {
    const both = (a: number, b: number) =>
      said(
        'sensor-frequency',
        sensor({ kind: undefined, frequency: { least: 0, most: a }, controller: { least: 0, most: b } }),
      );
    expect([both(3000, 4000).limit, both(4000, 3000).limit]).toEqual([3000, 3000]);
  });

  it.each([
    [60, 'pass'],
    [59, 'fail'],
  ] as const)('a controller that counts from 60 Hz up at %d rpm: %s', (crawl, verdict) => {
    const finding = said(
      'sensor-lowest-speed',
      sensor({ kind: undefined, controller: { least: 60, most: 9000 }, crawl }),
    );
    expectSaid(finding, { verdict, value: crawl, limit: 60 });
    if (verdict === 'fail') expect(finding.remedy).toContain('Use at least 62 teeth');
  });

  it('nearly from a standstill is below 10 rpm', () => {
    const least = (hertz: number) =>
      said('sensor-lowest-speed', sensor({ kind: undefined, controller: { least: hertz, most: 9000 } })).verdict;
    expect([least(9.9), least(10)]).toEqual(['pass', 'not assessed']);
    expect(sensorSpeed.run(job(sensor({ kind: undefined }))).map(({ code }) => code)).toEqual(['sensor-frequency']);
  });

  it.each([
    [-40, 125, 'pass', 'pass'],
    [-41, 125, 'pass', 'fail'],
    [-40, 126, 'fail', 'pass'],
  ] as const)('a sheet from -40 to 125 degC between %d and %d', (cold, hot, warm, chill) => {
    const own = sensor({ kind: undefined, temperature: { least: -40, most: 125 } });
    const at = (about: string) =>
      findingOf({ findings: sensorSpeed.run(job(own, temperature(cold, hot))) }, 'sensor-temperature', about);
    expectSaid(at('heat'), { verdict: warm, value: hot, limit: 125 });
    expectSaid(at('cold'), { verdict: chill, value: cold, limit: -40 });
    expect(said('sensor-temperature', own).verdict).toBe('not assessed');
  });

  it('nothing without a wheel or a sensor', () => {
    expect(sensorSpeed.run(bent(joint, { wheelSpec: null }))).toEqual([]);
    expect(sensorSpeed.run(job({ sensor: undefined }))).toEqual([]);
  });
});
