/** What the joints do at each speed: the table of the angle sheet. */
import { accelerationOf } from '../formulas/joint-train.ts';
import type { AngleStudy } from './shaft-angles.ts';
import type { ShimStudy } from './shaft-shims.ts';

/** One speed of the table, rpm, and accelerations at it, rad/s2. */
export interface SpeedRow {
  readonly rpm: number;
  readonly train: number;
  /** The whole train with the shims in; null where none are proposed. */
  readonly shimmed: number | null;
  /** Each universal joint by itself. */
  readonly joints: readonly number[];
}

/** Rows of the speed table. */
const rows = 8;
/** Highest speed of the table where the job gives none, rpm. */
const usualSpeed = 4000;

/** The table, from an eighth of the highest speed to the highest. `shims` null: nothing to shim. */
export function speedRows(study: AngleStudy, shims: ShimStudy | null): SpeedRow[] {
  const top = study.speed ?? usualSpeed;
  const kinds = study.line.train.joints.map(({ kind }) => kind);
  return Array.from({ length: rows }, (_, i): SpeedRow => {
    const rpm = (top * (i + 1)) / rows;
    return {
      rpm,
      train: accelerationOf(rpm, study.residual),
      shimmed: shims === null ? null : accelerationOf(rpm, shims.after),
      joints: study.angles.flatMap((angle, k) => (kinds[k] === 'universal' ? [accelerationOf(rpm, angle)] : [])),
    };
  });
}
