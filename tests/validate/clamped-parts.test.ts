/** What a screw clamps and what is left of its preload: joints drawn by hand, sums written out. mm, N, MPa */
import { describe, expect, it } from 'vitest';
import type { ScrewGroup } from '../../src/job/joint.ts';
import { leastClampForce, lostPreload } from '../../src/validate/clamp-force.ts';
import {
  backingOf,
  clampedParts,
  clampedStack,
  isShared,
  pitches,
  pressedRing,
  spreadsFrom,
  whyNoStack,
} from '../../src/validate/clamped.ts';
import { drawn, round, shape } from './drawn-screws.ts';
import type { Patch } from './help.ts';

describe('the parts that a screw clamps, from its head on', () => {
  const parts = (patch: Patch, of: Patch = {}) => {
    const { joint, screws } = drawn(patch, of);
    return clampedParts(joint, screws)?.map(({ name, thickness }) => [name, thickness]) ?? null;
  };
  const washer = { outside: 16, thickness: 2 };
  const nut = { height: 6.8, acrossFlats: 13 };

  it('into a flange: the adapter, less its pocket', () => {
    expect(parts({})).toEqual([['adapter', 20]]);
    expect(parts({ washer }, shape({ kind: 'counterbore', diameter: 15, depth: 8.6 }))).toEqual([
      ['washer', 2],
      ['adapter', 20 - 8.6],
    ]);
    // No hole of its own in the adapter: nothing is sunk.
    expect(parts({}, { adapterSpec: { groups: [] } })).toEqual([['adapter', 20]]);
  });

  it('into the adapter: the flange alone', () => {
    expect(parts({ fastening: 'into_adapter' })).toEqual([['driving flange', 14]]);
    expect(parts({ fastening: 'into_adapter', side: 'driven', washer })).toEqual([
      ['washer', 2],
      ['driven flange', 9],
    ]);
  });

  it('a bolt with a nut: a washer at both ends', () => {
    expect(parts({ fastening: 'through', washer, nut })).toEqual([
      ['washer', 2],
      ['adapter', 20],
      ['driving flange', 14],
      ['washer', 2],
    ]);
    expect(parts({ fastening: 'through', washer })).toHaveLength(3);
  });

  it('a bolt through both flanges: the far one first', () => {
    const shared: Patch = { fastening: 'through', seat: 'outside', nut };
    expect(parts({ ...shared, side: 'driving' })).toEqual([
      ['driven flange', 9],
      ['adapter', 20],
      ['driving flange', 14],
    ]);
    expect(parts({ ...shared, side: 'driven' })).toEqual([
      ['driving flange', 14],
      ['adapter', 20],
      ['driven flange', 9],
    ]);
    for (const [patch, is] of [
      [{}, true],
      [{ points: 1 }, false],
      [{ seat: 'sunk' }, false],
      [{ fastening: 'into_flange' }, false],
    ] as const)
      expect(isShared(drawn({ ...shared, ...patch }).screws)).toBe(is);
  });

  it('of the wheel\u2019s screws the wheel', () => {
    expect(parts({ side: 'wheel' })).toEqual([['wheel', 3]]);
    expect(parts({ side: 'wheel' }, { wheelMaterial: null })).toBeNull();
    expect(parts({ side: 'wheel' }, { wheelSpec: null })).toBeNull();
  });

  it('are not known where a flange\u2019s thickness is not', () => {
    const unknown = { driven: { thickness: null } };
    expect(parts({ fastening: 'into_adapter', side: 'driven' }, unknown)).toBeNull();
    expect(parts({ fastening: 'through', seat: 'outside' }, unknown)).toBeNull();
    expect(parts({ fastening: 'through' }, unknown)).toHaveLength(2);
    const { joint, screws } = drawn({ fastening: 'through', seat: 'outside' }, unknown);
    expect(whyNoStack(joint, screws).missing).toMatch(/thickness at the holes/);
    expect(whyNoStack(drawn().joint, drawn().screws).missing).toContain('adapter.driving.screw');
  });
});

describe('where the faces touch round the screws', () => {
  const ring = (patch: Patch, of: Patch = {}) => {
    const { joint, screws } = drawn(patch, of);
    return pressedRing(joint, screws);
  };
  it('is the face of their own side; of bolts through both the narrower of both', () => {
    const uneven = { driving: { outside: { value: 120 }, bore: 50 }, driven: { outside: { value: 136 }, bore: 70 } };
    expect(ring({}, uneven)).toEqual({ inside: 30, outside: 60 });
    expect(ring({ side: 'driven' }, uneven)).toEqual({ inside: 35, outside: 68 });
    expect(ring({ fastening: 'through', seat: 'outside' }, uneven)).toEqual({ inside: 35, outside: 60 });
    // A flange that does not reach out to the adapter's bore touches nothing.
    const apart = { driven: { outside: { value: 50 } } };
    expect(ring({ fastening: 'through', seat: 'outside' }, apart)).toBeNull();
    expect(ring({}, apart)).toEqual({ inside: 30, outside: 65 });
  });

  it('of a wheel: from its bore to its roots or the adapter\u2019s rim', () => {
    expect(ring({ side: 'wheel' })).toEqual({ inside: 52, outside: 70 });
    expect(ring({ side: 'wheel' }, { wheelSpec: { root: 130 } })).toEqual({ inside: 52, outside: 65 });
  });

  it('reaches from the screw that has least of it', () => {
    const { joint, screws } = drawn({ positions: [...round(3, 50), { x: 0, y: 44 }] });
    expect(backingOf(joint, screws)).toEqual({
      inwards: expect.closeTo(44 - 30, 9),
      outwards: expect.closeTo(65 - 50, 9),
    });
    expect(backingOf(drawn({}, { driving: { outside: { value: 50 } } }).joint, screws)).toBeNull();
  });

  it('the next screw is the next one round the axis', () => {
    const at = (...degrees: number[]) =>
      pitches({
        positions: degrees.map((d) => ({
          x: 50 * Math.cos((d * Math.PI) / 180),
          y: 50 * Math.sin((d * Math.PI) / 180),
        })),
      } as unknown as ScrewGroup);
    const chord = (degrees: number) => 100 * Math.sin((degrees * Math.PI) / 360);
    const said = [...at(0, 180, 60)].sort((a, b) => a - b);
    expect(said.map((gap, i) => gap / chord(60 * (i + 1)))).toEqual([1, 1, 1].map((one) => expect.closeTo(one, 9)));
    expect(at(0, 90).map((gap) => Math.round(gap))).toEqual([71, 71]);
    expect(at(30)).toEqual([]);
  });
});

describe('the stack under a head', () => {
  const seat = (patch: Patch) => ({
    tightening: { seats: [{ under: 'head', part: 'adapter', face: 13, inner: 9, ...patch }] },
  });
  const stack = (patch: Patch = {}, of: Patch = {}) => {
    const { joint, screws } = drawn(patch, of);
    return clampedStack(joint, screws);
  };
  it('spreads from the head\u2019s face, of a cone from its middle', () => {
    expect(spreadsFrom({ face: 18, inner: 9 } as Parameters<typeof spreadsFrom>[0], 'flat')).toBe(13.5);
    expect(spreadsFrom({ face: 18, inner: 9 } as Parameters<typeof spreadsFrom>[0], 'socket')).toBe(18);
  });
  it('has room to the nearest edge or half way to the next screw', () => {
    // 50 - 30 = 20 inwards, 65 - 50 = 15 outwards, 35.4 to half way.
    expect(stack()).toMatchObject({ dw: 13, hole: 9, outside: 30, ends: 1 });
    expect(stack({ positions: round(4, 45) })?.outside).toBe(30);
    // 12 on 100: 25.88 apart.
    expect(stack({ positions: round(12, 50) })?.outside).toBeCloseTo(100 * Math.sin(Math.PI / 12), 9);
    // Never less than the head itself; where the faces do not touch, that.
    expect(stack({ positions: round(4, 62) })?.outside).toBe(13);
    expect(stack({}, { driving: { outside: { value: 50 } } })?.outside).toBe(13);
    expect(stack({ nut: { height: 6.8, acrossFlats: 13 } })?.ends).toBe(2);
  });
  it('is none where the head is no wider than its hole', () => {
    expect(stack(seat({ inner: 12.9 }))).not.toBeNull();
    expect(stack(seat({ inner: 13 }))).toBeNull();
    expect(stack(seat({ under: 'nut' }))).toBeNull();
  });
});

describe('what is left of the preload', () => {
  const force = (patch: Patch = {}, of: Patch = {}) => {
    const { joint, screws } = drawn(patch, of);
    const found = leastClampForce(joint, screws);
    if (!found.ok) throw new Error(found.why);
    return found.value;
  };
  const area = (d: number) => (Math.PI / 4) * d * d;
  // ISO 724: M8 d3 6.466. VDI 2230-1: 0.4 d of a socket head, 0.5 d of engaged thread, 0.33 d of the part that holds it.
  const screw = (shank: number, free: number, holds = 210_000, held = 0.33) =>
    (0.4 * 8 + shank) / area(8) / 205_000 + (free + 4) / area(6.466) / 205_000 + (held * 8) / area(8) / holds;

  it.each([
    // ISO 4762: 2 d + 12 = 28 of thread and a run-out of 5 pitches (from memory): M8 x 60 has 60 - 28 - 6.25 = 25.75 of shank.
    ['a shank longer than what is clamped', {}, 20, 0],
    ['a shank of 7.75 and thread beyond', { length: 42 }, 7.75, 12.25],
    ['a length that is not known counts as thread', { length: null }, 0, 20],
  ] as const)('%s', (_, patch, shank, free) => {
    const value = force(patch);
    expect(value.clamped).toBe(20);
    expect(value.deltaS / screw(shank, free) - 1).toBeCloseTo(0, 3);
  });

  it('the thread is held by the adapter, a flange, or a nut of steel', () => {
    // The adapter is of 70 GPa; in it the driving flange of 14 is clamped.
    expect(force({ fastening: 'into_adapter' }).deltaS / screw(14, 0, 70_000) - 1).toBeCloseTo(0, 3);
    expect(force({ side: 'wheel' }).deltaS / screw(3, 0, 70_000) - 1).toBeCloseTo(0, 3);
    const nut = { height: 6.8, acrossFlats: 13 };
    expect(force({ fastening: 'through', nut }).deltaS / screw(25.75, 8.25, 205_000, 0.4) - 1).toBeCloseTo(0, 3);
  });

  it('settles by the faces that it has: VDI 2230-1, Rz 10 to 40 across the screw: 3 in the thread, 4.5 a head or nut, 2.5 a joint', () => {
    expect(force({}).embedding).toBeCloseTo((3 + 4.5 + 2.5) / 1000, 9);
    const nut = { height: 6.8, acrossFlats: 13 };
    expect(force({ fastening: 'through', nut }).embedding).toBeCloseTo((3 + 2 * 4.5 + 2.5) / 1000, 9);
    const value = force();
    expect(value.settles).toBeCloseTo(value.embedding / (value.deltaS + value.deltaP) / 1000, 9);
    expect(value.left).toBeCloseTo(15 - value.settles, 9);
    expect(value.greatest).toBe(24);
    // A wrench that surely gives next to nothing leaves nothing: told by what is missing, counted as none.
    const spent = force({ tightening: { leastPreload: 0.1 } });
    expect(spent.least).toBe(0);
    expect(spent.left).toBeCloseTo(0.1 - value.settles, 9);
    expect(spent.left).toBeLessThan(0);
  });

  it('cold takes from a screw in aluminium, heat adds: (alpha - alpha of steel) l dT over both resiliences', () => {
    const value = force({}, { job: { duty: { temperature: { cold: -20, hot: 80 } } } });
    // 4140: 12.3e-6 (printed). 40 K down, 60 K up.
    const change = (kelvin: number) => ((23e-6 - 12.3e-6) * 20 * kelvin) / (value.deltaS + value.deltaP) / 1000;
    expect(value.heat?.cold).toBeCloseTo(change(-40), 2);
    expect(value.heat?.hot).toBeCloseTo(change(60), 2);
    expect(value.left).toBeCloseTo(15 - value.settles + change(-40), 2);
    expect(value.greatest).toBeCloseTo(24 + change(60), 2);
    expect(value.steps.map(({ what }) => what).at(-1)).toMatch(/grow unlike at -20 degC$/);
    const { joint, screws } = drawn({}, { job: { duty: { temperature: { cold: -20, hot: 80 } } } });
    expect(lostPreload(joint, screws)).toBeCloseTo(value.settles - change(-40), 2);
    expect(lostPreload(drawn().joint, drawn().screws)).toBeCloseTo(value.settles, 9);
  });

  it('is not known without a torque, a thread or a stack', () => {
    const ok = (patch: Patch, of: Patch = {}) => {
      const { joint, screws } = drawn(patch, of);
      expect(lostPreload(joint, screws) !== null).toBe(leastClampForce(joint, screws).ok);
      return leastClampForce(joint, screws).ok;
    };
    expect(ok({})).toBe(true);
    expect(ok({ tightening: { preload: null } })).toBe(false);
    expect(ok({ tightening: { leastPreload: null } })).toBe(false);
    expect(ok({ thread: 'M8.3' })).toBe(false);
    expect(ok({ side: 'driven', fastening: 'into_adapter' }, { driven: { thickness: null } })).toBe(false);
  });
});
