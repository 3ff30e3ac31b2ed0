/** Where and how deep a correction goes: parts drawn by hand, each hole and each place worked out here. mm, g, g.mm */
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/job/joint.ts';
import type { MassProperties } from '../../src/model/mass.ts';
import { adapterCorrection, freeDepth, rimHole, wheelCorrection, wheelHole } from '../../src/validate/balance-cure.ts';
import type { Patch } from './help.ts';

const density = 0.008;
/** A disc of 160, its rim from 10 to 50 with chamfers of 1, a web of 3 asked for, and nothing in it. */
const disc = (spec: Patch = {}, drillings: readonly unknown[] = [], [from, to] = [10, 50]): Joint =>
  ({
    adapterSpec: {
      outside: 160,
      bore: null,
      flats: null,
      registers: { driving: null, driven: null },
      material: { density },
      ...spec,
    },
    adapter: {
      outer: [
        { z: from, r: 79 },
        { z: from + 1, r: 80 },
        { z: to - 1, r: 80 },
        { z: to, r: 79 },
      ],
      drillings,
    },
    job: { adapter: { web: 3, chamfer: 1 } },
  }) as unknown as Joint;
/** A hole of 12 with its mouth of 8. */
const hole = (x: number, y: number) => ({
  x,
  y,
  profile: [
    { z: 0, r: 6 },
    { z: 9, r: 4 },
  ],
});

describe('how far a drill may go in from the rim', () => {
  it.each([
    // 80 less a web of 3 and what lies round the axis.
    ['nothing but the axis', {}, 77],
    ['a bore of 30', { bore: 30 }, 80 - 15 - 3],
    ['registers of 60 and 40', { registers: { driving: { diameter: 60 }, driven: { diameter: 40 } } }, 80 - 30 - 3],
    ['registers of 40 and 60', { registers: { driving: { diameter: 40 }, driven: { diameter: 60 } } }, 80 - 30 - 3],
    [
      'one register and a wider bore',
      { bore: 64, registers: { driving: null, driven: { diameter: 60 } } },
      80 - 32 - 3,
    ],
  ] as const)('%s', (_, spec, free) => expect(freeDepth(disc(spec), 0, 6, 3)).toBeCloseTo(free, 9));

  it.each([
    // Drill 3, hole 6, web 3: 12 from middle to middle.
    ['head on', hole(50, 0), 0, 80 - 62],
    ['9 aside: sqrt(144 - 81) sooner', hole(40, 9), 0, 80 - 40 - Math.sqrt(63)],
    ['9 to the other side', hole(40, -9), 0, 80 - 40 - Math.sqrt(63)],
    ['12 aside: the web is just there', hole(40, 12), 0, 77],
    ['behind the axis', hole(-40, 0), 0, 77],
    ['head on from above', hole(0, 50), 90, 80 - 62],
    ['seen from the side', hole(0, 50), 0, 77],
    ['at 45 degrees', hole(30, 30), 45, 80 - 30 * Math.SQRT2 - 12],
  ] as const)('%s', (_, one, at, free) => expect(freeDepth(disc({}, [one]), at, 6, 3)).toBeCloseTo(free, 9));
});

/** Moment of a hole with a point of 118 degrees, drilled inwards from a rim of 80. */
function taken(d: number, depth: number): number {
  const area = (Math.PI / 4) * d * d;
  const point = d / 2 / Math.tan((59 * Math.PI) / 180);
  return density * area * (depth * (80 - depth / 2) + (point / 3) * (80 - depth - point / 4));
}

describe('which drill', () => {
  it.each([5, 6, 8, 10, 12, 16])('%d mm goes three diameters deep and no deeper', (d) => {
    const found = rimHole(disc(), taken(d, 2.95 * d), 0);
    expect(found?.diameter).toBe(d);
    expect(found?.depth).toBeCloseTo(2.95 * d, 4);
    expect(found?.height).toBe(30);
    // Deeper than that, the next drill: a wider and shorter hole; after the last there is none.
    const next = rimHole(disc(), taken(d, 3.05 * d), 0);
    if (d === 16) expect(next).toBeNull();
    else expect(next?.diameter).toBeGreaterThan(d);
  });

  it('is no wider than half of the rim, chamfers counted in', () => {
    const [wide, small] = [taken(6, 17), taken(5, 10)];
    expect(rimHole(disc({}, [], [30, 42]), wide, 0)?.diameter).toBe(6);
    expect(rimHole(disc({}, [], [30, 41.8]), wide, 0)).toBeNull();
    expect(rimHole(disc({}, [], [30, 40]), small, 0)).toEqual({
      diameter: 5,
      depth: expect.closeTo(10, 4),
      height: 35,
    });
  });

  it('ends, point and all, before what lies in its way', () => {
    // 5 mm drill, 10 deep, point 2.5 / tan 59 = 1.502: it ends 68.498 off the axis; a hole at 56 with 2.5 + 6 + 3 needs 67.5 free.
    const at = (x: number) => rimHole(disc({}, [hole(x, 0)]), taken(5, 10), 0);
    const end = 80 - 10 - 2.5 / Math.tan((59 * Math.PI) / 180);
    expect(at(end - 11.5 - 0.01)).toMatchObject({ diameter: 5 });
    // A thicker drill ends sooner, but is wider.
    expect(at(end - 11.5 + 0.01)?.diameter ?? 6).not.toBe(5);
    expect(at(79)).toBeNull();
  });

  it('takes the point alone up to a tenth too much', () => {
    const point = taken(5, 0);
    expect(rimHole(disc(), point / 1.09, 0)).toMatchObject({ diameter: 5, depth: 0 });
    expect(rimHole(disc(), point / 1.11, 0)).toBeNull();
  });
});

describe('what is said of the adapter', () => {
  /** A pull of `moment` towards an angle. */
  const pulling = (joint: Joint, moment: number, at: number) =>
    adapterCorrection(joint, {
      mass: 1000,
      centre: [(moment / 1000) * Math.cos((at * Math.PI) / 180), (moment / 1000) * Math.sin((at * Math.PI) / 180), 20],
    } as unknown as MassProperties);

  it('the weight at the rim, where, and the hole', () => {
    const said = pulling(disc(), taken(5, 12), 90);
    expect(said).toMatch(
      /^Take [\d.]+ g off the rim at 90 degrees, the heavy side \(seen from the driven side, from the index mark\): drill 5 mm into the rim there, 30\.0 mm above the driving face and 12\.0 mm deep at full diameter/,
    );
    // 5 mm, 12 deep and its point: 0.008 x 19.635 x (12 x 74 + 0.5007 x 67.62) / 80 = 1.81 g.
    expect(Number(/Take ([\d.]+) g/.exec(said)?.[1])).toBeCloseTo(taken(5, 12) / 80, 1);
    expect(said).toMatch(/, or mill a flat [\d.]+ mm deep there \([\d.]+ mm wide\)$/);
  });

  it.each([
    // Flats 140 apart on a rim of 160 reach acos(140 / 160) = 28.96 degrees to each side.
    [90, 28, false],
    [90, 30, true],
    [270, 28, false],
    [270, -28, false],
    [270, 30, true],
    [90, 90, true],
  ] as const)('nothing is cut where a vise flat at %d is %d degrees off', (angle, off, isCut) => {
    const joint = disc({ flats: { across: 140, angle } });
    expect(/drill|mill/.test(pulling(joint, taken(5, 12), 90 + off))).toBe(isCut);
  });

  it('a flat alone where no drill goes in, and the other way round', () => {
    // A bore of 150: 80 - 75 - 3 = 2 of metal to drill into.
    const thin = pulling(disc({ bore: 150 }), taken(5, 12), 0);
    expect(thin).toMatch(/mill a flat/);
    expect(thin).not.toMatch(/drill/);
    // Holes at 60 with 6 + 3 end at 69, 11 from the rim; beside the drill at 13 degrees they are 60 sin 13 = 13.5 off.
    const at = (13 * Math.PI) / 180;
    const crowded = pulling(disc({}, [hole(68 * Math.cos(at), 68 * Math.sin(at))]), taken(5, 12), 0);
    expect(crowded).toMatch(/drill 5 mm/);
  });
});

describe('the hole that balances a wheel', () => {
  const wheel = (pull: number, patch: Patch = {}): Joint =>
    ({
      wheelMass: { mass: 500, centre: [-pull / 500, 0, 1] },
      wheelSpec: {
        bore: 100,
        root: 170,
        thickness: 3,
        material: { density },
        screwHoles: {
          diameter: 6,
          positions: [
            { x: 65, y: 0 },
            { x: 0, y: 66 },
          ],
        },
        ...patch,
      },
    }) as unknown as Joint;

  // From 66 + 3 = 69 to 85: its middle at 77. U = rho pi/4 d^2 t r; room 85 - 69 - 2 x 3 = 10.
  const pullOf = (d: number, r: number) => density * (Math.PI / 4) * d * d * 3 * r;

  it('stands between the outermost screw and the roots, on the heavy side', () => {
    const found = wheelHole(wheel(pullOf(8, 77)));
    expect(found?.diameter).toBeCloseTo(8, 9);
    expect(found?.radius).toBeCloseTo(77, 9);
    expect(found?.at).toBeCloseTo(180, 9);
    expect(found?.fits).toBe(true);
  });

  it.each([
    [9.99, true],
    [10.01, false],
  ])('%f mm in 10 of room: %s', (d, fits) => {
    const joint = wheel(pullOf(d, 77));
    expect(wheelHole(joint)?.fits).toBe(fits);
    const grams = (pullOf(d, 77) / 85).toFixed(1);
    expect(wheelCorrection(joint)).toBe(
      `Take ${grams} g off below the roots at 180 degrees, the heavy side (seen from the driven side, from the index mark)${fits ? ': a hole of 10.0 mm through the sheet, 77.0 mm from the axis, does it' : `, if it comes off 85.0 mm from the axis. Nearer to the axis it has to be more: grams times their distance from it make ${pullOf(d, 77).toFixed(0)} g.mm`}`,
    );
  });

  it('without screws, or where the bore reaches farther, the bore is its inner bound', () => {
    expect(wheelHole(wheel(1, { screwHoles: null }))?.radius).toBeCloseTo((50 + 85) / 2, 9);
    expect(wheelHole(wheel(1, { bore: 150 }))?.radius).toBeCloseTo((75 + 85) / 2, 9);
  });

  it('of a wheel with windows it lies below these', () => {
    expect(wheelCorrection(wheel(1, { rim: 5 }))).toContain('g off below the windows');
  });

  it('there is none without a wheel', () => {
    const none = { wheelMass: null, wheelSpec: null } as unknown as Joint;
    expect(wheelHole(none)).toBeNull();
    expect(wheelCorrection(none)).toBe('');
    expect(wheelHole({ ...wheel(1), wheelMass: null } as Joint)).toBeNull();
    expect(wheelCorrection({ ...wheel(1), wheelMass: null } as Joint)).toBe('');
  });
});
