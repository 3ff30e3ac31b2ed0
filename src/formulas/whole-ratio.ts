/**
 * The best whole ratios p/q to a number: what a box with two dials can reach.
 *
 * Source: continued fractions (the convergents and their in-between fractions are the best approximations of the first kind);
 * descent in the tree of Stern and Brocot. Exact for every positive finite number that a double holds.
 */

export interface WholeRatio {
  readonly p: number;
  readonly q: number;
  /** p/q over the wanted number, less one: plus is too much. */
  readonly error: number;
}

const ratio = (p: number, q: number, wanted: number): WholeRatio => ({ p, q, error: p / q / wanted - 1 });

/**
 * The p/q nearest to a number, with p and q from 1 to `largest`.
 * @param wanted above 0
 * @param largest whole number, 1 or more
 */
export function bestRatio(wanted: number, largest: number): WholeRatio {
  const all = [...nearerAndNearer(wanted, largest)];
  return all[all.length - 1] as WholeRatio;
}

/**
 * Ratios with p and q from 1 to `largest`, each nearer to a number than every one with smaller terms: the simplest first, the best
 * last. Two neighbours of the tree always stand on either side of the number; their mediant is the simplest between them.
 */
export function nearerAndNearer(wanted: number, largest: number): WholeRatio[] {
  // Outside of the dials' own range the end of it is all there is.
  if (wanted >= largest) return [ratio(largest, 1, wanted)];
  if (wanted <= 1 / largest) return [ratio(1, largest, wanted)];
  const found: WholeRatio[] = [];
  const offer = (p: number, q: number) => {
    if (p < 1 || q < 1) return;
    const last = found[found.length - 1];
    if (!last || Math.abs(p / q - wanted) < Math.abs(last.p / last.q - wanted)) found.push(ratio(p, q, wanted));
  };
  let [low, high] = [
    { p: 0, q: 1 },
    { p: 1, q: 0 },
  ];
  for (;;) {
    const p = low.p + high.p;
    const q = low.q + high.q;
    if (p > largest || q > largest) return found;
    offer(p, q);
    if (p / q === wanted) return found;
    if (p / q < wanted) low = { p, q };
    else high = { p, q };
  }
}
