/** What this version does not judge, said plainly: a pass elsewhere must never be read as a proof of strength. */
import { type Check, notAssessed } from './check.ts';

export const notCovered: Check = {
  id: 'not-covered',
  title: 'What is not judged',
  source: 'this program',
  run: ({ job }) => [
    notAssessed({
      code: 'joint-strength',
      feature: 'body',
      title: 'strength of the joint',
      why: `Whether clamp friction and screws carry ${job.duty?.torque === undefined ? 'the torque' : `${job.duty.torque.toFixed(0)} N.m`} is not judged by this version: no slip, shear, fatigue or burst sum is made.`,
      missing: `${job.duty?.torque === undefined ? 'Give duty.torque, and have' : 'Have'} the bolted joint sized by someone licensed to do so before metal is driven.`,
      source: 'admitted limit of this program',
    }),
  ],
};
