/** Screws, washers and nuts to buy for a joint. */
import type { ScrewGroup } from '../job/joint.ts';

export interface BuyLine {
  readonly count: number;
  /** What to ask for: "M10 x 25 socket head cap screw". */
  readonly what: string;
  /** Standard and strength class; empty where none is known. */
  readonly detail: string;
  /** Where they go. */
  readonly where: string;
}

const headNames: Readonly<Record<ScrewGroup['head']['kind'], string>> = {
  socket: 'socket head cap screw',
  flat: 'flat head screw, hexagon socket',
  button: 'button head screw',
  hex: 'hexagon head screw',
};

/** A size as it is asked for in a shop: mm beside metric threads, inches beside the others. */
const short = (thread: string, mm: number): string =>
  /^M\s*\d/i.test(thread) ? String(Number(mm.toFixed(3))) : `${Number((mm / 25.4).toFixed(4))} in`;

function screwLine(group: ScrewGroup): BuyLine {
  const { count, thread, length, head, label } = group;
  const size = length === null ? `${thread}, length to be chosen` : `${thread} x ${short(thread, length)}`;
  return {
    count,
    what: `${size} ${headNames[head.kind]}`,
    detail: [head.standard, `class ${group.class}`].filter((t) => t !== '').join(', '),
    where: label,
  };
}

/** One line for each kind of thing to buy, in the order of the groups. Equal things of several groups are one line. */
export function screwsToBuy(groups: readonly ScrewGroup[]): BuyLine[] {
  const lines = groups.flatMap((group) => {
    const { count, thread, washer, nut, label } = group;
    const out = [screwLine(group)];
    if (washer) {
      // A bolt with a nut has a washer at both ends.
      const size = `${thread} washer, ${short(thread, washer.outside)} outside, ${short(thread, washer.thickness)} thick`;
      out.push({ count: nut ? 2 * count : count, what: size, detail: '', where: label });
    }
    if (nut)
      out.push({
        count,
        what: `${thread} nut, ${short(thread, nut.acrossFlats)} across flats`,
        detail: `for class ${group.class} screws`,
        where: label,
      });
    return out;
  });
  const merged: BuyLine[] = [];
  for (const line of lines) {
    const at = merged.findIndex((m) => m.what === line.what && m.detail === line.detail);
    const same = merged[at];
    if (same === undefined) merged.push(line);
    else merged[at] = { ...same, count: same.count + line.count, where: `${same.where}; ${line.where}` };
  }
  return merged;
}
