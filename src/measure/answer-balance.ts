/** Balancing a fitted shaft in place, as typed: trial runs to a correction, clamps, and what the run after it says. */
import { type Arrow, angleOf, minus, sizeOf } from '../formulas/arrows.ts';
import { centrifugalForce, permissibleUnbalance } from '../formulas/balance.ts';
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { parseQuantity } from '../units/quantity.ts';
import type { Answer } from './answer.ts';
import { placeClamps, typedClamps } from './balance-clamps.ts';
import { type Correction, correctionOf, type Sense, senses, type Trim, trimOf } from './balance-correction.ts';
import { balanceAngles, balanceSafety } from './balance-safety.ts';
import { firstWeight, grams, type SpeedCap, shaftGrades, speedCap } from './balance-speeds.ts';
import { type BalanceTyped, type ReadRun, type ReadRuns, readRuns } from './balance-typed.ts';
import { optional, typedLength } from './typed.ts';
import { mm, tidy } from './words.ts';

/** What goes with the runs: where the weight sits, what the end carries, how fast it turns. */
interface Setting {
  /** mm */
  readonly radius: number | undefined;
  /** Mass that this end carries, g. */
  readonly load: number | undefined;
  /** rpm */
  readonly speed: number | undefined;
  readonly cap: SpeedCap;
}

export function answerBalance(typed: BalanceTyped): Lookup<Answer> {
  return andThen(settingOf(typed), (setting) => {
    const hasRuns = [typed.first, typed.trial, typed.with, typed.runs, typed.check].some((text) => text !== undefined);
    if (!hasRuns) return firstAnswer(setting);
    return andThen(senseOf(typed.sense), (stated) =>
      andThen(readRuns(typed), (runs) =>
        andThen(correctionOf(runs, stated), (correction) =>
          andThen(trimOf(runs, correction, stated), (trim) => told(typed, setting, { runs, correction, trim })),
        ),
      ),
    );
  });
}

function settingOf(typed: BalanceTyped): Lookup<Setting> {
  const radius = optional(typed.radius, (text) => typedLength(text, 'Radius', typed));
  if (!radius.ok) return radius;
  if (radius.value !== undefined && !(radius.value > 0 && radius.value <= 500))
    return missing(`The radius at which the weight sits is above 0 and at most 500 mm; got ${mm(radius.value)}.`);
  const load = optional(typed.weight, (text) => positive(text, 'mass', 'Weight of the end'));
  if (!load.ok) return load;
  const speeds: Record<'speed' | 'duty' | 'critical', number | undefined> = {
    speed: undefined,
    duty: undefined,
    critical: undefined,
  };
  for (const key of ['speed', 'duty', 'critical'] as const) {
    const read = optional(typed[key], (text) => positive(text, 'speed', `--${key}`));
    if (!read.ok) return read;
    speeds[key] = read.value;
  }
  const cap = speedCap({ run: speeds.speed, duty: speeds.duty, critical: speeds.critical });
  return found({ radius: radius.value, load: load.value, speed: speeds.speed, cap });
}

function positive(text: string, dimension: 'mass' | 'speed', what: string): Lookup<number> {
  const read = parseQuantity(text, dimension);
  if (!read.ok) return missing(`${what}: ${read.why}`);
  return read.value > 0 ? found(read.value) : missing(`${what} is above 0; got ${tidy(read.value)}.`);
}

function senseOf(text: string | undefined): Lookup<Sense | null> {
  if (text === undefined) return found(null);
  const sense = senses.find((word) => word === text.trim().toLowerCase());
  return sense === undefined
    ? missing(
        `--sense is ${senses.join(' or ')}: same when a weight moved on counter-clockwise raises the phase, opposite when it lowers it; got ${text}.`,
      )
    : found(sense);
}

/** Nothing was run yet: what to start with. */
function firstAnswer({ radius, load, speed, cap }: Setting): Lookup<Answer> {
  if (radius === undefined || load === undefined || speed === undefined)
    return missing(
      'Give the runs (--first, --trial, --with or --runs); or for a first trial weight --weight (mass that this end of the shaft carries), --radius and --speed.',
    );
  const first = firstWeight(load, radius, speed);
  return found({
    title: `Start with a trial weight of ${grams(first.start)}, ${mm(radius)} from the axis.`,
    lines: first.words,
    notes: [
      'Then give --first and --trial with --with (meter with phase), or --runs (meter without).',
      ...balanceAngles.slice(0, 1),
      ...cap.words,
      ...balanceSafety,
    ],
    result: { trial: { start: first.start, most: first.most }, speeds: { cap: cap.cap, steps: cap.steps } },
    search: {},
    block: null,
  });
}

interface Worked {
  readonly runs: ReadRuns;
  readonly correction: Correction;
  readonly trim: Trim | null;
}

function told(typed: BalanceTyped, setting: Setting, { runs, correction, trim }: Worked): Lookup<Answer> {
  const { radius, load, speed, cap } = setting;
  // After the run with the correction on, all runs together say what the whole weight should be.
  const best = trim?.whole ?? correction;
  const size = sizeOf(best.weight);
  const unit = runs.unit === '' ? '' : ` ${runs.unit}`;
  const masses = optional(typed.clamp, typedClamps);
  if (!masses.ok) return masses;
  const clamps = masses.value === undefined ? null : placeClamps(best.weight, masses.value, radius ?? null);
  const doubt = `+-${grams(best.massDoubt)}, +-${tidy(best.angleDoubt, 0)} degrees`;
  const reading = ({ reading: arrow }: ReadRun) =>
    `${tidy(sizeOf(arrow))}${unit}${runs.hasPhase ? ` at ${tidy(angleOf(arrow), 0)} degrees` : ''}`;
  const [trial] = runs.trials;
  const lines = [
    ...[runs.first, ...runs.trials].map((run) => `${run.name}: ${reading(run)}`),
    `one gram changes the reading by ${Number(best.perGram.toPrecision(3))}${unit}`,
    ...(radius === undefined
      ? []
      : [
          `correction: ${tidy(size * radius, 0)} g.mm; ${mm((angleOf(best.weight) * Math.PI * radius) / 180, 0)} round the shaft from the mark, counter-clockwise, at radius ${mm(radius)}`,
        ]),
    ...(trial !== undefined && runs.trials.length === 1 && trim === null
      ? [`if the trial weight stays where it is: ${spoken(minus(best.weight, trial.weight))} instead`]
      : []),
    ...(trim === null ? [] : trimLines(trim, runs, reading)),
    ...leftLines(trim, setting),
    ...(clamps?.lines ?? []),
    ...(radius === undefined || speed === undefined
      ? []
      : [`at ${tidy(speed, 0)} rpm the correction pulls with ${tidy(centrifugalForce(size * radius, speed), 0)} N`]),
  ];
  const heaviest = Math.max(...runs.trials.map(({ weight }) => sizeOf(weight)));
  const start =
    radius === undefined || load === undefined || speed === undefined ? null : firstWeight(load, radius, speed);
  const { share, isAssumed } = runs.scatter;
  return found({
    title: `Correction: ${grams(size)} at ${tidy(angleOf(best.weight), 0)} degrees (${doubt}), by ${runs.trials.length + (trim === null ? 1 : 2)} runs ${best.method}.`,
    lines,
    notes: [
      ...best.notes,
      ...senseNotes(correction, best),
      ...(start !== null && heaviest > 1.05 * start.most
        ? [
            `The trial weight of ${grams(heaviest)} is more than ${grams(start.most)}, the most for this end at this speed.`,
          ]
        : []),
      `Each reading is taken to repeat within ${tidy(100 * share, 1)} % ${isAssumed ? '(assumed; --scatter says otherwise, repeats of a run show it)' : '(stated)'}; the doubt covers 95 of 100 such sets of runs.`,
      ...(clamps?.notes ?? []),
      ...balanceAngles,
      ...cap.words,
      ...balanceSafety,
    ],
    result: {
      method: best.method,
      correction: {
        ...polar(best.weight),
        massDoubt: best.massDoubt,
        angleDoubt: best.angleDoubt,
        ...(radius === undefined ? {} : { unbalance: size * radius }),
      },
      perGram: best.perGram,
      sense: best.sense === null ? null : { used: best.sense.used, known: best.sense.known },
      trim:
        trim === null
          ? null
          : { fitted: polar(trim.fitted), next: polar(trim.next), left: trim.left, leftGrams: trim.leftGrams },
      clamps: clamps === null ? null : { masses: clamps.masses, angles: clamps.angles, kind: clamps.setting.kind },
      scatter: runs.scatter,
      speeds: { cap: cap.cap, steps: cap.steps },
    },
    search: {},
    block: null,
  });
}

function polar(weight: Arrow): { mass: number; angle: number } {
  return { mass: sizeOf(weight), angle: angleOf(weight) };
}

function spoken(weight: Arrow): string {
  return `${grams(sizeOf(weight))} at ${tidy(angleOf(weight), 0)} degrees`;
}

function trimLines(trim: Trim, runs: ReadRuns, reading: (run: ReadRun) => string): string[] {
  const { check } = runs;
  if (check === null) return [];
  const isDone = sizeOf(trim.next) <= trim.whole.massDoubt;
  return [
    `with ${spoken(trim.fitted)} fitted${runs.fitted === null ? ' (as the runs before it asked)' : ''}: ${reading(check)}, ${tidy(100 * trim.left, 0)} % of the first run`,
    isDone
      ? `next: nothing; ${spoken(trim.next)} more is within the doubt`
      : `next: ${spoken(trim.next)} more; or in all ${spoken(trim.whole.weight)} in place of what is on`,
    ...(trim.left > 1 ? ['the shaft shakes more than as found: take the weight off before anything else'] : []),
  ];
}

/** Unbalance left, against the grades of drive shafts. */
function leftLines(trim: Trim | null, { radius, load, speed }: Setting): string[] {
  if (trim === null || radius === undefined) return [];
  const left = trim.leftGrams * radius;
  if (load === undefined || speed === undefined)
    return [`left: about ${tidy(left, 0)} g.mm; give --weight and --speed to hold it against the grades`];
  const allowed = shaftGrades.map((G) => `G ${G} allows ${tidy(permissibleUnbalance(load, G, speed), 0)}`);
  return [`left: about ${tidy(left, 0)} g.mm; at ${tidy(speed, 0)} rpm ${allowed.join(', ')} (ISO 21940-11)`];
}

/** Which way the phase was taken to count, and where the weight belongs if that is wrong. */
function senseNotes(before: Correction, best: Correction): string[] {
  const { sense } = best;
  if (sense === null) return [];
  const turned =
    before.sense !== null && before.sense.used !== sense.used
      ? ['The run after the correction shows that the phase counts the other way than was assumed before.']
      : [];
  if (sense.known === 'told')
    return [...turned, `The runs themselves tell how the phase counts: --sense ${sense.used}.`];
  if (sense.known === 'stated') return turned;
  return [
    `Assumed: a weight moved on counter-clockwise raises the phase (--sense same). If it lowers it, as lag counters do when the shaft turns counter-clockwise too, the weight belongs at ${tidy(angleOf(sense.other), 0)} degrees. To know: run the trial weight in a second place and give both runs in --runs; they tell.`,
  ];
}
