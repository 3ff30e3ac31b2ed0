/** Dowels in the report: how their holes are made, and what to buy. */
import type { Joint } from '../job/joint.ts';
import type { DowelFit } from '../job/joint-dowels.ts';
import { formatAngle, type LengthUnits } from '../units/format.ts';
import { atan2 } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { limitsText, sizeText } from './numbers.ts';
import type { BuyLine } from './screw-list.ts';

type WithDowels = Pick<Joint, 'dowels'>;

function fitText({ limits, least, greatest, method, gauge, source }: DowelFit, units: LengthUnits): string {
  const size = (mm: number) => sizeText(mm, units, 3);
  const sign = least < 0 ? ' (negative: interference)' : '';
  const made = source === 'measured' ? method : `${method}; gauge: ${gauge} (${source})`;
  return `${limitsText(limits.lower, limits.upper, units)} (${limits.zone}), ${made}; clearance on the pin ${size(least)} to ${size(greatest)}${sign}`;
}

/** The dowel holes of a side: limits in both parts, where they stand, how they are made. Empty for a side without. */
export function dowelLine(
  { dowels }: WithDowels,
  side: 'driving' | 'driven' | 'wheel',
  units: LengthUnits,
): { label: string; value: string; note: string }[] {
  const set = side === 'wheel' ? null : dowels?.[side];
  if (!set) return [];
  const { pin, count, circle, positions, depth, fits, reamed, isMeasured } = set;
  const [first] = positions;
  const angle = first ? (atan2(first.y, first.x) * 180) / Math.PI : 0;
  const flange =
    reamed === 'together'
      ? `; reamed through adapter and ${side} flange together, after setting true`
      : `; in the ${side} flange ${isMeasured ? 'as measured, ' : ''}${fitText(fits.flange, units)}`;
  return [
    {
      label: `Dowel holes, ${side}`,
      value: `${count} x ${sizeText(pin.d, units)}`,
      note: `on ${sizeText(circle, units)}, first at ${formatAngle(withinTurn(angle))} (seen from the driven side), ${depth === null ? 'right through' : `${sizeText(depth, units)} deep at full diameter`}; ${fitText(fits.adapter, units)}${flange}`,
    },
  ];
}

/** Pins to buy, equal ones of both sides in one line. */
export function dowelsToBuy({ dowels }: WithDowels): BuyLine[] {
  const sets = [dowels?.driving, dowels?.driven].flatMap((set) => (set ? [set] : []));
  const lines = sets.map(({ count, pin, length, isStandard, side, depth }): BuyLine => {
    const blind = depth === null ? '' : ', or with an internal thread (ISO 8735) to pull it out of its blind hole';
    const cut = isStandard ? '' : ', cut from a longer one';
    return {
      count,
      what: `parallel pin ${pin.d} x ${length}, m6, hardened${cut}`,
      detail: `${pin.standard}${blind}`,
      tighten: '',
      where: `dowels between the adapter and the ${side} flange`,
    };
  });
  const [one, other] = lines;
  if (one && other && one.what === other.what && one.detail === other.detail) {
    return [{ ...one, count: one.count + other.count, where: `${one.where}; ${other.where}` }];
  }
  return lines;
}
