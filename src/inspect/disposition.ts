/** What to do with a finished part: accept it, work on it, use it as it is, or scrap it. */
import type { Finding } from '../model/finding.ts';
import type { Characteristic } from './characteristics.ts';

/** What one size says. */
export type Disposition =
  | 'not measured'
  | 'accept'
  | 'measure again'
  | 'rework'
  | 'use as it is'
  | 'look into it'
  | 'scrap';

/** A size, judged. */
export interface Judgement {
  readonly characteristic: Characteristic;
  readonly disposition: Disposition;
  /** How far outside its limits the size lies, signed: above the upper one positive. 0 within. */
  readonly beyond: number;
  /** What to take off on the diameter or depth to come within: from and to; null where nothing helps. */
  readonly takeOff: { readonly from: number; readonly to: number } | null;
  /** Titles of the checks that make it scrap. */
  readonly fails: readonly string[];
}

/** Sizes that differ from the drawing by more than this are a slip of the pen rather than of the lathe, mm. */
const slip = 1;

/** A size that is no size of this part: typed as a radius, in another unit, or read of something else. Sums leave it out. */
export function isSlip(characteristic: Characteristic): boolean {
  const { found, nominal, lower, upper, unit } = characteristic;
  if (found === null || unit === 'g') return false;
  return Math.abs(found.value - nominal) > Math.max(slip, 3 * (upper - lower)) || isHalf(characteristic);
}

/** Half of what was wanted, within 3 %: a radius was typed. */
export const isHalf = ({ nominal, found }: Characteristic): boolean =>
  found !== null && nominal > 0 && Math.abs(2 * found.value - nominal) <= 0.03 * nominal;

const tidy = (size: number) => Number(size.toFixed(6));

/**
 * Judge a size by its limits.
 * Within them by more than its doubt: accept. On either side of a limit by less than its doubt: measure again, with something finer,
 * before metal is cut or thrown away. Outside with metal left to take off: rework. Outside the other way: scrap, unless the joint as
 * built still passes every check that the drawn one passes; then use it as it is.
 * @param newFails checks that did not fail as drawn, and fail with the measured numbers once all that can be reworked has been
 */
export function judgeSize(characteristic: Characteristic, newFails: readonly Finding[]): Judgement {
  const { found, lower, upper, mend, unit } = characteristic;
  const plain = { characteristic, beyond: 0, takeOff: null, fails: [] };
  if (found === null) return { ...plain, disposition: 'not measured' };
  const { value, doubt } = found;
  const beyond = tidy(value > upper ? value - upper : value < lower ? value - lower : 0);
  if (unit === 'g') return { ...plain, beyond, disposition: beyond === 0 ? 'accept' : 'look into it' };
  if (isSlip(characteristic)) return { ...plain, beyond, disposition: 'look into it' };
  if (beyond === 0) {
    // A limit of zero is no limit. A run-out of no more than half of what is allowed is good whatever the dial.
    const [room, doubtful] =
      lower === 0 ? [upper - value, Math.min(doubt, upper / 2)] : [Math.min(upper - value, value - lower), doubt];
    return { ...plain, disposition: room + 1e-9 >= doubtful ? 'accept' : 'measure again' };
  }
  if (Math.abs(beyond) < doubt) return { ...plain, beyond, disposition: 'measure again' };
  const isMended = (mend === 'too large' && beyond > 0) || (mend === 'too small' && beyond < 0);
  if (isMended) {
    const takeOff =
      beyond > 0 ? { from: value - upper, to: value - lower } : { from: lower - value, to: upper - value };
    return { ...plain, beyond, takeOff: { from: tidy(takeOff.from), to: tidy(takeOff.to) }, disposition: 'rework' };
  }
  if (newFails.length === 0) return { ...plain, beyond, disposition: 'use as it is' };
  return { ...plain, beyond, fails: [...new Set(newFails.map(({ title }) => title))], disposition: 'scrap' };
}

/** A size that work on the part brings within its limits. */
export const isMendable = (characteristic: Characteristic): boolean =>
  judgeSize(characteristic, []).disposition === 'rework';

/** From the gentlest to the worst. */
const order: readonly Disposition[] = [
  'not measured',
  'accept',
  'use as it is',
  'measure again',
  'look into it',
  'rework',
  'scrap',
];

/** What the worst size says of the part; "not measured" where nothing was measured. */
export function overall(judgements: readonly Judgement[]): Disposition {
  return judgements.reduce<Disposition>(
    (worst, { disposition }) => (order.indexOf(disposition) > order.indexOf(worst) ? disposition : worst),
    'not measured',
  );
}
