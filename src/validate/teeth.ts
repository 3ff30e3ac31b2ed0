/** Teeth that the sensor can read: their sizes against its kind and its pole, and a wheel that it can see at all. */
import type { Joint } from '../job/joint.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import { phaseSafe, type ToothDemand, toothDemands } from '../job/tooth-demands.ts';
import { toothWords } from '../job/wheel-form.ts';
import { markNoun } from '../job/wheel-mark.ts';
import type { Finding } from '../model/finding.ts';
import { hasWindows, markOf, type ToneWheelSpec, type ToothMeasures, toothMeasures } from '../parts/tone-wheel.ts';
import { sensorKinds, toothRules } from '../standards/tooth-rules.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { mm, plain, plural, sourced } from './words.ts';

const feature = 'wheel-outline';
/** How to meet a demand on the teeth, by its code. */
function cureOf({ code, value, need, sense }: ToothDemand, spec: ToneWheelSpec, sizes: ToothMeasures): string {
  const { tooth, teeth, valleys } = toothWords(spec);
  const wide = `Use more ${hasWindows(spec) ? valleys : teeth} or a smaller ratio; wide ${teeth} are read by most sensors, but not by all.`;
  const fewer = `Use fewer ${hasWindows(spec) ? valleys : teeth} (at most ${Math.max(3, Math.floor((spec.teeth * value) / need.value))} here) or a larger outside diameter`;
  switch (code) {
    case 'tooth-width':
      return `${fewer}, or a larger ratio.`;
    case 'valley-width':
      return `${fewer}, or a smaller ratio.`;
    case 'tooth-height':
      return `Make the ${hasWindows(spec) ? valleys : teeth} ${mm(need.value - sizes.height)} higher (wheel.height, or a smaller wheel.root).`;
    case 'wheel-thickness':
      return `Use sheet of ${mm(need.value)} or more (wheel.thickness).`;
    case 'tooth-width-most':
      if (sizes.mostToothArc > sizes.toothArc)
        return `Fill fewer valleys (wheel.wide), or mark the place by missing ${teeth}; most sensors hold their output over a wide ${tooth}, but not all.`;
      return wide;
    default:
      return sense === 'at least' ? `${fewer}.` : wide;
  }
}

/** What to do with a figure that nobody could confirm. */
const fromMemory =
  ' This figure is from memory and many sensors ask for less: look into its data sheet and type it under sensor.';

function sizesForSensor(joint: Joint, spec: ToneWheelSpec, sizes: ToothMeasures): Finding[] {
  const { sensor } = joint.job;
  const needs = sensor && sensorNeeds(sensor);
  const demands = needs ? toothDemands(sizes, spec, needs) : [];
  const { teeth: all } = toothWords(spec);
  const common = { code: 'tooth-size', feature, title: `${all} against the sensor`, source: toothRules.edition };
  if (!needs || (needs.kind === null && demands.length === 0)) {
    return [
      notAssessed({
        ...common,
        why: `Whether the sensor can read these ${all} hangs on what kind it is.`,
        missing: `Give sensor.kind: ${sensorKinds.join(', ')}. Not known: flangewright measure sensor.`,
      }),
    ];
  }
  const judgedSizes = demands.map((demand) => {
    const { code, title, value, need, sense, hard, worst } = demand;
    const why = `${needs.title} needs ${sense} ${mm(need.value)}.`;
    const cure = `${cureOf(demand, spec, sizes)}${need.memory ? fromMemory : ''}`;
    const source = sourced(need.source, need.memory);
    return judged({ code, feature, title, unit: 'mm', why, cure, source }, value, {
      limit: need.value,
      sense,
      hard,
      worst,
    });
  });
  const isTold = demands.some(({ code }) => code === 'tooth-width' || code === 'tooth-pitch');
  if (isTold) return judgedSizes;
  const words = toothWords(spec);
  return [
    ...judgedSizes,
    notAssessed({
      ...common,
      title: `width of ${words.teeth} and ${words.valleys} against the sensor`,
      why: `No tooth width is published for ${needs.title.charAt(0).toLowerCase()}${needs.title.slice(1)}: ${words.teeth} here are ${mm(sizes.toothChord)}, ${words.valleys} ${mm(sizes.valleyChord)}.`,
      missing: "Type what the sensor's data sheet asks for: sensor.tooth, sensor.valley, sensor.spacing.",
    }),
  ];
}

/** Half-width of the phase between the two channels that a counter follows at all, degrees. Common practice. */
const phaseAtAll = 70;

/** Two elements a quarter of a pitch apart tell the direction; half a pitch apart they tell nothing. */
function phase(joint: Joint, { pitch }: ToothMeasures): Finding[] {
  const { kind, spacing } = joint.job.sensor ?? {};
  if (kind !== 'two_channel_hall') return [];
  const common = { code: 'sensor-phase', feature, title: 'phase between the two channels off a quarter pitch' };
  const source = 'geometry; within 45 degrees of a quarter is common practice';
  if (spacing === undefined) {
    const why = 'The direction is told by which channel comes first; that hangs on the spacing of its elements.';
    return [notAssessed({ ...common, why, missing: 'Give sensor.spacing, from the data sheet.', source })];
  }
  const turn = ((360 * spacing) / pitch) % 360;
  const off = Math.min(Math.abs(turn - 90), Math.abs(turn - 270));
  return [
    judged(
      {
        ...common,
        unit: 'degrees',
        why: `Elements ${mm(spacing)} apart on a pitch of ${mm(pitch)}: the channels are ${plain(turn, 0)} degrees apart, 90 or 270 are best.`,
        cure: `Make the pitch ${mm(4 * spacing)} (wheel.teeth: ${Math.round((joint.wheelSpec?.teeth ?? 0) * (pitch / (4 * spacing)))} on this outside), or follow the data sheet.`,
        source,
      },
      off,
      { limit: phaseSafe, sense: 'at most', hard: phaseAtAll },
    ),
  ];
}

/** A pole wider than the tooth never sees a clean edge. */
function pole(joint: Joint, spec: ToneWheelSpec, sizes: ToothMeasures): Finding[] {
  const width = joint.job.sensor?.pole;
  if (width === undefined) return [];
  if (hasWindows(spec)) return [poleOverWindows(width, sizes)];
  return [
    judged(
      {
        code: 'tooth-covers-pole',
        feature,
        title: 'tooth width against the pole',
        unit: 'mm',
        why: `The sensor's pole or element is ${mm(width)} wide; a narrower tooth blurs the signal.`,
        cure: 'Use fewer teeth, a larger wheel, or a sensor with a narrower pole.',
        source: 'a magnetic-pickup application note: pole no wider than the tooth',
      },
      sizes.toothChord,
      { limit: width, sense: 'at least' },
    ),
  ];
}

/** The face must see a bar wholly, and then a window wholly. */
function poleOverWindows(width: number, { toothChord, leastValleyChord }: ToothMeasures): Finding {
  return judged(
    {
      code: 'tooth-covers-pole',
      feature,
      title: 'bars and windows against the width of the pole',
      unit: 'mm',
      why: `The sensor's pole or element is ${mm(width)} wide. In the middle of the windows a bar is ${mm(toothChord)} and a window ${mm(leastValleyChord)}: a narrower one is never seen alone, which blurs the signal.`,
      cure: 'Use fewer windows, a larger wheel, a ratio nearer to 0.5, or a sensor with a narrower pole.',
      source: 'a magnetic-pickup application note: pole no wider than the tooth',
    },
    Math.min(toothChord, leastValleyChord),
    { limit: width, sense: 'at least' },
  );
}

function magnetic(joint: Joint): Finding[] {
  const material = joint.wheelMaterial;
  if (!material) return [];
  return [
    stated(
      {
        code: 'wheel-magnetic',
        feature,
        title: 'wheel material',
        unit: '',
        why: material.magnetic
          ? `${material.name} is ferromagnetic: the sensor can see it.`
          : `${material.name} is not ferromagnetic: no magnetic sensor sees its ${joint.wheelSpec ? toothWords(joint.wheelSpec).teeth : 'teeth'}.`,
        cure: 'Use low-carbon steel such as DC01 or S235JR (wheel.material).',
        source: 'a gear-tooth sensor data sheet: low-carbon steel target',
      },
      material.magnetic ? 'pass' : 'fail',
    ),
  ];
}

/** What a wide or an extra tooth does to a speed signal. */
function markedTeeth(spec: ToneWheelSpec): Finding {
  const { tooth, teeth } = toothWords(spec);
  const isWide = markOf(spec)?.kind === 'wide';
  const dip = isWide
    ? `A speed sensor reads the wide ${tooth} as a dip once a turn`
    : `A speed sensor reads the extra ${tooth} as a leap to twice the speed once a turn`;
  return stated(
    {
      code: 'position-mark',
      feature,
      title: `${markNoun(spec)} before ${tooth} 1`,
      unit: '',
      why: `${dip}, and the wheel is out of balance. A mark is for finding an angle.`,
      cure: `For a speed signal keep all ${teeth} alike (leave out wheel.${isWide ? 'wide' : 'extra'}). Keep the mark only if the controller asks for it.`,
      source: 'common practice',
    },
    'caution',
  );
}

function missingTeeth(spec: ToneWheelSpec): Finding[] {
  const mark = markOf(spec);
  if (mark && mark.kind !== 'missing') return [markedTeeth(spec)];
  const { missing, teeth: places } = spec;
  const { tooth, teeth } = toothWords(spec);
  const joined = hasWindows(spec)
    ? ` ${plural(missing + 1, 'window is', 'windows are')} one: the rim spans it alone.`
    : '';
  const why =
    missing === 0
      ? `All ${places} ${teeth} are there: the speed signal is even.`
      : `A speed sensor reads the gap as a dip once a turn, and the wheel is out of balance.${joined} Missing ${teeth} are for finding an angle.`;
  return [
    stated(
      {
        code: 'missing-teeth',
        feature,
        title: missing === 0 ? `no missing ${teeth}` : `${plural(missing, tooth, teeth)} of ${places} left out`,
        unit: '',
        why,
        cure: `For a speed signal keep all ${teeth} (wheel.missing: 0). Keep the gap only if the controller asks for it.`,
        source: 'common practice',
      },
      missing === 0 ? 'pass' : 'caution',
    ),
  ];
}

export const teeth: Check = {
  id: 'teeth',
  title: 'Teeth',
  source: 'sensor data sheets; common practice',
  run(joint) {
    const spec = joint.wheelSpec;
    if (!spec) return [];
    const sizes = toothMeasures(spec);
    return [
      ...sizesForSensor(joint, spec, sizes),
      ...pole(joint, spec, sizes),
      ...phase(joint, sizes),
      ...missingTeeth(spec),
      ...magnetic(joint),
    ];
  },
};
