/** The list of all checks, and how they are run. */
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { balance } from './balance.ts';
import type { Check } from './check.ts';
import { clocking } from './clocking.ts';
import { concentricity } from './concentricity.ts';
import { headRoom } from './head-room.ts';
import { heads } from './heads.ts';
import { heat } from './heat.ts';
import { holes } from './holes-clear.ts';
import { notCovered } from './not-covered.ts';
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
import { webs } from './webs.ts';
import { wheel } from './wheel.ts';

export const checks: readonly Check[] = [
  webs,
  clocking,
  thickness,
  heads,
  headRoom,
  registers,
  heat,
  seating,
  screws,
  tightening,
  toolRoom,
  holes,
  concentricity,
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
