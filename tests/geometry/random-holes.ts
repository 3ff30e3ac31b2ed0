/** Holes of every shape that a drill press makes, at random: through, counterbored, countersunk, blind, from either side. */
import fc from 'fast-check';
import type { Profile } from '../../src/model/part.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const upright: fc.Arbitrary<Profile> = fc
  .record({
    kind: fc.constantFrom('through', 'counterbored', 'countersunk', 'blind'),
    top: mm(12, 30),
    r: mm(1.5, 7),
    wider: mm(0.5, 6),
    depth: mm(1, 9),
    slope: mm(0.5, 2),
  })
  .map(({ kind, top, r, wider, depth, slope }) => {
    const wide = r + wider;
    if (kind === 'counterbored')
      return [
        { z: 0, r },
        { z: top - depth, r },
        { z: top - depth, r: wide },
        { z: top, r: wide },
      ];
    if (kind === 'countersunk') {
      const cone = Math.min(wider * slope, top / 2);
      return [
        { z: 0, r },
        { z: top - cone, r },
        { z: top, r: wide },
      ];
    }
    if (kind === 'blind') {
      const tip = Math.max(0.5, top - depth - slope * r);
      return [
        { z: tip, r: 0 },
        { z: tip + slope * r * 0.5, r },
        { z: Math.max(top, tip + slope * r), r },
      ];
    }
    return [
      { z: 0, r },
      { z: top, r },
    ];
  });

/** Any of them, as it is or turned over. */
export const anyHole: fc.Arbitrary<Profile> = fc
  .tuple(upright, fc.boolean(), mm(10, 30))
  .map(([profile, over, height]) =>
    over ? [...profile].reverse().map(({ z, r }) => ({ z: height - z, r })) : profile,
  );
