/**
 * What makes a link of the chain smaller, a clause each; empty where that is done already. What the job says was done (a micrometer, the finest
 * fit, one chucking) is never asked for again.
 */
import type { Joint } from '../job/joint.ts';
import { instrumentDoubt, type Measured, provenDoubt } from '../job/measured.ts';
import type { ResolvedRegister } from '../job/resolve-flange.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import { standardTolerance } from '../standards/iso286.ts';
import { setupRunout } from '../standards/machining-practice.ts';
import { type FlangeSide, registerPair } from './plays.ts';

/** Clauses that are left, one after the other. */
const oneAfterOther = (...clauses: readonly string[]): string => clauses.filter((one) => one !== '').join(', then ');

/**
 * Whether a size is known as well as a micrometer tells it, which is better than a fit ring proves it. Every reading that names a micrometer is:
 * repeated readings with all the spread that is let by (0.025 mm) keep a doubt below a caliper's. A caliper's never is.
 */
export const isFinelyKnown = ({ doubt, basis }: Measured): boolean =>
  doubt < (basis === 'repeated' ? instrumentDoubt.caliper : provenDoubt);

/** How the flange's half could be known better. */
function mateCure(side: FlangeSide, { diameter, limits, zone }: ResolvedRegister): string {
  if (isFinelyKnown(diameter))
    return zone === null ? '' : `the flange's register counted as it was measured (${side}.register.fit left out)`;
  const rings = diameter.basis === 'proven' ? '' : ' or proven with fit rings';
  const only = zone === null ? ` (it is known to +-${((limits.upper - limits.lower) / 2).toFixed(3)} mm only)` : '';
  return `the flange's register measured with a micrometer${rings}${only}`;
}

/** The closest zones that are asked for, and their grade. */
const closest = { male: { zone: 'h5', grade: 5, loose: /^[a-g]/ }, female: { zone: 'H6', grade: 6, loose: /^[A-G]/ } };
/** Grade of the finest tolerance that is asked for where limits are made to the mate. */
const finestGrade = 5;

/** How the adapter's half could be made closer. */
function ownCure(joint: Joint, side: FlangeSide, { gender, limits, diameter }: RegisterSpec): string {
  const { fit } = joint.job.adapter[side];
  const [, letters = '', grade = ''] = /^([a-z]+)(\d+)$/i.exec(limits.zone) ?? [];
  if (letters !== '') {
    const { zone, grade: finest, loose } = closest[gender];
    const isClosest = Number(grade) <= finest && !loose.test(letters);
    return isClosest ? '' : `a closer fit (adapter.${side}.fit: ${zone})`;
  }
  if (typeof fit !== 'object') return '';
  const tolerance = standardTolerance(diameter, finestGrade);
  const isWide = tolerance.ok && limits.upper - limits.lower > tolerance.value + 1e-6;
  if ((fit.clearance ?? 0) > 0) return `less clearance (adapter.${side}.fit: { clearance: 0 mm })`;
  return isWide
    ? `a finer tolerance (adapter.${side}.fit: { ${fit.interference === undefined ? 'clearance: 0 mm' : `interference: ${fit.interference} mm`}, tolerance: ${tolerance.value} mm })`
    : '';
}

/**
 * What makes a register's play smaller: the wider of its two halves first.
 * @param byHeat the play comes from unlike metals and not from the fit
 */
export function registerCure(joint: Joint, side: FlangeSide, byHeat = false): string {
  if (byHeat) return 'an adapter of a metal that grows as the flange does (adapter.material)';
  const pair = registerPair(joint, side);
  if (!pair) return '';
  const width = (half: { lower: number; upper: number }) => half.upper - half.lower;
  const isMateWider = width(pair.mate.limits) > width(pair.own.limits);
  const mate = mateCure(side, pair.mate);
  if (joint.job.built?.adapter?.[side]?.register)
    return isMateWider && mate !== '' ? mate : `the adapter's ${side} register bushed and turned again`;
  const own = ownCure(joint, side, pair.own);
  return isMateWider ? oneAfterOther(mate, own) : [own, mate].filter((one) => one !== '').join(', or ');
}

/**
 * What makes a flange's run-out smaller. Where the dial's own doubt is more than what it read, there is nothing to true up.
 * @param read what the dial read, and its doubt, in one unit
 */
export const trueUp = (cure: string, read: { readonly size: number; readonly doubt: number }): string =>
  read.size > read.doubt ? cure : '';

/** What brings the two registers nearer to one axis; empty where they are turned in one chucking, or run as true as that. */
export function turnOverCure({ turnOver: { tir }, job, asMeasured }: Joint): string {
  if (asMeasured?.register) return 'the driven register bushed and bored again, the driving one set true with a dial';
  const isDone = job.adapter.setup === 'one chucking' && job.adapter.runout === undefined;
  if (isDone || tir <= setupRunout('one chucking').tir) return '';
  return job.adapter.runout === undefined
    ? 'both registers in one chucking (adapter.setup: one chucking)'
    : 'both registers turned anew in one chucking, and adapter.runout read again';
}

/** What makes the adapter's two faces more alike; empty where they are turned in one chucking. */
export const faceCure = ({ job }: Joint): string =>
  job.adapter.setup === 'one chucking' ? '' : 'both faces in one chucking (adapter.setup: one chucking)';

/** What centres a wheel better on its register. */
export const wheelBoreCure = ({ wheelBore }: Joint): string =>
  `${wheelBore ? '' : 'the bore turned to the register after cutting (wheel.fit: H8), or '}the wheel set true with a dial (wheel.set_true: 0.1 mm)`;
