/** Single design decisions: the screw for a hole, shared patterns, registers, the outside, the bore, flats. Lengths in mm. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatsAcross, flatsFor } from '../../src/design/flats.ts';
import { screwForHole } from '../../src/design/pick-screw.ts';
import { sharedPattern } from '../../src/design/shared-pattern.ts';
import type { Drilling } from '../../src/model/part.ts';
import { allThreads } from '../../src/standards/threads.ts';
import { judge, type Patch } from '../validate/help.ts';

const noWheel = { wheel: undefined, sensor: undefined };

describe('the screw for a plain hole', () => {
  // Left: hole sizes of flange catalogues and clearance tables; right: the bolt that the same tables name for them.
  it.each([
    [5.1, 'M5', 'DIN flange 58, hole C12'],
    [6.1, 'M6', 'DIN flange 75'],
    [8.1, 'M8', 'DIN flange 100'],
    [9, 'M8', 'ISO 273 medium'],
    [10.1, 'M10', 'DIN flange 120'],
    [10.4, 'M10', 'a caliper on a worn 10.1'],
    [11, 'M10', 'ISO 273 medium: 7/16 does not go in'],
    [12.1, 'M12', 'DIN flange 150'],
    [13.5, 'M12', 'ISO 273 medium'],
    [14.1, 'M14', 'DIN flange 180'],
    [16.1, 'M16', 'DIN flange 225'],
    [9.7, '3/8-24 UNF', 'type S flange 1300, 3/8 in'],
    [11.3, '7/16-20 UNF', 'type S flange 1400, 7/16 in'],
    [12, 'M10', 'ISO 273 coarse: a 7/16 would go in too'],
    [14, 'M12', 'the medium hole of an older standard'],
    [10.3, 'M10', 'play of 0.3 is nothing to wonder at, although 3/8 normal is 10.32'],
    [6.6, 'M6', 'ISO 273 medium; 1/4 would go in'],
  ])('a %s hole takes %s (%s)', (hole, thread) => expect(screwForHole(hole)?.designation).toBe(thread));

  it('gives up on holes smaller than any screw, and never proposes one that does not go in', () => {
    expect(screwForHole(2.5)).toBeNull();
    const largest = Math.max(...allThreads().map(({ d }) => d));
    fc.assert(
      fc.property(fc.double({ min: 3.2, max: 40, noNaN: true }), (hole) => {
        const d = screwForHole(hole)?.d ?? 0;
        return d > 0 && d <= hole && (d === largest || hole - d < 4.1);
      }),
    );
  });
});

const onCircle = (count: number, circle: number, first = 0) =>
  Array.from({ length: count }, (_, i) => {
    const angle = ((first + (360 * i) / count) * Math.PI) / 180;
    return { x: (circle / 2) * Math.cos(angle), y: (circle / 2) * Math.sin(angle) };
  });

describe('two patterns that are one', () => {
  const flange = (
    side: 'driving' | 'driven',
    positions: readonly { x: number; y: number }[],
    kind: 'clear' | 'tapped' = 'clear',
  ) => {
    const known = judge(noWheel).joint[side];
    return { ...known, holes: { ...known.holes, positions, kind } };
  };
  const shared = (a: ReturnType<typeof onCircle>, b: ReturnType<typeof onCircle>, wanted: number | null = null) =>
    sharedPattern({ driving: flange('driving', a), driven: flange('driven', b) }, wanted);

  it('finds the smallest turn that brings equal patterns together', () => {
    expect(shared(onCircle(6, 84), onCircle(6, 84))).toBe(0);
    expect(shared(onCircle(6, 84, 20), onCircle(6, 84))).toBeCloseTo(20, 9);
    expect(shared(onCircle(4, 100, 10), onCircle(4, 100, 75))).toBeCloseTo(25, 9);
  });

  it('takes circles up to 0.6 apart on the diameter, and no more', () => {
    expect(shared(onCircle(4, 100), onCircle(4, 100.6))).not.toBeNull();
    expect(shared(onCircle(4, 100), onCircle(4, 100.7))).toBeNull();
  });

  it('refuses other counts, uneven spacing and tapped flanges', () => {
    expect(shared(onCircle(6, 84), onCircle(4, 84))).toBeNull();
    expect(shared(onCircle(4, 84), [...onCircle(4, 84).slice(0, 3), { x: 30, y: -29.4 }])).toBeNull();
    const six = onCircle(6, 84);
    expect(sharedPattern({ driving: flange('driving', six), driven: flange('driven', six, 'tapped') })).toBeNull();
  });

  it('takes a clocking that was asked for only where it brings them together', () => {
    expect(shared(onCircle(6, 84), onCircle(6, 84), 120)).toBe(120);
    expect(shared(onCircle(6, 84), onCircle(6, 84), -60)).toBe(300);
    expect(shared(onCircle(6, 84), onCircle(6, 84), 30)).toBeNull();
  });

  it('drills two patterns when the clocking that was asked for parts them', () => {
    const holes = { count: 4, circle: 84, diameter: 8.4 };
    const job: Patch = {
      driving: { holes },
      driven: { holes },
      adapter: { driving: { fastening: 'through' }, driven: { fastening: 'through' } },
    };
    const drop: Patch = { ...noWheel, driving: { holes: undefined }, driven: { holes: undefined } };
    expect(judge(drop, job).joint.adapterSpec.groups.map(({ id }) => id)).toEqual(['driving-screws']);
    const parted = judge(drop, job, { adapter: { clocking: 45 } }).joint;
    expect(parted.adapterSpec.groups.map(({ id }) => id)).toEqual(['driving-screws', 'driven-screws']);
    expect(parted.clocking.web).not.toBeNull();
  });

  it('chooses shared bolts for the smaller of two hole sizes', () => {
    const drop: Patch = { ...noWheel, driving: { holes: undefined }, driven: { holes: undefined } };
    const { joint } = judge(drop, {
      driving: { holes: { count: 6, circle: 84, diameter: 10.5 } },
      driven: { holes: { count: 6, circle: 84, diameter: 8.4 } },
      adapter: { driving: { fastening: 'through' }, driven: { fastening: 'through' } },
    });
    expect(joint.screws.map(({ thread }) => thread)).toEqual(['M8']);
  });
});

describe('registers', () => {
  const spec = (...patches: Patch[]) => judge(noWheel, ...patches).joint.adapterSpec.registers;

  it('is made to the worst that was measured: 62 within 0.01 gives a recess of 62.01 H7', () => {
    expect(spec().driving).toMatchObject({
      gender: 'female',
      diameter: 62.01,
      limits: { lower: 62.01, upper: 62.04, zone: 'H7' },
      depth: 4.3,
    });
  });

  it('is made to the nominal where a drawing states the zone: 60 H7 gives 60 h6', () => {
    expect(spec().driven).toMatchObject({
      gender: 'male',
      diameter: 60,
      limits: { lower: 59.981, upper: 60, zone: 'h6' },
      depth: 2.7,
    });
  });

  it('makes room for a mate whose zone would be tight: 62 k6 is 62.002 to 62.021', () => {
    const recess = spec({ driving: { register: { diameter: 62, fit: 'k6' } } }).driving;
    expect(recess).toMatchObject({ diameter: 62.021, limits: { lower: 62.021, upper: 62.051 } });
  });

  it('rounds a mean of readings to the safe side of a micrometre', () => {
    // Mean 62.013333, caliper doubt 0.03: 62.043333.
    expect(spec({ driving: { register: { diameter: [62.0, 62.02, 62.02] } } }).driving?.diameter).toBe(62.044);
  });

  it('leaves room in depth for what is not known about the mate: 4 by a ruler, good to 0.5', () => {
    expect(spec({ driving: { register: { depth: { value: 4, instrument: 'ruler' } } } }).driving?.depth).toBe(4.6);
  });

  it('goes together with any measured mate, and always centres better than the mate was measured', () => {
    fc.assert(
      fc.property(
        fc.record({
          gender: fc.constantFrom('male', 'female'),
          value: fc.integer({ min: 30_000, max: 76_000 }).map((um) => um / 1000),
          doubt: fc.integer({ min: 1, max: 200 }).map((um) => um / 1000),
          depth: fc.integer({ min: 10, max: 80 }).map((tenths) => tenths / 10),
        }),
        ({ gender, value, doubt, depth }) => {
          const { findings } = judge(noWheel, { driving: { register: { gender, diameter: { value, doubt }, depth } } });
          const of = (code: string) => findings.find((f) => f.code === code && f.feature === 'driving-register');
          expect(of('register-goes-together')?.verdict).toBe('pass');
          expect(of('faces-seat-first')?.verdict).toBe('pass');
          // H7 or h6 of up to 80 mm is at most 30 um wide, and a micrometre of rounding.
          expect(of('register-centres')?.value).toBeLessThanOrEqual(2 * doubt + 0.031 + 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('flats', () => {
  const hole = (x: number, y: number, r: number): Drilling => ({
    id: 'h',
    feature: 'h',
    x,
    y,
    profile: [
      { z: 0, r },
      { z: 10, r },
    ],
  });

  it('takes the usual direction and a fiftieth of the diameter off each side where nothing is in the way', () => {
    expect(flatsFor([hole(40, 0, 5)], 120, 3)).toMatchObject({ across: 115, angle: 90 });
  });

  it('turns away from the holes: four on the axes are 45 degrees off', () => {
    const four = [hole(52, 0, 5), hole(0, 52, 5), hole(-52, 0, 5), hole(0, -52, 5)];
    // 52 cos 45 = 36.77; 36.77 + 5 + 3 = 44.77, so the usual 115 stands.
    expect(flatsFor(four, 120, 3)).toMatchObject({ across: 115, angle: 45 });
    expect(flatsAcross(four, 100, 3)).toEqual({ across: 100, angle: 45 });
  });

  it('asks for a wider part where holes are all round', () => {
    const ring = onCircle(36, 108).map(({ x, y }) => hole(x, y, 2.5));
    const { across, angle, outside } = flatsFor(ring, 118, 3);
    // The best direction lies 5 degrees from a hole: 54 cos 5 + 2.5 + 3, twice, up to half a millimetre.
    expect(angle % 10).toBe(5);
    expect(across).toBe(Math.ceil(2 * 2 * (54 * Math.cos(Math.PI / 36) + 5.5)) / 2);
    expect(outside).toBe(Math.ceil(across + 1));
  });
});
