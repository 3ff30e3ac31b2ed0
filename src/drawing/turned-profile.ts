/** Reading profiles of a turned part: radius at a height, and a part turned over. Lengths in mm. */
import type { Drilling, Profile, TurnedPart } from '../model/part.ts';

/** A stretch of a profile that has height: r runs from r0 at z0 to r1 at z1. */
export interface Slope {
  readonly z0: number;
  readonly z1: number;
  readonly r0: number;
  readonly r1: number;
  readonly of?: string | undefined;
}

const least = 1e-9;

/** The stretches of a profile that have height, z ascending. */
export function slopes(profile: Profile): Slope[] {
  const found: Slope[] = [];
  for (let i = 1; i < profile.length; i++) {
    const [p, q] = [profile[i - 1] as Profile[number], profile[i] as Profile[number]];
    if (q.z - p.z > least) found.push({ z0: p.z, z1: q.z, r0: p.r, r1: q.r, of: p.of });
  }
  return found;
}

/** Radius at a height strictly within the profile; null above and below it. At a step, the stretch above counts. */
export function radiusAt(stretches: readonly Slope[], z: number): number | null {
  for (const s of stretches.toReversed()) {
    if (z >= s.z0 - least && z <= s.z1 + least) return s.r0 + ((s.r1 - s.r0) * (z - s.z0)) / (s.z1 - s.z0);
  }
  return null;
}

/** A profile turned over: z becomes -z. Each stretch keeps its feature. */
export function turnedOver(profile: Profile): Profile {
  return profile.toReversed().map((p, i, all) => {
    const of = profile[all.length - 2 - i]?.of;
    return of === undefined ? { z: 0 - p.z, r: p.r } : { z: 0 - p.z, r: p.r, of };
  });
}

/** The outside and the drillings of a part as seen after turning it about the y axis: z becomes -z, x becomes -x. */
export function partTurnedOver(part: TurnedPart): { outer: Profile; drillings: readonly Drilling[] } {
  return {
    outer: turnedOver(part.outer),
    drillings: part.drillings.map((d) => ({ ...d, x: 0 - d.x, profile: turnedOver(d.profile) })),
  };
}
