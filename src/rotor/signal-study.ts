/** What the job's sensor will see of the job's wheel over one turn: the wheel as drawn, hung as it may come out, and read as its kind reads. */
import { stackOf } from '../formulas/chain.ts';
import { chanceFrom } from '../formulas/chance.ts';
import { runoutRipple } from '../formulas/runout-turn.ts';
import { type Readings, readingsOf } from '../formulas/signal-periods.ts';
import { lowSpotShare, type SignalTrace, signalTrace } from '../formulas/signal-trace.ts';
import { type Edge, trackedEdges, zeroEdges } from '../formulas/switching.ts';
import { spacingLoss, toothPulse } from '../formulas/tooth-field.ts';
import { heightShare, windowTrace } from '../formulas/window-trace.ts';
import { polarRun, radiusAlong } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import { type SensorInput, sensorNeeds } from '../job/sensor-needs.ts';
import type { SheetPart } from '../model/sheet.ts';
import { hasWindows, type ToneWheelSpec, toothHeight, widthRadius } from '../parts/tone-wheel.ts';
import { faceWobble } from './gap-moves.ts';
import { linksTo } from './links.ts';
import { wheelCut } from './wheel-links.ts';
import { windowEdges } from './window-edges.ts';

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

/** What a sensor that looks through windows meets besides. */
export interface WindowsSeen {
  /** Share of the swing that the windows' height leaves. */
  readonly heightShare: number;
  /** How far their face goes to and fro, either way, mm. */
  readonly wobble: number;
}

/** One turn, seen and timed. */
export interface SignalStudy {
  readonly setting: SignalSetting;
  /** Places, and teeth that are there. */
  readonly places: number;
  readonly present: number;
  readonly trace: SignalTrace;
  /** Distance down to the steel under the sensor's middle, mm, by what has passed, radians, and the gap to tips or face, mm. */
  readonly steelBelow: (passed: number, gap: number) => number;
  /** Radius of the tip circle, or of the circle through the middle of windows, mm. */
  readonly tip: number;
  /** Windows: the share of the swing that their height leaves, and how far their face goes to and fro, mm. */
  readonly windows: WindowsSeen | null;
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

function settingOf(joint: Joint, sensor: NonNullable<Joint['job']['sensor']>, wobble: number | null): SignalSetting {
  const needs = sensorNeeds(sensor);
  const isCoil = sensor.kind === 'coil';
  const gap = needs.gap?.value ?? usualGap;
  const pole = sensor.pole ?? (isCoil ? usualPole : usualElement);
  const spacing = differential.includes(sensor.kind ?? '') ? (needs.of('spacing')?.value ?? null) : null;
  const worst = stackOf(linksTo(joint, 'teeth')).worst;
  // Past a face the wheel does not come nearer by what it is off centre: only the times change.
  const eccentricity = wobble === null ? Math.min(worst, mostOfGap * gap) : worst;
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
      ...(wobble !== null
        ? [
            `off centre by ${mm(eccentricity)}, the worst the links allow; the face goes to and fro by ${mm(wobble)}, nearest at bar 1`,
          ]
        : eccentricity < worst
          ? [`off centre by ${mm(eccentricity)} only: ${mm(worst)}, which the links allow, would touch`]
          : [`off centre by ${mm(eccentricity)}, the worst the links allow, narrowest at tooth 1`]),
      `each ${wobble === null ? 'tooth' : 'bar'} up to ${mm(toothError)} beside its place, by chance: half the tolerance of the cut, common practice`,
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

type Seen = Pick<SignalStudy, 'setting' | 'tip' | 'trace' | 'steelBelow' | 'windows'>;

/** A ten-millionth of a radian: hundred-thousandths of a mm at the rim. */
const besideSample = 1e-7;

/** Where bars or teeth stand, radians from the first. */
const placesOf = (spec: ToneWheelSpec, { toothError }: SignalSetting, radius: number): number[] => {
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  return toothShifts(spec.teeth - spec.missing, toothError, radius).map((shift, i) => i * pitchAngle + shift);
};

/** Open teeth past a sensor that looks at their tips. */
function seeTeeth(joint: Joint, wheel: SheetPart, spec: ToneWheelSpec, sensor: SensorInput): Seen {
  const setting = settingOf(joint, sensor, null);
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  const tip = spec.outside / 2;
  const sensorAngle = (spec.toothAngle * Math.PI) / 180;
  const outline = polarRun(wheel.outside);
  const trace = signalTrace({
    pulse: toothPulse(outline, sensorAngle, pitchAngle),
    teeth: placesOf(spec, setting, tip),
    pitchAngle,
    tip,
    gap: setting.gap,
    off: { size: setting.eccentricity, nearestAt: 0 },
    pole: setting.pole,
    spacing: setting.spacing,
  });
  // A radial flank must not lie on a sample, where the last bit of a sine would say which side of it is seen.
  const steelBelow = (passed: number, gap: number) =>
    tip + gap - radiusAlong(outline, sensorAngle - passed - besideSample);
  return { setting, tip, trace, steelBelow, windows: null };
}

/** Bars and windows past a sensor that looks along the axis at the middle of the windows. */
function seeWindows(joint: Joint, wheel: SheetPart, spec: ToneWheelSpec, sensor: SensorInput): Seen {
  const needs = sensorNeeds(sensor);
  const gap = needs.gap?.value ?? usualGap;
  const wobble = Math.min(faceWobble(joint), mostOfGap * gap);
  const setting = settingOf(joint, sensor, wobble);
  const radius = widthRadius(spec);
  const edges = windowEdges(wheel, spec);
  const trace = windowTrace({
    halfBar: edges.halfBar,
    bars: placesOf(spec, setting, radius),
    pitchAngle: (2 * Math.PI) / spec.teeth,
    radius,
    gap: setting.gap,
    wobble,
    off: { size: setting.eccentricity, nearestAt: 0 },
    pole: setting.pole,
    spacing: setting.spacing,
  });
  // Through a window there is nothing to see but what stands behind the sheet, at least as far as its other face.
  const steelBelow = (passed: number, now: number) =>
    now + (edges.isOpen(0 - passed - besideSample) ? spec.thickness : 0);
  const height = heightShare((2 * Math.PI * radius) / spec.teeth, toothHeight(spec), setting.gap, setting.pole);
  return { setting, tip: radius, trace, steelBelow, windows: { heightShare: height, wobble } };
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
  if (sensor.direction === 'axial' && !hasWindows(spec)) {
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
  const { setting, tip, trace, steelBelow, windows } = hasWindows(spec)
    ? seeWindows(joint, wheel, spec, sensor)
    : seeTeeth(joint, wheel, spec, sensor);
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  const edges = setting.isCoil
    ? zeroEdges({ turn: trace.turn, value: trace.slope }, arms)
    : trackedEdges({ turn: trace.turn, value: trace.level }, switchesOn, switchesOff);
  const timed = setting.isCoil ? 'falls' : 'rises';
  return {
    ok: true,
    study: {
      setting,
      places: spec.teeth,
      present: spec.teeth - spec.missing,
      trace,
      steelBelow,
      tip,
      windows,
      edges,
      timed,
      readings: readingsOf(edges, timed),
      pulses: edges.filter(({ rises }) => rises === (timed === 'rises')).length,
      lowSpot: windows
        ? spacingLoss(2 * windows.wobble, pitchAngle * tip)
        : lowSpotShare(setting.eccentricity, setting.gap, tip, spec.teeth),
      expected: {
        runout: runoutRipple(setting.eccentricity, windows ? tip : tip + setting.gap, spec.teeth),
        teeth: (2 * setting.toothError) / (pitchAngle * tip),
      },
    },
  };
}

/** Gap from the sensor down to the steel under its middle, mm, sample by sample of the trace; teeth at their places as drawn. */
export function steelGap({ trace, steelBelow }: SignalStudy): Float64Array {
  return Float64Array.from(trace.passed, (passed, k) => steelBelow(passed, trace.gap[k] as number));
}
