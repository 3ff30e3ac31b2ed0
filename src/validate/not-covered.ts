/** What this version does not judge, said plainly: a pass elsewhere must never be read as a proof of strength. */
import { type Check, notAssessed } from './check.ts';
import { torqueInWords, torqueOf } from './duty-torque.ts';

export const notCovered: Check = {
  id: 'not-covered',
  title: 'What is not judged',
  source: 'this program',
  run: (joint) => {
    const torque = torqueOf(joint);
    const sized = torque ? `The sums hold for a rare peak of ${torqueInWords(torque)}` : 'No torque is known';
    return [
      notAssessed({
        code: 'joint-strength',
        feature: 'body',
        title: 'strength of the joint beyond these sums',
        why: `${sized}. Fatigue under millions of smaller loads, crashes, torque through the flanges themselves, and the shaft and joints beyond them are not judged. The wheel's screws carry only its own small inertia and are left out.`,
        missing: `${torque ? 'Have' : 'Give duty.torque, and have'} the bolted joint sized by someone licensed to do so before metal is driven.`,
        source: 'admitted limit of this program',
      }),
    ];
  },
};
