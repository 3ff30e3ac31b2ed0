/** The torque that a joint is sized for, from the keys of its duty. */
import { type DesignTorque, designTorque, type EngineChain, type TyreChain } from '../formulas/design-torque.ts';
import type { JobInput } from '../job/schema.ts';
import { applicationFactor } from '../standards/service-factors.ts';
import { must } from '../standards/table.ts';

/** What the torque hangs on. */
export interface WithDuty {
  readonly job: { readonly duty?: JobInput['duty'] };
}

export function engineOf({ job }: WithDuty): EngineChain | undefined {
  const engine = job.duty?.engine;
  return engine && { ...engine, ratios: engine.ratios ?? [] };
}

export function tyreOf({ job }: WithDuty): TyreChain | undefined {
  const tyre = job.duty?.tyre;
  return tyre && { ...tyre, load: tyre.load / 1000 };
}

/** Factor that the job's shock stands for; 1 when it says none. */
function shockOf({ job }: WithDuty): number {
  const shock = job.duty?.shock;
  if (shock === undefined) return 1;
  return typeof shock === 'number' ? shock : must(applicationFactor(shock)).KA;
}

/** True where the torque also works the other way at full strength: a face that slips then slips to and fro. */
export const reverses = ({ job }: WithDuty): boolean => job.duty?.reversing === true;

/** The torque to design with; null when the job gives nothing to find it by. */
export function torqueOf(joint: WithDuty): DesignTorque | null {
  return designTorque({
    given: joint.job.duty?.torque,
    engine: engineOf(joint),
    tyre: tyreOf(joint),
    shock: shockOf(joint),
  });
}
