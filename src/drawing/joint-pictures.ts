/** The four pictures of a joint, from the joint as it was resolved. */
import type { Drawing } from '../model/drawing.ts';
import type { TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';
import { faceView } from './face-view.ts';
import type { FlangeToDraw, JointToDraw, ScrewsToDraw } from './joint-to-draw.ts';
import { sectionView } from './section-view.ts';
import { wheelView } from './wheel-view.ts';

interface Size {
  readonly value: number;
}

interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** A measured flange, as far as pictures read it. Hole positions are its own: the driven ones are not yet turned by the clocking. */
export interface MeasuredFlange {
  readonly name: string;
  readonly outside: Size;
  readonly thickness: Size | null;
  readonly register: { readonly gender: 'male' | 'female'; readonly diameter: Size; readonly depth: Size | null; readonly limits: Limits } | null;
  readonly holes: {
    readonly positions: readonly { readonly x: number; readonly y: number }[];
    readonly kind: 'clear' | 'tapped';
    readonly diameter: Size;
    readonly depth: number | null;
    readonly through: boolean;
  };
  readonly bore: number | null;
}

interface OwnRegister {
  readonly gender: 'male' | 'female';
  readonly at: 'inner' | 'rim';
  readonly limits: Limits;
}

/** What the pictures read of a resolved joint; a resolved joint has this shape. */
export interface JointWithParts {
  readonly job: { readonly title: string; readonly units: 'mm' | 'in'; readonly sensor?: { readonly gap?: number | undefined } | undefined };
  readonly driving: MeasuredFlange;
  readonly driven: MeasuredFlange;
  readonly adapterSpec: {
    readonly thickness: number;
    readonly clocking: number;
    readonly registers: { readonly driving: OwnRegister | null; readonly driven: OwnRegister | null };
  };
  readonly adapter: TurnedPart;
  readonly wheelSpec: { readonly teeth: number; readonly missing: number; readonly outside: number; readonly root: number; readonly toothAngle: number } | null;
  readonly wheel: SheetPart | null;
  readonly wheelZ: number | null;
  readonly screws: readonly ScrewsToDraw[];
}

/** Core of a tapped flange hole, close enough for a picture: about 85 % of the major diameter. */
const coreShare = 0.85;

function flangeToDraw(flange: MeasuredFlange, own: OwnRegister | null, turn: number): FlangeToDraw {
  const { register, holes } = flange;
  const c = Math.cos((turn * Math.PI) / 180);
  const s = Math.sin((turn * Math.PI) / 180);
  const tapped = holes.kind === 'tapped';
  return {
    name: flange.name,
    outside: flange.outside.value,
    thickness: flange.thickness?.value ?? null,
    register: register && {
      gender: register.gender,
      at: own?.at ?? 'inner',
      diameter: register.diameter.value,
      depth: register.depth?.value ?? null,
    },
    bore: flange.bore,
    holes: holes.positions.map((p) => ({
      x: p.x * c - p.y * s,
      y: p.x * s + p.y * c,
      diameter: tapped ? holes.diameter.value * coreShare : holes.diameter.value,
      major: tapped ? holes.diameter.value : null,
      depth: tapped && !holes.through ? holes.depth : null,
    })),
  };
}

/** Least and greatest clearance on diameter between a register and its mate; null unless one goes into the other. */
function clearance(own: OwnRegister | null, mate: MeasuredFlange['register']): { least: number; most: number } | null {
  if (own === null || mate === null || own.gender === mate.gender) return null;
  const [hole, shaft] = own.gender === 'female' ? [own.limits, mate.limits] : [mate.limits, own.limits];
  return { least: hole.lower - shaft.upper, most: hole.upper - shaft.lower };
}

/** A resolved joint as the section wants it. */
export function jointToDraw(joint: JointWithParts): JointToDraw {
  const { adapterSpec, wheel, wheelZ } = joint;
  const { registers, clocking, thickness } = adapterSpec;
  return {
    title: joint.job.title,
    units: joint.job.units,
    adapter: joint.adapter,
    thickness,
    clocking,
    driving: flangeToDraw(joint.driving, registers.driving, 0),
    driven: flangeToDraw(joint.driven, registers.driven, clocking),
    screws: joint.screws,
    wheel: wheel !== null && wheelZ !== null ? { part: wheel, z: wheelZ } : null,
    clearances: {
      driving: clearance(registers.driving, joint.driving.register),
      driven: clearance(registers.driven, joint.driven.register),
    },
  };
}

/**
 * Draws both faces of the adapter, the section through the joint and, where there is one, the wheel, in that order.
 * `id` starts each drawing's id, so that several joints can stand in one page.
 */
export function jointPictures(joint: JointWithParts, id = 'joint'): Drawing[] {
  const { adapter, adapterSpec, wheel, wheelSpec, job } = joint;
  const face = (from: 'driving' | 'driven'): Drawing =>
    faceView({ id, adapter, from, clocking: adapterSpec.clocking, mate: joint[from].outside.value, units: job.units });
  return [
    face('driving'),
    face('driven'),
    sectionView(jointToDraw(joint), id),
    ...(wheel !== null && wheelSpec !== null
      ? [
          wheelView({
            id,
            wheel,
            teeth: wheelSpec.teeth,
            missing: wheelSpec.missing,
            outside: wheelSpec.outside,
            root: wheelSpec.root,
            toothAngle: wheelSpec.toothAngle,
            gap: job.sensor?.gap ?? null,
            units: job.units,
          }),
        ]
      : []),
  ];
}
