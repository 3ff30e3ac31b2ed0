/** Dowels that place themselves: where, how deep, how fitted. Hand sums and second methods; invented flanges. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import type { DowelSet } from '../../src/job/joint-dowels.ts';
import { judge as judgeMesh } from '../../src/solids/manifold.ts';
import { meshTurned } from '../../src/solids/turned-mesh.ts';
import { errorsOf, type Judged, judge, type Patch, patched, patterns, soundJob } from '../validate/help.ts';
import { randomJoint } from './random-joint.ts';

type Side = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

const withDowels = (side: Side, dowels: unknown, more: Patch = {}): Patch => ({
  ...more,
  adapter: { ...((more.adapter as Patch | undefined) ?? {}), [side]: { dowels } },
});

function setOf({ joint }: Pick<Judged, 'joint'>, side: Side): DowelSet {
  const set = joint.dowels?.[side];
  if (!set) throw new Error(`no dowels on the ${side} side`);
  return set;
}

describe('what dowels: auto comes to', () => {
  it('is two pins no thicker than the screws, on their circle, half way between two of them', () => {
    // M8 screws on 84 mm, every 60 degrees, in a flange 14 mm thick.
    const made = judge(withDowels('driving', 'auto'));
    const set = setOf(made, 'driving');
    expect(set).toMatchObject({ count: 2, circle: 84, length: 24, isStandard: true, reamed: 'together' });
    expect(set.pin.d).toBe(8);
    expect(set.first % 60).toBe(30);
    const [a, b] = set.positions as [DowelSet['positions'][number], DowelSet['positions'][number]];
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(84, 9);
    expect(set.inside).toEqual({ adapter: 12, flange: 12 });
  });

  it('takes a thinner pin where the flange is thin: M10 screws, 9 mm of flange, pin 6', () => {
    // 8 mm of pin, 1.6 of chamfer and 0.5 of room are more than 9 mm; 6, 1.2 and 0.5 are not.
    expect(setOf(judge(withDowels('driven', 'auto')), 'driven').pin.d).toBe(6);
  });

  it('is nothing for none, and nothing when it is not asked for', () => {
    expect(judge(withDowels('driving', 'none')).joint.dowels).toBeUndefined();
    expect(judge().joint.dowels).toBeUndefined();
    expect(judge().findings.filter(({ code }) => code.startsWith('dowel'))).toEqual([]);
  });
});

describe('where they stand', () => {
  it('follows the flange: an angle read on the driven face is mirrored and turns with the clocking', () => {
    const made = judge(withDowels('driven', { first: '20 deg', count: 1, size: 6 }, { adapter: { clocking: 37 } }));
    const [at] = setOf(made, 'driven').positions;
    // Seen from behind, 20 degrees are 180 - 20; turned by 37 they are 197.
    expect(Math.atan2(at?.y ?? 0, at?.x ?? 0)).toBeCloseTo(((197 - 360) * Math.PI) / 180, 9);
    expect(Math.hypot(at?.x ?? 0, at?.y ?? 0)).toBeCloseTo(54, 9);
    const driving = judge(withDowels('driving', { first: '20 deg', count: 1 }));
    const [other] = setOf(driving, 'driving').positions;
    expect(Math.atan2(other?.y ?? 0, other?.x ?? 0)).toBeCloseTo((20 * Math.PI) / 180, 9);
  });

  it('goes through where there is room, else blind with a drilled point', async () => {
    const wide = judge(withDowels('driving', { first: '30 deg' }));
    expect(setOf(wide, 'driving').depth).toBeNull();
    const openings = async ({ joint }: Judged) =>
      (await judgeMesh(await meshTurned(joint.adapter, { chordError: 0.05 }))).genus;
    const bare = await openings(judge());
    expect(await openings(wide)).toBe(bare + 2);
    // Right under a blind tapped hole of the other side: no way through, but 40 mm of adapter take both.
    const under = { driving: { outside: 140 }, adapter: { thickness: 40, clocking: 0 } };
    const made = judge(
      withDowels('driving', { count: 1, first: 0, circle: '108 mm', size: 8, length: '18 mm' }, under),
    );
    const set = setOf(made, 'driving');
    expect(set.depth).not.toBeNull();
    // 9 mm of pin, 0.5 of room, 2.4 of reamer lead: 11.9, up to the next half.
    expect(set.depth).toBe(12);
    const hole = made.joint.adapter.drillings.find(({ feature }) => feature === 'driving-dowels');
    expect(hole?.profile).toEqual([
      { z: 0, r: 4, of: 'driving-dowels' },
      { z: 12, r: 4, of: 'driving-dowels' },
      { z: expect.closeTo(12 + 4 / Math.tan((59 * Math.PI) / 180), 9), r: 0, of: 'driving-dowels' },
    ]);
  });
});

describe('fits', () => {
  // 8 m6 is +6 to +15 micrometres, 8 H7 is 0 to +15, IT7 of 8 is 15 (ISO 286).
  it('reamed together both halves are H7', () => {
    const { fits } = setOf(judge(withDowels('driving', 'auto')), 'driving');
    expect(fits.flange).toEqual(fits.adapter);
    expect(fits.adapter).toMatchObject({
      limits: { lower: 8, upper: 8.015, zone: 'H7' },
      least: -0.015,
      greatest: 0.009,
    });
    expect(fits.adapter.method).toMatch(/reamed H7/);
  });

  it('reamed apart the flange slides on: 5 micrometres over the thickest pin, IT7 wide', () => {
    const { fits } = setOf(judge(withDowels('driving', { reamed: 'separately' })), 'driving');
    expect(fits.flange).toMatchObject({ limits: { lower: 8.02, upper: 8.035 }, least: 0.005, greatest: 0.029 });
    expect(fits.flange.method).toMatch(/reamed 8\.03 /);
  });

  it('made to the pin with an interference never squeezes more than that', () => {
    const fit = { interference: 0.01, tolerance: 0.012 };
    const { fits } = setOf(judge(withDowels('driving', { fit })), 'driving');
    expect(fits.adapter).toMatchObject({ limits: { lower: 8.005, upper: 8.017 }, least: -0.01, greatest: 0.011 });
  });

  it('takes holes that are there as they were measured, their doubt in the sum', () => {
    const dowels = { size: 8, circle: 84, first: 30, reamed: 'separately', flange: { value: 8.03, doubt: 0.01 } };
    const set = setOf(judge(withDowels('driving', dowels)), 'driving');
    expect(set.isMeasured).toBe(true);
    expect(set.fits.flange).toMatchObject({ limits: { lower: 8.02, upper: 8.04 }, least: 0.005, greatest: 0.034 });
  });
});

describe('demands that cannot be', () => {
  it.each<[string, unknown, string, RegExp]>([
    ['a size that is not made', { size: 7 }, 'size', /no d 7.*3, 4, 5, 6, 8, 10, 12, 16, 20/],
    ['a size out of range', { size: 30 }, 'size', /3 to 20 mm/],
    ['a shaft zone', { fit: 'm6' }, 'fit', /capital-letter hole zone such as H7, not "m6"; the pin itself is m6/],
    ['both a clearance and an interference', { fit: { clearance: 0, interference: 0.01 } }, 'fit', /one of the two/],
    ['no word for reaming', { reamed: 'later' }, 'reamed', /together or separately/],
    ['a key that is not there', { diameter: 8 }, 'diameter', /.+/],
    [
      'holes that are there, but where?',
      { size: 8, flange: 8.02, reamed: 'separately' },
      'circle',
      /say where they stand/,
    ],
    [
      'holes that are there, reamed again',
      { size: 8, flange: 8.02, circle: 84, first: 30 },
      'reamed',
      /Write reamed: separately/,
    ],
    [
      'holes that are there, for which pin?',
      { flange: 8.02, circle: 84, first: 30, reamed: 'separately' },
      'size',
      /size: 8 mm/,
    ],
  ])('%s', (_, dowels, key, says) => {
    const errors = errorsOf(withDowels('driving', dowels));
    expect(errors).toHaveLength(1);
    expect(errors[0]?.path).toBe(`adapter.driving.dowels.${key}`);
    expect(errors[0]?.message).toMatch(says);
  });
});

describe('random joints with dowels', () => {
  const dowels = fc.record({
    count: fc.integer({ min: 1, max: 3 }),
    reamed: fc.constantFrom('together', 'separately'),
    size: fc.constantFrom('auto', 4, 6, 8, 10),
  });

  /** Least distance between the edges of a dowel and of each hole of its flange, hole by hole. */
  const gapToHoles = ({ joint }: Judged, set: DowelSet) => {
    const turn = set.side === 'driven' ? (joint.adapterSpec.clocking * Math.PI) / 180 : 0;
    const holes = joint[set.side].holes;
    const gaps = set.positions.flatMap((p) =>
      holes.positions.map(({ x, y }) => {
        const at = { x: x * Math.cos(turn) - y * Math.sin(turn), y: x * Math.sin(turn) + y * Math.cos(turn) };
        return Math.hypot(p.x - at.x, p.y - at.y) - set.pin.d / 2 - holes.diameter.value / 2;
      }),
    );
    return Math.min(...gaps);
  };

  it('keep their web in adapter and flange, or the checks say so', () => {
    fc.assert(
      fc.property(randomJoint, fc.tuple(dowels, dowels), (patch, [driving, driven]) => {
        const own = patch.adapter as { driving: Patch; driven: Patch };
        const adapter = {
          ...own,
          driving: { ...own.driving, dowels: driving },
          driven: { ...own.driven, dowels: driven },
        };
        const made = judgeJob(JSON.stringify({ ...patch, adapter }), 'test.job.yaml', patterns, { search: false });
        if (!made.ok) throw new Error(made.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
        for (const side of sides) {
          const set = setOf(made, side);
          const said = made.findings.find(({ code }) => code === `dowel-web-${side}`);
          const gap = gapToHoles(made, set);
          expect(said?.value).toBeLessThanOrEqual(gap + 1e-6);
          if (gap < 3 - 1e-6) expect(said?.verdict).not.toBe('pass');
          // Every hole of the adapter in plan, at the depth where both are there: brute force over heights.
          const wells = made.joint.adapter.drillings.filter(({ feature }) => feature === `${side}-dowels`);
          expect(wells).toHaveLength(set.count);
          const others = made.joint.adapter.drillings.filter((d) => !wells.includes(d) && Math.hypot(d.x, d.y) > 1e-9);
          const least = Math.min(
            ...wells.flatMap((well) => others.map((other) => planGap(well, other))),
            Number.POSITIVE_INFINITY,
          );
          if (least < 3 - 1e-6) {
            const webs = made.findings.filter(({ code }) => code === 'web-between-holes');
            expect(webs.map(({ verdict }) => verdict)).toEqual(['fail']);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  type Drilling = Judged['joint']['adapter']['drillings'][number];
  const radiusAt = ({ profile }: Drilling, z: number) => {
    for (let i = 0; i + 1 < profile.length; i++) {
      const [a, b] = [profile[i], profile[i + 1]] as [{ z: number; r: number }, { z: number; r: number }];
      if (a.z < z && z < b.z) return a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z);
    }
    return null;
  };
  function planGap(one: Drilling, other: Drilling): number {
    let least = Number.POSITIVE_INFINITY;
    for (let z = 0.013; z < 80; z += 0.25) {
      const [a, b] = [radiusAt(one, z), radiusAt(other, z)];
      if (a !== null && b !== null) least = Math.min(least, Math.hypot(one.x - other.x, one.y - other.y) - a - b);
    }
    return least;
  }
});

describe('the search with dowels', () => {
  it('looks at every way and keeps the dowels of each; the same job twice is the same answer', () => {
    const job = patched(soundJob, withDowels('driving', 'auto', { adapter: { driven: { dowels: { count: 3 } } } }));
    const answers = [0, 1].map(() => judgeJob(JSON.stringify(job), 'test.job.yaml', patterns));
    const [one, other] = answers;
    if (!one?.ok || !other?.ok) throw new Error('the job has errors');
    expect(one.joint.dowels?.driving?.positions).toHaveLength(2);
    expect(one.joint.dowels?.driven?.positions).toHaveLength(3);
    expect(one.joint.dowels).toEqual(other.joint.dowels);
    expect(one.findings.filter(({ verdict }) => verdict === 'fail')).toEqual([]);
  });
});

describe('dowels that make a joint impossible', () => {
  it('are named as what could give way', () => {
    const job = patched(soundJob, withDowels('driving', { size: 20, count: 4 }));
    const judged = judgeJob(JSON.stringify(job), 'test.job.yaml', patterns);
    if (!judged.ok) throw new Error('the job has errors');
    expect(judged.joint.alternatives?.impossible?.nearest).toContain('the dowels left open on the driving side');
    expect(judged.joint.alternatives?.impossible?.nearest).toContain('adapter.driving.dowels: auto');
  });
});
