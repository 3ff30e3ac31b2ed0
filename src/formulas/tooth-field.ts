/**
 * The magnetic pattern of a toothed wheel in the air outside it, as a sensor of some width meets it. Relative: 1 over solid steel.
 *
 * One law: outside the tips the field has no sources, so each harmonic n of the pattern fades with the distance from the axis as
 * (R / rho)^n (potential of a cylinder, Laplace's equation). For the tooth harmonic that is exp(-2 pi gap / pitch), known from magnetic
 * recording as the spacing loss of R. L. Wallace, Bell System Technical Journal 30 (1951), from memory: 54.6 dB a wavelength. A pole of
 * width w averages over its face: sin(n w / 2 rho) / (n w / 2 rho).
 * Limits: steel of very great permeability, no saturation, no eddy currents, a wheel at least as thick as the pole, a pole that does not
 * itself disturb the pattern. What the tip circle carries is a model: steel at a depth d below the tips counts exp(-2 pi d / pitch), as
 * if the gap were larger by d. Good for shape, timing and ratios; not for volts.
 */
import { cos, sin } from '../units/trig.ts';
import { curvesOfHarmonics, type Strengths } from './fourier.ts';

/** Share of the signal that is left where the gap, or the depth below the tips, is larger by `more` mm. Pitch in mm, more than 0. */
export const spacingLoss = (more: number, pitch: number): number => Math.exp((-2 * Math.PI * more) / pitch);

/** A corner of a pattern: radians from the tooth's middle, and the level above the root's. */
export interface PulseNode {
  readonly angle: number;
  readonly level: number;
}

/** One tooth on the tip circle, and the level of the bare root. */
export interface ToothPulse {
  readonly nodes: readonly PulseNode[];
  readonly floor: number;
}

/**
 * The tooth whose middle stands at `at`, as the pattern that it lays on the tip circle.
 * @param outline polar nodes of the outline, counter-clockwise, a whole turn, angles in radians, r in mm
 * @param pitchAngle angle from tooth to tooth, radians
 * @param reach how far the tooth's own stretch goes to either side, radians, at most pi; left out: half a pitch
 */
export function toothPulse(
  outline: readonly { readonly angle: number; readonly r: number }[],
  at: number,
  pitchAngle: number,
  reach = pitchAngle / 2,
): ToothPulse {
  const turn = 2 * Math.PI;
  const tip = outline.reduce((most, { r }) => Math.max(most, r), 0);
  const root = outline.reduce((least, { r }) => Math.min(least, r), tip);
  const pitch = pitchAngle * tip;
  const floor = spacingLoss(tip - root, pitch);
  const from = outline[0]?.angle ?? 0;
  const middle = from + reach + ((((at - from - reach) % turn) + turn) % turn);
  const twice = [...outline, ...outline.slice(1).map(({ angle, r }) => ({ angle: angle + turn, r }))];
  const seen = twice.map(({ angle, r }) => ({ angle: angle - middle, level: spacingLoss(tip - r, pitch) - floor }));
  return { nodes: clipped(seen, reach), floor };
}

/** The part of a run of nodes between -reach and +reach. */
function clipped(nodes: readonly PulseNode[], reach: number): PulseNode[] {
  const out: PulseNode[] = [];
  nodes.forEach((b, i) => {
    const a = nodes[i - 1];
    if (a === undefined || b.angle < -reach || a.angle > reach) return;
    const cut = (angle: number): PulseNode => {
      const share = b.angle > a.angle ? (angle - a.angle) / (b.angle - a.angle) : 1;
      return { angle, level: a.level + share * (b.level - a.level) };
    };
    if (out.length === 0) out.push(a.angle < -reach ? cut(-reach) : a);
    out.push(b.angle > reach ? cut(reach) : b);
  });
  return out;
}

/** A tooth unlike the others, and where its middle stands, radians. Its root is that of the others. */
export interface OddTooth {
  readonly pulse: ToothPulse;
  readonly at: number;
}

/** Harmonics n = 0 upwards of a pattern round the tip circle. */
export type Harmonics = Strengths;

/**
 * Harmonics of equal teeth at the given angles (radians): those of one tooth times the sum of exp(-i n angle). Those of the tooth are
 * exact for a pattern that runs straight from node to node; sudden steps are allowed.
 * @param count how many, 2 or more
 * @param odd one tooth that is unlike them, or null
 */
export function toothHarmonics(
  pulse: ToothPulse,
  angles: readonly number[],
  count: number,
  odd: OddTooth | null = null,
): Harmonics {
  const sum: Harmonics = { re: new Float64Array(count), im: new Float64Array(count) };
  addTeeth(sum, pulse, angles);
  if (odd) addTeeth(sum, odd.pulse, [odd.at]);
  sum.re[0] = (sum.re[0] as number) + pulse.floor;
  return sum;
}

/** Adds equal teeth at the given angles to every harmonic. */
function addTeeth({ re, im }: Harmonics, pulse: ToothPulse, angles: readonly number[]): void {
  const count = re.length;
  const tooth = pulseHarmonics(pulse.nodes, count);
  const places: Harmonics = { re: new Float64Array(count), im: new Float64Array(count) };
  for (const angle of angles) addTurning(places, angle, 1, 0);
  for (let n = 0; n < count; n++) {
    const [a, b, c, d] = [tooth.re[n], tooth.im[n], places.re[n], places.im[n]] as [number, number, number, number];
    re[n] = (re[n] as number) + (a * c - b * d);
    im[n] = (im[n] as number) + (a * d + b * c);
  }
}

/** Adds (x + i y) exp(-i n angle) to every harmonic n. */
function addTurning({ re, im }: Harmonics, angle: number, x: number, y: number): void {
  const c = cos(angle);
  const s = sin(angle);
  let [a, b] = [x, y];
  for (let n = 0; n < re.length; n++) {
    re[n] = (re[n] as number) + a;
    im[n] = (im[n] as number) + b;
    [a, b] = [c * a + s * b, c * b - s * a];
  }
}

/** Pieces narrower than this, radians, are steps: the slope of a radial flank would be nothing but the last bit of its angles. */
const sudden = 1e-9;

/**
 * (1 / 2 pi) times the integral of the pulse times exp(-i n angle). By parts over each straight piece from (a, y) to (b, z) of slope m:
 * i / n (z e^-inb - y e^-ina) + m / n^2 (e^-inb - e^-ina).
 */
function pulseHarmonics(nodes: readonly PulseNode[], count: number): Harmonics {
  const levels: Harmonics = { re: new Float64Array(count), im: new Float64Array(count) };
  const slopes: Harmonics = { re: new Float64Array(count), im: new Float64Array(count) };
  let area = 0;
  nodes.forEach((b, i) => {
    const a = nodes[i - 1];
    if (a === undefined || b.angle - a.angle < sudden) return;
    const slope = (b.level - a.level) / (b.angle - a.angle);
    area += ((a.level + b.level) / 2) * (b.angle - a.angle);
    addTurning(levels, b.angle, 0, b.level);
    addTurning(levels, a.angle, 0, -a.level);
    addTurning(slopes, b.angle, slope, 0);
    addTurning(slopes, a.angle, -slope, 0);
  });
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  re[0] = area / (2 * Math.PI);
  for (let n = 1; n < count; n++) {
    re[n] = ((levels.re[n] as number) / n + (slopes.re[n] as number) / n ** 2) / (2 * Math.PI);
    im[n] = ((levels.im[n] as number) / n + (slopes.im[n] as number) / n ** 2) / (2 * Math.PI);
  }
  return { re, im };
}

/** How the pattern is met: how far from the axis, over what width of face, and by one element or by two that are subtracted. */
export interface Pickup {
  /** Distance from the wheel's centre, mm, at least the tip radius. */
  readonly rho: number;
  /** What is left of harmonic 1 where the sensor does not look at the tips; left out: (tip / rho). */
  readonly fades?: number;
  /** Width of the face along the path, mm, 0 or more. */
  readonly pole: number;
  /** Distance between two elements of which the first less the second is read; null for one. */
  readonly spacing: number | null;
}

/**
 * What is met at M equal steps of the angle, from 0, counter-clockwise in the wheel's own frame: a curve for each way of meeting it.
 * @param tip radius of the tip circle, mm
 * @param samples M, a power of two, at least twice the harmonics
 */
export function fieldsRound(
  harmonics: Harmonics,
  tip: number,
  pickups: readonly Pickup[],
  samples: number,
): Float64Array[] {
  return curvesOfHarmonics(
    pickups.map((pickup) => met(harmonics, tip, pickup)),
    samples,
  );
}

function met({ re, im }: Harmonics, tip: number, { rho, fades, pole, spacing }: Pickup): Strengths {
  const count = re.length;
  const out = { re: new Float64Array(count), im: new Float64Array(count) };
  const ratio = fades ?? tip / rho;
  let faded = 1;
  for (let n = 0; n < count; n++, faded *= ratio) {
    const half = (n * pole) / (2 * rho);
    const keep = faded * (half === 0 ? 1 : sin(half) / half);
    const x = keep * (re[n] as number);
    const y = keep * (im[n] as number);
    // The difference of two places apart by 2 a turns each harmonic by a quarter and scales it by 2 sin(n a).
    const twice = spacing === null ? null : 2 * sin((n * spacing) / (2 * rho));
    out.re[n] = twice === null ? x : -twice * y;
    out.im[n] = twice === null ? y : twice * x;
  }
  return out;
}
