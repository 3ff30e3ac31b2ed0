/** From the runs of balancing in place to the weight to fit, with its doubt and everything that speaks against it. */
import { type Arrow, minus, mirrored, sizeOf } from '../formulas/arrows.ts';
import { angleDoubt, correctionWithPhase, isTelling, type TrialFit, tellingChange } from '../formulas/trial-weights.ts';
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import type { ReadRun, ReadRuns } from './balance-typed.ts';
import { correctionWithoutPhase } from './trial-amplitudes.ts';
import { tidy } from './words.ts';

/** Which way the phase counts when a weight is moved on counter-clockwise: up with it, or down. */
export type Sense = 'same' | 'opposite';
export const senses: readonly Sense[] = ['same', 'opposite'];

export interface Correction {
  /** The whole weight to be on the shaft, g; trial weights taken off. */
  readonly weight: Arrow;
  readonly massDoubt: number;
  readonly angleDoubt: number;
  /** Size of the reading for one gram. */
  readonly perGram: number;
  readonly method: 'with phase' | 'without phase';
  /** With phase: how its counting was known, and where the weight belongs if it counts the other way. */
  readonly sense: { readonly used: Sense; readonly known: 'stated' | 'told' | 'assumed'; readonly other: Arrow } | null;
  readonly notes: readonly string[];
}

/** Readings this many times farther from the fit than their doubt contradict each other. Common practice. */
const worstMisfit = 3;

/** Correction from a first run and its trials. @param stated the sense as typed; null when it was not */
export function correctionOf(runs: ReadRuns, stated: Sense | null): Lookup<Correction> {
  const all = [runs.first, ...runs.trials];
  return runs.hasPhase ? withPhase(all, stated) : withoutPhase(all);
}

function withPhase(runs: readonly ReadRun[], stated: Sense | null): Lookup<Correction> {
  const [first] = runs as [ReadRun];
  const changes = runs.slice(1).map((run) => ({
    run,
    size: sizeOf(minus(run.reading, first.reading)),
    doubt: Math.hypot(run.doubt, first.doubt),
  }));
  const strongest = changes.reduce((most, change) => (change.size > most.size ? change : most));
  const heavier = heavierTrial(sizeOf(strongest.run.weight), sizeOf(first.reading), strongest.size, strongest.doubt);
  if (strongest.size < strongest.doubt)
    return missing(
      `The trial weight changed the reading by ${tidy(strongest.size)}, less than the readings themselves are good for (${tidy(strongest.doubt)}): nothing can be told from it. ${heavier}`,
    );
  const fits = senses.map((sense) => ({ sense, fit: correctionWithPhase(inSense(runs, sense)) }));
  const [same, opposite] = fits.map(({ fit }) => fit) as [TrialFit | null, TrialFit | null];
  if (same === null || opposite === null)
    return missing('The runs carry one and the same weight: nothing can be told from them.');
  const worst = { same: Math.max(...same.misfits), opposite: Math.max(...opposite.misfits) };
  // Only runs with weights in more places than two can tell which way the phase counts.
  const better: Sense = worst.same <= worst.opposite ? 'same' : 'opposite';
  const worse: Sense = better === 'same' ? 'opposite' : 'same';
  const canTell = worst[better] <= 1 && worst[worse] > worstMisfit;
  const used = stated ?? (canTell ? better : 'same');
  const fit = used === 'same' ? same : opposite;
  const notes: string[] = [];
  if (canTell && used === worse)
    notes.push(
      `The readings agree with each other only if the phase counts the other way: give --sense ${better}, and fit nothing before that is clear.`,
    );
  else if (worst[used] > worstMisfit) return missing(contradiction(runs, fit.misfits));
  else if (worst[used] > 1) notes.push(`${contradiction(runs, fit.misfits)} The answer is a compromise.`);
  if (!changes.some(({ run }) => isTelling(first.reading, run.reading)))
    notes.push(
      `The trial weight changed the reading by less than ${100 * tellingChange.share} % and less than ${tellingChange.degrees} degrees (common practice asks for one of them). ${heavier}`,
    );
  const size = sizeOf(fit.correction);
  if (fit.doubt >= size)
    return missing(
      `The readings leave the correction at ${tidy(size, 1)} g with a doubt of ${tidy(fit.doubt, 1)} g: nothing to act on. ${heavier}`,
    );
  return found({
    weight: fit.correction,
    massDoubt: fit.doubt,
    angleDoubt: angleDoubt(size, fit.doubt),
    perGram: sizeOf(fit.influence),
    method: 'with phase',
    sense: {
      used,
      known: stated !== null ? 'stated' : canTell ? 'told' : 'assumed',
      other: (used === 'same' ? opposite : same).correction,
    },
    notes,
  });
}

/** Runs with the phase counted as weights are. */
function inSense(runs: readonly ReadRun[], sense: Sense): ReadRun[] {
  return runs.map((run) => ({ ...run, reading: sense === 'same' ? run.reading : mirrored(run.reading) }));
}

function withoutPhase(runs: readonly ReadRun[]): Lookup<Correction> {
  const [first, ...trials] = runs as [ReadRun, ...ReadRun[]];
  if (trials.length < 3)
    return missing(
      `Without phase the weight must be tried in three places; here ${trials.length === 1 ? 'is 1' : `are ${trials.length}`}. Two places leave two answers, each the mirror of the other. Give --runs "0: 7.5, 120: 8.7, 240: 1.6", the same weight each time.`,
    );
  const heaviest = Math.max(...trials.map(({ weight }) => sizeOf(weight)));
  const readings = runs.map(({ weight, reading, doubt }) => ({ weight, doubt, amplitude: sizeOf(reading) }));
  const fit = correctionWithoutPhase(readings);
  if (fit === null)
    return missing(
      `With the weight on, the shaft shook no more than the first run on the whole, whatever the place; a weight carried all round must make it worse on the average. A reading slipped, or the weight is too light to be heard. ${heavierTrial(heaviest, sizeOf(first.reading), 0, first.doubt)}`,
    );
  const effect = fit.sensitivity * heaviest;
  const heavier = heavierTrial(heaviest, sizeOf(first.reading), effect, first.doubt);
  const worst = Math.max(...fit.misfits.map(Math.abs));
  if (worst > worstMisfit) return missing(contradiction(runs, fit.misfits, true));
  const size = sizeOf(fit.correction);
  if (fit.doubt.mass >= size || fit.doubt.angle >= 90)
    return missing(
      `The readings leave the correction at ${tidy(size, 1)} +-${tidy(fit.doubt.mass, 1)} g, +-${tidy(fit.doubt.angle, 0)} degrees: nothing to act on. Spread the places evenly round the shaft. ${heavier}`,
    );
  const notes: string[] = [];
  if (worst > 1) notes.push(`${contradiction(runs, fit.misfits, true)} The answer is a compromise.`);
  if (effect < tellingChange.share * sizeOf(first.reading))
    notes.push(
      `The weight alone shakes the shaft by less than ${100 * tellingChange.share} % of the first run (common practice asks for more). ${heavier}`,
    );
  return found({
    weight: fit.correction,
    massDoubt: fit.doubt.mass,
    angleDoubt: fit.doubt.angle,
    perGram: fit.sensitivity,
    method: 'without phase',
    sense: null,
    notes,
  });
}

/** The run that stands apart, in a sentence. */
function contradiction(runs: readonly ReadRun[], misfits: readonly number[], withCircles = false): string {
  const worst = misfits.reduce((most, off, n) => (Math.abs(off) > Math.abs(misfits[most] ?? 0) ? n : most), 0);
  const times = tidy(Math.abs(misfits[worst] ?? 0), 1);
  return `The runs contradict each other: no unbalance explains them all${withCircles ? ' (their circles do not meet)' : ''}; "${runs[worst]?.name}" lies ${times} times its doubt away. Was the speed the same, did the weight sit where noted, and does --scatter say what the meter really does? Measure again.`;
}

/** A weight that would change the reading by about half of the first one. */
function heavierTrial(mass: number, first: number, effect: number, doubt: number): string {
  const factor = Math.min(10, Math.max(1.5, (0.5 * first) / Math.max(effect, doubt)));
  return `Try a heavier one, about ${Number((mass * factor).toPrecision(2))} g; --weight, --radius and --speed tell how much is safe to start with.`;
}

/** What the run after the correction says: what is left, and what to fit next. */
export interface Trim {
  /** Weight that was on, g. */
  readonly fitted: Arrow;
  /** Weight to add to it, g; and the whole that would then be on. */
  readonly next: Arrow;
  readonly whole: Correction;
  /** Reading after it, as a share of the first. */
  readonly left: number;
  /** Unbalance left, as a weight at the same radius, g. */
  readonly leftGrams: number;
}

/** All runs together, the one after the correction among them: a refined influence and the next weight. */
export function trimOf(runs: ReadRuns, told: Correction, stated: Sense | null): Lookup<Trim | null> {
  if (runs.check === null) return found(null);
  const fitted = runs.fitted ?? told.weight;
  const check = { ...runs.check, weight: fitted };
  const again = correctionOf({ ...runs, trials: [...runs.trials, check] }, stated);
  if (!again.ok) return missing(`With the run after the correction: ${again.why}`);
  const left = sizeOf(check.reading) / sizeOf(runs.first.reading);
  const next = minus(again.value.weight, fitted);
  return found({ fitted, next, whole: again.value, left, leftGrams: sizeOf(check.reading) / again.value.perGram });
}
