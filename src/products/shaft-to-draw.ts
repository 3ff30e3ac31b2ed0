/** The shaft and its line, as their pictures need them. */
import type { LineToDraw } from '../drawing/line-view.ts';
import type { ShaftToDraw } from '../drawing/shaft-view.ts';
import type { Joint } from '../job/joint.ts';
import { studyAngles } from '../rotor/shaft-angles.ts';
import { studyFit } from '../rotor/shaft-fit.ts';

/** The shaft to be made; null where its length is not known. */
export function shaftToDraw(joint: Joint): ShaftToDraw | null {
  const fit = studyFit(joint);
  const { shaft, units } = joint.job;
  if (!fit?.ok || !shaft) return null;
  const side = shaft.bolts_to;
  return {
    id: 'shaft',
    units,
    faces: fit.faces,
    home: fit.ordered?.compressed ?? null,
    out: fit.ordered?.extended ?? null,
    ends: shaft.ends ? { a: shaft.ends.adapter, b: shaft.ends.far } : null,
    flange: joint[side].outside.value,
    tube: shaft.tube?.outside ?? null,
    at: { a: 'on the adapter', b: 'at the far end' },
  };
}

/** The line of shafts; null where no angles are known. */
export function lineToDraw(joint: Joint): LineToDraw | null {
  const study = studyAngles(joint);
  if (!study) return null;
  const { line, angles } = study;
  const fit = studyFit(joint);
  const own = fit?.ok ? fit.centres : null;
  return {
    id: 'shaft-line',
    shafts: line.readings.map(({ side, plan }, i) => ({
      name: line.names[i] as string,
      side,
      plan,
      length: line.lengths[i] ?? (i === line.boltedTo ? own : null),
      direction: line.train.shafts[i] as readonly [number, number, number],
    })),
    joints: line.train.joints.map(({ kind }, i) => ({ angle: angles[i] as number, isEven: kind !== 'universal' })),
  };
}
