/**
 * One turn of a wheel with windows, or with open teeth read from the side, past a sensor that looks along the axis at the middle of them: gap, level, rate of change.
 *
 * The law of `tooth-field` for a flat face: above it the field has no sources, so each harmonic n of the pattern round the middle circle
 * R fades with the distance g from the face as exp(-n g / R) (Laplace's equation over a plane; the spacing loss of magnetic recording).
 * Limits besides those of `tooth-field`: the circle is taken as straight over a pitch; a window is open right through and nothing stands
 * close behind it; the bar is taken as wide as it is on that circle, whose flanks a face of some height averages to first order; windows
 * are taken as high enough that rim and hub are not seen. `heightShare` tells what that last one costs. Open teeth are bars, their valleys
 * windows without a rim: beyond the tips there is never steel, as there always is over a rim, and what never changes makes no signal.
 */
import { cos, sin } from '../units/trig.ts';
import { type Eccentricity, turnWhenPassed } from './runout-turn.ts';
import {
  chebyshev,
  distances,
  emptyTrace,
  faint,
  interpolator,
  type SignalTrace,
  sizesFor,
  withSlope,
} from './signal-trace.ts';
import { fieldsRound, type ToothPulse, toothHarmonics } from './tooth-field.ts';

/** A wheel with windows, or open teeth, before a sensor that looks along the axis. mm, radians. */
export interface SensedWindows {
  /** Half of the angle that a bar takes on the middle circle. */
  readonly halfBar: number;
  /** Middles of the bars that are there, from the one that stands at the sensor when the turn begins, counter-clockwise. */
  readonly bars: readonly number[];
  /** A bar besides that is unlike them: its middle, and half of the angle that it takes. Left out: none. */
  readonly odd?: { readonly at: number; readonly half: number } | null;
  readonly pitchAngle: number;
  /** Radius of the circle through the middle of the windows, where the sensor stands. */
  readonly radius: number;
  /** Set gap to the face, and how far the face comes nearer and goes away in a turn. */
  readonly gap: number;
  readonly wobble: number;
  /** How far the wheel is off the axis: it moves bars past the sensor too early and too late. */
  readonly off: Eccentricity;
  readonly pole: number;
  readonly spacing: number | null;
}

/** Steel over the bar, nothing over the window. */
const barPulse = (half: number): ToothPulse => ({
  nodes: [
    { angle: -half, level: 0 },
    { angle: -half, level: 1 },
    { angle: half, level: 1 },
    { angle: half, level: 0 },
  ],
  floor: 0,
});

/** The trace of one turn at an even speed; the face is nearest when the turn begins. Valid for a wobble smaller than the gap. */
export function windowTrace(wheel: SensedWindows): SignalTrace {
  const { halfBar, bars, odd = null, pitchAngle, radius, gap, wobble, off, pole, spacing } = wheel;
  if (!(wobble < gap)) throw new Error(`The face wobbles by ${wobble} mm, the gap is ${gap} mm: it touches.`);
  const { count, samples } = sizesFor((-Math.log(faint) * radius) / (gap - wobble), pitchAngle);
  const harmonics = toothHarmonics(barPulse(halfBar), bars, count, odd && { pulse: barPulse(odd.half), at: odd.at });
  const nodes = wobble === 0 ? [gap] : chebyshev(gap, wobble, distances);
  const pickups = nodes.map((g) => ({ rho: radius, fades: Math.exp(-g / radius), pole, spacing }));
  const level = interpolator(nodes, fieldsRound(harmonics, radius, pickups, samples));
  const trace = emptyTrace(samples);
  for (let k = 0; k < samples; k++) {
    const passed = (2 * Math.PI * k) / samples;
    const turn = turnWhenPassed(passed, radius, off);
    const now = gap - wobble * cos(turn);
    trace.passed[k] = passed;
    trace.turn[k] = turn;
    trace.gap[k] = now;
    // What has passed the sensor lies behind it: the wheel's own angles run the other way.
    trace.level[k] = level((samples - k) % samples, now);
  }
  return withSlope(trace);
}

/** Steps of the sum over a period of its fastest sine, and where the fading has left nothing of it. */
const stepsAPeriod = 24;
const nothingLeft = 30;

/**
 * Share of the swing of one harmonic that windows of a height leave, against endless ones: the face sees rim and hub beside them. Teeth
 * read from the side leave as much: beyond their tips there is air instead of a rim, and that changes as little.
 * (1 / 2 pi) times the integral over k of H sinc(k H / 2) sinc(k w / 2) exp(-(sqrt(p^2 + k^2) - p) g), p the harmonic's own wave number:
 * the band of windows is a pulse H high across the path, each of whose waves fades with the root of both wave numbers (Laplace). At no
 * gap it is what of the face lies over the windows, H / w at most 1.
 * @param pitch from bar to bar, mm
 * @param height radial height of the windows, mm, more than 0
 * @param gap mm, more than 0
 * @param pole height of the face, taken as its width, mm, 0 or more
 */
export function heightShare(pitch: number, height: number, gap: number, pole: number): number {
  const p = (2 * Math.PI) / pitch;
  const sinc = (x: number) => (x === 0 ? 1 : sin(x) / x);
  const at = (k: number) =>
    height * sinc((k * height) / 2) * sinc((k * pole) / 2) * Math.exp(-(Math.sqrt(p * p + k * k) - p) * gap);
  const end = p + nothingLeft / gap;
  const steps = 2 * Math.ceil((end * stepsAPeriod * (height + pole)) / (8 * Math.PI));
  const step = end / steps;
  let sum = at(0) + at(end);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * at(i * step);
  // The two halves of the line are alike.
  return (2 * ((sum * step) / 3)) / (2 * Math.PI);
}
