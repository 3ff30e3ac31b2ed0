/** How the joint stands as it is bolted up: its flanges turned against the adapter, and what a dial sees of the whole. mm, degrees. */
import type { Link } from '../formulas/chain.ts';
import type { DialFact } from '../job/built-facts.ts';
import type { Joint } from '../job/joint.ts';
import type { FlangeSide } from './plays.ts';

/** An angle from 0 up to 360 degrees. */
export const wrapped = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** How far the drawing of one flange is turned against the adapter as it is bolted up, degrees. */
export function turnOf(joint: Joint, side: FlangeSide): number {
  const { bolt_up: boltUp } = joint.job.adapter;
  return side === 'driving' ? -(boltUp?.driving ?? 0) : joint.adapterSpec.clocking + (boltUp?.driven ?? 0);
}

/**
 * A dial on the joint as bolted up sees all links before it at once, and takes their place.
 * @param scale size of the shift or slope for a total indicator reading of 1
 * @param leans true for a face: the axis leans away from where it stands high
 */
export function seen({ tir, arrow }: DialFact, scale: number, what: string, leans: boolean): Link {
  const size = arrow?.size ?? tir * scale;
  return {
    id: 'as-bolted-up',
    what,
    least: size,
    most: size,
    angle: arrow ? wrapped(arrow.angle + (leans ? 180 : 0)) : null,
    doubt: arrow?.doubt ?? 0,
    source: 'measured on the joint as bolted up',
    memory: false,
    cure: 'the joint bolted up another way round, or burrs and dirt cleaned from faces and registers',
  };
}
