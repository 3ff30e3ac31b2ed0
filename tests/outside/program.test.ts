/**
 * The drilling programs, run by LinuxCNC's own interpreter: every hole of the part is drilled once, at its place, to its depth, and no
 * rapid move goes where metal can be. Places and depths are worked out here from the part model alone. Missing rs274 fails and is named.
 */
import { describe, expect, it, vi } from 'vitest';
import { type Joint, makeFiles } from '../../src/core.ts';
import type { Drilling } from '../../src/model/part.ts';
import { shipped } from '../presets/shipped.ts';
import { judge, type Patch } from '../validate/help.ts';
import { type Move, runRs274 } from './run-rs274.ts';

vi.setConfig({ testTimeout: 60_000 });

const patches: Record<string, Patch> = {
  sound: {},
  'countersunk, dowels reamed here, wheel on the driving face': {
    adapter: { driving: { head: 'flat', dowels: { reamed: 'separately' } }, thickness: 24 },
    wheel: { face: 'driving' },
  },
  'dowels reamed with their flange, clocked': { adapter: { driven: { dowels: 'auto' }, clocking: '11 deg' } },
};
const joints: readonly (readonly [string, Joint])[] = [
  ...shipped.map(({ base, joint }) => [base, joint] as const),
  ...Object.entries(patches).map(([name, patch]) => [name, judge(patch).joint] as const),
];

type Face = 'driving' | 'driven';
interface ProgramOf {
  readonly face: Face;
  readonly dry: boolean;
  readonly text: string;
}

async function programs(joint: Joint, shop: Partial<Joint['job']['adapter']['shop']> = {}): Promise<ProgramOf[]> {
  const changed = {
    ...joint,
    job: { ...joint.job, adapter: { ...joint.job.adapter, shop: { ...joint.job.adapter.shop, ...shop } } },
  };
  const made = await makeFiles(changed, [], { base: 'job', jobName: 'job', only: ['program'], force: true });
  return made.files.map(({ name, bytes }) => ({
    face: name.includes('driving') ? 'driving' : 'driven',
    dry: name.includes('-dry'),
    text: new TextDecoder().decode(bytes),
  }));
}

/** Tools by number, as the program's own comments name them. */
function toolsOf(text: string): Map<number, string> {
  return new Map([...text.matchAll(/^\(T(\d+) (.*)$/gm)].map(([, n, name]) => [Number(n), String(name)]));
}

/** Heights seen from a side, zero on its face. */
const seen = (face: Face, thickness: number, z: number) => (face === 'driven' ? z - thickness : 0 - z);
const at = (face: Face, d: Pick<Drilling, 'x' | 'y'>) => ({ x: face === 'driven' ? d.x : 0 - d.x, y: d.y });
const near = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y) < 2e-4;

/** Lowest points of the strokes of a program: where the tool goes down at the feed, for each hole. */
function bottoms(moves: readonly Move[], kinds: (tool: number) => boolean): { x: number; y: number; z: number }[] {
  const found: { x: number; y: number; z: number }[] = [];
  for (const { kind, tool, to, from } of moves) {
    if (kind !== 'feed' || !kinds(tool) || to.z >= from.z) continue;
    const known = found.find((bottom) => near(bottom, to));
    if (known) known.z = Math.min(known.z, to.z);
    else found.push({ ...to });
  }
  return found;
}

/** Where a hole is drilled to: its full diameter's end, and half of 118 degrees of point beyond it. */
function drilledTo(drilling: Drilling, face: Face, thickness: number, drill: number): number {
  const { profile } = drilling;
  const point = drill / 2 / Math.tan((59 * Math.PI) / 180);
  const inward = face === 'driven' ? [...profile].reverse() : [...profile];
  const last = inward[inward.length - 1];
  const end = last && last.r === 0 ? inward[inward.length - 2] : last;
  const isBlind = last?.r === 0;
  // A through hole is drilled 1 mm past the far face, and the point with it.
  return seen(face, thickness, end?.z ?? Number.NaN) - point - (isBlind ? 0 : 1);
}

/** Off-axis drillings whose screw or pin goes in at a face. */
function drillingsFrom(joint: Joint, face: Face): Drilling[] {
  return joint.adapterSpec.groups
    .filter(({ shape }) => (shape.kind === 'passing' ? shape.headFace : shape.face) === face)
    .flatMap(({ id }) => joint.adapter.drillings.filter((d) => d.feature === id));
}

function expectNoDanger(moves: readonly Move[], highest: number, canned: boolean): void {
  const done = new Map<string, number>();
  for (const { kind, from, to } of moves) {
    const place = `${to.x.toFixed(3)} ${to.y.toFixed(3)}`;
    const isAcross = Math.hypot(to.x - from.x, to.y - from.y) > 1e-6;
    if (kind === 'feed') {
      expect(isAcross, 'fed straight down or up').toBe(false);
      done.set(place, Math.min(done.get(place) ?? Number.POSITIVE_INFINITY, to.z));
      continue;
    }
    // Across: well above everything. Down: never into what is not yet drilled; in between pecks of G83 only into its own hole.
    if (isAcross) expect(Math.min(from.z, to.z)).toBeGreaterThanOrEqual(highest + 5);
    if (to.z < from.z && to.z < highest + 2 - 1e-6) {
      expect(canned, 'a rapid move below the safe height').toBe(true);
      expect(to.z).toBeGreaterThanOrEqual((done.get(place) ?? Number.POSITIVE_INFINITY) - 1e-6);
    }
  }
}

const highestOf = (joint: Joint, face: Face) =>
  Math.max(...joint.adapter.outer.map(({ z }) => seen(face, joint.adapterSpec.thickness, z)));

describe.each(joints)('%s', (_, joint) => {
  const { thickness } = joint.adapterSpec;

  it.each(['canned', 'spelled'] as const)('drills every hole once, to its depth, %s', async (cycles) => {
    const made = (await programs(joint, { cycles })).filter(({ dry }) => !dry);
    for (const { face, text } of made) {
      const tools = toolsOf(text);
      const { moves, units, ended } = runRs274(text, tools.size + 1);
      expect(ended).toBe(true);
      expect(new Set(units)).toEqual(new Set(['CANON_UNITS_MM']));
      expectNoDanger(moves, highestOf(joint, face), cycles === 'canned');
      const wanted = drillingsFrom(joint, face);
      // Every hole has one drill, and only its own.
      const drills = [...tools].filter(([, name]) => name.startsWith('DRILL'));
      const hits = drills.flatMap(([number]) =>
        bottoms(moves, (tool) => tool === number).map((b) => ({ ...b, number })),
      );
      expect(hits).toHaveLength(wanted.length);
      for (const drilling of wanted) {
        const own = hits.filter((hit) => near(hit, at(face, drilling)));
        expect(own, drilling.id).toHaveLength(1);
        const size = Number(tools.get(own[0]?.number ?? 0)?.match(/([\d.]+) MM/)?.[1]);
        const group = joint.adapterSpec.groups.find(({ id }) => id === drilling.feature);
        const full = 2 * Math.min(...drilling.profile.map(({ r }) => r).filter((r) => r > 0));
        // A reamed hole is drilled a quarter of a millimetre under size; names of drills are rounded to a hundredth.
        const drill = group?.shape.kind === 'dowel' ? full - 0.25 : full;
        expect(size, drilling.id).toBeCloseTo(drill, 1);
        expect(own[0]?.z, drilling.id).toBeCloseTo(drilledTo(drilling, face, thickness, drill), 3);
      }
      // Every hole is spotted once, and deep enough to start the drill.
      const spots = bottoms(moves, (tool) => tools.get(tool)?.startsWith('SPOT') === true);
      expect(spots).toHaveLength(wanted.length);
      for (const drilling of wanted) expect(spots.filter((spot) => near(spot, at(face, drilling)))).toHaveLength(1);
    }
    const together = made.reduce((sum, { face }) => sum + drillingsFrom(joint, face).length, 0);
    expect(together).toBe(joint.adapter.drillings.filter(({ x, y }) => Math.hypot(x, y) > 0).length);
  });

  it('cuts every counterbore and countersink to the depth that the part has', async () => {
    for (const { face, text } of (await programs(joint)).filter(({ dry }) => !dry)) {
      const tools = toolsOf(text);
      const { moves } = runRs274(text, tools.size + 1);
      for (const { id, shape } of joint.adapterSpec.groups) {
        if (shape.kind !== 'passing' || shape.headFace !== face || shape.head.kind === 'surface') continue;
        const word = shape.head.kind.toUpperCase();
        const hits = bottoms(moves, (tool) => tools.get(tool)?.startsWith(word) === true);
        const { head } = shape;
        // From the part: the floor of the pocket, or the height at which the cone would come to a point.
        const depth =
          head.kind === 'counterbore' ? head.depth : head.diameter / 2 / Math.tan((head.angle * Math.PI) / 360);
        const mine = joint.adapter.drillings.filter((d) => d.feature === id);
        for (const drilling of mine) {
          const own = hits.filter((hit) => near(hit, at(face, drilling)));
          expect(own, drilling.id).toHaveLength(1);
          expect(own[0]?.z).toBeCloseTo(0 - depth, 3);
        }
      }
    }
  });

  it('moves the dry copy along the same path, at rest and above the metal', async () => {
    const made = await programs(joint);
    for (const { face, text } of made.filter(({ dry }) => dry)) {
      const real = made.find((p) => p.face === face && !p.dry)?.text ?? '';
      const [wet, dry] = [real, text].map((program) => runRs274(program, 12).moves) as [Move[], Move[]];
      expect(dry.every(({ rpm }) => rpm === 0)).toBe(true);
      // Everything that is fed in the real one is fed at rest above all metal.
      expect(Math.min(...dry.map(({ to }) => to.z))).toBeGreaterThan(highestOf(joint, face));
      const places = (moves: readonly Move[]) => moves.map(({ to }) => `${to.x.toFixed(3)} ${to.y.toFixed(3)}`);
      expect(places(dry)).toEqual(places(wet));
    }
  });

  it('feeds with the spindle turning, within what the machine can do', async () => {
    for (const { text } of (await programs(joint, { top_speed: 900 })).filter(({ dry }) => !dry)) {
      const { moves, stops } = runRs274(text, 12);
      for (const { kind, rpm, feed } of moves) {
        if (kind !== 'feed') continue;
        expect(rpm).toBeGreaterThan(0);
        expect(rpm).toBeLessThanOrEqual(900);
        expect(feed).toBeGreaterThan(0);
        // Nothing of a small shop is fed faster than half a millimetre a turn.
        expect(feed / rpm).toBeLessThan(0.5);
      }
      expect(stops, 'stops over the zero, and for every set that is tapped by hand').toBe(
        1 + (text.match(/^\(TAP .*$/gm) ?? []).length,
      );
    }
  });

  it('taps by the cycle only when it is asked to, a pitch a turn', async () => {
    const tapped = joint.screws.filter(({ id }) =>
      joint.adapterSpec.groups.some((group) => group.id === id && group.shape.kind === 'tapped'),
    );
    for (const { text } of await programs(joint)) expect(text).not.toContain('G84');
    const asked = (await programs(joint, { tap_cycle: true })).filter(({ dry }) => !dry).map(({ text }) => text);
    const all = asked.join('\n');
    expect(all.includes('G84')).toBe(tapped.length > 0);
    const wanted = joint.adapter.drillings.filter(({ feature }) => tapped.some(({ id }) => id === feature));
    const hits: string[] = [];
    for (const text of asked) {
      const tools = toolsOf(text);
      const { moves } = runRs274(text, 12);
      const taps = bottoms(moves, (tool) => tools.get(tool)?.startsWith('TAP') === true);
      hits.push(...taps.map(({ x, y }) => `${Math.abs(x).toFixed(3)} ${y.toFixed(3)}`));
      for (const block of text.split(/^\(T\d+ /m).filter((part) => part.startsWith('TAP') && part.includes('G84'))) {
        const rpm = Number(block.match(/S(\d+) M3/)?.[1]);
        const feed = Number(block.match(/G84 .*F([\d.]+)/)?.[1]);
        expect(tapped.map(({ pitch }) => pitch.toFixed(3))).toContain((feed / rpm).toFixed(3));
      }
    }
    const places = wanted.map(({ x, y }) => `${Math.abs(x).toFixed(3)} ${y.toFixed(3)}`);
    expect(hits.map((place) => place.replace(/-0\.000/, '0.000')).sort()).toEqual(
      places.map((place) => place.replace(/-0\.000/, '0.000')).sort(),
    );
  });
});
