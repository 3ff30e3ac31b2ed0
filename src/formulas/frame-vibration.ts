/**
 * Lowest natural frequency of a thin bent strip that is clamped at one end and carries a mass at the other.
 *
 * The strip is a chain of straight pieces in a plane, all of one cross-section. Bending and twist give way; stretch and shear do
 * not count (a strip's own are thousands of times stiffer). Deflections are the unit-load integrals of Euler-Bernoulli beams and
 * of Saint-Venant torsion, exact for straight pieces.
 *
 * Dunkerley's rule adds what each mass alone would do: 1 / w^2 <= sum of m f. It never says too much: the true frequency is higher,
 * by some percent. Source: mechanics textbooks; for one straight piece 1 / w^2 = m L^3 / (3 E I) + mu L^4 / (12 E I).
 */
import { hypot } from '../units/hypot.ts';

/** A corner of the strip's centre line, mm. The first is clamped, the last carries the mass. */
export interface FramePoint {
  readonly p: number;
  readonly q: number;
}

/** The strip: Young's and shear modulus (MPa), width across the plane and thickness in it (mm), density (g/mm3). */
export interface FrameStrip {
  readonly youngsModulus: number;
  readonly shearModulus: number;
  readonly width: number;
  readonly thickness: number;
  readonly density: number;
}

/** How far a place on the strip gives way under 1 N there, mm/N: in the plane (worst direction), and across it. */
export interface Flexibility {
  readonly inPlane: number;
  readonly across: number;
}

/** Torsion constant of a narrow rectangle: b h^3 / 3 (1 - 0.63 h / b + 0.052 (h / b)^5), h the smaller. mm4 */
export function rectangleTorsion(a: number, b: number): number {
  const [h, w] = [Math.min(a, b), Math.max(a, b)];
  return ((w * h ** 3) / 3) * (1 - 0.63 * (h / w) + 0.052 * (h / w) ** 5);
}

/** Give of the last point of a chain of pieces under 1 N there. */
export function tipFlexibility(path: readonly FramePoint[], strip: FrameStrip): Flexibility {
  const { youngsModulus: E, shearModulus: G, width, thickness } = strip;
  const bends = (E * width * thickness ** 3) / 12;
  const edgewise = (E * thickness * width ** 3) / 12;
  const twist = G * rectangleTorsion(width, thickness);
  const tip = path.at(-1);
  if (!tip) throw new Error('A strip needs two points or more.');
  const sum = { pp: 0, qq: 0, pq: 0, across: 0 };
  path.slice(1).forEach((to, i) => {
    const from = path[i] as FramePoint;
    const length = hypot(to.p - from.p, to.q - from.q);
    if (length < 1e-12) return;
    const e = { p: (to.p - from.p) / length, q: (to.q - from.q) / length };
    // Simpson's rule is exact here: every term is a square of something that changes evenly along the piece.
    for (const [share, weight] of [
      [0, 1],
      [0.5, 4],
      [1, 1],
    ] as const) {
      const w = (weight * length) / 6;
      const arm = { p: tip.p - from.p - share * length * e.p, q: tip.q - from.q - share * length * e.q };
      const along = arm.p * e.p + arm.q * e.q;
      const off = arm.p * e.q - arm.q * e.p;
      sum.pp += (w * arm.q ** 2) / bends;
      sum.qq += (w * arm.p ** 2) / bends;
      sum.pq -= (w * arm.p * arm.q) / bends;
      sum.across += w * (along ** 2 / edgewise + off ** 2 / twist);
    }
  });
  const middle = (sum.pp + sum.qq) / 2;
  return { inPlane: middle + hypot((sum.pp - sum.qq) / 2, sum.pq), across: sum.across };
}

/** The chain from the clamp up to a share of its piece number `piece`. */
function upTo(path: readonly FramePoint[], piece: number, share: number): FramePoint[] {
  const [from, to] = [path[piece] as FramePoint, path[piece + 1] as FramePoint];
  return [...path.slice(0, piece + 1), { p: from.p + share * (to.p - from.p), q: from.q + share * (to.q - from.q) }];
}

/** Steps of the sum over each piece's own mass; even. */
const steps = 8;

export interface FrameFrequencies {
  /** Hz, each at least this. */
  readonly inPlane: number;
  readonly across: number;
  readonly lowest: number;
  /** Give of the mass under 1 N in the plane, mm/N. */
  readonly flexibility: number;
}

/**
 * Lowest natural frequencies in the plane and across it.
 * @param path centre line from clamp to mass, two points or more, mm
 * @param endMass g, 0 or more
 */
export function frameFrequencies(path: readonly FramePoint[], strip: FrameStrip, endMass: number): FrameFrequencies {
  const perLength = strip.density * strip.width * strip.thickness;
  const tip = tipFlexibility(path, strip);
  // g mm/N: a gram is 1e-6 N s2/mm.
  const sum = { inPlane: endMass * tip.inPlane, across: endMass * tip.across };
  for (let piece = 0; piece + 1 < path.length; piece++) {
    const [from, to] = [path[piece] as FramePoint, path[piece + 1] as FramePoint];
    const length = hypot(to.p - from.p, to.q - from.q);
    for (let i = 0; i <= steps; i++) {
      const weight = ((i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * length) / steps / 3;
      const here = tipFlexibility(upTo(path, piece, i / steps), strip);
      sum.inPlane += weight * perLength * here.inPlane;
      sum.across += weight * perLength * here.across;
    }
  }
  const hertz = (massTimesGive: number): number => Math.sqrt(1e6 / massTimesGive) / (2 * Math.PI);
  const [inPlane, across] = [hertz(sum.inPlane), hertz(sum.across)];
  return { inPlane, across, lowest: Math.min(inPlane, across), flexibility: tip.inPlane };
}
