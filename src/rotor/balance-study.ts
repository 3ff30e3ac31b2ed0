/** Everything that pulls the joint to one side, taken apart for a picture: arrows that are known, what is loose about them, their sum. g.mm */
import { angleOf, sizeOf } from '../formulas/arrows.ts';
import { stackOf, stray } from '../formulas/chain.ts';
import { firstToDo, sharesOf, type ToldShare, toldShares } from '../formulas/chain-shares.ts';
import type { Joint } from '../job/joint.ts';
import { spinningMass, unbalanceLinks } from './unbalance.ts';

export interface BalanceStudy {
  /** Every pull with its part of the two sums, those that add most first; its amount in whole g.mm that add up, as the findings tell it. */
  readonly shares: readonly ToldShare[];
  /** Number of the pull to start with, from 1; null where nothing is left to do. */
  readonly first: number | null;
  /** Sum of the pulls whose direction is known. */
  readonly known: { readonly size: number; readonly angle: number };
  /** How far the tip of that sum may be from where it is: at worst, and likely (root of the sum of squares). */
  readonly loose: { readonly worst: number; readonly likely: number };
  readonly worst: number;
  readonly likely: number;
  /** Mass of all that is counted, g. */
  readonly mass: number;
}

/** Null where nothing pulls. */
export function balanceStudy(joint: Joint): BalanceStudy | null {
  const links = unbalanceLinks(joint);
  const { worst, likely, known } = stackOf(links);
  if (worst <= 0) return null;
  const shares = toldShares(sharesOf(links), 0);
  const first = firstToDo(sharesOf(links));
  return {
    shares,
    first: first && shares.findIndex(({ place }) => place === first.place) + 1,
    known: { size: sizeOf(known), angle: angleOf(known) },
    loose: {
      worst: links.reduce((sum, link) => sum + stray(link), 0),
      likely: Math.hypot(...links.map((link) => link.usual ?? stray(link))),
    },
    worst,
    likely,
    mass: spinningMass(joint),
  };
}
