/** Whether the other flange lies over a side's heads once it is on: which screws go in first, and which nobody reaches again. mm. */
import { screwHead } from '../standards/screw-heads.ts';
import { hypot } from '../units/hypot.ts';
import { cos } from '../units/trig.ts';
import type { ScrewGroup } from './joint.ts';

type Side = 'driving' | 'driven';

/** Outside diameter of a socket, mm: 1.5 x across flats + 1. Common practice: sockets of one size differ by a few millimetres. */
export const socketOutside = (acrossFlats: number): number => 1.5 * acrossFlats + 1;

/** Radius about a head's axis that its key or socket takes; the head's own where no size is tabled. */
function toolRadius({ thread, head }: Pick<ScrewGroup, 'thread' | 'head'>): number {
  const known = screwHead(head.kind, thread);
  const flats = known.ok ? known.value.s : undefined;
  if (flats === undefined) return head.diameter / 2;
  return head.kind === 'hex' ? socketOutside(flats) / 2 : flats / 2 / cos(Math.PI / 6);
}

/**
 * The flange that no key gets past once it is on; null where heads stand free of it, or outside of the joint.
 * @param screws of one side; their heads lie in the adapter's far face unless they stand outside
 * @param outsideOf diameter of a flange
 */
export function coveringFlange(
  screws: Pick<ScrewGroup, 'side' | 'seat' | 'positions' | 'thread' | 'head'>,
  outsideOf: (side: Side) => number,
): Side | null {
  if (screws.side === 'wheel' || screws.seat === 'outside') return null;
  const over = screws.side === 'driving' ? 'driven' : 'driving';
  const nearest = Math.min(...screws.positions.map(({ x, y }) => hypot(x, y)));
  return nearest - toolRadius(screws) < outsideOf(over) / 2 ? over : null;
}
