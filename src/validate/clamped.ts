/** What a screw clamps: the parts under its head, and the ring of the face that they touch on. mm. */

import type { Backing } from '../formulas/flange-bending.ts';
import type { ClampedStack, Layer } from '../formulas/preload-change.ts';
import { nearestEmpty } from '../job/hole-pattern.ts';
import type { Joint, PressedSeat, ScrewGroup } from '../job/joint.ts';
import { contactRing, type FaceSide, faceSides } from '../rotor/joint-face.ts';
import { flangeMaterial, passingHole } from '../rotor/plays.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { must } from '../standards/table.ts';
import { hypot } from '../units/hypot.ts';
import { atan2 } from '../units/trig.ts';
import { pocketDepth } from './heads.ts';

/** Screws of class 8.8 to 12.9 are quenched and tempered steel: the nearest material tabled. */
export const screwSteel: Material = must(findMaterial('4140-Q&T'));

/** One clamped part, by name. */
export interface Part extends Layer {
  readonly name: string;
  readonly yieldStrength: number;
}

const partOf = (name: string, thickness: number, material: Material): Part => ({
  name,
  thickness,
  E: material.youngsModulus,
  alpha: material.thermalExpansion,
  yieldStrength: material.yieldStrength,
});

/** Bolts that run through both flanges at once: their head lies behind the flange that is not theirs. */
export const isShared = ({ fastening, seat, points }: ScrewGroup): boolean =>
  fastening === 'through' && seat === 'outside' && points === -1;

/** The parts from head to nut or thread, washers included; null where a flange's thickness is not known. */
export function clampedParts(joint: Joint, group: ScrewGroup): Part[] | null {
  const { side, washer, fastening, nut } = group;
  if (side === 'wheel') {
    const { wheelSpec, wheelMaterial } = joint;
    return wheelSpec && wheelMaterial ? [partOf('wheel', wheelSpec.thickness, wheelMaterial)] : null;
  }
  const washers = washer ? [partOf('washer', washer.thickness, screwSteel)] : [];
  const hole = passingHole(joint, group);
  const adapter = () => {
    const sunk = hole ? pocketDepth(hole) : 0;
    return partOf('adapter', joint.adapterSpec.thickness - sunk, joint.adapterMaterial);
  };
  const flange = (of: FaceSide): Part[] | null => {
    const { thickness } = joint[of];
    return thickness ? [partOf(`${of} flange`, thickness.value, flangeMaterial(joint, of))] : null;
  };
  const own = fastening === 'into_flange' ? [] : flange(side);
  const far = isShared(group) ? flange(side === 'driving' ? 'driven' : 'driving') : [];
  if (!own || !far) return null;
  const between = fastening === 'into_adapter' ? own : [...far, adapter(), ...own];
  return [...washers, ...between, ...(nut ? washers : [])];
}

/** The ring that a group's force presses together; of bolts through both flanges the narrower of both faces. Null: the faces do not touch. */
export function pressedRing(
  joint: Joint,
  group: ScrewGroup,
): { readonly inside: number; readonly outside: number } | null {
  if (group.side === 'wheel') {
    const { wheelSpec, adapterSpec } = joint;
    return { inside: (wheelSpec?.bore ?? 0) / 2, outside: Math.min(adapterSpec.outside, wheelSpec?.root ?? 0) / 2 };
  }
  const rings = (isShared(group) ? faceSides : [group.side]).map((side) => contactRing(joint, side));
  return rings.reduce(
    (a, b) => a && b && { inside: Math.max(a.inside, b.inside), outside: Math.min(a.outside, b.outside) },
  );
}

/** Distances from each screw to the next one round the axis, mm; empty for a single screw. */
export function pitches({ positions }: ScrewGroup): number[] {
  const round = [...positions].sort((a, b) => atan2(a.y, a.x) - atan2(b.y, b.x));
  return round.length < 2
    ? []
    : round.map((p, at) => {
        const next = round[(at + 1) % round.length] ?? p;
        return hypot(next.x - p.x, next.y - p.y);
      });
}

/** Metal of the flange from a screw's axis to the edge of the nearest empty hole, mm; infinite where none is empty. */
export function besideEmpty(joint: Joint, { side }: ScrewGroup): number {
  if (side === 'wheel') return Number.POSITIVE_INFINITY;
  const { holes } = joint[side];
  return nearestEmpty(holes) - (holes.diameter?.value ?? 0) / 2;
}

/** How far the metal of the face reaches from the screw that has least of it, mm; negative where the screw stands beside it. */
export function backingOf(joint: Joint, group: ScrewGroup): Backing | null {
  const radii = group.positions.map(({ x, y }) => hypot(x, y));
  const ring = pressedRing(joint, group);
  return ring && { inwards: Math.min(...radii) - ring.inside, outwards: ring.outside - Math.max(...radii) };
}

/** Bearing face from which the pressure spreads, mm; of a sunk cone its middle. */
export const spreadsFrom = ({ face, inner }: PressedSeat, kind: ScrewGroup['head']['kind']): number =>
  kind === 'flat' ? (face + inner) / 2 : face;

/** A clamped stack whose layers have names. */
export interface Clamped extends ClampedStack {
  readonly layers: readonly Part[];
}

/** The stack that a screw presses together; null where a thickness is not known, or the hole is as wide as the head. */
export function clampedStack(joint: Joint, group: ScrewGroup): Clamped | null {
  const layers = clampedParts(joint, group);
  const head = group.tightening.seats?.find(({ under }) => under === 'head');
  if (!layers || !head) return null;
  const dw = spreadsFrom(head, group.head.kind);
  const { inner: hole } = head;
  if (dw <= hole) return null;
  const { inwards, outwards } = backingOf(joint, group) ?? { inwards: 0, outwards: 0 };
  const besides = [...pitches(group).map((pitch) => pitch / 2), besideEmpty(joint, group)];
  const room = 2 * Math.min(inwards, outwards, ...besides);
  return { layers, dw, hole, outside: Math.max(dw, room), ends: group.nut ? 2 : 1 };
}

/** Why a screw has no clamped stack, and what to give. */
export function whyNoStack(joint: Joint, group: ScrewGroup): { readonly why: string; readonly missing: string } {
  if (clampedParts(joint, group) === null) {
    return {
      why: 'How thick the clamped parts are is not known.',
      missing: 'Give driving.thickness and driven.thickness: the thickness at the holes.',
    };
  }
  return {
    why: 'The hole is as wide as the head: at best a washer bridges it, and how far that gives is not known.',
    missing: `Take screws whose heads are wider than the hole (adapter.${group.side}.screw).`,
  };
}
