/**
 * Mass properties of a turned part in closed form: frusta of the outside less those of its drillings, and the
 * segments that the flats cut off. No mesh is made.
 */
import type { MassProperties } from '../model/mass.ts';
import type { Profile, TurnedPart } from '../model/part.ts';
import { nestingOf } from './nesting.ts';
import { type Curve, curvesOf } from './turned-curves.ts';
import { addMoments, coneMoments, flattenedConeMoments, massOf, noMoments } from './turned-moments.ts';

/**
 * Mass properties about the part's own origin and axes: z from the driving face, centre of mass and inertia
 * in mm and g.mm2. The products xz and yz are the couple unbalance. Exact to rounding without flats, and to
 * 1e-10 of the volume with them on a cone.
 *
 * A drilling within a wider one, and one that lies outside the part, take nothing away. Valid for laminar
 * parts only (see `firstCrossing`): where two outlines cross, the stuff they share is taken away twice.
 * Engravings never count. Throws a RangeError on a profile that is not one.
 */
export function turnedMass(part: TurnedPart): MassProperties {
  const curves = curvesOf(part);
  const sum = noMoments();
  for (const { z0, z1, outer, holes } of nestingOf(curves).slabs) {
    if (!outer) continue;
    const body = curves.flats
      ? flattenedConeMoments(z0, z1, outer.r0, outer.r1, curves.flats)
      : coneMoments(0, 0, z0, z1, outer.r0, outer.r1);
    addMoments(sum, body, 1);
    for (const hole of holes) {
      const { x, y } = curves.drillings[hole.drilling] as Curve;
      addMoments(sum, coneMoments(x, y, z0, z1, hole.r0, hole.r1), -1);
    }
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
