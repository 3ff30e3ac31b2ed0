/** Do the faces meet? A spigot must not bottom, must reach in far enough to guide, and no corner may hold the faces apart. */
import type { Joint } from '../job/joint.ts';
import type { ResolvedRegister } from '../job/resolve-flange.ts';
import type { Finding } from '../model/finding.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { atLeast, mm } from './words.ts';

type Side = 'driving' | 'driven';

/** Room left between a spigot's end and the floor of its recess, mm. Common practice. */
const room = 0.1;
/** Straight register that guides a part, and the least that does anything, mm. Common practice. */
const guides = { well: 1, atAll: 0.4 };
/** Share of added height that is straight: chamfer and undercut of a low spigot grow with it. */
const growth = 0.5;
/** Nose radius of a usual turning tool: no inside corner without an undercut is sharper, mm. Common practice. */
const toolNose = 0.4;

interface Pair {
  readonly side: Side;
  readonly own: RegisterSpec;
  readonly mate: ResolvedRegister;
}

/** What the two halves are called, and how the shorter one is made to stop short. */
const halves = {
  'inner female': { own: 'Recess', mate: 'spigot', what: 'spigot bottoms', cure: 'Bore the recess' },
  'inner male': { own: 'Spigot', mate: 'recess', what: 'spigot bottoms', cure: 'Make the spigot' },
  'rim female': { own: 'Ring', mate: 'boss', what: 'ring meets the flange', cure: 'Make the ring' },
  'rim male': { own: 'Step of the rim', mate: 'ring', what: 'ring meets the step', cure: 'Turn the step' },
} as const;

/** Inside the bolts a spigot must stop short of its recess's floor; on the rim a ring must stop short of the step round it. */
function facesSeat({ side, own, mate }: Pair): Finding {
  const { value, doubt } = mate.depth;
  const isDeeper = (own.gender === 'female') === (own.at === 'inner');
  const words = halves[`${own.at} ${own.gender}`];
  const depth = isDeeper
    ? Math.ceil((value + doubt + room) * 100 - 1e-6) / 100
    : Math.floor((value - doubt - room) * 100 + 1e-6) / 100;
  return judged(
    {
      code: 'faces-seat-first',
      feature: `${side}-register`,
      title: `${side} faces seat before the ${words.what}`,
      unit: 'mm',
      why: `${words.own} ${mm(own.depth)}, the flange's ${words.mate} ${mm(value)}; the flange's reading is good to ${mm(doubt)}.`,
      cure: `${words.cure} ${mm(depth)} ${isDeeper ? 'deep or more' : 'high or lower'} (adapter.${side}.register: { depth: ${depth} }), or leave it on auto.`,
      source: 'common practice; catalogue flange pairs leave 0.2 mm (2.3 in 2.5)',
    },
    (isDeeper ? own.depth - value : value - own.depth) - doubt,
    { limit: room, sense: 'at least', hard: 0 },
  );
}

/** Straight part of the spigot inside the straight part of the recess: chamfers at both ends and the undercut do not count. */
function holds({ side, own, mate }: Pair): Finding {
  const height = Math.min(own.depth, mate.depth.value);
  const foot = own.gender === 'male' ? Math.max(own.undercut?.width ?? 0, mate.corner) : own.chamfer;
  const tip = own.gender === 'male' ? own.chamfer : 0;
  const straight = height - foot - tip;
  const more = (guides.well - straight) / growth;
  const higher = own.gender === 'male' && own.depth + more < mate.depth.value - mate.depth.doubt - room;
  return judged(
    {
      code: 'register-holds',
      feature: `${side}-register`,
      title: `engaged height of the ${side} register`,
      unit: 'mm',
      why: `Straight part of the spigot inside the straight part of the recess: ${mm(height)} less the chamfers and the undercut.`,
      cure: higher
        ? `Make the spigot at least ${atLeast(more)} higher (adapter.${side}.register.depth).`
        : `The flange's own register is only ${mm(mate.depth.value)} ${mate.gender === 'male' ? 'high' : 'deep'}. Centre the part with a dial before the screws are tightened.`,
      source: 'common practice: at least 1 mm of straight register guides the part',
    },
    straight,
    { limit: guides.well, sense: 'at least', hard: guides.atAll },
  );
}

function corner({ side, own, mate }: Pair): Finding {
  const common = { code: 'register-corner', feature: `${side}-register`, source: 'common practice' };
  if (own.gender === 'male' && own.undercut) {
    const why = 'The undercut at the foot of the spigot keeps the corner free.';
    return stated({ ...common, title: `${side} register corner`, unit: 'mm', why, cure: '' }, 'pass');
  }
  if (mate.corner === 0) {
    return notAssessed({
      ...common,
      title: `${side} register corner`,
      why:
        own.gender === 'female'
          ? "The fillet at the foot of the flange's spigot is not known."
          : "The chamfer at the mouth of the flange's recess is not known.",
      missing: `Give ${side}.register.corner: the fillet radius or chamfer, mm.`,
    });
  }
  if (own.gender === 'female') {
    return judged(
      {
        ...common,
        title: `${side} mouth chamfer against the flange's fillet`,
        unit: 'mm',
        why: `A fillet of ${mm(mate.corner)} at the foot of the flange's spigot must not touch the recess's edge.`,
        cure: `Chamfer the mouth ${mm(mate.corner)} or more: the recess must be deeper for that (adapter.${side}.register: { depth: ${(Math.ceil(mate.corner * 12.5) / 10).toFixed(1)} }), or have the flange's fillet turned smaller.`,
      },
      own.chamfer,
      { limit: mate.corner, sense: 'at least' },
    );
  }
  return judged(
    {
      ...common,
      title: `${side} flange's mouth chamfer against the foot of the rim`,
      unit: 'mm',
      why: `A turning tool leaves a radius of about ${mm(toolNose)} at the foot of the adapter's step.`,
      cure: `Chamfer the mouth of the flange's recess ${mm(toolNose)}, or turn the foot with a sharper tool.`,
    },
    mate.corner,
    { limit: toolNose, sense: 'at least', worst: 'caution' },
  );
}

export const seating: Check = {
  id: 'seating',
  title: 'Faces that meet',
  source: 'common practice',
  run: (joint: Joint) =>
    (['driving', 'driven'] as const).flatMap((side) => {
      const own = joint.adapterSpec.registers[side];
      const mate = joint[side].register;
      if (!own || !mate || own.gender === mate.gender) return [];
      const pair = { side, own, mate };
      return [facesSeat(pair), holds(pair), corner(pair)];
    }),
};
