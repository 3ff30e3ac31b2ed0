/**
 * Stripping of a thread. mm, mm2, MPa, N.
 *
 * Valid for: 60 degree threads at their worst limits, engagement from a few turns up to about 2.5 d (beyond that the first turns
 * carry the load and length adds little). Left out: uneven load along the turns, bell-mouthing of thin walls (the boss should be
 * 1.5 d across or more), and countersunk or bell-mouthed first turns, which do not count as engagement.
 */

/** The limits of size that decide, mm: worst screw in worst hole. */
export interface WorstThread {
  readonly pitch: number;
  /** Least major and pitch diameter of the screw. */
  readonly dMin: number;
  readonly d2Min: number;
  /** Greatest minor and pitch diameter of the hole. */
  readonly D1Max: number;
  readonly D2Max: number;
}

/** The worst case out of full thread limits, as a thread table gives them. */
export function worstThread(
  limits: {
    readonly d: { readonly min: number };
    readonly d2: { readonly min: number };
    readonly D1: { readonly max: number };
    readonly D2: { readonly max: number };
  },
  pitch: number,
): WorstThread {
  return { pitch, dMin: limits.d.min, d2Min: limits.d2.min, D1Max: limits.D1.max, D2Max: limits.D2.max };
}

/**
 * Shear area of the hole's thread, mm2: ASn = pi (Le/P) dmin (P/2 + (dmin - D2max)/sqrt 3): the cylinder of the screw's crests,
 * as far as it runs in the hole's metal. `engagement` Le mm, > 0. Source: FED-STD-H28; Bickford prints the areas.
 */
export function internalShearArea({ pitch, dMin, D2Max }: WorstThread, engagement: number): number {
  return Math.PI * (engagement / pitch) * dMin * (pitch / 2 + (dMin - D2Max) / Math.sqrt(3));
}

/**
 * Shear area of the screw's thread, mm2: ASs = pi (Le/P) D1max (P/2 + (d2min - D1max)/sqrt 3): the cylinder of the hole's crests,
 * as far as it runs in the screw's metal. Source: FED-STD-H28; Bickford prints the areas.
 */
export function externalShearArea({ pitch, d2Min, D1Max }: WorstThread, engagement: number): number {
  return Math.PI * (engagement / pitch) * D1Max * (pitch / 2 + (d2Min - D1Max) / Math.sqrt(3));
}

/** Shear strength of a thread as a share of tensile strength. Common practice, from memory; von Mises gives 0.577. */
export const threadShearShare = 0.6;

/** Shear strength to count with, MPa, when only the tensile strength is known. Common practice. */
export function threadShearStrength(tensileStrength: number): number {
  return threadShearShare * tensileStrength;
}

/** Beyond this many diameters more engagement adds nothing: the first turns carry the load. Common practice. */
export const usefulEngagement = 2.5;

/** Shear strengths of the two threads, MPa. */
export interface ThreadShear {
  readonly screw: number;
  readonly parent: number;
}

/** What strips, and at which load. */
export interface StripLoads {
  /** Load that strips the hole, N. */
  readonly parent: number;
  /** Load that strips the screw, N. */
  readonly screw: number;
  readonly least: number;
  readonly weaker: 'parent' | 'screw';
}

/** Strip loads at an engagement: shear strength times shear area. Source: FED-STD-H28. */
export function stripLoads(thread: WorstThread, engagement: number, shear: ThreadShear): StripLoads {
  const parent = shear.parent * internalShearArea(thread, engagement);
  const screw = shear.screw * externalShearArea(thread, engagement);
  return { parent, screw, least: Math.min(parent, screw), weaker: parent <= screw ? 'parent' : 'screw' };
}

/**
 * Engagement at which the weaker thread just carries a load, mm. With the screw's breaking load (stress area x tensile strength)
 * it is the length from which the screw breaks before a thread strips.
 * @param load N, >= 0
 */
export function engagementFor(
  load: number,
  thread: WorstThread,
  shear: ThreadShear,
): { readonly length: number; readonly weaker: 'parent' | 'screw' } {
  const perMillimetre = stripLoads(thread, 1, shear);
  return { length: load / perMillimetre.least, weaker: perMillimetre.weaker };
}

/**
 * Engagement for equal strength of screw and its own thread, mm: Le = 2 At / (pi D1max (1/2 + (d2min - D1max)/(P sqrt 3))).
 * The 2 means a shear strength of half the tensile strength. Screw and hole of like material.
 * @param stressArea At, mm2
 * Source: FED-STD-H28.
 */
export function equalStrengthEngagement(stressArea: number, thread: WorstThread): number {
  return (2 * stressArea) / externalShearArea(thread, 1);
}

/**
 * The same in a weaker parent: J = (ASs Rm_screw)/(ASn Rm_parent), Q = J Le when J is above 1, else Le.
 * @param stressArea At, mm2; strengths MPa
 * Source: FED-STD-H28 as handbooks give it (the J rule from memory).
 */
export function weakParentEngagement(
  stressArea: number,
  thread: WorstThread,
  screwTensile: number,
  parentTensile: number,
): { readonly J: number; readonly length: number } {
  const J = (externalShearArea(thread, 1) * screwTensile) / (internalShearArea(thread, 1) * parentTensile);
  return { J, length: Math.max(1, J) * equalStrengthEngagement(stressArea, thread) };
}
