/** What stands beside every answer of balancing in place. */

/** Short sentences for somebody about to turn a shaft under a vehicle. Common practice of workshop safety. */
export const balanceSafety: readonly string[] = [
  'Safety: vehicle level on stands, where its maker says; never on a jack alone. Driven wheels free or off, axle held at its usual height so that the joints stand as they do on the road. Nobody under the vehicle, beside the shaft or in its plane while it turns; guard and retention loop fitted.',
  'Safety: with one driven wheel held, a differential turns the other twice as fast. Keep the wheels below what tyres and brakes are made for.',
  'Safety: standstill, engine off and key out before a hand goes near the shaft. Pull at every weight and clamp before each run, and tighten again after the first minute: what comes off flies. Tape and magnets hold no weight.',
  'Band clamps are for small corrections and low speeds; what is to stay is welded or bolted on by a shaft shop. If more than both clamps is wanted, look for a bent tube, play, a worn joint or a shifted register first.',
  'One plane only: read the other end of the shaft too. If that grows while this one falls, the shaft needs two planes, on a machine.',
  'Licensed practice and local rules come first.',
];

/** How angles are counted, and what must stay the same from run to run. */
export const balanceAngles: readonly string[] = [
  'Weights: degrees counter-clockwise from a paint mark on the shaft, looking always at the same end. Same speed, same gear, same place of the pickup in every run; same plane and radius for every weight.',
  'Take the trial weight off before the correction goes on, unless the line for a weight that stays is used.',
];
