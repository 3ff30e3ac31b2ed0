/** Sound drawings are blamed for nothing: our own outlines in every flavour, and drawings written by ezdxf, read back by it too. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { contourLength, faceMoments } from '../../src/geometry/contour.ts';
import type { Preflight } from '../../src/model/preflight.ts';
import { buildToneWheel } from '../../src/parts/tone-wheel.ts';
import { preflightDxf } from '../../src/preflight/preflight.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { must } from '../../src/standards/table.ts';
import { DXF_FLAVOURS } from '../../src/write/dxf.ts';
import { POLYLINE_CHORD_ERROR } from '../../src/write/dxf-cuts.ts';
import { anyWheel, wheelSpec } from '../sheet/specs.ts';

const blame = ({ findings }: Preflight): string[] =>
  findings
    .filter(({ verdict }) => verdict === 'fail' || verdict === 'caution')
    .map(({ code, why }) => `${code}: ${why}`);

const wheels = fc.sample(anyWheel, { numRuns: 12, seed: 5 }).map((spec, i) => {
  return [`wheel ${i + 1}: ${spec.teeth}-${spec.missing} ${spec.flanks}, ${spec.outside.toFixed(1)} mm`, spec] as const;
});
const named = [
  ['60 teeth', wheelSpec()],
  ['60-2 turned', wheelSpec({ missing: 2, toothAngle: 17.3, flanks: 'radial' })],
  ['400 fine teeth', wheelSpec({ teeth: 400, outside: 400, root: 394, rootRadius: 0.5, tipBreak: 0.1 })],
  ['with kerf', wheelSpec({ kerf: 0.2 })],
] as const;

describe.each(DXF_FLAVOURS.map((flavour) => [flavour.id, flavour] as const))('our own outline, %s', (id, flavour) => {
  it.each([...named, ...wheels])('%s', async (_, spec) => {
    const part = buildToneWheel(spec);
    const read = preflightDxf(new TextEncoder().encode(await flavour.write(part)));
    expect(blame(read)).toEqual([]);
    // Closed form of the part against what was read of the file; lines keep to their side of the curve by their chord error.
    const length = [part.outside, ...part.holes].reduce((sum, contour) => sum + contourLength(contour), 0);
    const strip = id === 'polyline' ? length * POLYLINE_CHORD_ERROR : 0;
    expect(Math.abs((read.facts?.area ?? 0) - faceMoments(part).area)).toBeLessThan(strip + 1e-3);
    expect(Math.abs((read.facts?.cutLength ?? 0) - length)).toBeLessThan(id === 'polyline' ? 0.01 * length : 1e-2);
    expect(read.facts?.contours).toBe(1 + part.holes.length);
    expect(read.facts?.parts).toBe(1);
    expect(Math.abs((read.facts?.largestHole ?? 0) - (spec.bore - spec.kerf))).toBeLessThan(0.03);
  });

  it('is within the usual limits of its sheet, and weighs what the sum says', async () => {
    // Its teeth are 0.45 of the pitch of 6.28 mm: 2.83 mm, more than the sheet is thick.
    const spec = wheelSpec({ thickness: 2.5 });
    const steel = must(findMaterial('DC01'));
    const bytes = new TextEncoder().encode(await flavour.write(buildToneWheel(spec)));
    const read = preflightDxf(bytes, { thickness: 2.5, material: steel });
    expect(blame(read)).toEqual([]);
    expect(read.findings.filter(({ verdict }) => verdict === 'not assessed')).toEqual([]);
    const mass = faceMoments(buildToneWheel(spec)).area * 2.5 * steel.density;
    expect((read.facts?.mass ?? 0) / mass).toBeCloseTo(1, 3);
  });
});

interface Said {
  readonly units: number | null;
  readonly release: string;
  readonly errors: number;
  readonly contours: number;
  readonly area: number;
  readonly width: number;
  readonly height: number;
}

const folder = mkdtempSync(join(tmpdir(), 'preflight-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
// The Debian package belongs to the system's own Python, which need not be the first one on the path.
const python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0);
if (python === undefined) throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
const script = fileURLToPath(new URL('./sound.py', import.meta.url));
const ran = spawnSync(python, [script, folder], { encoding: 'utf8', maxBuffer: 1 << 26 });
if (ran.status !== 0) throw new Error(`ezdxf could not write the drawings: ${ran.stderr}`);
const said = JSON.parse(ran.stdout) as Record<string, Said>;

describe('drawings written by ezdxf', () => {
  it('are many', () => {
    expect(Object.keys(said).length).toBeGreaterThanOrEqual(20);
    expect(readdirSync(folder)).toHaveLength(Object.keys(said).length);
    expect(Object.values(said).every(({ errors }) => errors === 0)).toBe(true);
  });

  it.each(Object.keys(said))('%s', (name) => {
    const opinion = said[name] as Said;
    // The oldest release has no word for its unit: whoever sends it must say.
    const units = opinion.units === null ? ('mm' as const) : undefined;
    const read = preflightDxf(readFileSync(join(folder, `${name}.dxf`)), { units });
    expect(blame(read)).toEqual([]);
    const { facts } = read;
    expect(facts?.release).toBe(opinion.release);
    expect(facts?.units).toBe(opinion.units === 1 ? 'inches' : 'millimetres');
    expect(facts?.contours).toBe(opinion.contours);
    // ezdxf sums polygons that stay 0.001 of the drawing's unit from the curve: its areas are that much small.
    const slack = 2e-3 * (facts?.cutLength ?? 0) + 1e-6;
    expect(Math.abs((facts?.area ?? 0) - opinion.area)).toBeLessThan(slack);
    expect(facts?.width).toBeCloseTo(opinion.width, 1);
    expect(facts?.height).toBeCloseTo(opinion.height, 1);
  });
});
