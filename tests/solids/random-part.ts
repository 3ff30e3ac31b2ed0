/**
 * Random turned parts on a coarse grid, so that heights and radii often coincide. Many are laminar, many are
 * not.
 */
import fc from 'fast-check';
import type { TurnedPart } from '../../src/model/part.ts';
import { drilling, profile, turned } from './fixtures.ts';

const half = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: 2 * from, max: 2 * to }).map((n) => n / 2);

/** Stepped and coned outsides from z = 0 upwards, radii 20 to 40. */
const outer = fc
  .array(fc.record({ rise: half(1, 6), from: half(20, 40), to: half(20, 40), cylinder: fc.boolean() }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((pieces) => {
    let z = 0;
    return profile(
      ...pieces.flatMap(({ rise, from, to, cylinder }): [number, number][] => {
        const piece: [number, number][] = [
          [z, from],
          [z + rise, cylinder ? from : to],
        ];
        z += rise;
        return piece;
      }),
    );
  });

const hole = fc.record({
  at: fc.oneof(fc.constant(0), half(8, 40)),
  angle: fc.integer({ min: 0, max: 23 }).map((n) => (n * Math.PI) / 12),
  z: half(-2, 10),
  pieces: fc.array(fc.record({ rise: half(1, 8), from: half(0, 8), to: half(1, 8) }), {
    minLength: 1,
    maxLength: 3,
  }),
  pointed: fc.boolean(),
});

export const anyPart: fc.Arbitrary<TurnedPart> = fc
  .record({
    outer,
    holes: fc.array(hole, { maxLength: 6 }),
    flats: fc.option(fc.record({ across: half(40, 80), angle: fc.constantFrom(0, 17, 90) }), { nil: null }),
  })
  .map(({ outer: body, holes, flats }) =>
    turned(
      'random',
      body,
      holes.map(({ at, angle, z, pieces, pointed }, i) => {
        let height = z;
        const corners = pieces.flatMap(({ rise, from, to }): [number, number][] => {
          const piece: [number, number][] = [
            [height, from],
            [height + rise, to],
          ];
          height += rise;
          return piece;
        });
        if (pointed) corners.push([height + 2, 0]);
        return drilling(`hole-${i + 1}`, at * Math.cos(angle), at * Math.sin(angle), ...corners);
      }),
      flats ? { flats: { feature: 'flats', ...flats } } : {},
    ),
  );
