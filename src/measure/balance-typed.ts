/** What was typed for balancing in place: vibration readings, weights on the shaft, and which weight gave which reading. */
import { type Arrow, arrow, minus, noArrow, scaled, sizeOf, sumOf } from '../formulas/arrows.ts';
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { parseQuantity } from '../units/quantity.ts';
import type { Asked } from './answer.ts';
import { pieces } from './typed.ts';
import { tidy } from './words.ts';

export interface BalanceTyped extends Asked {
  /** Reading as found: "4.2 at 130", or "4.2" without phase; repeats parted by commas. */
  readonly first?: string | undefined;
  /** Trial weight: "10 g at 90", or "10 g" when the places stand in `runs`. */
  readonly trial?: string | undefined;
  /** Reading with the trial weight on. */
  readonly with?: string | undefined;
  /** "0: 7.5, 120: 8.7, 240: 1.6": place of the weight and the reading there. */
  readonly runs?: string | undefined;
  /** Reading after the correction, and what was fitted when that is not what the runs ask for. */
  readonly check?: string | undefined;
  readonly fitted?: string | undefined;
  readonly sense?: string | undefined;
  readonly scatter?: string | undefined;
  readonly clamp?: string | undefined;
  readonly radius?: string | undefined;
  readonly weight?: string | undefined;
  readonly speed?: string | undefined;
  readonly duty?: string | undefined;
  readonly critical?: string | undefined;
}

/** One run, repeats averaged. */
export interface ReadRun {
  readonly name: string;
  /** Weight on the shaft, g at its angle. */
  readonly weight: Arrow;
  /** Size and phase; without phase along x. */
  readonly reading: Arrow;
  readonly doubt: number;
}

export interface ReadRuns {
  readonly hasPhase: boolean;
  /** Unit of the readings as typed; empty when none was. */
  readonly unit: string;
  readonly first: ReadRun;
  readonly trials: readonly ReadRun[];
  /** The reading after the correction; its weight is not known yet unless `fitted` says so. */
  readonly check: ReadRun | null;
  readonly fitted: Arrow | null;
  /** How well a reading repeats, as a share of it. */
  readonly scatter: { readonly share: number; readonly isAssumed: boolean };
}

/** What one reading of a vibration meter on a fitted shaft is good for, when nothing is said; two standard deviations. Common practice. */
export const usualScatter = 0.05;

/** No trial weight for a shaft of a vehicle is heavier, g: more is a slip of units. Common practice. */
const heaviestTrial = 500;

export function readRuns(typed: BalanceTyped): Lookup<ReadRuns> {
  if (typed.first === undefined)
    return missing('Give --first: the vibration as found, such as "4.2 at 130", or 4.2 without phase.');
  return andThen(typedScatter(typed.scatter), (scatter) =>
    andThen(typedReadings(typed.first ?? '', 'First run'), (first) =>
      andThen(typedTrials(typed), (trials) =>
        andThen(typedCheck(typed), ({ check, fitted }): Lookup<ReadRuns> => {
          const every = [first, ...trials.map(({ readings }) => readings), ...(check === null ? [] : [check])].flat();
          const hasPhase = every[0]?.phase !== null;
          if (every.some(({ phase }) => (phase !== null) !== hasPhase))
            return missing(
              'Some readings carry a phase and some do not: give it in every reading ("6.1 at 70"), or in none. A comma parts readings; a decimal takes a point.',
            );
          const units = [...new Set(every.map(({ unit }) => unit).filter((unit) => unit !== ''))];
          if (units.length > 1)
            return missing(`The readings are in ${units.join(' and in ')}: all must be in one unit.`);
          const size = sizeOf(meanOf(first));
          if (!(size > 0)) return missing('The first run shows no vibration: there is nothing to balance.');
          const run = (name: string, weight: Arrow, readings: readonly Reading[]): ReadRun => ({
            name,
            weight,
            reading: meanOf(readings),
            doubt: doubtOf(readings, scatter.share, size),
          });
          return found({
            hasPhase,
            unit: units[0] ?? '',
            first: run('first run', noArrow, first),
            trials: trials.map(({ name, weight, readings }) => run(name, weight, readings)),
            check: check === null ? null : run('run after the correction', noArrow, check),
            fitted,
            scatter,
          });
        }),
      ),
    ),
  );
}

interface Reading {
  readonly size: number;
  readonly phase: number | null;
  readonly unit: string;
}

interface Trial {
  readonly name: string;
  readonly weight: Arrow;
  readonly readings: readonly Reading[];
}

function meanOf(readings: readonly Reading[]): Arrow {
  return scaled(sumOf(readings.map(({ size, phase }) => arrow(size, phase ?? 0))), 1 / readings.length);
}

/** Doubt of a mean: the greater of the usual scatter and the farthest repeat, less with more repeats. */
function doubtOf(readings: readonly Reading[], share: number, first: number): number {
  const mean = meanOf(readings);
  const farthest = Math.max(...readings.map(({ size, phase }) => sizeOf(minus(arrow(size, phase ?? 0), mean))));
  // A meter does not become finer without end: a quarter of the first reading is the floor.
  return Math.max(share * Math.max(sizeOf(mean), first / 4), farthest) / Math.sqrt(readings.length);
}

function typedScatter(text: string | undefined): Lookup<ReadRuns['scatter']> {
  if (text === undefined) return found({ share: usualScatter, isAssumed: true });
  const read = parseQuantity(text, 'ratio', '%');
  if (!read.ok) return missing(`Scatter: ${read.why}`);
  if (!(read.value > 0 && read.value <= 0.5))
    return missing(`Scatter is a share of the reading, above 0 and at most 50 %; got ${tidy(100 * read.value)} %.`);
  return found({ share: read.value, isAssumed: false });
}

/** "4.2 mm/s at 130", repeats parted by commas. */
function typedReadings(text: string, what: string): Lookup<Reading[]> {
  const readings: Reading[] = [];
  for (const piece of pieces(text)) {
    const read = typedReading(piece, what);
    if (!read.ok) return read;
    readings.push(read.value);
  }
  return readings.length === 0 ? missing(`${what}: there is no reading here.`) : found(readings);
}

const joint = /\s+at\s+|\s*@\s*/i;

function typedReading(text: string, what: string): Lookup<Reading> {
  const [left = '', right, more] = text.split(joint);
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z%"][\w/.²^]*)?$/i.exec(left.trim());
  if (match === null || more !== undefined)
    return missing(
      `${what}: "${text.slice(0, 40)}" is no reading; write 4.2, or with its phase "4.2 at 130" (a unit may follow the number: 4.2 mm/s).`,
    );
  const size = Number(match[1]);
  const unit = match[2] ?? '';
  if (/^v?db/i.test(unit))
    return missing(`${what}: decibels do not add up as arrows do; set the meter to mm/s, um or another plain unit.`);
  if (size < 0) return missing(`${what}: an amplitude is not below 0; got ${size}. The side is told by the phase.`);
  if (!Number.isFinite(size)) return missing(`${what}: this number is too large to be real.`);
  if (right === undefined) return found({ size, phase: null, unit });
  return andThen(typedAngle(right, `${what}, phase`), (phase) => found({ size, phase, unit }));
}

function typedAngle(text: string, what: string): Lookup<number> {
  const read = parseQuantity(text, 'angle');
  return read.ok ? found(read.value) : missing(`${what}: ${read.why}`);
}

/** A mass in g; a bare number is in grams. */
export function typedMass(text: string, what: string): Lookup<number> {
  const read = parseQuantity(text, 'mass', 'g');
  if (!read.ok) return missing(`${what}: ${read.why}`);
  if (!(read.value > 0)) return missing(`${what}: a mass is above 0; got ${tidy(read.value)} g.`);
  if (read.value > heaviestTrial)
    return missing(`${what}: ${tidy(read.value)} g is too heavy for a weight on a turning shaft. Were grams meant?`);
  return found(read.value);
}

interface Weight {
  readonly mass: number;
  readonly angle: number | null;
}

/** "10 g at 90", or "10 g". */
function typedWeight(text: string, what: string): Lookup<Weight> {
  const [left = '', right, more] = text.split(joint);
  if (more !== undefined) return missing(`${what}: "${text.slice(0, 40)}" is no weight; write "10 g at 90".`);
  return andThen(typedMass(left, what), (mass): Lookup<Weight> => {
    if (right === undefined) return found({ mass, angle: null });
    return andThen(typedAngle(right, `${what}, angle`), (angle) => found({ mass, angle }));
  });
}

/** Every run with a trial weight; the same weight in the same place is one run, repeated. */
function typedTrials(typed: BalanceTyped): Lookup<Trial[]> {
  const trials: Trial[] = [];
  const add = (mass: number, angle: number, readings: readonly Reading[]) => {
    const weight = arrow(mass, angle);
    const known = trials.findIndex((trial) => sizeOf(minus(trial.weight, weight)) < 1e-6 * mass);
    const same = trials[known];
    if (same === undefined) trials.push({ name: `${tidy(mass)} g at ${tidy(angle, 1)} degrees`, weight, readings });
    else trials[known] = { ...same, readings: [...same.readings, ...readings] };
  };
  const usual = typed.trial === undefined ? found(null) : typedWeight(typed.trial, 'Trial weight');
  if (!usual.ok) return usual;
  if (typed.with !== undefined) {
    if (usual.value === null || usual.value.angle === null)
      return missing(
        'Which weight was on for --with? Give --trial "10 g at 90": its mass and its angle from the mark.',
      );
    const readings = typedReadings(typed.with, 'Run with the trial weight');
    if (!readings.ok) return readings;
    add(usual.value.mass, usual.value.angle, readings.value);
  }
  for (const piece of pieces(typed.runs ?? '')) {
    const [place = '', reading, more] = piece.split(':');
    if (reading === undefined || more !== undefined)
      return missing(
        `"${piece.slice(0, 40)}" is no run; write the weight's angle and the reading, "120: 6.3". A comma parts runs; a decimal takes a point.`,
      );
    const weight = joint.test(place) ? typedWeight(place, 'Weight of a run') : angleAlone(place, usual.value);
    if (!weight.ok) return weight;
    const read = typedReading(reading.trim(), `Run at ${place.trim()}`);
    if (!read.ok) return read;
    add(weight.value.mass, weight.value.angle ?? 0, [read.value]);
  }
  if (trials.length === 0)
    return missing('Give a run with a trial weight: --trial "10 g at 90" --with "6.1 at 70", or --runs "0: 7.5, ...".');
  return found(trials);
}

function angleAlone(place: string, usual: Weight | null): Lookup<Weight> {
  if (usual === null) return missing('How heavy was the weight in the runs? Give --trial, such as "10 g".');
  return andThen(typedAngle(place, 'Place of the weight'), (angle) => found({ mass: usual.mass, angle }));
}

interface After {
  readonly check: Reading[] | null;
  readonly fitted: Arrow | null;
}

function typedCheck({ check, fitted }: BalanceTyped): Lookup<After> {
  if (check === undefined)
    return fitted === undefined
      ? found({ check: null, fitted: null })
      : missing('--fitted goes with --check: give the reading with that weight on.');
  return andThen(typedReadings(check, 'Run after the correction'), (readings): Lookup<After> => {
    if (fitted === undefined) return found({ check: readings, fitted: null });
    return andThen(
      typedWeight(fitted, 'Fitted weight'),
      ({ mass, angle }): Lookup<After> =>
        angle === null
          ? missing('Fitted weight: give its angle too, "8 g at 300".')
          : found({ check: readings, fitted: arrow(mass, angle) }),
    );
  });
}
