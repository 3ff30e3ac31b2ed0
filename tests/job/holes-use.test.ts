/** Screws in only some of a flange's holes: which they are, what is refused, and that a job without the key stays as it was. */
import { describe, expect, it } from 'vitest';
import { emptyNumbers, holesThere, nearestEmpty, usedOf, usesOf } from '../../src/job/hole-pattern.ts';
import { revisionOf } from '../../src/job/revision.ts';
import { errorsOf, judge, type Patch } from '../validate/help.ts';

/** Eight clear holes on 112 mm, every 45 degrees from the x axis of their own face. */
const eight = (more: Patch = {}): Patch => ({
  driven: { outside: 140, holes: { count: 8, circle: 112, diameter: 10.2, ...more } },
});

/** Half of 112, and that over the root of two. */
const r = 56;
const d = 56 / Math.SQRT2;

function expectPlaces(
  found: readonly { x: number; y: number }[],
  wanted: readonly (readonly [number, number])[],
): void {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach(([x, y], i) => {
    expect(found[i]?.x).toBeCloseTo(x, 9);
    expect(found[i]?.y).toBeCloseTo(y, 9);
  });
}

describe('holes with a screw and holes without', () => {
  it('four of eight: every second one from hole 1, mirrored as the driven face is seen from behind', () => {
    const { holes } = judge(eight({ use: 4 })).joint.driven;
    // Typed 0, 90, 180, 270 and 45, 135, 225, 315 degrees; x turns over.
    expectPlaces(holes.positions, [
      [-r, 0],
      [0, r],
      [r, 0],
      [0, -r],
    ]);
    expectPlaces(holes.unused, [
      [-d, d],
      [d, d],
      [d, -d],
      [-d, -d],
    ]);
    expect(holes.circle).toBe(112);
    expect(emptyNumbers(holes)).toEqual([2, 4, 6, 8]);
    // Neighbours of eight: the chord of 45 degrees.
    expect(nearestEmpty(holes)).toBeCloseTo(112 * Math.sin(Math.PI / 8), 9);
  });

  it('counts from hole 1, wherever that stands', () => {
    const { holes } = judge({ driving: { holes: { use: 2, first: '30 deg' } } }).joint.driving;
    // Six on 84: 42 at 30 and 210 degrees, so 42 cos 30 and 21.
    const x = 42 * Math.cos(Math.PI / 6);
    expectPlaces(holes.positions, [
      [x, 21],
      [-x, -21],
    ]);
    expect(emptyNumbers(holes)).toEqual([2, 3, 5, 6]);
  });

  it('puts all of them back in their order', () => {
    const all = Array.from({ length: 12 }, (_, x) => ({ x, y: 0 }));
    for (const use of usesOf(12)) {
      const shared = usedOf(all, use);
      expect(shared.positions).toHaveLength(use);
      expect(holesThere(shared)).toEqual(all);
    }
    expect(usesOf(12)).toEqual([2, 3, 4, 6, 12]);
    expect(usesOf(7)).toEqual([7]);
    expect(emptyNumbers(usedOf(all))).toEqual([]);
    expect(nearestEmpty(usedOf(all))).toBe(Number.POSITIVE_INFINITY);
  });

  it('is the adapter with so many holes: four screws, four holes on that side', () => {
    const { joint } = judge(eight({ use: 4 }));
    expect(joint.screws.find(({ side }) => side === 'driven')?.count).toBe(4);
    expect(joint.adapterSpec.groups.find(({ id }) => id === 'driven-screws')?.positions).toHaveLength(4);
  });
});

describe('what is refused, at its place', () => {
  const fault = (more: Patch) => errorsOf(eight(more)) as readonly Patch[];

  it.each([
    [5, 'Was 4 meant?'],
    [3, 'Was 2 meant?'],
    [7, 'Was 4 meant?'],
  ])('%i of 8', (use, slip) => {
    expect(fault({ use })).toMatchObject([
      { path: 'driven.holes.use', value: String(use), allowed: '2, 4, 8', message: expect.stringContaining(slip) },
    ]);
  });

  it('more than there are: count and use swapped', () => {
    expect(fault({ count: 4, use: 8 })).toMatchObject([
      { path: 'driven.holes.use', allowed: '2, 4', message: expect.stringContaining('write count: 8, use: 4') },
    ]);
    expect(fault({ count: 4, use: 6 })[0]?.message).toMatch(/6 of them cannot get a screw\. Count the holes again/);
  });

  it('a number of holes that only goes all together', () => {
    expect(fault({ count: 7, use: 3 })).toMatchObject([
      { allowed: '7', message: expect.stringContaining('Delete use') },
    ]);
  });

  it('one screw, half a screw', () => {
    expect(fault({ use: 1 })).toMatchObject([{ path: 'driven.holes.use', allowed: '2 to 72' }]);
    expect(fault({ use: 2.5 })).toMatchObject([{ path: 'driven.holes.use' }]);
  });

  it('holes that are listed one by one, unless all of them are used', () => {
    const at = [
      [50, 0],
      [0, 50],
      [-50, 0],
      [0, -50],
    ];
    const listed = { count: undefined, circle: undefined, at };
    expect(fault({ ...listed, use: 2 })).toMatchObject([
      { path: 'driven.holes.use', message: expect.stringContaining('write count and circle instead of at') },
    ]);
    expect(fault({ ...listed, use: 4 })).toEqual([]);
    expect(fault({ count: undefined, angles: [0, 90, 180, 270], use: 2 })[0]?.message).toContain('instead of angles');
  });

  it('looks at the count of a known pattern as well', () => {
    const holes = { count: undefined, circle: undefined, diameter: undefined };
    const known = (use: number): Patch => ({
      driven: { from: 'DIN120-shaft', register: undefined, outside: undefined, holes: { ...holes, use } },
    });
    expect(errorsOf(known(3))).toMatchObject([{ path: 'driven.holes.use', allowed: '2, 4, 8' }]);
    expect(judge(known(4)).joint.driven.holes).toMatchObject({ positions: { length: 4 }, unused: { length: 4 } });
  });
});

describe('revision', () => {
  const mark = (...patches: Patch[]) => revisionOf(judge(...patches).joint);

  it('gains nothing from a key that is not used, and changes with one that is', () => {
    const { joint } = judge(eight());
    expect(Object.keys(joint.job.driven.holes ?? {})).not.toContain('use');
    expect(joint.driven.holes.unused).toEqual([]);
    expect(mark(eight({ use: 4 }))).not.toBe(mark(eight()));
    expect(mark(eight({ use: 4 }))).not.toBe(mark(eight({ use: 2 })));
  });
});
