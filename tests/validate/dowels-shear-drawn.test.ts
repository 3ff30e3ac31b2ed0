/** Torque that dowels carry alone, drawn by hand: pins of 8 that break at 20 kN, on 90; EN 1993-1-8 and statics on paper. N, N.m, mm */
import { describe, expect, it } from 'vitest';
import type { DowelSet } from '../../src/job/joint-dowels.ts';
import { carriedByDowels, carryByDowels, dowelShear } from '../../src/validate/dowels-shear.ts';
import { joint } from './drawn-registers.ts';
import { expectSaid, type Patch, patched } from './help.ts';

const pins: Patch = {
  side: 'driving',
  pin: { d: 8, chamfer: 1.6, memory: false, shear: 20 },
  count: 2,
  circle: 90,
  reamed: 'together',
  inside: { adapter: 13.6, flange: 13.6 },
};
const set = (patch: Patch = {}) => patched(pins, patch) as unknown as DowelSet;
const asked = (torque: number | undefined, reversing = false): Patch => ({
  driving: { material: '6061-T6' },
  job: { duty: { torque, shock: 1, reversing } },
});
/** A pin at 20 kN over 1.25 is 16 kN: 720 N.m on a radius of 45, so long as the metal holds. */
const onePin = 720;

describe('what they carry', () => {
  const carried = (patch: Patch = {}, of: Patch = {}) =>
    carriedByDowels(joint({ driving: { material: 'S355' } }, of), set(patch));

  it('is shared by pins whose holes were reamed together, else left to one', () => {
    expect(carried()).toEqual({ torque: 2 * onePin, sharing: 2, load: 16_000, gives: 'the pins are cut through' });
    expect(carried({ count: 3 })).toMatchObject({ torque: 3 * onePin, sharing: 3 });
    expect(carried({ reamed: 'separately' })).toMatchObject({ torque: onePin, sharing: 1 });
  });

  it('is what the metal bears where that is weak, 1.5 times its yield over 12 mm of a pin of 8', () => {
    const soft = { adapterMaterial: { yieldStrength: 10 } };
    expect(carried({}, soft)).toMatchObject({ load: 1440, gives: 'the holes in the adapter widen' });
    // The chamfer of 1.6 does not bear, and no depth is less than none.
    expect(carried({ inside: { adapter: 7.6 } }, soft).load).toBeCloseTo(720, 9);
    expect(carried({ inside: { adapter: 1.6 } }).load).toBe(0);
    expect(carried({ inside: { adapter: 1 } }).load).toBe(0);
    // The flange's: 235 MPa of S235 (EN 10025) over 2 mm, in an adapter that is much harder.
    const hard = { adapterMaterial: { yieldStrength: 20_000 }, driving: { material: 'S235' } };
    const flange = carried({ pin: { shear: 500 }, inside: { flange: 3.6 } }, hard);
    expect(flange).toMatchObject({ load: 1.5 * 235 * 2 * 8, gives: 'the holes in the driving flange widen' });
  });
});

describe('against the torque', () => {
  const said = (torque: number | undefined, patch: Patch = {}, of: Patch = {}) =>
    dowelShear(joint(asked(torque), of), set(patch));

  it.each([
    [1440, 'pass'],
    [1441, 'caution'],
    [9000, 'caution'],
  ] as const)('1440 N.m of %f: %s', (torque, verdict) =>
    expectSaid(said(torque), { verdict, value: 1440, limit: torque }),
  );

  it('is open without a torque, and says what they carry', () => {
    expect(said(undefined)).toMatchObject({
      verdict: 'not assessed',
      why: expect.stringContaining('They carry 1440 N.m. 2 pins'),
    });
  });

  it('says how many share it, and which way it does not help', () => {
    expect(said(1000).why).toMatch(/^2 pins carry it, on 90\.00 mm: 16\.0 kN a pin before the pins are cut through\./);
    expect(said(700, { count: 1 }).why).toMatch(/^One pin carries it/);
    expect(said(700, { reamed: 'separately' }).why).toMatch(/^Reamed apart, one pin may have to carry it alone/);
    expect(said(700, { count: 1, reamed: 'separately' }).why).toMatch(/^One pin carries it/);
    expect(said(700).why).not.toContain('save no face');
    expect(said(700, {}, { job: { duty: { reversing: true } } }).why).toContain(
      'They save no face that slips: the torque reverses',
    );
  });

  it('is as sure as pin and metals are', () => {
    // Of the table 6061-T6 was read at its source, S355 is from memory.
    const marks = [{}, { pin: { memory: true } }].map((patch) => said(1000, patch).source.includes('(from memory)'));
    expect(marks).toEqual([false, true]);
    expect(said(1000, {}, { adapterMaterial: { memory: true } }).source).toContain('(from memory)');
    expect(said(1000, {}, { driving: { material: 'S355' } }).source).toContain('(from memory)');
  });
});

describe('stronger dowels', () => {
  const stronger = (torque: number | undefined, patch: Patch = {}, reversing = false) =>
    carryByDowels(
      joint(asked(torque, reversing), { dowels: { driving: set(patch), driven: null } } as unknown as Patch),
      'driving',
      torque,
    );

  it('are new ones where there are none, and none where the torque reverses or they carry it', () => {
    const none = (reversing: boolean) => carryByDowels(joint(asked(500, reversing)), 'driving', 500);
    expect(none(false)).toBe('carry the torque by dowels (adapter.driving.dowels: auto)');
    expect(none(true)).toBe('');
    expect(stronger(undefined)).toBe('');
    expect(stronger(1440)).toBe('');
    expect(stronger(2000, {}, true)).toBe('');
    expect(dowelShear(joint(asked(1441)), set()).remedy).toBe(
      "The screws' friction has to carry all of it: see grip-driving. For the pins to carry it, carry the torque by dowels (adapter.driving.dowels: auto).",
    );
  });

  it('are thicker ones up to 20, or as many as it takes up to six', () => {
    const thicker = 'thicker pins (adapter.driving.dowels.size)';
    const more = (count: number) =>
      `${count} of them reamed together (adapter.driving.dowels: { count: ${count}, reamed: together })`;
    expect(stronger(1441)).toBe(`take ${thicker}, or ${more(3)}`);
    expect(stronger(1440, { reamed: 'separately' })).toBe(`take ${thicker}, or ${more(2)}`);
    expect(stronger(6 * onePin)).toBe(`take ${thicker}, or ${more(6)}`);
    expect(stronger(6 * onePin + 1)).toBe(`take ${thicker}`);
    expect(stronger(6 * onePin + 1, { pin: { d: 16 } })).toBe(`take ${thicker}`);
    expect(stronger(6 * onePin, { pin: { d: 20 } })).toBe(`take ${more(6)}`);
    expect(stronger(6 * onePin + 1, { pin: { d: 20 } })).toBe('');
  });

  it('widen even a margin that is there: what is done already is not advised', () => {
    const improve = (patch: Patch) => dowelShear(joint(asked(100)), set(patch)).improve;
    const key = 'adapter.driving.dowels';
    expect(improve({})).toBe(`Thicker pins (${key}.size), or more of them (${key}.count).`);
    expect(improve({ count: 5 })).toContain('more of them');
    expect(improve({ count: 6 })).toBe(`Thicker pins (${key}.size).`);
    expect(improve({ reamed: 'separately' })).toBe(
      `Thicker pins (${key}.size), or holes reamed together (${key}.reamed: together).`,
    );
    expect(improve({ pin: { d: 20 } })).toBe(`More of them (${key}.count).`);
    expect(improve({ pin: { d: 20 }, count: 6 })).toBe('');
  });
});
