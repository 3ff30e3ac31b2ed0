/** Every key that takes text gets every hostile text: it is refused at its place, or it stands harmless in every file. */
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { formatErrors, judgeJob, makeFiles, readJob } from '../../src/core.ts';
import type { KeyPath, Schema } from '../fuzz/grammar.ts';
import { textFaultOf } from '../fuzz/oracle.ts';
import { readWorld } from '../fuzz/world.ts';
import { hostileStrings, liveMarkup } from './strings.ts';

const world = readWorld();
const [base] = world.jobs;

/** The schemas that a path leads to. */
function schemasAt(schema: Schema, [step, ...rest]: KeyPath): Schema[] {
  if (step === undefined) return [schema, ...(schema.anyOf ?? [])];
  return [schema, ...(schema.anyOf ?? [])].flatMap((way) => {
    const child = step === '[]' ? way.items : way.properties?.[step];
    return child === undefined ? [] : schemasAt(child, rest);
  });
}

/** A shipped job with a value at a path; lists on the way get one item. */
function withText(data: unknown, [step, ...rest]: KeyPath, text: string): unknown {
  if (step === undefined) return text;
  if (step === '[]') return [withText(Array.isArray(data) ? data[0] : undefined, rest, text)];
  const section = typeof data === 'object' && data !== null && !Array.isArray(data) ? data : {};
  return { ...section, [step]: withText((section as Record<string, unknown>)[step], rest, text) };
}

const takesText = world.paths.filter((path) =>
  schemasAt(world.schema, path).some(
    ({ type }) => type === 'string' || (Array.isArray(type) && type.includes('string')),
  ),
);
/** Free words: any text goes, so it may come through to the files. */
const free = world.paths.filter((path) =>
  schemasAt(world.schema, path).some(({ type, pattern, maxLength }) => type === 'string' && !pattern && maxLength),
);

describe('hostile text', () => {
  it('in any key that takes text is read, or refused in printable words', () => {
    let refused = 0;
    takesText.forEach((path, index) => {
      const names = Object.keys(hostileStrings);
      for (const step of [0, 1]) {
        const text = hostileStrings[names[(index + 5 * step) % names.length] ?? ''] ?? '';
        const typed = stringify(withText(base, path, text));
        const read = readJob(typed, 'x.job.yaml');
        if (read.ok) continue;
        refused++;
        expect(textFaultOf(path.join('.'), formatErrors(read.errors, typed))).toBeNull();
        expect(
          textFaultOf(path.join('.'), read.errors.map(({ path: at, value }) => `${at} ${value ?? ''}`).join()),
        ).toBeNull();
      }
    });
    expect(takesText.length).toBeGreaterThan(150);
    expect(refused).toBeGreaterThan(150);
  });

  it('in the name of a key is refused in printable words', () => {
    for (const path of world.paths.filter((_, index) => index % 29 === 0)) {
      for (const text of Object.values(hostileStrings)) {
        const typed = stringify(withText(base, [...path.slice(0, -1), text], 'x'));
        const read = readJob(typed, 'x.job.yaml');
        expect(read.ok).toBe(false);
        if (!read.ok) expect(textFaultOf(path.join('.'), formatErrors(read.errors, typed))).toBeNull();
      }
    }
  });

  it('cannot be a key that every object has', () => {
    for (const key of ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', '__defineGetter__']) {
      for (const text of [
        `{"job": 1, "${key}": {"x": 1}, "driving": {}, "driven": {}}`,
        `job: 1\ndriving: {}\ndriven: { ${key}: { polluted: 1 } }\n`,
      ])
        expect(readJob(text, 'x').ok).toBe(false);
    }
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('as the name of a flange pattern opens no file and is told in printable words', () => {
    for (const text of Object.values(hostileStrings)) {
      const typed = stringify(withText(base, ['driving', 'from'], text));
      const judged = judgeJob(typed, 'x', world.patterns);
      expect(judged.ok).toBe(false);
      if (judged.ok) continue;
      expect(['driving.from', '']).toContain(judged.errors[0]?.path);
      expect(textFaultOf('from', formatErrors(judged.errors, typed))).toBeNull();
    }
  });

  it.each(Object.entries(hostileStrings))('%s in every name at once stands harmless in every file', async (_, text) => {
    expect(free.map((path) => path.join('.'))).toEqual(
      expect.arrayContaining(['title', 'note', 'adapter.name', 'wheel.name']),
    );
    const named = free
      .filter((path) => path.at(-1) !== 'from' && !path.includes('[]') && withText(base, path, 'x') !== null)
      .reduce<{ data: unknown; taken: string[] }>(
        ({ data, taken }, path) => {
          const next = withText(data, path, text.slice(0, 40));
          return readJob(stringify(next), 'x').ok ? { data: next, taken: [...taken, path.join('.')] } : { data, taken };
        },
        { data: base, taken: [] },
      );
    // What cannot be printed is refused in every name; what can be goes through to the files.
    if (/[\p{C}\p{Zl}\p{Zp}]/u.test(text.slice(0, 40))) return expect(named.taken).toEqual([]);
    expect(named.taken).toEqual(
      expect.arrayContaining(['title', 'note', 'adapter.name', 'wheel.name', 'driving.name']),
    );
    const judged = judgeJob(stringify(named.data), text, world.patterns, { search: false });
    if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join('\n'));
    const only = [
      'mockup',
      'outline',
      'preview',
      'paper',
      'inspection',
      'bench-sheet',
      'report',
      'order',
      'bracket',
      'shaft',
      'setup',
      'hole-table',
    ];
    const { files } = await makeFiles(judged.joint, judged.findings, { base: 'x', jobName: text, only, force: true });
    for (const { name, bytes } of files) {
      if (/\.(html|svg|txt|json|dxf|csv)$/.test(name)) {
        const content = new TextDecoder().decode(bytes);
        expect(textFaultOf(name, name.endsWith('.json') ? JSON.stringify(JSON.parse(content)) : content)).toBeNull();
        if (/\.(html|svg)$/.test(name)) expect(liveMarkup.exec(content), name).toBeNull();
        if (name.endsWith('.csv')) expect(content).not.toMatch(/(^|[,;\n])"?[=@]/);
        if (name.endsWith('.dxf')) expect(content.match(/^EOF\r?$/gm)?.length, name).toBe(1);
      } else if (name.endsWith('.stl')) {
        expect(new TextDecoder('latin1').decode(bytes.subarray(0, 80))).toMatch(/^[ -~]{80}$/);
      } else if (name.endsWith('.pdf')) {
        const told = spawnSync('pdfinfo', ['-'], { input: bytes, encoding: 'utf8' });
        expect([told.status, told.stderr, /JavaScript:\s+no/.test(told.stdout)]).toEqual([0, '', true]);
      }
    }
    expect(files.length).toBeGreaterThan(8);
  });
});
