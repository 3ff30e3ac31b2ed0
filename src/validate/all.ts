/** The list of all checks, and how they are run. */
import { asBuilt } from '../inspect/as-built.ts';
import { characteristicsOf } from '../inspect/characteristics.ts';
import { isMendable, isSlip, type Judgement } from '../inspect/disposition.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { assemblyOrder } from './assembly-order.ts';
import { balance } from './balance.ts';
import { boltShear } from './bolt-shear.ts';
import { bracketPlace } from './bracket-place.ts';
import { bracketRoom } from './bracket-room.ts';
import { bracketSheet } from './bracket-sheet.ts';
import { bracketVibration } from './bracket-vibration.ts';
import { builtFindings, judgeBuilt, newFailures } from './built.ts';
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
import { headsOverHoles } from './heads-over-holes.ts';
import { heat } from './heat.ts';
import { holes } from './holes-clear.ts';
import { jointAngleCheck } from './joint-angles.ts';
import { jointBalance } from './joint-unbalance.ts';
import { notCovered } from './not-covered.ts';
import { phasing } from './phasing.ts';
import { preloadLoss } from './preload-loss.ts';
import { print } from './print.ts';
import { provenance } from './provenance.ts';
import { reading } from './reading.ts';
import { registers } from './registers.ts';
import { screws } from './screws.ts';
import { seating } from './seating.ts';
import { sensorGap } from './sensor-gap.ts';
import { sensorSpeed } from './sensor-speed.ts';
import { shaftLength } from './shaft-length.ts';
import { shaftSpeed } from './shaft-speed.ts';
import { shaftTorsion } from './shaft-torsion.ts';
import { sheet } from './sheet.ts';
import { signal } from './signal.ts';
import { teeth } from './teeth.ts';
import { thickness } from './thickness.ts';
import { threadInFlange } from './thread-in-flange.ts';
import { tightening } from './tightening.ts';
import { toolRoom } from './tightening-tools.ts';
import { torsion } from './torsion.ts';
import { webs } from './webs.ts';
import { wheel } from './wheel.ts';
import { wheelSize } from './wheel-size.ts';

export const checks: readonly Check[] = [
  webs,
  clocking,
  thickness,
  heads,
  headRoom,
  headsOverHoles,
  registers,
  dowels,
  heat,
  seating,
  screws,
  threadInFlange,
  tightening,
  toolRoom,
  assemblyOrder,
  dutyTorque,
  headPressure,
  preloadLoss,
  gripCheck(lostPreload),
  boltShear,
  torsion,
  flangeBending,
  burst,
  shaftSpeed,
  shaftTorsion,
  holes,
  concentricity,
  jointBalance,
  chance,
  phasing,
  balance,
  teeth,
  sensorGap,
  sensorSpeed,
  reading,
  wheel,
  wheelSize,
  signal,
  sheet,
  bracketPlace,
  bracketRoom,
  bracketSheet,
  bracketVibration,
  shaftLength,
  jointAngleCheck,
  print,
  provenance,
  notCovered,
];

/** Findings of every check, passes included, in the order of the list. Ranking them is the report's business. */
export function validate(joint: Joint): Finding[] {
  return checks.flatMap((check) => check.run(joint));
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
  return [...real, ...builtFindings(built, newFailures(drawn, real), judgementsOf(joint, drawn, real))];
}

/**
 * Every size of the finished parts, judged. What no work can mend is scrap only where it still fails a check when everything else has
 * been reworked.
 * @param drawn findings of the joint as designed
 * @param real findings of the joint as built
 */
export function judgementsOf(joint: Joint, drawn: readonly Finding[], real: readonly Finding[]): Judgement[] {
  const reworked = characteristicsOf(joint).some(isMendable)
    ? asBuilt(joint, (size) => isSlip(size) || isMendable(size))
    : null;
  return judgeBuilt(joint, newFailures(drawn, reworked ? validate(reworked) : real));
}

/** The same without the slow checks, to compare many designs by: none of those tells two designs apart that the others do not. */
export function validateQuickly(joint: Joint): Finding[] {
  return checks.flatMap((check) => (check.isSlow ? [] : check.run(joint)));
}
