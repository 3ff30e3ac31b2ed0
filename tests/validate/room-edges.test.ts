/** Heads, nuts and sockets among their neighbours: joints drawn by hand, each room a subtraction. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import type { Joint, ScrewGroup } from '../../src/job/joint.ts';
import { headRoom } from '../../src/validate/head-room.ts';
import { toolRoom } from '../../src/validate/tightening-tools.ts';
import { bent, expectSaid, findingOf, judge, type Patch } from './help.ts';

/** The sound joint, and its driving screws with some things changed: M8 on 84, heads in pockets of 15 x 8.6 in the driven face. */
const { joint } = judge({ wheel: undefined, sensor: undefined });
const group = (patch: Patch, side = 'driving', of = joint): Joint =>
  bent(of, {
    screws: of.screws
      .filter((screws) => screws.side === side)
      .map((screws) => bent(screws as unknown as Joint, patch) as unknown as ScrewGroup),
  });

describe('room behind a flange', () => {
  const driven = (patch: Patch, behind: number | null, of: Patch = {}) =>
    headRoom.run(
      bent(group({ seat: 'outside', length: 30, head: { height: 10 }, washer: null, ...patch }, 'driven'), {
        driven: { behind },
        ...of,
      }),
    );
  const said = (patch: Patch, behind: number | null, of: Patch = {}) =>
    findingOf({ findings: driven(patch, behind, of) }, 'room-behind-flange');

  it.each([
    [40, 'pass', ''],
    [39.9, 'caution', /^Put the screws in before/],
    [10, 'caution', /^Put the screws in before/],
    [9.9, 'fail', /^The heads do not fit there/],
  ] as const)('a screw of 30 with a head of 10 behind %f mm of room: %s', (behind, verdict, says) => {
    const finding = said({}, behind);
    expectSaid(finding, { verdict, value: behind, limit: 40 });
    expect(finding.remedy).toMatch(says);
  });

  it('a washer under the head counts', () =>
    expectSaid(said({ washer: { outside: 20, thickness: 2 } }, 11), { verdict: 'fail', value: 11, limit: 42 }));

  it('what is not known is said', () => {
    expect(said({}, null)).toMatchObject({
      verdict: 'not assessed',
      remedy: expect.stringMatching(/^Give driven\.behind/),
    });
    expect(said({}, null).why).toContain('40.00 mm long');
    expect(said({ length: null }, null).remedy).toMatch(/^Give driven\.behind/);
    expect(said({ length: null }, 30).remedy).toContain('see screw-length');
  });

  it('bolts through both flanges go in behind the driven one, screws into the adapter behind their own', () => {
    const drivingSide = (fastening: string) =>
      findingOf(
        {
          findings: headRoom.run(
            bent(group({ seat: 'outside', length: 30, head: { height: 10 }, washer: null, fastening }), {
              driving: { behind: 20 },
              driven: { behind: 50 },
            }),
          ),
        },
        'room-behind-flange',
      );
    expectSaid(drivingSide('through'), { verdict: 'pass', value: 50, limit: 40 });
    expectSaid(drivingSide('into_adapter'), { verdict: 'caution', value: 20, limit: 40 });
  });

  it('only heads outside of the adapter, and not the wheel\u2019s', () => {
    expect(driven({ seat: 'sunk' }, 1)).toEqual([]);
    expect(driven({ side: 'wheel' }, 1)).toEqual([]);
  });
});

describe('heads beside a rim', () => {
  const spec = joint.adapterSpec.groups.map((one) =>
    one.side === 'driving'
      ? { ...one, shape: { kind: 'passing', diameter: 9, headFace: 'driven', head: { kind: 'surface' } } }
      : one,
  );
  // Heads of 13 on 84 and one on 80: from 33.5 to 48.5 off the axis.
  const uneven = [...(joint.screws.find(({ side }) => side === 'driving')?.positions ?? []), { x: 0, y: 40 }];
  const onFace = (outside: number, wheel: Patch = {}) =>
    headRoom.run(
      bent(group({ seat: 'surface', head: { diameter: 13 }, washer: null, positions: uneven }), {
        adapterSpec: { groups: spec },
        driven: { outside: { value: outside } },
        ...wheel,
      }),
    );
  it.each([
    [65, 'pass', 1],
    [65.2, 'caution', 0.9],
    [67, 'caution', 0],
    [67.2, 'fail', -0.1],
  ] as const)('the innermost head, 33.5 off the axis, beside a flange of %f: %s', (outside, verdict, room) => {
    const [finding, ...others] = onFace(outside);
    expect(others).toEqual([]);
    expect(finding?.code).toBe('heads-clear-flange');
    if (finding) expectSaid(finding, { verdict, value: room, limit: 1 });
  });

  it.each([
    [99, 'pass', 1],
    [98.8, 'caution', 0.9],
    [97, 'caution', 0],
    [96.8, 'fail', -0.1],
  ] as const)('the outermost head, 48.5 off the axis, in a wheel\u2019s bore of %f: %s', (bore, verdict, room) => {
    const findings = onFace(60, { wheelSpec: { bore }, job: { wheel: { on: 'adapter', face: 'driven' } } });
    expectSaid(findingOf({ findings }, 'heads-clear-wheel'), { verdict, value: room, limit: 1 });
  });

  it('a wheel on the other face, on the other flange, or none is not in the way', () => {
    const codes = (wheel: Patch) => onFace(60, wheel).map(({ code }) => code);
    const on = (on: string, face = 'driven') => ({ wheelSpec: { bore: 99 }, job: { wheel: { on, face } } });
    expect(codes(on('adapter'))).toContain('heads-clear-wheel');
    expect(codes(on('driven', 'driving'))).toContain('heads-clear-wheel');
    expect(codes(on('adapter', 'driving'))).toEqual(['heads-clear-flange']);
    expect(codes(on('driving'))).toEqual(['heads-clear-flange']);
    expect(codes({ job: { wheel: { on: 'adapter', face: 'driven' } } })).toEqual(['heads-clear-flange']);
    expect(codes({ wheelSpec: { bore: 99 } })).toEqual(['heads-clear-flange']);
  });

  it.each([
    // Heads of 10 on 80: 35; a flange of 69 read to 0.1.
    [69, 0.1, 'pass', 0.4, ''],
    [69, 0.2, 'pass', 0.3, ''],
    [69, 0.3, 'caution', 0.2, '0.2 mm larger'],
    [70.2, 0, 'fail', -0.1, '0.8 mm larger'],
  ] as const)('the wheel\u2019s own heads beside a flange of %f +-%f: %s', (outside, doubt, verdict, room, says) => {
    const wheel = (on: Patch) =>
      bent(
        group({ side: 'wheel', seat: 'surface', head: { diameter: 10 }, washer: null, positions: [{ x: 0, y: 40 }] }),
        {
          adapterSpec: { groups: [] },
          driven: { outside: { value: outside, doubt } },
          driving: { outside: { value: 10, doubt: 0 } },
          job: { wheel: on },
        },
      );
    const at = (on: Patch) => findingOf({ findings: headRoom.run(wheel(on)) }, 'wheel-heads-clear-flange');
    const finding = at({ on: 'adapter', face: 'driven' });
    expectSaid(finding, { verdict, value: room, limit: 0.3 });
    expect(finding.remedy).toContain(says);
    // On a flange itself, whatever face is named; on the other face the other flange counts: 35 - 5 = 30.
    expect(at({ on: 'driven', face: 'driving' }).value).toBeCloseTo(room, 6);
    expect(at({ on: 'adapter', face: 'driving' }).value).toBeCloseTo(30, 6);
    expect(headRoom.run(bent(wheel({}), { job: { wheel: undefined } }))).toEqual([]);
  });
});

describe('room for a socket', () => {
  // ISO 4017 M8: 13 across flats. A socket is about 1.5 x 13 + 1 = 20.5 outside (common practice): 10.25 from its middle.
  const spec = (register: Patch | null) => ({
    adapterSpec: {
      registers: { driven: register, driving: null },
      groups: joint.adapterSpec.groups.map((one) =>
        one.side === 'driving'
          ? { ...one, shape: { kind: 'passing', diameter: 9, headFace: 'driven', head: { kind: 'surface' } } }
          : one,
      ),
    },
  });
  const at = (...radii: number[]) => radii.map((x, i) => ({ x: i % 2 === 0 ? x : -x, y: 0 }));
  const said = (positions: readonly Patch[], register: Patch | null, patch: Patch = {}) =>
    toolRoom.run(
      bent(
        group({ seat: 'surface', washer: null, nut: null, head: { kind: 'hex', diameter: 14 }, positions, ...patch }),
        spec(register),
      ),
    );
  const spigot = (upper: number, patch: Patch = {}) => ({
    gender: 'male',
    at: 'inner',
    limits: { lower: 1, upper },
    ...patch,
  });

  it.each([
    // 40 - 10.25 - upper / 2.
    [58.5, 'pass', 0.5, ''],
    [58.6, 'caution', 0.45, /thin-walled socket or a ring spanner/],
    [62, 'caution', -1.25, /thin-walled/],
  ] as const)('heads on 80 beside a spigot of %f: %s, %f', (upper, verdict, room, says) => {
    const [finding] = said(at(45, 40), spigot(upper));
    if (!finding) throw new Error('nothing said');
    expectSaid(finding, { verdict, value: room, limit: 0.5 });
    expect(finding.why).toContain('20.5 mm outside');
    expect(finding.why).toContain('the driven spigot is nearest');
    expect(finding.remedy).toMatch(says);
  });

  it('inside a ring round the face: 60 - 45 - 10.25 = 4.75 for the outermost', () => {
    const ring = { gender: 'female', at: 'rim', limits: { lower: 120, upper: 200 } };
    const [finding] = said(at(45, 40), ring);
    expect(finding?.value).toBeCloseTo(4.75, 9);
    expect(finding?.why).toContain('the driven ring');
  });

  it('beside the next head: 30 - 10.25 - 7 = 12.75', () => {
    const near = [...at(45, 40), { x: 45, y: 30 }];
    for (const register of [null, spigot(58.5, { at: 'rim' }), spigot(58.5, { gender: 'female' })]) {
      const [finding] = said(near, register);
      expect(finding?.value).toBeCloseTo(12.75, 9);
      expect(finding?.why).toContain('the next screw');
    }
    // Sunk or outside heads do not stand beside the register.
    expect(said(near, spigot(58.5), { seat: 'outside' })[0]?.value).toBeCloseTo(12.75, 9);
  });

  it('of several neighbours the nearest is told: the next head 12.75 off, a spigot of 20 19.75', () => {
    const [finding] = said([...at(45, 40), { x: 45, y: 30 }], spigot(20));
    expect(finding?.value).toBeCloseTo(12.75, 9);
    expect(finding?.why).toContain('the next screw');
  });

  it('a single screw in the open has nothing beside it; socket heads take a key', () => {
    expect(said(at(45), null)).toEqual([]);
    expect(said(at(45, 40), spigot(58.5), { head: { kind: 'socket', diameter: 13 } })).toEqual([]);
  });

  it('nuts: a hexagon of 13 reaches 7.5056 to its corners', () => {
    const near = [...at(45), { x: 45, y: 18 }];
    const findings = said(near, spigot(58.5), {
      head: { kind: 'socket', diameter: 13 },
      nut: { height: 6.8, acrossFlats: 13 },
    });
    expect(findings).toHaveLength(1);
    // 18 - 10.25 - 13 / sqrt(3); nuts do not stand beside the register.
    expect(findings[0]?.value).toBeCloseTo(18 - 10.25 - 13 / Math.sqrt(3), 6);
    expect(findings[0]?.title).toContain('nuts');
    expect(findings[0]?.verdict).toBe('caution');
  });
});
