/** Where the holes of a typed pattern stand, seen as they were typed: looking at the flange's own face. mm, degrees. */
import type { HolesInput } from './schema.ts';

export interface HolePosition {
  readonly x: number;
  readonly y: number;
}

/** Hole centres in typed order, or null while the pattern is incomplete or contradicts itself. */
export function patternOf(holes: HolesInput): HolePosition[] | null {
  if (holes.at !== undefined) return holes.at.map(([x, y]) => ({ x, y }));
  const circle = circleOf(holes);
  if (circle === null) return null;
  if (holes.angles !== undefined) return holes.angles.map((angle) => onCircle(circle, angle));
  if (holes.count === undefined) return null;
  const { count, first = 0 } = holes;
  return Array.from({ length: count }, (_, index) => onCircle(circle, first + (index * 360) / count));
}

/** Diameter of the hole circle: typed, or from the chord of neighbours: circle = chord / sin(180 / count). Null when neither is there. */
export function circleOf(holes: HolesInput): number | null {
  if (holes.circle !== undefined) return holes.circle.value;
  if (holes.chord === undefined || holes.count === undefined) return null;
  return holes.chord.value / Math.sin(Math.PI / holes.count);
}

/** How well a read-out or caliper places a hole typed by its coordinates, mm. Common practice. */
const coordinateDoubt = 0.05;

/**
 * How far a hole's centre may stand from where it was measured, mm radial: half the doubt of the circle, magnified by
 * 1 / sin(180 / count) where the circle came from a chord.
 */
export function positionDoubt(holes: HolesInput): number {
  if (holes.circle !== undefined) return holes.circle.doubt / 2;
  if (holes.chord !== undefined && holes.count !== undefined)
    return holes.chord.doubt / Math.sin(Math.PI / holes.count) / 2;
  return coordinateDoubt;
}

/** The two holes that stand nearest each other, and how far apart; null for fewer than two. */
export function pairedHoles(
  pattern: readonly HolePosition[],
): { first: number; second: number; distance: number } | null {
  let nearest: { first: number; second: number; distance: number } | null = null;
  for (const [second, b] of pattern.entries()) {
    for (const [first, a] of pattern.slice(0, second).entries()) {
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      if (nearest === null || distance < nearest.distance - 1e-9) nearest = { first, second, distance };
    }
  }
  return nearest;
}

/** A point on a circle of that diameter, without binary noise where a coordinate is zero. */
function onCircle(diameter: number, angle: number): HolePosition {
  const turned = (((angle % 360) + 360) % 360) as number;
  const radians = (turned * Math.PI) / 180;
  const radius = diameter / 2;
  const x = turned === 90 || turned === 270 ? 0 : radius * Math.cos(radians);
  const y = turned === 0 || turned === 180 ? 0 : radius * Math.sin(radians);
  return { x, y };
}
