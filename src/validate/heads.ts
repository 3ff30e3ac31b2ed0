/** Heads, washers and what is under them. */
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { HoleShape } from '../parts/adapter-spec.ts';
import type { Finding } from '../model/finding.ts';
import { machiningRule } from '../standards/machining-practice.ts';
import { must } from '../standards/table.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { mm } from './words.ts';

type Passing = Extract<HoleShape, { kind: 'passing' }>;

/** Passing hole of a screw group in the adapter, if that is how it is made. */
function passingHole(joint: Joint, screws: ScrewGroup): Passing | null {
  const shape = joint.adapterSpec.groups.find((group) => group.id === screws.id)?.shape;
  return shape?.kind === 'passing' ? shape : null;
}

/** Depth of a sunk pocket below its face, mm. */
function depthOf(hole: Passing): number {
  if (hole.head.kind === 'counterbore') return hole.head.depth;
  if (hole.head.kind === 'countersink') {
    return (hole.head.diameter - hole.diameter) / 2 / Math.tan((hole.head.angle * Math.PI) / 360);
  }
  return 0;
}

/** Least metal under a head, mm. */
function underHead(joint: Joint, screws: ScrewGroup, hole: Passing): Finding {
  const rule = must(machiningRule('under_head', screws.major));
  const limit = Math.max(rule.value, joint.job.adapter.web);
  return judged(
    {
      code: 'web-under-head',
      feature: screws.id,
      title: `web under the ${screws.thread} heads, ${screws.side} side`,
      unit: 'mm',
      why: 'This metal takes the whole clamp force of the screw.',
      cure: `Make the adapter ${mm(Math.max(0, limit - (joint.adapterSpec.thickness - depthOf(hole))))} thicker, or use a smaller screw or a flatter head.`,
      source: `${rule.value / screws.major} d under a sunk head, common practice`,
    },
    joint.adapterSpec.thickness - depthOf(hole),
    { limit, sense: 'at least' },
  );
}

/** A sunk head must end below the face, and find room in its pocket. */
function headRoom(joint: Joint, screws: ScrewGroup, hole: Passing): Finding[] {
  const { head, washer } = screws;
  const face = hole.headFace === 'driven' ? joint.adapterSpec.thickness : 0;
  if (hole.head.kind === 'surface') return [];
  const below = Math.abs(face - screws.headZ) - (head.kind === 'flat' ? 0 : head.height);
  const wide = Math.max(head.diameter, washer?.outside ?? 0);
  return [
    judged(
      {
        code: 'head-below-face',
        feature: screws.id,
        title: `${screws.thread} heads below the ${hole.headFace} face`,
        unit: 'mm',
        why: 'A head that stands proud holds the two faces apart.',
        cure: `Sink the heads ${mm(Math.max(0, -below))} deeper, or take lower heads.`,
        source: `${head.standard} head height, ${head.kind === 'flat' ? 'countersink' : 'counterbore'} depth as tabled`,
      },
      below,
      { limit: 0, sense: 'at least' },
    ),
    judged(
      {
        code: 'head-in-pocket',
        feature: screws.id,
        title: `room round the ${screws.thread} ${washer ? 'heads and washers' : 'heads'}, ${screws.side} side`,
        unit: 'mm',
        why: `The pocket is ${mm(hole.head.diameter)}, the ${washer && washer.outside > head.diameter ? 'washer' : 'head'} ${mm(wide)}: what is left is for position error.`,
        cure: 'Take the pocket one size larger, or leave the washers out.',
        source: head.standard,
      },
      hole.head.diameter - wide,
      { limit: 0.1, sense: 'at least' },
    ),
  ];
}

/** Heads on a face must stay clear of the flange that lies on it. */
function clearOfFlange(joint: Joint, screws: ScrewGroup, hole: Passing): Finding[] {
  if (hole.head.kind !== 'surface' || screws.seat !== 'surface') return [];
  const flange = joint[hole.headFace];
  const innermost = Math.min(...screws.positions.map(({ x, y }) => Math.hypot(x, y)));
  const room = innermost - Math.max(screws.head.diameter, screws.washer?.outside ?? 0) / 2 - flange.outside.value / 2;
  return [
    judged(
      {
        code: 'heads-clear-flange',
        feature: screws.id,
        title: `${screws.thread} heads clear of the ${hole.headFace} flange`,
        unit: 'mm',
        why: `The heads stand on the face that the ${hole.headFace} flange (${mm(flange.outside.value)}) lies on.`,
        cure: `Sink the heads (adapter.${screws.side}.seat: sunk).`,
        source: 'geometry; 1 mm of room is common practice',
      },
      room,
      { limit: 1, sense: 'at least' },
    ),
  ];
}

/** Bolts that run through all three pieces carry their heads behind the driven flange; other outside heads stand behind their own. */
function flangeUnderHead(joint: Joint, screws: ScrewGroup): 'driving' | 'driven' {
  const own = screws.side === 'driving' ? 'driving' : 'driven';
  const isShared = screws.fastening === 'through' && !joint.screws.some((group) => group.side === 'driven');
  return isShared ? 'driven' : own;
}

/** Heads behind a flange need room before the next thing in the way. */
function roomBehind(joint: Joint, screws: ScrewGroup): Finding {
  const side = flangeUnderHead(joint, screws);
  const { behind } = joint[side];
  const stack = screws.head.height + (screws.washer?.thickness ?? 0);
  const words = {
    code: 'heads-behind-flange',
    feature: screws.id,
    title: `room for the ${screws.thread} heads behind the ${side} flange`,
    source: `${screws.head.standard} head height; 2 mm of room is common practice`,
  };
  const height = `${screws.washer ? 'Head and washer stand' : 'The head stands'} ${mm(stack)} high`;
  if (behind === null) {
    const missing = `Give ${side}.behind: the free room behind the flange.`;
    return notAssessed({ ...words, why: `${height}; what is in the way behind the ${side} flange is not known.`, missing });
  }
  return judged(
    {
      ...words,
      unit: 'mm',
      why: `${height}, and there are ${mm(behind)} behind the ${side} flange. Look as well whether a spanner gets there.`,
      cure: 'Take lower heads, leave the washers out, or put the screws in before the part behind.',
    },
    behind - stack,
    { limit: 2, sense: 'at least', hard: 0 },
  );
}

export const heads: Check = {
  id: 'heads',
  title: 'Screw heads and washers',
  source: 'ISO 4762, ISO 10642, DIN 974-1, DIN 74; common practice',
  run(joint) {
    return joint.screws.flatMap((screws) => {
      if (screws.seat === 'outside') return [roomBehind(joint, screws)];
      const hole = passingHole(joint, screws);
      if (!hole) return [];
      return [underHead(joint, screws, hole), ...headRoom(joint, screws, hole), ...clearOfFlange(joint, screws, hole)];
    });
  },
};
