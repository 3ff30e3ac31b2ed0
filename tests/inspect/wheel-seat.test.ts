/** How true the wheel's seat must run: what its set-up holds, and no more than the centring chain counts for it. */
import { describe, expect, it } from 'vitest';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import { linksTo } from '../../src/rotor/links.ts';
import { routeOf } from '../../src/shop/operations.ts';
import { shippedJob } from '../presets/shipped.ts';

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
