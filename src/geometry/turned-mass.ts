/**
 * Mass properties of a turned part in closed form: frusta of the outside less those of its drillings, and the
 * segments that the flats cut off. No mesh is made.
 */
import type { MassProperties } from '../model/mass.ts';
import type { Profile, TurnedPart } from '../model/part.ts';
import { type ConicHole, crossingMoments } from './crossing-moments.ts';
import { nestingOf, type Slab } from './nesting.ts';
import { type Curve, curvesOf, type TurnedCurves } from './turned-curves.ts';
import { addMoments, coneMoments, flattenedConeMoments, massOf, noMoments } from './turned-moments.ts';

/** Holes that hang together because they cross, and whether one of them crosses the outside. */
interface Cluster {
  readonly holes: readonly number[];
  readonly breaksOut: boolean;
}

/** The holes of a slab, by their places in it, in clusters: most stand alone. */
function clustersOf({ holes, crossings = [] }: Slab): Cluster[] {
  if (crossings.length === 0) return holes.map((_, i) => ({ holes: [i], breaksOut: false }));
  const clusterOf = holes.map((_, i) => i);
  for (const [a, b] of crossings) {
    if (b === null) continue;
    const [keep, drop] = [clusterOf[a] as number, clusterOf[b] as number];
    clusterOf.forEach((cluster, i) => {
      if (cluster === drop) clusterOf[i] = keep;
    });
  }
  const out = new Set(crossings.flatMap(([a, b]) => (b === null ? [clusterOf[a] as number] : [])));
  return [...new Set(clusterOf)].map((cluster) => ({
    holes: clusterOf.flatMap((of, i) => (of === cluster ? [i] : [])),
    breaksOut: out.has(cluster),
  }));
}

/** What a cluster takes away from the body of a slab. */
function takenBy({ holes, breaksOut }: Cluster, slab: Slab, curves: TurnedCurves) {
  const { z0, z1, outer } = slab;
  const cones = holes.map((i): ConicHole => {
    const { drilling, r0, r1 } = slab.holes[i] as Slab['holes'][number];
    const { x, y } = curves.drillings[drilling] as Curve;
    return { x, y, r0, r1 };
  });
  const [alone] = cones;
  if (alone && cones.length === 1 && !breaksOut) return coneMoments(alone.x, alone.y, z0, z1, alone.r0, alone.r1);
  return crossingMoments(z0, z1, cones, breaksOut && outer ? { ...outer, flats: curves.flats } : null);
}

/**
 * Mass properties about the part's own origin and axes: z from the driving face, centre of mass and inertia
 * in mm and g.mm2. The products xz and yz are the couple unbalance. Exact to rounding where walls that cross
 * are parallel, and to 1e-10 of the volume where cones cross flats, the outside or one another.
 *
 * A drilling within a wider one, and one that lies outside the part, take nothing away; what drillings share
 * is taken away once. Engravings never count. Throws a RangeError on a profile that is not one.
 */
export function turnedMass(part: TurnedPart): MassProperties {
  const curves = curvesOf(part);
  const sum = noMoments();
  for (const slab of nestingOf(curves).slabs) {
    const { z0, z1, outer } = slab;
    if (!outer) continue;
    const body = curves.flats
      ? flattenedConeMoments(z0, z1, outer.r0, outer.r1, curves.flats)
      : coneMoments(0, 0, z0, z1, outer.r0, outer.r1);
    addMoments(sum, body, 1);
    for (const cluster of clustersOf(slab)) addMoments(sum, takenBy(cluster, slab, curves), -1);
  }
  return massOf(sum, part.material.density);
}

/**
 * Mass properties of a plain solid of revolution about a line parallel to z through (x, y): a screw, a plug,
 * what a drill took away. Density in g/mm3. Exact to rounding.
 */
export function profileMass(profile: Profile, density: number, x = 0, y = 0): MassProperties {
  const sum = noMoments();
  for (let i = 0; i + 1 < profile.length; i++) {
    const [a, b] = [profile[i], profile[i + 1]] as [Profile[number], Profile[number]];
    if (b.z > a.z) addMoments(sum, coneMoments(x, y, a.z, b.z, a.r, b.r), 1);
  }
  return massOf(sum, density);
}
