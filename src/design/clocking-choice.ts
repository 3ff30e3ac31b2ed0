/** How far the hole patterns are turned against each other, and the wheel's screws against both: where most metal is left, or as the job says. */
import { bestClocking, type Clocking, webAtClocking } from '../geometry/clocking.ts';
import type { Joint } from '../job/joint.ts';
import type { Drilling } from '../model/part.ts';
import { groupDrillings } from '../parts/adapter-holes.ts';
import type { AdapterSpec, HoleGroupSpec } from '../parts/adapter-spec.ts';
import { wheelGroup } from './hole-groups.ts';
import { madeOnce } from './made-once.ts';
import type { WheelPlace } from './wheel.ts';

/** Drillings of all hole groups of a sketch, or of some. mm. */
export const drillingsOf = (spec: AdapterSpec, groups: readonly HoleGroupSpec[] = spec.groups) =>
  groups.flatMap((group) => groupDrillings(spec, group));

/** The best angle between two sets of holes; several ways of one search have the same ones. */
const clockedBest = (search: object, fixed: readonly Drilling[], moving: readonly Drilling[]): Clocking =>
  madeOnce(search, 'clocking', [placesOf(fixed), placesOf(moving)], () => bestClocking(fixed, moving));

const placesOf = (drillings: readonly Drilling[]) => drillings.map(({ x, y, profile }) => [x, y, profile]);

/**
 * The angle between the two patterns, degrees, and what any angle could give.
 * @param search what all ways of one search have in common; see madeOnce
 * @param shared the angle of the one pattern that both flanges have; null where each has its own
 */
export function clockingOf(
  search: object,
  sketch: AdapterSpec,
  asked: 'auto' | number,
  shared: number | null,
): Joint['clocking'] {
  const mode = asked === 'auto' ? 'auto' : 'given';
  if (shared !== null) return { mode, angle: shared, web: null, best: { angle: shared, web: null } };
  const side = (name: string) =>
    drillingsOf(
      sketch,
      sketch.groups.filter((group) => group.side === name),
    );
  const [fixed, moving] = [side('driving'), side('driven')];
  const best = clockedBest(search, fixed, moving);
  const angle = asked === 'auto' ? best.angle : asked;
  return { mode, angle, web: webAtClocking(fixed, moving, angle), best };
}

/** The wheel's screws go where they leave the adapter most metal, or where the job puts them. Degrees; 0 without a wheel. */
export function wheelClocking(search: object, spec: AdapterSpec, place: WheelPlace | null, web: number): number {
  if (!place) return 0;
  if (place.first !== null) return place.first;
  const group = wheelGroup(place, spec.thickness, web, 0);
  return clockedBest(search, drillingsOf(spec), groupDrillings(spec, group)).angle;
}
