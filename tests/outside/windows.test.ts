/**
 * A wheel with windows from job to files: a shipped job with its wheel changed, made, and read by programs that are not ours: ezdxf,
 * admesh, prusa-slicer, gmsh's OpenCASCADE. Areas, volumes and counts are closed forms of the sizes typed here.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Joint, judgeJob, makeFiles } from '../../src/core.ts';
import { preflightDxf } from '../../src/preflight/preflight.ts';
import type { MadeFile } from '../../src/products/product.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { POLYLINE_CHORD_ERROR } from '../../src/write/dxf-cuts.ts';
import { writeStlBinary } from '../../src/write/stl-binary.ts';
import { patterns } from '../validate/help.ts';
import { lastName, type Read, readStep } from './read-step.ts';
import { slice } from './slicer.ts';

// Slicing and reading solids take seconds, and more on a busy machine.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const folder = mkdtempSync(join(tmpdir(), 'windows-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** 36 - 1 windows of 8 mm from 164 to 180 in a rim of 190, radial flanks, corners of 1, bar 1 at 10 degrees; bore cut to 128. */
const typed = readFileSync(new URL('../../presets/orchard-truck.job.yaml', import.meta.url), 'utf8')
  .replace(
    /\n {2}teeth: 60\n {2}ratio: 0\.4\n {2}outside: 178\n {2}height: 4\.5\n {2}thickness: 3\n {2}root_radius: 0\.8\n/,
    '\n  form: windows\n  teeth: 36\n  missing: 1\n  ratio: 0.5\n  flanks: radial\n  outside: 190\n  rim: 5\n  height: 8\n  thickness: 3\n  root_radius: 1\n  tooth: 10 deg\n',
  )
  .replace('  gap: 1.2\n', '  direction: axial\n  float: 0.2\n  pole: 2\n  gap: 1.2\n  signal: true\n')
  .replace('  tolerance: 0.1\n', '  tolerance: 0.1\n  flavour: [standard, r12, polyline]\n');

const turn = Math.PI / 180;
/** What a round of radius f leaves in a corner between a radial flank and a circle about the axis: axis sectors, triangle, own sector. */
const corner = (R: number, f: number, side: 1 | -1): number => {
  const x = Math.sqrt((R - side * f) ** 2 - f * f);
  const at = Math.atan2(f, x);
  return side * ((at * R * R) / 2 - (x * f) / 2) - (f * f * (Math.PI / 2 + side * at)) / 2;
};
const corners = 2 * corner(90, 1, 1) + 2 * corner(82, 1, -1);
const ring = (90 ** 2 - 82 ** 2) / 2;
const one = 5 * turn * ring - corners;
const joined = 15 * turn * ring - corners;
const screws = 6 * Math.PI * 2.75 ** 2;

let joint: Joint;
let files: readonly MadeFile[] = [];
const fileOf = (end: string) => files.find(({ name }) => name.endsWith(end)) as MadeFile;
const textOf = (end: string) => new TextDecoder().decode(fileOf(end).bytes);

function run(tool: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', cwd: folder });
  if (error) throw new Error(`${tool} cannot be run: ${error.message}. It is a Debian package of that name.`);
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stderr || stdout}`);
  return stdout + stderr;
}

beforeAll(async () => {
  expect(typed).toContain('form: windows');
  const judged = judgeJob(typed, 'windows.job.yaml', patterns, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  joint = judged.joint;
  const only = ['outline', 'order', 'wheel-mockup', 'step', 'drawing', 'preview', 'signal'];
  // The missing bar unbalances the wheel: that check fails, and the metal is forced.
  const made = await makeFiles(joint, judged.findings, {
    base: 'windows',
    jobName: 'windows.job.yaml',
    only,
    force: true,
  });
  files = made.files;
  for (const { name, bytes } of files) writeFileSync(join(folder, name), bytes);
});

describe('outline', () => {
  interface Entity {
    readonly type: string;
    readonly layer: string;
    readonly closed: boolean;
    readonly area: number;
    readonly r?: number;
  }

  it.each(['windows-wheel.dxf', 'windows-wheel.r12.dxf'])(
    '%s, read by ezdxf: rim, bore, screws and 35 windows',
    (name) => {
      const python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0);
      if (python === undefined) throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
      const script = fileURLToPath(new URL('./read_dxf.py', import.meta.url));
      const found = JSON.parse(run(python, [script, join(folder, name)])) as {
        readonly errors: readonly string[];
        readonly fixes: readonly string[];
        readonly modelspace: readonly Entity[];
      };
      expect([...found.errors, ...found.fixes]).toEqual([]);
      expect(new Set(found.modelspace.map(({ layer }) => layer))).toEqual(new Set(['CUT']));
      expect(found.modelspace.every(({ closed }) => closed)).toBe(true);
      const circles = found.modelspace.flatMap(({ type, r }) => (type === 'CIRCLE' ? [r as number] : []));
      expect(circles.sort((a, b) => a - b).map((r) => Number(r.toFixed(6)))).toEqual([...Array(6).fill(2.75), 64, 95]);
      const areas = found.modelspace
        .flatMap(({ type, area }) => (type === 'CIRCLE' ? [] : [Math.abs(area)]))
        .sort((a, b) => a - b);
      expect(areas).toHaveLength(35);
      for (const area of areas.slice(0, 34)) expect(area).toBeCloseTo(one, 3);
      expect(areas[34]).toBeCloseTo(joined, 3);
    },
  );

  it.each(['windows-wheel.dxf', 'windows-wheel.r12.dxf', 'windows-wheel.polyline.dxf'])(
    'our own pre-flight finds nothing against %s, and weighs it',
    (name) => {
      const { bytes } = fileOf(name);
      const { facts, findings } = preflightDxf(bytes, {
        thickness: 3,
        material: joint.wheelMaterial ?? undefined,
        profile: joint.job.sheet,
      });
      expect(findings.filter(({ verdict }) => verdict === 'fail' || verdict === 'caution')).toEqual([]);
      expect(facts?.pierces).toBe(43);
      const face = Math.PI * (95 ** 2 - 64 ** 2) - screws - 34 * one - joined;
      const grams = face * 3 * (joint.wheelMaterial?.density ?? 0);
      // Short lines keep outside of holes and inside of the rim by the chord error at most, all along the cut.
      const skin = name.includes('polyline') ? (facts?.cutLength ?? 0) * POLYLINE_CHORD_ERROR : 0;
      const least = (face - 1.1 * skin) / face;
      expect((facts?.mass ?? 0) / grams).toBeGreaterThan(least - 1e-6);
      expect((facts?.mass ?? 0) / grams).toBeLessThan(1 + 1e-6);
    },
  );
});

describe('solids', () => {
  it('STEP, read by OpenCASCADE: the volume of the closed form, four walls and four corners a window', () => {
    const path = join(folder, 'windows-wheel.step');
    const { files: read } = readStep([path], []);
    const [solid] = read[path] as readonly Read[];
    expect(lastName(solid as Read)).toBe('wheel');
    const face = Math.PI * (95 ** 2 - 64.5 ** 2) - screws - 34 * one - joined;
    expect((solid?.volume ?? 0) / (face * 3)).toBeCloseTo(1, 8);
    const flat = solid?.faces.filter(({ kind }) => kind === 'Plane').length;
    // Two faces of the sheet, two flanks a window.
    expect(flat).toBe(2 + 2 * 35);
    const round = (r: number) =>
      solid?.faces.filter(({ kind, radius }) => kind === 'Cylinder' && Math.abs((radius ?? 0) - r) < 1e-6).length;
    expect(round(1)).toBe(4 * 35);
    expect([round(90), round(82), round(95)]).toEqual([35, 35, 1]);
  });

  it('the mesh of the plain part: one body to admesh, of the closed volume less what the chords take', () => {
    const file = join(folder, 'plain.stl');
    if (!joint.wheel) throw new Error('no wheel');
    writeFileSync(file, writeStlBinary(meshSheet(joint.wheel, { chordError: 0.002 })));
    const said = run('admesh', [file]);
    for (const line of ['Edges fixed', 'Degenerate facets', 'Facets removed', 'Backwards edges', 'Normals fixed'])
      expect(new RegExp(`${line}\\s*:\\s*(\\d+)`).exec(said)?.[1], line).toBe('0');
    expect(/Number of parts\s*:\s*(\d+)/.exec(said)?.[1]).toBe('1');
    const volume = Number(/Volume\s*:\s*([\d.]+)/.exec(said)?.[1]);
    const face = Math.PI * (95 ** 2 - 64.5 ** 2) - screws - 34 * one - joined;
    expect(volume / (face * 3)).toBeCloseTo(1, 3);
  });

  it('the mock-up: manifold to prusa-slicer, one part, and it slices', () => {
    const info = run('prusa-slicer', ['--info', 'windows-wheel-mockup.stl']);
    const value = (key: string): string | undefined => new RegExp(`^${key} =\\s*(\\S+)`, 'm').exec(info)?.[1];
    expect(value('manifold')).toBe('yes');
    expect(value('number_of_parts')).toBe('1');
    expect(Number(value('size_x'))).toBeCloseTo(190, 2);
    const { said, layers } = slice(join(folder, 'windows-wheel-mockup.stl'));
    expect(said).not.toMatch(/warning|error|repair|empty layer/i);
    expect(Math.abs(layers - Number(value('size_z')) / 0.3)).toBeLessThan(2);
  });
});

describe('papers', () => {
  it('the workshop drawing tells count, radii and sizes of the windows', () => {
    const svg = textOf('windows-wheel-drawing.svg');
    for (const words of [
      'outside of the rim',
      'rim outside of the windows',
      '\u00d8180',
      '\u00d8164',
      '34, and 1 over 2 places',
      'R1',
      'bar across, on \u00d8172',
      'bar 1',
    ])
      expect(svg).toContain(words);
    expect(svg).not.toMatch(/tooth|teeth/);
  });

  it('the order note tells them too, and where to pierce', () => {
    const note = textOf('windows-wheel-order.txt').replace(/\s+/g, ' ');
    expect(note).toContain('35 windows, one of them over 2 places, on purpose');
    expect(note).toContain('Pierce inside a window');
    expect(note).toContain('Read back before sending: clean.');
    expect(note).not.toMatch(/tooth|teeth/);
  });

  it('picture, signal and its files speak of bars', () => {
    expect(textOf('windows-wheel.svg')).toContain('36 - 1 bars');
    const note = textOf('windows-signal.txt');
    expect(note).toContain('35 bars on 36 places make 35 pulses a turn');
    expect(note).toContain('looks along the axis');
    const rows = textOf('windows-signal.csv').trim().split('\n').slice(1);
    // Counted on the gap itself: as often as a bar comes under the sensor.
    const gaps = rows.map((row) => Number(row.split(',')[2]));
    const rises = gaps.filter((gap, i) => gap < 2.5 && (gaps.at(i - 1) ?? 0) > 2.5).length;
    expect(rises).toBe(35);
  });
});
