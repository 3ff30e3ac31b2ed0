/** Sections of a turned part: what metal stands at a height, and what a cylinder about the axis cuts. mm. */

import type { TurnedPart } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { acos } from '../units/trig.ts';
import { type Curve, curvesOf, radiusAt, SAME, stretchOver } from './turned-curves.ts';

/** A hole as a section sees it: distance of its centre from the axis, and radius. */
export interface SectionHole {
  readonly offset: number;
  readonly radius: number;
}

/**
 * What stands between two neighbouring heights, at its weakest: the least outside and the widest holes. A bore over the axis is a hole
 * of offset 0.
 */
export interface Section {
  readonly z0: number;
  readonly z1: number;
  readonly outside: number;
  readonly holes: readonly SectionHole[];
}

/**
 * Sections of a part from the height `from` to `to`, lowest first. Cones count with their weaker end over the whole of their height, flats
 * as if the part were turned down to them: both on the safe side. Holes that cross are all listed.
 */
export function sectionsBetween(part: TurnedPart, from: number, to: number): Section[] {
  const curves = curvesOf(part);
  const half = curves.flats?.half ?? Number.POSITIVE_INFINITY;
  const heights = [from, ...curves.heights.filter((z) => z > from && z < to), to];
  return heights.slice(1).flatMap((z1, i): Section[] => {
    const z0 = heights[i] as number;
    const outer = z1 - z0 > SAME ? stretchOver(curves.outer, z0, z1) : undefined;
    if (!outer) return [];
    const holes = curves.drillings.flatMap((curve) => holeOver(curve, z0, z1));
    return [{ z0, z1, outside: Math.min(radiusAt(outer, z0), radiusAt(outer, z1), half), holes }];
  });
}

/** A drilling between two heights, at its widest; nothing where it is not open there. */
function holeOver(curve: Curve, z0: number, z1: number): SectionHole[] {
  const wall = stretchOver(curve, z0, z1);
  if (!wall) return [];
  return [{ offset: hypot(curve.x, curve.y), radius: Math.max(radiusAt(wall, z0), radiusAt(wall, z1)) }];
}

/** Angle that a hole takes out of a circle about the axis, radians: 0 to 2 pi. */
export function angleCut(radius: number, { offset, radius: hole }: SectionHole): number {
  if (radius >= offset + hole) return 0;
  if (radius <= hole - offset) return 2 * Math.PI;
  if (radius <= offset - hole) return 0;
  return 2 * acos(Math.min(1, Math.max(-1, (radius * radius + offset * offset - hole * hole) / (2 * radius * offset))));
}

/** Metal that a cylinder about the axis cuts, mm2: r x (2 pi less what holes take out) x height, over the sections. */
export function cylinderArea(sections: readonly Section[], radius: number): number {
  return sections.reduce((sum, { z0, z1, outside, holes }) => {
    if (radius >= outside) return sum;
    const left = 2 * Math.PI - holes.reduce((cut, hole) => cut + angleCut(radius, hole), 0);
    return sum + Math.max(0, left) * radius * (z1 - z0);
  }, 0);
}
