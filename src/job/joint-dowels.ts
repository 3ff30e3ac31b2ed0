/** The dowels of one side, decided: what the part, checks and reports read. */
import type { DowelPin } from '../standards/dowel-pins.ts';

/** One half of a dowel's fit: the hole's limits, mm, its clearance on the pin (negative: interference), and how a shop reaches it. */
export interface DowelFit {
  readonly limits: { readonly lower: number; readonly upper: number; readonly zone: string };
  readonly least: number;
  readonly greatest: number;
  readonly method: string;
  readonly gauge: string;
  readonly source: string;
}

export interface DowelSet {
  readonly side: 'driving' | 'driven';
  readonly pin: DowelPin;
  readonly count: number;
  /** Length of a pin, mm, and whether the standard lists it. */
  readonly length: number;
  readonly isStandard: boolean;
  /** Diameter of the circle through the pins, mm. */
  readonly circle: number;
  /** Angle of the first pin in the side's own pattern, degrees, adapter coordinates before clocking. */
  readonly first: number;
  readonly reamed: 'together' | 'separately';
  /** Limits of the holes in the flange are those of holes that were there and were measured. */
  readonly isMeasured: boolean;
  /** Where each pin stands, clocking applied. */
  readonly positions: readonly { readonly x: number; readonly y: number }[];
  /** Length of pin in each part, end chamfers included, mm. */
  readonly inside: { readonly adapter: number; readonly flange: number };
  /** Full depth of the hole in the adapter; null: right through. mm. */
  readonly depth: number | null;
  readonly fits: { readonly adapter: DowelFit; readonly flange: DowelFit };
  /** Least metal round a hole in the flange, mm, and what is nearest; negative: runs into it. */
  readonly flangeWeb: { readonly gap: number; readonly what: string };
}

/** The dowels of both sides; null where a side has none. */
export interface Dowels {
  readonly driving: DowelSet | null;
  readonly driven: DowelSet | null;
}

/** How far a side's flange can shift on its dowels, mm on the diameter, worst case; null where it has none. */
export function dowelPlay({ dowels }: { readonly dowels?: Dowels }, side: 'driving' | 'driven'): number | null {
  const set = dowels?.[side];
  return set ? Math.max(0, set.fits.adapter.greatest) + Math.max(0, set.fits.flange.greatest) : null;
}
