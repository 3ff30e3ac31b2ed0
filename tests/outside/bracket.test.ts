/** The bracket's files read by programs that are not ours: ezdxf the blanks, admesh and prusa-slicer the prints. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { makeFiles } from '../../src/core.ts';
import { contourArea } from '../../src/geometry/contour.ts';
import { judge, type Patch } from '../validate/help.ts';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly closed?: boolean;
  readonly area?: number;
}

interface Reading {
  readonly units: number | null;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly layers: readonly string[];
  readonly modelspace: readonly Entity[];
}

const script = fileURLToPath(new URL('./read_dxf.py', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'bracket-'));
let python = '';

beforeAll(() => {
  python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0) ?? '';
  if (python === '') throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(tool: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(tool, args, {
    encoding: 'utf8',
    cwd: folder,
    maxBuffer: 1 << 28,
  });
  if (error) throw new Error(`${tool} cannot be run: ${error.message}. It is a Debian package of that name.`);
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stderr || stdout}`);
  return stdout;
}

const sensor = { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } };
const bolts = (from_axis: number, along: number) => ({ size: 'M6', spacing: 60, from_axis, along });
const forms: Readonly<Record<string, { bracket: Patch; bends: readonly string[] }>> = {
  angle: { bracket: { bolts: bolts(82, 32), sensor }, bends: ['BEND_UP'] },
  hanging: { bracket: { bolts: bolts(150, 45), sensor }, bends: ['BEND_DOWN'] },
  flat: { bracket: { form: 'flat', bolts: bolts(100, 40), sensor }, bends: [] },
  offset: { bracket: { form: 'offset', bolts: bolts(85, 60), sensor }, bends: ['BEND_DOWN', 'BEND_UP'] },
  channel: { bracket: { form: 'channel', bolts: bolts(70, 45), sensor }, bends: ['BEND_UP', 'BEND_UP'] },
};

describe.each(Object.entries(forms))('a bracket: %s', (name, { bracket, bends }) => {
  const judged = judge({ sensor: { gap: 1 }, bracket, sheet: { flavour: ['standard', 'r12', 'polyline'] } });
  const part = judged.joint.bracket?.part;
  if (!part) throw new Error('no bracket');
  const made = makeFiles(judged.joint, judged.findings, {
    base: name,
    jobName: name,
    only: ['bracket', 'bracket-mockup', 'gap-card'],
    force: true,
  });

  it.each(['.dxf', '.r12.dxf', '.polyline.dxf'])('cuts on CUT and bends on layers of their own: %s', async (suffix) => {
    const { files } = await made;
    const file = files.find((one) => one.name === `${name}-bracket${suffix}`);
    if (!file) throw new Error(`no ${suffix} among ${files.map((one) => one.name).join(', ')}`);
    writeFileSync(join(folder, file.name), file.bytes);
    const reading = JSON.parse(run(python, [script, file.name])) as Reading;
    expect(reading.errors).toEqual([]);
    expect(reading.fixes).toEqual([]);
    const cuts = reading.modelspace.filter(({ layer }) => layer === 'CUT');
    expect(cuts).toHaveLength(part.holes.length + 1);
    expect(cuts.every(({ closed }) => closed)).toBe(true);
    // The polyline flavour keeps within 0.01 mm of every curve: a few mm2 at most on these parts.
    const digits = suffix === '.polyline.dxf' ? -1 : 3;
    const areas = cuts.map(({ area = 0 }) => Math.abs(area)).sort((a, b) => a - b);
    const drawn = [part.outside, ...part.holes].map((cut) => Math.abs(contourArea(cut))).sort((a, b) => a - b);
    areas.forEach((area, i) => {
      expect(area).toBeCloseTo(drawn[i] as number, digits);
    });
    const marks = reading.modelspace.filter(({ layer }) => layer !== 'CUT');
    expect(marks.map(({ layer }) => layer)).toEqual(bends);
    expect(marks.every(({ type, closed }) => type === 'LINE' || (type === 'LWPOLYLINE' && closed === false))).toBe(
      true,
    );
    for (const layer of ['CUT', ...bends]) expect(reading.layers).toContain(layer);
  });

  it('prints: closed meshes, one piece each', async () => {
    for (const file of (await made).files.filter((one) => one.name.endsWith('.stl'))) {
      writeFileSync(join(folder, file.name), file.bytes);
      const said = run('admesh', [file.name]);
      expect(said).toMatch(/Total disconnected facets\s*:\s*0\s+0/);
      expect(said).toMatch(/Number of parts\s*:\s*1\s/);
      expect(run('prusa-slicer', ['--info', file.name])).toMatch(/manifold = yes/);
    }
  });

  it('comes with a bend table where there are bends', async () => {
    const { files } = await made;
    const table = files.find((one) => one.name === `${name}-bracket-bends.txt`);
    expect(table !== undefined).toBe(bends.length > 0);
    if (!table) return;
    const text = new TextDecoder().decode(table.bytes);
    for (const bend of part.bends ?? []) expect(text).toContain(bend.from.x.toFixed(2));
    expect(text).toMatch(/K-factor/);
  });
});

it('holds the blank back while a check fails, and prints the mock-up all the same', async () => {
  const { joint, findings } = judge({ bracket: { bolts: bolts(82, 32), sensor, material: '7075-T6', radius: 4 } });
  const made = await makeFiles(joint, findings, {
    base: 'x',
    jobName: 'x',
    only: ['bracket', 'bracket-mockup'],
    force: false,
  });
  expect(made.held.map(({ kind }) => kind)).toEqual(['bracket']);
  expect(made.files.map(({ name }) => name)).toContain('x-bracket-mockup.stl');
});
