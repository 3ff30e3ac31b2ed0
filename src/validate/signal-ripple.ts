/** What universal joints between the wheel and the shaft that is meant do to the speed that is read. */

import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { AngleStudy } from '../rotor/shaft-angles.ts';
import { rippleOf } from '../rotor/signal-ripple.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { judged } from './check.ts';
import { sourced } from './words.ts';

/** The finding; none where the job has no wheel. */
export function signalRipple(joint: Joint, study: AngleStudy): Finding[] {
  const ripple = rippleOf(joint, study);
  if (!ripple) return [];
  const { on, of, swing, joints, chosen } = ripple;
  const rule = shaftRule('ripple');
  const asked = joint.job.shaft?.angles?.ripple;
  const percent = (share: number) => `${(100 * share).toFixed(2)} %`;
  const teller = `The wheel turns with the ${on}; the speed that is wanted is that of the ${of}${chosen ? '' : ' (taken: the far end; see shaft.angles.measures)'}.`;
  const why =
    joints === 0
      ? `${teller} No joint lies between: it reads true.`
      : `${teller} The ${joints === 1 ? 'joint' : `${joints} joints`} between make it swing by ${percent(swing)}, greatest less least, twice per turn. The mean over a turn is right: count whole turns, or half ones, to be rid of it.`;
  return [
    judged(
      {
        code: 'signal-ripple',
        feature: 'wheel',
        title: 'swing of the speed that is read',
        unit: '%',
        why,
        cure: 'Make the joints run evenly (see train-residual), set the wheel on the shaft that is meant, or average over a whole turn and allow the rest with shaft.angles.ripple.',
        source: sourced(
          asked === undefined
            ? `exact kinematics; limit ${rule.source}`
            : 'exact kinematics; limit as given in the job',
          asked === undefined,
        ),
      },
      100 * swing,
      { limit: 100 * (asked ?? rule.limit), sense: 'at most', worst: 'caution' },
    ),
  ];
}
