/** The adapter's hole groups: fixings and wheel screws turned into shapes that the generator drills. */
import type { AdapterSpec, HoleGroupSpec, HoleShape } from '../parts/adapter-spec.ts';
import { drillPointAngle } from '../standards/tap-depth.ts';
import { tappedDepth } from './adapter-thread.ts';
import type { Fixing } from './fixing.ts';
import { adapterThread, type ThicknessInput } from './thickness.ts';
import { onCircle, type WheelPlace, wheelThread } from './wheel.ts';

const farFace = { driving: 'driven', driven: 'driving' } as const;

/** How a fixing's holes are made in the adapter. */
function holeShape(fixing: Fixing, input: ThicknessInput, thickness: number): HoleShape {
  const { thread } = fixing;
  if (fixing.threadIn === 'adapter') {
    return {
      kind: 'tapped',
      thread: thread.designation,
      major: thread.d,
      tapDrill: thread.tapDrill,
      face: fixing.side,
      ...adapterThread(fixing, input, thickness),
      pointAngle: drillPointAngle,
    };
  }
  return { kind: 'passing', diameter: fixing.clearance, headFace: farFace[fixing.side], head: fixing.pocket };
}

/** Groups for both sides; bolts shared by both flanges are one group. */
export function sideGroups(input: ThicknessInput, thickness: number): HoleGroupSpec[] {
  return input.fixings.map((fixing) => {
    const { side, thread } = fixing;
    const what = fixing.threadIn === 'adapter' ? `tapped ${thread.designation}` : `clear for ${thread.designation}`;
    return {
      id: `${side}-screws`,
      side,
      label: fixing.shared ? `bolt holes through both flanges, ${what}` : `${side} flange holes, ${what}`,
      positions: input.flanges[side].holes.positions,
      shape: holeShape(fixing, input, thickness),
    };
  });
}

/** The tapped holes that hold the wheel. */
export function wheelGroup(place: WheelPlace, thickness: number, web: number, first: number): HoleGroupSpec {
  const { thread } = place;
  const room = thickness - (place.seat?.height ?? 0);
  const depth = tappedDepth(wheelThread(place), room, web, place.threadDepth);
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
