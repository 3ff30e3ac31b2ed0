/** The list of all checks, and how they are run. */
import { asBuilt } from '../inspect/as-built.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { balance } from './balance.ts';
import { boltShear } from './bolt-shear.ts';
import { builtFindings } from './built.ts';
import { burst } from './burst.ts';
import { chance } from './chances.ts';
import type { Check } from './check.ts';
import { lostPreload } from './clamp-force.ts';
import { clocking } from './clocking.ts';
import { concentricity } from './concentricity.ts';
import { dowels } from './dowels.ts';
import { dutyTorque } from './duty-torque.ts';
import { flangeBending } from './flange-bending.ts';
import { gripCheck } from './grip.ts';
import { headPressure } from './head-pressure.ts';
import { headRoom } from './head-room.ts';
import { heads } from './heads.ts';
import { heat } from './heat.ts';
import { holes } from './holes-clear.ts';
import { jointBalance } from './joint-unbalance.ts';
import { notCovered } from './not-covered.ts';
import { phasing } from './phasing.ts';
import { preloadLoss } from './preload-loss.ts';
import { print } from './print.ts';
import { provenance } from './provenance.ts';
import { registers } from './registers.ts';
import { screws } from './screws.ts';
import { seating } from './seating.ts';
import { sheet } from './sheet.ts';
import { teeth } from './teeth.ts';
import { thickness } from './thickness.ts';
import { tightening } from './tightening.ts';
import { toolRoom } from './tightening-tools.ts';
import { torsion } from './torsion.ts';
import { webs } from './webs.ts';
import { wheel } from './wheel.ts';

export const checks: readonly Check[] = [
  webs,
  clocking,
  thickness,
  heads,
  headRoom,
  registers,
  dowels,
  heat,
  seating,
  screws,
  tightening,
  toolRoom,
  dutyTorque,
  headPressure,
  preloadLoss,
  gripCheck(lostPreload),
  boltShear,
  torsion,
  flangeBending,
  burst,
  holes,
  concentricity,
  jointBalance,
  chance,
  phasing,
  balance,
  teeth,
  wheel,
  sheet,
  print,
  provenance,
  notCovered,
];

/** Findings of every check, passes included, in the order of the list. Ranking them is the report's business. */
export function validate(joint: Joint): Finding[] {
  return checks.flatMap((check) => [...check.run(joint)]);
}

/**
 * Findings of a joint, and where its parts were measured: the same checks with the measured numbers in place of the drawn ones, and
 * what to do with the parts.
 */
export function validateWithBuilt(joint: Joint): Finding[] {
  const drawn = validate(joint);
  const built = asBuilt(joint);
  if (!built) return drawn;
  const real = validate(built);
  return [...real, ...builtFindings(joint, built, drawn, real)];
}

/** The same without the slow checks, to compare many designs by: none of those tells two designs apart that the others do not. */
export function validateQuickly(joint: Joint): Finding[] {
  return checks.flatMap((check) => (check.isSlow ? [] : [...check.run(joint)]));
}
