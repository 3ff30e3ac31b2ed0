/**
 * What happens to a preload after tightening: faces settle, and heat stretches screw and parts unlike. mm, N, MPa, mm/N, K.
 *
 * Valid for: one straight screw, parts pressed together over the deformation cone under its head. Left out: the working load along the
 * screw, bending, creep, the fall of Young's modulus with heat (about 3 % per 100 K). Source: VDI 2230-1.
 */

/** A stretch of screw: length over area, mm and mm2. */
export interface Stretch {
  readonly length: number;
  readonly area: number;
}

/** Resilience of stretches one behind the other, mm/N: sum of l/(E A). */
export function resilienceOf(stretches: readonly Stretch[], E: number): number {
  return stretches.reduce((sum, { length, area }) => sum + length / (E * area), 0);
}

/** A screw as the sum sees it, mm. */
export interface ScrewShape {
  readonly d: number;
  /** Minor diameter of its thread. */
  readonly d3: number;
  readonly head: 'hex' | 'socket' | 'flat' | 'button';
  /** Plain shank within the clamped length, and thread from there to where it is held. */
  readonly shank: number;
  readonly freeThread: number;
  /** Young's moduli of the screw and of what holds its thread. */
  readonly E: number;
  readonly parentE: number;
  /** Held by a nut, or in a part. */
  readonly heldBy: 'nut' | 'part';
}

/** Lengths that stand for head, engaged thread and what holds it, as multiples of d. VDI 2230-1; flat and button heads as socket heads. */
const substitute = { hex: 0.5, socket: 0.4, flat: 0.4, button: 0.4, engaged: 0.5, nut: 0.4, part: 0.33 } as const;

const disc = (diameter: number) => (Math.PI / 4) * diameter * diameter;

/** Resilience of a screw deltaS, mm/N: head, shank, free thread, engaged thread, and the thread that holds it. Source: VDI 2230-1. */
export function screwResilience({ d, d3, head, shank, freeThread, E, parentE, heldBy }: ScrewShape): number {
  const [full, core] = [disc(d), disc(d3)];
  const screw = [
    { length: substitute[head] * d, area: full },
    { length: shank, area: full },
    { length: freeThread, area: core },
    { length: substitute.engaged * d, area: core },
  ];
  return resilienceOf(screw, E) + resilienceOf([{ length: substitute[heldBy] * d, area: full }], parentE);
}

/** A clamped part, from the head on. mm, MPa. */
export interface Layer {
  readonly thickness: number;
  readonly E: number;
  /** Thermal expansion, 1/K. */
  readonly alpha: number;
}

/** The room that the pressure under a head spreads into, mm. */
export interface ClampedStack {
  readonly layers: readonly Layer[];
  /** Bearing face under the head, and the hole through the parts. */
  readonly dw: number;
  readonly hole: number;
  /** Diameter of the metal round the screw. */
  readonly outside: number;
  /** Bolt and nut press from both ends, a screw in a thread from one. */
  readonly ends: 1 | 2;
}

/** Least tangent taken: the fitted formulas are not meant for stacks thinner than a tenth of the head. */
const leastTangent = 0.1;

/**
 * Tangent of the deformation cone's half angle. Bolts with nuts: 0.362 + 0.032 ln(lK/(2 dw)) + 0.153 ln(DA/dw);
 * screws in threads: 0.348 + 0.013 ln(lK/dw) + 0.193 ln(DA/dw). DA/dw counts from 1 to 10. Source: VDI 2230-1.
 */
export function coneTangent({ layers, dw, outside, ends }: Omit<ClampedStack, 'hole'>): number {
  const slender = clampLength(layers) / dw;
  const room = Math.min(10, Math.max(1, outside / dw));
  const tangent =
    ends === 2
      ? 0.362 + 0.032 * Math.log(slender / 2) + 0.153 * Math.log(room)
      : 0.348 + 0.013 * Math.log(slender) + 0.193 * Math.log(room);
  return Math.max(leastTangent, tangent);
}

/** Clamped length lK, mm. */
export function clampLength(layers: readonly Layer[]): number {
  return layers.reduce((sum, { thickness }) => sum + thickness, 0);
}

/**
 * Resilience of a hollow cone frustum, mm/N: ln[(D2 - dh)(D1 + dh) / ((D2 + dh)(D1 - dh))] / (E pi dh tan phi), D2 = D1 + 2 t tan phi.
 * @param D1 diameter at its narrow end, mm, above the hole
 * Source: VDI 2230-1; Shigley eq. 8-19 at 30 degrees is its inverse.
 */
export function frustumResilience(E: number, D1: number, thickness: number, hole: number, tangent: number): number {
  const D2 = D1 + 2 * thickness * tangent;
  return Math.log(((D2 - hole) * (D1 + hole)) / ((D2 + hole) * (D1 - hole))) / (E * Math.PI * hole * tangent);
}

/** Of a stretch that starts `from` mm below the seat, cone as long as there is room and sleeve beyond. */
function spreadResilience(stack: ClampedStack, tangent: number, E: number, from: number, thickness: number): number {
  const { dw, hole } = stack;
  const outside = Math.max(stack.outside, dw);
  const untilSleeve = (outside - dw) / 2 / tangent - from;
  const cone = Math.max(0, Math.min(thickness, untilSleeve));
  const conical = cone > 0 ? frustumResilience(E, dw + 2 * from * tangent, cone, hole, tangent) : 0;
  return conical + (thickness - cone) / (E * (disc(outside) - disc(hole)));
}

/**
 * Resilience of the clamped parts deltaP, mm/N. Layers of unlike metal are summed stretch by stretch; from two ends the cones meet half way.
 * dw above the hole. Source: VDI 2230-1.
 */
export function clampedResilience(stack: ClampedStack): number {
  const tangent = coneTangent(stack);
  const total = clampLength(stack.layers);
  const middle = stack.ends === 2 ? total / 2 : total;
  let z = 0;
  let sum = 0;
  for (const { thickness, E } of stack.layers) {
    const end = z + thickness;
    const before = Math.max(0, Math.min(end, middle) - z);
    if (before > 0) sum += spreadResilience(stack, tangent, E, z, before);
    const after = thickness - before;
    // Seen from the other end the same stretch starts where it ends here.
    if (after > 0) sum += spreadResilience(stack, tangent, E, total - end, after);
    z = end;
  }
  return sum;
}

/** Preload lost when the faces settle by fZ, N: fZ / (deltaS + deltaP). Source: VDI 2230-1. */
export function embeddingLoss(fZ: number, deltaS: number, deltaP: number): number {
  return fZ / (deltaS + deltaP);
}

/**
 * Change of the preload with heat, N: (sum alphaP l - alphaS lK) dT / (deltaS + deltaP). Positive: the screw is pulled tighter.
 * @param warming K above the temperature it was tightened at; screw and parts at one temperature
 * Source: VDI 2230-1 with constant moduli.
 */
export function heatChange(
  layers: readonly Layer[],
  alphaScrew: number,
  warming: number,
  deltaS: number,
  deltaP: number,
): number {
  const mismatch = layers.reduce((sum, { thickness, alpha }) => sum + (alpha - alphaScrew) * thickness, 0);
  return (mismatch * warming) / (deltaS + deltaP);
}
