/** How the joint stands as it is bolted up: its flanges turned against the adapter, and what a dial sees of the whole. mm, degrees. */
import type { Link } from '../formulas/chain.ts';
import type { DialFact } from '../job/built-facts.ts';
import type { Joint } from '../job/joint.ts';
import { withinTurn } from '../units/turn.ts';
import type { FlangeSide } from './plays.ts';

/** How far the drawing of one flange is turned against the adapter as it is bolted up, degrees. */
export function turnOf(joint: Joint, side: FlangeSide): number {
  const { bolt_up: boltUp } = joint.job.adapter;
  return side === 'driving' ? -(boltUp?.driving ?? 0) : joint.adapterSpec.clocking + (boltUp?.driven ?? 0);
}

/** Sizes of a link whose direction nobody read: what was read, and the doubt of it either way. */
export const sizesRead = ({ size, doubt }: { readonly size: number; readonly doubt: number }) => ({
  least: Math.max(0, size - doubt),
  most: size + doubt,
  angle: null,
  doubt,
});

/**
 * A dial on the joint as bolted up sees all links before it at once, and takes their place.
 * @param scale size of the shift or slope for a total indicator reading of 1
 * @param leans true for a face: the axis leans away from where it stands high
 */
export function seen({ tir, doubt, arrow }: DialFact, scale: number, what: string, leans: boolean): Link {
  return {
    id: 'as-bolted-up',
    what,
    ...(arrow
      ? {
          least: arrow.size,
          most: arrow.size,
          angle: withinTurn(arrow.angle + (leans ? 180 : 0)),
          high: withinTurn(arrow.angle),
          doubt: arrow.doubt,
        }
      : sizesRead({ size: tir * scale, doubt: doubt * scale })),
    source: 'measured on the joint as bolted up',
    memory: false,
    cure: 'the joint bolted up another way round, or burrs and dirt cleaned from faces and registers',
  };
}
