/**
 * Where holes really land. Everything typed about a flange is seen looking at its own face, the face that lies on the adapter.
 *
 *        driving flange        adapter         driven flange
 *        face looks  --->   |           |   <---  face looks
 *        to the driven      z = 0       z = T     to the driving
 *        side (+z)                                side (-z)
 *
 * Adapter coordinates are seen from the driven side, looking along -z. Somebody who looks at the driving face looks along -z too: x stays
 * x. Somebody who looks at the driven face looks along +z: what is on that person's right is on the left as seen from the driven side, so
 * x becomes -x, and counter-clockwise becomes clockwise. Up stays up.
 *
 *   typed, seen from its own face          the same holes seen from the driven side
 *
 *            B (0, 35)                               B (0, 35)
 *            |                                       |
 *            +------ A (40, 0)        A (-40, 0) ----+
 *           /                                         \
 *          C (-30, -10)                                C (30, -10)
 */
import { describe, expect, it } from 'vitest';
import { findingOf, judge, type Patch } from '../validate/help.ts';

const noWheel: Patch = { wheel: undefined, sensor: undefined };
const typed = [
  [40, 0],
  [0, 35],
  [-30, -10],
];
const asymmetric = (clocking: number): Patch => ({
  ...noWheel,
  driven: {
    outside: 110,
    register: { diameter: 40 },
    holes: { count: undefined, circle: undefined, at: typed, diameter: 6.6 },
  },
  driving: { outside: 140, holes: { circle: 116 }, register: 'none' },
  adapter: { clocking },
});

/** Centres of the driven holes in the finished adapter, in typed order. */
const landed = (clocking: number) =>
  judge(asymmetric(clocking))
    .joint.adapter.drillings.filter(({ id }) => id.startsWith('driven-screws'))
    .map(({ x, y }) => [x, y]);

function expectPoints(
  found: readonly (readonly (number | undefined)[])[],
  expected: readonly (readonly [number, number])[],
): void {
  expect(found).toHaveLength(expected.length);
  expected.forEach(([x, y], i) => {
    expect(found[i]?.[0]).toBeCloseTo(x, 9);
    expect(found[i]?.[1]).toBeCloseTo(y, 9);
  });
}

describe('where the holes of an uneven driven pattern land', () => {
  it('mirrors them, x to -x, as the sketch shows', () =>
    expectPoints(landed(0), [
      [-40, 0],
      [0, 35],
      [30, -10],
    ]));

  it('turns them counter-clockwise seen from the driven side by the clocking: A goes from the left to the bottom', () => {
    expectPoints(landed(90), [
      [0, -40],
      [-35, 0],
      [10, 30],
    ]);
  });

  it('meets a copy of the flange that is laid on the driven face', () => {
    // A flange lying face down on the driven face, turned back by 30 degrees, seen from above (from the driven side): its own right is our left.
    const turn = (30 * Math.PI) / 180;
    const laid = typed.map(([x = 0, y = 0]): [number, number] => [-x, y]);
    const expected = laid.map(([x, y]): [number, number] => [
      x * Math.cos(turn) - y * Math.sin(turn),
      x * Math.sin(turn) + y * Math.cos(turn),
    ]);
    expectPoints(landed(30), expected);
  });

  it('leaves the driving pattern as it is typed', () => {
    const at = [
      [58, 0],
      [0, 58],
      [-41, -41],
    ];
    const { joint } = judge(asymmetric(0), { driving: { holes: { count: undefined, circle: undefined, at } } });
    expectPoints(
      joint.adapter.drillings.filter(({ id }) => id.startsWith('driving-screws')).map(({ x, y }) => [x, y]),
      [
        [58, 0],
        [0, 58],
        [-41, -41],
      ],
    );
  });

  it('runs the numbers of a driven circle clockwise seen from the driven side', () => {
    // Typed counter-clockwise from 20 degrees: mirrored, hole 1 is at 160 and hole 2 at 70.
    const { joint } = judge(noWheel, { driven: { holes: { first: 20 } }, adapter: { clocking: 0 } });
    const angles = joint.adapter.drillings
      .filter(({ id }) => id.startsWith('driven-screws'))
      .map(({ x, y }) => Math.round(((Math.atan2(y, x) * 180) / Math.PI + 360) % 360));
    expect(angles).toEqual([160, 70, 340, 250]);
  });

  it('puts the screws where the holes are', () => {
    const { joint } = judge(asymmetric(75));
    const screws = joint.screws.find(({ side }) => side === 'driven');
    const holes = joint.adapter.drillings.filter(({ id }) => id.startsWith('driven-screws'));
    expect(screws?.positions).toEqual(holes.map(({ x, y }) => ({ x, y })));
  });
});

describe('auto clocking', () => {
  it('halves the gap between six and four holes: 15 degrees (180 / lcm)', () => {
    const { clocking } = judge(noWheel).joint;
    expect(clocking.mode).toBe('auto');
    expect(clocking.angle % 30).toBeCloseTo(15, 9);
  });

  it('is never worse than any whole degree', () => {
    for (const patch of [{}, { driven: { holes: { count: 5, circle: 104 } } }, asymmetric(0)]) {
      const auto = findingOf(judge(noWheel, patch, { adapter: { clocking: 'auto' } }), 'clocking').value ?? Number.NaN;
      for (let angle = 0; angle < 360; angle += 15) {
        const given =
          findingOf(judge(noWheel, patch, { adapter: { clocking: angle } }), 'clocking').value ?? Number.NaN;
        expect(given).toBeLessThanOrEqual(auto + 1e-6);
      }
    }
  });
});
