/** The shafts of the line as the job gives them: directions, joints, lengths, names; and which of them the adapter and the wheel turn with. */
import type { Train, TrainJoint } from '../formulas/joint-train.ts';
import { directionOf, readingOf, type ShaftReading } from '../formulas/shaft-direction.ts';
import { lengthOf, less, unit, type Vector } from '../formulas/vectors.ts';
import type { Joint } from '../job/joint.ts';
import type { JobInput } from '../job/schema.ts';
import type { AnglesInput } from '../job/schema-shaft-angles.ts';
import { shaftRule } from '../standards/shaft-practice.ts';

/** The part of a joint that its shafts are worked out from. */
export interface JointWithShaft {
  readonly job: Pick<JobInput, 'shaft' | 'duty'>;
  readonly adapterSpec: Pick<Joint['adapterSpec'], 'thickness'>;
  readonly wheel: Joint['wheel'];
}

/** The line of shafts. Lists run from the driving end; lengths mm, angles degrees. */
export interface ShaftLine {
  readonly train: Train;
  readonly names: readonly string[];
  readonly readings: readonly ShaftReading[];
  /** Half-width of the doubt of each shaft's side and plan angle; a plan angle that was left out has none. */
  readonly doubts: readonly ShaftReading[];
  /** Joint centre to joint centre of each shaft; null where it is not known, and for the first and the last shaft. */
  readonly lengths: readonly (number | null)[];
  /** Number of the shaft that the adapter and its wheel turn with, and of the one that is bolted to the adapter; counted from 0. */
  readonly adapterOn: number;
  readonly boltedTo: number;
  readonly fromPoints: boolean;
}

/** What a shaft is called where the job does not name it. */
function nameOf(index: number, count: number): string {
  if (index === 0) return 'driving shaft';
  if (index === count - 1) return 'driven shaft';
  return count === 3 ? 'shaft' : `shaft ${index}`;
}

function jointsOf(angles: AnglesInput, count: number): TrainJoint[] {
  return Array.from({ length: count - 1 }, (_, i) => {
    const given = angles.joints?.[i];
    return { kind: given?.kind ?? 'universal', yokes: given?.yokes ?? 0 };
  });
}

/** The line of a job; null where the job does not give one. */
export function shaftLine({ job }: Pick<JointWithShaft, 'job'>): ShaftLine | null {
  const angles = job.shaft?.angles;
  if (!job.shaft || !angles) return null;
  const { points, line = [] } = angles;
  const sideDoubt = angles.doubt ?? shaftRule('inclinometer').limit;
  const stretches = points?.slice(1).map((point, i) => less(point, points[i] as Vector));
  const readings: ShaftReading[] = stretches
    ? stretches.map(readingOf)
    : line.map(({ side = 0, plan = 0 }) => ({ side, plan }));
  const count = readings.length;
  const doubts = readings.map((_, i) => ({
    side: sideDoubt,
    plan: stretches ? sideDoubt : line[i]?.plan === undefined ? 0 : Math.max(sideDoubt, shaftRule('plan').limit),
  }));
  const boltedTo = job.shaft.bolts_to === 'driven' ? 1 : Math.max(0, count - 2);
  const isEnd = (i: number) => i === 0 || i === count - 1;
  const lengths = readings.map((_, i) => {
    if (isEnd(i)) return null;
    if (stretches) return lengthOf(stretches[i] as Vector);
    return line[i]?.length ?? (i === boltedTo ? (job.shaft?.tube?.length ?? null) : null);
  });
  return {
    train: {
      shafts: stretches ? stretches.map(unit) : readings.map(directionOf),
      joints: jointsOf(angles, count),
    },
    names: readings.map((_, i) => line[i]?.name ?? nameOf(i, count)),
    readings,
    doubts,
    lengths,
    adapterOn: job.shaft.bolts_to === 'driven' ? 0 : count - 1,
    boltedTo,
    fromPoints: stretches !== undefined,
  };
}

/** A side angle beyond this is no propeller shaft's, degrees: it was read across the shaft. */
const steepest = 45;

/** Shafts whose side angle looks like 90 less the angle: read on the flange's face. Numbers from 0. */
export function readAcross({ readings }: ShaftLine): number[] {
  return readings.flatMap(({ side, plan }, i) => (Math.abs(side) > steepest || Math.abs(plan) > steepest ? [i] : []));
}
