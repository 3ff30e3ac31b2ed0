/** Do the dowels alone carry the torque? The screws' friction is not counted: pins bear only once the face has slipped. */
import { dowelCapacity, dowelTorque, mostUsefulDepth } from '../formulas/dowel-shear.ts';
import type { Joint } from '../job/joint.ts';
import type { DowelSet } from '../job/joint-dowels.ts';
import { materialOfFlange } from '../job/resolve-flange.ts';
import type { Finding } from '../model/finding.ts';
import { reverses } from '../rotor/joint-torque.ts';
import { findMaterial } from '../standards/materials.ts';
import { must } from '../standards/table.ts';
import { capital } from '../units/sentence.ts';
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

/** Why dowels are no cure where the torque reverses. VDI 2230 (from memory): a face must not slide under a load that goes to and fro. */
export const toAndFro =
  'the torque reverses, and a face that slips to and fro works its screws loose and frets, whatever the dowels carry';

/** The thickest pins, mm, and the most of them, that a job may ask for (src/job/schema-dowels.ts). */
const thickest = 20;
const mostPins = 6;

/** Dowels that would carry a torque alone, in words: "take thicker pins (key), or 3 of them reamed together (key)". Empty: they do already. */
function strongerDowels(set: DowelSet, { torque, sharing }: Carried, asked: number): string {
  if (torque >= asked) return '';
  const key = `adapter.${set.side}.dowels`;
  const enough = Math.ceil(asked / (torque / sharing));
  const ways = [
    ...(set.pin.d < thickest ? [`thicker pins (${key}.size)`] : []),
    ...(enough <= mostPins
      ? [`${enough} of them reamed together (${key}: { count: ${enough}, reamed: together })`]
      : []),
  ];
  return ways.length === 0 ? '' : `take ${ways.join(', or ')}`;
}

/**
 * What dowels could do for a face that slips, a clause of a cure; empty where they are no cure (the torque reverses) or carry it already.
 * @param asked torque that they must carry, N.m; left out where it is not known: then new dowels are all that can be told
 */
export function carryByDowels(joint: Joint, side: 'driving' | 'driven', asked?: number): string {
  if (reverses(joint)) return '';
  const set = joint.dowels?.[side];
  if (!set) return `carry the torque by dowels (adapter.${side}.dowels: auto)`;
  return asked === undefined ? '' : strongerDowels(set, carriedByDowels(joint, set), asked);
}

/** Whether a side's dowels hold a torque alone: to and fro they work loose, and hold nothing. @param asked N.m */
export function dowelsHold(joint: Joint, side: 'driving' | 'driven', asked: number): boolean {
  const set = joint.dowels?.[side];
  return !reverses(joint) && set !== undefined && set !== null && carriedByDowels(joint, set).torque >= asked;
}

/** What would widen the margin of dowels that carry it: nothing that is done already. */
function improveOf({ side, pin, count, reamed }: DowelSet): string {
  const key = `adapter.${side}.dowels`;
  const ways = [
    ...(pin.d < thickest ? [`thicker pins (${key}.size)`] : []),
    ...(reamed !== 'together' ? [`holes reamed together (${key}.reamed: together)`] : []),
    ...(reamed === 'together' && count < mostPins ? [`more of them (${key}.count)`] : []),
  ];
  return ways.length === 0 ? '' : `${capital(ways.join(', or '))}.`;
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
  const isNoCure = reverses(joint) ? ` They save no face that slips: ${toAndFro}.` : '';
  const why = `${share}, on ${mm(circle)}: ${plain(load / 1000, 1)} kN a pin before ${gives}. Not counted: the screws' friction, fatigue, and depth beyond ${mostUsefulDepth} diameters.${isNoCure}`;
  const asked = torqueOf(joint);
  if (!asked) {
    const all = `They carry ${plain(torque, 0)} N.m. ${why}`;
    return notAssessed({ ...common, why: all, missing: torqueMissing });
  }
  const stronger = carryByDowels(joint, side, asked.value);
  return judged(
    {
      ...common,
      unit: 'N.m',
      why: `${why} The joint is sized for ${torqueInWords(asked)}.`,
      cure: `The screws' friction has to carry all of it: see grip-${side}.${stronger === '' ? '' : ` For the pins to carry it, ${stronger}.`}`,
      improve: improveOf(set),
    },
    torque,
    // Dowels that only centre need not carry anything: the screws clamp. Where these do not hold, their own check fails.
    { limit: asked.value, sense: 'at least', worst: 'caution' },
  );
}
