/** What every report says about safety, and what it does not claim. */

/** The safety note: one sentence an entry. */
export const safetyNote: readonly string[] = [
  'Rotating driveline parts can kill. Never run this joint without a guard, and keep everybody out of its plane of rotation.',
  'The printed mock-up is for fitting only. It is never driven, not even by hand on a running machine.',
  'These numbers support the judgement of a licensed engineer and the rules where you live. They do not replace either.',
  'A pass means that these sums hold for the sizes, the loads and the screws stated here. It is no proof of fatigue life and none of what happens in a crash.',
  'Use screws and nuts of the class stated, new ones, with oil or thread lock as listed. Tighten cross-wise in three steps, and again after the first run.',
  'Raise the speed in steps, from far off, and stop at the first shake. Hang a retention loop round the shaft, so that a broken joint cannot whip.',
];

/** What this version does not look at, whatever the job says. */
export const standingLimits: readonly string[] = [
  'Strength is judged for the stated torque at rest: slip, shear, pressure, preload, torsion, burst. Fatigue, impact, and the flanges, shaft and joints that were there before are not.',
  'Every size is taken from the job as typed. A wrong reading gives a wrong part with a good report.',
  'Pictures are drawn from the same numbers as the parts, but they are not shop drawings.',
];
