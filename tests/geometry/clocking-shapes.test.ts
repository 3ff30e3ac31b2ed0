/** The clocking optimum where the two patterns' holes have different profiles, and where depth, not distance, limits the web. */
import { describe, expect, it } from 'vitest';
import { bestClocking, webAtClocking } from '../../src/geometry/clocking.ts';
import type { Drilling, Profile } from '../../src/model/part.ts';
import { profile } from '../solids/fixtures.ts';

const radians = Math.PI / 180;
const pattern = (shape: Profile, positions: readonly (readonly [number, number])[]): Drilling[] =>
  positions.map(([x, y], i) => ({ id: `h-${i + 1}`, feature: 'h', x, y, profile: shape }));
const ring = (angles: readonly number[], radius: number) =>
  angles.map((angle) => [radius * Math.cos(angle * radians), radius * Math.sin(angle * radians)] as const);

const through = profile([0, 4.5], [20, 4.5]);
const counterbored = profile([0, 4.5], [9, 4.5], [9, 8], [20, 8]);
const countersunk = profile([0, 5], [15, 5], [20, 10]);
const blind = profile([4, 0], [6, 3.4], [20, 3.4]);
const fromBelow = profile([0, 6], [2, 6]);

/**
 * Least distance of two solids of revolution whose axes stand `d` apart, over pairs of heights: each height is a disc, and two discs
 * are as far apart as their rims and their heights. Negative in plan where they overlap. Sampled every 0.25 and at corners.
 */
function sampled(a: Profile, b: Profile): (d: number) => number {
  const discs = (p: Profile) =>
    p.slice(1).flatMap((q, i) => {
      const o = p[i] as Profile[number];
      const steps = Math.max(1, Math.ceil((q.z - o.z) / 0.25));
      return Array.from({ length: steps + 1 }, (_, k) => ({
        z: o.z + ((q.z - o.z) * k) / steps,
        r: o.r + ((q.r - o.r) * k) / steps,
      }));
    });
  const [as, bs] = [discs(a), discs(b)];
  // Only the widest pair at each difference of heights matters.
  const widest = new Map<number, number>();
  for (const p of as) {
    for (const q of bs) {
      const dz = Math.round(Math.abs(p.z - q.z) * 1e6) / 1e6;
      widest.set(dz, Math.max(widest.get(dz) ?? 0, p.r + q.r));
    }
  }
  const pairs = [...widest].sort(([x], [y]) => x - y);
  return (d) => {
    let least = Infinity;
    for (const [dz, r] of pairs) {
      if (dz >= least) break;
      const aside = d - r;
      least = Math.min(least, dz === 0 ? aside : Math.hypot(Math.max(0, aside), dz));
    }
    return least;
  };
}

/** Best web over a full turn in steps of `step` degrees. */
function scan(fixed: readonly Drilling[], moving: readonly Drilling[], step: number): { web: number; angle: number } {
  const web = sampled(fixed[0]?.profile as Profile, moving[0]?.profile as Profile);
  let best = { web: Number.NEGATIVE_INFINITY, angle: 0 };
  for (let i = 0; i * step < 360; i++) {
    const [c, s] = [Math.cos(i * step * radians), Math.sin(i * step * radians)];
    let nearest = Infinity;
    for (const m of moving) {
      for (const f of fixed) nearest = Math.min(nearest, Math.hypot(m.x * c - m.y * s - f.x, m.x * s + m.y * c - f.y));
    }
    const here = web(nearest);
    if (here > best.web) best = { web: here, angle: i * step };
  }
  return best;
}

const square = [
  [29, 24],
  [-29, 24],
  [-29, -24],
  [29, -24],
] as const;
const cases: [string, Drilling[], Drilling[]][] = [
  [
    'six counterbores against four through',
    pattern(counterbored, ring([0, 60, 120, 180, 240, 300], 42)),
    pattern(through, ring([0, 90, 180, 270], 54)),
  ],
  [
    'a rectangle of four against six threads',
    pattern(countersunk, square),
    pattern(blind, ring([10, 70, 130, 190, 250, 310], 50)),
  ],
  [
    'two rectangles',
    pattern(counterbored, square),
    pattern(through, [
      [40, 26],
      [-40, 26],
      [-40, -26],
      [40, -26],
    ]),
  ],
  [
    'three and three, against eight',
    pattern(through, ring([0, 40, 120, 160, 240, 280], 45)),
    pattern(countersunk, ring([0, 45, 90, 135, 180, 225, 270, 315], 58)),
  ],
  [
    'unequal angles',
    pattern(counterbored, ring([3, 58, 131, 190, 262], 40)),
    pattern(blind, ring([0, 77, 150, 246, 301], 52)),
  ],
];

describe('the best clocking of holes with profiles', () => {
  it.each(cases)('%s: never beaten by a scan, and found by it', (_, fixed, moving) => {
    const found = bestClocking(fixed, moving);
    const step = 0.01;
    const scanned = scan(fixed, moving, step);
    // Heights are sampled in the scan, so that a slanted distance comes out up to this much too large.
    const sampling = 0.03;
    expect(found.web as number).toBeGreaterThanOrEqual(scanned.web - sampling);
    expect(found.web as number).toBeLessThanOrEqual(scanned.web + 58 * step * radians);
    expect(webAtClocking(fixed, moving, found.angle)).toBeCloseTo(found.web as number, 7);
    // The same angle, or one that is as good.
    const there = webAtClocking(fixed, moving, scanned.angle) as number;
    expect(Math.abs(scanned.angle - found.angle) <= 2 * step || there <= (found.web as number) + 1e-9).toBe(true);
  });

  it('where depth limits the web, takes the first of a whole range of equally good angles', () => {
    // The pocket below ends at z = 2, the thread's cone begins at (4, 0): 2 apart at most wherever the tip stands over the pocket.
    // Two patterns of one hole, on circles of 40: from some angle on the distance in plan is all that counts, and 180 is best.
    const alone = bestClocking(pattern(blind, [[40, 0]]), pattern(fromBelow, [[40, 0]]));
    expect(alone.angle).toBeCloseTo(180, 6);
    // A shared hole on the axis pins the web at 2: the smallest angle is the first at which the other hole is no nearer than that.
    const fixed = [...pattern(blind, [[40, 0]]), ...pattern(blind, [[0, 0]])];
    const moving = [...pattern(fromBelow, [[40, 0]]), ...pattern(fromBelow, [[0, 0]])];
    expect(webAtClocking(fixed, moving, 90)).toBeCloseTo(2, 12);
    expect(bestClocking(fixed, moving).angle).toBe(0);
    // With a hole that stands in the way at 0, the first good angle is where cylinders of 6 and 4.5 are 2 apart: 12.5 along the chord.
    const blocked = bestClocking([...fixed, ...pattern(through, [[40, 0]])], moving);
    expect(blocked.web).toBeCloseTo(2, 8);
    expect(blocked.angle).toBeCloseTo((2 * Math.asin(12.5 / 80)) / radians, 5);
  });

  it('an empty pattern leaves nothing to find', () => {
    expect(bestClocking(pattern(through, [[40, 0]]), [])).toEqual({ angle: 0, web: null });
    expect(webAtClocking([], [], 10)).toBeNull();
  });
});
