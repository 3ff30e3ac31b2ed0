/** The adapter's hole groups: fixings and wheel screws turned into shapes that the generator drills. */
import type { AdapterSpec, HoleGroupSpec, HoleShape } from '../parts/adapter-spec.ts';
import { drillPointAngle } from '../standards/tap-depth.ts';
import type { Fixing } from './fixing.ts';
import type { AdapterFlanges } from './layout.ts';
import { tappedDepth } from './thickness.ts';
import { onCircle, type WheelPlace } from './wheel.ts';

const farFace = { driving: 'driven', driven: 'driving' } as const;

/** How a fixing's holes are made in the adapter. */
export function holeShape(fixing: Fixing, thickness: number, web: number): HoleShape {
  const { thread } = fixing;
  if (fixing.threadIn === 'adapter') {
    const { threadDepth, drillDepth } = tappedDepth(thread, fixing.engagement.length, thickness, web);
    return {
      kind: 'tapped',
      thread: thread.designation,
      major: thread.d,
      tapDrill: thread.tapDrill,
      face: fixing.side,
      threadDepth,
      drillDepth,
      pointAngle: drillPointAngle,
    };
  }
  return { kind: 'passing', diameter: fixing.clearance, headFace: farFace[fixing.side], head: fixing.pocket };
}

/** Groups for both sides; bolts shared by both flanges are one group. */
export function sideGroups(fixings: readonly Fixing[], flanges: AdapterFlanges, thickness: number, web: number): HoleGroupSpec[] {
  return fixings.map((fixing) => {
    const { side, thread } = fixing;
    const what = fixing.threadIn === 'adapter' ? `tapped ${thread.designation}` : `clear for ${thread.designation}`;
    return {
      id: `${side}-screws`,
      side,
      label: fixing.shared ? `bolt holes through both flanges, ${what}` : `${side} flange holes, ${what}`,
      positions: flanges[side].holes.positions,
      shape: holeShape(fixing, thickness, web),
    };
  });
}

/** The tapped holes that hold the wheel. */
export function wheelGroup(place: WheelPlace, thickness: number, web: number, first: number): HoleGroupSpec {
  const { thread } = place;
  const room = thickness - (place.seat?.height ?? 0);
  const depth = tappedDepth(thread, place.engagement.length, room, web, place.threadDepth);
  return {
    id: 'wheel-screws',
    side: 'wheel',
    label: `wheel screw holes, tapped ${thread.designation}`,
    positions: onCircle(place.count, place.circle, first),
    shape: {
      kind: 'tapped',
      thread: thread.designation,
      major: thread.d,
      tapDrill: thread.tapDrill,
      face: place.face,
      ...depth,
      pointAngle: drillPointAngle,
    },
  };
}

/** Tapped depth of a group, as screws ask for it. */
export function threadOf(spec: Pick<AdapterSpec, 'groups'>, id: string): { depth: number; through: boolean } | null {
  const shape = spec.groups.find((group) => group.id === id)?.shape;
  return shape?.kind === 'tapped' ? { depth: shape.threadDepth, through: shape.drillDepth === null } : null;
}
