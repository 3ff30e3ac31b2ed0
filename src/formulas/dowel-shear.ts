/**
 * What one dowel carries across the plane between two parts. N, mm, MPa.
 *
 * Three things can give: the pin is cut through, the metal of one part gives way along the pin's whole depth, or the pin tilts
 * in both parts. The first two are the pin criteria of EN 1993-1-8, Table 3.10; the tilting of a stiff dowel in one shear plane is
 * EN 1995-1-1, equation 8.6 (modes a to c; its shares of friction and rope left out), which holds for any metal that bears evenly.
 *
 * Valid for: a hardened pin that stays straight, which it does up to 1.5 diameters in each part; deeper is not counted. Left out:
 * fatigue under a torque that comes and goes, the pin's bending, the friction that the screws make.
 */

/** Deeper than this many diameters, a pin bends before it tilts; more is not counted. */
export const mostUsefulDepth = 1.5;

/** Partial factors of EN 1993-1-8, 2.2, recommended values: pins, and metal that yields. */
const gammaM2 = 1.25;
const gammaM0 = 1;
/** Bearing strength over yield strength, EN 1993-1-8, Table 3.10. */
const bearing = 1.5;

/** One part that holds the pin. */
export interface PinSeat {
  /** Depth over which the pin bears, mm, >= 0. */
  readonly depth: number;
  /** Yield strength, MPa, > 0. */
  readonly yield: number;
}

/** What gives first. */
export type DowelWeakness = 'pin' | 'first' | 'second' | 'tilting';

/**
 * Load that one dowel carries in one shear plane, N, and what limits it.
 * @param d diameter, mm, > 0
 * @param breaking load at which one section of the pin breaks in shear, N
 * @param first,second the two parts
 */
export function dowelCapacity(
  d: number,
  breaking: number,
  first: PinSeat,
  second: PinSeat,
): { readonly load: number; readonly weakness: DowelWeakness } {
  const [a, b] = [evenBearing(d, first), evenBearing(d, second)];
  const limits: readonly { readonly load: number; readonly weakness: DowelWeakness }[] = [
    { load: breaking / gammaM2, weakness: 'pin' },
    { load: a, weakness: 'first' },
    { load: b, weakness: 'second' },
    { load: tilting(d, first, second), weakness: 'tilting' },
  ];
  return limits.reduce((least, limit) => (limit.load < least.load ? limit : least));
}

const counted = (d: number, { depth }: PinSeat) => Math.max(0, Math.min(depth, mostUsefulDepth * d));
const strength = ({ yield: fy }: PinSeat) => (bearing * fy) / gammaM0;

/** The metal gives way along the whole pin: 1.5 t d fy. N. */
function evenBearing(d: number, seat: PinSeat): number {
  return counted(d, seat) * d * strength(seat);
}

/** A straight pin tilts in both parts, N: EN 1995-1-1, equation 8.6 (c). */
function tilting(d: number, first: PinSeat, second: PinSeat): number {
  const [t1, t2] = [counted(d, first), counted(d, second)];
  if (t1 === 0 || t2 === 0) return 0;
  const beta = strength(second) / strength(first);
  const r = t2 / t1;
  const root = Math.sqrt(beta + 2 * beta ** 2 * (1 + r + r ** 2) + beta ** 3 * r ** 2);
  return ((strength(first) * t1 * d) / (1 + beta)) * (root - beta * (1 + r));
}

/** Torque that dowels on one circle carry, N.m. Load of one in N, circle's diameter in mm, `sharing` of them at once. */
export function dowelTorque(load: number, circle: number, sharing: number): number {
  return (load * sharing * (circle / 2)) / 1000;
}
