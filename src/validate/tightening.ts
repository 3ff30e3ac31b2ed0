/** What happens when the wrench is pulled: does the screw break before a thread strips? */
import {
  engagementFor,
  type StripLoads,
  stripLoads,
  threadShearStrength,
  usefulEngagement,
  worstThread,
} from '../formulas/stripping.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import { materialOfFlange } from '../job/resolve-flange.ts';
import type { Finding } from '../model/finding.ts';
import { findMaterial, type Material } from '../standards/materials.ts';
import { propertyClass } from '../standards/property-classes.ts';
import { threadLimits } from '../standards/thread-limits.ts';
import { findThread } from '../standards/threads.ts';
import { capital } from '../units/sentence.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { atLeast, mm, plain, sourced } from './words.ts';

const kN = (newtons: number) => `${plain(newtons / 1000, 1)} kN`;

/** What holds a group's thread; null for a nut. */
function parentOf(joint: Joint, { fastening, side }: ScrewGroup): Material | null {
  if (fastening === 'through') return null;
  if (fastening === 'into_adapter' || side === 'wheel') return joint.adapterMaterial;
  const material = findMaterial(materialOfFlange(joint[side]));
  return material.ok ? material.value : null;
}

/** A thread that strips at a load, and what it would take to break the screw instead. N and mm. */
interface Stripping extends StripLoads {
  readonly ultimate: number;
  readonly counted: number;
  readonly needed: number;
  readonly source: string;
}

function strippingOf({ thread: name, class: cls, engagement }: ScrewGroup, parent: Material): Stripping | null {
  const thread = findThread(name);
  if (!thread.ok || engagement.has === null) return null;
  const limits = threadLimits(thread.value);
  const strength = propertyClass(cls, thread.value.d);
  if (!limits.ok || !strength.ok) return null;
  const worst = worstThread(limits.value, thread.value.pitch);
  const shear = { screw: threadShearStrength(strength.value.tensileStrength), parent: parent.shearStrength };
  const counted = Math.max(0, Math.min(engagement.has, usefulEngagement * thread.value.d));
  const ultimate = thread.value.stressArea * strength.value.tensileStrength;
  return {
    ...stripLoads(worst, counted, shear),
    ultimate,
    counted,
    needed: engagementFor(ultimate, worst, shear).length,
    source: sourced(
      `FED-STD-H28; ${limits.value.source}; shear strength ${parent.shearRule}`,
      limits.value.memory || parent.memory,
    ),
  };
}

/** Ways out, the least work first. */
function cureOf({ class: cls, side, major }: ScrewGroup, { needed, counted }: Stripping): string {
  const cures = [
    ...(needed <= usefulEngagement * major
      ? [`let ${mm(needed)} of thread engage, ${atLeast(needed - counted)} more (longer screws, deeper thread)`]
      : []),
    ...(cls === '8.8' ? [] : [`take weaker screws (adapter.${side}.class: 8.8)`]),
    'take a stronger material or thread inserts',
  ].join(', or ');
  return capital(cures);
}

/**
 * Strip load of the weaker thread against the breaking load of the screw. Between that and the preload it is a caution: the screw can be
 * tightened, but not overtightened. Below the preload the thread goes while the wrench is pulled.
 */
function stripping(joint: Joint, screws: ScrewGroup): Finding[] {
  const parent = parentOf(joint, screws);
  if (!parent) return [];
  const { thread, side, id } = screws;
  const common = {
    code: 'thread-stripping',
    feature: id,
    title: `${thread} screws break before a thread strips, ${side} side`,
  };
  const strip = strippingOf(screws, parent);
  if (!strip) {
    const why = 'How much thread holds the screw is not known.';
    const missing = 'It follows from the thread engagement: see thread-engagement.';
    return [notAssessed({ ...common, why, missing, source: 'FED-STD-H28' })];
  }
  const { least, weaker, ultimate, counted, source } = strip;
  const preload = 1000 * (screws.tightening.preload ?? 0);
  const what = weaker === 'parent' ? `The thread in ${parent.name}` : "The screw's own thread";
  const tight =
    preload > 0 ? ` Tightening pulls ${kN(preload)}${least < preload ? ': DO NOT use that torque' : ''}.` : '';
  return [
    judged(
      {
        ...common,
        unit: 'kN',
        why: `${what} strips at ${kN(least)} with ${mm(counted)} engaged; the screw breaks at ${kN(ultimate)} or more.${tight}`,
        cure: `${cureOf(screws, strip)}.`,
        source,
      },
      least / 1000,
      { limit: ultimate / 1000, sense: 'at least', hard: preload / 1000 },
    ),
  ];
}

export const tightening: Check = {
  id: 'tightening',
  title: 'Tightening',
  source: 'FED-STD-H28; VDI 2230-1; ISO 898-1',
  run: (joint) => joint.screws.flatMap((group) => stripping(joint, group)),
};
