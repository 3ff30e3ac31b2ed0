/** One turn of a toothed wheel past a sensor that stands still: gap, level and rate of change, as the shaft turns. */
import { cos } from '../units/trig.ts';
import { distanceFromWheel, type Eccentricity, turnWhenPassed } from './runout-turn.ts';
import { fieldsRound, type OddTooth, spacingLoss, type ToothPulse, toothHarmonics } from './tooth-field.ts';

/** A wheel before its sensor. mm, radians. */
export interface SensedWheel {
  readonly pulse: ToothPulse;
  /** Middles of the teeth that are there, from the one that stands at the sensor when the turn begins, counter-clockwise. */
  readonly teeth: readonly number[];
  /** A tooth besides that is unlike them; left out: none. */
  readonly odd?: OddTooth | null;
  /** Angle from place to place, radians. */
  readonly pitchAngle: number;
  /** Radius of the tip circle. */
  readonly tip: number;
  /** Set gap from the tips of a wheel that runs true. */
  readonly gap: number;
  readonly off: Eccentricity;
  /** Width of the pole or element, and distance between two that are subtracted, or null. */
  readonly pole: number;
  readonly spacing: number | null;
}

/** Samples over one turn, all of one length. The wheel turns counter-clockwise. */
export interface SignalTrace {
  /** Turn of the shaft, radians, growing; first at or near 0. */
  readonly turn: Float64Array;
  /** How far the wheel has moved past the sensor, radians, in equal steps from 0. */
  readonly passed: Float64Array;
  /** Gap to the tip circle, mm: the set gap, more or less as the wheel runs out. */
  readonly gap: Float64Array;
  /** What one element reads, or the difference of two; relative. */
  readonly level: Float64Array;
  /** Its change by the turn of the shaft, per radian: what a coil turns into volts. */
  readonly slope: Float64Array;
}

/** Harmonics fainter than this at the least gap are left out, a share of the strongest. */
export const faint = 1e-6;
/** Never more samples than this. */
const mostSamples = 2 ** 17;
/** Never fewer samples a tooth than this, as long as that many fit. */
const samplesPerTooth = 64;
/** Distances between which the level is interpolated when the wheel runs out. */
export const distances = 6;

/** How many harmonics count, and how many samples carry them. */
function sizes({ tip, gap, off, pitchAngle }: SensedWheel): { readonly count: number; readonly samples: number } {
  return sizesFor(-Math.log(faint) / Math.log((tip + gap - off.size) / tip), pitchAngle);
}

/** Harmonics and samples of a turn where so many harmonics are not faint. */
export function sizesFor(wanted: number, pitchAngle: number): { readonly count: number; readonly samples: number } {
  const teeth = (2 * Math.PI) / pitchAngle;
  const least = Math.max(1024, 4 * wanted, samplesPerTooth * teeth);
  const samples = Math.min(mostSamples, 2 ** Math.ceil(Math.log2(least)));
  return { count: Math.max(8, Math.min(Math.ceil(wanted), samples / 2)), samples };
}

/**
 * The trace of one turn at an even speed. Exact in the geometry of running out; the field by `tooth-field`.
 * Valid for an eccentricity smaller than the gap: otherwise the teeth touch the sensor.
 */
export function signalTrace(wheel: SensedWheel): SignalTrace {
  const { pulse, teeth, odd = null, tip, gap, off, pole, spacing } = wheel;
  if (!(off.size < gap)) throw new Error(`The wheel runs out by ${off.size} mm, the gap is ${gap} mm: it touches.`);
  const { count, samples } = sizes(wheel);
  const harmonics = toothHarmonics(pulse, teeth, count, odd);
  const reach = tip + gap;
  const nodes = off.size === 0 ? [reach] : chebyshev(reach, off.size, distances);
  const pickups = nodes.map((rho) => ({ rho, pole, spacing }));
  const level = interpolator(nodes, fieldsRound(harmonics, tip, pickups, samples));
  const trace = emptyTrace(samples);
  for (let k = 0; k < samples; k++) {
    const passed = (2 * Math.PI * k) / samples;
    const turn = turnWhenPassed(passed, reach, off);
    const rho = distanceFromWheel(turn, reach, off);
    trace.passed[k] = passed;
    trace.turn[k] = turn;
    trace.gap[k] = rho - tip;
    // What has passed the sensor lies behind it: the wheel's own angles run the other way.
    const at = (samples - k) % samples;
    trace.level[k] = level(at, rho);
  }
  return withSlope(trace);
}

/** A trace of so many samples, to be filled. */
export const emptyTrace = (samples: number): SignalTrace => ({
  turn: new Float64Array(samples),
  passed: new Float64Array(samples),
  gap: new Float64Array(samples),
  level: new Float64Array(samples),
  slope: new Float64Array(samples),
});

/** The same trace, its slope filled in from turn and level. */
export function withSlope(trace: SignalTrace): SignalTrace {
  const samples = trace.turn.length;
  for (let k = 0; k < samples; k++) {
    const a = (k - 1 + samples) % samples;
    const b = (k + 1) % samples;
    const between = (trace.turn[b] as number) - (trace.turn[a] as number) + (b < a ? 2 * Math.PI : 0);
    trace.slope[k] = ((trace.level[b] as number) - (trace.level[a] as number)) / between;
  }
  return trace;
}

/** Chebyshev's places between middle - reach and middle + reach: where a polynomial is best held. */
export function chebyshev(middle: number, reach: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => middle + reach * cos((Math.PI * (i + 0.5)) / count));
}

/**
 * Lagrange's polynomial through the curves, at a sample and a distance. What hangs on the nodes alone is worked out once. Source:
 * barycentric form, J.-P. Berrut and L. N. Trefethen, SIAM Review 46 (2004) 501, from memory.
 */
export function interpolator(
  nodes: readonly number[],
  curves: readonly Float64Array[],
): (at: number, rho: number) => number {
  const weights = nodes.map((node, i) =>
    nodes.reduce((weight, other, j) => (j === i ? weight : weight / (node - other)), 1),
  );
  return (at, rho) => {
    let sum = 0;
    let total = 0;
    for (let i = 0; i < nodes.length; i++) {
      const value = (curves[i] as Float64Array)[at] as number;
      const apart = rho - (nodes[i] as number);
      if (apart === 0) return value;
      const weight = (weights[i] as number) / apart;
      sum += weight * value;
      total += weight;
    }
    return sum / total;
  };
}

/**
 * Signal at the widest gap of a turn as a share of that at the narrowest: the tooth harmonic's (R / rho)^N, which is
 * exp(-2 pi (2 e) / pitch) for a large wheel. mm.
 */
export function lowSpotShare(size: number, gap: number, tip: number, teeth: number): number {
  return ((tip + gap - size) / (tip + gap + size)) ** teeth;
}

/** Signal at a gap as a share of that at another gap, mm: `spacingLoss` of the difference. */
export const gapShare = (gap: number, than: number, pitch: number): number => spacingLoss(gap - than, pitch);
