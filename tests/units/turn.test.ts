/** An angle within one turn. Degrees. */
import { expect, it } from 'vitest';
import { withinTurn } from '../../src/units/turn.ts';

it.each([
  [0, 0],
  [360, 0],
  [-90, 270],
  [725, 5],
  // A hair below 0: 360 - 1e-15 is 360 to a computer, and a whole turn is none.
  [-1e-15, 0],
])('%s degrees are %s', (degrees, within) => {
  expect(withinTurn(degrees)).toBe(within);
});
