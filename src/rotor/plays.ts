/** How far the parts of a joint can shift against each other: in their registers, and in their screw holes. mm on the diameter. */
import { clearanceRange } from '../formulas/fit.ts';
import { type ColdAndHot, coldAndHot } from '../formulas/thermal-fit.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { materialOfFlange, type ResolvedRegister } from '../job/resolve-flange.ts';
import type { HoleShape, RegisterSpec } from '../parts/adapter-spec.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { must } from '../standards/table.ts';

export type FlangeSide = 'driving' | 'driven';

/** Both halves of a side's register where they go into each other; else null. */
export function registerPair(
  joint: Joint,
  side: FlangeSide,
): { readonly own: RegisterSpec; readonly mate: ResolvedRegister } | null {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  return own && mate && own.gender !== mate.gender ? { own, mate } : null;
}

/** Least and greatest clearance at a side's register at 20 degrees C; null when either half has none. */
export function registerClearance(joint: Joint, side: FlangeSide): { least: number; greatest: number } | null {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  if (!own || !mate) return null;
  return own.gender === 'female' ? clearanceRange(own.limits, mate.limits) : clearanceRange(mate.limits, own.limits);
}

/** What a flange is reckoned to be made of. */
export const flangeMaterial = (joint: Joint, side: FlangeSide): Material =>
  must(findMaterial(materialOfFlange(joint[side])));

/** Clearances of a side's register over a span of temperatures, degrees C; null where the halves do not go into each other. */
export function overTemperatures(joint: Joint, side: FlangeSide, cold: number, hot: number): ColdAndHot | null {
  const pair = registerPair(joint, side);
  if (!pair) return null;
  const { own, mate } = pair;
  const adapter = { limits: own.limits, alpha: joint.adapterMaterial.thermalExpansion };
  const flange = { limits: mate.limits, alpha: flangeMaterial(joint, side).thermalExpansion };
  const [recess, spigot] = own.gender === 'female' ? [adapter, flange] : [flange, adapter];
  const register = {
    recess: recess.limits,
    spigot: spigot.limits,
    alphaRecess: recess.alpha,
    alphaSpigot: spigot.alpha,
  };
  return coldAndHot(register, cold, hot);
}

type Passing = Extract<HoleShape, { kind: 'passing' }>;

/** Passing hole of a screw group in the adapter, if that is how it is made. */
export function passingHole(joint: Joint, screws: ScrewGroup): Passing | null {
  const shape = joint.adapterSpec.groups.find((group) => group.id === screws.id)?.shape;
  return shape?.kind === 'passing' ? shape : null;
}

/** How far a screw may stand off between a flange's hole and the adapter's, mm on the diameter. */
export function screwPlay(joint: Joint, screws: ScrewGroup, side: FlangeSide): number {
  const own = passingHole(joint, screws);
  const { holes } = joint[side];
  const inAdapter = own === null ? 0 : own.diameter - screws.major;
  const inFlange = holes.kind === 'clear' ? holes.diameter.value - screws.major : 0;
  return Math.max(0, inAdapter) + Math.max(0, inFlange);
}
