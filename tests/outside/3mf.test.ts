/**
 * 3MF files read by programs that are not ours: Python's zip and XML parsers, and prusa-slicer, which must take the part's name, its
 * unit and its settings. Missing programs fail the tests and are named.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { makeFiles } from '../../src/core.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { write3mf } from '../../src/write/3mf.ts';
import { zip } from '../../src/write/zip.ts';
import { shipped, shippedJob } from '../presets/shipped.ts';
import { adapter, profile, turned, wheel } from '../solids/fixtures.ts';
import { loopsOnly } from './slicer.ts';

const folder = mkdtempSync(join(tmpdir(), '3mf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);

function run(program: string, args: readonly string[], input?: string): string {
  const { error, status, stdout, stderr } = spawnSync(program, args, {
    encoding: 'utf8',
    cwd: folder,
    maxBuffer: 1 << 28,
    ...(input === undefined ? {} : { input }),
  });
  if (error) throw new Error(`${program} cannot be run: ${error.message}. It is a Debian package of that name.`);
  if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr || stdout}`);
  return stdout + stderr;
}

interface Read {
  readonly names: readonly string[];
  readonly times: readonly (readonly number[])[];
  readonly unit: string;
  readonly metadata: Readonly<Record<string, string>>;
  readonly objects: readonly {
    readonly name: string;
    readonly number: string;
    readonly vertices: number;
    readonly triangles: number;
    /** Of the bodies where their items put them. */
    readonly low: readonly number[];
    readonly high: readonly number[];
    /** Each edge lies between two triangles, once each way. */
    readonly closed: boolean;
  }[];
  readonly settings: readonly Readonly<Record<string, string>>[];
}

const reader = `
import json, sys, zipfile, xml.etree.ElementTree as E
from collections import Counter
z = zipfile.ZipFile(sys.argv[1])
assert z.testzip() is None
n = '{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}'
types = E.fromstring(z.read('[Content_Types].xml'))
known = {d.get('Extension') for d in types}
assert all(name.rsplit('.', 1)[1] in known | {'xml'} for name in z.namelist())
target = next(r.get('Target') for r in E.fromstring(z.read('_rels/.rels')) if r.get('Type').endswith('/3dmodel'))
m = E.fromstring(z.read(target.lstrip('/')))
items = {i.get('objectid'): [float(v) for v in i.get('transform').split()] for i in m.iter(n + 'item')}
objects = []
for o in m.iter(n + 'object'):
    t = items[o.get('id')]
    v = [[float(p.get(a)) for a in 'xyz'] for p in o.iter(n + 'vertex')]
    f = [[int(p.get(a)) for a in ('v1', 'v2', 'v3')] for p in o.iter(n + 'triangle')]
    e = Counter((a, b) for q in f for a, b in zip(q, q[1:] + q[:1]))
    w = [[p[i] + t[9 + i] for i in range(3)] for p in v]
    assert t[:9] == [1, 0, 0, 0, 1, 0, 0, 0, 1]
    objects.append(dict(name=o.get('name'), number=o.get('partnumber'), vertices=len(v), triangles=len(f),
        low=[min(c) for c in zip(*w)], high=[max(c) for c in zip(*w)],
        closed=all(c == 1 and e[b, a] == 1 for (a, b), c in e.items())))
c = E.fromstring(z.read('Metadata/Slic3r_PE_model.config'))
print(json.dumps(dict(names=z.namelist(), times=[i.date_time for i in z.infolist()], unit=m.get('unit'),
    metadata={d.get('name'): d.text for d in m.iter(n + 'metadata')}, objects=objects,
    settings=[{d.get('key'): d.get('value') for d in o.findall('metadata')} for o in c.findall('object')])))
`;
const read = (file: string): Read => JSON.parse(run('python3', ['-c', reader, at(file)])) as Read;

const settings = { layer_height: '0.2', perimeters: '4' };
const object = (name: string, mesh: Mesh, more: Readonly<Record<string, string>> = settings) => {
  return { name, partNumber: `demo-${name}`, mesh, settings: more };
};

describe('a package of two bodies', () => {
  it('keeps units, names, corners and order; bodies stand beside each other on the bed, all coordinates positive', async () => {
    const meshes = [await meshTurned(adapter()), meshSheet(wheel())] as const;
    const title = 'Übergang <A & B> "1/2"';
    const bytes = write3mf({
      title,
      description: 'two bodies',
      objects: [object('adapter & <ring>', meshes[0]), object('wheel', meshes[1])],
    });
    writeFileSync(at('two.3mf'), bytes);
    const found = read('two.3mf');
    expect(found.unit).toBe('millimeter');
    expect(found.metadata).toEqual({ Title: title, Description: 'two bodies', Application: 'flangewright' });
    expect(found.names[0]).toBe('[Content_Types].xml');
    expect(found.objects.map(({ name }) => name)).toEqual(['adapter & <ring>', 'wheel']);
    expect(found.settings).toEqual([
      { name: 'adapter & <ring>', ...settings },
      { name: 'wheel', ...settings },
    ]);
    for (const [i, body] of found.objects.entries()) {
      const mesh = meshes[i] as Mesh;
      const { min, max } = meshBox(mesh);
      expect(body.vertices).toBe(mesh.positions.length / 3);
      expect(body.triangles).toBe(mesh.triangles.length / 3);
      expect(body.closed).toBe(true);
      expect(body.low[2]).toBe(0);
      expect(Math.min(...body.low)).toBeGreaterThanOrEqual(0);
      for (const axis of [0, 1, 2] as const) {
        const size = (body.high[axis] as number) - (body.low[axis] as number);
        expect(size).toBeCloseTo((max[axis] as number) - (min[axis] as number), 5);
      }
    }
    expect(found.objects[1]?.low[0]).toBeGreaterThan((found.objects[0]?.high[0] as number) + 5);
  });
});

describe('an archive', () => {
  const code =
    "import { zip } from './src/write/zip.ts'; process.stdout.write(Buffer.from(zip([{ name: 'a/b.txt', bytes: new TextEncoder().encode('x'.repeat(999)) }])).toString('hex'));";
  it('is the same in every time zone, at any time', () => {
    const cwd = fileURLToPath(new URL('../../', import.meta.url));
    const made = ['UTC', 'Pacific/Kiritimati', 'Pacific/Pago_Pago'].map((TZ) => {
      const args = ['--import', 'tsx', '--input-type=module', '-e', code];
      return spawnSync(process.execPath, args, { encoding: 'utf8', cwd, env: { ...process.env, TZ } }).stdout;
    });
    expect(made[0]).toMatch(/^504b0304/);
    expect(new Set(made).size).toBe(1);
  });

  it('does not take two files of one name', () => {
    const one = { name: 'a.txt', bytes: new Uint8Array(1) };
    expect(() => zip([one, one])).toThrow(/same name/);
  });
});

const made = new Map<string, Uint8Array>();
for (const { base, file, joint, findings } of shipped) {
  const { files } = await makeFiles(joint, findings, { base, jobName: file, only: ['3mf'], force: false });
  for (const { name, bytes } of files) made.set(name, bytes);
}
for (const [name, bytes] of made) writeFileSync(at(name), bytes);

describe('mock-ups of the shipped jobs', () => {
  it('are there, also where checks fail', () => {
    const want = shipped.flatMap(({ base, joint }) =>
      ['adapter', ...(joint.wheel ? ['wheel'] : [])].map((part) => `${base}-${part}-mockup.3mf`),
    );
    expect([...made.keys()]).toEqual(want);
  });

  it.each([...made.keys()])(
    '%s: zip and XML are sound, edges closed, no clock, warning and revision inside',
    (name) => {
      const found = read(name);
      expect(found.unit).toBe('millimeter');
      expect(found.metadata.Description).toMatch(/FIT CHECK - DO NOT DRIVE; revision R[0-9A-Z]{5}$/);
      expect(found.metadata.Description?.startsWith('CHECKS FAILED')).toBe(name.startsWith('near-miss'));
      expect(found.objects).toHaveLength(1);
      expect(found.objects[0]?.closed).toBe(true);
      for (const time of found.times) expect(time).toEqual([1980, 1, 1, 0, 0, 0]);
    },
  );

  it.each([...made.keys()])('%s: prusa-slicer finds one manifold body', (name) => {
    const info = run('prusa-slicer', ['--info', at(name)]);
    expect(info).toMatch(/^manifold = yes/m);
    expect(info).toMatch(/^number_of_parts =\s*1$/m);
  });

  it('are the same bytes again', async () => {
    const { base, file, joint, findings } = shippedJob('kart');
    const again = await makeFiles(joint, findings, { base, jobName: file, only: ['3mf'], force: false });
    const sum = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
    for (const { name, bytes } of again.files) expect(sum(bytes)).toBe(sum(made.get(name) as Uint8Array));
  });
});

describe('prusa-slicer slices', () => {
  const bed = ['--bed-shape', '0x0,300x0,300x300,0x300', '--center', '150,150'];

  it('with the settings of the part, without a warning', async () => {
    // A ring 12 high: 60 layers of 0.2 are asked for, where the slicer by itself lays one of 0.35 and then 0.3.
    const mesh = await meshTurned(turned('ring', profile([0, 20], [12, 20])));
    expect(meshMass(mesh, 1).volume).toBeGreaterThan(15000);
    const layers = (extra: Readonly<Record<string, string>>, name: string) => {
      const content = { title: name, description: name, objects: [object(name, mesh, extra)] };
      writeFileSync(at(`${name}.3mf`), write3mf(content));
      const said = run('prusa-slicer', [
        '--export-gcode',
        ...bed,
        ...loopsOnly,
        '--first-layer-height',
        '0.2',
        '-o',
        at(`${name}.gcode`),
        at(`${name}.3mf`),
      ]);
      expect(said).not.toMatch(/warning|error|repair|problem/i);
      return run('grep', ['-c', ';LAYER_CHANGE', at(`${name}.gcode`)]).trim();
    };
    expect(layers({ layer_height: '0.2' }, 'fine')).toBe('60');
    // 0.2 and 39 of 0.3 come to 11.9.
    expect(layers({}, 'plain')).toBe('40');
  });

  it('a shipped mock-up without a warning', () => {
    const said = run('prusa-slicer', [
      '--export-gcode',
      ...bed,
      ...loopsOnly,
      '-o',
      at('a.gcode'),
      at('orchard-truck-wheel-mockup.3mf'),
    ]);
    expect(said).toMatch(/Slicing result exported/);
    expect(said).not.toMatch(/warning|error|repair|problem/i);
  });
});
