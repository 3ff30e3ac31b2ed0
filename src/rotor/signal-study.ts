/** What the job's sensor will see of the job's wheel over one turn: the wheel as drawn, hung as it may come out, and read as its kind reads. */
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
import { type ToothWords, toothWords } from '../job/wheel-form.ts';
import type { SheetPart } from '../model/sheet.ts';
import {
  axialRadius,
  hasWindows,
  markOf,
  type PositionMark,
  pulseCount,
  type ToneWheelSpec,
  toothHeight,
  toothRow,
} from '../parts/tone-wheel.ts';
import { faceWobble } from './gap-moves.ts';
import { mostOfGap, type SignalSetting, settingOf, usualGap } from './signal-setting.ts';
import { windowEdges } from './window-edges.ts';

/** What a sensor that looks along the axis meets besides. */
export interface FaceSeen {
  /** Share of the swing that the height of windows or teeth leaves. */
  readonly heightShare: number;
  /** How far their face goes to and fro, either way, mm. */
  readonly wobble: number;
}

/** One turn, seen and timed. */
export interface SignalStudy {
  readonly setting: SignalSetting;
  /** Places, and teeth that are there; what marks a position, and what teeth are called. */
  readonly places: number;
  readonly present: number;
  readonly mark: PositionMark | null;
  readonly words: ToothWords;
  readonly isWindows: boolean;
  readonly trace: SignalTrace;
  /** Distance down to the steel under the sensor's middle, mm, by what has passed, radians, and the gap to tips or face, mm. */
  readonly steelBelow: (passed: number, gap: number) => number;
  /** Radius of the tip circle; read from the side: of the circle through the middle of windows or teeth. mm. */
  readonly tip: number;
  /** Read from the side; null where the sensor looks at the tips. */
  readonly face: FaceSeen | null;
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
/** Switching at 60 and 40 % of what the last edges showed: data sheet of a true zero-speed gear-tooth sensor. */
export const switchesOn = 0.6;
export const switchesOff = 0.4;
/** A coil's squarer takes swings of a tenth of the greatest and more. Common practice. */
export const arms = 0.1;
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

type Seen = Pick<SignalStudy, 'setting' | 'tip' | 'trace' | 'steelBelow' | 'face'>;

/** A ten-millionth of a radian: hundred-thousandths of a mm at the rim. */
const besideSample = 1e-7;

/** Where bars or teeth stand, radians from the first: those that are alike, and the wide one or null. */
function placesOf(spec: ToneWheelSpec, { toothError }: SignalSetting, radius: number) {
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  const shifts = toothShifts(pulseCount(spec), toothError, radius);
  const middles = toothRow(spec).map(({ from, to }, i) => ((from + to) / 2) * pitchAngle + (shifts[i] as number));
  const wide = spec.wide ?? 0;
  const isWide = wide > 0;
  return {
    alike: isWide ? middles.slice(0, -1) : middles,
    odd: isWide ? { at: middles.at(-1) as number, more: (wide / 2) * pitchAngle } : null,
  };
}

/**
 * Periods as drawn, places, in order of turn: the wheel turns counter-clockwise, so that what stands before tooth 1 passes after it.
 * A switch goes on where a tooth comes, a coil's zero stands in its middle. Only where a tooth is unlike the others.
 */
function periodsAsDrawn(spec: ToneWheelSpec, isCoil: boolean): number[] {
  const mark = markOf(spec);
  if (mark === null || mark.kind === 'missing') return [];
  const timed = toothRow(spec).map(({ from, to }) => (isCoil ? (from + to) / 2 : to));
  return timed.map((at, i) => at - (timed[i - 1] ?? (timed.at(-1) as number) - spec.teeth)).reverse();
}

/** Open teeth past a sensor that looks at their tips. */
function seeTeeth(joint: Joint, wheel: SheetPart, spec: ToneWheelSpec, sensor: SensorInput): Seen {
  const setting = settingOf(joint, sensor, toothWords(spec), null);
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  const tip = spec.outside / 2;
  const sensorAngle = (spec.toothAngle * Math.PI) / 180;
  const outline = polarRun(wheel.outside);
  const { alike, odd } = placesOf(spec, setting, tip);
  // Half a pitch to either side of tooth 1 an extra tooth would come in; tooth 2 stands free of it.
  const plain = sensorAngle + (spec.extra ? pitchAngle : 0);
  const wide = sensorAngle - (markOf(spec)?.before ?? 0) * pitchAngle;
  const trace = signalTrace({
    pulse: toothPulse(outline, plain, pitchAngle),
    teeth: alike,
    odd: odd && { at: odd.at, pulse: toothPulse(outline, wide, pitchAngle, pitchAngle / 2 + odd.more) },
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
  return { setting, tip, trace, steelBelow, face: null };
}

/** Bars and windows, or teeth and valleys, past a sensor that looks along the axis at their middle. */
function seeFace(joint: Joint, wheel: SheetPart, spec: ToneWheelSpec, sensor: SensorInput): Seen {
  const needs = sensorNeeds(sensor);
  const gap = needs.gap?.value ?? usualGap;
  const radius = axialRadius(spec);
  const wobble = Math.min(faceWobble(joint, radius), mostOfGap * gap);
  const setting = settingOf(joint, sensor, toothWords(spec), wobble);
  const edges = windowEdges(wheel, spec);
  const { alike, odd } = placesOf(spec, setting, radius);
  const trace = windowTrace({
    halfBar: edges.halfBar,
    bars: alike,
    odd: odd && { at: odd.at, half: edges.halfBar + odd.more },
    pitchAngle: (2 * Math.PI) / spec.teeth,
    radius,
    gap: setting.gap,
    wobble,
    off: { size: setting.eccentricity, nearestAt: 0 },
    pole: setting.pole,
    spacing: setting.spacing,
  });
  // Through a window or a valley there is nothing to see but what stands behind the sheet, at least as far as its other face.
  const steelBelow = (passed: number, now: number) =>
    now + (edges.isOpen(0 - passed - besideSample) ? spec.thickness : 0);
  const height = heightShare((2 * Math.PI * radius) / spec.teeth, toothHeight(spec), setting.gap, setting.pole);
  return { setting, tip: radius, trace, steelBelow, face: { heightShare: height, wobble } };
}

function study(joint: Joint): SignalAnswer {
  const { wheel, wheelSpec: spec } = joint;
  const { sensor } = joint.job;
  if (!wheel || !spec) return { ok: false, why: 'There is no wheel.', missing: 'Give the section wheel.' };
  if (sensor?.kind === undefined) {
    return {
      ok: false,
      why: `How the ${toothWords(spec).teeth} are read hangs on the kind of sensor.`,
      missing: 'Give sensor.kind; what the leads do on a meter tells it.',
    };
  }
  if (spec.teeth > mostPlaces) {
    return {
      ok: false,
      why: `The signal is simulated for up to ${mostPlaces} tooth places; this wheel has ${spec.teeth}.`,
      missing: 'Use fewer teeth (wheel.teeth).',
    };
  }
  const isAxial = hasWindows(spec) || sensor.direction === 'axial';
  const seen = isAxial ? seeFace(joint, wheel, spec, sensor) : seeTeeth(joint, wheel, spec, sensor);
  const { setting, tip, trace, face } = seen;
  const pitchAngle = (2 * Math.PI) / spec.teeth;
  const edges = setting.isCoil
    ? zeroEdges({ turn: trace.turn, value: trace.slope }, arms)
    : trackedEdges({ turn: trace.turn, value: trace.level }, switchesOn, switchesOff);
  const timed = setting.isCoil ? 'falls' : 'rises';
  return {
    ok: true,
    study: {
      ...seen,
      places: spec.teeth,
      present: pulseCount(spec),
      mark: markOf(spec),
      words: toothWords(spec),
      isWindows: hasWindows(spec),
      edges,
      timed,
      readings: readingsOf(edges, timed, periodsAsDrawn(spec, setting.isCoil)),
      pulses: edges.filter(({ rises }) => rises === (timed === 'rises')).length,
      lowSpot: face
        ? spacingLoss(2 * face.wobble, pitchAngle * tip)
        : lowSpotShare(setting.eccentricity, setting.gap, tip, spec.teeth),
      expected: {
        runout: runoutRipple(setting.eccentricity, face ? tip : tip + setting.gap, spec.teeth),
        teeth: (2 * setting.toothError) / (pitchAngle * tip),
      },
    },
  };
}

/** Gap from the sensor down to the steel under its middle, mm, sample by sample of the trace; teeth at their places as drawn. */
export function steelGap({ trace, steelBelow }: SignalStudy): Float64Array {
  return Float64Array.from(trace.passed, (passed, k) => steelBelow(passed, trace.gap[k] as number));
}
