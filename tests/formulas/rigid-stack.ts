/**
 * Two flanges and an adapter as rigid bodies in space, put together seat on seat, so that the driven axis can be looked up where it
 * ends. It knows frames and planes, and no formula of the joint. mm; angles in degrees, counter-clockwise looking along -z.
 */
export type Vec = readonly [number, number, number];

export const add = (a: Vec, b: Vec): Vec => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const by = (a: Vec, k: number): Vec => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec): Vec => by(a, 1 / Math.hypot(...a));

/** A place and three directions at right angles. */
export interface Frame {
  readonly o: Vec;
  readonly x: Vec;
  readonly y: Vec;
  readonly z: Vec;
}

/** A seat: its middle, three points of its plane, and the body's own x direction laid into the plane. z out of the plane, upwards. */
export function seat(middle: Vec, plane: readonly [Vec, Vec, Vec]): Frame {
  const n = unit(cross(sub(plane[1], plane[0]), sub(plane[2], plane[0])));
  const z = n[2] < 0 ? by(n, -1) : n;
  const x = unit(sub([1, 0, 0], by(z, dot([1, 0, 0], z))));
  return { o: middle, x, y: cross(z, x), z };
}

/** Coordinates in a frame, and back out of it. */
export const into = (f: Frame, p: Vec): Vec => {
  const d = sub(p, f.o);
  return [dot(d, f.x), dot(d, f.y), dot(d, f.z)];
};
export const outOf = (f: Frame, p: Vec): Vec => add(f.o, add(by(f.x, p[0]), add(by(f.y, p[1]), by(f.z, p[2]))));

/** A point turned about z. */
export function spun([x, y, z]: Vec, degrees: number): Vec {
  const a = (degrees * Math.PI) / 180;
  return [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a), z];
}

/** A register's middle off its part's axis, and how high the face stands on a circle of 50 mm radius. */
export interface FlangeBody {
  readonly off: { readonly size: number; readonly angle: number };
  /** Height of the high spot over the middle at 50 mm, and where it is. */
  readonly face: { readonly high: number; readonly angle: number };
}

/** Three points of a face at 50 mm from the axis; `way` 1: a high spot stands up along z. -1: down. */
function facePoints({ face }: FlangeBody, base: number, way: 1 | -1): [Vec, Vec, Vec] {
  const at = (a: number): Vec => {
    const height = face.high * Math.cos(((a - face.angle) * Math.PI) / 180);
    return add(spun([50, 0, 0], a), [0, 0, base + way * height]);
  };
  return [at(0), at(120), at(240)];
}

const middleOf = ({ off }: FlangeBody, z: number): Vec => add(spun([off.size, 0, 0], off.angle), [0, 0, z]);

/**
 * Where points of the driven shaft come to lie in the driving shaft's own frame (its axis along z, its face at z = 0 looking along z).
 * The driven shaft's own frame has its axis along z and its face at z = 0 looking along -z.
 */
export function stacked(
  parts: { driving: FlangeBody; driven: FlangeBody; adapter: FlangeBody; thickness: number },
  turns: { driving: number; driven: number },
): (p: Vec) => Vec {
  const under = seat(middleOf(parts.driving, 0), facePoints(parts.driving, 0, 1));
  const top = seat(middleOf(parts.adapter, parts.thickness), facePoints(parts.adapter, parts.thickness, 1));
  const own = seat(middleOf(parts.driven, 0), facePoints(parts.driven, 0, -1));
  return (p) => {
    const onAdapter = outOf(top, spun(into(own, p), turns.driven));
    return outOf(under, spun(onAdapter, turns.driving));
  };
}
