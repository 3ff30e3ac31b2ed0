/** The wheel: teeth the sensor can read, metal that carries them, a bore that centres them. */
import { leastGap } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import { type ToothMeasures, toothMeasures } from '../parts/tone-wheel.ts';
import { cutTolerance } from '../standards/sheet-cutting.ts';
import { runoutShareOfGapTolerance, toothRule, toothRules } from '../standards/tooth-rules.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { mm, sourced } from './words.ts';

type Wheeled = Joint & { readonly wheel: NonNullable<Joint['wheel']>; readonly wheelSpec: NonNullable<Joint['wheelSpec']> };

function hasWheel(joint: Joint): joint is Wheeled {
  return joint.wheel !== null && joint.wheelSpec !== null;
}

function teeth(joint: Wheeled): Finding[] {
  const { sensor } = joint.job;
  const feature = 'wheel-outline';
  if (!sensor?.kind) {
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
  const found = toothRule(sensor.kind);
  if (!found.ok) throw new Error(found.why);
  const rule = found.value;
  const sizes: ToothMeasures = toothMeasures(joint.wheelSpec);
  const source = sourced(rule.source, rule.memory ?? false);
  const one = (code: string, title: string, value: number, limit: number | null, sense: 'at least' | 'at most', cure: string, worst: Verdict = 'fail'): Finding[] =>
    limit === null
      ? []
      : [
          judged(
            { code, feature, title, unit: 'mm', why: `A ${rule.title} needs ${sense} ${mm(limit)}.`, cure, source },
            value,
            // A data sheet's reference target is a recommendation; within a fifth of it the sensor may still read.
            { limit, sense, hard: sense === 'at least' ? 0.8 * limit : 1.2 * limit, worst },
          ),
        ];
  const fewer = 'Use fewer teeth or a larger outside diameter';
  return [
    ...one('tooth-width', 'tooth width at the tip', sizes.toothChord, rule.tooth, 'at least', `${fewer}, or a larger ratio.`),
    ...one('tooth-width-most', 'tooth width at the tip', sizes.toothChord, rule.toothMost, 'at most', 'Use more teeth or a smaller ratio; wide teeth are read by most sensors, but not by all.', 'caution'),
    ...one('valley-width', 'valley width at the tip', sizes.valleyChord, rule.valley, 'at least', `${fewer}, or a smaller ratio.`),
    ...one('tooth-height', 'tooth height', sizes.height, rule.height, 'at least', 'Make the root smaller.'),
    ...one('tooth-pitch', 'tooth pitch along the tips', sizes.pitch, rule.pitch, 'at least', `${fewer}.`),
    ...one('wheel-thickness', 'wheel thickness', joint.wheelSpec.thickness, rule.thickness, 'at least', 'Use thicker sheet.'),
    ...pole(joint, sizes),
    ...gap(joint, rule.gap, rule.gapTolerance, source),
  ];
}

/** A pole wider than the tooth never sees a clean edge. */
function pole(joint: Wheeled, sizes: ToothMeasures): Finding[] {
  const width = joint.job.sensor?.pole;
  if (width === undefined) return [];
  return [
    judged(
      {
        code: 'tooth-covers-pole',
        feature: 'wheel-outline',
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

function gap(joint: Wheeled, usual: number | null, tolerance: number | null, source: string): Finding[] {
  const set = joint.job.sensor?.gap;
  if (set === undefined || usual === null || tolerance === null) return [];
  return [
    judged(
      {
        code: 'sensor-gap',
        feature: 'wheel-outline',
        title: 'air gap off its middle value',
        unit: 'mm',
        why: `The gap is set to ${mm(set)}; this kind of sensor is usually set to ${mm(usual)}.`,
        cure: `Set the gap to ${mm(usual)} within ${mm(tolerance)}, or follow the sensor's own data sheet.`,
        source,
      },
      Math.abs(set - usual),
      { limit: tolerance, sense: 'at most', worst: 'caution' },
    ),
  ];
}

/** How the wheel is centred, and what it costs the sensor. */
function centred(joint: Wheeled): Finding[] {
  const register = joint.wheelRegister;
  if (!register) return [];
  const { sheet, sensor } = joint.job;
  const published = cutTolerance(joint.wheelSpec.thickness);
  const tolerance = sheet.tolerance ?? (published.ok ? published.value : 0.2);
  const bore = joint.wheelSpec.bore;
  const clearance = bore - register.diameter;
  const greatest = bore + tolerance - register.lower;
  const rule = sensor?.kind ? toothRule(sensor.kind) : null;
  const gapTolerance = rule?.ok ? rule.value.gapTolerance : null;
  const out: Finding[] = [
    judged(
      {
        code: 'wheel-goes-on',
        feature: 'wheel-bore',
        title: `wheel bore over ${register.what}`,
        unit: 'mm',
        why: `Bore ${mm(bore)} as drawn, register ${mm(register.diameter)}: ${mm(clearance)} clearance; the cut itself is good to ${mm(tolerance)}.`,
        cure: 'Make the bore larger, or have it cut undersize and turn it to the register.',
        source: 'published cutting tolerances; common practice',
      },
      bore - tolerance - register.upper,
      { limit: 0, sense: 'at least', worst: 'caution' },
    ),
    judged(
      {
        code: 'wheel-runout',
        feature: 'wheel-bore',
        title: 'run-out of the teeth that the wheel bore allows',
        unit: 'mm',
        why: `With the bore at its largest (${mm(bore + tolerance)}) the wheel can hang to one side; twice that shift is the run-out at the teeth.`,
        cure: 'Turn or ream the bore to the register after cutting, or set the wheel true with a dial before tightening.',
        source:
          gapTolerance === null
            ? 'common practice: 0.2 mm total run-out at the teeth'
            : 'a third of the gap tolerance of the sensor, common practice',
      },
      greatest,
      { limit: gapTolerance === null ? 0.2 : 2 * gapTolerance * runoutShareOfGapTolerance, sense: 'at most', worst: 'caution' },
    ),
  ];
  if (joint.job.wheel?.on === 'adapter') {
    const flange = joint[joint.job.wheel.face];
    out.push(
      judged(
        {
          code: 'wheel-clears-flange',
          feature: 'wheel-bore',
          title: `wheel seat clear of the ${flange.side} flange's rim`,
          unit: 'mm',
          why: `The ${flange.side} flange (${mm(flange.outside.value)}) lies inside the wheel's seat (${mm(register.diameter)}).`,
          cure: 'Make the seat larger than the flange.',
          source: 'geometry',
        },
        register.diameter - flange.outside.value - flange.outside.doubt,
        { limit: 0.2, sense: 'at least' },
      ),
    );
  }
  return out;
}

/** Web between the teeth's roots and the screw holes, and room for the screw heads under the teeth. */
function root(joint: Wheeled): Finding[] {
  const { wheel, wheelSpec } = joint;
  const holes = wheel.holes.filter((hole) => hole.feature !== 'wheel-bore');
  if (holes.length === 0) return [];
  const roots = holes.map((hole) => leastGap(hole, wheel.outside).gap);
  const screws = joint.screws.find((group) => group.side === 'wheel');
  const out = [
    judged(
      {
        code: 'root-web',
        feature: 'wheel-outline',
        title: 'web between the tooth roots and the screw holes',
        unit: 'mm',
        why: 'This ring carries the teeth.',
        cure: 'Make the screw circle smaller or the root larger.',
        source: 'common practice: at least the sheet thickness, and 3 mm',
      },
      Math.min(...roots),
      { limit: Math.max(wheelSpec.thickness, 3), sense: 'at least', hard: 0.5 * wheelSpec.thickness },
    ),
  ];
  if (screws && wheelSpec.screwHoles) {
    const outermost = Math.max(...screws.positions.map(({ x, y }) => Math.hypot(x, y))) + screws.head.diameter / 2;
    out.push(
      judged(
        {
          code: 'heads-below-roots',
          feature: 'wheel-screws',
          title: 'screw heads below the tooth roots',
          unit: 'mm',
          why: 'A steel head near the path of the sensor is read as a tooth.',
          cure: 'Make the screw circle smaller or the root larger.',
          source: 'common practice: other steel several millimetres below the roots',
        },
        wheelSpec.root / 2 - outermost,
        { limit: 3, sense: 'at least', hard: 0 },
      ),
    );
  }
  return out;
}

function magnetic(joint: Wheeled): Finding[] {
  const material = joint.wheelMaterial;
  if (!material) return [];
  return [
    stated(
      {
        code: 'wheel-magnetic',
        feature: 'wheel-outline',
        title: 'wheel material',
        unit: '',
        why: material.magnetic
          ? `${material.name} is ferromagnetic: the sensor can see it.`
          : `${material.name} is not ferromagnetic: no magnetic sensor sees its teeth.`,
        cure: 'Use low-carbon steel such as DC01 or S235JR.',
        source: 'a gear-tooth sensor data sheet: low-carbon steel target',
      },
      material.magnetic ? 'pass' : 'fail',
    ),
  ];
}

function missingTeeth(joint: Wheeled): Finding[] {
  const { missing, teeth: places } = joint.wheelSpec;
  if (missing === 0) return [];
  return [
    stated(
      {
        code: 'missing-teeth',
        feature: 'wheel-outline',
        title: `${missing} of ${places} teeth left out`,
        unit: '',
        why: 'A speed sensor reads the gap as a dip once a turn, and the wheel is out of balance. Missing teeth are for finding an angle.',
        cure: 'For a speed signal keep all teeth (missing: 0). Keep the gap only if the controller asks for it.',
        source: 'common practice',
      },
      'caution',
    ),
  ];
}

export const wheel: Check = {
  id: 'wheel',
  title: 'Wheel and teeth',
  source: 'sensor data sheets; common practice',
  run: (joint) =>
    hasWheel(joint) ? [...teeth(joint), ...missingTeeth(joint), ...root(joint), ...centred(joint), ...magnetic(joint)] : [],
};
