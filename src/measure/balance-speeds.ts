/** Speeds and first weights of balancing in place: how fast the runs may go, how a run is worked up to, what weight to start with. */
import { centrifugalForce, permissibleUnbalance } from '../formulas/balance.ts';
import { trialMass } from '../formulas/trial-weights.ts';
import { tidy } from './words.ts';

/** Runs stay below this share of the lowest critical speed. Common practice of joint makers' catalogues (0.65 to 0.70). */
export const criticalShare = 0.65;

/** Grades that ISO 21940-11 lists for drive shafts: cardan shafts, and those of cars. mm/s */
export const shaftGrades = [16, 40] as const;

export interface Speeds {
  /** Speed of the runs, rpm. */
  readonly run?: number | undefined;
  readonly duty?: number | undefined;
  readonly critical?: number | undefined;
}

export interface SpeedCap {
  /** Highest speed of a run, rpm; null when nothing was given to set it by. */
  readonly cap: number | null;
  /** Speeds at which to stop rising and look, the run's own speed last; empty when it is not known. */
  readonly steps: readonly number[];
  /** What to say of it; the first is a warning when the run is too fast. */
  readonly words: readonly string[];
}

/** The cap is the lower of the duty speed and the share of the critical speed; the steps are quarters of the run's speed. */
export function speedCap({ run, duty, critical }: Speeds): SpeedCap {
  const limits = [
    ...(duty === undefined ? [] : [{ rpm: duty, why: 'the highest duty speed' }]),
    ...(critical === undefined
      ? []
      : [{ rpm: criticalShare * critical, why: `${100 * criticalShare} % of the critical speed` }]),
  ].sort((a, b) => a.rpm - b.rpm);
  const [lowest] = limits;
  const steps = run === undefined ? [] : [0.25, 0.5, 0.75, 1].map((share) => Math.round(run * share));
  const words: string[] = [];
  if (lowest === undefined)
    words.push('Speed cap: not assessed; give --duty (highest speed in use) and --critical (lowest critical speed).');
  else {
    if (run !== undefined && run > lowest.rpm)
      words.push(`Do not run at ${tidy(run, 0)} rpm: the cap is ${tidy(lowest.rpm, 0)} rpm, ${lowest.why}.`);
    else words.push(`Speed cap: ${tidy(lowest.rpm, 0)} rpm, ${lowest.why}. Never past it.`);
    if (run !== undefined && critical !== undefined && Math.abs(run / critical - 0.5) <= 0.04)
      words.push(
        'The runs are near half the critical speed, where a shaft with joints bends twice a turn: choose another speed.',
      );
    if (critical === undefined) words.push('The critical speed was not given: --critical may set a lower cap.');
  }
  words.push(
    steps.length === 0
      ? 'Go up in four equal steps (give --speed for the numbers); stop at once when the shake grows out of step with the speed.'
      : `Go up in steps, ${steps.join(', ')} rpm; stop at once when the shake grows out of step with the speed.`,
  );
  return { cap: lowest?.rpm ?? null, steps, words };
}

export interface FirstWeight {
  /** Pulls with a tenth of the load that the end carries, g: start with this. */
  readonly start: number;
  /** Makes the unbalance that G 16 allows that end, g: no heavier than this. */
  readonly most: number;
  readonly words: readonly string[];
}

/**
 * A first trial weight for one end of a shaft.
 * @param load mass carried by that end, g
 * @param radius where the weight sits, mm
 */
export function firstWeight(load: number, radius: number, rpm: number): FirstWeight {
  const start = trialMass(load, radius, rpm);
  const allowed = permissibleUnbalance(load, shaftGrades[0], rpm) / radius;
  const most = Math.max(start, allowed);
  const pull = (mass: number) => `${tidy(centrifugalForce(mass * radius, rpm), 0)} N`;
  return {
    start,
    most,
    words: [
      `trial weight to start with: ${grams(start)} (pulls with ${pull(start)} at ${tidy(rpm, 0)} rpm, a tenth of what this end carries; common practice)`,
      `no heavier than ${grams(most)} (${allowed > start ? `what G ${shaftGrades[0]} of ISO 21940-11 allows this end` : 'the same'})`,
    ],
  };
}

/** A mass to the tenth of a gram, finer below one gram. */
export function grams(mass: number): string {
  return `${tidy(mass, Math.abs(mass) < 1 ? 2 : 1)} g`;
}
