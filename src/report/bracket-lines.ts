/** The bracket in the report: its blank, its bends, and how its gap is set. */
import type { Joint } from '../job/joint.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import type { LengthUnits } from '../units/format.ts';
import { sizeText } from './numbers.ts';

interface Line {
  readonly label: string;
  readonly value: string;
  readonly note: string;
}

/** Three lines, or none for a joint without a bracket. */
export function bracketLines({ bracket }: Pick<Joint, 'bracket'>, units: LengthUnits): Line[] {
  if (!bracket) return [];
  return [blankLine(bracket, units), ...bendLine(bracket, units), gapLine(bracket, units)];
}

function blankLine({ part, material }: Bracket, units: LengthUnits): Line {
  const corners = part.outside.kind === 'path' ? part.outside.vertices : [];
  const length = Math.max(...corners.map(({ x }) => x));
  const width = 2 * Math.max(...corners.map(({ y }) => y));
  const size = (mm: number) => sizeText(mm, units);
  return {
    label: 'Bracket blank',
    value: `${size(length)} x ${size(width)}`,
    note: `${material.name}, ${size(part.thickness)} thick`,
  };
}

function bendLine({ part, kFrom, radiusFrom }: Bracket, units: LengthUnits): Line[] {
  const bends = part.bends ?? [];
  const [first] = bends;
  if (!first) return [];
  const each = bends.map(
    ({ direction, angle, from }) => `${direction} ${Number(angle.toFixed(2))} deg at ${sizeText(from.x, units)}`,
  );
  return [
    {
      label: 'Bracket bends',
      value: each.join('; '),
      note: `from the end with the bolts; inside radius ${sizeText(first.radius, units)} (${radiusFrom}); K-factor ${first.k.toFixed(3)}: ${kFrom}`,
    },
  ];
}

function gapLine({ gap, setting, packing, spec }: Bracket, units: LengthUnits): Line {
  const size = (mm: number) => sizeText(mm, units);
  const how = {
    slots: `slide the foot along its slots, ${size(spec.foot.travel)} in all`,
    shims: `shims under the foot, ${size(packing)} as designed`,
    'stand-offs': `stand-offs ${size(packing)} long, shims to suit`,
  }[setting];
  return {
    label: 'Air gap to set',
    value: `${size(gap.nominal)} +/- ${size(gap.tolerance)}`,
    note: `${how}; at the high spot of the wheel, with the gap card`,
  };
}
