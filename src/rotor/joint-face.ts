/** The two faces that torque goes through: what presses them together, where they touch, and how they rub. */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { materialOfFlange } from '../job/resolve-flange.ts';
import { frictionBetween } from '../standards/face-pairs.ts';
import { findMaterial } from '../standards/materials.ts';
import { type Lookup, must } from '../standards/table.ts';

export type FaceSide = 'driving' | 'driven';
export const faceSides: readonly FaceSide[] = ['driving', 'driven'];

/** The part of a joint that decides how its faces rub. */
export type RubbingJoint = Pick<Joint, 'screws' | 'adapterMaterial'> & {
  readonly [side in FaceSide]: Pick<Joint[side], 'material'>;
} & {
  readonly job: { readonly adapter: { readonly [side in FaceSide]: { readonly face_friction?: number | undefined } } };
};

/** Screws that press a side's faces together: its own, or the bolts that run through both flanges. */
export function screwsOfFace(joint: Pick<Joint, 'screws'>, side: FaceSide): ScrewGroup | null {
  const flanges = joint.screws.filter((group) => group.side !== 'wheel');
  return flanges.find((group) => group.side === side) ?? flanges[0] ?? null;
}

/** Height of a side's face, mm. */
export const faceHeight = (joint: Joint, side: FaceSide): number =>
  side === 'driving' ? 0 : joint.adapterSpec.thickness;

/** Radii of the adapter's own metal on a face, mm: outside after steps and chamfer, inside of bore and recess. */
export function adapterFace({ adapterSpec: spec }: Joint, side: FaceSide): { outside: number; inside: number } {
  const register = spec.registers[side];
  const steps = [
    spec.outside / 2,
    ...(spec.wheelSeat?.face === side ? [spec.wheelSeat.diameter / 2] : []),
    ...(register?.at === 'rim' && register.gender === 'male' ? [register.diameter / 2] : []),
  ];
  const recess = register?.at === 'inner' && register.gender === 'female' ? register.diameter / 2 : 0;
  return { outside: Math.min(...steps) - spec.chamfer, inside: Math.max((spec.bore ?? 0) / 2, recess) };
}

/** Radii of a flange's metal, mm; its bore only where it is known. */
export function flangeFace(joint: Joint, side: FaceSide): { outside: number; inside: number } {
  const { outside, bore, register } = joint[side];
  const spec = joint.adapterSpec.registers[side];
  const recess = register?.gender === 'female' && spec?.at !== 'rim' ? register.diameter.value / 2 : 0;
  return { outside: outside.value / 2, inside: Math.max((bore ?? 0) / 2, recess) };
}

/** Ring on which flange and adapter touch, radii in mm; null where nothing is left of it. */
export function contactRing(joint: Joint, side: FaceSide): { outside: number; inside: number } | null {
  const [own, mate] = [adapterFace(joint, side), flangeFace(joint, side)];
  const register = joint.adapterSpec.registers[side];
  const pilot = register ? register.diameter / 2 : 0;
  const outside = Math.min(own.outside, mate.outside, register?.at === 'rim' ? pilot : Number.POSITIVE_INFINITY);
  const inside = Math.max(own.inside, mate.inside, register?.at === 'inner' ? pilot : 0);
  return outside > inside ? { outside, inside } : null;
}

/** Friction of a face, and what it rests on. */
export interface FaceFriction {
  readonly mu: number;
  readonly words: string;
  readonly source: string;
  readonly memory: boolean;
  /** What oil would leave of it; null where the job gives the friction. */
  readonly oiled: number | null;
  readonly steel: boolean;
}

/** Friction between a flange and the adapter: the job's, else by the pair of materials, wiped clean. */
export function frictionOfFace(joint: RubbingJoint, side: FaceSide): Lookup<FaceFriction> {
  const given = joint.job.adapter[side].face_friction;
  const [own, mate] = [joint.adapterMaterial, must(findMaterial(materialOfFlange(joint[side])))];
  const steel = ![own.family, mate.family].some((family) => family === 'aluminium' || family === 'plastic');
  if (given !== undefined) {
    return { ok: true, value: { mu: given, words: 'as given', source: 'the job', memory: false, oiled: null, steel } };
  }
  const clean = frictionBetween(own, mate, false);
  if (!clean.ok) return clean;
  const oiled = frictionBetween(own, mate, true);
  const { mu, source, memory } = clean.value;
  const metal = (family: string) => (family === 'aluminium' ? family : 'steel');
  const words = `${metal(mate.family)} on ${metal(own.family)}, both faces wiped clean with solvent`;
  return { ok: true, value: { mu, words, source, memory, oiled: oiled.ok ? oiled.value.mu : null, steel } };
}
