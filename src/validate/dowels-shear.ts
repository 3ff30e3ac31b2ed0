/** Do the dowels alone carry the torque? The screws' friction is not counted: a torque that reverses works it loose. */
import { dowelCapacity, dowelTorque, mostUsefulDepth } from '../formulas/dowel-shear.ts';
import type { Joint } from '../job/joint.ts';
import type { DowelSet } from '../job/joint-dowels.ts';
import { materialOfFlange } from '../job/resolve-flange.ts';
import type { Finding } from '../model/finding.ts';
import { findMaterial } from '../standards/materials.ts';
import { must } from '../standards/table.ts';
import { judged, notAssessed } from './check.ts';
import { torqueInWords, torqueMissing, torqueOf } from './duty-torque.ts';
import { mm, plain, sourced } from './words.ts';

/** What a side's dowels carry alone. */
interface Carried {
  /** N.m */
  readonly torque: number;
  /** Pins that share it. */
  readonly sharing: number;
  /** Load of one pin, N, and what gives way there first. */
  readonly load: number;
  readonly gives: string;
}

/**
 * Torque that a side's dowels carry without any friction, N.m. Pins whose holes were reamed together share it; of holes made apart, one
 * pin may have to carry it until the others touch.
 */
export function carriedByDowels(joint: Joint, { side, pin, inside, circle, count, reamed }: DowelSet): Carried {
  const flange = must(findMaterial(materialOfFlange(joint[side])));
  const seat = (depth: number, strength: number) => ({ depth: Math.max(0, depth - pin.chamfer), yield: strength });
  const { load, weakness } = dowelCapacity(
    pin.d,
    1000 * pin.shear,
    seat(inside.adapter, joint.adapterMaterial.yieldStrength),
    seat(inside.flange, flange.yieldStrength),
  );
  const sharing = reamed === 'together' ? count : 1;
  const gives = {
    pin: 'the pins are cut through',
    first: 'the holes in the adapter widen',
    second: `the holes in the ${side} flange widen`,
    tilting: 'the pins tilt in their holes',
  }[weakness];
  return { torque: dowelTorque(load, circle, sharing), sharing, load, gives };
}

/** Dowels that would carry a torque alone, in words for a cure: "take thicker pins (key), or 3 of them reamed together (key)". */
export function strongerDowels(set: DowelSet, { torque, sharing }: Carried, asked: number): string {
  const key = `adapter.${set.side}.dowels`;
  const enough = Math.ceil(asked / (torque / sharing));
  const more =
    enough <= 6 ? `, or ${enough} of them reamed together (${key}: { count: ${enough}, reamed: together })` : '';
  return `take thicker pins (${key}.size)${more}`;
}

/** Torque of the dowels against the one that the joint is sized for. */
export function dowelShear(joint: Joint, set: DowelSet): Finding {
  const { side, pin, circle, count } = set;
  const flange = must(findMaterial(materialOfFlange(joint[side])));
  const carried = carriedByDowels(joint, set);
  const { torque, sharing, load, gives } = carried;
  const share =
    sharing < count
      ? 'Reamed apart, one pin may have to carry it alone'
      : `${count === 1 ? 'One pin carries' : `${count} pins carry`} it`;
  const common = {
    code: `dowel-shear-${side}`,
    feature: `${side}-dowels`,
    title: `torque that the ${side} dowels carry alone`,
    source: sourced(
      'EN 1993-1-8 table 3.10 and EN 1995-1-1 equation 8.6; breaking load of a pin after ASME B18.8.5M, yield strengths of the materials',
      pin.memory || joint.adapterMaterial.memory || flange.memory,
    ),
  };
  const why = `${share}, on ${mm(circle)}: ${plain(load / 1000, 1)} kN a pin before ${gives}. Not counted: the screws' friction, fatigue, and depth beyond ${mostUsefulDepth} diameters.`;
  const asked = torqueOf(joint);
  if (!asked) {
    const all = `They carry ${plain(torque, 0)} N.m. ${why}`;
    return notAssessed({ ...common, why: all, missing: torqueMissing });
  }
  return judged(
    {
      ...common,
      unit: 'N.m',
      why: `${why} The joint is sized for ${torqueInWords(asked)}.`,
      cure: `The screws' friction has to carry all of it: see grip-${side}. For the pins to carry it, ${strongerDowels(set, carried, asked.value)}.`,
    },
    torque,
    // Dowels that only centre need not carry anything: the screws clamp. Where these do not hold, their own check fails.
    { limit: asked.value, sense: 'at least', worst: 'caution' },
  );
}
