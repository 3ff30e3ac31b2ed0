/**
 * Unbalance corrected by drilling, and by a flat. mm, g, g.mm.
 *
 * Drill depths are to the full diameter (the shoulder); the drill's point goes deeper and is counted. Source: volumes and first
 * moments of a cylinder, a cone and a segment of a circle (geometry). Left out: the curve of the rim where the drill starts.
 */

/** A twist drill. */
export interface CorrectionDrill {
  /** mm, > 0 */
  readonly diameter: number;
  /** Angle of the point, degrees; 118 for common drills. */
  readonly point?: number;
}

/** Height of a drill's point, mm. */
export const pointHeight = ({ diameter, point = 118 }: CorrectionDrill): number =>
  diameter / 2 / Math.tan((point * Math.PI) / 360);

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
  let [low, high] = [0, deepest];
  if (drilledInwards(drill, 0, radius, density).moment >= moment) return 0;
  // The moment grows with depth all the way, so halving finds the one depth.
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (drilledInwards(drill, middle, radius, density).moment < moment) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How far a flat goes into a rim to take a moment away, mm, and its width: a segment's first moment is 2/3 a^3, a half its chord. */
export function flatFor(
  moment: number,
  radius: number,
  thickness: number,
  density: number,
): { readonly depth: number; readonly chord: number } | null {
  const half = Math.cbrt((1.5 * moment) / (density * thickness));
  if (half >= radius) return null;
  return { depth: radius - Math.sqrt(radius * radius - half * half), chord: 2 * half };
}
