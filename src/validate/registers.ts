/** Registers: gender, fit, and faces that seat before the spigot bottoms. */
import { clearanceRange } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { mm } from './words.ts';

type Side = 'driving' | 'driven';

/** Least and greatest clearance at a side's register; null when either half has none. */
export function registerClearance(joint: Joint, side: Side): { least: number; greatest: number } | null {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  if (!own || !mate) return null;
  return own.gender === 'female' ? clearanceRange(own.limits, mate.limits) : clearanceRange(mate.limits, own.limits);
}

/** Greatest clearance that still centres; beyond it a register only looks like one. Common practice. */
const loose = 0.1;

function fit(joint: Joint, side: Side): Finding[] {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  const play = registerClearance(joint, side);
  const feature = `${side}-register`;
  if (!own || !mate || !play) {
    const why = mate
      ? `The adapter has no register on the ${side} side, so only the screws centre it.`
      : `The ${side} flange has no register, so only the screws centre it.`;
    return [
      stated(
        {
          code: 'register-missing',
          feature: 'body',
          title: `${side} register`,
          unit: '',
          why: `${why} Screws in clearance holes let the part shift by their play.`,
          cure: 'Dowel the joint, or turn a register on the flange and measure it.',
          source: 'common practice',
        },
        'caution',
      ),
    ];
  }
  if (own.gender === mate.gender) {
    return [
      stated(
        {
          code: 'register-gender',
          feature,
          title: `${side} register gender`,
          unit: '',
          why: `Adapter and flange both have a ${own.gender === 'male' ? 'spigot' : 'recess'} here: they cannot go into each other.`,
          cure: `Leave adapter.${side}.register on auto: it takes the other gender.`,
          source: 'common practice',
        },
        'fail',
      ),
    ];
  }
  const span = `clearance ${mm(play.least, 3)} to ${mm(play.greatest, 3)} (adapter ${own.limits.zone}, ${mm(own.limits.lower, 3)} to ${mm(own.limits.upper, 3)}; flange ${mm(mate.limits.lower, 3)} to ${mm(mate.limits.upper, 3)})`;
  return [
    judged(
      {
        code: 'register-goes-together',
        feature,
        title: `least clearance of the ${side} register`,
        unit: 'mm',
        why: `Fit at ${mm(own.diameter)}: ${span}.`,
        cure: 'Choose a looser fit, or measure the mate better: doubt in its size counts as interference here. A light tap fit is possible, a tight one jams.',
        source: 'ISO 286-1 limits; doubt of the reading where it was measured',
      },
      play.least,
      { limit: 0, sense: 'at least', hard: -0.02 },
    ),
    judged(
      {
        code: 'register-centres',
        feature,
        title: `greatest clearance of the ${side} register`,
        unit: 'mm',
        why: `The part can sit ${mm(Math.max(0, play.greatest) / 2, 3)} off centre here at worst.`,
        cure: 'Choose a closer fit, or make the register to the measured size of its mate.',
        source: 'ISO 286-1 limits; 0.1 mm as the most that still centres is common practice',
      },
      play.greatest,
      { limit: loose, sense: 'at most', hard: 3 * loose },
    ),
  ];
}

function seating(joint: Joint, side: Side): Finding[] {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  if (!own || !mate || own.gender === mate.gender) return [];
  const [recess, spigot] = own.gender === 'female' ? [own.depth, mate.depth.value] : [mate.depth.value, own.depth];
  const feature = `${side}-register`;
  const depth = judged(
    {
      code: 'faces-seat-first',
      feature,
      title: `${side} faces seat before the spigot bottoms`,
      unit: 'mm',
      why: `Recess ${mm(recess)} deep, spigot ${mm(spigot)} high, reading good to ${mm(mate.depth.doubt)}.`,
      cure: own.gender === 'female' ? 'Bore the recess deeper.' : 'Make the spigot lower.',
      source: 'common practice; catalogue flange pairs leave 0.2 mm (2.3 in 2.5)',
    },
    recess - spigot - mate.depth.doubt,
    { limit: 0.1, sense: 'at least', hard: 0 },
  );
  const holds = judged(
    {
      code: 'register-holds',
      feature,
      title: `engaged height of the ${side} register`,
      unit: 'mm',
      why: 'Straight part of the spigot inside the straight part of the recess.',
      cure: 'Make the spigot higher or its chamfer smaller.',
      source: 'common practice: at least 1 mm of straight register guides the part',
    },
    Math.min(recess, spigot) - own.chamfer - (own.undercut?.width ?? 0),
    { limit: 1, sense: 'at least', hard: 0.4 },
  );
  if (mate.corner === 0) {
    return [
      depth,
      holds,
      notAssessed({
        code: 'register-corner',
        feature,
        title: `${side} register corner`,
        why: own.gender === 'female' ? "The fillet at the foot of the flange's spigot is not known." : "The chamfer at the mouth of the flange's recess is not known.",
        missing: `Give ${side}.register.corner: the fillet radius or chamfer, mm.`,
        source: 'common practice',
      }),
    ];
  }
  const cleared = own.gender === 'female' ? own.chamfer : (own.undercut?.width ?? 0) > 0 ? Number.POSITIVE_INFINITY : mate.corner;
  if (!Number.isFinite(cleared)) {
    return [
      depth,
      holds,
      stated(
        {
          code: 'register-corner',
          feature,
          title: `${side} register corner`,
          unit: 'mm',
          why: 'The undercut at the foot of the spigot keeps the corner free.',
          cure: '',
          source: 'common practice',
        },
        'pass',
      ),
    ];
  }
  return [
    depth,
    holds,
    judged(
      {
        code: 'register-corner',
        feature,
        title: `${side} mouth chamfer against the flange's fillet`,
        unit: 'mm',
        why: `A fillet of ${mm(mate.corner)} at the foot of the flange's spigot must not touch the recess's edge.`,
        cure: 'Make the mouth chamfer larger than the fillet.',
        source: 'common practice',
      },
      cleared,
      { limit: mate.corner, sense: 'at least' },
    ),
  ];
}

export const registers: Check = {
  id: 'registers',
  title: 'Registers',
  source: 'ISO 286-1; common practice',
  run: (joint) => (['driving', 'driven'] as const).flatMap((side) => [...fit(joint, side), ...seating(joint, side)]),
};
