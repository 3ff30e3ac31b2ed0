/** The outside of an adapter: rim, edge chamfers, spigots with lead chamfer and undercut foot, wheel seat, raised rim registers. */
import type { Profile, ProfilePoint } from '../model/part.ts';
import type { AdapterSpec, RegisterSpec, WheelSeatSpec } from './adapter-spec.ts';

/**
 * The end of the outside nearest the driven face, listed outwards from the rim: the driving end is the same thing mirrored.
 * Heights are distances above the face (negative: below it).
 */
interface Corner {
  readonly above: number;
  readonly r: number;
  readonly of: string;
}

/** Corners of one end, from the rim to the highest point. `featureId` names the register's feature. */
function endCorners(
  outside: number,
  chamfer: number,
  register: RegisterSpec | null,
  seat: WheelSeatSpec | null,
  featureId: string,
): Corner[] {
  const rim = outside / 2;
  const corners: Corner[] = [];
  const raised = register?.at === 'rim' && register.gender === 'female' ? register.depth : 0;

  // Each turned-down shoulder is a step: chamfer the edge before it, then go in to the next radius.
  const shoulders: { r: number; from: number; of: string; step: string }[] = [];
  if (seat) shoulders.push({ r: seat.diameter / 2, from: -seat.height, of: 'wheel-seat', step: 'wheel-seat' });
  if (register?.at === 'rim' && register.gender === 'male')
    shoulders.push({ r: register.diameter / 2, from: -register.depth, of: featureId, step: 'body' });
  shoulders.sort((a, b) => b.r - a.r);

  let radius = rim;
  let of = 'body';
  for (const shoulder of shoulders) {
    if (shoulder.r >= radius) {
      // The rim itself is the register.
      of = shoulder.of;
      continue;
    }
    // No wider than the step it stands on.
    const edge = Math.min(chamfer, radius - shoulder.r);
    corners.push(
      { above: shoulder.from - edge, r: radius, of },
      { above: shoulder.from, r: radius - edge, of: shoulder.step },
    );
    corners.push({ above: shoulder.from, r: shoulder.r, of: shoulder.of });
    radius = shoulder.r;
    of = shoulder.of;
  }
  corners.push({ above: raised - chamfer, r: radius, of }, { above: raised, r: radius - chamfer, of: 'body' });

  if (register?.at === 'inner' && register.gender === 'male') {
    const r = register.diameter / 2;
    const foot = register.undercut;
    if (foot) {
      corners.push(
        { above: 0, r: r - foot.depth, of: featureId },
        { above: foot.width, r: r - foot.depth, of: featureId },
      );
      corners.push({ above: foot.width, r, of: featureId });
    } else {
      corners.push({ above: 0, r, of: featureId });
    }
    corners.push({ above: register.depth - register.chamfer, r, of: featureId });
    corners.push({ above: register.depth, r: r - register.chamfer, of: featureId });
  }
  return corners;
}

/**
 * Outer profile of an adapter, z ascending from its lowest point to its highest.
 * @param spec lengths in mm; see AdapterSpec. Shoulders must fit below one another; checks say so when they do not.
 */
export function adapterOutside(spec: AdapterSpec): Profile {
  const { outside, chamfer, thickness } = spec;
  const seatOn = (face: 'driving' | 'driven') => (spec.wheelSeat?.face === face ? spec.wheelSeat : null);
  const low = endCorners(outside, chamfer, spec.registers.driving, seatOn('driving'), 'driving-register');
  const high = endCorners(outside, chamfer, spec.registers.driven, seatOn('driven'), 'driven-register');
  const points: ProfilePoint[] = [
    // Mirrored, a stretch belongs to the corner that now comes after it, so features shift by one corner.
    ...low
      .reverse()
      .map((corner, i, all) => ({ z: 0 - corner.above, r: corner.r, of: (all[i + 1] ?? { of: 'body' }).of })),
    ...high.map((corner) => ({ z: thickness + corner.above, r: corner.r, of: corner.of })),
  ];
  return withoutRepeats(ascending(points));
}

/**
 * Height above a face (negative: below it) at which the body's surface lies between two radii: on the face itself, on the step of a
 * turned-down shoulder, on a raised ring or on a spigot. Null where the two radii lie on different surfaces.
 */
export function surfaceAbove(
  spec: AdapterSpec,
  face: 'driving' | 'driven',
  inner: number,
  outer: number,
): number | null {
  const register = spec.registers[face];
  const seat = spec.wheelSeat?.face === face ? spec.wheelSeat : null;
  const steps: { readonly r: number; readonly within: number; readonly beyond: number }[] = [];
  if (seat) steps.push({ r: seat.diameter / 2, within: 0, beyond: -seat.height });
  if (register && (register.gender === 'male') === (register.at === 'inner')) {
    const [within, beyond] = register.gender === 'male' ? [register.depth, 0] : [0, register.depth];
    steps.push({ r: register.diameter / 2, within, beyond });
  } else if (register?.at === 'rim' && register.diameter < spec.outside) {
    steps.push({ r: register.diameter / 2, within: 0, beyond: -register.depth });
  }
  let height = 0;
  for (const { r, within, beyond } of steps) {
    if (inner < r && outer > r) return null;
    const here = outer <= r ? within : beyond;
    if (here !== 0) height = height === 0 ? here : Math.min(height, here);
  }
  return height;
}

/** The same corners with heights that never descend and radii that are never negative, whatever the dimensions. */
export function ascending(points: readonly ProfilePoint[]): ProfilePoint[] {
  let height = Number.NEGATIVE_INFINITY;
  return points.map((point) => {
    height = Math.max(height, point.z);
    return { ...point, z: height, r: Math.max(0, point.r) };
  });
}

/** Drops corners that repeat the one before (a chamfer of nothing); the stretch that follows keeps its feature. */
export function withoutRepeats(points: readonly ProfilePoint[]): Profile {
  const same = (a: ProfilePoint, b: ProfilePoint | undefined) =>
    b !== undefined && Math.abs(a.z - b.z) <= 1e-12 && Math.abs(a.r - b.r) <= 1e-12;
  return points.filter((point, i) => !same(point, points[i + 1]));
}
