/** The printable checks as files: judged by admesh and prusa-slicer, and measured in sections of the STL's own triangles. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Made } from '../../src/core.ts';
import { fitGauges } from '../../src/parts/fit-ring.ts';
import { engrave, textWidth } from '../../src/solids/engrave.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { writeStlBinary } from '../../src/write/stl-binary.ts';
import { slice } from '../outside/slicer.ts';
import { demoJob, fileOf, makeDemo } from './demo.ts';
import { distanceTo, loopsOf, sectionOf } from './section.ts';

const folder = mkdtempSync(join(tmpdir(), 'rings-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(tool: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', cwd: folder });
  if (error) throw new Error(`${tool} cannot be run: ${error.message}. It is a Debian package of that name.`);
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stderr || stdout}`);
  return stdout + stderr;
}

/** True diameters of the round loops of a section: twice the least distance of the loop from its middle, and of its corners the greatest. */
function circles(stl: Uint8Array, height: number) {
  return loopsOf(sectionOf(stl, height)).map((loop) => {
    const [x, y] = [(loop.xMin + loop.xMax) / 2, (loop.yMin + loop.yMax) / 2];
    return {
      x,
      y,
      least: 2 * Math.min(...loop.segments.map((s) => distanceTo(s, x, y))),
      most: 2 * Math.max(...loop.segments.map((s) => Math.hypot(s[0] - x, s[1] - y))),
    };
  });
}

/** As many sizes as expected, each within 0.003 mm. */
function expectNear(found: readonly number[], expected: readonly number[]): void {
  expect(found).toHaveLength(expected.length);
  for (const [i, size] of expected.entries()) expect(Math.abs((found[i] as number) - size)).toBeLessThan(0.003);
}

let made: Made;
beforeAll(async () => {
  made = await makeDemo(['rings']);
});

it('makes a plate of gauges and a disc for each flange, and nothing else', () => {
  expect(made.files.map((f) => f.name)).toEqual([
    'demo-driving-ring.stl',
    'demo-driving-disc.stl',
    'demo-driven-plug.stl',
    'demo-driven-disc.stl',
  ]);
});

describe.each([
  ['demo-driving-ring.stl', 5],
  ['demo-driving-disc.stl', 1],
  ['demo-driven-plug.stl', 5],
  ['demo-driven-disc.stl', 1],
])('%s', (name, parts) => {
  beforeAll(() => writeFileSync(join(folder, name), fileOf(made, name)));

  it('admesh: every edge joined, nothing to repair', () => {
    const text = run('admesh', [name]);
    const figure = (label: string) => Number(new RegExp(`${label}\\s*:\\s*(-?\\d+)`).exec(text)?.[1]);
    expect(figure('Number of parts')).toBe(parts);
    for (const fault of [
      'Total disconnected facets',
      'Degenerate facets',
      'Edges fixed',
      'Facets removed',
      'Facets reversed',
      'Backwards edges',
    ]) {
      expect(figure(fault), fault).toBe(0);
    }
  });

  it('prusa-slicer: manifold, on the bed, and it slices without a warning', () => {
    const info = run('prusa-slicer', ['--info', name]);
    expect(info).toMatch(/^manifold = yes/m);
    expect(info).toMatch(new RegExp(`^number_of_parts =\\s*${parts}$`, 'm'));
    expect(Number(/^min_z = (\S+)/m.exec(info)?.[1])).toBe(0);
    expect(slice(join(folder, name), 0.2).said).not.toMatch(/warning|error|repair|empty layer/i);
  });
});

it('rings: the largest disc that passes each bore is the size it says and the allowance, within 0.003 mm', () => {
  // Five sizes 0.1 apart about 40.00, and 0.3 mm of allowance (the default): 39.8 to 40.2 become 40.1 to 40.5.
  const bores = circles(fileOf(made, 'demo-driving-ring.stl'), 2).filter(({ most }) => most < 43);
  const found = bores.map(({ least }) => least).sort((a, b) => a - b);
  expectNear(found, [40.1, 40.2, 40.3, 40.4, 40.5]);
});

it('plugs: the least hole each goes into is the size it says less the allowance, within 0.003 mm', () => {
  // A micrometer's doubt: 0.05 apart about 36.00, less 0.3.
  const plugs = circles(fileOf(made, 'demo-driven-plug.stl'), 2).filter(({ most }) => most > 30);
  const found = plugs.map(({ most }) => most).sort((a, b) => a - b);
  expectNear(found, [35.6, 35.65, 35.7, 35.75, 35.8]);
});

it('a stepped ring lets through less and less from its mouth down', async () => {
  const limits = { lower: 56.97, upper: 57.03 };
  const [gauge] = fitGauges(
    { gender: 'male', limits, depth: 12, corner: 1 },
    { steps: 5, step: 0.1, allowance: 0.25 },
    { id: 'x', words: ['DEMO'], measure: textWidth },
  );
  if (!gauge) throw new Error('no gauge');
  const mesh = await engrave(await meshTurned(gauge.part, { chordError: 0.001 }), gauge.part.engravings);
  const stl = writeStlBinary(mesh);
  // Mouth up: five steps of 1.5 mm, each looked at in its middle, from the lowest.
  const bores = [0.77, 2.27, 3.77, 5.27, 6.77].map((z) => Math.min(...circles(stl, z).map(({ least }) => least)));
  expectNear(bores, [57.05, 57.15, 57.25, 57.35, 57.45]);
});

describe('discs, as they lie on the bed', () => {
  const holes = (name: string, height: number) => circles(fileOf(made, name), height).filter(({ most }) => most < 15);
  const places = (list: readonly { x: number; y: number }[]) =>
    list.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).sort();
  const onCircle = (circle: number, angles: readonly number[]) =>
    angles.map((a) => ({
      x: (circle / 2) * Math.cos((a * Math.PI) / 180),
      y: (circle / 2) * Math.sin((a * Math.PI) / 180),
    }));

  it('driving: seen as it was typed, M8 and 0.3 mm and twice the place doubt (half of a caliper reading, 0.015)', () => {
    const found = holes('demo-driving-disc.stl', 1.03);
    expect(places(found)).toEqual(places(onCircle(84, [10, 100, 170, 290])));
    for (const { least } of found) expect(Math.abs(least - 8.33)).toBeLessThan(0.01);
  });

  it('driven: boss up, so seen from the flange: turned over about x, angles negative', () => {
    // On the bed lies the face that was looked at; the boss of 2 mm stands on 2 mm of disc.
    const found = holes('demo-driven-disc.stl', 1.03);
    expect(places(found)).toEqual(places(onCircle(108, [0, -80, -200])));
    for (const { least } of found) expect(Math.abs(least - 10.7)).toBeLessThan(0.01);
    // Boss: 36 less the micrometer's 0.005 and 0.3 of allowance, inscribed within the chord error.
    const [boss] = circles(fileOf(made, 'demo-driven-disc.stl'), 2.77).sort((a, b) => b.most - a.most);
    expect(boss?.most).toBeGreaterThan(35.695 - 0.021);
    expect(boss?.most).toBeLessThan(35.6951);
  });
});

describe('when they are made', () => {
  const kinds = async (text: string) => [...new Set((await makeDemo([], text)).files.map((f) => f.kind))];

  it('not by a plain make, but by one whose job asks', async () => {
    expect(await kinds(demoJob)).not.toContain('rings');
    expect(await kinds(demoJob)).not.toContain('paper');
    const asking = await kinds(`${demoJob}print:\n  rings: { steps: 3, step: 0.05 mm }\n  paper: [letter]\n`);
    expect(asking).toContain('rings');
    expect(asking).toContain('paper');
  });

  it('with as many sizes as the job says', async () => {
    const few = await makeDemo(['rings'], `${demoJob}print:\n  rings: { steps: 3, step: 0.05 mm }\n`);
    const bores = circles(fileOf(few, 'demo-driving-ring.stl'), 2).filter(({ most }) => most < 43);
    const found = bores.map(({ least }) => least).sort((a, b) => a - b);
    expectNear(found, [40.25, 40.3, 40.35]);
  });

  it('byte for byte the same again', async () => {
    const again = await makeDemo(['rings']);
    for (const { name, bytes } of made.files) expect(Buffer.compare(fileOf(again, name), bytes)).toBe(0);
  });
});
