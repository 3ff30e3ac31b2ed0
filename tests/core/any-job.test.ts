/** Any job at all: a sound one gives closed meshes and finite numbers, a wrong one gives errors with positions and nothing else. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeJob, makeFiles, parsePatterns } from '../../src/core.ts';
import { anyJob, slips } from './any-job.ts';

const folder = resolve(import.meta.dirname, '../../presets/flanges');
const patterns = parsePatterns(
  Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'utf8')])),
);

/** Edges of a binary STL that do not meet exactly one other edge running the other way, corners compared bit for bit. */
function openEdges(stl: Uint8Array): number {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  const count = view.getUint32(80, true);
  const edges = new Map<string, number>();
  const corner = (at: number) =>
    [0, 4, 8].map((i) => (Object.is(view.getFloat32(at + i, true), -0) ? 0 : view.getFloat32(at + i, true))).join();
  for (let t = 0; t < count; t++) {
    const at = 84 + 50 * t + 12;
    const corners = [corner(at), corner(at + 12), corner(at + 24)] as const;
    for (const [a, b] of [
      [corners[0], corners[1]],
      [corners[1], corners[2]],
      [corners[2], corners[0]],
    ] as const) {
      const forward = `${a}|${b}`;
      const backward = `${b}|${a}`;
      if (edges.has(backward)) {
        const left = (edges.get(backward) as number) - 1;
        if (left === 0) edges.delete(backward);
        else edges.set(backward, left);
      } else edges.set(forward, (edges.get(forward) ?? 0) + 1);
    }
  }
  return edges.size;
}

/** Volume of a binary STL by signed tetrahedra, mm3. */
function volume(stl: Uint8Array): number {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  let six = 0;
  for (let t = 0; t < view.getUint32(80, true); t++) {
    const at = 84 + 50 * t + 12;
    const n = Array.from({ length: 9 }, (_, i) => view.getFloat32(at + 4 * i, true)) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    six += n[0] * (n[4] * n[8] - n[5] * n[7]) - n[1] * (n[3] * n[8] - n[5] * n[6]) + n[2] * (n[3] * n[7] - n[4] * n[6]);
  }
  return six / 6;
}

describe('any sound job', () => {
  it('gives closed meshes, positive volume and finite numbers, or says what cannot be designed', async () => {
    let designed = 0;
    await fc.assert(
      fc.asyncProperty(anyJob, async (text) => {
        const judged = judgeJob(text, 'any.job.yaml', patterns, { search: false });
        if (!judged.ok) {
          expect(judged.errors.length).toBeGreaterThan(0);
          for (const error of judged.errors) expect(error.line).toBeGreaterThan(0);
          return;
        }
        designed++;
        for (const finding of judged.findings) {
          for (const number of [finding.value, finding.limit, finding.margin]) {
            expect(number === null || Number.isFinite(number), `${finding.code}: ${number}`).toBe(true);
          }
          expect(`${finding.why} ${finding.remedy} ${finding.title}`).not.toMatch(/NaN|undefined|Infinity|\bnull\b/);
        }
        const made = await makeFiles(judged.joint, judged.findings, {
          base: 'any',
          jobName: 'any',
          only: [],
          force: true,
        });
        for (const { name, bytes } of made.files) {
          if (name.endsWith('.stl')) {
            expect(openEdges(bytes), `${name} of\n${text}`).toBe(0);
            expect(volume(bytes)).toBeGreaterThan(0);
          } else {
            expect(new TextDecoder().decode(bytes), name).not.toMatch(/NaN|undefined|Infinity/);
          }
        }
      }),
      { numRuns: 10, seed: 20261125 },
    );
    expect(designed).toBeGreaterThan(4);
  });
});

describe('any wrong job', () => {
  it.each(slips)('answers %s with a position and a sentence', (_, slip) => {
    fc.assert(
      fc.property(anyJob, (text) => {
        const wrong = slip(text);
        fc.pre(wrong !== text);
        const judged = judgeJob(wrong, 'wrong.job.yaml', patterns, { search: false });
        expect(judged.ok).toBe(false);
        if (judged.ok) return;
        for (const { line, column, message, file } of judged.errors) {
          expect(file).toBe('wrong.job.yaml');
          expect(line).toBeGreaterThan(0);
          expect(column).toBeGreaterThan(0);
          expect(message.length).toBeGreaterThan(10);
          expect(message).not.toMatch(/\[object|undefined|at \w+ \(/);
        }
      }),
      { numRuns: 8, seed: 11 },
    );
  });
});
