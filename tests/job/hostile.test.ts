import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { legalKeys } from '../../src/job/legal-keys.ts';
import { formatErrors, readJob } from '../../src/job/read.ts';
import { pieces } from '../fuzz/mutate.ts';
import { goodJob } from './sample.ts';

const kib = 1024;
const repeat = (piece: string, size = 250 * kib) => piece.repeat(Math.floor(size / piece.length));

/** Texts made to hurt a parser: deep, wide, long, or full of one sign. */
const hostile: Readonly<Record<string, string>> = {
  'deep lists': `a: ${repeat('[')}`,
  'deep lists behind comments': `a: ${repeat('[ #]\n ')}`,
  'deep maps': repeat('{a: '),
  'deep dashes': repeat('- '),
  'deep question marks': repeat('? '),
  'deep colons': repeat(': '),
  'keys in keys': repeat('a: '),
  'deep indentation': Array.from({ length: 700 }, (_, level) => `${' '.repeat(level)}a:`).join('\n'),
  'ten thousand keys': Array.from({ length: 10_000 }, (_, index) => `key${index}: 1`).join('\n'),
  'one key ten thousand times': repeat('job: 1\n', 70 * kib),
  'a list of ones': `job: [${repeat('1,')}]`,
  'a list of commas': `job: [${repeat(',')}`,
  anchors: Array.from({ length: 9000 }, (_, index) => `k${index}: &a${index} 1`).join('\n'),
  aliases: `a: &a 1\n${Array.from({ length: 5_000 }, (_, index) => `k${index}: *a`).join('\n')}`,
  'aliases of aliases': `a: &a [1,1,1,1,1,1,1,1,1]\n${[...'bcdefgh'].map((name, index) => `${name}: &${name} [${Array(9).fill(`*${'abcdefg'[index]}`).join(',')}]`).join('\n')}`,
  'an alias of itself': 'driving: &a { register: *a }\n',
  quotes: `a: ${repeat('"')}`,
  escapes: `a: "${repeat('\\n')}"`,
  'a folded text': `note: "${repeat('x\n ')}"`,
  'closing braces': repeat('}'),
  tabs: `a:\n${repeat('\t\n')}`,
  'blank lines': `job:${repeat('\n')}`,
  'comment lines': repeat('#\n'),
  blanks: `job: 1${repeat(' ')}x`,
  'exclamation marks': repeat('!'),
  ampersands: repeat('& '),
  'percent signs': repeat('%a\n'),
  documents: repeat('---\n'),
  'one long word': repeat('x'),
  'one long key': `${repeat('x')}: 1`,
  'one long number': `job: ${repeat('9')}`,
  'one long length': `job: 1\ndriving: { outside: ${repeat('9')} }\ndriven: {}`,
  'one long fraction': `job: 1\ndriving: { outside: "${repeat('1 1/')}" }\ndriven: {}`,
  'long title': `job: 1\ntitle: ${repeat('x')}`,
  'carriage returns': repeat('\r'),
  'ten megabytes': repeat('# a comment\n', 10 * kib * kib),
  'zero bytes': repeat('\u0000'),
  'unpaired surrogates': repeat('\uD800'),
  'right-to-left marks': `job: 1\ntitle: "a\u202Eb"\ndriving: {}\ndriven: {}`,
  'readings without end': `job: 1\ndriving: { outside: [${repeat('120,', 30 * kib)}] }\ndriven: {}`,
  'holes without end': `job: 1\ndriving: { holes: { at: [${repeat('[1,2],', 30 * kib)}] } }\ndriven: {}`,
};

/** A sound answer. Nothing is timed here (see the benches); a text that hangs the reader runs into the test's own time limit. */
function answer(text: string): string {
  const read = readJob(text, 'hostile.job.yaml');
  const said = read.ok ? '' : formatErrors(read.errors, text);
  if (!read.ok) {
    expect(read.errors.length).toBeGreaterThan(0);
    expect(read.errors.length).toBeLessThanOrEqual(100);
    for (const error of read.errors) {
      expect(
        Number.isInteger(error.line) && error.line >= 1 && Number.isInteger(error.column) && error.column >= 1,
      ).toBe(true);
      expect(error.message.length).toBeGreaterThan(8);
      expect(error.message.length).toBeLessThan(1200);
      expect(error.path.length).toBeLessThanOrEqual(200);
    }
  }
  expect(said).not.toMatch(/\n\s+at .*:\d+:\d+/);
  return said;
}

describe('hostile text', () => {
  it.each(Object.keys(hostile))('%s', (name) => {
    expect(answer(hostile[name] ?? '')).not.toBe('');
  });

  it.each([
    'deep lists',
    'deep lists behind comments',
    'deep maps',
    'deep dashes',
    'keys in keys',
    'deep indentation',
    'an alias of itself',
  ])('%s: the depth is named', (name) => {
    expect(answer(hostile[name] ?? '')).toMatch(/Nested too deeply: a job is at most 32 levels deep/);
  });

  it.each(['aliases', 'aliases of aliases'])('%s: the aliases are named', (name) => {
    expect(answer(hostile[name] ?? '')).toMatch(/Too many aliases/);
  });

  it('any characters are answered by errors with places', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 400 }), fc.string({ maxLength: 400 })), (text) => {
        expect(answer(text)).not.toBe('');
      }),
      { numRuns: 300 },
    );
  });

  it('any small damage to a good job is read, or answered by errors with places', () => {
    const piece = fc.oneof(fc.string({ maxLength: 6 }), fc.constantFrom(...pieces));
    fc.assert(
      fc.property(fc.nat(goodJob.length), fc.nat(12), piece, (at, cut, added) => {
        answer(goodJob.slice(0, at) + added + goodJob.slice(at + cut));
      }),
      { numRuns: 600 },
    );
  });

  it('junk in place of each key of each section is answered at that key', () => {
    const junk = [5, 'x', [], [[]], {}, { x: 1 }, true, null, -1e300, ['a', 'b']];
    const base = parse(goodJob) as Record<string, unknown>;
    let keys = 0;
    const visit = (steps: readonly string[]): void => {
      for (const key of legalKeys(steps)) {
        const path = [...steps, key];
        keys += 1;
        // Each key meets the empty value and every fifth other, the next key the ones after those.
        for (const value of junk.filter((one, index) => one === null || (index + keys) % 5 === 0)) {
          const data = structuredClone(base);
          let section = data;
          for (const step of steps) {
            const inner = section[step];
            section[step] = typeof inner === 'object' && inner !== null ? inner : {};
            section = section[step] as Record<string, unknown>;
          }
          section[key] = value;
          const said = answer(JSON.stringify(data));
          if (value === null) expect(said, path.join('.')).toContain(path.join('.'));
        }
        if (path.length < 6) visit(path);
      }
    };
    visit([]);
    expect(keys).toBeGreaterThan(120);
  });

  it('any data at all in place of any key is read, or answered by errors with places', () => {
    const keys = [
      'job',
      'title',
      'units',
      'duty',
      'driving',
      'driven',
      'adapter',
      'wheel',
      'sensor',
      'shaft',
      'print',
      'sheet',
    ];
    const data = fc.jsonValue({ maxDepth: 3 });
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom(...keys, 'outside', '__proto__'), data),
        data,
        fc.constantFrom('driving', 'driven', 'adapter', 'wheel'),
        (whole, part, key) => {
          answer(JSON.stringify(whole));
          answer(JSON.stringify({ job: 1, driving: {}, driven: {}, [key]: part }));
        },
      ),
      { numRuns: 500 },
    );
  });
});
