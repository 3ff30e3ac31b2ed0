/**
 * How a train of joints really turns, fork by fork, in space: no small angles.
 *
 * A universal joint's cross holds two pins square to each other: p on the input fork (square to the shaft a), q on the output fork (square to
 * the shaft b). So q = b x p, made one long, and from p.q = 0 at all times the speeds follow: w_b / w_a = -((a x p).q) / (p.(b x q)).
 * A constant-velocity joint turns its output fork as if the bend were straightened out.
 * Source: rigid-body kinematics.
 */
import { sin, tan } from '../units/trig.ts';
import type { Train } from './joint-train.ts';
import { angleBetween, cross, dot, lengthOf, turnedAbout, unit, type Vector } from './vectors.ts';

/** Some direction square to a shaft: the starting place of its fork. */
function squareTo(a: Vector): Vector {
  const beside: Vector = Math.abs(a[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0];
  return unit(cross(beside, a));
}

/** A direction carried round a bend from one shaft to the next by the shortest turn. */
function carried(p: Vector, a: Vector, b: Vector): Vector {
  const axis = cross(a, b);
  return lengthOf(axis) < 1e-12 ? p : turnedAbout(p, unit(axis), angleBetween(a, b));
}

/**
 * Speeds of all shafts as multiples of the first one's, with the first one turned to an angle.
 * @param turn of the first shaft, degrees, from an arbitrary but fixed start
 */
export function speedsAt({ shafts, joints }: Train, turn: number): number[] {
  const first = shafts[0] as Vector;
  let fork = turnedAbout(squareTo(first), first, turn);
  let speed = 1;
  let isFirst = true;
  const speeds = [speed];
  joints.forEach(({ kind, yokes }, i) => {
    const [a, b] = [shafts[i] as Vector, shafts[i + 1] as Vector];
    if (kind === 'constant velocity') {
      fork = carried(fork, a, b);
    } else {
      const p = isFirst ? fork : turnedAbout(fork, a, yokes);
      isFirst = false;
      const q = unit(cross(b, p));
      speed *= -dot(cross(a, p), q) / dot(p, cross(b, q));
      fork = q;
    }
    speeds.push(speed);
  });
  return speeds;
}

/** Stations round a turn: fine enough that an extreme of a twice-per-turn ripple is found to a ten-thousandth of it. */
const stations = 360;

/** Least and greatest speed of one shaft as a multiple of another's, over a turn. Shafts are counted from 0. */
export function speedRange(
  train: Train,
  of: number,
  against: number,
): { readonly least: number; readonly most: number } {
  const ratios = Array.from({ length: stations }, (_, k) => {
    const speeds = speedsAt(train, (360 * k) / stations);
    return (speeds[of] as number) / (speeds[against] as number);
  });
  return { least: Math.min(...ratios), most: Math.max(...ratios) };
}

/**
 * Greatest angular acceleration of the last shaft while the first turns evenly, rad/s2. Central differences over a quarter of a degree.
 * @param speed rpm
 */
export function exactAcceleration(train: Train, speed: number): number {
  const step = 0.125;
  const omega = (speed * Math.PI) / 30;
  const last = train.shafts.length - 1;
  const at = (turn: number) => speedsAt(train, turn)[last] as number;
  const slopes = Array.from({ length: stations }, (_, k) => {
    const turn = (360 * k) / stations;
    return Math.abs(at(turn + step) - at(turn - step)) / ((2 * step * Math.PI) / 180);
  });
  return omega ** 2 * Math.max(...slopes);
}

/**
 * Swing of the speed behind one universal joint, greatest less least, as a share: 1/cos b - cos b = tan b sin b.
 * @param degrees joint angle, under 90
 * Source: a joint maker's technical annex.
 */
export function speedSwing(degrees: number): number {
  const b = (degrees * Math.PI) / 180;
  return tan(b) * sin(b);
}
