/** The short share of the fuzzing: a fixed seed, every kind of case, and every failure of the past. `npm run fuzz` goes on for as long as asked. */
import { describe, expect, it } from 'vitest';
import { legalKeys } from '../../src/job/legal-keys.ts';
import { readJob } from '../../src/job/read.ts';
import { type Asked, kinds, makeCase, runCase } from './cases.ts';
import { chanceFrom } from './chance.ts';
import { keyPaths } from './grammar.ts';
import { notFinite, textFaultOf } from './oracle.ts';
import { pastFailures } from './past-failures.ts';
import { programFault } from './program-fault.ts';
import { shrunk } from './shrink.ts';
import { openEdges } from './stl-edges.ts';
import { readWorld } from './world.ts';

const world = readWorld();
const seed = 20261125;

describe('the grammar', () => {
  it('knows every key that the reader knows', () => {
    const known = new Set(world.paths.map((path) => path.filter((step) => step !== '[]').join('.')));
    let checked = 0;
    const visit = (steps: readonly string[]): void => {
      for (const key of legalKeys(steps)) {
        const path = [...steps, key];
        expect(known).toContain(path.join('.'));
        checked++;
        if (path.length < 8) visit(path);
      }
    };
    visit([]);
    expect(checked).toBeGreaterThan(400);
  });

  it('grows every key into a job, one after the other, so that it stands in the text', () => {
    const missed = world.paths.filter((path, index) => {
      const grown = makeCase(world, seed, index * kinds.length + 1);
      expect(grown.path).toBe(path);
      return !new TextDecoder().decode(grown.bytes).includes(path.at(-1) ?? '');
    });
    expect(missed.map((path) => path.join('.'))).toEqual([]);
  });

  it('makes the same case of the same number', () => {
    for (let number = 0; number < 3 * kinds.length; number++)
      expect(makeCase(world, 5, number)).toEqual(makeCase(world, 5, number));
  });
});

describe('any input', () => {
  it('is answered: no throw, no number that is none, no open mesh, every error with its place', async () => {
    const seen = { joints: 0, sound: 0, cases: 0 };
    for (let number = 0; number < 8 * kinds.length; number++) {
      const made = makeCase(world, seed, number);
      const { fault, becameJoint } = await runCase(world, { ...made, asked: { ...made.asked, search: false } });
      expect(fault, `case ${number} of seed ${seed}, ${made.kind}`).toBeNull();
      seen.cases++;
      if (becameJoint) seen.joints++;
      if (made.ending === 'job.yaml' && readJob(new TextDecoder().decode(made.bytes), 'f').ok) seen.sound++;
    }
    // The cases are worth something only when a good share of them gets past the reader.
    expect(seen.sound).toBeGreaterThan(20);
    expect(seen.joints).toBeGreaterThan(10);
  });

  it.each(pastFailures)('$name', async ({ kind, text, hole }) => {
    const asked: Asked = { search: false, kinds: [], units: 'mm', ...(hole === undefined ? {} : { hole }) };
    const bytes = new TextEncoder().encode(text);
    expect((await runCase(world, { number: 0, kind, bytes, ending: 'txt', asked, path: null })).fault).toBeNull();
  });
});

describe('the judge of the cases', () => {
  it('sees a program that would run a tool where none may go', () => {
    const good =
      '%\n(A; G0 Z-9.)\nG21 G90\nT1 M6\nG0 Z25.0\nG0 X0.0 Y0.0\nS900 M3\nG98 G81 X40.0 Y0.0 Z-12.0 R2.0 F90.0\nX-40.0 Y0.0 Z-12.0\nG80\nM5\nM30\n%\n';
    const judge = (text: string) => programFault(text, { radius: 60, deepest: 40 });
    expect(judge(good)).toBeNull();
    const slips: [string, string, RegExp][] = [
      ['Z25.0', 'Z-25.0', /rapid below/],
      ['Z25.0', 'Z25', /without its point/],
      ['X40.0', 'X400.0', /beside the part/],
      ['Z-12.0 R', 'Z-120.0 R', /below all/],
      ['R2.0', 'R-2.0', /starts in the metal/],
      [' F90.0', '', /without a feed/],
      ['S900 M3\n', '', /spindle that stands/],
      ['M5\nM30', 'M5', /no end/],
      ['X-40.0', 'XNaN', /a word that is none/],
      ['M30\n', 'M30\nG0 Z1.0\n', /behind the end/],
      ['G98 G81', 'G80', /without a way/],
    ];
    for (const [was, is, why] of slips) expect(judge(good.replace(was, is)), is).toMatch(why);
  });

  it('sees a number that is none, a sign that moves a cursor and a word that slipped', () => {
    expect(notFinite({ a: [1, { b: Number.NaN }] }, 'x')).toBe('x.a.1.b is NaN');
    expect(notFinite({ a: [1, 2, 'NaN', null] })).toBeNull();
    for (const text of ['a\u001b[31m', '\u009b2J', 'x\u202ey', 'is NaN mm', '[object Object]', 'undefined'])
      expect(textFaultOf('t', text)).not.toBeNull();
    expect(textFaultOf('t', 'a line\n\tand Nano, ÅÖ 漢字')).toBeNull();
  });

  it('sees an open edge in an STL', () => {
    const corners = [
      [0, 0, 0],
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    const stl = (triangles: readonly (readonly number[])[]) => {
      const view = new DataView(new ArrayBuffer(84 + 50 * triangles.length));
      view.setUint32(80, triangles.length, true);
      triangles.forEach((triangle, t) => {
        triangle
          .flatMap((corner) => corners[corner] ?? [])
          .forEach((value, i) => {
            view.setFloat32(84 + 50 * t + 12 + 4 * i, value, true);
          });
      });
      return new Uint8Array(view.buffer);
    };
    const closed = [
      [0, 2, 1],
      [0, 1, 3],
      [1, 2, 3],
      [0, 3, 2],
    ];
    expect(openEdges(stl(closed))).toBe(0);
    expect(openEdges(stl(closed.slice(1)))).toBe(3);
    expect(openEdges(stl([...closed.slice(1), [0, 1, 2]]))).toBeGreaterThan(0);
  });

  it('makes a failing text smaller without losing its fault', async () => {
    const chance = chanceFrom(3);
    const lines = Array.from({ length: 60 }, () => String(chance.whole(0, 9)));
    const text = [...lines.slice(0, 30), 'bad', ...lines.slice(30), 'worse'].join('\n');
    const fault = async (given: string) => (given.includes('bad') && given.includes('worse') ? 'it fails' : null);
    expect(await shrunk(text, fault)).toBe('bad\nworse');
  });
});

describe('paths of a schema', () => {
  it('go through lists and other ways', () => {
    const schema = { properties: { a: { anyOf: [{ enum: ['x'] }, { items: { properties: { b: {} } } }] } } };
    expect(keyPaths(schema).map((path) => path.join('.'))).toEqual(['a', 'a.[].b']);
  });
});
