/**
 * Wheels with a wide or an extra tooth from job to files: a shipped job with its wheel changed, made, and read by programs that are not
 * ours: ezdxf, admesh. Areas, volumes and counts are closed forms of the sizes typed here.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { type Joint, judgeJob, makeFiles } from '../../src/core.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { writeStlBinary } from '../../src/write/stl-binary.ts';
import { patterns } from '../validate/help.ts';

vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), 'marks-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const shipped = readFileSync(new URL('../../presets/orchard-truck.job.yaml', import.meta.url), 'utf8');
/** Radial flanks and sharp corners, so that areas are sectors: 36 places, a third of each steel, from 164 to 180 in all cases. */
const typed = (mark: string, form: 'open' | 'windows') =>
  shipped
    .replace(
      /\n {2}teeth: 60\n {2}ratio: 0\.4\n {2}outside: 178\n {2}height: 4\.5\n {2}thickness: 3\n {2}root_radius: 0\.8\n/,
      `\n${form === 'windows' ? '  form: windows\n  rim: 5\n' : ''}  teeth: 36\n  ${mark}\n  ratio: 0.3\n  flanks: radial\n  outside: ${form === 'windows' ? 190 : 180}\n  height: 8\n  thickness: 3\n  root_radius: 0\n`,
    )
    .replace('  gap: 1.2\n', '  direction: axial\n  float: 0.2\n  pole: 2\n  gap: 1.2\n  signal: true\n');

function run(tool: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', cwd: folder });
  if (error) throw new Error(`${tool} cannot be run: ${error.message}. It is a Debian package of that name.`);
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stderr || stdout}`);
  return stdout + stderr;
}

interface Entity {
  readonly type: string;
  readonly closed: boolean;
  readonly area: number;
  readonly r?: number;
}

/** The CUT entities of an outline, as ezdxf reads it. */
function entitiesOf(name: string): Entity[] {
  const python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0);
  if (python === undefined) throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
  const script = fileURLToPath(new URL('./read_dxf.py', import.meta.url));
  const found = JSON.parse(run(python, [script, join(folder, name)])) as {
    readonly errors: readonly string[];
    readonly fixes: readonly string[];
    readonly modelspace: readonly Entity[];
  };
  expect([...found.errors, ...found.fixes]).toEqual([]);
  return [...found.modelspace];
}

const kinds = ['outline', 'order', 'drawing', 'preview', 'signal'];

async function made(base: string, mark: string, form: 'open' | 'windows') {
  const text = typed(mark, form);
  expect(text).toContain('teeth: 36');
  const judged = judgeJob(text, `${base}.job.yaml`, patterns, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  // The mark unbalances the wheel: that check fails, and the metal is forced.
  const { files } = await makeFiles(judged.joint, judged.findings, {
    base,
    jobName: `${base}.job.yaml`,
    only: kinds,
    force: true,
  });
  for (const { name, bytes } of files) writeFileSync(join(folder, name), bytes);
  const textOf = (end: string) => {
    const file = files.find(({ name }) => name.endsWith(end));
    return new TextDecoder().decode(file?.bytes).replace(/\s+/g, ' ');
  };
  return { joint: judged.joint, textOf };
}

/** Volume of the mesh by admesh, and that it mends nothing. */
function admeshed(joint: Joint, name: string): number {
  if (!joint.wheel) throw new Error('no wheel');
  const file = join(folder, name);
  writeFileSync(file, writeStlBinary(meshSheet(joint.wheel, { chordError: 0.002 })));
  const said = run('admesh', [file]);
  for (const line of ['Edges fixed', 'Degenerate facets', 'Facets removed', 'Backwards edges', 'Normals fixed'])
    expect(new RegExp(`${line}\\s*:\\s*(\\d+)`).exec(said)?.[1], line).toBe('0');
  expect(/Number of parts\s*:\s*(\d+)/.exec(said)?.[1]).toBe('1');
  return Number(/Volume\s*:\s*([\d.]+)/.exec(said)?.[1]);
}

const ring = Math.PI * (90 ** 2 - 82 ** 2);
const tooth = (0.3 * ring) / 36;
const valley = (0.7 * ring) / 36;
const screws = 6 * Math.PI * 2.75 ** 2;

describe.each([
  { base: 'wide', mark: 'wide: 2', pulses: 34, outside: Math.PI * 82 ** 2 + 36 * tooth + 2 * valley },
  { base: 'extra', mark: 'extra: 1', pulses: 37, outside: Math.PI * 82 ** 2 + 37 * tooth },
])('open teeth, $mark', ({ base, mark, pulses, outside }) => {
  it('outline, volume and papers', async () => {
    const { joint, textOf } = await made(base, mark, 'open');
    for (const name of [`${base}-wheel.dxf`]) {
      const areas = entitiesOf(name).flatMap(({ type, area, closed }) => {
        expect(closed).toBe(true);
        return type === 'CIRCLE' ? [] : [Math.abs(area)];
      });
      expect(areas).toHaveLength(1);
      expect(areas[0]).toBeCloseTo(outside, 2);
    }
    const bore = joint.wheelSpec?.bore ?? 0;
    const face = outside - Math.PI * (bore / 2) ** 2 - screws;
    expect(admeshed(joint, `${base}.stl`) / (3 * face)).toBeCloseTo(1, 3);
    const note = textOf('wheel-order.txt');
    expect(note).toContain(
      `${pulses} teeth, one of them ${base === 'wide' ? 'a wide tooth over 3 places' : 'an extra tooth'}, on purpose`,
    );
    // The pre-flight reads the file by itself: only the extra tooth makes a valley narrower than the sheet is thick.
    expect(note.includes('narrowest slot')).toBe(base === 'extra');
    const clause =
      base === 'wide' ? 'the last 3 before tooth 1 are one wide tooth' : 'and one tooth more midway before tooth 1';
    expect(textOf('wheel-drawing.svg')).toContain(base === 'wide' ? 'one wide, 3 places' : 'one more, midway');
    expect(textOf('wheel.svg')).toContain(clause);
    expect(textOf('signal.txt')).toContain(`${pulses} teeth on 36 places make ${pulses} pulses a turn`);
    expect(textOf('signal.txt')).toContain('looks along the axis');
  });
});

describe.each([
  { base: 'wide-windows', mark: 'wide: 2', windows: [...Array(34).fill(valley)] },
  {
    base: 'extra-windows',
    mark: 'extra: 1',
    windows: [...Array(2).fill((valley - tooth) / 2), ...Array(35).fill(valley)],
  },
])('windows, $mark', ({ base, mark, windows }) => {
  it('outline, volume and papers', async () => {
    const { joint, textOf } = await made(base, mark, 'windows');
    const areas = entitiesOf(`${base}-wheel.dxf`)
      .flatMap(({ type, area }) => (type === 'CIRCLE' ? [] : [Math.abs(area)]))
      .sort((a, b) => a - b);
    expect(areas).toHaveLength(windows.length);
    areas.forEach((area, i) => {
      expect(area).toBeCloseTo(windows[i] as number, 3);
    });
    const bore = joint.wheelSpec?.bore ?? 0;
    const face = Math.PI * (95 ** 2 - (bore / 2) ** 2) - screws - windows.reduce((sum, one) => sum + one, 0);
    expect(admeshed(joint, `${base}.stl`) / (3 * face)).toBeCloseTo(1, 3);
    expect(textOf('wheel-order.txt')).toContain(`${windows.length} windows beside`);
    expect(textOf('wheel-drawing.svg')).toContain(
      base === 'wide-windows' ? '34, all alike' : '35, and 2 beside the extra bar',
    );
    for (const end of ['wheel-drawing.svg', 'wheel-order.txt']) expect(textOf(end)).not.toMatch(/tooth|teeth/);
  });
});
