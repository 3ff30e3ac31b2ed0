/** Bodies put together, and the axis that the whole would turn about by itself. mm, g, g.mm2. */

import type { MassProperties } from '../model/mass.ts';
import { hypot } from '../units/hypot.ts';
import { atan2 } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';

/** A body, or with sign -1 a hole that is taken away. */
export interface SignedBody {
  readonly mass: MassProperties;
  readonly sign?: 1 | -1;
}

type Inertia = MassProperties['inertia'];
type Triple = readonly [number, number, number];

const zero: Inertia = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };

function added(a: Inertia, b: Inertia, factor: number): Inertia {
  return {
    xx: a.xx + factor * b.xx,
    yy: a.yy + factor * b.yy,
    zz: a.zz + factor * b.zz,
    xy: a.xy + factor * b.xy,
    xz: a.xz + factor * b.xz,
    yz: a.yz + factor * b.yz,
  };
}

/** Inertia of a point of unit mass at an offset: the parallel-axis terms (Steiner). */
function ofPoint([x, y, z]: Triple): Inertia {
  return { xx: y * y + z * z, yy: x * x + z * z, zz: x * x + y * y, xy: x * y, xz: x * z, yz: y * z };
}

/**
 * Mass properties of several bodies in the same coordinates. Source: parallel-axis theorem. Nothing in all: a body without mass at
 * the origin.
 */
export function together(bodies: readonly SignedBody[]): MassProperties {
  let [volume, mass] = [0, 0];
  let first: Triple = [0, 0, 0];
  let about = zero;
  for (const { mass: body, sign = 1 } of bodies) {
    const [x, y, z] = body.centre;
    volume += sign * body.volume;
    mass += sign * body.mass;
    first = [first[0] + sign * body.mass * x, first[1] + sign * body.mass * y, first[2] + sign * body.mass * z];
    about = added(added(about, body.inertia, sign), ofPoint(body.centre), sign * body.mass);
  }
  if (mass === 0) return { volume, mass, centre: [0, 0, 0], inertia: zero };
  const centre: Triple = [first[0] / mass, first[1] / mass, first[2] / mass];
  return { volume, mass, centre, inertia: added(about, ofPoint(centre), -mass) };
}

/** A principal moment, g.mm2, and its axis, a unit arrow. */
export interface PrincipalAxis {
  readonly moment: number;
  readonly axis: Triple;
}

/** Turns until no product of inertia is larger than this share of the largest moment. */
const smallest = 1e-15;

/**
 * Principal moments and axes, smallest first. Source: the Jacobi method of plane rotations (textbook); six sweeps settle any tensor
 * to rounding.
 */
export function principalAxes({
  xx,
  yy,
  zz,
  xy,
  xz,
  yz,
}: Inertia): readonly [PrincipalAxis, PrincipalAxis, PrincipalAxis] {
  const a = [
    [xx, -xy, -xz],
    [-xy, yy, -yz],
    [-xz, -yz, zz],
  ];
  const v = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const at = (m: number[][], i: number, j: number) => (m[i] as number[])[j] as number;
  const set = (m: number[][], i: number, j: number, value: number) => {
    (m[i] as number[])[j] = value;
  };
  const scale = Math.max(xx, yy, zz);
  for (let sweep = 0; sweep < 30; sweep++) {
    const largest = Math.max(Math.abs(at(a, 0, 1)), Math.abs(at(a, 0, 2)), Math.abs(at(a, 1, 2)));
    if (largest <= smallest * scale) break;
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      if (at(a, p, q) === 0) continue;
      const theta = (at(a, q, q) - at(a, p, p)) / (2 * at(a, p, q));
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + hypot(theta, 1));
      const c = 1 / hypot(t, 1);
      const s = t * c;
      for (let k = 0; k < 3; k++) {
        const [kp, kq] = [at(a, k, p), at(a, k, q)];
        set(a, k, p, c * kp - s * kq);
        set(a, k, q, s * kp + c * kq);
      }
      for (let k = 0; k < 3; k++) {
        const [pk, qk] = [at(a, p, k), at(a, q, k)];
        set(a, p, k, c * pk - s * qk);
        set(a, q, k, s * pk + c * qk);
        const [vp, vq] = [at(v, k, p), at(v, k, q)];
        set(v, k, p, c * vp - s * vq);
        set(v, k, q, s * vp + c * vq);
      }
    }
  }
  const list = ([0, 1, 2] as const)
    .map((i) => ({ moment: at(a, i, i), axis: [at(v, 0, i), at(v, 1, i), at(v, 2, i)] as Triple }))
    .sort((one, other) => one.moment - other.moment);
  return list as [PrincipalAxis, PrincipalAxis, PrincipalAxis];
}

/** The principal axis nearest to z: how far it leans, degrees 0 to 90, and towards which angle, degrees 0 up to 360. */
export function axisTilt(inertia: Inertia): { readonly degrees: number; readonly towards: number } {
  const nearest = principalAxes(inertia).reduce((a, b) => (Math.abs(b.axis[2]) > Math.abs(a.axis[2]) ? b : a));
  const [x, y, z] = nearest.axis.map((component) => component * Math.sign(nearest.axis[2] || 1)) as [
    number,
    number,
    number,
  ];
  return { degrees: (atan2(hypot(x, y), z) * 180) / Math.PI, towards: withinTurn((atan2(y, x) * 180) / Math.PI) };
}
