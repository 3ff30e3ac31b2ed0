/** Brackets for tests: one of each form, and random ones. */
import fc from 'fast-check';
import { type BracketSpec, bracketFaults } from '../../src/parts/bracket.ts';

export const steel = { id: 'S235JR', name: 'steel', density: 0.00785 };

/** An angle of 3 mm sheet: 38.3 mm of foot, 40.1 mm of arm. */
export const angleSpec: BracketSpec = {
  id: 'bracket',
  name: 'bracket',
  material: steel,
  thickness: 3,
  bends: [{ angle: 90, direction: 'up', radius: 4, k: 0.43 }],
  straights: [38.3, 40.1],
  foot: { width: 78.6, edge: 11.8, spacing: 60, hole: 6.6, travel: 5 },
  arm: { width: 62.6, edge: 15.1 },
  sensor: { bore: 18.2, ear: { distance: 22, hole: 6.6, towards: 'across' } },
  relief: { width: 3, depth: 7 },
  corner: 3,
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Brackets with no bend, one or two, of any angle from 20 to 120 degrees, that can be drawn. */
export const anyBracket: fc.Arbitrary<BracketSpec> = fc
  .record({
    thickness: between(1, 6),
    bends: fc.array(
      fc.record({
        angle: between(20, 120),
        direction: fc.constantFrom('up' as const, 'down' as const),
        radius: between(0.5, 12),
        k: between(0.3, 0.5),
      }),
      { maxLength: 2 },
    ),
    more: fc.array(between(3, 60), { minLength: 3, maxLength: 3 }),
    travel: fc.oneof(fc.constant(0), between(0.5, 12)),
    hole: between(4, 11),
    bore: between(6, 30),
    ear: fc.option(
      fc.record({
        gap: between(3, 15),
        hole: between(3, 9),
        towards: fc.constantFrom('end' as const, 'across' as const),
      }),
      { nil: null },
    ),
    wider: fc.oneof(fc.constant(0), between(0, 30)),
    spacing: between(20, 60),
    corner: between(0, 8),
  })
  .map(({ thickness, bends, more, travel, hole, bore, ear, wider, spacing, corner }): BracketSpec => {
    const edge = 2 * thickness;
    const distance = ear ? bore / 2 + ear.gap + ear.hole / 2 : 0;
    const reach = ear ? distance + ear.hole / 2 + edge : 0;
    const beside = bore / 2 + edge;
    const arm = Math.max(2 * beside, ear?.towards === 'across' ? 2 * reach : 0, ear ? ear.hole + 2 * edge : 0);
    const foot = Math.max(spacing + hole + 2 * edge, arm) + wider;
    const relief = { width: thickness, depth: thickness + (bends[0]?.radius ?? 0) };
    const narrow = bends.length > 0 && arm / 2 + relief.width + thickness / 2 < foot / 2;
    const [a = 0, b = 0, c = 0] = more;
    const first = 2 * edge + hole + travel + relief.depth + thickness + a;
    const last = beside + Math.max(beside, ear?.towards === 'end' ? reach : 0) + c;
    return {
      id: 'bracket',
      name: 'bracket',
      material: steel,
      thickness,
      bends,
      straights: bends.length === 0 ? [first + last] : bends.length === 1 ? [first, last] : [first, b, last],
      foot: { width: foot, edge: edge + (hole + travel) / 2, spacing, hole, travel },
      arm: {
        width: narrow ? arm : foot,
        edge: Math.max(beside, ear?.towards === 'end' ? reach : 0),
      },
      sensor: { bore, ear: ear ? { distance, hole: ear.hole, towards: ear.towards } : null },
      relief: narrow ? relief : null,
      corner,
    };
  })
  .filter((spec) => bracketFaults(spec).length === 0);
