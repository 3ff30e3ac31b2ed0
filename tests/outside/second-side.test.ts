/**
 * Mirror images are how adapters are scrapped. The holes of the printed set-up sheets, read off the page, against the finished solid: its
 * STEP file is turned over by gmsh's OpenCASCADE as the page says, and a pin is tried in every hole. Missing gmsh fails and is named.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { type Joint, judgeJob, makeFiles } from '../../src/core.ts';
import { shipped } from '../presets/shipped.ts';
import { demoJob } from '../rings/demo.ts';
import { type ReadSide, readSetUp } from './read-set-up.ts';

vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), 'second-side-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const script = fileURLToPath(new URL('./plug_gauge.py', import.meta.url));

function jointOf(text: string): Joint {
  const judged = judgeJob(text, 'demo.job.yaml', { flanges: [], nearMisses: [] }, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join('\n'));
  return judged.joint;
}

/** Invented, with patterns that tell left from right: as they stand, with the adapter's own threads, and turned against each other. */
const demos: readonly (readonly [string, Joint])[] = [
  ['demo', jointOf(demoJob)],
  [
    'demo, tapped and dowelled',
    jointOf(
      `${demoJob}adapter: { thickness: 30, clocking: 17 deg, driven: { fastening: into_adapter, dowels: auto } }\n`,
    ),
  ],
];
const cases = [...shipped.map(({ base, joint }) => [base, joint] as const), ...demos];

async function pageOf(joint: Joint): Promise<ReadSide[]> {
  const made = await makeFiles(joint, [], { base: 'job', jobName: 'job', only: ['setup'], force: true });
  return readSetUp(new TextDecoder().decode(made.files[0]?.bytes));
}

/** Full diameter of a hole and how deep it is open, from the adapter's own numbers by the letter's order on the page. */
function gauge(joint: Joint, drilling: { x: number; y: number }, up: 'driving' | 'driven') {
  const { thickness } = joint.adapterSpec;
  const seen = joint.adapter.drillings
    .filter(({ x, y }) => Math.hypot(x, y) > 0)
    .map((d) => ({ d, off: Math.hypot((up === 'driven' ? d.x : -d.x) - drilling.x, d.y - drilling.y) }))
    .sort((a, b) => a.off - b.off)[0];
  const radii = (seen?.d.profile ?? []).map(({ r }) => r).filter((r) => r > 0);
  const full = (seen?.d.profile ?? []).filter(({ r }) => r > 0).map(({ z }) => z);
  const deepest = up === 'driven' ? Math.min(...full) - thickness : 0 - Math.max(...full);
  return { diameter: 2 * Math.min(...radii), deep: deepest + 0.01 };
}

interface Tried {
  readonly up: string;
  readonly top: number;
  readonly bodies: number;
  readonly holes: readonly { readonly tag: string; readonly pin: number; readonly wide: number }[];
}

async function tried(joint: Joint, name: string, sides: readonly ReadSide[], mirrored = false): Promise<Tried[]> {
  const path = join(folder, `${name.replace(/\W+/g, '-')}.step`);
  const made = await makeFiles(joint, [], { base: 'job', jobName: 'job', only: ['step'], force: true });
  const step = made.files.find((file) => file.name === 'job-adapter.step');
  if (!step) throw new Error('no STEP file of the adapter');
  writeFileSync(path, step.bytes);
  const told = sides.map(({ up, holes }) => ({
    up,
    thickness: joint.adapterSpec.thickness,
    holes: holes.map((hole) => {
      const { diameter, deep } = gauge(joint, hole, up);
      return { ...hole, x: mirrored ? -hole.x : hole.x, pin: diameter - 0.02, deep, wide: diameter + 0.1 };
    }),
  }));
  const run = spawnSync('/usr/bin/python3', [script], {
    input: JSON.stringify({ step: path, sides: told }),
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (run.status !== 0) throw new Error(`gmsh (Debian package python3-gmsh): ${run.stderr || String(run.error)}`);
  return JSON.parse(run.stdout) as Tried[];
}

describe.each(cases)('%s', (name, joint) => {
  it('has every hole where the page of that side puts it', async () => {
    const sides = await pageOf(joint);
    const listed = sides.reduce((sum, { holes }) => sum + holes.length, 0);
    expect(listed).toBe(joint.adapter.drillings.filter(({ x, y }) => Math.hypot(x, y) > 0).length);
    for (const { up, mark } of sides) expect(mark).toBe(up === 'driven' ? 'right' : 'left');
    for (const { bodies, holes } of await tried(joint, name, sides)) {
      expect(bodies).toBe(1);
      for (const { tag, pin, wide } of holes) {
        expect(pin, `metal in the way of the pin in ${tag}`).toBeLessThan(1e-6);
        expect(wide, `metal around ${tag}`).toBeGreaterThan(0.01);
      }
    }
  });
});

it('finds metal in the way when a page is mirrored: the pins do tell', async () => {
  for (const [name, joint] of demos) {
    const sides = await pageOf(joint);
    const wrong = await tried(joint, `${name}-mirrored`, sides, true);
    for (const { up, holes } of wrong)
      expect(
        holes.some(({ pin }) => pin > 1),
        `${name}, ${up} side`,
      ).toBe(true);
  }
});
