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

export interface ChainStudy {
  readonly id: ChainId;
  /** In the order in which the parts stand in the joint. */
  readonly shares: readonly LinkShare[];
  /** The same, the widest first, with their amounts as they are told: in mm, adding up to the sum. */
  readonly told: readonly ToldShare[];
  /** What to start with; null where nothing is left to do. */
  readonly first: RankedShare | null;
  readonly worst: number;
  readonly likely: number;
}

/** Decimals of a link's part in mm, in words and pictures. */
const decimals = 3;

function scaled(links: readonly Link[], by: number): Link[] {
  return links.map(({ usual, ...link }) => ({
    ...link,
    least: link.least * by,
    most: link.most * by,
    doubt: link.doubt * by,
    ...(usual === undefined ? {} : { usual: usual * by }),
  }));
}

function study(id: ChainId, links: readonly Link[], by: number): ChainStudy[] {
  if (links.length === 0) return [];
  const own = scaled(links, by);
  const { worst, likely } = stackOf(own);
  const shares = sharesOf(own);
  return [{ id, shares, told: toldShares(shares, decimals), first: firstToDo(shares), worst, likely }];
}

/** The chains that this joint has. A dial at the tips shows twice the shift; one at a rim the slope times its diameter. */
export function chainStudies(joint: Joint): ChainStudy[] {
  return [
    ...study('shaft', linksTo(joint, 'shaft'), 1),
    ...study('lean', tiltLinks(joint), joint.driven.outside.value),
    ...study('teeth', linksTo(joint, 'teeth'), 2),
  ];
}
