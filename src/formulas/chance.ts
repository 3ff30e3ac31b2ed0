/** Chance that comes out the same every time: a seeded stream of numbers, for sums that throw dice. */

/**
 * Numbers evenly spread from 0 up to 1, the same stream for the same seed. A counter mixed by multiplication and shifts
 * (the splitmix construction, 32 bits): good for tens of thousands of throws, no good for secrets.
 * @param seed any whole number
 */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}
