/** The shaft's tube as something that bends: critical speeds by the handbook and as a beam, how long it may be, which tubes would do. */
import {
  type Beam,
  type BeamEnd,
  type BeamMass,
  type BeamMode,
  type BeamPiece,
  beamModes,
} from '../formulas/beam-modes.ts';
import {
  handbookCriticalSpeed,
  lengthForSpeed,
  pinnedCriticalSpeed,
  shearShare,
  type TubeSize,
  tubeSection,
} from '../formulas/shaft-tube.ts';
import type { JobInput } from '../job/schema.ts';
import type { TubeInput } from '../job/schema-shaft-tube.ts';
import type { MassProperties } from '../model/mass.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { criticalConstants, goodShare, halfBand } from '../standards/shaft-speed-rules.ts';
import { must } from '../standards/table.ts';

export { goodShare } from '../standards/shaft-speed-rules.ts';

/** What of a joint the shaft's speed hangs on. */
export interface WithShaft {
  readonly job: Pick<JobInput, 'shaft' | 'duty'>;
  readonly adapterMass?: MassProperties | null;
  readonly wheelMass?: MassProperties | null;
}

/** A tube in a shaft whose ends are given. */
export interface ShaftToBend {
  readonly size: TubeSize;
  readonly metal: Material;
  /** Joint centre to joint centre, mm. */
  readonly length: number;
  readonly near: TubeInput['near'];
  readonly far: TubeInput['far'];
  /** Mass that moves with the near end besides its own, g: adapter and wheel. */
  readonly carried: number;
}

export interface WhirlStudy {
  readonly shaft: ShaftToBend;
  /** By the handbook formula, rpm, and what its constant rests on. */
  readonly handbook: { readonly speed: number; readonly from: string };
  /** As a beam with its forks and mounts: the lowest modes. */
  readonly modes: readonly BeamMode[];
  /** The lower of the two, rpm. */
  readonly critical: number;
  /** Half the critical speed and the band about it, rpm. */
  readonly half: { readonly from: number; readonly at: number; readonly to: number };
  /** Mass of tube and forks, g. */
  readonly mass: number;
  /** Whether both ends are taken not to give, and whether forks are left out. */
  readonly endsHeld: boolean;
  readonly forksLeftOut: boolean;
}

const modesShown = 3;
/** Elements where one speed of many tubes is wanted: the lowest mode is within 0.1 % with them, stout tubes included. */
const coarse = 12;

/** The piece from the joint centre to the weld: a bar of the neck's diameter where there is one, else as stiff as the tube. */
function forkPiece(shaft: ShaftToBend, end: TubeInput['near']): BeamPiece[] {
  if (end.reach === undefined) return [];
  const size = end.neck === undefined ? shaft.size : { outside: end.neck, wall: end.neck / 2 };
  const mass = end.fork === undefined ? plainPiece(size, shaft.metal, 1).mass : end.fork / end.reach;
  return [{ ...plainPiece(size, shaft.metal, end.reach), mass }];
}

function plainPiece(size: TubeSize, metal: Material, length: number): BeamPiece {
  const { area, moment } = tubeSection(size);
  return {
    length,
    bending: metal.youngsModulus * moment,
    shear: shearShare(size, metal.poissonsRatio) * metal.shearModulus * area,
    mass: area * metal.density,
  };
}

function tubeLength({ length, near, far }: ShaftToBend): number {
  return length - (near.reach ?? 0) - (far.reach ?? 0);
}

/** The shaft as a beam: fork, tube, fork on what carries its ends. */
export function shaftBeam(shaft: ShaftToBend): Beam {
  const { near, far, size, metal, length, carried } = shaft;
  const on = ({ stiffness }: TubeInput['near']): BeamEnd => ({ sideways: stiffness ?? 'held', tilt: 0 });
  const masses: BeamMass[] = [
    { at: 0, mass: (near.mass ?? 0) + carried },
    { at: length, mass: far.mass ?? 0 },
  ];
  return {
    pieces: [...forkPiece(shaft, near), plainPiece(size, metal, tubeLength(shaft)), ...forkPiece(shaft, far)],
    ends: [on(near), on(far)],
    masses: masses.filter(({ mass }) => mass > 0),
  };
}

/** By the handbook, rpm: the printed constant of the metal, or first principles where none is printed, whichever is lower. */
export function handbookSpeed({ size, metal, length }: ShaftToBend): { speed: number; from: string } {
  const own = pinnedCriticalSpeed(size, metal, length);
  const row = criticalConstants.rows.find(({ family }) => family === metal.family);
  const printed = row ? handbookCriticalSpeed(size, row.C, length) : Infinity;
  return row && printed <= own
    ? { speed: printed, from: `C ${(row.C / 1e8).toFixed(2)}e8, ${row.from}` }
    : { speed: own, from: `E ${metal.youngsModulus / 1000} GPa and ${Math.round(metal.density * 1e6)} kg/m3` };
}

/** The lower of handbook and beam, rpm. */
export function criticalSpeed(shaft: ShaftToBend): number {
  const [first] = beamModes(shaftBeam(shaft), 1, coarse);
  return Math.min(handbookSpeed(shaft).speed, 60 * (first as BeamMode).frequency);
}

/** Mass of tube and forks, g. */
export function shaftMass(shaft: ShaftToBend): number {
  return shaftBeam(shaft).pieces.reduce((sum, { length, mass }) => sum + length * mass, 0);
}

/** The shaft that a job describes; null when it describes no tube. */
export function shaftOf({ job, adapterMass, wheelMass }: WithShaft): ShaftToBend | null {
  const tube = job.shaft?.tube;
  if (!tube) return null;
  const { outside, wall, length, material, near, far } = tube;
  return {
    size: { outside, wall },
    metal: must(findMaterial(material)),
    length,
    near,
    far,
    carried: (adapterMass?.mass ?? 0) + (wheelMass?.mass ?? 0),
  };
}

/** Everything about the speed of a job's shaft; null when it describes no tube. */
export function studyWhirl(joint: WithShaft): WhirlStudy | null {
  const shaft = shaftOf(joint);
  if (!shaft) return null;
  const modes = beamModes(shaftBeam(shaft), modesShown);
  const handbook = handbookSpeed(shaft);
  const critical = Math.min(handbook.speed, 60 * (modes[0] as BeamMode).frequency);
  const at = critical / 2;
  return {
    shaft,
    handbook,
    modes,
    critical,
    half: { from: at * (1 - halfBand), at, to: at * (1 + halfBand) },
    mass: shaftMass(shaft),
    endsHeld: shaft.near.stiffness === undefined && shaft.far.stiffness === undefined,
    forksLeftOut: shaft.near.reach === undefined && shaft.far.reach === undefined,
  };
}

/** Shortest and longest tube that is looked at, mm. */
const shortest = 50;
const farthest = 10_000;

/**
 * The longest one-piece shaft of this tube and these ends that stays at or below `share` of its critical speed, mm, whole and rounded
 * down; null when none does, as on mounts that are too soft.
 */
export function longestShaft(shaft: ShaftToBend, speed: number, share = goodShare): number | null {
  const least = Math.ceil((shaft.near.reach ?? 0) + (shaft.far.reach ?? 0) + shortest);
  // The lower of the two counts: where the handbook alone is too low, the beam is not asked.
  const holds = (length: number) => {
    const made = { ...shaft, length };
    return share * handbookSpeed(made).speed >= speed && share * criticalSpeed(made) >= speed;
  };
  if (!holds(least)) return null;
  // The handbook alone sets an upper end: its speed falls with the square of the length.
  const bound = lengthForSpeed(shaft.length, share * handbookSpeed(shaft).speed, speed);
  let [low, high] = [least, Math.min(farthest, Math.max(least, Math.ceil(bound)) + 1)];
  if (holds(high)) return high;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
