/** What the controller will make of the teeth: as many pulses as there are teeth, evenly timed, and on for about half of the time. */
import type { Joint } from '../job/joint.ts';
import { markPeriods } from '../job/wheel-mark.ts';
import type { Finding } from '../model/finding.ts';
import { type SignalStudy, studySignal } from '../rotor/signal-study.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { mm, plain, plural } from './words.ts';

const feature = 'wheel-outline';
const source = "simulated on the outline; the field fades by Laplace's law (spacing loss, from memory)";

/** How far one tooth's time may be off before a reading jumps, per cent. Common practice: inputs that average a few teeth bear it. */
const mostJitter = 5;
/** How far the output may be from half on, half off, per cent of the period. Common practice: 40 to 60 %. */
const mostOffHalf = 10;

const percent = (share: number, decimals = 2) => `${plain(100 * share, decimals)} %`;

function pulsesFinding({ pulses, present, setting, words, isWindows }: SignalStudy): Finding {
  const all = pulses === present;
  const teeth = plural(present, words.tooth, words.teeth);
  return stated(
    {
      code: 'signal-pulses',
      feature,
      title: 'pulses in a turn',
      unit: '',
      why: all
        ? `${teeth} make ${pulses} pulses, at ${mm(setting.gap)} of gap and the worst run-out.`
        : `${teeth} make ${pulses} pulses at ${mm(setting.gap)} of gap: the sensor cannot tell some of them apart.`,
      cure: `Use fewer or higher ${isWindows ? words.valleys : words.teeth} (wheel.teeth, wheel.height), a smaller gap (sensor.gap) or a narrower pole.`,
      source,
    },
    all ? 'pass' : 'fail',
  );
}

function jitterFinding(study: SignalStudy): Finding[] {
  const { readings, expected, setting, lowSpot, words } = study;
  if (!readings) {
    const why = 'Fewer than two pulses come in a turn: there is nothing to time one against.';
    const title = `greatest error of one ${words.tooth}, as timed`;
    return [
      notAssessed({
        code: 'signal-jitter',
        feature,
        title,
        why,
        missing: `Use more ${words.teeth} (wheel.teeth).`,
        source,
      }),
    ];
  }
  const periods = markPeriods(study.mark, study.words, readings.markRatios);
  const gap =
    periods === ''
      ? ''
      : ` ${periods[0]?.toUpperCase()}${periods.slice(1)}${study.mark?.kind === 'missing' ? ' and is' : ', which is'} not counted.`;
  const coil = setting.isCoil ? ` The voltage at the low spot is ${percent(lowSpot, 0)} of that at the high spot.` : '';
  const byTeeth = expected.teeth > expected.runout;
  const isMarked = study.mark !== null && study.mark.kind !== 'missing';
  const beside =
    isMarked && readings.peak > expected.runout + expected.teeth && worstBesideMark(readings.teeth)
      ? ' The worst one stands beside the mark, which shifts the edge next to it.'
      : '';
  return [
    judged(
      {
        code: 'signal-jitter',
        feature,
        title: `greatest error of one ${words.tooth}, as timed`,
        unit: '%',
        why: `A speed worked out from one ${words.tooth} is wrong by as much; root mean square ${percent(readings.rms)}, of it once a turn ${percent(readings.onceATurn)}. By geometry alone, running out (${mm(setting.eccentricity, 3)} off centre) gives ${percent(expected.runout)}, two neighbours cut ${mm(setting.toothError)} out of place ${percent(expected.teeth)} at most.${gap}${beside}${coil}`,
        cure: beside
          ? 'Let the controller take the speed away from the mark, as one that looks for a mark does; for speed alone leave the mark out.'
          : byTeeth
            ? `Have the wheel cut by a service that holds less (sheet.tolerance), use fewer ${words.teeth}, or let the controller average a whole turn.`
            : 'Have the wheel run truer: the bore turned to its register (wheel.fit: H8), or set true with a dial (wheel.set_true: 0.1 mm).',
        source: `${source}; limit of ${mostJitter} % common practice`,
      },
      100 * readings.peak,
      { limit: mostJitter, sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** Whether the greatest error stands next to the mark of a position. */
function worstBesideMark(teeth: NonNullable<SignalStudy['readings']>['teeth']): boolean {
  const size = (i: number) => Math.abs(teeth.at(i % teeth.length)?.error ?? 0);
  const worst = teeth.reduce((at, _, i) => (size(i) > size(at) ? i : at), 0);
  return [worst - 1, worst + 1].some((i) => teeth.at(i % teeth.length)?.error === null);
}

/** A face that sees rim and hub beside a window swings less. Common practice: a fifth less is borne, half is not. */
const leastHeightShare = 0.8;
const halfHeightShare = 0.5;

function heightFinding({ face, setting, words, isWindows }: SignalStudy): Finding[] {
  if (!face) return [];
  const high = isWindows ? words.valleys : words.teeth;
  const beside = isWindows
    ? 'Beside each window the sensor sees rim and hub, which never change'
    : 'Below the roots the sensor sees the hub and beyond the tips nothing, and neither changes';
  return [
    judged(
      {
        code: isWindows ? 'signal-window-height' : 'signal-tooth-height',
        feature,
        title: `swing that the height of the ${high} leaves`,
        unit: '%',
        why: `${beside}: at ${mm(setting.gap)} of gap and with a face of ${mm(setting.pole)} that leaves ${percent(face.heightShare, 1)} of the swing over endless ${high}.`,
        cure: `Make the ${high} higher (wheel.height), the gap smaller (sensor.gap), or use a sensor with a smaller face.`,
        source: `${source}; limit of ${100 * leastHeightShare} % common practice`,
      },
      100 * face.heightShare,
      { limit: 100 * leastHeightShare, sense: 'at least', hard: 100 * halfHeightShare },
    ),
  ];
}

function dutyFinding({ readings, setting, words }: SignalStudy): Finding[] {
  if (!readings) return [];
  const { least, mean, most } = readings.duty;
  const isLong = mean > 0.5;
  return [
    judged(
      {
        code: 'signal-duty',
        feature,
        title: 'output off half on, half off',
        unit: '%',
        why: `The ${setting.isCoil ? 'squared voltage' : 'output'} is on for ${percent(least, 1)} to ${percent(most, 1)} of a period, ${percent(mean, 1)} on average. Inputs that time both edges want an even wave.`,
        cure: `Make the ${words.teeth} ${isLong ? 'narrower' : 'wider'} (wheel.ratio), or time one edge only.`,
        source: `${source}; 40 to 60 % common practice`,
      },
      100 * Math.max(Math.abs(least - 0.5), Math.abs(most - 0.5)),
      { limit: mostOffHalf, sense: 'at most', worst: 'caution' },
    ),
  ];
}

export const signal: Check = {
  id: 'signal',
  title: 'What the sensor will see',
  source: 'simulated on the outline',
  isSlow: true,
  run(joint: Joint) {
    if (joint.wheelSpec === null) return [];
    const answer = studySignal(joint);
    if (!answer.ok) {
      const title = 'pulses and their timing';
      return [notAssessed({ code: 'signal-jitter', feature, title, why: answer.why, missing: answer.missing, source })];
    }
    const { study } = answer;
    return [pulsesFinding(study), ...heightFinding(study), ...jitterFinding(study), ...dutyFinding(study)];
  },
};
