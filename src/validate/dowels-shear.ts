/** Do the dowels alone carry the torque? The screws' friction is not counted: a torque that reverses works it loose. */
import { dowelCapacity, dowelTorque, mostUsefulDepth } from '../formulas/dowel-shear.ts';
import type { Joint } from '../job/joint.ts';
import type { DowelSet } from '../job/joint-dowels.ts';
import { materialOfFlange } from '../job/resolve-flange.ts';
import type { Finding } from '../model/finding.ts';
import { findMaterial } from '../standards/materials.ts';
import { must } from '../standards/table.ts';
import { judged, notAssessed } from './check.ts';
import { mm, plain, sourced } from './words.ts';

/**
 * Torque of the dowels against the duty's. Pins whose holes were reamed together share it; of holes made apart, one pin may have to carry
 * it until the others touch.
 */
export function dowelShear(joint: Joint, set: DowelSet): Finding {
  const { side, pin, inside, circle, count, reamed } = set;
  const flange = must(findMaterial(materialOfFlange(joint[side])));
  const adapter = joint.adapterMaterial;
  const seat = (depth: number, strength: number) => ({ depth: Math.max(0, depth - pin.chamfer), yield: strength });
  const { load, weakness } = dowelCapacity(
    pin.d,
    1000 * pin.shear,
    seat(inside.adapter, adapter.yieldStrength),
    seat(inside.flange, flange.yieldStrength),
  );
  const sharing = reamed === 'together' ? count : 1;
  const torque = dowelTorque(load, circle, sharing);
  const gives = {
    pin: 'the pins are cut through',
    first: 'the holes in the adapter widen',
    second: `the holes in the ${side} flange widen`,
    tilting: 'the pins tilt in their holes',
  }[weakness];
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
      pin.memory || adapter.memory || flange.memory,
    ),
  };
  const why = `${share}, on ${mm(circle)}: ${plain(load / 1000, 1)} kN a pin before ${gives}. Not counted: the screws' friction, fatigue, and depth beyond ${mostUsefulDepth} diameters.`;
  const asked = joint.job.duty?.torque;
  if (asked === undefined) {
    const all = `They carry ${plain(torque, 0)} N.m. ${why}`;
    return notAssessed({ ...common, why: all, missing: 'Give duty.torque, the peak torque at this shaft.' });
  }
  const key = `adapter.${side}.dowels`;
  const enough = Math.ceil(asked / (torque / sharing));
  const more =
    enough <= 6 ? `, or ${enough} of them reamed together (${key}: { count: ${enough}, reamed: together })` : '';
  return judged(
    {
      ...common,
      unit: 'N.m',
      why,
      cure: `The screws' friction has to carry the rest. To do without it, take thicker pins (${key}.size)${more}.`,
    },
    torque,
    // Dowels that only centre need not carry anything: the screws clamp.
    { limit: asked, sense: 'at least', worst: 'caution' },
  );
}
