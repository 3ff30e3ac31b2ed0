/** What the job's sensor will see of the job's wheel over one turn: the wheel as drawn, hung as it may come out, and read as its kind reads. */
import { stackOf } from '../formulas/chain.ts';
import { chanceFrom } from '../formulas/chance.ts';
import { runoutRipple } from '../formulas/runout-turn.ts';
import { type Readings, readingsOf } from '../formulas/signal-periods.ts';
import { lowSpotShare, type SignalTrace, signalTrace } from '../formulas/signal-trace.ts';
import { type Edge, trackedEdges, zeroEdges } from '../formulas/switching.ts';
import { toothPulse } from '../formulas/tooth-field.ts';
import { type PolarNode, polarRun, radiusAlong } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import { linksTo } from './links.ts';
import { wheelCut } from './wheel-links.ts';

/** What the study started from, and what it took where nobody said. */
export interface SignalSetting {
  /** "coil with magnet (inductive)" */
  readonly sensor: string;
  readonly isCoil: boolean;
  /** Set air gap, mm; width of pole or element; distance between two that are subtracted, or null. */
  readonly gap: number;
  readonly pole: number;
  readonly spacing: number | null;
  /** How far the teeth's middle is off the axis, mm, and what the chain would allow at worst. */
  readonly eccentricity: number;
  readonly worstEccentricity: number;
  /** How far each tooth may stand beside its place, mm. */
  readonly toothError: number;
  /** Sentences: what was taken without being told. */
  readonly taken: readonly string[];
}

/** One turn, seen and timed. */
export interface SignalStudy {
  readonly setting: SignalSetting;
  /** Places, and teeth that are there. */
  readonly places: number;
  readonly present: number;
  readonly trace: SignalTrace;
  /** The outline and the sensor's angle in it, radians: for the gap down to the steel itself. */
  readonly outline: readonly PolarNode[];
  readonly sensorAngle: number;
  /** Radius of the tip circle, mm. */
  readonly tip: number;
  readonly edges: readonly Edge[];
  /** Which edge the controller times. */
  readonly timed: 'rises' | 'falls';
  /** Null where the sensor makes too few pulses to be timed. */
  readonly readings: Readings | null;
  /** Pulses in a turn. */
  readonly pulses: number;
  /** Signal where the gap is widest as a share of that where it is narrowest. */
  readonly lowSpot: number;
  /** Closed form: greatest period error from running out, and from two neighbours that stand furthest apart; shares. */
  readonly expected: { readonly runout: number; readonly teeth: number };
}

export type SignalAnswer =
  | { readonly ok: true; readonly study: SignalStudy }
  | { readonly ok: false; readonly why: string; readonly missing: string };

/** Most tooth places that are simulated. */
const mostPlaces = 720;
/** Pole of a coil whose width nobody gave, mm; a Hall element is small. Common practice. */
const usualPole = 3;
const usualElement = 0.3;
/** Gap where none is known, mm. Common practice. */
const usualGap = 1;
/** A wheel that would run out further than this share of its gap is drawn at it: beyond, it touches. */
const mostOfGap = 0.9;
/** Switching at 60 and 40 % of what the last edges showed: data sheet of a true zero-speed gear-tooth sensor. */
export const switchesOn = 0.6;
export const switchesOff = 0.4;
/** A coil's squarer takes swings of a tenth of the greatest and more. Common practice. */
export const arms = 0.1;
/** Kinds that read the difference of two elements. */
const differential: readonly string[] = ['differential_hall', 'active_wheel_speed'];

function settingOf(joint: Joint, sensor: NonNullable<Joint['job']['sensor']>): SignalSetting {
  const needs = sensorNeeds(sensor);
  const isCoil = sensor.kind === 'coil';
  const gap = needs.gap?.value ?? usualGap;
  const pole = sensor.pole ?? (isCoil ? usualPole : usualElement);
  const spacing = differential.includes(sensor.kind ?? '') ? (needs.of('spacing')?.value ?? null) : null;
  const worst = stackOf(linksTo(joint, 'teeth')).worst;
  const eccentricity = Math.min(worst, mostOfGap * gap);
  const toothError = wheelCut(joint) / 2;
  const mm = (value: number) => `${Number(value.toFixed(3))} mm`;
  return {
    sensor: needs.kind?.title ?? 'sensor',
    isCoil,
    gap,
    pole,
    spacing,
    eccentricity,
    worstEccentricity: worst,
    toothError,
    taken: [
      ...(needs.gap?.isGiven ? [] : [`gap ${mm(gap)}, usual for the kind (sensor.gap)`]),
      ...(sensor.pole === undefined ? [`${isCoil ? 'pole' : 'element'} ${mm(pole)} wide (sensor.pole)`] : []),
      ...(spacing !== null && sensor.spacing === undefined ? [`elements ${mm(spacing)} apart (sensor.spacing)`] : []),
      ...(eccentricity < worst
        ? [`off centre by ${mm(eccentricity)} only: ${mm(worst)}, which the links allow, would touch`]
        : [`off centre by ${mm(eccentricity)}, the worst the links allow, narrowest at tooth 1`]),
      `each tooth up to ${mm(toothError)} beside its place, by chance: half the tolerance of the cut, common practice`,
    ],
  };
}

/** Shifts of the teeth, radians: even chance up to the most, always the same throw. */
function toothShifts(count: number, most: number, tip: number): number[] {
  const chance = chanceFrom(1);
  return Array.from({ length: count }, () => ((2 * chance() - 1) * most) / tip);
}

/** A joint never changes, and check, picture and files all ask for the same study. */
const studied = new WeakMap<Joint, SignalAnswer>();

/** The study, or what it lacks. Takes some milliseconds the first time. */
export function studySignal(joint: Joint): SignalAnswer {
  const answer = studied.get(joint) ?? study(joint);
  studied.set(joint, answer);
  return answer;
}

function study(joint: Joint): SignalAnswer {
  const { wheel, wheelSpec: spec } = joint;
  const { sensor } = joint.job;
  if (!wheel || !spec) return { ok: false, why: 'There is no wheel.', missing: 'Give the section wheel.' };
  if (sensor?.kind === undefined) {
    return {
      ok: false,
      why: 'How the teeth are read hangs on the kind of sensor.',
      missing: 'Give sensor.kind; what the leads do on a meter tells it.',
    };
  }
  if (sensor.direction === 'axial') {
    return {
      ok: false,
      why: 'The signal is simulated for a sensor that looks at the tips; this one looks at the flat side.',
      missing: 'Try it with a scope on the bench, or give sensor.direction: radial.',
    };
  }
  if (spec.teeth > mostPlaces) {
    return {
      ok: false,
      why: `The signal is simulated for up to ${mostPlaces} tooth places; this wheel has ${spec.teeth}.`,
      missing: 'Use fewer teeth (wheel.teeth).',
    };
  }
  const setting = settingOf(joint, sensor);
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  const tip = spec.outside / 2;
  const present = spec.teeth - spec.missing;
  const sensorAngle = (spec.toothAngle * Math.PI) / 180;
  const outline = polarRun(wheel.outside);
  const shifts = toothShifts(present, setting.toothError, tip);
  const trace = signalTrace({
    pulse: toothPulse(outline, sensorAngle, pitchAngle),
    teeth: shifts.map((shift, i) => i * pitchAngle + shift),
    pitchAngle,
    tip,
    gap: setting.gap,
    off: { size: setting.eccentricity, nearestAt: 0 },
    pole: setting.pole,
    spacing: setting.spacing,
  });
  const edges = setting.isCoil
    ? zeroEdges({ turn: trace.turn, value: trace.slope }, arms)
    : trackedEdges({ turn: trace.turn, value: trace.level }, switchesOn, switchesOff);
  const timed = setting.isCoil ? 'falls' : 'rises';
  return {
    ok: true,
    study: {
      setting,
      places: spec.teeth,
      present,
      trace,
      outline,
      sensorAngle,
      tip,
      edges,
      timed,
      readings: readingsOf(edges, timed),
      pulses: edges.filter(({ rises }) => rises === (timed === 'rises')).length,
      lowSpot: lowSpotShare(setting.eccentricity, setting.gap, tip, spec.teeth),
      expected: {
        runout: runoutRipple(setting.eccentricity, tip + setting.gap, spec.teeth),
        teeth: (2 * setting.toothError) / (pitchAngle * tip),
      },
    },
  };
}

/** A ten-millionth of a radian: hundred-thousandths of a mm at the rim. */
const besideSample = 1e-7;

/** Gap from the sensor down to the steel under its middle, mm, sample by sample of the trace; teeth at their places as drawn. */
export function steelGap({ trace, outline, sensorAngle, tip }: SignalStudy): Float64Array {
  return Float64Array.from(trace.passed, (passed, k) => {
    const rho = tip + (trace.gap[k] as number);
    // A radial flank must not lie on a sample, where the last bit of a sine would say which side of it is seen.
    return rho - radiusAlong(outline, sensorAngle - passed - besideSample);
  });
}
