import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { clearanceHoles } from '../../src/standards/clearance-holes.ts';
import { toleranceLimits } from '../../src/standards/iso286.ts';
import { must } from '../../src/standards/table.ts';

interface FlangeRecord {
  readonly id: string;
  readonly family: string;
  readonly title: string;
  readonly outside?: number;
  readonly thickness?: number;
  readonly register?: {
    readonly gender: 'male' | 'female';
    readonly diameter: number;
    readonly depth?: number;
    readonly fit?: string;
  };
  readonly holes?: { readonly count: number; readonly circle: number; readonly diameter?: number };
  readonly runout?: { readonly rim: number; readonly face: number };
  readonly unsuitable?: string;
  readonly source: string;
  readonly memory: readonly string[];
  readonly note?: string;
}

interface NearMiss {
  readonly a: string;
  readonly b: string;
  readonly circles: readonly [number, number];
  readonly counts: readonly [number, number];
  readonly mismatch: number;
}

const folder = new URL('../../presets/flanges/', import.meta.url);
const read = (file: string): unknown => parse(readFileSync(new URL(file, folder), 'utf8'));
const files = readdirSync(folder).filter((file) => file.endsWith('.yaml') && file !== 'near-misses.yaml');
const records = files.flatMap((file) => read(file) as readonly FlangeRecord[]);
const nearMisses = read('near-misses.yaml') as readonly NearMiss[];

const allowedKeys = new Set([
  'id',
  'family',
  'title',
  'outside',
  'thickness',
  'register',
  'holes',
  'runout',
  'unsuitable',
  'source',
  'memory',
  'note',
]);

/** The value at a dotted path such as holes.circle. */
function at(record: FlangeRecord, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((value, key) => (value as Readonly<Record<string, unknown>> | undefined)?.[key], record);
}

describe('flange presets', () => {
  it('come in five families with ids of their own', () => {
    expect(files).toEqual([
      'cross-tooth.yaml',
      'cv-joint.yaml',
      'din-type-a.yaml',
      'flex-coupling.yaml',
      'sae-type-s.yaml',
    ]);
    expect(new Set(records.map(({ id }) => id)).size).toBe(records.length);
  });

  it.each(records.map((record) => ({ id: record.id, record })))('$id is whole and honest', ({ record }) => {
    expect(Object.keys(record).filter((key) => !allowedKeys.has(key))).toEqual([]);
    expect(record.source.length).toBeGreaterThan(10);
    for (const path of record.memory) expect(at(record, path), path).toBeTypeOf('number');
    if (/memory/.test(record.source)) expect(record.memory.length).toBeGreaterThan(0);
    else expect(record.memory).toEqual([]);
  });

  it.each(records.map((record) => ({ id: record.id, record })))('$id could be drilled', ({ record }) => {
    const { outside, thickness, register, holes } = record;
    if (holes === undefined) return expect(record.unsuitable).toBeDefined();
    const { count, circle, diameter = 0 } = holes;
    const chord = circle * Math.sin(Math.PI / count);
    expect(chord).toBeGreaterThan(2 * diameter);
    if (outside !== undefined) expect(circle + diameter).toBeLessThan(outside);
    if (thickness !== undefined) expect(thickness).toBeLessThan(circle / 5);
    if (register === undefined) return;
    if (register.diameter < circle) expect(register.diameter).toBeLessThan(circle - diameter);
    else expect(register.diameter).toBeGreaterThan(circle + diameter);
    if (register.fit === undefined) return;
    const limits = must(toleranceLimits(register.diameter, register.fit));
    expect(register.gender === 'female' ? limits.lower : limits.upper).toBe(0);
  });

  it('type A: the spigot of each companion flange is shallower than the recess of its shaft flange, so the faces seat', () => {
    const companions = records.filter(({ id }) => /^DIN.*-companion$/.test(id));
    expect(companions).toHaveLength(12);
    for (const companion of companions) {
      const shaft = records.find(({ id }) => id === companion.id.replace('companion', 'shaft'));
      expect(companion.register?.gender).toBe('male');
      expect(shaft?.register?.gender).toBe('female');
      expect(shaft?.register?.diameter).toBe(companion.register?.diameter);
      expect(companion.register?.depth ?? Number.NaN).toBeLessThan(shaft?.register?.depth ?? Number.NaN);
      expect(shaft?.holes).toEqual(companion.holes);
    }
  });

  it('type S turns the genders round', () => {
    for (const { id, register } of records.filter((record) => record.id.startsWith('SAE'))) {
      expect(register?.gender).toBe(id.endsWith('-companion') ? 'female' : 'male');
    }
  });

  // The inch figures in the notes are the standard's own: millimetres must follow from them.
  it('type S circles and registers are their inch sizes', () => {
    for (const { holes, register, note = '' } of records.filter((record) => record.id.startsWith('SAE'))) {
      const inches = /Bolt circle ([\d.]+) in, register ([\d.]+) in/.exec(note);
      expect(Math.abs((holes?.circle ?? 0) - Number(inches?.[1]) * 25.4)).toBeLessThan(0.011);
      expect(Math.abs((register?.diameter ?? 0) - Number(inches?.[2]) * 25.4)).toBeLessThan(0.011);
    }
  });

  it('toothed flanges say why no adapter fits', () => {
    const toothed = records.filter(({ family }) => family.startsWith('cross-tooth'));
    expect(toothed).toHaveLength(5);
    for (const { unsuitable, register } of toothed) {
      expect(unsuitable).toMatch(/teeth/);
      expect(register).toBeUndefined();
    }
  });

  it('bolt holes of joints and couplings are ISO 273 medium holes', () => {
    const medium = clearanceHoles.rows.map((row) => row.medium);
    for (const { holes } of records.filter(({ id }) => /^(CV|FLEX)/.test(id))) {
      if (holes?.diameter !== undefined) expect(medium).toContain(holes.diameter);
    }
  });
});

describe('near misses', () => {
  const base = (id: string) => records.find((record) => record.id === id || record.id === `${id}-companion`);

  it.each(nearMisses)('$a and $b', ({ a, b, circles, counts, mismatch }) => {
    expect(base(a)?.holes?.circle).toBe(circles[0]);
    expect(base(b)?.holes?.circle).toBe(circles[1]);
    expect(base(a)?.holes?.count).toBe(counts[0]);
    // A flange on a flex coupling uses three of the coupling's six holes.
    expect((base(b)?.holes?.count ?? 0) * (b.startsWith('FLEX') ? 2 : 1)).toBe(counts[1]);
    expect(mismatch).toBeCloseTo(Math.abs(circles[0] - circles[1]) / 2, 9);
    expect(mismatch).toBeLessThanOrEqual(1.25);
    expect(base(a)?.family).not.toBe(base(b)?.family);
  });

  it('leave no close pair of families out', () => {
    const bases = records.filter(
      ({ id, holes }) => holes !== undefined && !id.endsWith('-shaft') && id !== 'DIN180-10-companion',
    );
    const close = bases.flatMap((one, at) =>
      bases
        .slice(at + 1)
        .filter(
          (two) => one.family !== two.family && Math.abs((one.holes?.circle ?? 0) - (two.holes?.circle ?? 0)) <= 2.5,
        )
        .map((two) => [one.id, two.id]),
    );
    const listed = new Set(nearMisses.map(({ a, b }) => [a, b].sort().join(' ')));
    const name = (id: string) => id.replace(/-companion$/, '');
    expect(close.filter((pair) => !listed.has(pair.map(name).sort().join(' ')))).toEqual([]);
  });
});
