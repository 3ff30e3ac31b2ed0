/** Editing one value of a job: the rest of the file stays as it was typed. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJobText } from '../../src/job/document.ts';
import { editJob } from '../../src/job/edit.ts';

const folder = join(import.meta.dirname, '../../presets');
const shipped = readdirSync(folder)
  .filter((name) => name.endsWith('.job.yaml'))
  .map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));

function edited(text: string, path: readonly (string | number)[], typed: string | null): string {
  const result = editJob(text, path, typed);
  if (!result.ok) throw new Error(result.why);
  return result.text;
}

const job = `# top
job: 1
duty:            # what it must carry
  torque: 320 N.m   # peak
  speed: 2600 rpm
driving:
  holes: { count: 6, circle: [84.02, 83.98], thread: M8 }  # three readings
  register:
    diameter: 62
    # how far it stands out
    depth: 4

# the other end
driven: {}
`;

describe('one value', () => {
  it.each([
    [['duty', 'speed'], '2800 rpm', 'speed: 2600 rpm', 'speed: 2800 rpm'],
    [['duty', 'torque'], '350 lbf.ft', 'torque: 320 N.m   # peak', 'torque: 350 lbf.ft   # peak'],
    [['driving', 'holes', 'count'], '8', 'count: 6,', 'count: 8,'],
    [['driving', 'holes', 'circle'], '[84.02, 84]', 'circle: [84.02, 83.98]', 'circle: [84.02, 84]'],
    [['driving', 'holes', 'circle', 1], '84.01', '[84.02, 83.98]', '[84.02, 84.01]'],
    [['driving', 'register', 'depth'], '4.1', 'depth: 4\n', 'depth: 4.1\n'],
    [['driving', 'register', 'corner'], '0.6', '    depth: 4\n', '    depth: 4\n    corner: 0.6\n'],
    [['driving', 'holes', 'first'], '15 deg', 'thread: M8 }', 'thread: M8, first: 15 deg }'],
    [['driven', 'holes', 'count'], '4', 'driven: {}', 'driven: { holes: { count: 4 } }'],
    [['title'], 'Winch: motor to drum', 'driven: {}\n', 'driven: {}\ntitle: "Winch: motor to drum"\n'],
    [['duty', 'speed'], null, '  speed: 2600 rpm\n', ''],
    [['driving', 'holes', 'thread'], null, ', thread: M8 }', ' }'],
    [['driving', 'holes', 'count'], '', '{ count: 6, circle', '{ circle'],
    [
      ['driving', 'register'],
      'none',
      '  register:\n    diameter: 62\n    # how far it stands out\n    depth: 4',
      '  register: none',
    ],
  ] as const)('%j = %s', (path, typed, before, after) => {
    expect(edited(job, path, typed)).toBe(job.replace(before, after));
  });

  it.each([
    [['duty', 'speed', 'most'], '1', /value of its own/],
    [['duty', 'speed'], '[1, 2', /edit the file as text|not a value|"/],
    [['driving', 'holes', 'circle', 5], '1', /list of 2 here: it has no \[5\]/],
    [['driving', 'holes', 'circle', 'value'], '1', /list of 2 here: it has no value/],
    [['sheet', 'tolerances', 1, 'tolerance'], '0.1', /no list for sheet\.tolerances\[1\]\.tolerance yet/],
    [[], '1', /no key/],
    [['duty', 'speed'], '1\nevil: 2', /one line/],
  ] as const)('%j = %s is answered', (path, typed, why) => {
    const result = editJob(job, path, typed);
    if (result.ok) expect(JSON.stringify(parseJobText(result.text).data)).not.toContain('evil');
    else expect(result.why).toMatch(why);
  });

  it('answers a text that cannot be read', () => {
    expect(editJob('job: [1', ['job'], '1')).toMatchObject({ ok: false });
  });
});

/** All paths to plain values of data. */
function paths(data: unknown, at: (string | number)[] = []): (string | number)[][] {
  if (Array.isArray(data)) return data.flatMap((item, i) => paths(item, [...at, i]));
  if (typeof data === 'object' && data !== null)
    return Object.entries(data).flatMap(([key, value]) => paths(value, [...at, key]));
  return [at];
}

const lookUp = (data: unknown, path: readonly (string | number)[]) =>
  path.reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], data);

describe('shipped jobs', () => {
  it.each(shipped)('$name: every value set to another comes back, and every other line is untouched', ({ text }) => {
    for (const path of paths(parseJobText(text).data)) {
      const after = edited(text, path, '12.5');
      expect(lookUp(parseJobText(after).data, path)).toBe(12.5);
      const [a, b] = [text.split('\n'), after.split('\n')];
      expect(b.length).toBe(a.length);
      expect(a.filter((line, i) => line !== b[i]).length).toBeLessThanOrEqual(1);
    }
  });

  it.each(shipped)('$name: every key taken out is gone, all comments stay', ({ text }) => {
    const comments = (of: string) => of.split('\n').filter((line) => line.trimStart().startsWith('#'));
    for (const path of paths(parseJobText(text).data)) {
      if (typeof path.at(-1) === 'number') continue;
      const result = editJob(text, path, null);
      if (!result.ok) continue;
      expect(lookUp(parseJobText(result.text).data, path)).toBeUndefined();
      expect(comments(result.text)).toEqual(comments(text));
    }
  });

  it('any words at any key come back as typed, or are answered', () => {
    const key = fc.constantFrom('title', 'note', 'duty', 'driving', 'new_key', 'built');
    fc.assert(
      fc.property(
        fc.constantFrom(...shipped),
        fc.array(key, { minLength: 1, maxLength: 3 }),
        fc.string(),
        ({ text }, path, typed) => {
          const result = editJob(text, path, typed);
          if (!result.ok) {
            expect(result.why).toMatch(/[a-z].*\.$/s);
            return;
          }
          const { data, faults } = parseJobText(result.text);
          expect(faults).toEqual([]);
          if (typed.trim() !== '') expect(String(lookUp(data, path)).length).toBeGreaterThan(0);
        },
      ),
    );
  });
});
