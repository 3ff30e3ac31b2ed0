/** What every report says about safety, and what it does not claim. */

/** The safety note: one sentence an entry. */
export const safetyNote: readonly string[] = [
  'Rotating driveline parts can kill. Never run this joint without a guard, and keep everybody out of its plane of rotation.',
  'The printed mock-up is for fitting only. It is never driven, not even by hand on a running machine.',
  'These numbers support the judgement of a licensed engineer and the rules where you live. They do not replace either.',
  'Nothing here is proof of strength, of fatigue life or of what happens in a crash.',
];

/** What this version does not look at, whatever the job says. */
export const standingLimits: readonly string[] = [
  'The strength of the joint is not assessed: slip under torque, shear, pressure under the heads, fatigue and burst. Threads are held against the strength of the screw only.',
  'Every size is taken from the job as typed. A wrong reading gives a wrong part with a good report.',
  'Pictures are drawn from the same numbers as the parts, but they are not shop drawings.',
];
