/** How the wheel sits on what carries it: its bore on the register, its teeth about the bore. mm. */
import type { Link } from '../formulas/chain.ts';
import { eccentricityOf } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import { heldOnContour } from '../job/schema-sheet.ts';
import { hasWindows } from '../parts/tone-wheel.ts';
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
