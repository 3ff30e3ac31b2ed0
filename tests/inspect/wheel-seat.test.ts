/** How true the wheel's seat must run: what its set-up holds, and no more than the centring chain counts for it. */
import { describe, expect, it } from 'vitest';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import { linksTo } from '../../src/rotor/links.ts';
import { routeOf } from '../../src/shop/operations.ts';
import { shippedJob } from '../presets/shipped.ts';
import { findingOf, judge } from '../validate/help.ts';

const { joint: orchard } = shippedJob('orchard-truck');
const rowOf = (joint: typeof orchard) => characteristicsOf(joint).find(({ id }) => id === 'wheel-seat-runout');

describe('the run-out of the wheel seat', () => {
  it('is the run-out that was given for turning over, where the seat was turned over', () => {
    const given = { ...orchard, turnOver: { tir: 0.035, from: 'given in the job' } };
    expect(rowOf(given)).toMatchObject({ upper: 0.035, from: 'given in the job' });
  });

  it('is twice what the chain counts for it: a dial shows twice what an axis is off', () => {
    const { set_true: _set, ...wheel } = orchard.job.wheel as NonNullable<typeof orchard.job.wheel>;
    const link = linksTo({ ...orchard, job: { ...orchard.job, wheel } }, 'wheel').find(({ id }) => id === 'turn-over');
    expect(link?.most).toBeCloseTo((rowOf(orchard)?.upper ?? 0) / 2, 9);
  });

  it('is what one chucking holds on the driving face, in record and chain alike: 0.01 by the dial, 0.005 of the axis', () => {
    const made = judge({ wheel: { face: 'driving' } });
    expect(made.joint.adapterSpec.wheelSeat?.face).toBe('driving');
    const row = rowOf(made.joint);
    expect(row).toMatchObject({ upper: 0.01, from: expect.stringContaining('turned with the driving register') });
    const links = linksTo(made.joint, 'teeth');
    expect(links.map(({ id }) => id)).toEqual([
      'driving-run-out',
      'driving-seat',
      'wheel-seat-runout',
      'wheel-bore',
      'teeth',
    ]);
    expect(links.find(({ id }) => id === 'wheel-seat-runout')?.most).toBeCloseTo(0.005, 9);
    expect(findingOf(made, 'wheel-runout').why).toContain('the shoulder for the wheel 0.01');
  });

  it('is all that turning over lets where the driving face has no register that it was turned with', () => {
    const { joint } = judge({
      wheel: { face: 'driving' },
      driving: { register: 'none' },
      adapter: { setup: 'three jaw' },
    });
    expect(rowOf(joint)?.upper).toBeCloseTo(0.08, 9);
    expect(linksTo(joint, 'wheel').find(({ id }) => id === 'wheel-seat-runout')?.most).toBeCloseTo(0.04, 9);
  });

  it('comes on top where the driven register, turned with it, was read with a dial', () => {
    const of = (joint: typeof orchard) => linksTo(joint, 'wheel').map(({ id, most }) => [id, most]);
    const { joint } = judge({ wheel: { face: 'driven' } });
    expect(of(joint).map(([id]) => id)).not.toContain('wheel-seat-runout');
    const real = {
      ...joint,
      asMeasured: { register: { tir: 0.03, arrow: null, doubt: 0.01 } },
    } as unknown as typeof joint;
    expect(of({ ...real, turnOver: { tir: 0.03, from: 'measured' } })).toEqual(
      expect.arrayContaining([['wheel-seat-runout', expect.closeTo(0.005, 9)]]),
    );
  });

  it('says what runs true while the dial is read', () => {
    const { registers } = orchard.adapterSpec;
    const what = (spec: Partial<typeof orchard.adapterSpec>) =>
      rowOf({ ...orchard, adapterSpec: { ...orchard.adapterSpec, ...spec } })?.what;
    expect(what({})).toMatch(/driving register true$/);
    expect(what({ registers: { ...registers, driving: null } })).toMatch(/bore true$/);
    expect(what({ registers: { ...registers, driving: null }, bore: null })).toMatch(/outside true$/);
  });

  it('is none without a seat', () => {
    expect(rowOf({ ...orchard, adapterSpec: { ...orchard.adapterSpec, wheelSeat: null } })).toBeUndefined();
    expect(rowOf(shippedJob('kart').joint)).toBeUndefined();
  });

  it('is read at the lathe where the seat is turned, once', () => {
    const measured = routeOf(orchard, characteristicsOf(orchard)).operations.flatMap(({ measure, face }) =>
      measure.some(({ id }) => id === 'wheel-seat-runout') ? [face] : [],
    );
    expect(measured).toEqual([orchard.adapterSpec.wheelSeat?.face]);
  });
});
