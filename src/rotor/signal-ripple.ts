/** How much the speed that the wheel tells swings against that of the shaft that is meant. */
import { speedRange } from '../formulas/train-motion.ts';
import type { AngleStudy } from './shaft-angles.ts';
import type { JointWithShaft } from './shaft-line.ts';

export interface Ripple {
  /** The shaft that the wheel turns with, and the one whose speed is wanted. */
  readonly on: string;
  readonly of: string;
  /** Whether the job chose it, or it was taken to be the far end. */
  readonly chosen: boolean;
  /** Greatest less least reading over a turn, as a share of the true speed. */
  readonly swing: number;
  /** Universal joints between the two. */
  readonly joints: number;
}

/** The ripple; null where the job has no wheel. */
export function rippleOf({ job, wheel }: Pick<JointWithShaft, 'job' | 'wheel'>, { line }: AngleStudy): Ripple | null {
  if (wheel === null) return null;
  const { train, names, adapterOn } = line;
  const asked = job.shaft?.angles?.measures;
  const meant = (asked ?? names.length) - 1;
  const [from, to] = [Math.min(adapterOn, meant), Math.max(adapterOn, meant)];
  const { least, most } = speedRange(train, adapterOn, meant);
  return {
    on: names[adapterOn] as string,
    of: names[meant] as string,
    chosen: asked !== undefined,
    swing: most - least,
    joints: train.joints.slice(from, to).filter(({ kind }) => kind === 'universal').length,
  };
}
