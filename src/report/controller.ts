/** What to tell the controller, and which tooth counts the wheel may have, in words for both reports. */
import { controllerNumber, type JointWithSensor, readsText } from '../job/controller-number.ts';
import { pulsesText } from '../job/pulses-wanted.ts';
import { type CountJob, type ToothCandidate, toothCandidates } from '../job/tooth-count.ts';
import { type ToothWords, wordsOf } from '../job/wheel-form.ts';
import type { Verdict } from '../model/finding.ts';
import type { LengthUnits } from '../units/format.ts';
import { sizeText } from './numbers.ts';

/** One fact, with what it means. */
export interface ControllerLine {
  readonly label: string;
  readonly value: string;
  readonly note: string;
}

/** One tooth count that the wheel may have. */
export interface CountLine {
  readonly teeth: number;
  readonly isChosen: boolean;
  readonly verdict: Verdict;
  readonly tooth: string;
  readonly valley: string;
  readonly pitch: string;
  /** What the controller reads, and what to enter. */
  readonly reads: string;
  /** Why not; empty for a pass. */
  readonly reason: string;
}

export interface ControllerReport {
  readonly lines: readonly ControllerLine[];
  /** Ratios of a converter box, the simplest first. */
  readonly ratios: readonly { readonly ratio: string; readonly reads: string }[];
  readonly ratioNote: string;
  readonly counts: readonly CountLine[];
  /** What is counted: teeth and valleys, or bars and windows. */
  readonly words: ToothWords;
}

export type JointToRead = JointWithSensor & { readonly job: CountJob };

/** No more counts than this help to choose. */
const mostCounts = 8;

const count = (value: number, digits = 6) => String(Number(value.toPrecision(digits)));

function madeLines(
  figures: NonNullable<ReturnType<typeof controllerNumber>>,
  { tooth }: ToothWords,
  units: LengthUnits,
): ControllerLine[] {
  const { made, perWheel, perKm, perMile, road } = figures;
  const rolled = road.rolled;
  const doubt =
    rolled && rolled.doubt > 0 ? `; good to ${100 * rolled.doubt} %: push the wheel one turn and measure` : '';
  return [
    { label: 'Pulses in a turn of this shaft', value: count(made), note: `one for every ${tooth} that is there` },
    ...(perWheel === null
      ? []
      : [
          {
            label: 'Pulses in a turn of the road wheels',
            value: count(perWheel),
            note: `this shaft turns ${count(road.axle ?? 0)} times`,
          },
        ]),
    ...(perKm === null || perMile === null || rolled === null
      ? []
      : [
          {
            label: 'Pulses on the road',
            value: `${count(perKm)} a km, ${count(perMile)} a mile`,
            note: `one turn rolls ${sizeText(rolled.value, units, 0)} (${rolled.from})${doubt}`,
          },
        ]),
  ];
}

/** Which way the number in the controller goes, and from what to what; empty where it cannot be set or stays the same. */
function moved({
  error,
  exact,
  enter,
}: NonNullable<NonNullable<ReturnType<typeof controllerNumber>>['wanted']>): string {
  const before = exact / (1 + error);
  if (!enter || count(before) === count(enter.number)) return '';
  const way = enter.number > before ? 'grows' : 'falls';
  return `: by that the number in the controller ${way}, from ${count(before)} to ${count(enter.number, 8)}`;
}

function readingLines(figures: NonNullable<ReturnType<typeof controllerNumber>>): ControllerLine[] {
  const { wanted, missing } = figures;
  if (!wanted) {
    const note =
      missing ??
      'give sensor.expects: { pulses: 8000, per: km }, or sensor.was: { teeth: 44, ratio: 1 } and sensor.axle';
    return [{ label: 'What the controller expects', value: 'not known', note }];
  }
  const { error, enter, exact, unit } = wanted;
  const isTrue = readsText(error) === 'reads true';
  const lines: ControllerLine[] = [
    { label: 'What the controller expects', value: wanted.asTold, note: wanted.from },
    {
      label: 'When nothing is changed',
      value: `it ${readsText(error)}`,
      note: isTrue ? 'nothing has to be told' : `at a true 100 it shows ${count(100 * (1 + error), 4)}`,
    },
  ];
  if (isTrue) return lines;
  if (enter) {
    const rounding =
      enter.number === exact || Math.abs(enter.error) < 5e-7
        ? 'exact'
        : `exact ${count(exact, 8)}; rounded it ${readsText(enter.error)}`;
    lines.push({
      label: 'Number to enter',
      value: pulsesText(count(enter.number, 8), unit),
      note: rounding,
    });
  }
  lines.push({
    label: 'Correction',
    value: `truth = shown x ${(1 / (1 + error)).toFixed(4)}`,
    note: `the other way round, shown = truth x ${(1 + error).toFixed(4)}${moved(wanted)}`,
  });
  return lines;
}

function countLine(candidate: ToothCandidate, chosen: number, units: LengthUnits): CountLine {
  const { teeth, tooth, valley, pitch, verdict, reasons, error, enter } = candidate;
  const unchanged = error === null ? '' : readsText(error);
  const entered =
    enter === null || unchanged === 'reads true' ? '' : `; enter ${count(enter.number, 8)}: ${readsText(enter.error)}`;
  return {
    teeth,
    isChosen: teeth === chosen,
    verdict,
    tooth: sizeText(tooth, units),
    valley: sizeText(valley, units),
    pitch: sizeText(pitch, units),
    reads: `${unchanged}${entered}`,
    reason: reasons.join('; '),
  };
}

/** What the report says of sensor and controller; null without a wheel or without a sensor. */
export function controllerReport(joint: JointToRead, units: LengthUnits): ControllerReport | null {
  const figures = controllerNumber(joint);
  if (!figures) return null;
  const { wanted } = figures;
  const words = wordsOf(joint.job.wheel);
  const chosen = joint.wheelSpec?.teeth ?? 0;
  const ranked = toothCandidates(joint.job);
  const best = ranked.slice(0, mostCounts);
  const own = ranked.find(({ teeth }) => teeth === chosen);
  const isTrue = wanted !== null && readsText(wanted.error) === 'reads true';
  return {
    words,
    lines: [...madeLines(figures, words, units), ...readingLines(figures)],
    ratios:
      wanted === null || isTrue
        ? []
        : wanted.ratios.map(({ p, q, error }) => ({ ratio: `${p} out for ${q} in`, reads: readsText(error) })),
    ratioNote:
      wanted === null || isTrue
        ? ''
        : `A converter box with whole numbers up to ${wanted.largest} between wheel and controller:`,
    counts: [...best, ...(own && !best.includes(own) ? [own] : [])].map((one) => countLine(one, chosen, units)),
  };
}
