import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findPreset, parseFlangePresets, parseNearMisses } from '../../src/job/flange-presets.ts';
import { searchPresets } from '../../src/job/search-presets.ts';

const folder = new URL('../../presets/flanges/', import.meta.url);
const texts = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .sort()
  .map((file) => ({ file, text: readFileSync(new URL(file, folder), 'utf8') }));
const presets = parseFlangePresets(texts);

const record = `- id: TEST-1
  family: invented
  title: invented flange
  outside: 100
  holes: { count: 6, circle: 84, diameter: 8.1 }
  source: invented for this test
  memory: []
`;

describe('flange presets', () => {
  it('reads every shipped record and every near-miss pair', () => {
    expect(presets.length).toBeGreaterThan(40);
    for (const pair of parseNearMisses(texts)) {
      const known = presets.map((preset) => preset.id.replace(/-(companion|shaft)$/, ''));
      expect(known).toContain(pair.a);
      expect(known).toContain(pair.b);
    }
  });

  it('lists under memory only keys that the record has', () => {
    for (const preset of presets) {
      for (const path of preset.memory) {
        const value = path
          .split('.')
          .reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], preset);
        expect(value, `${preset.id} ${path}`).toBeDefined();
      }
    }
  });

  it('blames a bad record by file, line and key', () => {
    const read = (text: string) => () => parseFlangePresets([{ file: 'test.yaml', text }]);
    expect(read(record)()).toHaveLength(1);
    expect(read(record.replace('outside: 100', 'outside: -100'))).toThrow(
      /test\.yaml:4 \[0\]\.outside: Must be 20 to 700 mm/,
    );
    expect(read(record.replace('circle', 'circel'))).toThrow(/test\.yaml:5/);
    expect(read('a: [1')).toThrow(/test\.yaml:1/);
    expect(read('a: 1')).toThrow(/must be a list/);
    expect(read(record + record)).toThrow(/there twice/);
  });

  it('finds by id, and guesses at what was meant', () => {
    expect(findPreset(presets, 'din100-shaft')).toMatchObject({
      ok: true,
      value: { id: 'DIN100-shaft', outside: 100 },
    });
    const why = (id: string) => {
      const answer = findPreset(presets, id);
      return answer.ok ? '' : answer.why;
    };
    expect(why('DIN100')).toMatch(/DIN100-companion or DIN100-shaft\?/);
    expect(why('DIN100-shfat')).toMatch(/Did you mean DIN100-shaft\?/);
    expect(why('something else entirely')).toMatch(/List them with: flangewright flanges/);
  });

  it('ranks by what was measured and says the differences', () => {
    const [first, ...rest] = searchPresets(presets, {
      circle: 84.2,
      holes: 6,
      register: 57.01,
      outside: 100,
    });
    expect(first?.preset.id).toMatch(/^DIN100-/);
    expect(first?.differences).toEqual([
      'circle 84 mm, measured 84.2: 0.2 mm more',
      'register 57 mm, measured 57.01: 0.01 mm more',
    ]);
    for (const [index, match] of rest.entries())
      expect(match.distance).toBeGreaterThanOrEqual((index === 0 ? first : rest[index - 1])?.distance ?? 0);
  });

  it('puts a wrong count behind a wrong size, and leaves out patterns that know nothing asked', () => {
    const matches = searchPresets(presets, { circle: 101.5, holes: 8 }, 100);
    expect(matches[0]?.preset.id).toMatch(/^DIN120-/);
    expect(matches.filter((match) => match.preset.holes === undefined)).toEqual([]);
    const counted = searchPresets(presets, { holes: 8 }, 100);
    expect(counted[0]?.preset.holes?.count).toBe(8);
    expect(counted.find((match) => match.preset.holes?.count === 6)?.differences).toEqual(['6 holes, counted 8']);
    expect(searchPresets(presets, {}, 1000)).toHaveLength(presets.length);
  });
});
