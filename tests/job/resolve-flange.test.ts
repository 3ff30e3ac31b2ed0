import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFlangePresets } from '../../src/job/flange-presets.ts';
import { readJob } from '../../src/job/read.ts';
import type { FlangeResolution, ResolvedFlange } from '../../src/job/resolve-flange.ts';
import { resolveFlange } from '../../src/job/resolve-flange.ts';

const folder = new URL('../../presets/flanges/', import.meta.url);
const presets = parseFlangePresets(
  readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => ({ file, text: readFileSync(new URL(file, folder), 'utf8') })),
);

/** Resolve a flange typed in one line of YAML; the other flange is left empty. */
function resolve(side: 'driving' | 'driven', typed: string): FlangeResolution {
  const other = side === 'driving' ? 'driven' : 'driving';
  const read = readJob(`job: 1\n${other}: {}\n${side}: ${typed}\n`, 'test.job.yaml');
  if (!read.ok) throw new Error(read.errors.map((error) => `${error.path}: ${error.message}`).join('\n'));
  return resolveFlange(side, read.job[side], presets, read.errorAt);
}

function flange(side: 'driving' | 'driven', typed: string): ResolvedFlange {
  const answer = resolve(side, typed);
  if (!answer.ok) throw new Error(answer.errors.map((error) => `${error.path}: ${error.message}`).join('\n'));
  return answer.flange;
}

function faults(side: 'driving' | 'driven', typed: string): [string, string][] {
  const answer = resolve(side, typed);
  return answer.ok ? [] : answer.errors.map((error) => [error.path, error.message]);
}

const plain = '{ outside: 120, holes: { count: 6, circle: 84, diameter: 8.1 } }';

describe('a resolved flange', () => {
  it('has every field, and null for what is not known', () => {
    const { holes, ...rest } = flange('driving', plain);
    expect(rest).toEqual({
      side: 'driving',
      name: 'driving flange',
      preset: null,
      outside: { value: 120, doubt: 0.03, basis: 'given' },
      thickness: null,
      register: null,
      bore: null,
      runout: { rim: null, face: null },
      material: null,
      behind: null,
      memory: [],
      source: null,
    });
    expect(holes).toMatchObject({
      circle: 84,
      kind: 'clear',
      diameter: { value: 8.1 },
      thread: null,
      depth: null,
      through: false,
    });
  });

  it('finds the circle from the chord: a regular hexagon has its side equal to its radius', () => {
    expect(
      flange('driving', '{ outside: 120, holes: { count: 6, chord: 42, diameter: 8.1 } }').holes.circle,
    ).toBeCloseTo(84, 9);
    // A square's diagonal is its side times the root of two.
    expect(
      flange('driving', '{ outside: 120, holes: { count: 4, chord: 60, diameter: 8.1 } }').holes.circle,
    ).toBeCloseTo(60 * Math.SQRT2, 9);
    expect(
      flange('driving', '{ outside: 120, holes: { count: 2, chord: 84, diameter: 8.1 } }').holes.circle,
    ).toBeCloseTo(84, 9);
  });

  it('mirrors what is seen looking at the driven face, and not the driving face', () => {
    const holes = 'holes: { at: [[40, 10], [-40, 10], [0, -41]], diameter: 8.1 }';
    expect(flange('driving', `{ outside: 120, ${holes} }`).holes.positions).toEqual([
      { x: 40, y: 10 },
      { x: -40, y: 10 },
      { x: 0, y: -41 },
    ]);
    expect(flange('driven', `{ outside: 120, ${holes} }`).holes.positions).toEqual([
      { x: -40, y: 10 },
      { x: 40, y: 10 },
      { x: 0, y: -41 },
    ]);
  });

  it('gives the same places for angles, at, and count with first', () => {
    for (const side of ['driving', 'driven'] as const) {
      const r = 42;
      const at = [30, 150, 270].map((angle) => [
        r * Math.cos((angle * Math.PI) / 180),
        r * Math.sin((angle * Math.PI) / 180),
      ]);
      const ways = [
        `count: 3, circle: 84, first: 30`,
        `angles: [30, 150, 270], circle: 84`,
        `at: ${JSON.stringify(at)}`,
      ].map((way) => flange(side, `{ outside: 120, holes: { ${way}, diameter: 8.1 } }`).holes);
      for (const holes of ways) {
        expect(holes.circle).toBeCloseTo(84, 9);
        for (const [index, place] of holes.positions.entries()) {
          expect(place.x).toBeCloseTo((side === 'driven' ? -1 : 1) * (at[index]?.[0] ?? Number.NaN), 9);
          expect(place.y).toBeCloseTo(at[index]?.[1] ?? Number.NaN, 9);
        }
      }
    }
  });

  it('keeps distances whatever the side, count and first angle (a mirror is an isometry)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 12 }), fc.integer({ min: -360, max: 360 }), (count, first) => {
        const { positions } = flange(
          'driven',
          `{ outside: 200, holes: { count: ${count}, circle: 150, first: ${first}, diameter: 8.1 } }`,
        ).holes;
        expect(positions).toHaveLength(count);
        for (const [index, a] of positions.entries()) {
          const b = positions[(index + 1) % count] ?? { x: 0, y: 0 };
          expect(Math.hypot(a.x, a.y)).toBeCloseTo(75, 9);
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(150 * Math.sin(Math.PI / count), 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('knows tapped holes by their thread', () => {
    const { holes } = flange(
      'driving',
      '{ outside: 120, holes: { count: 6, circle: 84, thread: M10x1.25, depth: 14 } }',
    );
    expect(holes).toMatchObject({
      kind: 'tapped',
      thread: 'M10x1.25',
      diameter: { value: 10, doubt: 0 },
      depth: 14,
      through: false,
    });
    // 3/8 in = 9.525 mm.
    expect(
      flange('driving', '{ outside: 120, holes: { count: 6, circle: 84, thread: 3/8-16 UNC, through: true } }').holes,
    ).toMatchObject({
      diameter: { value: 9.525 },
      through: true,
    });
  });

  it('has no circle when the holes lie on none', () => {
    expect(
      flange('driving', '{ outside: 120, holes: { at: [[40, 0], [-40, 0], [0, 42]], diameter: 8.1 } }').holes.circle,
    ).toBeNull();
  });

  it('takes the limits of a register from its zone, else from the doubt', () => {
    const register = (typed: string) =>
      flange('driving', `{ outside: 120, register: { ${typed} }, holes: { count: 6, circle: 84, diameter: 8.1 } }`)
        .register;
    // ISO 286-2: 57 h7 is 0 / -0.030, 57 H7 is +0.030 / 0.
    expect(register('gender: male, diameter: 57, depth: 2.3, fit: h7')).toMatchObject({
      limits: { lower: 56.97, upper: 57 },
      zone: 'h7',
      corner: 0,
    });
    expect(register('gender: female, diameter: 57, depth: 2.3, fit: H7, corner: 0.5')).toMatchObject({
      limits: { lower: 57, upper: 57.03 },
      zone: 'H7',
      corner: 0.5,
    });
    expect(register('gender: male, diameter: { value: 57, doubt: 0.01 }, depth: 2.3')).toMatchObject({
      limits: { lower: 56.99, upper: 57.01 },
      zone: null,
    });
    expect(
      flange('driving', '{ outside: 120, register: none, holes: { count: 6, circle: 84, diameter: 8.1 } }').register,
    ).toBeNull();
  });
});

describe('a flange from a preset', () => {
  it('takes every field of the record, and tells which rest on memory', () => {
    const answer = resolve('driven', '{ from: din100-companion }');
    expect(answer.ok).toBe(true);
    if (!answer.ok) return;
    expect(answer.flange).toMatchObject({
      preset: 'DIN100-companion',
      outside: { value: 100, basis: 'catalogue' },
      register: { gender: 'male', diameter: { value: 57 }, zone: 'h7', limits: { lower: 56.97, upper: 57 } },
      holes: { circle: 84, kind: 'clear' },
    });
    const record = presets.find((preset) => preset.id === 'DIN100-companion');
    expect(answer.flange.memory).toEqual(
      expect.arrayContaining((record?.memory ?? []).map((path) => `driven.${path}`)),
    );
    expect(answer.flange.source).toBe(record?.source);
    expect(answer.assumptions.find((assumption) => assumption.path === 'driven.holes.circle')).toEqual({
      path: 'driven.holes.circle',
      value: '84 mm',
      from: 'preset DIN100-companion',
      memory: true,
    });
  });

  it('lets measured fields win, and forgets what they make untrue', () => {
    const { register, holes, memory, outside } = flange(
      'driving',
      '{ from: DIN100-companion, outside: 100.4, register: { diameter: 56.98 }, holes: { thread: M8, depth: 12 } }',
    );
    expect(outside).toMatchObject({ value: 100.4, basis: 'given' });
    expect(register).toMatchObject({ gender: 'male', zone: null, limits: { lower: 56.95, upper: 57.01 } });
    expect(holes).toMatchObject({ kind: 'tapped', thread: 'M8', depth: 12, circle: 84 });
    expect(memory).not.toContain('driving.outside');
    expect(memory).not.toContain('driving.holes.diameter');
    expect(memory).toContain('driving.holes.circle');
  });

  it('replaces the layout as a whole', () => {
    expect(
      flange('driving', '{ from: DIN100-companion, holes: { at: [[42, 0], [-42, 0]] } }').holes.positions,
    ).toHaveLength(2);
    expect(
      flange('driving', '{ from: DIN100-companion, holes: { angles: [0, 70, 180] } }').holes.positions,
    ).toHaveLength(3);
    expect(flange('driving', '{ from: DIN100-companion, holes: { chord: 41 } }').holes.circle).toBeCloseTo(82, 9);
    expect(flange('driving', '{ from: DIN100-companion, register: none }').register).toBeNull();
  });

  it('resolves every suitable record on either side, once what it lacks is measured', () => {
    for (const preset of presets) {
      const text = `{ from: ${preset.id}${preset.outside === undefined ? ', outside: 160' : ''}${preset.register === undefined || preset.register.depth !== undefined ? '' : ', register: { depth: 2 }'}${preset.holes === undefined ? ', holes: { count: 4, circle: 70, diameter: 8 }' : preset.holes.diameter === undefined && preset.holes.thread === undefined ? ', holes: { diameter: 13 }' : ''} }`;
      for (const side of ['driving', 'driven'] as const) {
        const found = faults(side, text);
        if (preset.unsuitable === undefined) expect(found, preset.id).toEqual([]);
        else
          expect(
            found.map(([path]) => path),
            preset.id,
          ).toEqual([`${side}.from`]);
      }
    }
  });
});

describe('what is missing or doubtful is asked for at the flange', () => {
  const cases: readonly (readonly [string, string, RegExp])[] = [
    ['{ holes: { count: 6, circle: 84, diameter: 8.1 } }', 'driving.outside', /measure across its rim/],
    ['{ outside: 120 }', 'driving.holes', /count them, measure the circle/],
    ['{ outside: 120, holes: { circle: 84, diameter: 8.1 } }', 'driving.holes.count', /How many holes/],
    ['{ outside: 120, holes: { count: 6, diameter: 8.1 } }', 'driving.holes.circle', /outer edge to outer edge/],
    [
      '{ outside: 120, holes: { count: 6, circle: 84 } }',
      'driving.holes.diameter',
      /diameter for clear holes, or thread/,
    ],
    ['{ from: DIN999 }', 'driving.from', /no flange pattern "DIN999"/],
    ['{ from: XS120 }', 'driving.from', /No adapter is made for XS120: The teeth/],
    ['{ from: SAE1300-companion }', 'driving.register.depth', /SAE1300-companion gives none\. Measure it/],
    [
      '{ from: DIN100-companion, register: { diameter: 28.5 } }',
      'driving.register.diameter',
      /57 \/ 2 = 28\.5: did you type the radius\?/,
    ],
    [
      '{ from: DIN100-companion, holes: { circle: 42 } }',
      'driving.holes.circle',
      /radius of the circle\? Twice 42 mm is 84 mm/,
    ],
    ['{ from: DIN100-companion, outside: 80 }', 'driving.holes.circle', /break out of the rim/],
    ['{ from: DIN100-companion, register: { fit: H7 } }', 'driving.register.fit', /write small letters/],
    [
      '{ outside: 700, register: { gender: male, diameter: 550, depth: 5, fit: h7 }, holes: { count: 6, circle: 640, diameter: 8.1 } }',
      'driving.register.fit',
      /covers sizes/,
    ],
  ];
  it.each(cases)('%s asks at %s', (typed, path, phrase) => {
    const found = faults('driving', typed);
    expect(found.map(([at]) => at)).toEqual([path]);
    expect(found[0]?.[1]).toMatch(phrase);
  });

  it('points at the line of the flange', () => {
    const answer = resolve('driven', '{ from: XS120 }');
    expect(answer.ok ? null : answer.errors[0]).toMatchObject({
      file: 'test.job.yaml',
      line: 3,
      column: 17,
      value: 'XS120',
    });
  });
});
