/** What each head and nut presses on, and how much that bears. */
import { type BearingRing, bearingArea, ringUnderWasher, seatPressure } from '../formulas/head-pressure.ts';
import { cutFromRing, type HoleBeside } from '../formulas/ring-cut.ts';
import { type HolesOfFlange, holesBeside } from '../job/hole-pattern.ts';
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
  /** The flange's holes, where the part is one. */
  readonly holes?: HolesOfFlange;
}

/** Metals that a usual steel torque crushes: the torque is held down to what they bear. */
export const isSoft = ({ family }: Material): boolean => family === 'aluminium' || family === 'plastic';

function ringOf({ hole, washer }: Seat, face: number): BearingRing {
  return washer ? ringUnderWasher(face, washer, hole) : { outer: face, inner: hole };
}

/** No washer of a usual table bears further out than this many times the face of the head. ISO 7089 from M3 to M36: at most 1.4 times. */
const widest = 1.5;

/** The holes beside the screw whose ring they cut most; none where no washer would reach one. */
function worstBeside({ outer, inner }: BearingRing, face: number, holes: HolesOfFlange): readonly HoleBeside[] {
  const reach = Math.max(outer, widest * face) / 2;
  const near = holesBeside(holes, reach);
  const cut = (beside: readonly HoleBeside[]) => cutFromRing(outer, inner, beside);
  return near.reduce<readonly HoleBeside[]>((worst, one) => (cut(one) > cut(worst) ? one : worst), near[0] ?? []);
}

/** A seat as the checks read it. `face` bearing diameter of head or nut, mm; `preload` the usual one, N. */
export function pressedSeat(seat: Seat, face: number, preload: number): PressedSeat {
  const whole = ringOf(seat, face);
  const beside = seat.holes ? worstBeside(whole, face, seat.holes) : [];
  const ring = beside.length > 0 ? { ...whole, beside } : whole;
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
export function seatLoad(seat: PressedSeat): number | null {
  return seat.limit === null ? null : seat.limit * bearingArea(seat);
}
