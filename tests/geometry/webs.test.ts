import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allWebs } from '../../src/geometry/web-pairs.ts';
import { webAtDistance, webToFlats, webToOutside } from '../../src/geometry/webs.ts';
import type { Drilling, Profile, TurnedPart } from '../../src/model/part.ts';
import { drilling, profile, turned } from '../solids/fixtures.ts';
import { nearest, patchesOf } from './brute-force.ts';
import { anyHole } from './random-holes.ts';

const radians = Math.PI / 180;
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const hole = (r: number, from = 0, to = 20): Profile => profile([from, r], [to, r]);
const counterbored = profile([0, 4.5], [9, 4.5], [9, 8], [20, 8]);
/** Countersunk at the upper face: 90 degrees, 20 across, 10 through. */
const countersunk = profile([0, 5], [15, 5], [20, 10]);
const gapOf = (part: TurnedPart, a: string, b: string) => allWebs(part).find((web) => web.a === a && web.b === b)?.gap;

// Expected values in this file: plane geometry worked by hand, in closed form.
describe('two drillings', () => {
  it('parallel cylinders: centre distance less both radii', () => {
    expect(webAtDistance(hole(4), hole(5), 12)).toBeCloseTo(3, 12);
  });

  it('the worked example: circles of radius 42 and 50.75, holes 7.5 degrees apart, 8.1 and 10.1 wide', () => {
    // Source: geometry, cosine law; brute-force checked. Distance 10.632, web 1.532.
    const d = Math.sqrt(42 ** 2 + 50.75 ** 2 - 2 * 42 * 50.75 * Math.cos(7.5 * radians));
    expect(d).toBeCloseTo(10.632, 3);
    expect(webAtDistance(hole(4.05), hole(5.05), d)).toBeCloseTo(1.532, 3);
  });

  it('counterbore against a through hole: the pocket counts, wherever it lies', () => {
    expect(webAtDistance(counterbored, hole(5), 15)).toBeCloseTo(15 - 8 - 5, 12);
    // A hole that ends below the pocket's floor passes under it: 2 down, and 15 - 8 - 5 = 2 aside.
    expect(webAtDistance(counterbored, hole(5, 0, 7), 15)).toBeCloseTo(Math.hypot(2, 2), 12);
    // Under the floor itself only the depth counts, and the narrow hole: min(2, 11 - 4.5 - 5).
    expect(webAtDistance(counterbored, hole(5, 0, 7), 11)).toBeCloseTo(1.5, 12);
  });

  it('a countersink against a shallow hole: the slanted distance from its cone', () => {
    // The hole ends at z = 16 with its edge at u = d - 3. The 90 degree cone is the line u = z - 10, so at right angles to it
    // the edge is (d - 3 - 6) / sqrt 2 away.
    expect(webAtDistance(countersunk, hole(3, 0, 16), 14)).toBeCloseTo((14 - 3 - 6) / Math.SQRT2, 12);
    // Through to the face, the wide end of the cone is level with the hole's wall.
    expect(webAtDistance(countersunk, hole(3), 14)).toBeCloseTo(14 - 3 - 10, 12);
  });

  it('a drill point over a pocket on the far side: straight down from the tip', () => {
    const tapped = profile([6, 0], [8, 3.4], [20, 3.4]);
    const pocket = profile([0, 9], [4, 9], [4, 4], [4.5, 4], [4.5, 0]);
    expect(webAtDistance(tapped, profile([0, 9], [4, 9], [4, 0]), 5)).toBeCloseTo(2, 12);
    expect(webAtDistance(tapped, pocket, 3)).toBeCloseTo(1.5, 12);
    // The tip stands 1 beside the pocket's wall, its cone rises 2 in 3.4: nearest is the corner (9, 4) to the tip (10, 6).
    expect(webAtDistance(tapped, profile([0, 9], [4, 9], [4, 0]), 10)).toBeCloseTo(distanceToCone(), 12);
  });

  /** From the point (9, 4) to the line from (10, 6) outwards and up: the drill's cone on the side of the pocket. */
  function distanceToCone(): number {
    const [du, dz] = [-3.4, 2];
    const t = Math.max(0, Math.min(1, ((9 - 10) * du + (4 - 6) * dz) / (du * du + dz * dz)));
    return Math.hypot(10 + t * du - 9, 6 + t * dz - 4);
  }

  it('overlap is negative: its depth as seen along the axis', () => {
    expect(webAtDistance(hole(4), hole(5), 8)).toBeCloseTo(-1, 12);
    expect(webAtDistance(counterbored, hole(5), 12)).toBeCloseTo(-1, 12);
    expect(webAtDistance(hole(4), hole(4), 0)).toBeCloseTo(-8, 12);
    expect(webAtDistance(hole(4), hole(5), 9)).toBeCloseTo(0, 12);
  });

  it('never falls as the distance grows, and is the same whichever comes first', () => {
    fc.assert(
      fc.property(anyHole, anyHole, mm(0, 40), mm(0, 8), (a, b, d, more) => {
        expect(webAtDistance(a, b, d + more)).toBeGreaterThanOrEqual(webAtDistance(a, b, d) - 1e-9);
        expect(webAtDistance(a, b, d)).toBeCloseTo(webAtDistance(b, a, d), 9);
      }),
      { numRuns: 3000, seed: 3 },
    );
  });

  it('is the least distance between points strewn over both surfaces in space', () => {
    let apart = 0;
    fc.assert(
      fc.property(anyHole, anyHole, mm(6, 45), mm(0, 30), mm(0, 6.28), (a, low, d, lift, turn) => {
        const b = low.map(({ z, r }) => ({ z: z + lift, r }));
        const web = webAtDistance(a, b, d);
        if (web <= 0) return;
        apart++;
        const found = nearest(patchesOf(a, 3, -7), patchesOf(b, 3 + d * Math.cos(turn), -7 + d * Math.sin(turn)));
        expect(found).toBeGreaterThanOrEqual(web - 1e-9);
        expect(found - web).toBeLessThan(0.02);
      }),
      { numRuns: 100, seed: 11, endOnFailure: true },
    );
    expect(apart).toBeGreaterThan(45);
  });
});

describe('a drilling and the outside', () => {
  /** 120 across, 20 thick, edges broken by 1. */
  const disc = profile([0, 59], [1, 60], [19, 60], [20, 59]);
  const at = (u: number, ...corners: readonly (readonly [number, number])[]) => drilling('h', u, 0, ...corners);

  it('to the rim: where a hole opens, the edge chamfer takes its share', () => {
    expect(webToOutside(disc, at(50, [0, 4], [20, 4]))).toBeCloseTo(59 - 50 - 4, 12);
    // A blind one 12 deep from above still opens in the chamfered face.
    expect(webToOutside(disc, at(50, [8, 0], [10, 4], [20, 4]))).toBeCloseTo(5, 12);
    // A cavity that stays clear of both chamfers has the whole rim beside it.
    expect(webToOutside(disc, at(50, [7, 0], [9, 4], [11, 4], [13, 0]))).toBeCloseTo(6, 12);
  });

  it('out through the rim or its chamfer: negative', () => {
    expect(webToOutside(disc, at(57, [0, 4], [20, 4]))).toBeCloseTo(59 - 57 - 4, 12);
    expect(webToOutside(disc, at(55.5, [0, 4], [20, 4]))).toBeCloseTo(-0.5, 12);
  });

  it('the face under a blind hole: below its tip', () => {
    expect(webToOutside(disc, at(30, [3, 0], [5, 4], [20, 4]))).toBeCloseTo(3, 12);
    expect(webToOutside(disc, at(30, [2.5, 0], [2.5, 4], [20, 4]))).toBeCloseTo(2.5, 12);
  });

  it('a drill point that stands out of the far face: how far', () => {
    expect(webToOutside(disc, at(30, [-1.5, 0], [1, 4], [20, 4]))).toBeCloseTo(-1.5, 12);
    expect(webToOutside(disc, at(30, [0, 4], [18, 4], [21, 0]))).toBeCloseTo(-1, 12);
  });

  it('the floor of a pocket against the face that the hole opens on: the metal under the head', () => {
    expect(webToOutside(disc, at(30, [0, 4.5], [3, 4.5], [3, 8], [20, 8]))).toBeCloseTo(3, 12);
    expect(webToOutside(disc, at(30, [0, 10], [5, 5], [20, 5]))).toBeCloseTo(15, 8);
    // A cone that comes out of the far face leaves a knife edge.
    expect(webToOutside(disc, at(30, [0, 22], [20, 2]))).toBeCloseTo(0, 8);
  });

  it('a through hole has no web to the faces that it opens on', () => {
    expect(webToOutside(disc, at(20, [0, 4], [20, 4]))).toBeCloseTo(59 - 24, 12);
  });

  describe('with a spigot of 57 below, its foot undercut by 0.5', () => {
    const spigot = profile([-3, 27.5], [-2, 28.5], [-0.8, 28.5], [-0.8, 28], [0, 28], [0, 59], [1, 60], [20, 60]);

    it('a hole that opens beside the spigot has no web to its wall', () => {
      expect(webToOutside(spigot, at(34, [0, 4], [20, 4]))).toBeCloseTo(59 - 38, 12);
    });
    it('a hole whose mouth reaches under the spigot cuts into it', () => {
      expect(webToOutside(spigot, at(30, [0, 4], [20, 4]))).toBeCloseTo(-(28.5 - 26), 12);
    });
    it('a blind hole above the foot: slanted to the corner of the undercut, or down to the face', () => {
      // The tip stands over the face at u = 29.
      expect(webToOutside(spigot, at(29, [2, 0], [4, 4], [20, 4]))).toBeCloseTo(
        distance([29, 2], [25, 4], [28, 0]),
        12,
      );
      // Over the spigot at u = 26, the nearest air is the undercut's corner (28, 0), not the spigot's end.
      expect(webToOutside(spigot, at(26, [2, 0], [4, 4], [20, 4]))).toBeCloseTo(
        distance([26, 2], [30, 4], [28, 0]),
        12,
      );
      // Well inside the spigot it is the spigot's end.
      expect(webToOutside(spigot, at(10, [2, 0], [4, 4], [20, 4]))).toBeCloseTo(5, 12);
    });
  });

  /** Nearest of a cone's straight side from the tip to its corner, or the face right below the tip where there is one. */
  function distance(tip: [number, number], corner: [number, number], to: [number, number]): number {
    const [du, dz] = [corner[0] - tip[0], corner[1] - tip[1]];
    const t = Math.max(0, Math.min(1, ((to[0] - tip[0]) * du + (to[1] - tip[1]) * dz) / (du * du + dz * dz)));
    const slanted = Math.hypot(tip[0] + t * du - to[0], tip[1] + t * dz - to[1]);
    return tip[0] >= to[0] ? Math.min(slanted, tip[1] - to[1]) : slanted;
  }

  describe('with a wheel seat of 100, 5 high, on the upper face', () => {
    const seat = profile([0, 60], [14, 60], [15, 59], [15, 50], [19, 50], [20, 49]);

    it('a pocket inside the seat: to its wall and edge', () => {
      expect(webToOutside(seat, at(38, [0, 4], [9, 4], [9, 8], [20, 8]))).toBeCloseTo(49 - 46, 12);
    });
    it('a blind hole from below under the step', () => {
      expect(webToOutside(seat, at(52, [0, 4], [10, 4], [12, 0]))).toBeCloseTo(3, 12);
    });
    it('a blind hole from below inside the seat: slanted to the corner of its foot', () => {
      // Cavity edge (48, 13), foot corner (50, 15).
      expect(webToOutside(seat, at(44, [0, 4], [13, 4], [13, 0]))).toBeCloseTo(Math.hypot(2, 2), 12);
    });
    it('a screw hole on the step: free beside the shoulder, negative where it cuts it', () => {
      expect(webToOutside(seat, at(54, [5, 0], [7, 2.5], [15, 2.5]))).toBeCloseTo(59 - 56.5, 12);
      expect(webToOutside(seat, at(52, [5, 0], [7, 2.5], [15, 2.5]))).toBeCloseTo(-0.5, 12);
    });
  });
});

describe('flats', () => {
  const disc = profile([0, 60], [10, 60], [10, 50], [20, 50]);
  const flats = { across: 110, angle: 90 };
  const at = (x: number, y: number, ...corners: readonly (readonly [number, number])[]) =>
    drilling('h', x, y, ...corners);

  it('half the distance across less the hole', () => {
    expect(webToFlats(flats, at(0, 48, [0, 4], [20, 4]))).toBeCloseTo(3, 12);
    expect(webToFlats(flats, at(5, -48, [0, 4], [20, 4]))).toBeCloseTo(3, 12);
    expect(webToFlats(flats, at(0, 53, [0, 4], [20, 4]))).toBeCloseTo(-2, 12);
    expect(
      webToFlats(
        { across: 100, angle: 30 },
        at(40 * Math.cos(30 * radians), 40 * Math.sin(30 * radians), [0, 4], [9, 4]),
      ),
    ).toBeCloseTo(6, 12);
  });
  it('a pocket above the height that the flats reach: slanted down to their end', () => {
    // The flats end at z = 10 where the outside goes in to 50. Pocket of 8 from z = 13 up, hole of 4 below.
    expect(webToFlats(flats, at(0, 44, [0, 4], [13, 4], [13, 8], [20, 8]), disc)).toBeCloseTo(Math.hypot(3, 3), 12);
    expect(webToFlats(flats, at(0, 46, [0, 4], [20, 4]), disc)).toBeCloseTo(5, 12);
  });
  it('none where the outside is narrower than they are, nor beside a flat that ends before the hole', () => {
    expect(webToFlats({ across: 120, angle: 0 }, at(50, 0, [0, 4], [20, 4]), disc)).toBe(Infinity);
    // The flat is 2 sqrt(60^2 - 55^2) = 47.96 long; the hole stands 40 beside its middle.
    expect(webToFlats(flats, at(40, 30, [0, 4], [20, 4]), disc)).toBe(Infinity);
  });
});

describe('features on the axis', () => {
  const disc = profile([0, 60], [20, 60]);

  it('two recesses: the floor between them', () => {
    const part = turned('p', disc, [
      drilling('low', 0, 0, [0, 30], [4, 30], [4, 0]),
      drilling('high', 0, 0, [15, 0], [15, 25], [20, 25]),
    ]);
    expect(gapOf(part, 'low', 'high')).toBeCloseTo(11, 12);
    expect(gapOf(part, 'low', 'outside')).toBeCloseTo(16, 12);
  });
  it('two recesses that meet: how deep', () => {
    const part = turned('p', disc, [
      drilling('low', 0, 0, [0, 30], [12, 30], [12, 0]),
      drilling('high', 0, 0, [10, 0], [10, 25], [20, 25]),
    ]);
    expect(gapOf(part, 'low', 'high')).toBeCloseTo(-2, 12);
  });
  it('two recesses that one bore joins: the ring between their floors; a plain bore has none', () => {
    const joined = turned('p', disc, [drilling('bore', 0, 0, [0, 30], [4, 30], [4, 10], [15, 10], [15, 25], [20, 25])]);
    expect(gapOf(joined, 'bore', 'bore')).toBeCloseTo(11, 12);
    const plain = turned('p', disc, [drilling('bore', 0, 0, [0, 10.5], [0.5, 10], [19.5, 10], [20, 10.5])]);
    expect(gapOf(plain, 'bore', 'bore')).toBeUndefined();
    expect(gapOf(plain, 'bore', 'outside')).toBeCloseTo(49.5, 12);
  });
  it('a recess floor against the face that its bore opens on', () => {
    const part = turned('p', profile([0, 60], [6, 60]), [drilling('bore', 0, 0, [0, 30], [4, 30], [4, 10], [6, 10])]);
    expect(gapOf(part, 'bore', 'outside')).toBeCloseTo(2, 12);
  });
  it('a recess too deep: how far it comes out of the other face', () => {
    const part = turned('p', profile([0, 60], [6, 60]), [drilling('low', 0, 0, [0, 30], [8, 30], [8, 0])]);
    expect(gapOf(part, 'low', 'outside')).toBeCloseTo(-2, 12);
  });
  it('a blind hole over a recess, beside it, and into it', () => {
    const recess = drilling('recess', 0, 0, [0, 40], [4, 40], [4, 0]);
    const holes: [string, Drilling][] = [
      ['over', drilling('over', 38, 0, [7, 0], [9, 4], [20, 4])],
      ['beside', drilling('beside', 47, 0, [0, 4], [20, 4])],
      ['clips', drilling('clips', 43.5, 0, [0, 4], [20, 4])],
      ['tip', drilling('tip', 30, 0, [3, 0], [5, 4], [20, 4])],
    ];
    const part = turned('p', disc, [recess, ...holes.map(([, d]) => d)]);
    expect(gapOf(part, 'recess', 'over')).toBeCloseTo(3, 12);
    expect(gapOf(part, 'recess', 'beside')).toBeCloseTo(3, 12);
    expect(gapOf(part, 'recess', 'clips')).toBeCloseTo(-0.5, 12);
    expect(gapOf(part, 'recess', 'tip')).toBeCloseTo(-1, 12);
  });

  describe('a raised ring round a face (a recess outside the bolt circle)', () => {
    // Ring from 50 to 60, 3 high, below the face z = 0; bore of 10; face floor from 10 to 50.
    const outer = profile([-3, 59], [-2, 60], [20, 60]);
    const bore = drilling('bore', 0, 0, [-3, 50.5], [-2.5, 50], [0, 50], [0, 10], [20, 10]);
    const part = (...holes: Drilling[]) => turned('p', outer, [bore, ...holes]);

    it('a hole that opens on the floor inside the ring has no web to the floor nor to the ring', () => {
      const p = part(drilling('h', 45, 0, [0, 4], [20, 4]));
      expect(gapOf(p, 'bore', 'h')).toBeCloseTo(45 - 4 - 10, 12);
      expect(gapOf(p, 'h', 'outside')).toBeCloseTo(60 - 49, 12);
    });
    it('its pocket has one to the floor', () => {
      const p = part(drilling('h', 40, 0, [0, 4], [2.5, 4], [2.5, 8], [20, 8]));
      expect(gapOf(p, 'bore', 'h')).toBeCloseTo(2.5, 12);
    });
    it('a hole that reaches under the ring is wrong', () => {
      const p = part(drilling('h', 48, 0, [0, 4], [20, 4]));
      expect(gapOf(p, 'h', 'outside')).toBeCloseTo(-2, 12);
    });
    it('the ring itself: its inside to the rim', () => {
      expect(gapOf(part(), 'bore', 'outside')).toBeCloseTo(59 - 50.5, 12);
    });
  });

  it('a hole that opens on the floor of a recess counts only below that floor', () => {
    const bore = drilling('bore', 0, 0, [0, 10], [16, 10], [16, 40], [20, 40]);
    const part = turned('p', disc, [bore, drilling('h', 25, 0, [0, 4], [9, 4], [9, 8], [20, 8])]);
    expect(gapOf(part, 'bore', 'h')).toBeCloseTo(25 - 8 - 10, 12);
  });
  it('a hole wholly within a recess leaves no web to it', () => {
    const recess = drilling('recess', 0, 0, [0, 40], [4, 40], [4, 0]);
    expect(gapOf(turned('p', disc, [recess, drilling('h', 20, 0, [0, 4], [3, 4])]), 'recess', 'h')).toBeUndefined();
  });
});
