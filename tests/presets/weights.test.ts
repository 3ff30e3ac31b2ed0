/**
 * Every part of every shipped job weighed three ways that share no code: the closed form, the mesh, and readers of the file. The
 * part is the nominal one, without letters and printer's allowances.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { MassProperties } from '../../src/model/mass.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { judge } from '../../src/solids/manifold.ts';
import { meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { writeStlBinary } from '../../src/write/stl-binary.ts';
import { type Expected, expected } from './expected.ts';
import { shipped } from './shipped.ts';

interface Weighed extends Omit<MassProperties, 'mass'> {
  readonly facets: number;
  readonly open: number;
  readonly genus: number;
  readonly area: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** A part of a shipped job, by its closed form and as a mesh. */
interface Measured {
  readonly label: string;
  readonly file: string;
  readonly density: number;
  readonly closed: MassProperties;
  readonly mesh: Mesh;
  readonly openings: number;
}

/** Fine enough that what the facets take is small, coarse enough that the bound means something, mm. */
const chordError = 0.002;

describe('three ways to weigh each part', () => {
  const folder = mkdtempSync(join(tmpdir(), 'presets-'));
  const parts: Measured[] = [];
  let weighed: Record<string, Weighed> = {};
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  beforeAll(async () => {
    for (const { base, joint } of shipped) {
      const known = expected[base] as Expected;
      parts.push({
        label: `${base} adapter`,
        file: join(folder, `${base}-adapter.stl`),
        density: joint.adapter.material.density,
        closed: joint.adapterMass,
        mesh: await meshTurned(joint.adapter, { chordError }),
        openings: known.adapterOpenings,
      });
      if (!joint.wheel || !joint.wheelMass || joint.wheelZ === null) continue;
      const [x, y, z] = joint.wheelMass.centre;
      parts.push({
        label: `${base} wheel`,
        file: join(folder, `${base}-wheel.stl`),
        density: joint.wheel.material.density,
        // The mesh lies on its own z = 0, the joint's figure in the adapter's coordinates.
        closed: { ...joint.wheelMass, centre: [x, y, z - joint.wheelZ] },
        mesh: meshSheet(joint.wheel, { chordError }),
        openings: known.wheelOpenings ?? 0,
      });
    }
    for (const { file, mesh } of parts) writeFileSync(file, writeStlBinary(mesh, 'nominal part, mm'));
    const script = fileURLToPath(new URL('./read_stl.py', import.meta.url));
    const run = spawnSync('python3', [script, ...parts.map(({ file }) => file)], {
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    });
    if (run.error) throw new Error(`python3 cannot be run: ${run.error.message}. It is a Debian package of that name.`);
    if (run.status !== 0) throw new Error(`read_stl.py: ${run.stderr}`);
    weighed = JSON.parse(run.stdout) as Record<string, Weighed>;
  });

  const each = shipped.flatMap(({ base, joint }) => [`${base} adapter`, ...(joint.wheel ? [`${base} wheel`] : [])]);

  it.each(each)('%s: closed form, mesh and reader agree within what the facets take', (label) => {
    const part = parts.find((candidate) => candidate.label === label) as Measured;
    const { closed, density } = part;
    const read = weighed[part.file] as Weighed;
    const own = meshMass(part.mesh, density);

    // No facet is farther than the chord error from the true surface, so volumes differ by less than a skin that deep;
    // a skin's first and second moments are at most its volume times the reach of the part and its square.
    const skin = read.area * chordError;
    const reach = Math.max(...read.low.map(Math.abs), ...read.high.map(Math.abs));
    const close = (
      found: MassProperties | Weighed,
      scale: number,
      against: MassProperties,
      slack: number,
      who: string,
    ) => {
      const volume = slack * skin;
      expect(Math.abs(found.volume - against.volume), `${who}: volume`).toBeLessThan(volume);
      for (const axis of [0, 1, 2] as const) {
        const apart = Math.abs(found.centre[axis] - against.centre[axis]);
        expect(apart, `${who}: centre ${axis}`).toBeLessThan((2 * volume * reach) / against.volume);
      }
      for (const key of ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const) {
        const apart = Math.abs(found.inertia[key] * scale - against.inertia[key]);
        expect(apart, `${who}: inertia ${key}`).toBeLessThan(4 * volume * reach * reach * density);
      }
    };
    // Mesh and reader see the same facets; single precision and the file's grid are all that stands between them.
    close(read, density, own, 0.05, 'reader against mesh');
    close(own, 1, closed, 1, 'mesh against closed form');
    close(read, density, closed, 1, 'reader against closed form');
    expect(Math.abs(closed.mass / (closed.volume * density) - 1)).toBeLessThan(1e-12);
  });

  it.each(each)(
    '%s: openings counted on the drawing are the genus, for the judge and for the reader',
    async (label) => {
      const part = parts.find((candidate) => candidate.label === label) as Measured;
      expect(await judge(part.mesh)).toMatchObject({ status: 'NoError', bodies: 1, genus: part.openings });
      expect(weighed[part.file]).toMatchObject({ open: 0, genus: part.openings });
    },
  );

  it.each(each)('%s: admesh finds the same volume', (label) => {
    const part = parts.find((candidate) => candidate.label === label) as Measured;
    const run = spawnSync('admesh', [part.file], { encoding: 'utf8' });
    if (run.error) throw new Error(`admesh cannot be run: ${run.error.message}. It is a Debian package of that name.`);
    const volume = Number(/Volume\s*:\s*([\d.]+)/.exec(run.stdout)?.[1]);
    const skin = (weighed[part.file] as Weighed).area * chordError;
    // It adds up in single precision: some parts in a hundred thousand.
    const closed = part.closed.volume;
    expect(Math.abs(volume - closed)).toBeLessThan(skin + 5e-5 * closed);
  });
});
