/**
 * Unbalance corrected by drilling, and by a flat. mm, g, g.mm.
 *
 * Drill depths are to the full diameter (the shoulder); the drill's point goes deeper and is counted. Source: volumes and first
 * moments of a cylinder, a cone and a segment of a circle (geometry). Left out: the curve of the rim where the drill starts.
 */
import type { Profile } from '../model/part.ts';
import { tan } from '../units/trig.ts';

/** A twist drill. */
export interface CorrectionDrill {
  /** mm, > 0 */
  readonly diameter: number;
  /** Angle of the point, degrees; 118 for common drills. */
  readonly point?: number;
}

/** Height of a drill's point, mm. */
export const pointHeight = ({ diameter, point = 118 }: CorrectionDrill): number =>
  diameter / 2 / tan((point * Math.PI) / 360);

/** Mass and moment that a hole takes away. */
export interface Removed {
  /** g */
  readonly mass: number;
  /** g.mm about the axis. */
  readonly moment: number;
}

/** A hole along the axis, its middle `radius` from it, `depth` to the shoulder. Density g/mm3. */
export function drilledAlong(drill: CorrectionDrill, depth: number, radius: number, density: number): Removed {
  const area = (Math.PI / 4) * drill.diameter ** 2;
  const mass = density * area * (depth + pointHeight(drill) / 3);
  return { mass, moment: mass * radius };
}

/** A hole from the rim towards the axis, `depth` to the shoulder; the rim has `radius`. Density g/mm3. */
export function drilledInwards(drill: CorrectionDrill, depth: number, radius: number, density: number): Removed {
  const area = (Math.PI / 4) * drill.diameter ** 2;
  const point = pointHeight(drill);
  const [shank, cone] = [density * area * depth, (density * area * point) / 3];
  return {
    mass: shank + cone,
    moment: shank * (radius - depth / 2) + cone * (radius - depth - point / 4),
  };
}

/**
 * Depth to the shoulder of a hole along the axis that takes a wanted moment away: h = 4 U/(pi rho d^2 r) less a third of the point.
 * 0 where the point alone takes more. U in g.mm.
 */
export function depthAlong(drill: CorrectionDrill, moment: number, radius: number, density: number): number {
  const area = (Math.PI / 4) * drill.diameter ** 2;
  return Math.max(0, moment / (density * area * radius) - pointHeight(drill) / 3);
}

/**
 * Depth to the shoulder of a hole from the rim inwards that takes a wanted moment away; null where no hole of this drill takes so
 * much before it reaches the axis. 0 where the point alone takes more.
 */
export function depthInwards(drill: CorrectionDrill, moment: number, radius: number, density: number): number | null {
  const deepest = radius - pointHeight(drill);
  if (deepest <= 0 || drilledInwards(drill, deepest, radius, density).moment < moment) return null;
  if (drilledInwards(drill, 0, radius, density).moment >= moment) return 0;
  return depthFor(moment, deepest, (depth) => drilledInwards(drill, depth, radius, density).moment);
}

/** Steps of Simpson's rule along one stretch of a profile; even. */
const steps = 20;

/**
 * First moment that a flat takes out of a turned body, g.mm: at every height a segment of a circle, 2/3 (r^2 - h^2)^1.5 for a flat h from
 * the axis. Steps and chamfers of the outside are counted; holes that the flat meets are not.
 * @param outer outside of the body
 * @param depth how far the flat goes into the widest part, mm, >= 0
 * @param density g/mm3
 */
export function flatMoment(outer: Profile, depth: number, density: number): number {
  const h = rimOf(outer) - depth;
  const segment = (r: number) => (r > h ? (2 / 3) * (r * r - h * h) ** 1.5 : 0);
  return outer.slice(1).reduce((sum, b, i) => {
    const a = outer[i] as Profile[number];
    // A step has no height, and what lies below the flat is not cut; a cylinder is the same all the way up.
    if (a.z === b.z || Math.max(a.r, b.r) <= h) return sum;
    const even = segment(a.r);
    const at = (step: number) => (a.r === b.r ? even : segment(a.r + ((b.r - a.r) * step) / steps));
    let simpson = at(0) + at(steps);
    for (let step = 1; step < steps; step++) simpson += at(step) * (step % 2 === 1 ? 4 : 2);
    return sum + (density * simpson * (b.z - a.z)) / (3 * steps);
  }, 0);
}

/** Radius of the widest part of an outside, mm. */
export const rimOf = (outer: Profile): number => outer.reduce((most, { r }) => Math.max(most, r), 0);

/** How far a flat goes into the rim of a turned body to take a moment (g.mm) away, mm, and its width; null where it would pass the axis. */
export function flatFor(
  moment: number,
  outer: Profile,
  density: number,
): { readonly depth: number; readonly chord: number } | null {
  const rim = rimOf(outer);
  if (flatMoment(outer, rim, density) < moment) return null;
  const depth = depthFor(moment, rim, (deep) => flatMoment(outer, deep, density));
  return { depth, chord: 2 * Math.sqrt(depth * (2 * rim - depth)) };
}

/** The depth, 0 to `deepest`, at which something that grows with depth reaches a moment: halving finds the one there is. */
function depthFor(moment: number, deepest: number, taken: (depth: number) => number): number {
  let [low, high] = [0, deepest];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (taken(middle) < moment) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
