/** The size of a wheel that is left open, against stepping through typed sizes, and against sums by hand. Lengths in mm. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type Joint, judgeJob } from '../../src/core.ts';
import { designJoint } from '../../src/design/design-joint.ts';
import type { JobInput } from '../../src/job/schema.ts';
import { sensorSpeed } from '../../src/validate/sensor-speed.ts';
import { sheet } from '../../src/validate/sheet.ts';
import { teeth } from '../../src/validate/teeth.ts';
import { wheel } from '../../src/validate/wheel.ts';
import { errorsOf, findingOf, judge, type Patch, patched, patterns, soundJob } from '../validate/help.ts';

/** What a larger wheel can cure. */
const cured = [
  'root-web',
  'heads-below-roots',
  'rim-below-roots',
  'tooth-width',
  'valley-width',
  'tooth-pitch',
  'tooth-covers-pole',
  'sensor-phase',
  'sensor-lowest-speed',
  'sheet-slot',
  'sheet-web',
];
const checks = [wheel, teeth, sheet, sensorSpeed];

/** Sizes between two edges that the sensor asks for: each edge may be cut as far off as the service holds, both at worst towards each other. */
const betweenEdges = ['tooth-width', 'valley-width', 'tooth-covers-pole'];
/** What one service publishes where the job's says nothing, mm at each edge: up to 3 mm of sheet, up to 6, up to 15. */
const published = (t: number) => (t <= 1 ? 0.12 : t <= 3 ? 0.15 : t <= 6 ? 0.2 : 0.25);
const handOf = ({ job, wheelSpec }: Joint) => 2 * (job.sheet.tolerance ?? published(wheelSpec?.thickness ?? 0));

/** Codes that do not pass, or not once the cut took all it may, of those that a larger wheel cures. */
const against = (joint: Joint) =>
  checks
    .flatMap((check) => check.run(joint))
    .filter(({ code, verdict, margin }) => {
      if (!cured.includes(code)) return false;
      if (betweenEdges.includes(code) && margin !== null && margin < handOf(joint) - 1e-6) return true;
      return verdict === 'caution' || verdict === 'fail';
    })
    .map(({ code }) => code);

/** The same flanges with a typed size; null where it cannot be made. */
function typed({ driving, driven }: Joint, job: JobInput): Joint | null {
  const made = designJoint({ job, driving, driven, assumptions: [] });
  return made.ok ? made.value : null;
}

type WheelKeys = NonNullable<JobInput['wheel']>;

/** The job that was chosen, with its size in numbers and a valley over the first screw: the web is then the least. */
function numbersOf(joint: Joint): { job: JobInput; wheel: WheelKeys } {
  const spec = joint.wheelSpec;
  const own = joint.job.wheel;
  const [first] = spec?.screwHoles?.positions ?? [];
  if (!spec || !own || !first) throw new Error('no wheel');
  const over = (Math.atan2(first.y, first.x) * 180) / Math.PI + 180 / spec.teeth;
  const wheelKeys = { ...own, teeth: spec.teeth, tooth: over };
  return { job: { ...joint.job, wheel: wheelKeys }, wheel: wheelKeys };
}

/** Sizes from 40 mm up, every seventh; from 8 mm below the chosen one on every one. */
function* sizesUpTo(chosen: number): Generator<number> {
  for (let outside = 40; outside < chosen - 8; outside += 7) yield outside;
  for (let outside = Math.max(40, chosen - 8); outside <= 1000; outside++) yield outside;
}

/** Smallest typed outside at which nothing speaks against the wheel, step by step. */
function leastByStepping(joint: Joint): number {
  const { job, wheel: keys } = numbersOf(joint);
  for (const outside of sizesUpTo(joint.wheelSpec?.outside ?? 0)) {
    const made = typed(joint, { ...job, wheel: { ...keys, outside } });
    if (made && against(made).length === 0) return outside;
  }
  throw new Error('none');
}

const open: Patch = { outside: 'auto', height: undefined };
const cases: readonly (readonly [string, Patch])[] = [
  ['heads and adapter, few teeth', { wheel: { ...open, teeth: 24 } }],
  ['60 teeth', { wheel: open }],
  ['120 teeth: the pitch of a differential Hall', { wheel: { ...open, teeth: 120 } }],
  ['a typed height', { wheel: { outside: 'auto', height: 6.3, teeth: 48 } }],
  ['a coil, thick sheet', { wheel: { ...open, teeth: 90, thickness: 5 }, sensor: { kind: 'coil' } }],
  ['a coil with a crawl', { wheel: { ...open, teeth: 30 }, sensor: { kind: 'coil', crawl: '32 rpm' } }],
  ['a coil with a wide pole', { wheel: { ...open, teeth: 60 }, sensor: { kind: 'coil', pole: 4 } }],
  ['a single Hall element: wide valleys', { wheel: { ...open, teeth: 40 }, sensor: { kind: 'hall' } }],
  ['an active sensor', { wheel: { ...open, teeth: 100, ratio: 0.5 }, sensor: { kind: 'active_wheel_speed' } }],
  [
    'two channels with their spacing',
    { wheel: { ...open, teeth: 100 }, sensor: { kind: 'two_channel_hall', spacing: 2.2 } },
  ],
  ['no kind, a valley from the data sheet', { wheel: { ...open, teeth: 72 }, sensor: { kind: undefined, valley: 5 } }],
  ['no sensor, thick sheet', { wheel: { ...open, teeth: 80, thickness: 8 }, sensor: undefined }],
  ['radial flanks', { wheel: { ...open, teeth: 96, flanks: 'radial', ratio: 0.3 } }],
  ['deep narrow valleys', { wheel: { outside: 'auto', height: 12, teeth: 60, ratio: 0.55, thickness: 5 } }],
  ['on a rim of a flange', { wheel: { ...open, on: 'driven' } }],
  ['on the driving face', { wheel: { ...open, face: 'driving', thickness: 5 } }],
  ['a large flange beside it', { wheel: { ...open, on: 'driving', teeth: 40 }, driven: { outside: 190 } }],
  ['few wide teeth over the screws', { wheel: { ...open, teeth: 6, ratio: 0.7, thickness: 8 }, sensor: undefined }],
  ['larger screws on a typed circle', { wheel: { ...open, screws: { size: 'M6', circle: 160 } } }],
  [
    'a service that wants wide webs',
    { wheel: { ...open, thickness: 5, teeth: 24, screws: { circle: 152 } }, sheet: { web: 1.5 } },
  ],
  ['an extra tooth, twice as close', { wheel: { ...open, teeth: 48, extra: 1, ratio: 0.3 } }],
  ['a wide tooth', { wheel: { ...open, teeth: 60, wide: 2 } }],
  ['windows', { wheel: { ...open, form: 'windows' }, sensor: { direction: 'axial', pole: 3 } }],
  ['many windows', { wheel: { ...open, form: 'windows', teeth: 90, rim: 5 }, sensor: { direction: 'axial', pole: 3 } }],
  [
    'windows before a coil, radial bars',
    {
      wheel: { ...open, form: 'windows', teeth: 72, flanks: 'radial', ratio: 0.5 },
      sensor: { kind: 'coil', direction: 'axial' },
    },
  ],
  [
    'narrow bars and wide webs of the service',
    {
      wheel: { ...open, form: 'windows', teeth: 60, ratio: 0.3, rim: 5, screws: { circle: 145 } },
      sensor: { kind: undefined, direction: 'axial' },
      sheet: { web: 1.5 },
    },
  ],
];

const assumed = (joint: Joint, path: string) => joint.assumptions.find((one) => one.path === path);

describe('wheel.outside: auto', () => {
  it.each(cases)('%s: is the least of all typed sizes', (_, patch) => {
    const { joint } = judge(patch);
    const chosen = joint.wheelSpec?.outside;
    expect(chosen).toBe(leastByStepping(joint));
    expect(against(joint)).toEqual([]);
    expect(joint.job.wheel?.outside).toBe(chosen);
    expect(assumed(joint, 'wheel.outside')).toMatchObject({ value: `${chosen} mm`, from: /^auto: the least whole mm/ });
  });

  // 128 and 154 across, heads 9.5 on 141: the adapter asks for 154 + 6, the heads for 141 + 9.5 + 6, teeth of 4.5 for 9 more.
  it('names what sets it and what would be next', () => {
    const { joint } = judge({ wheel: { outside: 'auto' } });
    expect(joint.wheelSpec).toMatchObject({ outside: 169, root: 160 });
    expect(assumed(joint, 'wheel.outside')?.from).toMatch(
      /at which the adapter \(154 mm\) lies 3 mm below .*; next, from 166 mm on, the screw heads \(on a circle of 141 mm\)/,
    );
    // 120 teeth 5 mm apart: 600 / pi = 190.99. Teeth of 2 at 0.4, and 0.03 more at each edge: 2.06 / sin(0.4 pi / 120) = 196.7. In sheet of 3,
    // teeth of 3: 286.5.
    const many = judge({ wheel: { outside: 'auto', teeth: 120, thickness: 2 } }).joint;
    expect(many.wheelSpec?.outside).toBe(197);
    expect(assumed(many, 'wheel.outside')?.from).toMatch(
      /at which the sensor finds teeth of 2 mm, with 0\.06 mm in hand for the cut; next, from 191 mm on, the sensor finds a pitch of 5 mm$/,
    );
    const thick = judge({ wheel: { outside: 'auto', teeth: 120 } }).joint;
    expect(thick.wheelSpec?.outside).toBe(287);
    expect(assumed(thick, 'wheel.outside')?.from).toMatch(/teeth and valleys can be cut, none narrower than 3 mm/);
  });

  it('is what a left out size means, and hands on a job in numbers', () => {
    const { joint } = judge({ wheel: { outside: undefined, height: undefined } });
    expect(joint.job.wheel).toMatchObject({ outside: joint.wheelSpec?.outside, height: expect.any(Number) });
  });

  it('does not grow without end for a slow speed: the check says what else cures it', () => {
    // A coil's tips want 0.381 m/s: at 10 rpm that is a wheel of 728 mm, at 38 rpm one of 191.5 (60000 v / pi n).
    const at = (crawl: string) => judge({ wheel: { ...open, thickness: 5 }, sensor: { kind: 'coil', crawl } });
    const without = judge({ wheel: { ...open, thickness: 5 }, sensor: { kind: 'coil' } }).joint.wheelSpec?.outside ?? 0;
    expect(without).toBeGreaterThan(192);
    expect(at('10 rpm').joint.wheelSpec?.outside).toBe(without);
    expect(findingOf(at('10 rpm'), 'sensor-lowest-speed').verdict).not.toBe('pass');
    expect(at('38 rpm').joint.wheelSpec?.outside).toBe(without);
    // What is inside asks for 154 + 6 + 2 x 4 = 168, half as large again is 252: 30 rpm and 242.6 are met, 28 rpm and 259.9 are not.
    expect(at('30 rpm').joint.wheelSpec?.outside).toBe(243);
    expect(findingOf(at('30 rpm'), 'sensor-lowest-speed').verdict).toBe('pass');
    expect(at('28 rpm').joint.wheelSpec?.outside).toBe(without);
  });

  it('tells at its own key what no size cures', () => {
    expect(errorsOf({ wheel: { outside: 'auto', height: 1, root_radius: 8 } })).toMatchObject([
      { path: 'wheel.root_radius', message: /does not fit the valley/ },
    ]);
  });

  it('tells when no size is enough', () => {
    expect(errorsOf({ wheel: { outside: 'auto', teeth: 700 } })).toMatchObject([
      { path: 'wheel.outside', message: /No outside up to 1000 mm .*pitch of 5 mm.* fewer teeth/ },
    ]);
  });
});

describe('height left out', () => {
  const heightOf = (patch: Patch) => {
    const { joint } = judge(patch);
    const spec = joint.wheelSpec;
    return spec ? (spec.outside - spec.root) / 2 - (spec.rim ?? 0) : 0;
  };
  const left = (sensor: Patch | undefined, keys: Patch = {}): Patch => ({
    wheel: { height: undefined, ...keys },
    sensor,
  });
  it.each([
    // Figures of src/standards/tooth-rules.ts and 0.03 for each edge (sheet.tolerance), rounded up to half a millimetre.
    ['coil', left({ kind: 'coil' }), 4],
    ['single Hall', left({ kind: 'hall' }), 5.5],
    ['differential Hall', left({ kind: 'differential_hall' }), 2.5],
    ['active', left({ kind: 'active_wheel_speed' }), 3.5],
    ['the data sheet', left({ kind: 'coil', height: 4.2 }), 4.5],
    ['nobody tells', left(undefined), 4],
    ['a large round', left(undefined, { root_radius: 5, teeth: 12 }), 5.5],
    // Pole 3, twice the play of 0.1 and the travel of 0.2, 1 for run-out: 4.6.
    ['from the side', left({ direction: 'axial', pole: 3, bearing_play: 0.1, travel: 0.2 }), 5],
    ['windows, no pole', left({ direction: 'axial' }, { form: 'windows' }), 6],
    [
      'windows in thick sheet',
      left({ direction: 'axial', pole: 1 }, { form: 'windows', outside: 'auto', thickness: 8, teeth: 24 }),
      8,
    ],
  ])('%s', (_, patch, height) => {
    expect(heightOf(patch)).toBeCloseTo(height, 9);
    expect(assumed(judge(patch).joint, 'wheel.height')?.value).toBe(`${height} mm`);
  });
});

describe('what the cut may take', () => {
  // A differential Hall asks for 2 mm (tooth-rules). In 3 mm sheet a service that says nothing holds 0.15 (published), at both edges: 2.3.
  const left = (...patches: readonly Patch[]) =>
    judge({ wheel: { height: undefined }, sheet: { tolerance: undefined } }, ...patches).joint;
  const why = (joint: Joint) => assumed(joint, 'wheel.height')?.from;

  it('is in hand over what the sensor asks for, by the service or as one publishes it', () => {
    const joint = left();
    expect(joint.job.wheel?.height).toBe(2.5);
    expect(why(joint)).toMatch(/what this kind of sensor needs.*, and 0\.3 mm for the cut, half of it at each edge$/);
    // 2 x 0.26: 2.52 takes the next half millimetre. 5 mm sheet: 2 x 0.2, 2.4.
    expect(left({ sheet: { tolerance: 0.26 } }).job.wheel?.height).toBe(3);
    expect(left({ wheel: { thickness: 5 } }).job.wheel?.height).toBe(2.5);
    // The height as cut at worst is still what the sensor asks for.
    expect((joint.job.wheel?.height ?? 0) - 2 * 0.15).toBeGreaterThanOrEqual(2);
  });

  it('leaves a typed height alone', () => {
    expect(left({ wheel: { height: 2 } }).job.wheel?.height).toBe(2);
  });

  it('gives way where the wheel has no room for it, and says what stands there', () => {
    // The adapter (154) asks for roots of 160: on 164 that leaves teeth of 2 and no more.
    const joint = left({ wheel: { outside: 164 } });
    expect(joint.wheelSpec).toMatchObject({ outside: 164, root: 160 });
    expect(why(joint)).toMatch(
      /no room for 0\.3 mm for the cut.* the adapter \(154 mm\) lies 3 mm below the tooth roots$/,
    );
    expect(findingOf({ findings: teeth.run(joint) }, 'tooth-height').verdict).toBe('pass');
  });

  it('is asked of no size where nobody says what the sensor needs', () => {
    const joint = left({ sensor: undefined });
    expect(joint.job.wheel?.height).toBe(4);
    expect(why(joint)).not.toContain('for the cut');
  });

  it('makes a wheel larger for the widths, not for the pitch', () => {
    // Pitch 5: 120 teeth want 191; teeth of 2 and 2 x 0.15 at 0.4 want 2.3 / sin(0.4 pi / 120) = 219.6.
    const joint = left({ wheel: { outside: 'auto', teeth: 120, thickness: 2 } });
    expect(joint.wheelSpec?.outside).toBe(220);
  });
});

describe('count and size both left open', () => {
  const both = (sensor: Patch, keys: Patch = {}): Patch => ({ wheel: { teeth: 'auto', ...open, ...keys }, sensor });

  it('takes what the controller expects, on a wheel that is large enough for it', () => {
    // 44 teeth at 5.4 before, 4.4 now: 54 a turn; differential Hall, 5 mm apart: 86 mm, so what is inside sets the size.
    const { joint } = judge(both({ was: { teeth: 44, ratio: 5.4 }, axle: 4.4 }));
    expect(joint.wheelSpec?.teeth).toBe(54);
    expect(joint.wheelSpec?.outside).toBe(leastByStepping(joint));
    // 120 a turn, and nothing can be told: not possible on the typed 178 (see tooth-count), possible on 197.
    const many = judge(both({ expects: { pulses: 120, adjustable: false } }, { thickness: 2 })).joint;
    expect(many.wheelSpec).toMatchObject({ teeth: 120, outside: 197 });
    expect(assumed(many, 'wheel.teeth')?.value).toBe('120');
  });

  it('tells what is missing before it looks for a size', () => {
    expect(errorsOf(both({}))).toMatchObject([{ path: 'wheel.teeth', message: /what the controller expects/ }]);
    expect(errorsOf(both({ expects: { pulses: 100_000, adjustable: false } }))).toMatchObject([
      { path: 'wheel.teeth', message: /any wheel up to 1000 mm/ },
    ]);
  });
});

describe('every shipped job with its size left open', () => {
  const folder = join(import.meta.dirname, '../../presets');
  const jobs = readdirSync(folder)
    .filter((file) => file.endsWith('.job.yaml'))
    .map((file) => ({ file, data: parse(readFileSync(join(folder, file), 'utf8')) as { wheel?: Patch } }))
    .filter(({ data }) => data.wheel !== undefined);

  it.each(jobs)('$file', ({ data }) => {
    const job = patched(data as Patch, {
      wheel: { outside: 'auto', root: undefined, height: undefined, room: undefined },
    });
    const judged = judgeJob(JSON.stringify(job), 'open.job.yaml', patterns, { search: false });
    if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
    expect(against(judged.joint)).toEqual([]);
    expect(judged.joint.wheelSpec?.outside).toBe(leastByStepping(judged.joint));
    // No larger than what its maker typed.
    const before = judgeJob(JSON.stringify(data), 'typed.job.yaml', patterns, { search: false });
    expect(judged.joint.wheelSpec?.outside).toBeLessThanOrEqual(before.ok ? (before.joint.wheelSpec?.outside ?? 0) : 0);
  });

  it('is there', () => {
    expect(jobs.length).toBeGreaterThan(3);
    expect(soundJob.wheel).toBeDefined();
  });
});
