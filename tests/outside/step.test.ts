/**
 * STEP files read back by gmsh's OpenCASCADE, and as plain text: what is in them, how large, where, under which names. Volume, centre and
 * inertia are held against the closed-form sums, which know of no solid. Missing gmsh fails the tests and is named.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { makeFiles, overallVerdict } from '../../src/core.ts';
import { sheetMass } from '../../src/geometry/contour.ts';
import { isLaminar } from '../../src/geometry/nesting.ts';
import { solidOfSheet, solidOfTurned } from '../../src/geometry/solid-of-part.ts';
import { turnedMass } from '../../src/geometry/turned-mass.ts';
import type { TurnedPart } from '../../src/model/part.ts';
import type { SheetPart } from '../../src/model/sheet.ts';
import type { PlacedSolid, RawStep } from '../../src/model/solid.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import { meshBox, meshMass } from '../../src/solids/mesh-mass.ts';
import { meshSheet } from '../../src/solids/sheet-mesh.ts';
import { stepTexts } from '../../src/solids/step.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { finishStep } from '../../src/write/step.ts';
import { anyAdapter } from '../geometry/random-adapters.ts';
import { shipped, shippedJob } from '../presets/shipped.ts';
import { program, root } from '../program.ts';
import { adapter, wheel } from '../solids/fixtures.ts';
import { type Face, lastName, type Read, readStep } from './read-step.ts';

const folder = mkdtempSync(join(tmpdir(), 'step-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);

/** STEP files of a job by name, as `make --only step` makes them. */
async function stepFilesOf({ base, file, joint, findings }: (typeof shipped)[number]): Promise<Map<string, string>> {
  const made = await makeFiles(joint, findings, { base, jobName: file, only: ['step'], force: true });
  return new Map(made.files.map(({ name, bytes }) => [name, new TextDecoder().decode(bytes)]));
}

const texts = new Map<string, string>();
for (const job of shipped) for (const [name, text] of await stepFilesOf(job)) texts.set(name, text);

const random = fc.sample(anyAdapter, 40).map((spec) => buildAdapter(spec));
const byHand: readonly (readonly [string, TurnedPart | SheetPart])[] = [
  ['hand-made adapter', adapter()],
  ['hand-made wheel', wheel()],
  ...random
    .filter(isLaminar)
    .slice(0, 6)
    .map((part, i) => [`random adapter ${i + 1}`, part] as const),
  ...random
    .filter((part) => !isLaminar(part))
    .slice(0, 4)
    .map((part, i) => [`crossing holes ${i + 1}`, part] as const),
];
/** Names that a file could stumble over: quotes, number signs, backslashes, other letters, a line that is too long. */
const oddNames = ['#10-24 it\'s 3/8" \\X2\\ 100 %', 'Übergangsflansch Ж 日本', 'long '.repeat(30).trim()];

const placed = (name: string, part: TurnedPart | SheetPart): PlacedSolid => ({
  name,
  solid: part.kind === 'turned' ? solidOfTurned(part) : solidOfSheet(part),
  colour: '#8899aa',
  places: [{ name: `${name} in place`, x: 0, y: 0, z: 0, turnedOver: false }],
});
const own = [...byHand, ...oddNames.map((name) => [name, adapter()] as const)].map(([name, part]) =>
  placed(name, part),
);
const [ownRaw] = await stepTexts([{ assembly: { name: 'parts', parts: own }, tree: true }]);
const ownText = finishStep(ownRaw as RawStep, {
  fileName: 'own.step',
  description: ['made by a test'],
  parts: ['parts', ...own.map(({ name }) => name)].map((name) => ({
    name,
    number: name,
    description: '',
    revision: '',
    colour: name === 'parts' ? null : '#8899aa',
  })),
});
texts.set('own.step', ownText);

for (const [name, text] of texts) writeFileSync(at(name), text);

/** Pairs in the joints that must keep clear of each other, and one that must not: the job of two flanges that only look alike. */
const apart = [
  ['orchard-truck-joint.step', 'adapter', 'driving flange, context only', false],
  ['orchard-truck-joint.step', 'adapter', 'driven flange, context only', false],
  ['orchard-truck-joint.step', 'adapter', 'wheel', false],
  ['orchard-truck-joint.step', 'adapter', 'M8 x 20 socket head cap screw, driving-screws', false],
  ['orchard-truck-joint.step', 'driven flange, context only', 'M10 x 25 hexagon head screw, driven-screws', false],
  ['orchard-truck-joint.step', 'driving flange, context only', 'M8 x 20 socket head cap screw, driving-screws', true],
  ['near-miss-joint.step', 'adapter', 'driven flange, context only', true],
] as const;

const answer = readStep(
  [...texts.keys()].map(at),
  apart.map(([file, a, b]) => [at(file), a, b]),
);
const solidsOf = (file: string) => answer.files[at(file)] as readonly Read[];

interface Case {
  readonly name: string;
  readonly part: TurnedPart | SheetPart;
  readonly solid: Read;
}

const cases: readonly Case[] = [
  ...shipped.flatMap(({ base, joint }): Case[] => [
    { name: `${base}-adapter.step`, part: joint.adapter, solid: solidsOf(`${base}-adapter.step`)[0] as Read },
    ...(joint.wheel
      ? [{ name: `${base}-wheel.step`, part: joint.wheel, solid: solidsOf(`${base}-wheel.step`)[0] as Read }]
      : []),
  ]),
  ...byHand.map(([name, part]) => {
    return { name, part, solid: solidsOf('own.step').find((one) => lastName(one) === name) as Read };
  }),
];

/** What is asked of the exact solid. */
const asked = 1e-6;
/** Chord error of the meshes, mm. */
const chord = 0.01;
const axes = ['xx', 'yy', 'zz', 'xy', 'xz', 'yz'] as const;
const curved = ({ faces }: Read) => faces.filter(({ kind }) => kind !== 'Plane');

describe.each(cases.map((one) => [one.name, one] as const))('%s', (_, { part, solid }) => {
  const sums = part.kind === 'turned' ? turnedMass(part) : sheetMass(part);

  it('has the volume, centre and inertia of the closed-form sums', () => {
    expect(Math.abs(solid.volume / sums.volume - 1)).toBeLessThan(asked);
    const { density } = part.material;
    const largest = Math.max(sums.inertia.xx, sums.inertia.yy, sums.inertia.zz) / density;
    const gyration = Math.sqrt(largest / sums.volume);
    for (const [i, centre] of sums.centre.entries()) {
      expect(Math.abs((solid.centre[i] as number) - centre) / gyration).toBeLessThan(asked);
    }
    for (const axis of axes) {
      expect(Math.abs(solid.inertia[axis] - sums.inertia[axis] / density) / largest, axis).toBeLessThan(asked);
    }
  });

  it('agrees with the mesh within its chord bound', async () => {
    const mesh = part.kind === 'turned' ? await meshTurned(part) : meshSheet(part);
    // A facet leaves the true wall by the chord error at most.
    const bound = chord * curved(solid).reduce((sum, { area }) => sum + area, 0);
    expect(Math.abs(meshMass(mesh, 1).volume - solid.volume)).toBeLessThan(bound);
    const { min, max } = meshBox(mesh);
    const flats = part.kind === 'turned' ? part.flats : undefined;
    for (const [i, value] of [...min, ...max].entries()) {
      // The reader's box leaves room round a rim that flats cut off: there it is held by the flats themselves, below.
      if (flats === undefined || i % 3 === 2) {
        expect(Math.abs((solid.box[i] as number) - value)).toBeLessThan(chord + 1e-5);
      }
    }
    if (flats) {
      const turn = (flats.angle * Math.PI) / 180;
      const across = solid.faces
        .filter(({ kind, normal }) => kind === 'Plane' && Math.abs(normal?.[2] as number) < 1e-9)
        .map(({ centre: [x, y] }) => (x as number) * Math.cos(turn) + (y as number) * Math.sin(turn));
      const reach = Math.max(...(part.kind === 'turned' ? part.outer.map(({ r }) => r) : []));
      const want = flats.across / 2 < reach ? [-flats.across / 2, flats.across / 2] : [];
      expect(across.sort((a, b) => a - b).map((d) => Number(d.toFixed(6)))).toEqual(
        want.map((d) => Number(d.toFixed(6))),
      );
    }
  });

  it('is made of planes, cylinders and cones alone', () => {
    expect(
      [...new Set(solid.faces.map(({ kind }) => kind))].filter((k) => !['Plane', 'Cylinder', 'Cone'].includes(k)),
    ).toEqual([]);
  });
});

const radii = ({ faces }: Read) =>
  faces.flatMap(({ radius }) => (radius === undefined ? [] : [Number(radius.toFixed(6))])).sort((a, b) => a - b);

describe('true walls', () => {
  const find = (name: string) => solidsOf('own.step').find((one) => lastName(one) === name) as Read;
  const times = (count: number, value: number) => Array.from({ length: count }, () => value);

  it('hand-made adapter: every wall of its description, no more; flats part the rim in two', () => {
    const one = find('hand-made adapter');
    // Tap drills 8.5, screw holes 10.5, bore 40, foot undercut 56, spigot 57, recess 60, rim 120.
    expect(radii(one)).toEqual([...times(6, 4.25), ...times(6, 5.25), 20, 28, 28.5, 30, 60, 60]);
    const count = (kind: string) => one.faces.filter((f) => f.kind === kind).length;
    // Lead of the spigot, mouth of the recess, two rim chamfers in two halves, six countersinks, six drill points.
    expect(count('Cone')).toBe(1 + 1 + 2 * 2 + 6 + 6);
    // Driving face, spigot end, floor of the undercut, driven face, floor of the recess, two flats.
    expect(count('Plane')).toBe(7);
  });

  it('hand-made wheel: 24 tips, 24 roots, bore and six holes; two faces and 48 flanks', () => {
    const one = find('hand-made wheel');
    expect(radii(one)).toEqual([...times(6, 4.25), 30, ...times(24, 74), ...times(24, 80)]);
    expect(one.faces.filter(({ kind }) => kind === 'Plane')).toHaveLength(2 + 48);
  });

  // A job that fails may have holes that run into each other.
  const sound = shipped.filter(({ findings }) => overallVerdict(findings) !== 'fail');
  it.each(sound.map((job) => [job.base, job] as const))(
    '%s: one wall of the right size and place a hole',
    (base, { joint }) => {
      const walls = curved(solidsOf(`${base}-adapter.step`)[0] as Read).filter(({ kind }) => kind === 'Cylinder');
      for (const { shape, positions, side } of joint.adapterSpec.groups) {
        const diameter = shape.kind === 'tapped' ? shape.tapDrill : shape.diameter;
        const turn = side === 'driven' ? (joint.adapterSpec.clocking * Math.PI) / 180 : 0;
        for (const p of positions) {
          const [x, y] = [p.x * Math.cos(turn) - p.y * Math.sin(turn), p.x * Math.sin(turn) + p.y * Math.cos(turn)];
          const here = walls.filter(
            ({ radius, centre: [cx, cy] }) =>
              Math.abs((radius as number) - diameter / 2) < 1e-6 &&
              Math.hypot((cx as number) - x, (cy as number) - y) < 1e-6,
          );
          expect(here).toHaveLength(1);
          if (shape.kind === 'tapped' && shape.drillDepth !== null) {
            // The mouth is chamfered to the thread's outside at 45 degrees.
            const deep = (here[0] as Face).area / (Math.PI * diameter) + (shape.major - shape.tapDrill) / 2;
            expect(deep).toBeCloseTo(shape.drillDepth, 6);
          }
        }
      }
    },
  );
});

describe('the files of a job', () => {
  it('are the adapter, the wheel where there is one, and the joint; one body a part', () => {
    for (const { base, joint } of shipped) {
      const names = ['adapter', ...(joint.wheel ? ['wheel'] : []), ...(joint.bracket ? ['bracket'] : []), 'joint'].map(
        (part) => `${base}-${part}.step`,
      );
      expect([...texts.keys()].filter((name) => name.startsWith(`${base}-`)).sort()).toEqual([...names].sort());
      for (const name of names.filter((n) => !n.endsWith('joint.step'))) expect(solidsOf(name)).toHaveLength(1);
    }
  });

  it.each([...texts.keys()])('%s: AP242 in millimetres, no clock, no memory of other files', (name) => {
    const text = texts.get(name) as string;
    expect(text).toMatch(/^ISO-10303-21;\nHEADER;\n/);
    expect(text).toContain("FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF {1 0 10303 442 1 1 4 }'))");
    expect(text).toMatch(/LENGTH_UNIT\(\)[^;]*SI_UNIT\(\.MILLI\.,\.METRE\.\)/);
    expect(text).toContain(`FILE_NAME('${name}','2000-01-01T00:00:00'`);
    expect(text).toMatch(/^[\n\x20-\x7e]*$/);
    const numbers = [...text.matchAll(/NEXT_ASSEMBLY_USAGE_OCCURRENCE\(\s*'(\d+)'/g)].map((m) => Number(m[1]));
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
  });

  it('name part, material, revision, threads and limits', () => {
    const { joint } = shippedJob('orchard-truck');
    const text = texts.get('orchard-truck-adapter.step') as string;
    const revision = /revision (R[0-9A-Z]{5})/.exec(text)?.[1];
    expect(revision).toBeDefined();
    expect(text).toContain(
      `PRODUCT('orchard-truck-adapter','adapter',\n  'material ${joint.adapter.material.name}; revision ${revision}'`,
    );
    expect(text).toContain(`PRODUCT_DEFINITION_FORMATION('${revision}'`);
    // M10 has 1.5 mm pitch (ISO 261) and is drilled 8.5 mm.
    expect(text).toMatch(/'thread 4 x M10 x 1\.5, modelled at its drill of 8\.5 mm, /);
    expect([...text.matchAll(/ADVANCED_FACE\('thread M10 [^']*'/g)]).toHaveLength(4);
    for (const { limits } of joint.adapter.features) {
      if (limits) expect(text).toContain(`${limits.lower.toFixed(3)} to ${limits.upper.toFixed(3)} mm`);
    }
    // #6f93b8 by its own parts of 255, not by its brightness.
    const [, ...colour] = /COLOUR_RGB\('',([\d.]+),([\d.]+),([\d.]+)\)/.exec(text) as RegExpExecArray;
    const parts = colour.map((part) => Math.round(Number(part) * 25500) / 100);
    expect(parts).toEqual([0x6f, 0x93, 0xb8]);
  });

  it('say when checks fail', () => {
    expect(texts.get('near-miss-adapter.step')).toContain("FILE_DESCRIPTION(('CHECKS FAILED - FORCED'");
  });

  it('keep odd names whole', () => {
    for (const name of oddNames) {
      expect(solidsOf('own.step').filter(({ path }) => path === `Shapes/parts/${name} in place/${name}`)).toHaveLength(
        1,
      );
    }
  });
});

describe.each(shipped.map((job) => [job.base, job] as const))('%s: the assembly', (base, { joint }) => {
  const file = `${base}-joint.step`;
  const solids = solidsOf(file);
  const pins = [joint.dowels?.driving, joint.dowels?.driven].reduce((sum, set) => sum + (set?.count ?? 0), 0);
  // Adapter, wheel, both flanges; a bracket brings its sensor.
  const made = 1 + (joint.wheel ? 1 : 0) + 2 + (joint.bracket ? 2 : 0);
  const bought = joint.screws.reduce((sum, { count, washer, nut }) => {
    // A bolt with a nut has a washer at both ends.
    return sum + count * (1 + (washer ? (nut ? 2 : 1) : 0) + (nut ? 1 : 0));
  }, 0);

  it('is a tree: every body once, screws as instances of one', () => {
    const text = texts.get(file) as string;
    const want = made + bought + pins;
    expect(solids).toHaveLength(want);
    expect([...text.matchAll(/NEXT_ASSEMBLY_USAGE_OCCURRENCE\(/g)]).toHaveLength(want);
    const bodies = [...text.matchAll(/MANIFOLD_SOLID_BREP\(/g)].length;
    const kinds = joint.screws.reduce((sum, { washer, nut }) => sum + 1 + (washer ? 1 : 0) + (nut ? 1 : 0), 0);
    expect(bodies).toBe(made + kinds + (joint.dowels?.driving ? 1 : 0) + (joint.dowels?.driven ? 1 : 0));
    for (const { path } of solids) expect(path.startsWith(`Shapes/${joint.job.title}, joint/`)).toBe(true);
    expect(new Set(solids.map(({ path }) => path)).size).toBe(want);
  });

  it('has every screw on its axis, its head or point where the sums say', () => {
    for (const { id, positions, headZ, points, head, length } of joint.screws) {
      const screws = solids
        .filter((one) => lastName(one).endsWith(` ${id}`) || lastName(one).endsWith(`, ${id}`))
        .filter((one) => /screw/.test(lastName(one).replace(id, '')));
      expect(screws).toHaveLength(positions.length);
      for (const { x, y } of positions) {
        const one = screws.find(({ centre: [cx, cy] }) => Math.hypot((cx as number) - x, (cy as number) - y) < 1e-6);
        if (!one) throw new Error(`no screw of ${id} stands at ${x}, ${y}`);
        const [low, high] = [one.box[2] as number, one.box[5] as number];
        const top = head.kind === 'flat' ? headZ : headZ - points * head.height;
        expect(points === 1 ? low : high).toBeCloseTo(top, 5);
        if (length !== null) expect(points === 1 ? high : low).toBeCloseTo(headZ + points * length, 5);
      }
    }
  });

  it('has the adapter and the wheel where the joint has them', () => {
    const named = (name: string) => solids.filter((one) => lastName(one) === name);
    expect(named('adapter')).toHaveLength(1);
    expect(named('adapter')[0]?.centre[2]).toBeCloseTo(joint.adapterMass.centre[2], 6);
    if (joint.wheelZ !== null && joint.wheel) {
      const [one] = named('wheel');
      expect(one?.box[2]).toBeCloseTo(joint.wheelZ, 5);
      expect(one?.box[5]).toBeCloseTo(joint.wheelZ + joint.wheel.thickness, 5);
    }
  });
});

describe('bodies in the assembly', () => {
  it.each(apart)('%s: %s and %s', (file, a, b, meet) => {
    const asked = apart.filter((entry) => entry[0] === file);
    const found = answer.apart[at(file)]?.[asked.findIndex((entry) => entry[1] === a && entry[2] === b)];
    // Thread stands in metal that is drilled smaller; flanges that only look alike do not go together.
    if (meet) expect(found).toBeGreaterThan(100);
    else expect(found).toBeLessThan(1e-3);
  });
});

describe('the same job', () => {
  it('gives the same bytes again in this process', async () => {
    for (const base of ['kart', 'orchard-truck']) {
      for (const [name, text] of await stepFilesOf(shippedJob(base))) expect(text === texts.get(name), name).toBe(true);
    }
  });

  it('and in another one, elsewhere; nothing but JSON on standard output', () => {
    const args = [program, 'make', 'presets/kart.job.yaml', '-o', at('out'), '--only', 'step', '--json'];
    const { stdout, status, stderr } = spawnSync(process.execPath, args, {
      encoding: 'utf8',
      cwd: root,
      env: { ...process.env, TZ: 'Pacific/Auckland' },
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const { files } = JSON.parse(stdout) as { files: { path: string; sha256: string }[] };
    const sums = files.map(({ path, sha256 }) => [path.slice(path.lastIndexOf('/') + 1), sha256]);
    const want = [...texts].filter(([name]) => name.startsWith('kart-'));
    expect(sums).toEqual(want.map(([name, text]) => [name, createHash('sha256').update(text).digest('hex')]));
  });
});
