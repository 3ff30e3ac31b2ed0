/**
 * Preload and tightening torque of a screw. mm, MPa, N, N.m.
 *
 * Valid for: threads of 60 degrees, steel screws tightened by turning, friction 0.04 to 0.35, thread and head lubricated alike or
 * not. Left out: embedding of the faces (a few micrometres, worst on short screws), bending of the screw by a head that does not
 * seat flat, prevailing torque of locking nuts, and creep of soft parts. Sources stand at each formula.
 */
import { cos, sin } from '../units/trig.ts';

/** The thread of a screw, mm: the basic sizes that every thread table lists. */
export interface ScrewThread {
  /** Nominal diameter. */
  readonly d: number;
  readonly pitch: number;
  /** Pitch diameter. */
  readonly d2: number;
  /** Minor diameter of the screw. */
  readonly d3: number;
  /** Stress area as a table prints it, mm2. Unified threads print up to 2 % less than their diameters give. */
  readonly stressArea?: number | undefined;
}

/** The face that the head turns on. */
export interface HeadFace {
  /** Outer diameter of the bearing face dw, mm. Where none is printed, a cautious one: a small dw gives a small torque. */
  readonly dw: number;
  /** Diameter of the hole (or of its chamfer) under the head dh, mm. */
  readonly hole: number;
  /** Full angle of a countersunk head, degrees; left out for a flat bearing face. */
  readonly coneAngle?: number | undefined;
}

/** Share of the yield stress that tightening may use up. VDI 2230-1. */
export const usualUtilisation = 0.9;

/** Half the flank angle of an ISO or unified thread, radians. */
const halfFlank = Math.PI / 6;

/**
 * Diameter and area of the stressed section, mm and mm2: the printed stress area where there is one, else
 * A0 = pi/4 d0^2 with d0 = (d2 + d3)/2. Source: ISO 898-1, ASME B1.1, VDI 2230-1.
 */
export function stressSection({ d2, d3, stressArea }: ScrewThread): { readonly d0: number; readonly A0: number } {
  const d0 = stressArea === undefined ? (d2 + d3) / 2 : Math.sqrt((4 * stressArea) / Math.PI);
  return { d0, A0: (Math.PI / 4) * d0 * d0 };
}

/**
 * Torsion over tension while the screw is turned, none: 1.5 (d2/d0) (P/(pi d2) + 1.155 muG). Source: VDI 2230-1.
 * @param mu friction in the thread, 0 to 0.35
 */
export function torsionPerTension(thread: ScrewThread, mu: number): number {
  const { d2, pitch } = thread;
  return 1.5 * (d2 / stressSection(thread).d0) * (pitch / (Math.PI * d2) + 1.155 * mu);
}

/**
 * Assembly preload FM, N: the tension at which tension and torsion together reach a share of the yield stress.
 * FM = A0 nu Rp / sqrt(1 + 3 (1.5 (d2/d0) (P/(pi d2) + 1.155 muG))^2).
 * @param yieldStrength Rp0.2 of the screw, MPa, > 0
 * @param mu friction in the thread, 0 to 0.35
 * @param utilisation nu, share of the yield stress, above 0 up to 1
 * Source: VDI 2230-1 (section yielding fully in torsion). Torsion that springs back after tightening is left out: it is a reserve.
 */
export function assemblyPreload(
  thread: ScrewThread,
  yieldStrength: number,
  mu: number,
  utilisation = usualUtilisation,
): number {
  const { A0 } = stressSection(thread);
  return (A0 * utilisation * yieldStrength) / Math.sqrt(1 + 3 * torsionPerTension(thread, mu) ** 2);
}

/**
 * Equivalent stress of a tightened screw at work, MPa: sqrt(s^2 + 3 (k t)^2), s = F/A0 now, t the torsion it was tightened with, of which
 * half is left (k = 0.5) once the joint has run. Source: VDI 2230-1.
 * @param tension N, now; `assembly` N, while it was turned
 */
export function workingStress(thread: ScrewThread, tension: number, assembly: number, mu: number): number {
  const { A0 } = stressSection(thread);
  const torsion = (0.5 * torsionPerTension(thread, mu) * assembly) / A0;
  return Math.sqrt((tension / A0) ** 2 + 3 * torsion ** 2);
}

/**
 * Mean friction diameter under the head DKm, mm: (dw + dh)/2; under a cone 1/sin(half angle) times as much, because the cone
 * presses harder than the screw pulls. Source: VDI 2230-1; the cone by statics.
 */
export function headFrictionDiameter({ dw, hole, coneAngle = 180 }: HeadFace): number {
  return (dw + hole) / 2 / sin((coneAngle / 2) * (Math.PI / 180));
}

/**
 * Tightening torque for a preload, N.m: MA = FM (0.16 P + 0.58 d2 muG + DKm muK/2).
 * @param preload N
 * @param headDiameter DKm, mm
 * Source: VDI 2230-1. The three terms lift the load, rub in the thread, rub under the head.
 */
export function tighteningTorque(
  preload: number,
  { pitch, d2 }: ScrewThread,
  headDiameter: number,
  muThread: number,
  muHead: number,
): number {
  return (preload * (0.16 * pitch + 0.58 * d2 * muThread + 0.5 * headDiameter * muHead)) / 1000;
}

/** What a screw is asked to do. */
export interface Tightening {
  readonly thread: ScrewThread;
  readonly head: HeadFace;
  /** Rp0.2, MPa. */
  readonly yieldStrength: number;
  readonly muThread: number;
  /** Left out: as in the thread. */
  readonly muHead?: number | undefined;
  readonly utilisation?: number | undefined;
  /** Greatest over least preload of the tightening method; left out: nothing is said of the least preload. */
  readonly alphaA?: number | undefined;
}

/** A tightened screw. */
export interface TightenedScrew {
  /** FM, the greatest preload, kN. */
  readonly preload: number;
  /** MA, N.m. */
  readonly torque: number;
  /** T = K F d. */
  readonly K: number;
  /** DKm, mm. */
  readonly headDiameter: number;
  /** FM/alphaA, kN: what is counted on. Null without a tightening factor. */
  readonly leastPreload: number | null;
}

/**
 * Preload, torque and K of a screw. Take the least friction that may occur: with less than assumed, the same torque overloads it.
 * Valid range, neglected terms and source: as in `assemblyPreload` and `tighteningTorque`.
 */
export function tightenScrew({
  thread,
  head,
  yieldStrength,
  muThread,
  muHead = muThread,
  utilisation = usualUtilisation,
  alphaA,
}: Tightening): TightenedScrew {
  const newtons = assemblyPreload(thread, yieldStrength, muThread, utilisation);
  const headDiameter = headFrictionDiameter(head);
  const torque = tighteningTorque(newtons, thread, headDiameter, muThread, muHead);
  return {
    preload: newtons / 1000,
    torque,
    K: (1000 * torque) / (newtons * thread.d),
    headDiameter,
    leastPreload: alphaA === undefined ? null : leastPreload(newtons / 1000, alphaA),
  };
}

/** Least preload after scatter: FMmin = FMmax / alphaA, in the unit given. alphaA >= 1. Source: VDI 2230-1 (definition). */
export function leastPreload(greatest: number, alphaA: number): number {
  return greatest / alphaA;
}

/** Tightening factor of a scatter of plus or minus x about the middle: (1 + x)/(1 - x). x 0 to below 1. Algebra. */
export function tighteningFactorOf(x: number): number {
  return (1 + x) / (1 - x);
}

/** Proof or ultimate load, N: stress area (mm2) times stress (MPa). Source: ISO 898-1, Shigley eq. 8-32. */
export function loadAtStress(stressArea: number, stress: number): number {
  return stressArea * stress;
}

/** Share of the proof load that Shigley preloads to: joints that come apart again, and joints that stay. Eq. 8-31. */
export const preloadShares = { reused: 0.75, permanent: 0.9 } as const;

/** Torque by the short formula T = K F d, N.m; F in N, d in mm. Source: Shigley eq. 8-27. K carries all friction: good to 30 %. */
export function torqueByFactor(K: number, preload: number, d: number): number {
  return (K * preload * d) / 1000;
}

/**
 * Torque by the statics of the screw, N.m:
 * T = F [ (dm/2) (tan lambda + f/cos a)/(1 - f tan lambda/cos a) + 0.625 fc d ], dm = (d + d3)/2, tan lambda = P/(pi dm).
 * The head is taken as 1.25 d in mean diameter. Preload N; f and fc friction in thread and under the head, 0 to 0.35.
 * Source: Shigley eq. 8-26. A second method beside `tighteningTorque`; it works at dm where VDI 2230 works at d2.
 */
export function torqueByScrewStatics(preload: number, { d, d3, pitch }: ScrewThread, f: number, fc: number): number {
  const dm = (d + d3) / 2;
  const rise = pitch / (Math.PI * dm);
  const rub = f / cos(halfFlank);
  const thread = ((dm / 2) * (rise + rub)) / (1 - rub * rise);
  return (preload * (thread + 0.625 * fc * d)) / 1000;
}
