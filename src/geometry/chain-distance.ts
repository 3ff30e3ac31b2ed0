/**
 * Distance between two profiles of solids of revolution with parallel axes.
 *
 * The nearest points of two such solids lie in the plane that holds both axes, so the three-dimensional question is a flat one:
 * the distance between two chains of straight lines in that plane. Coordinates: u across, z along the axes; mm.
 */
export interface ChainPoint {
  readonly u: number;
  readonly z: number;
}
export type Chain = readonly (readonly [ChainPoint, ChainPoint])[];

/** Distance from a point to a straight stretch. */
function pointToStretch(p: ChainPoint, a: ChainPoint, b: ChainPoint): number {
  const du = b.u - a.u;
  const dz = b.z - a.z;
  const length2 = du * du + dz * dz;
  const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.z - a.z) * dz) / length2));
  return Math.hypot(a.u + t * du - p.u, a.z + t * dz - p.z);
}

const side = (a: ChainPoint, b: ChainPoint, p: ChainPoint) => (b.u - a.u) * (p.z - a.z) - (b.z - a.z) * (p.u - a.u);

/** True where two stretches properly cross. */
function cross(a: ChainPoint, b: ChainPoint, c: ChainPoint, d: ChainPoint): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Least distance between two chains, mm; 0 where they cross. Infinity when one is empty. */
export function chainDistance(first: Chain, second: Chain): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of first) {
    for (const [c, d] of second) {
      if (cross(a, b, c, d)) return 0;
      least = Math.min(
        least,
        pointToStretch(a, c, d),
        pointToStretch(b, c, d),
        pointToStretch(c, a, b),
        pointToStretch(d, a, b),
      );
    }
  }
  return least;
}
