/**
 * Torsion of rings about their axis. mm, mm4, MPa, N.m.
 *
 * Valid for: linear elastic metal, sections that no hole cuts. Left out: stress raisers at holes and corners, which a ductile metal
 * evens out under a rare peak, but which start fatigue.
 */

/** A plain ring, mm: 0 <= inside < outside. */
export interface Ring {
  readonly inside: number;
  readonly outside: number;
}

/** Polar second moment of a ring, mm4: pi/2 (R^4 - r^4), radii in mm. Textbook. */
export function polarMoment({ inside, outside }: Ring): number {
  return (Math.PI / 2) * (outside ** 4 - inside ** 4);
}

/**
 * Greatest shear stress of rings that turn together, MPa: T R / sum(J), R the outside of the widest. Textbook torsion; for rings cut out
 * of a section with holes it is a safe bound, because a stress that runs round in uncut rings alone is in balance (lower bound theorem).
 * @param torque N.m
 */
export function torsionStress(torque: number, rings: readonly Ring[]): number {
  const sum = rings.reduce((total, ring) => total + polarMoment(ring), 0);
  return (1000 * torque * Math.max(...rings.map(({ outside }) => outside))) / sum;
}

/**
 * Shear stress on a cylinder about the axis, MPa: T/(r A), A the metal that the cylinder of radius r cuts, 2 pi r t where nothing is
 * missing. Statics: the torque passes from one bolt circle to the other through every cylinder between them.
 */
export function cylinderStress(torque: number, radius: number, area: number): number {
  return (1000 * torque) / (radius * area);
}

/** Shear yield stress, MPa: Rp0.2 / sqrt 3. Von Mises. */
export function shearYield(yieldStrength: number): number {
  return yieldStrength / Math.sqrt(3);
}

/**
 * Rings between two radii that no hole touches, mm. Holes as distance of their centre from the axis and radius, both mm.
 * A hole over the axis is a bore: it leaves no ring inside it.
 */
export function uncutRings(
  whole: Ring,
  holes: readonly { readonly offset: number; readonly radius: number }[],
): Ring[] {
  const cuts = holes
    .map(({ offset, radius }) => ({ from: offset - radius, to: offset + radius }))
    .sort((a, b) => a.from - b.from);
  const rings: Ring[] = [];
  let inside = whole.inside;
  for (const { from, to } of cuts) {
    if (from > inside) rings.push({ inside, outside: Math.min(from, whole.outside) });
    inside = Math.max(inside, to);
    if (inside >= whole.outside) return rings.filter((ring) => ring.outside > ring.inside);
  }
  rings.push({ inside, outside: whole.outside });
  return rings.filter((ring) => ring.outside > ring.inside);
}
