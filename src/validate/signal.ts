/** What the controller will make of the teeth: as many pulses as there are teeth, evenly timed, and on for about half of the time. */
import type { Joint } from '../job/joint.ts';
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

function pulsesFinding({ pulses, present, setting, windows }: SignalStudy): Finding {
  const all = pulses === present;
  const teeth = windows ? plural(present, 'bar', 'bars') : plural(present, 'tooth', 'teeth');
  return stated(
    {
      code: 'signal-pulses',
      feature,
      title: 'pulses in a turn',
      unit: '',
      why: all
        ? `${teeth} make ${pulses} pulses, at ${mm(setting.gap)} of gap and the worst run-out.`
        : `${teeth} make ${pulses} pulses at ${mm(setting.gap)} of gap: the sensor cannot tell some of them apart.`,
      cure: `Use fewer or higher ${windows ? 'windows' : 'teeth'} (wheel.teeth, wheel.height), a smaller gap (sensor.gap) or a narrower pole.`,
      source,
    },
    all ? 'pass' : 'fail',
  );
}

function jitterFinding(study: SignalStudy): Finding[] {
  const { readings, expected, setting, lowSpot } = study;
  if (!readings) {
    const why = 'Fewer than two pulses come in a turn: there is nothing to time one against.';
    const title = 'greatest error of one tooth, as timed';
    return [
      notAssessed({ code: 'signal-jitter', feature, title, why, missing: 'Use more teeth (wheel.teeth).', source }),
    ];
  }
  const gap =
    readings.gapRatio === null
      ? ''
      : ` The gap of the missing ${study.windows ? 'bars' : 'teeth'} is ${plain(readings.gapRatio, 2)} periods long and is not counted.`;
  const coil = setting.isCoil ? ` The voltage at the low spot is ${percent(lowSpot, 0)} of that at the high spot.` : '';
  const byTeeth = expected.teeth > expected.runout;
  return [
    judged(
      {
        code: 'signal-jitter',
        feature,
        title: 'greatest error of one tooth, as timed',
        unit: '%',
        why: `A speed worked out from one tooth is wrong by as much; root mean square ${percent(readings.rms)}, of it once a turn ${percent(readings.onceATurn)}. By geometry alone, running out (${mm(setting.eccentricity, 3)} off centre) gives ${percent(expected.runout)}, two neighbours cut ${mm(setting.toothError)} out of place ${percent(expected.teeth)} at most.${gap}${coil}`,
        cure: byTeeth
          ? 'Have the wheel cut by a service that holds less (sheet.tolerance), use fewer teeth, or let the controller average a whole turn.'
          : 'Have the wheel run truer: the bore turned to its register (wheel.fit: H8), or set true with a dial (wheel.set_true: 0.1 mm).',
        source: `${source}; limit of ${mostJitter} % common practice`,
      },
      100 * readings.peak,
      { limit: mostJitter, sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** A face that sees rim and hub beside a window swings less. Common practice: a fifth less is borne, half is not. */
const leastHeightShare = 0.8;
const halfHeightShare = 0.5;

function heightFinding({ windows, setting }: SignalStudy): Finding[] {
  if (!windows) return [];
  return [
    judged(
      {
        code: 'signal-window-height',
        feature,
        title: 'swing that the height of the windows leaves',
        unit: '%',
        why: `Beside each window the sensor sees rim and hub, which never change: at ${mm(setting.gap)} of gap and with a face of ${mm(setting.pole)} that leaves ${percent(windows.heightShare, 1)} of the swing over endless windows.`,
        cure: 'Make the windows higher (wheel.height), the gap smaller (sensor.gap), or use a sensor with a smaller face.',
        source: `${source}; limit of ${100 * leastHeightShare} % common practice`,
      },
      100 * windows.heightShare,
      { limit: 100 * leastHeightShare, sense: 'at least', hard: 100 * halfHeightShare },
    ),
  ];
}

function dutyFinding({ readings, setting, windows }: SignalStudy): Finding[] {
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
        cure: `Make the ${windows ? 'bars' : 'teeth'} ${isLong ? 'narrower' : 'wider'} (wheel.ratio), or time one edge only.`,
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
