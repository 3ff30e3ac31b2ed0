/**
 * STL files read by programs that are not ours: admesh counts edges and repairs, prusa-slicer judges and
 * slices.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { engrave } from '../../src/solids/engrave.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { seat } from '../../src/solids/seat.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { writeStlBinary } from '../../src/write/stl-binary.ts';
import { adapter, drilling, profile, ringOf, turned, wheel } from '../solids/fixtures.ts';
import { slice } from './slicer.ts';

// Slicing takes seconds, and more on a busy machine.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'meshes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What a tool prints. A missing tool is a failure that names it. */
function run(tool: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', cwd: folder });
  if (error) throw new Error(`${tool} cannot be run: ${error.message}. It is a Debian package of that name.`);
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stderr || stdout}`);
  return stdout + stderr;
}

const marked = async (mesh: Mesh, radius: number, z: number): Promise<Mesh> =>
  engrave(mesh, [
    {
      kind: 'text',
      text: 'FIT CHECK - DO NOT DRIVE',
      surface: 'rim',
      angle: 60,
      radius,
      z,
      height: 5,
      depth: 0.6,
    },
    { kind: 'index', angle: 0, radius, zFrom: 0, zTo: 2 * z, grooveRadius: 1 },
  ]);

const parts: Record<string, () => Promise<Mesh>> = {
  adapter: () => meshTurned(adapter()),
  'adapter-turned-over-and-engraved': async () => seat(await marked(await meshTurned(adapter()), 60, 11.5), true),
  'ring-with-crescents': () =>
    meshTurned(
      turned(
        'ring',
        profile([0, 50], [8, 50], [8, 42], [14, 42], [15, 41]),
        [
          drilling('bore', 0, 0, [0, 20], [15, 20]),
          ...ringOf('screw', 4, 33, 45, [0, 4], [15, 4]),
          ...ringOf('shoulder', 2, 46, 90, [0, 2], [15, 2]),
        ],
        { flats: { feature: 'flats', across: 80, angle: 0 } },
      ),
    ),
  'holes-that-cross': () =>
    meshTurned(
      turned('crossed', profile([0, 50], [12, 50]), [
        drilling('bore', 0, 0, [0, 20], [12, 20]),
        ...ringOf('pair', 6, 38, 0, [0, 5], [12, 5]),
        ...ringOf('slot', 6, 38, 10, [4, 5], [12, 5]),
        ...ringOf('notch', 3, 50, 30, [0, 4], [12, 4]),
      ]),
    ),
  wheel: async () => meshSheet(wheel()),
  'wheel-engraved': () =>
    engrave(meshSheet(wheel()), [
      { kind: 'text', text: 'DEMO 24', surface: 'top', angle: 90, radius: 60, z: 5, height: 7, depth: 0.8 },
    ]),
};

describe.each(Object.entries(parts))('%s', (name, build) => {
  const file = join(folder, `${name}.stl`);
  let mesh: Mesh;
  beforeAll(async () => {
    mesh = seat(await build());
    writeFileSync(file, writeStlBinary(mesh));
  });

  it('admesh: one part, every edge joined, nothing to repair', () => {
    const text = run('admesh', [file]);
    const figure = (label: string): number[] => {
      const line = text.split('\n').find((l) => l.trim().startsWith(label));
      if (!line) throw new Error(`admesh says nothing of "${label}"`);
      return [...line.slice(line.indexOf(':') + 1).matchAll(/-?\d+(\.\d+)?/g)].map((m) => Number(m[0]));
    };
    expect(figure('Number of facets')[0]).toBe(mesh.triangles.length / 3);
    expect(figure('Total disconnected facets')[0]).toBe(0);
    expect(figure('Number of parts')[0]).toBe(1);
    for (const repair of [
      'Degenerate facets',
      'Edges fixed',
      'Facets removed',
      'Facets added',
      'Facets reversed',
      'Backwards edges',
      'Normals fixed',
    ]) {
      expect(figure(repair)[0], repair).toBe(0);
    }
    // Its own sum runs in single precision.
    const volume = Number(/Volume\s*:\s*([\d.]+)/.exec(text)?.[1]);
    expect(Math.abs(volume / meshMass(mesh, 1).volume - 1)).toBeLessThan(2e-5);
  });

  it('prusa-slicer: manifold, one part, in millimetres, and it slices without a warning', () => {
    const info = run('prusa-slicer', ['--info', file]);
    const value = (key: string): string | undefined => new RegExp(`^${key} =\\s*(\\S+)`, 'm').exec(info)?.[1];
    expect(value('manifold')).toBe('yes');
    expect(value('number_of_parts')).toBe('1');
    const box = meshBox(mesh);
    for (const [k, axis] of ['x', 'y', 'z'].entries()) {
      expect(Number(value(`size_${axis}`))).toBeCloseTo((box.max[k] as number) - (box.min[k] as number), 3);
    }
    const { said, layers } = slice(file);
    expect(said).not.toMatch(/warning|error|repair|empty layer/i);
    expect(Math.abs(layers - (box.max[2] as number) / 0.3)).toBeLessThan(2);
  });
});

it('the volume that admesh finds in an adapter is the closed form less what the facets take', async () => {
  const file = join(folder, 'fine.stl');
  writeFileSync(file, writeStlBinary(await meshTurned(adapter(), { chordError: 0.001 })));
  const volume = Number(/Volume\s*:\s*([\d.]+)/.exec(run('admesh', [file]))?.[1]);
  expect(Math.abs(volume / turnedMass(adapter()).volume - 1)).toBeLessThan(1e-4);
});

it('both programs do find fault with a mesh that lacks one triangle', async () => {
  const whole = await meshTurned(adapter());
  const file = join(folder, 'torn.stl');
  writeFileSync(file, writeStlBinary({ ...whole, triangles: whole.triangles.slice(3) }));
  expect(run('admesh', [file])).toMatch(/Total disconnected facets\s*:\s*3\s/);
  expect(run('prusa-slicer', ['--info', file])).toMatch(/^manifold = no/m);
});
