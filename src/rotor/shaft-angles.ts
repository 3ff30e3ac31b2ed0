/** The joints of the line: angles, planes, unevenness with its doubt, slips of sign, and what happens as the axle travels. */
import {
  angleFor,
  jointAngles,
  jointPlanes,
  residualAngle,
  shaftUnevenness,
  type Train,
} from '../formulas/joint-train.ts';
import { directionOf, type ShaftReading } from '../formulas/shaft-direction.ts';
import { exactAcceleration } from '../formulas/train-motion.ts';
import { type PlacedTrain, trainOf, travelled } from '../formulas/train-moves.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { placedLine, studyFit } from './shaft-fit.ts';
import { type JointWithShaft, readAcross, type ShaftLine, shaftLine } from './shaft-line.ts';

/** Limits that hold for the line, rad/s2. */
export interface AngleLimits {
  readonly torsional: number;
  readonly inertial: number;
}

/** The line at one height of the axle. */
export interface Stance {
  readonly what: 'ride height' | 'full bump' | 'full droop';
  /** How far the axle is up from ride height, mm. */
  readonly up: number;
  readonly train: Train;
  readonly angles: readonly number[];
  /** Equivalent angle of the whole train, degrees. */
  readonly residual: number;
}

/** A reading whose sign, turned over, would make the train run evenly. */
export interface SignSlip {
  readonly shaft: number;
  readonly which: 'side' | 'plan';
  readonly residual: number;
}

export interface AngleStudy {
  readonly line: ShaftLine;
  readonly limits: AngleLimits;
  /** rpm; null where the job gives none. */
  readonly speed: number | null;
  readonly angles: readonly number[];
  readonly planes: readonly number[];
  /** Half-widths of doubt: of each joint's angle, degrees, and of the residual, as an equivalent angle squared, square degrees. */
  readonly angleDoubts: readonly number[];
  readonly residual: number;
  readonly residualDoubt: number;
  /** Unevenness of each shaft as an equivalent angle, degrees, counted from the evenly turning first shaft and from the last. */
  readonly unevenness: ReturnType<typeof shaftUnevenness>;
  /** Greatest acceleration of the last shaft by the exact kinematics at `speed`, rad/s2; null without a speed. */
  readonly exact: number | null;
  readonly slip: SignSlip | null;
  /** The line set out in space; null where lengths are missing. */
  readonly placed: PlacedTrain | null;
  /** Ride height, and bump and droop where lengths and travel are known. */
  readonly stances: readonly Stance[];
}

const trainWith = (line: ShaftLine, readings: readonly ShaftReading[]): Train => ({
  ...line.train,
  shafts: readings.map(directionOf),
});

/** Doubts of what is worked out from the readings: every reading moved by its own doubt, what that changes added as squares. */
function doubtsOf(line: ShaftLine) {
  const { readings, doubts, train } = line;
  const [angles, residual] = [jointAngles(train), residualAngle(train) ** 2];
  const sums = angles.map(() => 0);
  let ofResidual = 0;
  readings.forEach((_, shaft) => {
    for (const which of ['side', 'plan'] as const) {
      const by = (doubts[shaft] as ShaftReading)[which];
      if (by === 0) continue;
      const ways = [by, -by].map((step) =>
        trainWith(
          line,
          readings.map((reading, i) => (i === shaft ? { ...reading, [which]: reading[which] + step } : reading)),
        ),
      );
      const most = (change: (moved: Train) => number) => Math.max(...ways.map((moved) => Math.abs(change(moved))));
      angles.forEach((angle, joint) => {
        sums[joint] = (sums[joint] as number) + most((moved) => (jointAngles(moved)[joint] as number) - angle) ** 2;
      });
      ofResidual += most((moved) => residualAngle(moved) ** 2 - residual) ** 2;
    }
  });
  return { angleDoubts: sums.map(Math.sqrt), residualDoubt: Math.sqrt(ofResidual) };
}

/** The sign that, turned over, leaves least; null unless it leaves less than a quarter of the limit where now it is passed. */
function signSlip(line: ShaftLine, limit: number): SignSlip | null {
  if (residualAngle(line.train) <= limit || line.fromPoints) return null;
  const tried = line.readings.flatMap((own, shaft) =>
    (['side', 'plan'] as const).flatMap((which) => {
      if (own[which] === 0) return [];
      const turned = line.readings.map((reading, i) => (i === shaft ? { ...own, [which]: -own[which] } : reading));
      return [{ shaft, which, residual: residualAngle(trainWith(line, turned)) }];
    }),
  );
  const [best] = tried.sort((a, b) => a.residual - b.residual);
  return best && best.residual < limit / 2 ? best : null;
}

const stance = (what: Stance['what'], up: number, train: Train): Stance => ({
  what,
  up,
  train,
  angles: jointAngles(train),
  residual: residualAngle(train),
});

/** The train at bump and droop, where they can be worked out. */
export function trainsOfTravel(joint: JointWithShaft, placed: PlacedTrain): Pick<Stance, 'what' | 'up' | 'train'>[] {
  const travel = joint.job.shaft?.travel;
  if (!travel) return [];
  const path = { arm: travel.arm ?? 0, pivot: travel.pivot ?? null };
  const ends = [
    ['full bump', travel.bump],
    ['full droop', -travel.droop],
  ] as const;
  return ends.flatMap(([what, up]) => {
    const there = up === 0 ? null : travelled(placed, up, path);
    return there ? [{ what, up, train: trainOf(there) }] : [];
  });
}

/** The line at bump and droop, where they can be worked out. */
export const stancesOf = (joint: JointWithShaft, placed: PlacedTrain): Stance[] =>
  trainsOfTravel(joint, placed).map(({ what, up, train }) => stance(what, up, train));

/** Equivalent angle up to which a train counts as even where no speed is known, degrees: the 3 degree rule. Source: two joint makers. */
export const evenAngle = 3;

/** What the job tells of its joint angles; null where it gives none, or where a reading was taken across a shaft. */
export function studyAngles(joint: JointWithShaft): AngleStudy | null {
  const line = shaftLine(joint);
  const given = joint.job.shaft?.angles;
  if (!line || !given || readAcross(line).length > 0) return null;
  const limits = {
    torsional: given.torsional ?? shaftRule('torsional').limit,
    inertial: given.inertial ?? shaftRule('inertial').limit,
  };
  const speed = joint.job.duty?.speed ?? null;
  const { train } = line;
  const fit = studyFit(joint);
  const placed = placedLine(line, fit?.ok ? fit.centres : null);
  const limit = speed === null ? evenAngle : angleFor(speed, limits.torsional);
  return {
    line,
    limits,
    speed,
    angles: jointAngles(train),
    planes: jointPlanes(train),
    ...doubtsOf(line),
    residual: residualAngle(train),
    unevenness: shaftUnevenness(train),
    exact: speed === null ? null : exactAcceleration(train, speed),
    slip: signSlip(line, limit),
    placed,
    stances: [stance('ride height', 0, train), ...(placed ? stancesOf(joint, placed) : [])],
  };
}
