/** Teeth that the sensor can read: their sizes against its kind, its pole and its gap, and a wheel that it can see at all. */
import type { Joint } from '../job/joint.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import { type ToneWheelSpec, type ToothMeasures, toothMeasures } from '../parts/tone-wheel.ts';
import { type ToothRuleRow, toothRule, toothRules } from '../standards/tooth-rules.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { mm, plural, sourced } from './words.ts';

const feature = 'wheel-outline';
/** A data sheet's reference target is a recommendation: within this share of it the sensor may still read. Common practice. */
const mayStillRead = 0.2;

/** One size held against the sensor's own target. */
interface Rule {
  readonly code: string;
  readonly title: string;
  readonly value: number;
  readonly limit: number | null;
  readonly sense: 'at least' | 'at most';
  readonly cure: string;
  readonly worst?: Verdict;
}

function rules(spec: ToneWheelSpec, sizes: ToothMeasures, rule: ToothRuleRow): Rule[] {
  const fewer = (value: number, limit: number | null) =>
    limit === null
      ? ''
      : `Use fewer teeth (at most ${Math.max(3, Math.floor((spec.teeth * value) / limit))} here) or a larger outside diameter`;
  const { toothChord, valleyChord, height, pitch } = sizes;
  return [
    {
      code: 'tooth-width',
      title: 'tooth width at the tip',
      value: toothChord,
      limit: rule.tooth,
      sense: 'at least',
      cure: `${fewer(toothChord, rule.tooth)}, or a larger ratio.`,
    },
    {
      code: 'tooth-width-most',
      title: 'tooth width at the tip',
      value: toothChord,
      limit: rule.toothMost,
      sense: 'at most',
      cure: 'Use more teeth or a smaller ratio; wide teeth are read by most sensors, but not by all.',
      worst: 'caution',
    },
    {
      code: 'valley-width',
      title: 'valley width at the tip',
      value: valleyChord,
      limit: rule.valley,
      sense: 'at least',
      cure: `${fewer(valleyChord, rule.valley)}, or a smaller ratio.`,
    },
    {
      code: 'tooth-height',
      title: 'tooth height',
      value: height,
      limit: rule.height,
      sense: 'at least',
      cure: `Make the teeth ${mm((rule.height ?? 0) - height)} higher (wheel.height, or a smaller wheel.root).`,
    },
    {
      code: 'tooth-pitch',
      title: 'tooth pitch along the tips',
      value: pitch,
      limit: rule.pitch,
      sense: 'at least',
      cure: `${fewer(pitch, rule.pitch)}.`,
    },
    {
      code: 'wheel-thickness',
      title: 'wheel thickness',
      value: spec.thickness,
      limit: rule.thickness,
      sense: 'at least',
      cure: `Use sheet of ${mm(rule.thickness ?? 0)} or more (wheel.thickness).`,
    },
  ];
}

function sizesForSensor(joint: Joint, spec: ToneWheelSpec, sizes: ToothMeasures): Finding[] {
  const kind = joint.job.sensor?.kind;
  if (kind === undefined) {
    return [
      notAssessed({
        code: 'tooth-size',
        feature,
        title: 'teeth against the sensor',
        why: 'Whether the sensor can read these teeth hangs on what kind it is.',
        missing: 'Give sensor.kind: coil, hall, differential_hall or active_wheel_speed.',
        source: toothRules.edition,
      }),
    ];
  }
  const found = toothRule(kind);
  if (!found.ok) throw new Error(found.why);
  const rule = found.value;
  const source = sourced(rule.source, rule.memory ?? false);
  const judgedSizes = rules(spec, sizes, rule).flatMap(({ code, title, value, limit, sense, cure, worst = 'fail' }) => {
    if (limit === null) return [];
    const hard = sense === 'at least' ? (1 - mayStillRead) * limit : (1 + mayStillRead) * limit;
    const why = `A ${rule.title} needs ${sense} ${mm(limit)}.`;
    return [judged({ code, feature, title, unit: 'mm', why, cure, source }, value, { limit, sense, hard, worst })];
  });
  return [...judgedSizes, ...gap(joint, rule, source)];
}

/** A pole wider than the tooth never sees a clean edge. */
function pole(joint: Joint, sizes: ToothMeasures): Finding[] {
  const width = joint.job.sensor?.pole;
  if (width === undefined) return [];
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

function gap(joint: Joint, { gap: usual, gapTolerance }: ToothRuleRow, source: string): Finding[] {
  const set = joint.job.sensor?.gap;
  if (set === undefined) return [];
  const common = { code: 'sensor-gap', feature, title: 'air gap off its middle value', source };
  if (usual === null || gapTolerance === null) {
    const why = `No usual gap is published for this kind of sensor; ${mm(set)} cannot be judged.`;
    return [notAssessed({ ...common, why, missing: "Hold the gap against the sensor's own data sheet." })];
  }
  return [
    judged(
      {
        ...common,
        unit: 'mm',
        why: `The gap is set to ${mm(set)}; this kind of sensor is usually set to ${mm(usual)}.`,
        cure: `Set the gap to ${mm(usual)} within ${mm(gapTolerance)} (sensor.gap), or follow the sensor's own data sheet.`,
      },
      Math.abs(set - usual),
      { limit: gapTolerance, sense: 'at most', worst: 'caution' },
    ),
  ];
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
          : `${material.name} is not ferromagnetic: no magnetic sensor sees its teeth.`,
        cure: 'Use low-carbon steel such as DC01 or S235JR (wheel.material).',
        source: 'a gear-tooth sensor data sheet: low-carbon steel target',
      },
      material.magnetic ? 'pass' : 'fail',
    ),
  ];
}

function missingTeeth({ missing, teeth: places }: ToneWheelSpec): Finding[] {
  const why =
    missing === 0
      ? `All ${places} teeth are there: the speed signal is even.`
      : 'A speed sensor reads the gap as a dip once a turn, and the wheel is out of balance. Missing teeth are for finding an angle.';
  return [
    stated(
      {
        code: 'missing-teeth',
        feature,
        title: missing === 0 ? 'no missing teeth' : `${plural(missing, 'tooth', 'teeth')} of ${places} left out`,
        unit: '',
        why,
        cure: 'For a speed signal keep all teeth (wheel.missing: 0). Keep the gap only if the controller asks for it.',
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
    return [...sizesForSensor(joint, spec, sizes), ...pole(joint, sizes), ...missingTeeth(spec), ...magnetic(joint)];
  },
};
