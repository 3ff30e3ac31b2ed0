/**
 * Lengths of arrows, the same on every machine to the last bit: the language leaves that bit of its own `hypot` to each engine. Here the
 * greatest part is taken out first, so that no square overflows, and only quotients, sums and square roots are used, which IEEE 754
 * settles. It also takes a fraction of the time, and lengths are what the geometry works out most.
 */

/** Length of the arrow (x, y). */
export function hypot(x: number, y: number): number {
  const a = Math.abs(x);
  const b = Math.abs(y);
  const most = Math.max(a, b);
  // Corners of the definition, none and endless, have no last bit to be settled.
  if (!(most > 0 && most < Infinity)) return Math.hypot(x, y);
  const rest = Math.min(a, b) / most;
  return Math.sqrt(1 + rest * rest) * most;
}

/** Length of the arrow (x, y, z). What rounding takes from one square is given to the next (W. Kahan's sum, from memory). */
export function hypot3(x: number, y: number, z: number): number {
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (!(most > 0 && most < Infinity)) return Math.hypot(x, y, z);
  const a = x / most;
  const b = y / most;
  const c = z / most;
  const two = a * a + b * b;
  const lost = two - a * a - b * b;
  return Math.sqrt(two + (c * c - lost)) * most;
}
