/** Readings as fields of a flange in the job: chords, dial readings, coordinates. */
import { describe, expect, it } from 'vitest';
import { parseFlangePresets } from '../../src/job/flange-presets.ts';
import { type JobRead, readJob } from '../../src/job/read.ts';
import { resolveFlange } from '../../src/job/resolve-flange.ts';
import { jobJsonSchema } from '../../src/job/schema.ts';
import { onCircle, radians } from './random.ts';

const presets = parseFlangePresets([
  {
    file: 'made-up.yaml',
    text: '- { id: TEST6, family: invented, title: invented, outside: 120, register: { gender: male, diameter: 57, depth: 2 }, holes: { count: 6, circle: 86, diameter: 8.1 }, source: invented, memory: [] }',
  },
]);

const job = (flange: string, side = 'driving') =>
  readJob(
    `job: 1\n${side}: ${flange}\n${side === 'driving' ? 'driven' : 'driving'}: { outside: 150, holes: { count: 4, circle: 110, diameter: 8 } }\n`,
    'x.job.yaml',
  );

function errorsOf(read: JobRead): string {
  if (!read.ok) return read.errors.map(({ path, message }) => `${path}: ${message}`).join('\n');
  const answers = (['driving', 'driven'] as const).map((side) =>
    resolveFlange(side, read.job[side], presets, read.errorAt),
  );
  return answers
    .flatMap((answer) => (answer.ok ? [] : answer.errors.map(({ path, message }) => `${path}: ${message}`)))
    .join('\n');
}

function resolved(flange: string, side: 'driving' | 'driven' = 'driving') {
  const read = job(flange, side);
  if (!read.ok) throw new Error(errorsOf(read));
  const answer = resolveFlange(side, read.job[side], presets, read.errorAt);
  if (!answer.ok) throw new Error(answer.errors.map(({ message }) => message).join('\n'));
  return answer;
}

describe('holes.chords', () => {
  it('become the circle, outside and inside averaged, with half its doubt at each hole', () => {
    const { holes } = resolved(
      '{ outside: 130, holes: { count: 5, diameter: 8.1, chords: [{ span: skip_one, over: outside, reading: [103.2, 103.21] }, { span: skip_one, over: inside, reading: 87 }] } }',
    ).flange;
    // (103.205 + 87) / 2 = 95.1025 between centres; over sin 72 degrees = 0.9510565.
    expect(holes.circle).toBeCloseTo(95.1025 / 0.9510565163, 6);
    expect(holes.doubt).toBeCloseTo(0.03 / 0.9510565163 / 2, 6);
    expect(holes.positions).toHaveLength(5);
  });

  it('stand in for the circle of a preset, which knows count and hole', () => {
    const answer = resolved('{ from: TEST6, holes: { chords: [{ span: farthest, over: outside, reading: 92.1 }] } }');
    expect(answer.flange.holes.circle).toBeCloseTo(84, 9);
    // Caliper 0.03 and catalogue hole 0.05, across the middle.
    expect(answer.flange.holes.doubt).toBeCloseTo(0.04, 9);
    expect(answer.assumptions.map(({ path }) => path)).not.toContain('driving.holes.circle');
  });

  it("may be over pins, and in words, numbers, and the job's units", () => {
    const { holes } = resolved(
      '{ outside: 5 in, holes: { count: 4, thread: M10, chords: [{ span: 2, over: outside, reading: 4.33 in, pin: 0.388 in }] } }',
    ).flange;
    expect(holes.circle).toBeCloseTo((4.33 - 0.388) * 25.4, 9);
  });

  it.each([
    [
      '{ outside: 130, holes: { count: 6, diameter: 8, chords: [{ span: 1, over: centres, reading: 42 }, { span: 2, over: centres, reading: 75 }, { span: 3, over: centres, reading: 84 }] } }',
      /^driving\.holes\.chords\[1\]\.reading: .*odd one is skip one/,
    ],
    [
      '{ outside: 130, holes: { count: 6, diameter: 8, circle: 84, chords: [{ span: 1, over: centres, reading: 42 }] } }',
      /^driving\.holes\.circle: The list chords: already tells/,
    ],
    [
      '{ outside: 130, holes: { count: 6, thread: M8, chords: [{ span: 1, over: outside, reading: 50 }] } }',
      /^driving\.holes\.chords\[0\]\.reading: .*needs their diameter.*pin/,
    ],
    [
      '{ outside: 130, holes: { count: 6, diameter: 8, chords: [{ span: skip, over: centres, reading: 42 }] } }',
      /^driving\.holes\.chords\[0\]\.span: Must be neighbours, skip_one or farthest/,
    ],
    [
      '{ outside: 130, holes: { count: 6, diameter: 8, chords: [{ span: 1, over: centres, reading: [42, 44] }] } }',
      /^driving\.holes\.chords\[0\]\.reading\[\d\]: These readings spread over 2 mm/,
    ],
    [
      '{ outside: 130, holes: { count: 6, diameter: 8, chords: [{ span: 1, ovr: centres, reading: 42 }] } }',
      /^driving\.holes\.chords\[0\]\.ovr: .*Did you mean over/m,
    ],
    ['{ outside: 130, holes: { count: 6, diameter: 8, chords: 42 } }', /^driving\.holes\.chords: Must be a list/],
    [
      '{ outside: 130, holes: { count: 6, diameter: 8, chords: [42] } }',
      /^driving\.holes\.chords\[0\]: Each item has keys of its own/,
    ],
    [
      '{ outside: 130, holes: { count: 3, diameter: 8, chords: [{ span: skip_one, over: centres, reading: 42 }] } }',
      /no hole is left to skip/,
    ],
    // A chord longer than the circle allows: neighbours read as 84 on six would put the circle on 168.
    [
      '{ outside: 120, holes: { count: 6, diameter: 8, chords: [{ span: 1, over: centres, reading: 84 }] } }',
      /^driving\.holes\.chords: The holes break out of the rim.*can be 112 mm at the most here/,
    ],
    [
      '{ outside: 60, holes: { count: 6, diameter: 8, chords: [{ span: 1, over: centres, reading: 42 }] } }',
      /60 is the radius of the outside, write 120 mm/,
    ],
    [
      '{ outside: 120, holes: { diameter: 8, chords: [{ span: 1, over: centres, reading: 42 }] } }',
      /holes\.count is missing/,
    ],
    [
      '{ from: TEST6, holes: { chords: [{ span: 1, over: centres, reading: 42 }, { span: 3, over: centres, reading: 86 }] } }',
      /^driving\.holes\.chords\[\d\]\.reading: These chords do not belong/,
    ],
  ])('answer %s', (flange, why) => {
    expect(errorsOf(job(flange))).toMatch(why);
  });

  it('are in the schema for editors', () => {
    const text = JSON.stringify(jobJsonSchema());
    for (const word of ['"chords"', '"skip_one"', '"outside","inside","centres"', '"pin"'])
      expect(text).toContain(word);
  });
});

describe('runout as dial readings', () => {
  const dial = (e: number, a: number) =>
    Array.from({ length: 8 }, (_, k) => Number((e * Math.cos(radians(45 * k - a))).toFixed(6)));

  it('keeps the total reading, the eccentricity and its direction', () => {
    const { runout } = resolved(
      `{ outside: 120, runout: { rim: [${dial(0.04, 60)}], face: { readings: [${dial(0.03, 200)}], radius: 50 } }, holes: { count: 6, circle: 84, diameter: 8 } }`,
    ).flange;
    expect(runout.rimEccentricity).toMatchObject({ size: expect.closeTo(0.04, 5), angle: expect.closeTo(60, 2) });
    expect(runout.faceTilt).toMatchObject({
      degrees: expect.closeTo((Math.atan(0.03 / 50) * 180) / Math.PI, 5),
      high: expect.closeTo(200, 2),
    });
    const readings = dial(0.04, 60);
    expect(runout.rim).toBeCloseTo(Math.max(...readings) - Math.min(...readings), 9);
  });

  it('mirrors directions of the driven flange, which is typed looking at its own face', () => {
    const { runout } = resolved(
      `{ outside: 120, runout: { rim: [${dial(0.04, 60)}] }, holes: { count: 6, circle: 84, diameter: 8 } }`,
      'driven',
    ).flange;
    expect(runout.rimEccentricity?.angle).toBeCloseTo(120, 2);
  });

  it('still takes one total reading', () => {
    expect(
      resolved('{ outside: 120, runout: { rim: 0.05, face: 0.02 }, holes: { count: 6, circle: 84, diameter: 8 } }')
        .flange.runout,
    ).toEqual({ rim: 0.05, face: 0.02, rimDoubt: 0.01, faceDoubt: 0.01 });
  });

  // One graduation of a dial is 0.01 where nobody says otherwise.
  it.each([
    ['0.03 +-0.005', { rim: 0.03, rimDoubt: 0.005 }],
    ['"0.03 \u00b10.005"', { rim: 0.03, rimDoubt: 0.005 }],
    ['0.03 dial', { rim: 0.03, rimDoubt: 0.01 }],
    ['{ value: 0.03, doubt: 0.002 }', { rim: 0.03, rimDoubt: 0.002 }],
    ['{ value: 0.03 }', { rim: 0.03, rimDoubt: 0.01 }],
    ['0.03 +-0', { rim: 0.03, rimDoubt: 0 }],
    ['1 thou +-0.5 thou', { rim: 0.0254, rimDoubt: 0.0127 }],
  ])('takes a total with its doubt: %s', (rim, { rim: value, rimDoubt }) => {
    const { runout } = resolved(
      `{ outside: 120, runout: { rim: ${rim} }, holes: { count: 6, circle: 84, diameter: 8 } }`,
    ).flange;
    expect(runout.rim).toBeCloseTo(value, 9);
    expect(runout.rimDoubt).toBeCloseTo(rimDoubt, 9);
  });

  it('takes the doubt of each reading round the turn: it goes with the arrow', () => {
    const doubtOf = (more: string) =>
      resolved(
        `{ outside: 120, runout: { rim: { readings: [${dial(0.04, 60)}]${more} } }, holes: { count: 6, circle: 84, diameter: 8 } }`,
      ).flange.runout.rimEccentricity?.doubt ?? 0;
    // In proportion, whatever the readings.
    expect(doubtOf('') / doubtOf(', doubt: 0.01')).toBeCloseTo(1, 9);
    expect(doubtOf('') / doubtOf(', doubt: 0.002')).toBeCloseTo(5, 6);
  });

  it.each([
    ['[0, 0.1]', /^driving\.runout\.rim: Must hold 3 to 72 items/],
    ['[0, 0.1, up]', /^driving\.runout\.rim\[2\]: "up" does not start with a number/],
    ['{ value: 0.1, radius: 40 }', /^driving\.runout\.rim\.radius: value: is one total reading/],
    ['{ doubt: 0.01 }', /^driving\.runout\.rim: A run-out needs readings: .* or value:/],
    ['0.03 +-2', /^driving\.runout\.rim\.doubt: Must be 0 to 1 mm/],
    ['0.03 caliper', /^driving\.runout\.rim\.instrument: /],
    ['-0.1', /^driving\.runout\.rim: Must be 0 to 5 mm/],
    ['{ readings: [0, 0.1, 0.2], angles: [0, 90] }', /^driving\.runout\.rim\.angles: /],
    ['{ readings: [0, 0.1, 0.2], angles: [0, 90, 180], first: 5 }', /^driving\.runout\.rim\.first: .*delete first/],
    ['{ readings: [0, 0.1, 0.2], angles: [0, 90, 360] }', /^driving\.runout\.rim: Two readings stand at 0 degrees/],
    ['{ readngs: [0, 0.1, 0.2] }', /^driving\.runout\.rim\.readngs: .*Did you mean readings/m],
  ])('answers rim: %s', (rim, why) => {
    expect(
      errorsOf(job(`{ outside: 120, runout: { rim: ${rim} }, holes: { count: 6, circle: 84, diameter: 8 } }`)),
    ).toMatch(why);
  });
});

describe('four or more coordinates', () => {
  const at = (radii: readonly number[]) =>
    JSON.stringify(radii.map((radius, k) => onCircle(radius, (360 * k) / radii.length)).map(({ x, y }) => [x, y]));

  it('get a fitted circle, and their doubt from the scatter', () => {
    const exact = resolved(`{ outside: 120, holes: { at: ${at([42, 42, 42, 42, 42, 42])}, diameter: 8 } }`).flange
      .holes;
    expect(exact.circle).toBeCloseTo(84, 6);
    expect(exact.doubt).toBe(0.01);
    const scattered = resolved(
      `{ outside: 120, holes: { at: ${at([42.02, 41.98, 42.02, 41.98, 42.02, 41.98])}, diameter: 8 } }`,
    ).flange.holes;
    expect(scattered.circle).toBeCloseTo(84, 6);
    // Six radial residuals of 0.02: s = sqrt(6 x 0.02^2 / (12 - 4)) = 0.01732; t for 8 freedoms 2.306: 0.0399.
    expect(scattered.doubt).toBeCloseTo(0.0399, 3);
  });

  it('keep the plain doubt, and no circle, where they lie on none', () => {
    const odd = resolved(`{ outside: 120, holes: { at: ${at([42, 42, 44, 42])}, diameter: 8 } }`).flange.holes;
    expect(odd).toMatchObject({ circle: null, doubt: 0.05 });
  });
});
