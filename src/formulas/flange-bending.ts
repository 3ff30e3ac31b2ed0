/**
 * A plate held by screws: how far apart they may stand, and what happens where the metal under a screw is held on one side only.
 * mm, N, MPa.
 *
 * Valid for: flat plates pressed face to face. Left out: plates that are not flat, gaskets, loads that pull the faces apart.
 */

/**
 * Greatest distance between neighbouring screws, mm: 2 d + 6 t/(m + 0.5) with m = 0 for bare metal faces, so 2 d + 12 t. Wider apart, the
 * plate between two screws is too limp to keep its faces shut. @param t thinner plate, mm
 * Source: the spacing rule of pressure-vessel flanges (Taylor Forge), from memory; bare faces are its easiest case.
 */
export function greatestPitch(d: number, t: number): number {
  return 2 * d + (6 / 0.5) * t;
}

/** Reach of the metal that backs a screw, mm from its axis, towards the middle of the part and towards its rim. */
export interface Backing {
  readonly inwards: number;
  readonly outwards: number;
}

/**
 * How far beside the screw its force comes through to the other part, mm: the pressure spreads over `spread` (diameter, mm) but only where
 * there is backing. 0 where the backing is even. Negative reach (the screw stands beside the face) is allowed.
 * Source: statics, even pressure.
 */
export function forceOffset({ inwards, outwards }: Backing, spread: number): number {
  const half = spread / 2;
  return Math.abs(Math.min(half, outwards) - Math.min(half, inwards)) / 2;
}

/**
 * Bending stress of a plate whose screw force comes through `offset` beside it, MPa: 6 F e/(b t^2), a plain beam.
 * @param width metal that bends with the screw, mm; `thickness` mm
 * Source: beam bending; even over the width, which is favourable by some ten per cent.
 */
export function plateBending(force: number, offset: number, width: number, thickness: number): number {
  return (6 * force * offset) / (width * thickness * thickness);
}

/** Shear under a head, MPa: F/(pi D t), the cylinder under the edge of the bearing face punched out. Source: statics. */
export function punchShear(force: number, diameter: number, thickness: number): number {
  return force / (Math.PI * diameter * thickness);
}
