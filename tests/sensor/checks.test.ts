/** Gap, speed range and reading of the sensor, against sums by hand. mm, Hz, rpm, per cent. */
import { describe, expect, it } from 'vitest';
import { machiningRule } from '../../src/standards/machining-practice.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { must } from '../../src/standards/table.ts';
import { type Case, errorsOf, findingOf, judge, type Patch, prove } from '../validate/help.ts';

/** Teeth set true to 0.1: nothing but 0.05 either way is left of the chain. */
const trueWheel = { set_true: 0.1 };
const withSensor = (keys: object, rest: Patch = {}): Patch => ({ wheel: trueWheel, sensor: keys, ...rest });
const coil = (keys: object = {}) => withSensor({ kind: 'coil', ...keys });
const alpha = (id: string) => must(findMaterial(id)).thermalExpansion;

const radius = 178 / 2;
const heat = { duty: { temperature: { cold: '-20 degC', hot: '100 degC' } } };

const gapCases: readonly Case[] = [
  // 0.2 to 1.2: a diesel workshop manual. 0.8 is the usual gap of a coil.
  { what: '0.8 - 0.05', code: 'sensor-gap-high', patch: coil(), verdict: 'pass', value: 0.75, limit: 0.2 },
  { what: '0.8 + 0.05', code: 'sensor-gap-low', patch: coil(), verdict: 'pass', value: 0.85, limit: 1.2 },
  {
    what: '0.8 - 0.05 - 0.65: nearer than it should be, but clear',
    code: 'sensor-gap-high',
    patch: coil({ bearing_play: 0.65 }),
    verdict: 'caution',
    value: 0.1,
    limit: 0.2,
    says: /moves by 1\.40 mm, the sensor bears 1\.00 mm/,
    cure: coil({ bearing_play: 0.3 }),
  },
  {
    what: '0.8 - 0.05 - 0.5 - 0.3: it is hit',
    code: 'sensor-gap-high',
    patch: coil({ bearing_play: 0.5, travel: 0.3 }),
    verdict: 'fail',
    value: -0.05,
    limit: 0.2,
  },
  {
    what: 'set to 1.1, 0.2 of play: 1.35',
    code: 'sensor-gap-low',
    patch: coil({ gap: 1.1, bearing_play: 0.2 }),
    verdict: 'caution',
    value: 1.35,
    limit: 1.2,
    says: /^Set the gap to 0\.70 mm/,
    cure: coil({ gap: 0.7 }),
  },
  // The data sheet's own range: worst beyond it is a caution while the likely sum is within, else a failure.
  {
    what: 'likely 0.8 - sqrt(0.05^2 + 0.16^2) = 0.632',
    code: 'sensor-gap-high',
    patch: coil({ gap: 0.8, gap_range: { least: 0.6, most: 1.0 }, bearing_play: 0.16 }),
    verdict: 'caution',
    value: 0.59,
    limit: 0.6,
  },
  {
    what: 'likely 0.8 - sqrt(0.05^2 + 0.2^2) = 0.594',
    code: 'sensor-gap-high',
    patch: coil({ gap_range: { least: 0.6, most: 1.0 }, bearing_play: 0.2 }),
    verdict: 'fail',
    value: 0.55,
    limit: 0.6,
    says: /No setting will do: the gap moves by 0\.50 mm, the sensor bears 0\.40 mm/,
    cure: coil({ gap_range: { least: 0.3, most: 1.3 } }),
  },
  {
    what: 'likely 0.8 + sqrt(0.05^2 + 0.2^2) = 1.006',
    code: 'sensor-gap-low',
    patch: coil({ gap: 0.8, gap_range: { least: 0.2, most: 1.0 }, bearing_play: 0.2 }),
    verdict: 'fail',
    value: 1.05,
    limit: 1.0,
    says: /^Set the gap to 0\.60 mm/,
    cure: coil({ gap: 0.6 }),
  },
  // Heat: the wheel grows and what carries the sensor is not known, so it is reckoned to stay.
  {
    what: '0.75 - alpha 89 80',
    code: 'sensor-gap-high',
    patch: { ...coil(), ...heat },
    verdict: 'pass',
    value: 0.75 - alpha('DC01') * radius * 80,
    limit: 0.2,
  },
  {
    what: '0.85 + alpha 89 40, cold',
    code: 'sensor-gap-low',
    patch: { ...coil(), ...heat },
    verdict: 'pass',
    value: 0.85 + alpha('DC01') * radius * 40,
    limit: 1.2,
  },
  {
    what: 'an aluminium housing grows away: hot it opens',
    code: 'sensor-gap-low',
    patch: { ...coil({ carrier: '6061-T6' }), ...heat },
    verdict: 'pass',
    value: 0.85 + (alpha('6061-T6') * (radius + 0.8) - alpha('DC01') * radius) * 80,
    limit: 1.2,
  },
  {
    what: 'an aluminium housing shrinks onto it: cold it closes',
    code: 'sensor-gap-high',
    patch: { ...coil({ carrier: '6061-T6' }), ...heat },
    verdict: 'pass',
    value: 0.75 - (alpha('6061-T6') * (radius + 0.8) - alpha('DC01') * radius) * 40,
    limit: 0.2,
  },
  // Room round the tips: 5 - 0.05 - 0.2 - 3.
  {
    what: '5 at rest, 3 of travel',
    code: 'wheel-room',
    patch: { wheel: { ...trueWheel, room: 5 }, sensor: { bearing_play: 0.2, travel: 3 } },
    verdict: 'pass',
    value: 1.75,
    limit: 1,
  },
  {
    what: '4 at rest, 3 of travel',
    code: 'wheel-room',
    patch: { wheel: { ...trueWheel, room: 4 }, sensor: { bearing_play: 0.2, travel: 3 } },
    verdict: 'caution',
    value: 0.75,
    limit: 1,
    says: /4\.25 mm at rest, or a wheel 0\.50 mm smaller/,
    cure: { wheel: { room: 4.25 } },
  },
  {
    what: '3 at rest, 3 of travel',
    code: 'wheel-room',
    patch: { wheel: { ...trueWheel, room: 3 }, sensor: { travel: 3 } },
    verdict: 'fail',
    value: -0.05,
    limit: 1,
  },
  {
    what: 'from the side, float not known',
    code: 'sensor-gap-high',
    patch: coil({ direction: 'axial' }),
    verdict: 'not assessed',
    says: /sensor\.float/,
  },
  // A pole of 4 mm and 1.5 of float: 5.5 of sheet wanted, 3 there, less than the pole itself.
  {
    what: '3 against 4 + 1.5',
    code: 'sensor-over-teeth',
    patch: coil({ pole: 3, float: 1.5 }),
    verdict: 'caution',
    value: 3,
    limit: 4.5,
    says: /wheel\.thickness\): 4\.50 mm/,
    cure: { wheel: { thickness: 4.5 } },
  },
  {
    what: '3 against a pole of 3.5',
    code: 'sensor-over-teeth',
    patch: coil({ pole: 3.5, float: 0 }),
    verdict: 'fail',
    value: 3,
    limit: 3.5,
  },
  {
    what: 'a float, but no pole',
    code: 'sensor-over-teeth',
    patch: coil({ float: 1 }),
    verdict: 'not assessed',
    says: /sensor\.pole/,
  },
  // Seen from the side: teeth 4.5 high against a pole of 4 and 2 (0.05 + 0.1) of movement across it.
  {
    what: '4.5 against 4 + 0.3',
    code: 'sensor-over-teeth',
    patch: coil({ direction: 'axial', float: 0.2, pole: 4, bearing_play: 0.1 }),
    verdict: 'pass',
    value: 4.5,
    limit: 4.3,
  },
];

/** 0.381 m/s on 178 mm. */
const slowest = (0.381 * 60_000) / (Math.PI * 178);

const speedCases: readonly Case[] = [
  { what: '60 x 2600 / 60', code: 'sensor-frequency', patch: {}, verdict: 'pass', value: 2600, limit: 8000 },
  {
    what: 'an input that counts to 2000',
    code: 'sensor-frequency',
    patch: { sensor: { controller: { most: '2 kHz' } } },
    verdict: 'fail',
    value: 2600,
    limit: 2000,
    says: /at most 46 teeth/,
    cure: { wheel: { teeth: 46 } },
  },
  {
    what: 'over the usual limit of its kind: only a caution',
    code: 'sensor-frequency',
    patch: { sensor: { kind: 'active_wheel_speed' } },
    verdict: 'caution',
    value: 2600,
    limit: 2000,
    cure: { sensor: { frequency: { most: '5 kHz' } } },
  },
  {
    what: 'over that of its own data sheet',
    code: 'sensor-frequency',
    patch: { sensor: { frequency: { most: 2500 } } },
    verdict: 'fail',
    value: 2600,
    limit: 2500,
    says: /at most 57 teeth/,
    cure: { wheel: { teeth: 57 } },
  },
  {
    what: 'no speed',
    code: 'sensor-frequency',
    patch: { duty: { speed: undefined } },
    verdict: 'not assessed',
    says: /duty\.speed/,
  },
  {
    what: 'a coil, and nobody says how slow',
    code: 'sensor-lowest-speed',
    patch: coil(),
    verdict: 'not assessed',
    says: /sensor\.crawl/,
  },
  {
    what: 'a coil at 60 rpm',
    code: 'sensor-lowest-speed',
    patch: coil({ crawl: 60 }),
    verdict: 'pass',
    value: 60,
    limit: slowest,
  },
  {
    what: 'a coil at 30 rpm',
    code: 'sensor-lowest-speed',
    patch: coil({ crawl: 30 }),
    verdict: 'caution',
    value: 30,
    limit: slowest,
    says: /wheel of 243 mm/,
    cure: { wheel: { outside: 243 } },
  },
  {
    what: 'a coil at 10 rpm',
    code: 'sensor-lowest-speed',
    patch: coil({ crawl: 10 }),
    verdict: 'fail',
    value: 10,
    limit: slowest,
  },
  { what: 'a Hall sensor', code: 'sensor-lowest-speed', patch: {}, verdict: 'pass' },
  {
    what: 'an input that counts from 20 Hz up: 20 rpm',
    code: 'sensor-lowest-speed',
    patch: { sensor: { controller: { least: 20, most: 9000 }, crawl: 10 } },
    verdict: 'fail',
    value: 10,
    limit: 20,
    says: /at least 120 teeth/,
    cure: { wheel: { teeth: 120 } },
  },
  {
    what: '100 against 115 of its kind',
    code: 'sensor-temperature',
    about: 'heat',
    patch: heat,
    verdict: 'pass',
    value: 100,
    limit: 115,
  },
  {
    what: '100 against 85 of its data sheet',
    code: 'sensor-temperature',
    about: 'heat',
    patch: { ...heat, sensor: { temperature: { least: -40, most: 85 } } },
    verdict: 'fail',
    value: 100,
    limit: 85,
  },
  {
    what: '-20 against -10',
    code: 'sensor-temperature',
    about: 'cold at',
    patch: { ...heat, sensor: { temperature: { least: -10, most: 120 } } },
    verdict: 'fail',
    value: -20,
    limit: -10,
  },
  {
    what: 'a data sheet without surroundings',
    code: 'sensor-temperature',
    patch: { sensor: { temperature: { least: -40, most: 85 } } },
    verdict: 'not assessed',
    says: /duty\.temperature/,
  },
  // Elements a quarter pitch apart tell the direction best: 178 pi / 60 / 4 = 2.33; half a pitch tells nothing.
  {
    what: 'a quarter pitch',
    code: 'sensor-phase',
    patch: { sensor: { kind: 'two_channel_hall', spacing: (Math.PI * 178) / 240 } },
    verdict: 'pass',
    value: 0,
    limit: 45,
  },
  {
    what: 'half a pitch',
    code: 'sensor-phase',
    patch: { sensor: { kind: 'two_channel_hall', spacing: (Math.PI * 178) / 120 } },
    verdict: 'fail',
    value: 90,
    limit: 45,
    says: /wheel\.teeth: 30/,
    cure: { wheel: { teeth: 30 } },
  },
  {
    what: 'spacing not known',
    code: 'sensor-phase',
    patch: { sensor: { kind: 'two_channel_hall' } },
    verdict: 'not assessed',
    says: /sensor\.spacing/,
  },
];

const expecting = (keys: object, rest: object = {}): Patch => ({ sensor: { expects: keys, ...rest } });

const readingCases: readonly Case[] = [
  { what: '60 of 60', code: 'reading-error', patch: expecting({ pulses: 60 }), verdict: 'pass', value: 0, limit: 1 },
  {
    what: '60 of 58: 3.448 % fast',
    code: 'reading-error',
    patch: expecting({ pulses: 58 }),
    verdict: 'caution',
    value: 200 / 58,
    limit: 1,
    says: /^Enter 60 pulses in a turn of this shaft in the controller: it then reads true/,
    cure: expecting({ pulses: 60 }),
  },
  {
    what: '60 of 50 and the number is fixed: 20 %',
    code: 'reading-error',
    patch: expecting({ pulses: 50, adjustable: false }),
    verdict: 'fail',
    value: 20,
    limit: 1,
    says: /wheel\.teeth: 50\).*makes 5 pulses of 6/,
    cure: { wheel: { teeth: 50 } },
  },
  // 60 teeth x 4.1 on 2050 mm: 120 pulses a metre, 120000 a km.
  {
    what: '120000 of 125000 a km: 4 % slow',
    code: 'reading-error',
    patch: expecting({ pulses: 125_000, per: 'km' }, { axle: 4.1, tyre: { rolled: 2050 } }),
    verdict: 'caution',
    value: 4,
    limit: 1,
    says: /^Enter 120000 pulses a km/,
  },
  {
    what: 'per km without a tyre',
    code: 'reading-error',
    patch: expecting({ pulses: 125_000, per: 'km' }, { axle: 4.1 }),
    verdict: 'not assessed',
    says: /sensor\.tyre/,
  },
  // The engine turns 3 times in a turn of the shaft: 20 pulses a turn of it are 60 here.
  {
    what: '20 a turn of the engine, 3 turns',
    code: 'reading-error',
    patch: expecting({ pulses: 20, per: 'engine', ratio: 3 }),
    verdict: 'pass',
    value: 0,
    limit: 1,
  },
  // 44 teeth on the old shaft at 4.1; this one turns 3 times: 44 x 4.1 / 3 = 60.13 wanted.
  {
    what: '44 teeth before',
    code: 'reading-error',
    patch: { sensor: { was: { teeth: 44, ratio: 4.1 }, axle: 3 } },
    verdict: 'pass',
    value: 100 * (1 - (60 * 3) / (44 * 4.1)),
    limit: 1,
  },
];

describe('the air gap', () => {
  it.each(gapCases)('$code, $verdict: $what', prove);

  // From the side: float whole, and the lean of faces that are parallel within what the trade holds, over the radius of the tips.
  it('adds float and wobble when it looks from the side', () => {
    const judged = judge(coil({ direction: 'axial', float: 0.2 }));
    const slope = must(machiningRule('parallelism', 0)).value / judged.joint.adapterSpec.outside;
    // And half of the 0.4 mm that ISO 2768-2 allows a face of 178 mm in class K (printed tables).
    expect(findingOf(judged, 'sensor-gap-high').value).toBeCloseTo(0.8 - 0.2 - slope * radius - 0.2, 6);
    const flat = judge(coil({ direction: 'axial', float: 0.2 }), { wheel: { flatness: 0.1 } });
    expect(findingOf(flat, 'sensor-gap-high').value).toBeCloseTo(0.8 - 0.2 - slope * radius - 0.05, 6);
  });

  // Growth is length times expansion times 100 K, over the height of the face that is read.
  it('grows along the axis with heat', () => {
    const warm = { duty: { temperature: { cold: '20 degC', hot: '120 degC' } } };
    const flat = { wheel: { flatness: 0 } };
    const cold = judge(coil({ direction: 'axial', float: 0.2, gap: 1 }), flat);
    const hot = judge(coil({ direction: 'axial', float: 0.2, gap: 1 }), flat, warm);
    const { wheelZ, wheelSpec, wheelMaterial, adapterMaterial, adapterSpec } = hot.joint;
    if (wheelZ === null || !wheelSpec || !wheelMaterial) throw new Error('no wheel');
    const face = wheelZ + wheelSpec.thickness;
    const within = Math.min(face, adapterSpec.thickness);
    const grows = 100 * (adapterMaterial.thermalExpansion * within + wheelMaterial.thermalExpansion * (face - within));
    expect(grows).toBeGreaterThan(0.005);
    const value = (of: typeof hot, code: string) => findingOf(of, code).value ?? Number.NaN;
    expect(value(cold, 'sensor-gap-high') - value(hot, 'sensor-gap-high')).toBeCloseTo(grows, 5);
    expect(findingOf(hot, 'sensor-gap-high').why).toContain('not known');
    // A housing that grows as well takes its share off.
    const carried = judge(coil({ direction: 'axial', float: 0.2, gap: 1, carrier: '6061-T6' }), flat, warm);
    expect(findingOf(carried, 'sensor-gap-high').why).toContain('against');
  });

  it('takes the same chain as the run-out of the teeth', () => {
    const judged = judge({ sensor: { kind: 'coil' } });
    const tir = findingOf(judged, 'wheel-runout').value ?? 0;
    expect(findingOf(judged, 'sensor-gap-high').value).toBeCloseTo(0.8 - tir / 2, 6);
  });

  it('names what was not given', () => {
    expect(findingOf(judge(coil()), 'sensor-gap-low').why).toMatch(/Not given, .*sensor\.bearing_play, sensor\.travel/);
    expect(findingOf(judge(coil({ bearing_play: 0.1, travel: 0 })), 'sensor-gap-low').why).not.toMatch(/bearing_play/);
  });

  it('names a gap that it had to assume', () => {
    const { joint } = judge(coil());
    expect(joint.assumptions).toContainEqual(expect.objectContaining({ path: 'sensor.gap', value: '0.8 mm' }));
    expect(judge(coil({ gap: 0.8 })).joint.assumptions.some(({ path }) => path === 'sensor.gap')).toBe(false);
  });
});

describe('the speed range', () => {
  it.each(speedCases)('$code, $verdict: $what', prove);

  // 40.88 rpm / 4.1 x 2.05 m x 60 = 1226 m an hour.
  it('tells the road speed too, where it is known', () => {
    const { why } = findingOf(judge(coil({ axle: 4.1, tyre: { rolled: 2050 } })), 'sensor-lowest-speed');
    expect(why).toContain(`${(((slowest / 4.1) * 2.05 * 60) / 1000).toFixed(1)} km/h`);
  });
});

describe('the reading', () => {
  it.each(readingCases)('$code, $verdict: $what', prove);

  it('warns of a speedometer that reads slow', () => {
    const slow = expecting({ pulses: 62 });
    expect(findingOf(judge(slow), 'reading-error').why).toMatch(/reads 3\.2 % slow.*Regulation 39/);
    expect(findingOf(judge(expecting({ pulses: 58 })), 'reading-error').why).not.toMatch(/Regulation/);
  });

  it('says nothing where nothing is expected', () => {
    expect(judge().findings.some(({ code }) => code === 'reading-error')).toBe(false);
  });
});

describe('keys', () => {
  it.each([
    [{ sensor: { tyre: '165R13' } }, 'sensor.tyre', /rolled: 2050 mm/],
    [{ sensor: { tyre: { rolled: 2050, radius: 300 } } }, 'sensor.tyre', /one of the two/],
    [{ sensor: { tyre: 16 } }, 'sensor.tyre', /205\/65R16/],
    [{ sensor: { tyre: { radius: 3 } } }, 'sensor.tyre.radius', /30 to 2400 mm/],
    [{ sensor: { gap_range: { least: 2, most: 1 } } }, 'sensor.gap_range.least', /not below/],
    [{ sensor: { frequency: { most: '5 kg' } } }, 'sensor.frequency.most', /Hz/],
    [{ sensor: { direction: 'sideways' } }, 'sensor.direction', /radial or axial/],
    [{ sensor: { expects: { per: 'km' } } }, 'sensor.expects.pulses', /missing/],
    [{ sensor: { kind: 'hal' } }, 'sensor.kind', /Did you mean hall/],
    [{ wheel: { teeth: 'auto' } }, 'wheel.teeth', /sensor\.expects/],
    [{ wheel: { teeth: 'auto' }, sensor: { expects: { pulses: 9, per: 'wheel' } } }, 'wheel.teeth', /sensor\.axle/],
    [{ wheel: { teeth: 'some' } }, 'wheel.teeth', /auto, or a whole number/],
    [
      { wheel: { teeth: 'auto' }, sensor: { expects: { pulses: 3000, adjustable: false } } },
      'wheel.teeth',
      /no count near that can be drawn/,
    ],
  ] as const)('%j', (patch, path, says) => {
    expect(errorsOf(patch)).toContainEqual(expect.objectContaining({ path, message: expect.stringMatching(says) }));
  });
});
