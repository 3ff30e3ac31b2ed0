/**
 * What each link of a chain adds to its two sums, so that the parts add up to the whole. Any unit, the same for all links.
 *
 * Worst: a link that may lie towards any side adds all of its size; one whose angle is known adds its doubt, and of its arrow the part
 * that points the way of the known sum (less than nothing where it pulls back). Likely: squares add, so a link's part is its square over
 * the likely sum. Source: projection of arrows on their sum, and root of the sum of squares, taken apart; geometry.
 */
import { arrow, sizeOf } from './arrows.ts';
import { type Link, stackOf, stray } from './chain.ts';

/** One link and its parts of the sums; the parts of all links add up to `worst` and to `likely` of the stack. */
export interface LinkShare {
  readonly link: Link;
  readonly worst: number;
  readonly likely: number;
}

/** Parts of every link, in the order of the chain. */
export function sharesOf(links: readonly Link[]): LinkShare[] {
  const { likely, known } = stackOf(links);
  const size = sizeOf(known);
  return links.map((link) => {
    const { x, y } = link.angle === null ? { x: 0, y: 0 } : arrow(link.most, link.angle);
    const along = size > 0 ? (x * known.x + y * known.y) / size : 0;
    const loose = link.usual ?? stray(link);
    return {
      link,
      worst: stray(link) + along,
      likely: likely > 0 ? (loose * loose + along * size) / likely : 0,
    };
  });
}
