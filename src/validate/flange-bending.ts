/** The plates under the screws: do they stay shut between two screws, are they held behind, are the webs under sunk heads thick enough? */
import { forceOffset, greatestPitch, plateBending, punchShear } from '../formulas/flange-bending.ts';
import { coneTangent } from '../formulas/preload-change.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { passingHole } from '../rotor/plays.ts';
import { capital } from '../units/sentence.ts';
import { tan } from '../units/trig.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { backingOf, besideEmpty, clampedStack, pitches, spreadsFrom, whyNoStack } from './clamped.ts';
import { webUnderHead } from './heads.ts';
import { atLeast, mm, sourced } from './words.ts';

/** Margin against yield. Common practice for a load that is there all the time. */
const margin = 1.5;
/** Shear yield over tensile yield: von Mises. */
const shearYield = 1 / Math.sqrt(3);

const MPa = (value: number) => `${value.toFixed(0)} MPa`;

function pitch(joint: Joint, group: ScrewGroup): Finding[] {
  const { side, thread, major } = group;
  const widest = Math.max(0, ...pitches(group));
  if (side === 'wheel' || widest === 0) return [];
  const flange = joint[side].thickness?.value ?? null;
  const thinner = Math.min(joint.adapterSpec.thickness, flange ?? Number.POSITIVE_INFINITY);
  const limit = greatestPitch(major, thinner);
  const thicker = (widest - 2 * major) / 12;
  const isAdapter = flange === null || joint.adapterSpec.thickness <= flange;
  return [
    judged(
      {
        code: `bolt-pitch-${side}`,
        feature: group.id,
        title: `distance between neighbouring ${thread} screws, ${side} side`,
        unit: 'mm',
        why: `The thinner plate is ${mm(thinner)}${flange === null ? ' (the flange is not measured)' : ''}; wider apart it bends open between two screws.`,
        cure: `Use more screws, or plates of at least ${atLeast(thicker)}: this one is ${mm(thinner)}${isAdapter ? ` (adapter.thickness: ${atLeast(thicker)})` : ''}.`,
        source: sourced('2 d + 12 t, the spacing rule of pressure-vessel flanges for bare faces', true),
      },
      widest,
      { limit, sense: 'at most', worst: 'caution' },
    ),
  ];
}

function backed(joint: Joint, group: ScrewGroup): Finding[] {
  const { side, thread, tightening } = group;
  const common = {
    code: `plate-bending-${side}`,
    feature: group.id,
    title: `bending of the plate under the ${thread} heads, ${side} side`,
    source: 'beam bending by the offset of the clamp force; pressure spreads in the cone of VDI 2230-1',
  };
  const stack = clampedStack(joint, group);
  const plate = stack?.layers.find(({ name }) => name !== 'washer');
  const backing = backingOf(joint, group);
  if (!stack && tightening.preload !== null) return [notAssessed({ ...common, ...whyNoStack(joint, group) })];
  if (!stack || !plate || !backing || tightening.preload === null) {
    const why = 'How hard the clamped parts are pressed, or what the faces touch, is not known.';
    return [notAssessed({ ...common, why, missing: 'It follows from the torque: see the note beside the screws.' })];
  }
  const spread = stack.dw + 2 * plate.thickness * coneTangent(stack);
  const offset = forceOffset(backing, spread);
  const width = Math.min(spread, 2 * besideEmpty(joint, group), ...pitches(group));
  const stress = plateBending(1000 * tightening.preload, offset, width, plate.thickness);
  const where = backing.inwards < backing.outwards ? 'towards the middle' : 'towards the rim';
  const name = capital(plate.name);
  return [
    judged(
      {
        ...common,
        unit: 'MPa',
        why: `The pressure spreads to ${mm(spread, 1)} across; beside the screws the faces touch ${mm(backing.inwards, 1)} inwards and ${mm(backing.outwards, 1)} outwards, so the force comes through ${mm(offset, 1)} beside the screw. ${name} ${mm(plate.thickness, 1)}, yields at ${MPa(plate.yieldStrength)}.`,
        cure: `Let the faces touch ${atLeast(spread / 2)} ${where} of the screw (adapter.outside, registers), or make the ${plate.name} thicker.`,
      },
      stress,
      { limit: plate.yieldStrength / margin, sense: 'at most', hard: plate.yieldStrength },
    ),
  ];
}

/** A sunk or surface head punches the web below it. */
function punch(joint: Joint, group: ScrewGroup): Finding[] {
  const hole = passingHole(joint, group);
  const seat = group.tightening.seats?.find(({ under, part }) => under === 'head' && part === 'adapter');
  if (!hole || !seat || group.tightening.preload === null) return [];
  const { side, thread } = group;
  const { yieldStrength, name } = joint.adapterMaterial;
  const diameter = spreadsFrom(seat, group.head.kind);
  // Below the middle of a cone there is more metal than below its small end.
  const more =
    hole.head.kind === 'countersink' ? (diameter - seat.inner) / 2 / tan((hole.head.angle * Math.PI) / 360) : 0;
  const web = webUnderHead(joint, group, hole) + more;
  const force = 1000 * group.tightening.preload;
  const hard = shearYield * yieldStrength;
  const thicker = force / (Math.PI * diameter * (hard / margin)) - web;
  const weaker =
    side === 'wheel' || group.class === '8.8' ? '' : `, or take weaker screws (adapter.${side}.class: 8.8)`;
  return [
    judged(
      {
        code: `head-web-shear-${side}`,
        feature: group.id,
        title: `shear in the web under the ${thread} heads, ${side} side`,
        unit: 'MPa',
        why: `Clamp force on a cylinder ${mm(diameter, 1)} across through ${mm(web, 1)} of ${name}, which yields in shear at ${MPa(hard)}.`,
        cure: `Make the adapter ${atLeast(thicker)} thicker (adapter.thickness: ${atLeast(joint.adapterSpec.thickness + thicker)})${weaker}.`,
        source: 'statics; von Mises; 1.5 against yield, common practice',
      },
      web > 0 ? punchShear(force, diameter, web) : Number.POSITIVE_INFINITY,
      { limit: hard / margin, sense: 'at most', hard },
    ),
  ];
}

export const flangeBending: Check = {
  id: 'flange-bending',
  title: 'Plates under the screws',
  source: 'spacing rule of pressure-vessel flanges; beam bending; VDI 2230-1 cone; common practice',
  run: (joint) =>
    joint.screws.flatMap((group) => [...pitch(joint, group), ...backed(joint, group), ...punch(joint, group)]),
};
