/** The three chains of a joint, each link with its part of the sum, in the measure that a dial shows at the end of the chain. mm. */
import { type Link, stackOf } from '../formulas/chain.ts';
import {
  firstToDo,
  type LinkShare,
  type RankedShare,
  sharesOf,
  type ToldShare,
  toldShares,
} from '../formulas/chain-shares.ts';
import type { Joint } from '../job/joint.ts';
import { linksTo } from './links.ts';
import { tiltLinks } from './tilt.ts';

/** The driven shaft's axis off the driving one; the driven flange's face by a dial at its rim; the teeth by a dial at their tips. */
export type ChainId = 'shaft' | 'lean' | 'teeth';

export interface ChainSums {
  readonly id: ChainId;
  /** In the order in which the parts stand in the joint. */
  readonly shares: readonly LinkShare[];
  readonly worst: number;
  readonly likely: number;
}

export interface ChainStudy extends ChainSums {
  /** The shares, the widest first, with their amounts as they are told: in mm, adding up to the sum. */
  readonly told: readonly ToldShare[];
  /** What to start with; null where nothing is left to do. */
  readonly first: RankedShare | null;
}

/** Decimals of a link's part in mm, in words and pictures. */
const decimals = 3;

/** Assigned, not spread: a search does this thousands of times, and what stands behind a spread takes many times as long. */
function scaled(links: readonly Link[], by: number): Link[] {
  return links.map((link) => {
    const sizes = { least: link.least * by, most: link.most * by, doubt: link.doubt * by };
    return Object.assign({}, link, sizes, link.usual === undefined ? null : { usual: link.usual * by });
  });
}

function sums(id: ChainId, links: readonly Link[], by: number): ChainSums[] {
  if (links.length === 0) return [];
  const own = scaled(links, by);
  const { worst, likely } = stackOf(own);
  return [{ id, shares: sharesOf(own), worst, likely }];
}

/** A joint never changes, and a check asks once for each of its chains. */
const known = new WeakMap<Joint, readonly ChainSums[]>();

/** The chains that this joint has. A dial at the tips shows twice the shift; one at a rim the slope times its diameter. */
export function chainSums(joint: Joint): readonly ChainSums[] {
  const chains = known.get(joint) ?? [
    ...sums('shaft', linksTo(joint, 'shaft'), 1),
    ...sums('lean', tiltLinks(joint), joint.driven.outside.value),
    ...sums('teeth', linksTo(joint, 'teeth'), 2),
  ];
  known.set(joint, chains);
  return chains;
}

/** The same, ranked and told: for pictures and lists. */
export const chainStudies = (joint: Joint): ChainStudy[] =>
  chainSums(joint).map(({ id, shares, worst, likely }) => ({
    id,
    shares,
    told: toldShares(shares, decimals),
    first: firstToDo(shares),
    worst,
    likely,
  }));
