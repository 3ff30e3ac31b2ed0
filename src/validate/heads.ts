/** Heads and washers in the adapter: metal under them, room round them, nothing above the face. */
import { leastWebUnderHead } from '../formulas/head-web.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { HoleShape } from '../parts/adapter-spec.ts';
import { passingHole } from '../rotor/plays.ts';
import { tan } from '../units/trig.ts';
import { type Check, judged } from './check.ts';
import { atLeast, mm } from './words.ts';

type Passing = Extract<HoleShape, { kind: 'passing' }>;

/** Radius that a head or its washer covers, mm. */
export function headRadius({ head, washer }: ScrewGroup): number {
  return Math.max(head.diameter, washer?.outside ?? 0) / 2;
}

/** Depth of a sunk pocket below its face, mm. */
export function pocketDepth({ head, diameter }: Passing): number {
  if (head.kind === 'counterbore') return head.depth;
  return head.kind === 'countersink' ? (head.diameter - diameter) / 2 / tan((head.angle * Math.PI) / 360) : 0;
}

/** Depth of the recess that lies under the heads in plan, in the face that their screws go out of, mm; 0 where there is none. */
function recessUnder(joint: Joint, screws: ScrewGroup, hole: Passing): number {
  const register = joint.adapterSpec.registers[hole.headFace === 'driven' ? 'driving' : 'driven'];
  if (register?.gender !== 'female' || register.at !== 'inner') return 0;
  const wide = hole.head.kind === 'surface' ? headRadius(screws) : hole.head.diameter / 2;
  const reach = Math.min(...screws.positions.map(({ x, y }) => Math.hypot(x, y))) - wide;
  return reach < register.diameter / 2 + register.chamfer ? register.depth : 0;
}

/** Metal under a head, mm: below the pocket, less a register recess under it. */
export function webUnderHead(joint: Joint, screws: ScrewGroup, hole: Passing): number {
  return joint.adapterSpec.thickness - pocketDepth(hole) - recessUnder(joint, screws, hole);
}

/** Least metal under a head, mm. */
function underHead(joint: Joint, screws: ScrewGroup, hole: Passing): Finding {
  const limit = leastWebUnderHead(screws.major, joint.job.adapter.web);
  const recess = recessUnder(joint, screws, hole);
  const web = webUnderHead(joint, screws, hole);
  return judged(
    {
      code: 'web-under-head',
      feature: screws.id,
      title: `web under the ${screws.thread} heads, ${screws.side} side`,
      unit: 'mm',
      why: `This metal takes the whole clamp force of the screw.${recess > 0 ? ' The register recess takes part of it away.' : ''}`,
      cure: `Make the adapter ${atLeast(limit - web)} thicker (adapter.thickness: ${atLeast(joint.adapterSpec.thickness + limit - web)}), or use smaller screws or flatter heads.`,
      source: '0.8 d under a head, and adapter.web: common practice',
    },
    web,
    { limit, sense: 'at least' },
  );
}

/** A sunk head must end below the face, and find room in its pocket. */
function sunk(joint: Joint, screws: ScrewGroup, hole: Passing): Finding[] {
  const { head, washer } = screws;
  if (hole.head.kind === 'surface') return [];
  const face = hole.headFace === 'driven' ? joint.adapterSpec.thickness : 0;
  // A screw that points at the driving side (-1) hangs from the driven face: depth is counted against its direction.
  const seat = (face - screws.headZ) * -screws.points;
  const below = seat - (head.kind === 'flat' ? 0 : head.height);
  const wide = 2 * headRadius(screws);
  const isWasher = washer !== null && washer.outside > head.diameter;
  return [
    judged(
      {
        code: 'head-below-face',
        feature: screws.id,
        title: `${screws.thread} heads below the ${hole.headFace} face`,
        unit: 'mm',
        why: 'A head that stands proud holds the two faces apart.',
        cure: `Sink the heads ${atLeast(-below)} deeper, or take lower heads.`,
        source: `${head.standard} head height, ${head.kind === 'flat' ? 'countersink' : 'counterbore'} depth as tabled`,
      },
      below,
      { limit: 0, sense: 'at least' },
    ),
    judged(
      {
        code: 'head-in-pocket',
        feature: screws.id,
        title: `room round the ${screws.thread} ${isWasher ? 'washers' : 'heads'}, ${screws.side} side`,
        unit: 'mm',
        why: `The pocket is ${mm(hole.head.diameter)}, the ${isWasher ? 'washer' : 'head'} ${mm(wide)}: what is left is for position error.`,
        cure: `Make the pocket ${atLeast(leastPocketRoom - (hole.head.diameter - wide))} wider${isWasher ? ', or leave the washers out' : ''}.`,
        source: `${head.standard}; 0.1 mm on the diameter is common practice`,
      },
      hole.head.diameter - wide,
      { limit: leastPocketRoom, sense: 'at least' },
    ),
  ];
}

/** Room between a head or washer and its pocket, mm on the diameter. Common practice: it has to go in. */
const leastPocketRoom = 0.1;

export const heads: Check = {
  id: 'heads',
  title: 'Screw heads and washers',
  source: 'ISO 4762, ISO 10642, DIN 974-1, DIN 74; common practice',
  run: (joint) =>
    joint.screws.flatMap((screws) => {
      const hole = passingHole(joint, screws);
      if (!hole || screws.seat === 'outside') return [];
      return [underHead(joint, screws, hole), ...sunk(joint, screws, hole)];
    }),
};
