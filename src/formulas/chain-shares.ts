/**
 * What each link of a chain adds to its two sums, so that the parts add up to the whole. Any unit, the same for all links.
 *
 * Worst: a link that may lie towards any side adds all of its size; one whose angle is known adds its doubt, and of its arrow the part
 * that points the way of the known sum (less than nothing where it pulls back). Likely: squares add, so a link's part is its square over
 * the likely sum. Source: projection of arrows on their sum, and root of the sum of squares, taken apart; geometry.
 */
import { steadyFixed } from '../units/steady.ts';
import { arrow, sizeOf } from './arrows.ts';
import { type Link, stackOf, stray } from './chain.ts';

/** One link and its parts of the sums; the parts of all links add up to `worst` and to `likely` of the stack. */
export interface LinkShare {
  readonly link: Link;
  /** Its part of the worst case: its doubt or, where its side is not known, its whole size, and `along`. */
  readonly worst: number;
  /** What of its known arrow lies along the sum of all known arrows; less than nothing where it pulls back, 0 where its side is not known. */
  readonly along: number;
  readonly likely: number;
}

/** A link with its place in the chain, from 0. */
export interface RankedShare extends LinkShare {
  readonly place: number;
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
      along,
      likely: likely > 0 ? (loose * loose + along * size) / likely : 0,
    };
  });
}

/**
 * The links, those that add most to the worst case first; of equal ones that which comes first in the chain. Words and pictures both rank by
 * this. @param shares parts of every link, in the order of the chain
 */
export function widestFirst(shares: readonly LinkShare[]): RankedShare[] {
  return shares.map((share, place) => Object.assign({ place }, share)).sort((a, b) => b.worst - a.worst);
}

/** The widest link that something can still be done about; null where every link is as good as it is made. Words and pictures both start here. */
export function firstToDo(shares: readonly LinkShare[]): RankedShare | null {
  return widestFirst(shares).find(({ link, worst }) => link.cure !== '' && worst > 0) ?? null;
}

/**
 * Parts rounded to a number of decimals so that they still add up to their rounded sum: each is rounded down, and what is missing goes to those
 * that lost most, one last digit each (largest remainder). So a part may be off by up to one in its last digit.
 * @param parts any size, any unit
 */
export function addingUp(parts: readonly number[], decimals: number): number[] {
  const scale = 10 ** decimals;
  // A billionth keeps binary noise from turning 20 into 19.
  const down = parts.map((part) => Math.floor(part * scale + 1e-9));
  const rest = parts.map((part, i) => part * scale - (down[i] as number));
  const sum = Math.round(
    Number(
      steadyFixed(
        parts.reduce((total, part) => total + part, 0),
        decimals,
      ),
    ) * scale,
  );
  const missing = sum - down.reduce((total, part) => total + part, 0);
  const lostMost = rest.map((_, i) => i).sort((a, b) => (rest[b] as number) - (rest[a] as number));
  const raised = new Set(lostMost.slice(0, missing));
  return down.map((part, i) => (part + (raised.has(i) ? 1 : 0)) / scale);
}

/** A share with its amount as it is told. */
export interface ToldShare extends RankedShare {
  readonly amount: number;
}

/** Every link, the widest first, its part of the worst case rounded so that the parts add up to the rounded sum. */
export function toldShares(shares: readonly LinkShare[], decimals: number): ToldShare[] {
  const rounded = addingUp(
    shares.map(({ worst }) => worst),
    decimals,
  );
  return widestFirst(shares).map((share) => ({ ...share, amount: rounded[share.place] as number }));
}
