/** The route of an adapter through a small shop: which side comes first, what stock it is made of, how it is held and found again. */
import type { Joint } from '../job/joint.ts';
import { sin } from '../units/trig.ts';
import { highestOver } from './drill-levels.ts';
import type { WorkFace } from './hole-table.ts';
import { lengthsIn } from './lengths.ts';

export const otherFace = (face: WorkFace): WorkFace => (face === 'driving' ? 'driven' : 'driving');

/** The side that is finished first, and why. */
export function firstSide(joint: Joint): { readonly face: WorkFace; readonly why: string } {
  const { wheelSeat } = joint.adapterSpec;
  const [driving, driven] = [highestOver(joint, 'driving'), highestOver(joint, 'driven')];
  if (Math.abs(driving - driven) > 1e-9) {
    const face = driving < driven ? 'driving' : 'driven';
    const flat = Math.min(driving, driven) === 0 ? 'Nothing stands out of it' : 'Less stands out of it';
    return { face, why: `${flat}, so that the part lies on it when it is turned over.` };
  }
  if (wheelSeat) {
    const face = otherFace(wheelSeat.face);
    return { face, why: 'The seat of the wheel takes away rim that the second chucking grips: it comes last.' };
  }
  return {
    face: 'driving',
    why: 'Both sides lie equally well; the driving face is where the drawing counts heights from.',
  };
}

/** Left on each face and on diameters after roughing, mm. Common practice. */
export const roughLeft = { face: 0.5, diameter: 1 } as const;
/** Taken off the raw stock, mm: each face, and the diameter. Common practice. */
const stockOver = { face: 1.5, diameter: 3 } as const;
/** Spare stock that is gripped where all is done in one chucking, mm. Common practice. */
const grip = 25;

export interface Stock {
  /** mm */
  readonly diameter: number;
  readonly length: number;
  /** Of the finished part, spigots counted. */
  readonly overall: number;
  /** g */
  readonly mass: number;
}

/** The disc that an adapter is made of. */
export function stockOf(joint: Joint): Stock {
  const { thickness, outside } = joint.adapterSpec;
  const overall = thickness + highestOver(joint, 'driving') + highestOver(joint, 'driven');
  const diameter = Math.ceil(outside + stockOver.diameter - 1e-9);
  const spare = joint.job.adapter.setup === 'one chucking' ? grip : 0;
  const length = Math.ceil(overall + 2 * stockOver.face + spare - 1e-9);
  return { diameter, length, overall, mass: (Math.PI / 4) * diameter ** 2 * length * joint.adapterMaterial.density };
}

/** What the dial runs on when the axis is found again: the bore, or the rim where there is none. */
export function indicated({ adapterSpec: { bore }, job }: Joint): string {
  return bore === null
    ? 'the rim, finished in the same chucking as the first register'
    : `the bore, ${lengthsIn(job.units)(bore, 2)}`;
}

/** What the side below needs under it. */
export function underneath(joint: Joint, up: WorkFace): string {
  const mm = lengthsIn(joint.job.units);
  const below = otherFace(up);
  const stands = highestOver(joint, below);
  return stands === 0
    ? `The ${below} face lies flat on parallels, clear of every hole that comes through.`
    : `The ${below} side has metal standing out by ${mm(stands)}: parallels higher than that, under its face, clear of every hole that comes through.`;
}

/**
 * How the part is turned about its axis before a side is drilled.
 * The index mark is the zero of all angles; flats bring it back by themselves.
 */
export function clocked(joint: Joint, up: WorkFace, isFirst: boolean, through: string): string[] {
  const { flats, outside } = joint.adapterSpec;
  const [where, sign] = up === 'driven' ? ['right', 'X plus'] : ['left', 'X minus'];
  const lies = `Index mark on the ${where}, at ${sign}: that is where all angles and coordinates of this page count from.`;
  if (flats) {
    const seen = up === 'driven' ? flats.angle : 180 - flats.angle;
    const turn = ((((((seen - 90) % 180) + 180) % 180) + 90) % 180) - 90;
    const jaw =
      Math.abs(turn) < 1e-9
        ? 'The flats lie along X: jaws along X, and the mark comes right by itself.'
        : `The flats stand ${Math.abs(turn).toFixed(2)} degrees ${turn > 0 ? 'counter-clockwise' : 'clockwise'} from X: turn the vise by that, or the axes of the read-out.`;
    return [jaw, lies];
  }
  if (isFirst) {
    return [
      lies,
      `No flats: any turn will do now. Scribe the index mark across the rim at ${sign}, Y 0, with the tool that spots, before anything is drilled.`,
    ];
  }
  const mm = lengthsIn(joint.job.units);
  const slip = (outside / 2) * sin((0.25 * Math.PI) / 180);
  return [
    lies,
    through === ''
      ? `No flats and no hole comes through: set the mark by a square on both sides of the rim. A quarter of a degree is ${mm(slip, 2)} at the rim; where the two patterns must agree better, add adapter.flats.`
      : through,
  ];
}
