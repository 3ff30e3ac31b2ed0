/** Holes of an adapter: each group's shape turned into a profile, each position into a drilling. */
import type { Drilling, Profile, ProfilePoint } from '../model/part.ts';
import { cos, sin, tan } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { ascending, surfaceAbove, withoutRepeats } from './adapter-outside.ts';
import type { AdapterSpec, HoleGroupSpec, HoleShape } from './adapter-spec.ts';

const radians = Math.PI / 180;

/** Height of the face that a group's holes open on: a wheel's screws stand on the step of its seat. */
function faceHeights(spec: AdapterSpec, group: HoleGroupSpec): { low: number; high: number } {
  const seat = group.side === 'wheel' ? spec.wheelSeat : null;
  return {
    low: seat?.face === 'driving' ? seat.height : 0,
    high: spec.thickness - (seat?.face === 'driven' ? seat.height : 0),
  };
}

/** A countersunk hole; the cone ends at the far face where the part is thinner than the cone is deep. */
function countersunk(r: number, head: number, slope: number, through: number): { depth: number; r: number }[] {
  const cone = (head - r) / slope;
  const top = { depth: 0, r: head };
  return cone < through
    ? [top, { depth: cone, r }, { depth: through, r }]
    : [top, { depth: through, r: head - through * slope }];
}

/** Profile from the face the head or screw enters, as depths below that face, deepest last. */
function depths(shape: HoleShape, through: number): { depth: number; r: number }[] {
  if (shape.kind === 'passing') {
    const r = shape.diameter / 2;
    const { head } = shape;
    if (head.kind === 'counterbore')
      return [
        { depth: 0, r: head.diameter / 2 },
        { depth: Math.min(head.depth, through), r: head.diameter / 2 },
        { depth: Math.min(head.depth, through), r },
        { depth: through, r },
      ];
    if (head.kind === 'countersink') return countersunk(r, head.diameter / 2, tan((head.angle / 2) * radians), through);
    return [
      { depth: 0, r },
      { depth: through, r },
    ];
  }
  const r = (shape.kind === 'dowel' ? shape.diameter : shape.tapDrill) / 2;
  const mouth = shape.kind === 'dowel' ? 0 : shape.major / 2 - r;
  const start = [
    { depth: 0, r: r + mouth },
    { depth: mouth, r },
  ];
  if (shape.drillDepth === null) return [...start, { depth: Math.max(through, mouth), r }];
  const point = r / tan((shape.pointAngle / 2) * radians);
  return [...start, { depth: shape.drillDepth, r }, { depth: shape.drillDepth + point, r: 0 }];
}

/** A pocket or drill deeper than the part comes out on the far face: corners beyond it are cut off there. */
function clipped(steps: readonly { depth: number; r: number }[], through: number): { depth: number; r: number }[] {
  const beyond = steps.findIndex(({ depth }) => depth > through);
  if (beyond < 1) return [...steps];
  const a = steps[beyond - 1] as { depth: number; r: number };
  const b = steps[beyond] as { depth: number; r: number };
  const r = a.r + ((b.r - a.r) * (through - a.depth)) / (b.depth - a.depth);
  return [...steps.slice(0, beyond), { depth: through, r }];
}

/** The profile of one hole of a group, z ascending, in adapter coordinates. */
export function holeProfile(spec: AdapterSpec, group: HoleGroupSpec): Profile {
  const { low, high } = faceHeights(spec, group);
  const { shape } = group;
  const entry = shape.kind === 'passing' ? shape.headFace : shape.face;
  const steps = clipped(depths(shape, high - low), high - low);
  const points: ProfilePoint[] =
    entry === 'driving'
      ? steps.map(({ depth, r }) => ({ z: low + depth, r, of: group.id }))
      : steps.reverse().map(({ depth, r }) => ({ z: high - depth, r, of: group.id }));
  return withoutRepeats(ascending(points));
}

/** Where a group's holes stand in adapter coordinates: the driven pattern is turned by the clocking angle. */
export function placedPositions(spec: Pick<AdapterSpec, 'clocking'>, group: HoleGroupSpec): { x: number; y: number }[] {
  if (group.side !== 'driven') return group.positions.map(({ x, y }) => ({ x, y }));
  return group.positions.map((position) => turned(position, spec.clocking));
}

/** A point turned about the axis by an angle in degrees, counter-clockwise seen from the driven side. */
export function turned(point: { readonly x: number; readonly y: number }, degrees: number): { x: number; y: number } {
  const quarter = withinTurn(degrees) / 90;
  // Quarter turns are exact, so that symmetrical patterns stay symmetrical to the last bit.
  if (quarter === 0) return { x: point.x, y: point.y };
  if (quarter === 1) return { x: -point.y, y: point.x };
  if (quarter === 2) return { x: -point.x, y: -point.y };
  if (quarter === 3) return { x: point.y, y: -point.x };
  const c = cos(degrees * radians);
  const s = sin(degrees * radians);
  return { x: point.x * c - point.y * s, y: point.x * s + point.y * c };
}

/**
 * A profile whose open ends meet the body's surface at other heights than its own: drawn out with the radius of its end where metal
 * stands over the face (a spigot, a raised ring), cut off where the body is turned down.
 */
function meeting(profile: Profile, low: number, high: number): Profile {
  const [first, last] = [profile[0], profile[profile.length - 1]] as [ProfilePoint, ProfilePoint];
  if (first.z === low && last.z === high) return profile;
  const between = (a: ProfilePoint, b: ProfilePoint, z: number): ProfilePoint => {
    return { ...a, z, r: a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z) };
  };
  const points = profile.flatMap((point, i): ProfilePoint[] => {
    const next = profile[i + 1];
    const cuts = [low, high].filter((z) => next && point.z < z && z < next.z);
    const kept = point.z >= low && point.z <= high ? [point] : [];
    return [...kept, ...cuts.map((z) => between(point, next as ProfilePoint, z))];
  });
  return withoutRepeats([
    ...(low < first.z ? [{ ...first, z: low }] : []),
    ...points,
    ...(high > last.z ? [{ ...last, z: high }] : []),
  ]);
}

/**
 * All drillings of a group. Depths count from the face; where the body's surface lies elsewhere under the whole hole, the hole starts
 * or ends there.
 */
export function groupDrillings(spec: AdapterSpec, group: HoleGroupSpec): Drilling[] {
  const profile = holeProfile(spec, group);
  const [first, last] = [profile[0], profile[profile.length - 1]] as [ProfilePoint, ProfilePoint];
  // Holes of one shape share one profile, so that whoever compares shapes need not look inside.
  const known = new Map<string, Profile>();
  return placedPositions(spec, group).map(({ x, y }, i) => {
    const offset = Math.hypot(x, y);
    const surface = (side: 'driving' | 'driven', r: number) =>
      group.side === 'wheel' && spec.wheelSeat?.face === side ? null : surfaceAbove(spec, side, offset - r, offset + r);
    // A blind end has no surface to meet.
    const [below, above] = [
      first.r > 0 ? surface('driving', first.r) : null,
      last.r > 0 ? surface('driven', last.r) : null,
    ];
    const low = below === null ? first.z : 0 - below;
    const high = above === null ? last.z : spec.thickness + above;
    const key = `${low} ${high}`;
    const own = known.get(key) ?? (low < high ? meeting(profile, low, high) : profile);
    known.set(key, own);
    return { id: `${group.id}-${i + 1}`, feature: group.id, x, y, profile: own };
  });
}
