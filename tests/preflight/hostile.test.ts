/** Whatever the bytes: no throw, no hang, findings in their fixed shape. The test runner's own time limit is the bound. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { preflightDxf } from '../../src/preflight/preflight.ts';
import { preflightJson, preflightText } from '../../src/report/preflight-text.ts';
import { overallVerdict } from '../../src/report/rank.ts';
import '../seed.ts';
import { corrupted } from './corrupted.ts';
import { arc, box, circle, dxf, entity, line, plate, polyline } from './dxf-script.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Looks at a file and holds the answer to its shape. */
function look(bytes: Uint8Array) {
  const read = preflightDxf(bytes, { thickness: 3 });
  expect(read.findings.length).toBeGreaterThan(0);
  expect(JSON.parse(JSON.stringify(preflightJson(read, 'x.dxf')))).toEqual(preflightJson(read, 'x.dxf'));
  // ASCII and no control characters, however the file's own names look.
  expect(preflightText(read, 'x.dxf')).toMatch(/^[\n -~]*$/);
  for (const { value, limit, margin, code, why } of read.findings) {
    expect(code).toMatch(/^dxf-[a-z0-9-]+$/);
    expect(why.length).toBeGreaterThan(5);
    for (const number of [value, limit, margin]) expect(number === null || Number.isFinite(number)).toBe(true);
  }
  return read;
}

describe('any bytes', () => {
  it('never throw', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), (bytes) => {
        look(bytes);
      }),
      { numRuns: 300 },
    );
  });

  const value = fc.oneof(
    fc.constantFrom(
      'LINE',
      'CIRCLE',
      'ARC',
      'LWPOLYLINE',
      'POLYLINE',
      'VERTEX',
      'SEQEND',
      'SPLINE',
      'ELLIPSE',
      'INSERT',
      'HATCH',
    ),
    fc.constantFrom(
      'SECTION',
      'ENDSEC',
      'EOF',
      'ENTITIES',
      'BLOCKS',
      'BLOCK',
      'ENDBLK',
      'HEADER',
      'TABLES',
      'LAYER',
      'a',
      '0',
    ),
    fc.double().map(String),
    fc.integer({ min: -3, max: 200 }).map(String),
    fc.constantFrom('', '-0', '1e308', '1e999', 'NaN', '0x10', '1,5', '\u0000', '\u202e'),
  );
  const code = fc.constantFrom(
    0,
    0,
    0,
    2,
    5,
    8,
    9,
    10,
    20,
    30,
    11,
    21,
    31,
    40,
    41,
    42,
    43,
    50,
    51,
    60,
    62,
    67,
    70,
    71,
    72,
    73,
    210,
    220,
    230,
    1000,
  );
  it('in pairs never throw', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(code, value), { maxLength: 120 }), (groups) => {
        const text = groups.map(([c, v]) => `${c}\n${v}\n`).join('');
        look(bytesOf(text));
        look(bytesOf(dxf({ entities: [text] })));
      }),
      { numRuns: 300 },
    );
  });

  const texts = corrupted.flatMap(({ text }) => (typeof text === 'string' && text !== '' ? [text] : []));
  it('of drawings that were damaged on the way never throw', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.array(fc.tuple(fc.nat(4000), fc.constantFrom('drop', 'twice', 'number', 'cut'), value), {
          minLength: 1,
          maxLength: 6,
        }),
        (text, hits) => {
          let lines = text.split('\n');
          for (const [at, how, other] of hits) {
            const i = at % Math.max(1, lines.length);
            if (how === 'drop') lines.splice(i, 2);
            else if (how === 'twice') lines.splice(i, 0, ...lines.slice(i, i + 20));
            else if (how === 'number') lines[i | 1] = other;
            else lines = lines.slice(0, Math.max(1, i));
          }
          look(bytesOf(lines.join('\n')));
        },
      ),
      { numRuns: 600 },
    );
  });
});

describe('files made to hang a reader', () => {
  const many = (count: number, make: (i: number) => string): string[] =>
    Array.from({ length: count }, (_, i) => make(i));
  const blocks = (depth: number) =>
    Object.fromEntries(
      many(depth, String).map((name, i) => [
        name,
        i === 0
          ? [circle(0, 0, 1)]
          : many(10, (k) =>
              entity('INSERT', [
                [2, i - 1],
                [10, k],
                [20, 0],
              ]),
            ),
      ]),
    );
  it.each([
    ['one circle four thousand times', many(4000, () => circle(5, 5, 5))],
    ['four thousand circles about one centre', many(4000, (i) => circle(0, 0, 1 + i / 100))],
    ['two thousand lines that all cross', many(2000, (i) => line(0, i, 1000, 2000 - i))],
    [
      'a knot of one polyline',
      [polyline(many(4000, String).map((_, i) => [1000 * Math.cos(i * 2.5), 1000 * Math.sin(i * 2.4)]))],
    ],
    [
      'twenty thousand stray lines',
      many(20_000, (i) => line(3 * (i % 300), 3 * Math.floor(i / 300), 3 * (i % 300) + 1, 3 * Math.floor(i / 300))),
    ],
    ['twenty thousand crumbs at one place', many(20_000, (i) => line(0, 0, 0.001 * Math.cos(i), 0.001 * Math.sin(i)))],
    ['arcs of a great circle', many(5000, (i) => arc(0, 0, 9e8, i / 100, i / 100 + 180))],
    [
      'ellipses without end',
      many(40, () =>
        entity('ELLIPSE', [
          [10, 0],
          [20, 0],
          [11, 9e8],
          [21, 0],
          [40, 0.5],
          [41, 0],
          [42, 6.2831],
        ]),
      ),
    ],
    ['plates side by side', many(10_000, (i) => box(100 * (i % 100), 60 * Math.floor(i / 100), 80, 50))],
  ])(
    '%s',
    (_, entities) => {
      expect(overallVerdict(look(bytesOf(dxf({ entities }))).findings)).not.toBe('pass');
    },
    60_000,
  );

  it('blocks in blocks, ten each, twelve deep', () => {
    const read = look(
      bytesOf(
        dxf({
          blocks: blocks(12),
          entities: [
            ...plate,
            entity('INSERT', [
              [2, 11],
              [10, 0],
              [20, 0],
            ]),
          ],
        }),
      ),
    );
    expect(read.findings.map(({ code }) => code)).toContain('dxf-block-loop');
  }, 60_000);
});
