/** Fewer screws as the way out of a thin web, on rings of plain holes drawn by hand. Webs by the law of cosines. mm, degrees */
import { describe, expect, it } from 'vitest';
import { fewerScrews } from '../../src/validate/fewer-screws.ts';
import { drawn } from './drawn-screws.ts';
import type { Patch } from './help.ts';

interface Ring {
  readonly count: number;
  /** Holes of the flange between those with a screw. */
  readonly empty?: number;
  readonly first?: number;
  readonly holes?: Patch;
}
const at = (radius: number, degrees: number) => ({
  x: radius * Math.cos((degrees * Math.PI) / 180),
  y: radius * Math.sin((degrees * Math.PI) / 180),
});
const ringOf = (radius: number, { count, first = 0 }: Ring) =>
  Array.from({ length: count }, (_, i) => at(radius, first + (360 * i) / count));

/** Holes of 15 on a radius of 42 for the driving side, of 10 on 52 for the driven one. */
function cure(
  between: 'driving' | 'driven' | 'both',
  limit: number,
  driving: Ring,
  driven: Ring,
  of: Patch = {},
  screws: Patch = {},
) {
  const hole = (side: string, r: number) => (place: { x: number; y: number }, i: number) => ({
    id: `${side}-${i + 1}`,
    feature: `${side}-screws`,
    ...place,
    profile: [
      { z: 0, r },
      { z: 20, r },
    ],
  });
  const there = (ring: Ring, radius: number) => ({
    positions: ringOf(radius, ring),
    unused: Array.from({ length: ring.empty ?? 0 }, () => at(radius, 1)),
  });
  const { joint } = drawn(screws, {
    clocking: { mode: 'best' },
    job: { driving: { holes: driving.holes ?? {} }, driven: { holes: driven.holes ?? {} } },
    driving: { holes: there(driving, 42) },
    driven: { holes: there(driven, 52) },
    adapter: {
      drillings: [
        // A dowel hole is no screw's.
        { ...hole('driven', 5)(at(52, 1), 98), feature: 'driven-dowels' },
        ...ringOf(42, driving).map(hole('driving', 7.5)),
        ...ringOf(52, driven).map(hole('driven', 5)),
      ],
    },
    ...of,
  });
  return fewerScrews(joint, between, limit);
}
/** Web of two holes so many degrees apart, one of each ring. */
const apart = (degrees: number) =>
  Math.sqrt(42 ** 2 + 52 ** 2 - 2 * 42 * 52 * Math.cos((degrees * Math.PI) / 180)) - 12.5;
const told = (use: number, of: number, side: string, web: number) =>
  `, or put screws in only ${use} of the ${of} ${side} holes (${side}.holes.use: ${use}; ${web.toFixed(2)} mm), if they carry the torque`;

describe('two rings at their best angle: half a turn over their least common multiple', () => {
  it('as many as leave enough, to the limit itself', () => {
    // Four and twelve stand 15 apart, four and six as well; four and four 45; four and three 15 again.
    const rings = [{ count: 4 }, { count: 12 }] as const;
    expect(cure('both', apart(15), ...rings)).toBe(told(6, 12, 'driven', apart(15)));
    expect(cure('both', apart(15) + 0.01, ...rings)).toBe(told(4, 12, 'driven', apart(45)));
    expect(cure('both', apart(45), ...rings)).toBe(told(4, 12, 'driven', apart(45)));
    expect(cure('both', apart(45) + 0.01, ...rings)).toBe('');
  });

  it('on either side, and no fewer than three (common practice)', () => {
    // Six and three: 30; three and three: 60. Three and four have nothing to give.
    expect(cure('both', apart(31), { count: 6 }, { count: 3 })).toBe(told(3, 6, 'driving', apart(60)));
    expect(cure('both', apart(31), { count: 3 }, { count: 6 })).toBe(told(3, 6, 'driven', apart(60)));
    // Beside a single hole six stand 30 off and three 60.
    expect(cure('both', apart(31), { count: 6 }, { count: 1 })).toBe(told(3, 6, 'driving', apart(60)));
    expect(cure('both', apart(31), { count: 1 }, { count: 6 })).toBe(told(3, 6, 'driven', apart(60)));
    expect(cure('both', apart(16), { count: 3 }, { count: 4 })).toBe('');
    expect(cure('both', apart(50), { count: 4 }, { count: 4 })).toBe('');
  });

  it('needs both rings evenly spaced', () => {
    const even = [{ count: 6 }, { count: 8 }] as const;
    // Six and four at 15.
    expect(cure('both', apart(15), ...even)).toBe(told(4, 8, 'driven', apart(15)));
    for (const holes of [{ at: [[1, 2]] }, { angles: [0, 40] }]) {
      expect(cure('both', apart(15), { count: 6, holes }, { count: 8 })).toBe('');
      expect(cure('both', apart(15), { count: 6 }, { count: 8, holes })).toBe('');
    }
    expect(
      cure('both', apart(15), ...even, { job: { driving: { holes: undefined }, driven: { holes: undefined } } }),
    ).toBe(told(4, 8, 'driven', apart(15)));
  });

  it('is no way out for one set of bolts through both flanges', () => {
    const bolts = (fastening: string, seat: string) =>
      cure('both', apart(15), { count: 6 }, { count: 8 }, {}, { fastening, seat });
    expect(bolts('through', 'outside')).toBe('');
    // A wheel's own screws beside them change nothing.
    const groups = [
      { fastening: 'into_adapter', seat: 'sunk' },
      { fastening: 'through', seat: 'outside' },
    ];
    expect(cure('both', apart(15), { count: 6 }, { count: 8 }, { screws: groups })).toBe('');
    for (const [fastening, seat] of [
      ['through', 'sunk'],
      ['into_flange', 'outside'],
    ] as const)
      expect(bolts(fastening, seat)).toBe(told(4, 8, 'driven', apart(15)));
  });
});

it('at a given angle: as the rings stand there', () => {
  const given = { clocking: { mode: 'given' } };
  const eight = (first: number, limit: number) => cure('both', limit, { count: 4 }, { count: 8, first }, given);
  // Every second of eight stands 10 or 30 beside the four, and no farther.
  expect(eight(10, apart(10) + 0.01)).toBe('');
  expect(eight(30, apart(30))).toBe(told(4, 8, 'driven', apart(30)));
  // Left on the driving side as well: every second of six, 20 beside a driven ring of three.
  expect(cure('both', apart(20), { count: 6 }, { count: 3, first: 20 }, given)).toBe(told(3, 6, 'driving', apart(20)));
});

describe('neighbours of one ring', () => {
  const chord = (radius: number, count: number, hole: number) => 2 * radius * Math.sin(Math.PI / count) - 2 * hole;

  it('stand a chord apart, on the side that is asked about', () => {
    expect(cure('driving', 10, { count: 16 }, { count: 12 })).toBe(told(8, 16, 'driving', chord(42, 8, 7.5)));
    expect(cure('driven', 10, { count: 16 }, { count: 12 })).toBe(told(6, 12, 'driven', chord(52, 6, 5)));
    // Wherever the first of them stands.
    expect(cure('driving', 10, { count: 16, first: 20 }, { count: 12 })).toBe(
      told(8, 16, 'driving', chord(42, 8, 7.5)),
    );
    expect(cure('driving', 20, { count: 16 }, { count: 12 })).toBe(told(4, 16, 'driving', chord(42, 4, 7.5)));
  });

  it('only numbers below the present one that fall on holes with a screw', () => {
    // Six of twelve have one: of 4 and 3 only three are among them.
    const six = { count: 6, empty: 6 };
    expect(cure('driven', 0.1, { count: 3 }, six)).toBe(told(3, 12, 'driven', chord(52, 3, 5)));
    // Enough as it stands: a smaller number is told of, never the one there is.
    expect(cure('driven', 0.1, { count: 3 }, { count: 12 })).toBe(told(6, 12, 'driven', chord(52, 6, 5)));
    expect(cure('driven', 0.1, { count: 3 }, { count: 3 })).toBe('');
    expect(cure('driven', 0.1, { count: 3 }, { count: 12, holes: { angles: [0] } })).toBe('');
  });
});
