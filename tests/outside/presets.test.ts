/**
 * Every file of every shipped job, read by programs that are not ours: admesh and prusa-slicer for STL, ezdxf for DXF, the
 * parsers of Python for SVG and HTML. A program that is missing fails the tests and is named.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Mesh } from '../../src/model/mesh.ts';
import { adapterMockUp, wheelMockUp } from '../../src/parts/mock-up.ts';
import { textWidth } from '../../src/solids/engrave.ts';
import { meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { makeAll, shipped, shippedJob } from '../presets/shipped.ts';
import { slice } from './slicer.ts';

const folder = mkdtempSync(join(tmpdir(), 'shipped-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  for (const job of shipped) {
    for (const { name, bytes } of (await makeAll(job)).files) writeFileSync(at(name), bytes);
  }
});

/** What a program prints. A missing program is a failure that names it. */
function run(program: string, args: readonly string[], debianPackage = program): string {
  const { error, status, stdout, stderr } = spawnSync(program, args, {
    encoding: 'utf8',
    cwd: folder,
    maxBuffer: 1 << 28,
  });
  if (error) throw new Error(`${program} cannot be run: ${error.message}. It is the Debian package ${debianPackage}.`);
  if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr || stdout}`);
  return stdout + stderr;
}

const wheeled = shipped.filter(({ joint }) => joint.wheel !== null);

/** Volume of a mock-up before its letters are cut: the same part, the same facets. */
const plain: Record<string, () => Promise<Mesh>> = Object.fromEntries(
  shipped.flatMap(({ base, joint }) => {
    const { holes, registers } = joint.job.print;
    const marks = { words: [], measure: textWidth };
    const adapter = async () => meshTurned(adapterMockUp(joint.adapterSpec, { holes, registers }, marks));
    const { wheelSpec } = joint;
    const wheel = async () =>
      meshSheet(wheelMockUp(wheelSpec as NonNullable<typeof wheelSpec>, { holes, registers }, marks));
    return [
      [`${base}-adapter-mockup.stl`, adapter],
      ...(wheelSpec ? [[`${base}-wheel-mockup.stl`, wheel] as const] : []),
    ];
  }),
);

describe.each(Object.keys(plain))('%s', (name) => {
  it('admesh: one part, seated on z = 0, every edge joined, nothing to repair, letters cut in', async () => {
    const text = run('admesh', [at(name)]);
    const figure = (label: string): number => {
      const line = text.split('\n').find((l) => l.trim().startsWith(label));
      if (!line) throw new Error(`admesh says nothing of "${label}"`);
      return Number(/[:=]\s*(-?[\d.]+)/.exec(line)?.[1]);
    };
    expect(figure('Total disconnected facets')).toBe(0);
    expect(figure('Number of parts')).toBe(1);
    for (const repair of [
      'Degenerate facets',
      'Edges fixed',
      'Facets removed',
      'Facets added',
      'Facets reversed',
      'Backwards edges',
      'Normals fixed',
    ]) {
      expect(figure(repair), repair).toBe(0);
    }
    expect(figure('Min Z')).toBe(0);
    const volume = Number(/Volume\s*:\s*([\d.]+)/.exec(text)?.[1]);
    const mesh = await (plain[name] as () => Promise<Mesh>)();
    const cut = meshMass(mesh, 1).volume - volume;
    // 'FIT CHECK - DO NOT DRIVE' is 19 letters of at least 2.5 high, 0.6 deep, in strokes of some tenths: tens of mm3, and
    // some hundredths of the thinnest wheel at most.
    expect(cut).toBeGreaterThan(20);
    expect(cut / volume).toBeLessThan(0.03);
  });

  it('prusa-slicer: manifold, one part, and it slices without a warning', () => {
    const info = run('prusa-slicer', ['--info', at(name)]);
    expect(info).toMatch(/^manifold = yes/m);
    expect(info).toMatch(/^number_of_parts =\s*1$/m);
    const height = Number(/^size_z =\s*(\S+)/m.exec(info)?.[1]);
    const { said, layers } = slice(at(name));
    expect(said).not.toMatch(/warning|error|repair|empty layer/i);
    expect(Math.abs(layers - height / 0.3)).toBeLessThan(2);
  });
});

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly closed: boolean;
  readonly area: number;
  readonly x?: number;
  readonly y?: number;
  readonly r?: number;
  readonly points?: readonly (readonly [number, number, number])[];
  readonly repeated?: number;
}

interface Reading {
  readonly units: number | null;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly modelspace: readonly Entity[];
  readonly paperspace: number;
}

/** What each outline must hold, from its job: mm. `kerf` is the width of the cut that the job asks to allow for. */
interface Outline {
  readonly bore: number;
  readonly hole: number;
  readonly circle: number;
  readonly count: number;
  readonly outside: number;
  readonly kerf: number;
  /** Area inside the outer contour without kerf: root disc and teeth, by hand, without the rounds in their corners. */
  readonly area: number;
}

const disc = (d: number) => (Math.PI * d * d) / 4;
/** Teeth as wide at half height as their share of the pitch says, near enough for a per mille of the area. */
const toothed = (outside: number, root: number, share: number) => disc(root) + share * (disc(outside) - disc(root));

const outlines: Readonly<Record<string, Outline>> = {
  // M5 through 5.5; bore 1 under a seat of 129, to be turned.
  'orchard-truck-wheel.dxf': {
    // The screws' circle: 129, a hole of 5.5 and a web of 3 either side.
    bore: 128,
    hole: 5.5,
    circle: 140.5,
    count: 6,
    outside: 178,
    kerf: 0,
    area: toothed(178, 169, 0.4),
  },
  // As the orchard's, over a seat of 133; 60 teeth, worked out from the old wheel and axle.
  'hill-tractor-wheel.dxf': {
    bore: 132,
    hole: 5.5,
    circle: 144.5,
    count: 6,
    outside: 186,
    kerf: 0,
    area: toothed(186, 177, 0.4),
  },
  'test-stand-wheel.dxf': {
    bore: 143.1,
    hole: 5.5,
    circle: 155,
    count: 8,
    outside: 210,
    kerf: 0.2,
    area: toothed(210, 202, 0.5),
  },
  // 1/4 through 0.2812 in; bore 5.008 in; the circle is rounded up to half a millimetre.
  'river-launch-wheel.dxf': {
    bore: 5.008 * 25.4,
    hole: 0.2812 * 25.4,
    circle: 147.5,
    count: 4,
    outside: 190.5,
    kerf: 0,
    area: toothed(190.5, 174.625, (0.45 * 35) / 36),
  },
};

const dxfFiles = wheeled
  .filter(({ base }) => base !== 'near-miss')
  .flatMap(({ base, joint }) =>
    joint.job.sheet.flavour.map((id) => `${base}-wheel${id === 'standard' ? '' : `.${id}`}.dxf`),
  );

describe('outlines, read by ezdxf', () => {
  let python = '';
  beforeAll(() => {
    // The Debian package belongs to the system's own Python, which need not be the first one on the path.
    python = ['/usr/bin/python3', 'python3'].find((p) => spawnSync(p, ['-c', 'import ezdxf']).status === 0) ?? '';
    if (python === '') throw new Error('python3-ezdxf is missing: install the Debian package of that name.');
  });

  it('are made in all three flavours between them', () => {
    expect(dxfFiles).toEqual([
      'hill-tractor-wheel.dxf',
      'orchard-truck-wheel.dxf',
      'river-launch-wheel.r12.dxf',
      'test-stand-wheel.dxf',
      'test-stand-wheel.r12.dxf',
      'test-stand-wheel.polyline.dxf',
    ]);
  });

  it.each(dxfFiles)('%s: audit clean, closed, and every cut where the job puts it', (name) => {
    const script = fileURLToPath(new URL('./read_dxf.py', import.meta.url));
    const found = JSON.parse(run(python, [script, at(name)], 'python3-ezdxf')) as Reading;
    const want = outlines[name.replace(/\.(r12|polyline)\.dxf$/, '.dxf')] as Outline;
    expect([found.errors, found.fixes, found.units, found.paperspace]).toEqual([[], [], 4, 0]);
    expect(found.modelspace).toHaveLength(want.count + 2);
    for (const entity of found.modelspace) {
      expect(entity).toMatchObject({ layer: 'CUT', closed: true });
      expect(entity.repeated ?? 0).toBe(0);
    }
    const isLines = name.includes('polyline');
    const [outer, ...inner] = [...found.modelspace].sort((a, b) => Math.abs(b.area) - Math.abs(a.area)) as [
      Entity,
      ...Entity[],
    ];
    const [bore, ...holes] = inner as [Entity, ...Entity[]];

    // The line is drawn where the middle of the cut runs: half the kerf outside the part, half inside its holes. Inch sizes
    // are tabled to a thousandth of a millimetre; short lines keep within their stated chord error on each side.
    const slack = isLines ? 0.03 : 0.001;
    expect(Math.abs(size(bore) - (want.bore - want.kerf))).toBeLessThan(slack);
    for (const hole of holes) expect(Math.abs(size(hole) - (want.hole - want.kerf))).toBeLessThan(slack);
    const radii = (outer.points ?? []).map(([x, y]) => Math.hypot(x, y));
    expect(Math.abs(2 * Math.max(...radii) - (want.outside + want.kerf))).toBeLessThan(slack);
    const perimeter = want.outside * Math.PI * 2.5;
    expect(Math.abs(Math.abs(outer.area) / want.area - 1)).toBeLessThan(
      0.004 + (want.kerf * perimeter) / 2 / want.area,
    );

    // Equal steps round the circle, to a thousandth of a millimetre.
    const angles = holes.map((hole) => Math.atan2(middle(hole).y, middle(hole).x)).sort((a, b) => a - b);
    for (const hole of holes)
      expect(Math.hypot(middle(hole).x, middle(hole).y)).toBeCloseTo(want.circle / 2, isLines ? 2 : 4);
    angles.forEach((angle, i) => {
      const next = angles[i + 1] ?? (angles[0] as number) + 2 * Math.PI;
      expect(next - angle).toBeCloseTo((2 * Math.PI) / want.count, isLines ? 3 : 5);
    });
    expect(Math.hypot(middle(bore).x, middle(bore).y)).toBeLessThan(isLines ? 0.01 : 1e-6);
  });
});

/** Diameter of the circle that has an entity's area. */
function size(entity: Entity): number {
  return 2 * Math.sqrt(Math.abs(entity.area) / Math.PI);
}

/** Middle of a circle, or of a loop's box. */
function middle(entity: Entity): { x: number; y: number } {
  if (entity.x !== undefined && entity.y !== undefined) return { x: entity.x, y: entity.y };
  const between = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  const points = entity.points ?? [];
  return { x: between(points.map(([x]) => x)), y: between(points.map(([, y]) => y)) };
}

interface Pages {
  readonly [path: string]: {
    readonly faults: readonly string[];
    readonly pictures: number;
    readonly headings: readonly string[];
    readonly text: string;
  };
}

describe('pictures and reports, read by the parsers of Python', () => {
  const names = shipped.flatMap(({ base, joint }) => [
    ...['section', 'driving-face', 'driven-face', ...(joint.wheel ? ['wheel'] : [])].map(
      (what) => `${base}-${what}.svg`,
    ),
    `${base}-report.html`,
  ]);
  let pages: Pages = {};
  beforeAll(() => {
    const script = fileURLToPath(new URL('./presets_pages.py', import.meta.url));
    pages = JSON.parse(run('python3', [script, ...names.map(at)])) as Pages;
  });

  it.each(names)('%s: well formed, complete, and loads nothing', (name) => {
    const page = pages[at(name)] as Pages[string];
    expect(page.faults).toEqual([]);
    expect(page.text).not.toMatch(/NaN|undefined|Infinity|\[object/);
    if (!name.endsWith('.html')) return;
    const base = name.replace('-report.html', '');
    const { joint } = shippedJob(base);
    expect(page.headings[0]).toBe(joint.job.title);
    expect(page.pictures).toBeGreaterThanOrEqual(joint.wheel ? 4 : 3);
    expect(page.text).toContain('The printed mock-up is for fitting only.');
    for (const finding of shippedJob(base).findings) expect(page.text).toContain(finding.title);
    if (base === 'near-miss') expect(page.text).toMatch(/held/i);
  });
});
