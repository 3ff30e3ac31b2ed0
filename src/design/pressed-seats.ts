/** What each head and nut presses on, and how much that bears. */
import { type BearingRing, bearingArea, ringUnderWasher, seatPressure } from '../formulas/head-pressure.ts';
import type { PressedSeat } from '../job/joint.ts';
import { limitingPressure } from '../standards/limiting-pressure.ts';
import type { Material } from '../standards/materials.ts';
import type { Washer } from '../standards/washers.ts';

/** A part under a head or a nut. */
export interface Seat {
  readonly under: 'head' | 'nut';
  /** "adapter", "driving flange", "wheel". */
  readonly part: string;
  readonly material: Material;
  /** Hole in the part, mm. */
  readonly hole: number;
  readonly washer: Washer | null;
}

/** Metals that a usual steel torque crushes: the torque is held down to what they bear. */
export const isSoft = ({ family }: Material): boolean => family === 'aluminium' || family === 'plastic';

function ringOf({ hole, washer }: Seat, face: number): BearingRing {
  return washer ? ringUnderWasher(face, washer, hole) : { outer: face, inner: hole };
}

/** A seat as the checks read it. `face` bearing diameter of head or nut, mm; `preload` the usual one, N. */
export function pressedSeat(seat: Seat, face: number, preload: number): PressedSeat {
  const ring = ringOf(seat, face);
  const limit = limitingPressure(seat.material);
  return {
    under: seat.under,
    part: seat.part,
    material: seat.material.name,
    soft: isSoft(seat.material),
    face,
    ...ring,
    limit: limit.ok ? limit.value.pG : null,
    how: limit.ok ? limit.value.how : limit.why,
    source: limit.ok ? limit.value.source : 'VDI 2230 lists no plastics',
    usual: seatPressure(preload, ring),
  };
}

/** Greatest preload that a seat bears, N; null where no limit is known. */
export function seatLoad({ limit, outer, inner }: PressedSeat): number | null {
  return limit === null ? null : limit * bearingArea({ outer, inner });
}
