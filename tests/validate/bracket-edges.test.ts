/** Brackets drawn by hand, each at its limits and just past them; sums on paper. mm, Hz, rpm */
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/job/joint.ts';
import { bracketPlace } from '../../src/validate/bracket-place.ts';
import { bracketRoom } from '../../src/validate/bracket-room.ts';
import { bracketSheet } from '../../src/validate/bracket-sheet.ts';
import { bracketVibration } from '../../src/validate/bracket-vibration.ts';
import type { Check } from '../../src/validate/check.ts';
import { bent, expectSaid, findingOf, type Patch } from './help.ts';

const bend = { angle: 90, direction: 'up', radius: 4, k: 0.43 };
/** Foot from 30 to 33 beside the sensor, an arm over it; what turns lies below q = 0. */
const base: Patch = {
  bracket: {
    spec: {
      thickness: 3,
      bends: [bend],
      straights: [37, 40],
      foot: { edge: 11, spacing: 60, hole: 6.6, travel: 4 },
      arm: { width: 40, edge: 15 },
      sensor: { bore: 18, ear: null },
    },
    plane: {
      n: { p: 0, q: 1 },
      profile: [
        { p: 33, q: 5 },
        { p: 33, q: 26 },
        { p: 0, q: 26 },
        { p: 0, q: 23 },
        { p: 30, q: 23 },
        { p: 30, q: 5 },
      ],
      turning: [{ name: 'wheel', pMin: -50, pMax: 50, qMin: Number.NEGATIVE_INFINITY, qMax: 0 }],
    },
    gap: { nominal: 1, tolerance: 0.2, build: 1 },
    setting: 'slots',
    packing: 1,
  },
  job: {
    bracket: { form: 'angle', bolts: { size: 'M6' }, sensor: { bore: 18, reach: 25, ear: { size: 'M6' } } },
    wheel: {},
  },
};
const run = (check: Check, ...patches: Patch[]) => check.run(bent(base as unknown as Joint, ...patches));
const said = (check: Check, code: string, ...patches: Patch[]) => findingOf({ findings: run(check, ...patches) }, code);
const spec = (patch: Patch): Patch => ({ bracket: { spec: patch } });
const travel = (slot: number): Patch => spec({ foot: { travel: slot } });

describe('gap and room', () => {
  it.each([
    // Half of the slot each way, from 1 mm of gap; everything may come out 1 mm wrong.
    [2, 0, 'pass'],
    [1.9, 0.05, 'caution'],
    [1, 0.5, 'caution'],
    [0.9, 0.55, 'fail'],
  ] as const)('slots of %f close the gap to %f: %s', (slot, value, verdict) =>
    expectSaid(said(bracketPlace, 'bracket-gap-closes', travel(slot)), { verdict, value, limit: 0 }),
  );

  it.each([
    [2.4, 2.2, 'pass'],
    [2.3, 2.15, 'caution'],
    [1, 1.5, 'caution'],
    [0.9, 1.45, 'fail'],
  ] as const)('slots of %f open it to %f: %s', (slot, value, verdict) =>
    expectSaid(said(bracketPlace, 'bracket-gap-opens', travel(slot)), { verdict, value, limit: 2.2 }),
  );

  it('cures: slots for what may come out wrong and the gap or its tolerance, whichever is more', () => {
    const cure = (code: string, gap: Patch) => said(bracketPlace, code, travel(0), { bracket: { gap } }).remedy;
    expect(cure('bracket-gap-closes', {})).toContain('4 mm long');
    expect(cure('bracket-gap-closes', { nominal: 0.1, tolerance: 0.3 })).toContain('2.6 mm long');
    expect(cure('bracket-gap-opens', {})).toContain('2.4 mm long');
  });

  it.each([
    [1, 'pass'],
    [0.9, 'caution'],
    [0, 'caution'],
    [-0.1, 'fail'],
  ] as const)('%f mm of shims or stand-offs: %s', (packing, verdict) => {
    for (const setting of ['shims', 'stand-offs']) {
      const finding = said(bracketPlace, 'bracket-packing', { bracket: { setting, packing } });
      expectSaid(finding, { verdict, value: packing, limit: 1 });
      expect(finding.title).toContain(setting);
      if (verdict !== 'pass')
        expect(finding.remedy).toContain(setting === 'shims' ? 'bracket.packing: 1 mm' : 'form: offset');
    }
  });

  it.each([
    // The foot ends 5 over what turns, 2 less at the inner end of its slots of 4.
    [0, 3, 'pass'],
    [0.1, 2.9, 'caution'],
    [2, 1, 'caution'],
    [2.1, 0.9, 'fail'],
  ] as const)('what turns up to %f: %f of room, %s', (qMax, value, verdict) => {
    const turning = [
      { name: 'rim', pMin: -50, pMax: 50, qMin: -99, qMax: -3 },
      { name: 'wheel', pMin: -50, pMax: 50, qMin: -99, qMax },
    ];
    const finding = said(bracketPlace, 'bracket-clearance', { bracket: { plane: { turning } } });
    expectSaid(finding, { verdict, value, limit: 3 });
    expect(finding.title).toBe('bracket clear of the wheel');
    if (verdict !== 'pass') expect(finding.remedy).toContain(`${Number((3 - value).toFixed(1))} mm away`);
    const fixed = said(bracketPlace, 'bracket-clearance', { bracket: { plane: { turning }, setting: 'shims' } });
    expect(fixed.value).toBeCloseTo(value + 2, 9);
  });

  it.each([
    // ISO 4032 M6: 5.2 high; two threads of 1: 7.2 below a sheet of 3 that lies reach + 1 over the teeth.
    [11.2, 2, 'pass'],
    [11.1, 1.9, 'caution'],
    [9.7, 0.5, 'caution'],
    [9.6, 0.4, 'fail'],
  ] as const)('an ear %f over the tip: %f under its nut, %s', (reach, value, verdict) =>
    expectSaid(said(bracketPlace, 'bracket-ear-nut', { job: { bracket: { sensor: { reach } } } }), {
      verdict,
      value,
      limit: 2,
    }),
  );

  it('a nut that nobody tables; no ear, no bracket', () => {
    const ear = (value: unknown): Patch => ({ job: { bracket: { sensor: { ear: value } } } });
    expect(said(bracketPlace, 'bracket-ear-nut', ear({ size: 'M6.5' }))).toMatchObject({ verdict: 'not assessed' });
    expect(run(bracketPlace, ear(undefined)).map(({ code }) => code)).not.toContain('bracket-ear-nut');
    for (const check of [bracketPlace, bracketRoom, bracketSheet, bracketVibration])
      expect(run(check, { bracket: null })).toEqual([]);
    for (const check of [bracketPlace, bracketRoom, bracketVibration])
      expect(run(check, { job: { bracket: undefined } })).toEqual([]);
  });
});

describe('tools and the sensor', () => {
  const foot = (run: number): Patch => spec({ straights: [11 + run, 40] });
  it.each([
    // ISO 4017 M6: 10 across flats, 16 outside; washer 1.6: sqrt(16 - 2.4^2) = 3.2 beyond the bend's start; slots of 4.
    [7.3, 0.5, 'pass', ''],
    [7.2, 0.4, 'caution', '0.1 mm farther'],
    [5, -1.8, 'caution', '2.3 mm farther'],
  ] as const)('a leg that begins to bend %f from the bolts: %f, %s', (at, value, verdict, says) => {
    const finding = said(bracketRoom, 'bracket-socket', foot(at));
    expectSaid(finding, { verdict, value, limit: 0.5 });
    expect(finding.remedy).toContain(says);
  });

  it('a leg that leans at 45 degrees: 2.828 out and 1.172 up on the round, then one for one', () =>
    expect(said(bracketRoom, 'bracket-socket', foot(10), spec({ bends: [{ ...bend, angle: 45 }] })).value).toBeCloseTo(
      10 + 4 * Math.SQRT1_2 + (1.6 - 4 * (1 - Math.SQRT1_2)) - 2 - 8,
      6,
    ));

  const channel = (web: number, radius = 4): Patch[] => [
    { job: { bracket: { form: 'channel' } } },
    spec({
      bends: [
        { ...bend, radius },
        { ...bend, radius },
      ],
      straights: [37, web, 40],
      arm: { width: 44.1 },
    }),
  ];
  it.each([
    // Washer 1.6 and head 4 under an arm; 3 more than the head for a ring spanner, 1 for an open one (common practice).
    [4.6, 4, 7, 'pass'],
    [4.5, 4, 6.9, 'caution'],
    [4.6, 1, 1, 'caution'],
    [4.5, 1, 0.9, 'fail'],
  ] as const)('an arm %f over bends of radius %f: %f over the heads, %s', (web, radius, value, verdict) =>
    expectSaid(said(bracketRoom, 'bracket-under-arm', ...channel(web, radius)), { verdict, value, limit: 7 }),
  );

  it('bolts that stand wide of the arm are reached from above: 30 - 8 = 22 of half its width', () => {
    const codes = (...patches: Patch[]) => run(bracketRoom, ...patches).map(({ code }) => code);
    expect(codes(...channel(4.6), spec({ arm: { width: 44 } }))).not.toContain('bracket-under-arm');
    expect(codes(...channel(4.6))).toContain('bracket-under-arm');
    expect(codes(...channel(4.6), { job: { bracket: { form: 'offset' } } })).not.toContain('bracket-under-arm');
    expect(codes({ job: { bracket: { form: 'channel' } } })).not.toContain('bracket-under-arm');
    expect(codes(spec({ bends: [] }))).toEqual([]);
  });

  it.each([
    ['angle', 'down', -1, true],
    ['offset', 'up', 1, true],
    ['offset', 'down', 1, false],
    ['offset', 'up', -1, false],
    ['offset', 'down', -1, true],
  ] as const)('%s, first bend %s, face %d: beside the heads %s', (form, direction, q, isBeside) => {
    const codes = run(
      bracketRoom,
      { job: { bracket: { form } }, bracket: { plane: { n: { q } } } },
      spec({ bends: [{ ...bend, direction }] }),
    );
    expect(codes.map(({ code }) => code).includes('bracket-socket')).toBe(isBeside);
  });

  it('a head that nobody tables', () =>
    expect(said(bracketRoom, 'bracket-socket', { job: { bracket: { bolts: { size: 'M6.5' } } } })).toMatchObject({
      verdict: 'not assessed',
      remedy: expect.stringContaining('ISO 4017'),
    }));

  /** A foot from `p` on, from 5 to 26 over the teeth, then an arm across the sensor, which is no foot. */
  const legs = (p: number, low = 5, high = 26): Patch => ({
    bracket: {
      plane: {
        profile: [
          { p: p + 3, q: low },
          { p: p + 3, q: high },
          { p: 0, q: high },
          { p: 0, q: high - 3 },
          { p, q: high },
          { p, q: low },
        ],
      },
    },
  });
  it.each([
    [10, 1, 'pass', ''],
    [9.9, 0.9, 'caution', '0.1 mm farther'],
    [9.5, 0.5, 'caution', '0.5 mm farther'],
    [9.4, 0.4, 'fail', '0.6 mm farther'],
  ] as const)('a foot %f from the axis of a sensor of 18: %f, %s', (p, value, verdict, says) => {
    const finding = said(bracketRoom, 'bracket-own-foot', legs(p));
    expectSaid(finding, { verdict, value, limit: 1 });
    expect(finding.remedy).toContain(says);
  });

  it.each([
    // The ear lies 26 over the teeth; a foot that hangs over it from 30 on.
    [undefined, 4, 'pass'],
    [3, 1, 'pass'],
    [3.1, 0.9, 'caution'],
    [3.6, 0.4, 'fail'],
  ] as const)('%s behind the ear, under a foot at 30: %f, %s', (behind, value, verdict) =>
    expectSaid(said(bracketRoom, 'bracket-own-foot', legs(0, 30, 50), { job: { bracket: { sensor: { behind } } } }), {
      verdict,
      value,
      limit: 1,
    }),
  );

  it('of two bends foot and web are looked at, and the arm is not', () => {
    const profile = (web: number) => [
      { p: 60, q: 3 },
      { p: web + 3, q: 3 },
      { p: web + 3, q: 26 },
      { p: 0, q: 26 },
      { p: 0, q: 23 },
      { p: web, q: 26 },
      { p: web, q: 0 },
      { p: 60, q: 0 },
    ];
    const at = (web: number) =>
      said(bracketRoom, 'bracket-own-foot', ...channel(10), { bracket: { plane: { profile: profile(web) } } }).value;
    expect(at(20)).toBeCloseTo(11, 9);
    expect(at(10)).toBeCloseTo(1, 9);
  });
});
