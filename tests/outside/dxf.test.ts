/** Every DXF flavour, read back by ezdxf (Debian package python3-ezdxf). */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contourArea, contourBox, contourLength, stretchesOf } from '../../src/geometry/contour.ts';
import type { SheetPart } from '../../src/model/sheet.ts';
import { buildToneWheel } from '../../src/parts/tone-wheel.ts';
import { DXF_FLAVOURS, type DxfFlavourId, dxfFlavour } from '../../src/write/dxf.ts';
import { POLYLINE_CHORD_ERROR } from '../../src/write/dxf-cuts.ts';
import { writeDxfPolyline } from '../../src/write/dxf-polyline.ts';
import { slot } from '../sheet/contour-shapes.ts';
import { anyWheel, STEEL, wheelSpec, windowSpec } from '../sheet/specs.ts';

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly closed: boolean;
  readonly area: number;
  readonly x?: number;
  readonly y?: number;
  readonly r?: number;
  readonly points?: readonly (readonly [number, number, number])[];
  readonly bulges?: number;
  readonly repeated?: number;
}

interface Reading {
  readonly release: string;
  readonly units: number | null;
  readonly measurement: number | null;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly layers: readonly string[];
  readonly modelspace: readonly Entity[];
  readonly paperspace: number;
}

const script = fileURLToPath(new URL('./read_dxf.py', import.meta.url));
let folder = '';
let python = '';

beforeAll(() => {
  // The Debian package belongs to the system's own Python, which need not be the first one on the path.
  python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0) ?? '';
  if (python === '') throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
  folder = mkdtempSync(join(tmpdir(), 'dxf-'));
});

afterAll(() => {
  if (folder !== '') rmSync(folder, { recursive: true });
});

function read(text: string): Reading {
  const file = join(folder, 'part.dxf');
  writeFileSync(file, text);
  const run = spawnSync(python, [script, file], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(`ezdxf could not read the file: ${run.stderr}`);
  return JSON.parse(run.stdout) as Reading;
}

const bracket: SheetPart = {
  kind: 'sheet',
  id: 'bracket',
  name: 'Bracket',
  material: STEEL,
  thickness: 3,
  outside: { ...slot(60, 15), feature: 'outline' },
  holes: [slot(30, 4), { kind: 'circle', feature: 'hole', x: 30, y: 0, r: 3.3 }],
  features: [],
  engravings: [],
};

const parts: readonly (readonly [string, SheetPart])[] = [
  ['60 teeth, straight', buildToneWheel(wheelSpec())],
  ['60-2, radial, turned', buildToneWheel(wheelSpec({ flanks: 'radial', missing: 2, toothAngle: 17.3 }))],
  ['36-1, sharp', buildToneWheel(wheelSpec({ teeth: 36, missing: 1, rootRadius: 0, tipBreak: 0, ratio: 0.445 }))],
  ['one tooth, wide root arc', buildToneWheel(wheelSpec({ teeth: 8, missing: 7, ratio: 0.3 }))],
  ['kerf 0.2', buildToneWheel(wheelSpec({ kerf: 0.2 }))],
  ['36 windows, straight', buildToneWheel(windowSpec())],
  [
    '36-2 windows, radial, turned, kerf',
    buildToneWheel(windowSpec({ flanks: 'radial', missing: 2, toothAngle: 17.3, kerf: 0.2 })),
  ],
  ['one bar, one wide window', buildToneWheel(windowSpec({ teeth: 8, missing: 7, ratio: 0.3 }))],
  ['slotted bracket', bracket],
  ...fc.sample(anyWheel, { numRuns: 6, seed: 11 }).map((spec, i): [string, SheetPart] => {
    return [`any wheel ${i + 1}: ${spec.teeth}-${spec.missing} ${spec.flanks}`, buildToneWheel(spec)];
  }),
];

/**
 * Release, units and measurement that each flavour declares; the old release has no variable for the last.
 */
const DECLARED: Record<DxfFlavourId, readonly [string, number | null, number | null]> = {
  standard: ['AC1021', 4, 1],
  r12: ['AC1009', 4, null],
  polyline: ['AC1027', 4, 1],
};

describe.each(DXF_FLAVOURS.map((flavour) => [flavour.id, flavour] as const))('DXF %s, read by ezdxf', (id, flavour) => {
  it.each(parts)('%s', async (_, part) => {
    const text = await flavour.write(part);
    const found = read(text);
    expect(found.errors).toEqual([]);
    expect(found.fixes).toEqual([]);
    expect([found.release, found.units, found.measurement]).toEqual(DECLARED[id]);
    expect(found.layers).toContain('CUT');
    expect(new Set(found.modelspace.map((e) => e.layer))).toEqual(new Set(['CUT']));
    expect(found.paperspace).toBe(0);

    const cuts = [...part.holes, part.outside];
    expect(found.modelspace).toHaveLength(cuts.length);
    expect(found.modelspace.every((e) => e.closed)).toBe(true);
    expect(found.modelspace.every((e) => (e.repeated ?? 0) === 0)).toBe(true);
    expect(new Set(found.modelspace.map((e) => JSON.stringify(e))).size).toBe(cuts.length);

    const left = [...found.modelspace];
    for (const cut of cuts) {
      const circle = cut.kind === 'circle' && id !== 'polyline';
      const area = Math.abs(contourArea(cut));
      // Within 1e-4 mm2 as designed; lines keep to their stated side by the chord error along the whole
      // length.
      const strip = id === 'polyline' ? contourLength(cut) * POLYLINE_CHORD_ERROR * 1.1 : 0;
      const outline = cut === part.outside;
      const at = left.findIndex((e) => {
        const more = Math.abs(e.area) - area;
        return (
          (e.type === 'CIRCLE') === circle &&
          sameCentre(e, cut) &&
          (outline ? more > -strip - 1e-4 && more < 1e-4 : more < strip + 1e-4 && more > -1e-4)
        );
      });
      expect(at, `${cut.feature} is not in the file`).toBeGreaterThanOrEqual(0);
      const [entity] = left.splice(at, 1);
      if (circle) {
        expect(entity?.r).toBeCloseTo(cut.r, 6);
        continue;
      }
      expect(entity?.type).toBe(id === 'r12' ? 'POLYLINE' : 'LWPOLYLINE');
      const stretches = stretchesOf(cut);
      const arcs = stretches.filter((s) => s.kind === 'arc').length;
      // An arc of more than half a turn is written as two.
      const wide = stretches.filter((s) => s.kind === 'arc' && Math.abs(s.sweep) > Math.PI + 1e-9).length;
      expect(entity?.bulges).toBe(id === 'polyline' ? 0 : arcs + wide);
      if (id !== 'polyline') expect(entity?.points).toHaveLength(stretches.length + wide);
    }
    expect(left).toEqual([]);
  });

  it('writes the same bytes twice, and no "-0" or exponent among its entities', async () => {
    for (const [, part] of parts) {
      const text = await flavour.write(part);
      expect(await flavour.write(part)).toBe(text);
      const entities = text.slice(text.indexOf('ENTITIES'));
      expect(entities).not.toMatch(/^\s*-0$/m);
      expect(entities).not.toMatch(/^\s*-?[\d.]+e[+-]?\d+$/im);
      expect(entities.split('\n').filter((line) => /\.\d{10,}$/.test(line))).toEqual([]);
    }
  });

  it('is found by its name', () => {
    expect(dxfFlavour(id)).toBe(flavour);
    expect(id === 'standard' ? flavour.suffix : flavour.suffix.split('.')[1]).toBe(id === 'standard' ? '.dxf' : id);
  });
});

/** Middle of an entity's box against the cut's: holes and outlines stand where they were drawn. */
function sameCentre(entity: Entity, cut: SheetPart['outside']): boolean {
  if (cut.kind === 'circle' && entity.type === 'CIRCLE') {
    return Math.abs((entity.x ?? NaN) - cut.x) < 1e-6 && Math.abs((entity.y ?? NaN) - cut.y) < 1e-6;
  }
  if (entity.points === undefined) return false;
  const vertices = entity.points.map(([x, y, bulge]) => ({ x, y, bulge }));
  const a = contourBox({ kind: 'path', feature: '', vertices });
  const b = contourBox(cut);
  const slack = 3 * POLYLINE_CHORD_ERROR;
  return Math.abs(a.xMin + a.xMax - b.xMin - b.xMax) < slack && Math.abs(a.yMin + a.yMax - b.yMin - b.yMax) < slack;
}

describe('DXF odds and ends', () => {
  it('lines come closer to the curve when asked to', () => {
    const [, part] = parts[0] as (typeof parts)[number];
    const outline = (e: number): number => {
      return Math.max(...read(writeDxfPolyline(part, e)).modelspace.map((entity) => Math.abs(entity.area)));
    };
    const exact = contourArea(part.outside);
    expect(exact - outline(0.001)).toBeLessThan(contourLength(part.outside) * 0.001);
    expect(exact - outline(0.001)).toBeLessThan((exact - outline(0.05)) / 4);
  });

  it('an unknown flavour is named, with the known ones', () => {
    expect(() => dxfFlavour('r13')).toThrow('Unknown DXF flavour "r13": known are standard, r12, polyline.');
  });
});
