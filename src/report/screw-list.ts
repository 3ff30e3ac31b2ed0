/** Screws, washers and nuts to buy for a joint. */
import type { ScrewGroup } from '../job/joint.ts';
import { faceSides, frictionOfFace, type RubbingJoint, screwsOfFace } from '../rotor/joint-face.ts';
import { formatShopSize, formatTorque } from '../units/format.ts';

export interface BuyLine {
  readonly count: number;
  /** What to ask for: "M10 x 25 socket head cap screw". */
  readonly what: string;
  /** Standard and strength class; empty where none is known. */
  readonly detail: string;
  /** How hard, and on what it rests; empty for what is not tightened. */
  readonly tighten: string;
  /** Where they go. */
  readonly where: string;
}

const headNames: Readonly<Record<ScrewGroup['head']['kind'], string>> = {
  socket: 'socket head cap screw',
  flat: 'flat head screw, hexagon socket',
  button: 'button head screw',
  hex: 'hexagon head screw',
};

/** How a group is kept from turning loose: oil and thread lock rub differently, and the torque holds for one of them. Common practice. */
function lockingText({ nut, class: name, side }: ScrewGroup): string {
  const key = side === 'wheel' ? '' : `, adapter.${side}.friction`;
  const how = nut
    ? "all-metal self-locking nuts (add the nut's own running torque)"
    : `oil or thread lock, never both: with lock the same torque pulls less (VDI 2230 class C, 0.14 to 0.24${key})`;
  return `${how}; ${name === '8.8' ? 'no spring washers' : `no spring washers under class ${name}`} (common practice)`;
}

/** How the faces must be that a group presses together: what their grip was counted with. */
function facesText(joint: RubbingJoint, group: ScrewGroup): string[] {
  return faceSides
    .filter((side) => screwsOfFace(joint, side)?.side === group.side)
    .flatMap((side) => {
      const friction = frictionOfFace(joint, side);
      if (!friction.ok) return [];
      const { mu, words, oiled } = friction.value;
      const oil = oiled === null || oiled >= mu ? '' : `; oil on them would leave ${oiled}`;
      return [`${side} face: ${words}; by friction ${mu} it carries the torque${oil}`];
    });
}

/** A torque in N.m as a wrench is set. */
export const torqueText = (torque: number): string => (torque < 20 ? torque.toFixed(1) : torque.toFixed(0));

/** "71 N.m at friction 0.12, preload 43.4 kN; ..." or why there is none; then how it is locked. */
function tightenText(joint: RubbingJoint, group: ScrewGroup): string {
  const { torque, preload, leastPreload, friction, note, spread } = group.tightening;
  if (torque === null || preload === null) return [note, ...facesText(joint, group), lockingText(group)].join('; ');
  return [
    `${torqueText(torque)} N.m at friction ${friction}, preload ${preload.toFixed(1)} kN`,
    note,
    `the same is ${formatTorque(torque, 'in')}`,
    ...(leastPreload === null
      ? []
      : [`count on ${leastPreload.toFixed(1)} kN when just tightened, less what settles away`]),
    ...(spread
      ? [
          `friction decides: at ${spread.from} it pulls ${spread.most.toFixed(1)} kN${
            spread.yields ? ', past the yield point: no paste and no grease, or the screw stretches and can break' : ''
          }, at ${spread.to} ${spread.least.toFixed(1)} kN`,
        ]
      : []),
    ...facesText(joint, group),
    lockingText(group),
  ].join('; ');
}

/** "M10 x 25 socket head cap screw". */
export function screwName({ thread, length, head }: ScrewGroup): string {
  const size = length === null ? `${thread}, length to be chosen` : `${thread} x ${formatShopSize(thread, length)}`;
  return `${size} ${headNames[head.kind]}`;
}

function screwLine(joint: RubbingJoint, group: ScrewGroup): BuyLine {
  const { count, head, label } = group;
  return {
    count,
    what: screwName(group),
    detail: [`class ${group.class}`, head.standard].filter((t) => t !== '').join(', '),
    tighten: tightenText(joint, group),
    where: label,
  };
}

/** One line for each kind of thing to buy, in the order of a joint's groups. Equal things of several groups are one line. */
export function screwsToBuy(joint: RubbingJoint, groups: readonly ScrewGroup[] = joint.screws): BuyLine[] {
  const lines = groups.flatMap((group) => {
    const { count, thread, washer, nut, label } = group;
    const out = [screwLine(joint, group)];
    if (washer) {
      // A bolt with a nut has a washer at both ends.
      const size = `${thread} washer, ${formatShopSize(thread, washer.outside)} outside, ${formatShopSize(thread, washer.thickness)} thick`;
      out.push({ count: nut ? 2 * count : count, what: size, detail: '', tighten: '', where: label });
    }
    if (nut)
      out.push({
        count,
        what: `${thread} nut, ${formatShopSize(thread, nut.acrossFlats)} across flats`,
        detail: `for class ${group.class} screws`,
        tighten: '',
        where: label,
      });
    return out;
  });
  const merged: BuyLine[] = [];
  for (const line of lines) {
    const at = merged.findIndex((m) => m.what === line.what && m.detail === line.detail && m.tighten === line.tighten);
    const same = merged[at];
    if (same === undefined) merged.push(line);
    else merged[at] = { ...same, count: same.count + line.count, where: `${same.where}; ${line.where}` };
  }
  return merged;
}
