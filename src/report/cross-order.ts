/** The order in which the screws of a circle are tightened: cross-wise. Common practice. */

/**
 * Places of `count` screws, numbered round the circle from 1, in the order in which they are tightened. Even counts: each screw is followed by the
 * one across, the next pair stands as far from the last as can be. Odd counts: a star that steps by just under half a turn.
 * @param count 1 or more
 */
export function crossOrder(count: number): number[] {
  if (count % 2 === 1) {
    // Half of an odd count, rounded down, shares no divisor with it: the star meets every screw.
    const step = Math.max(1, (count - 1) / 2);
    return Array.from({ length: count }, (_, i) => ((i * step) % count) + 1);
  }
  const half = count / 2;
  const left = Array.from({ length: half }, (_, i) => i);
  const out: number[] = [];
  let last = 0;
  while (left.length > 0) {
    // Pairs stand half a turn apart from themselves: how far two are apart runs up to a quarter.
    const away = (pair: number) => Math.min(Math.abs(pair - last), half - Math.abs(pair - last));
    const next = out.length === 0 ? 0 : left.reduce((a, b) => (away(b) > away(a) ? b : a));
    left.splice(left.indexOf(next), 1);
    out.push(next + 1, next + 1 + half);
    last = next;
  }
  return out;
}
