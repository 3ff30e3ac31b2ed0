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
  // Twice round, so that no tooth is cut by the end of the run; of all those nodes only the tooth's own are worked out.
  const last = outline.length - 1;
  const angleOf = (i: number): number =>
    (i > last ? (outline[i - last]?.angle ?? 0) + turn : (outline[i]?.angle ?? 0)) - middle;
  const levelOf = (i: number): number => spacingLoss(tip - (outline[i > last ? i - last : i]?.r ?? 0), pitch) - floor;
  const nodes: PulseNode[] = [];
  for (let i = 1; i <= 2 * last; i++) {
    const from = angleOf(i - 1);
    const to = angleOf(i);
    if (to < -reach || from > reach) continue;
    const a = { angle: from, level: levelOf(i - 1) };
    const b = { angle: to, level: levelOf(i) };
    if (nodes.length === 0) nodes.push(from < -reach ? cut(a, b, -reach) : a);
    nodes.push(to > reach ? cut(a, b, reach) : b);
  }
  return { nodes, floor };
}

/** The place between two nodes at an angle. */
function cut(a: PulseNode, b: PulseNode, angle: number): PulseNode {
  const share = b.angle > a.angle ? (angle - a.angle) / (b.angle - a.angle) : 1;
  return { angle, level: a.level + share * (b.level - a.level) };
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
  const places = sumOfTurning(
    angles.map((angle) => ({ angle, x: 1, y: 0 })),
    count,
  );
  for (let n = 0; n < count; n++) {
    const a = tooth.re[n] as number;
    const b = tooth.im[n] as number;
    const c = places.re[n] as number;
    const d = places.im[n] as number;
    re[n] = (re[n] as number) + (a * c - b * d);
    im[n] = (im[n] as number) + (a * d + b * c);
  }
}

/** An arrow x + i y that harmonic n sees turned back by n angles. */
interface Turning {
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

/** Sum of (x + i y) exp(-i n angle) for every harmonic n. All arrows turn abreast: one alone would wait for its own last product. */
function sumOfTurning(all: readonly Turning[], count: number): Harmonics {
  const arrows = all.filter((arrow) => arrow.x !== 0 || arrow.y !== 0);
  const c = Float64Array.from(arrows, ({ angle }) => cos(angle));
  const s = Float64Array.from(arrows, ({ angle }) => sin(angle));
  const x = Float64Array.from(arrows, (arrow) => arrow.x);
  const y = Float64Array.from(arrows, (arrow) => arrow.y);
  const sum: Harmonics = { re: new Float64Array(count), im: new Float64Array(count) };
  for (let n = 0; n < count; n++) {
    let re = 0;
    let im = 0;
    for (let k = 0; k < x.length; k++) {
      const a = x[k] as number;
      const b = y[k] as number;
      const ck = c[k] as number;
      const sk = s[k] as number;
      re += a;
      im += b;
      x[k] = ck * a + sk * b;
      y[k] = ck * b - sk * a;
    }
    sum.re[n] = re;
    sum.im[n] = im;
  }
  return sum;
}

/** Pieces narrower than this, radians, are steps: the slope of a radial flank would be nothing but the last bit of its angles. */
const sudden = 1e-9;

/**
 * (1 / 2 pi) times the integral of the pulse times exp(-i n angle). By parts over each straight piece from (a, y) to (b, z) of slope m:
 * i / n (z e^-inb - y e^-ina) + m / n^2 (e^-inb - e^-ina).
 */
function pulseHarmonics(nodes: readonly PulseNode[], count: number): Harmonics {
  const level: Turning[] = [];
  const slope: Turning[] = [];
  let area = 0;
  nodes.forEach((b, i) => {
    const a = nodes[i - 1];
    if (a === undefined || b.angle - a.angle < sudden) return;
    const m = (b.level - a.level) / (b.angle - a.angle);
    area += ((a.level + b.level) / 2) * (b.angle - a.angle);
    level.push({ angle: b.angle, x: 0, y: b.level }, { angle: a.angle, x: 0, y: -a.level });
    slope.push({ angle: b.angle, x: m, y: 0 }, { angle: a.angle, x: -m, y: 0 });
  });
  const levels = sumOfTurning(level, count);
  const slopes = sumOfTurning(slope, count);
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
