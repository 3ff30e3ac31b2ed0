/** How the wheel sits on what carries it: its bore on the register, its teeth about the bore. mm. */
import type { Link } from '../formulas/chain.ts';
import { eccentricityOf } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import { heldOnContour } from '../job/schema-sheet.ts';
import { hasWindows } from '../parts/tone-wheel.ts';
import { setupRunout } from '../standards/machining-practice.ts';
import { wheelBoreCure } from './link-cures.ts';

/** What the cutting service holds on a contour of the wheel, plus or minus mm. */
export const wheelCut = (joint: Joint): number => heldOnContour(joint.job.sheet, joint.wheelSpec?.thickness ?? 0);

/** How much larger the wheel's bore is than its register as made, least and greatest, mm on the diameter; null without a wheel. */
export function wheelPlay(joint: Joint): { readonly least: number; readonly greatest: number } | null {
  const { wheelRegister: register, wheelSpec: spec, wheelBore: made } = joint;
  if (!register || !spec) return null;
  const cut = wheelCut(joint);
  const bore = made?.limits ?? { lower: spec.bore - cut, upper: spec.bore + cut };
  return { least: bore.lower - register.upper, greatest: bore.upper - register.lower };
}

/**
 * Limits of the wheel's bore that a finished wheel is held to, mm; null without a wheel. A bore as cut may come out smaller than what carries
 * it: its lower limit is what goes on, where any cut of it does. Record, drawing, order and bench sheet take it from here.
 */
export function wheelBoreLimits(joint: Joint): { readonly lower: number; readonly upper: number } | null {
  const { wheelRegister: register, wheelSpec: spec, wheelBore: made } = joint;
  if (!spec) return null;
  if (made) return made.limits;
  const cut = wheelCut(joint);
  const [lower, upper] = [spec.bore - cut, spec.bore + cut];
  return { lower: register && register.upper < upper ? Math.max(lower, register.upper) : lower, upper };
}

/** How true the shoulder for the wheel is turned: total indicator reading, mm, against what, and whether that rests on memory. */
export interface SeatRunout {
  readonly tir: number;
  readonly from: string;
  readonly memory: boolean;
}

/**
 * Run-out that the shoulder for the wheel is allowed, driving register true (or what stands in for it); null without a shoulder. Drawing,
 * inspection record and chain all take it from here. A shoulder on the driving face is turned in one chucking with the driving register.
 * Any other one stands in the set-up of the driven side, or has no register beside it: it runs out as turning the part over lets it.
 */
export function seatRunout({ turnOver, adapterSpec, job }: Joint): SeatRunout | null {
  const { registers, wheelSeat } = adapterSpec;
  if (!wheelSeat) return null;
  if (wheelSeat.face === 'driving' && registers.driving) return withRegister('driving');
  return { ...turnOver, memory: job.adapter.runout === undefined };
}

/** A shoulder turned in one chucking with the register beside it. */
function withRegister(side: 'driving' | 'driven'): SeatRunout {
  const { tir, source, memory } = setupRunout('one chucking');
  return { tir, from: `turned with the ${side} register (${source})`, memory };
}

/**
 * The shoulder for the wheel against the axis that the chain has come to: that of the driving register, or for a shoulder on the driven
 * face that of the driven register. There turning over is a link of its own and holds the shoulder too, until the driven register was read
 * with a dial: what the shoulder may be off that register then comes on top.
 */
export function seatLinks(joint: Joint): Link[] {
  const { wheelSeat } = joint.adapterSpec;
  if (!wheelSeat) return [];
  const isRead = (joint.asMeasured?.register ?? null) !== null;
  if (wheelSeat.face === 'driven' && !isRead) return [];
  const runout = wheelSeat.face === 'driven' ? withRegister('driven') : seatRunout(joint);
  if (!runout) return [];
  return [
    {
      id: 'wheel-seat-runout',
      what: 'the shoulder for the wheel',
      least: 0,
      most: runout.tir / 2,
      angle: null,
      doubt: 0,
      source: runout.from,
      memory: runout.memory,
      cure: '',
    },
  ];
}

/** The wheel's bore on its register, and its teeth about its bore. */
export function wheelLinks(joint: Joint): { readonly bore: Link; readonly teeth: Link } | null {
  const play = wheelPlay(joint);
  if (!play) return null;
  const cut = wheelCut(joint);
  const windows = joint.wheelSpec !== null && hasWindows(joint.wheelSpec);
  const common = { angle: null, doubt: 0, memory: false };
  return {
    bore: {
      ...common,
      id: 'wheel-bore',
      what: 'the wheel on its register',
      least: eccentricityOf(play.least),
      most: eccentricityOf(play.greatest),
      source: joint.wheelBore ? 'limits of both halves' : 'tolerance of the cut',
      cure: wheelBoreCure(joint),
    },
    teeth: {
      ...common,
      id: 'teeth',
      what: `the ${windows ? 'windows' : 'teeth'} about the bore`,
      least: 0,
      // Bore and teeth are cut in one go: half of what two contours may each be out. Common practice.
      most: cut / 2,
      source: 'half the tolerance of the cut, common practice',
      memory: true,
      cure: `bore and ${windows ? 'windows' : 'teeth'} cut in one clamping by a service that holds less (sheet.tolerance)`,
    },
  };
}

/** The wheel by a dial that stands on something fixed, turned with the driving shaft: total indicator reading, mm, at its teeth or its closed rim. */
export function setLink(tir: number, at: 'teeth' | 'rim'): Link {
  return {
    id: 'set-true',
    what: `the wheel by the dial at its ${at}`,
    least: 0,
    most: tir / 2,
    angle: null,
    doubt: 0,
    source: 'asked for in the job (wheel.set_true)',
    memory: false,
    cure: 'a finer setting (wheel.set_true)',
  };
}
