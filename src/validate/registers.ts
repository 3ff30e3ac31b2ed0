/** Registers: is there one, do the genders match, does it go together, does it still centre? */
import { clearanceRange, eccentricityOf } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type Check, judged, stated } from './check.ts';
import { mm } from './words.ts';

type Side = 'driving' | 'driven';

/** Least and greatest clearance at a side's register; null when either half has none. */
export function registerClearance(joint: Joint, side: Side): { least: number; greatest: number } | null {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  if (!own || !mate) return null;
  return own.gender === 'female' ? clearanceRange(own.limits, mate.limits) : clearanceRange(mate.limits, own.limits);
}

/** Greatest clearance that still centres, mm; beyond it a register only looks like one. Common practice. */
const loose = 0.1;
/** Interference that a light tap still overcomes, mm. Common practice. */
const lightTap = 0.02;

function missing(joint: Joint, side: Side): Finding {
  const mate = joint[side].register;
  const own = joint.adapterSpec.registers[side];
  const why = !mate
    ? `The ${side} flange has no register, so only the screws centre it.`
    : `The adapter has no register on the ${side} side, so only the screws centre it.`;
  const cure =
    mate && !own
      ? `Let the adapter have one: adapter.${side}.register: auto.`
      : `Turn a step on the ${side} flange, measure it and give ${side}.register; or ream two holes and dowel the joint.`;
  return stated(
    {
      code: 'register-missing',
      feature: 'body',
      title: `${side} register`,
      unit: '',
      why: `${why} Screws in clearance holes let the part shift by their play.`,
      cure,
      source: 'common practice',
    },
    'caution',
  );
}

const shape = (gender: 'male' | 'female') => (gender === 'male' ? 'spigot' : 'recess');

function fitFindings(joint: Joint, side: Side): Finding[] {
  const own = joint.adapterSpec.registers[side];
  const mate = joint[side].register;
  const play = registerClearance(joint, side);
  if (!own || !mate || !play) return [missing(joint, side)];
  const feature = `${side}-register`;
  const gender = stated(
    {
      code: 'register-gender',
      feature,
      title: `${side} register gender`,
      unit: '',
      why:
        own.gender === mate.gender
          ? `Adapter and flange both have a ${shape(own.gender)} here: they cannot go into each other.`
          : `The adapter's ${shape(own.gender)} and the flange's ${shape(mate.gender)} go into each other.`,
      cure: `Leave adapter.${side}.register on auto: it takes the other gender.`,
      source: 'common practice',
    },
    own.gender === mate.gender ? 'fail' : 'pass',
  );
  if (own.gender === mate.gender) return [gender];

  const { diameter, limits } = own;
  const span = `clearance ${mm(play.least, 3)} to ${mm(play.greatest, 3)} (adapter ${limits.zone}, ${mm(limits.lower, 3)} to ${mm(limits.upper, 3)}; flange ${mm(mate.limits.lower, 3)} to ${mm(mate.limits.upper, 3)})`;
  const freed = own.gender === 'female' ? diameter - play.least : diameter + play.least;
  const turn = `${own.gender === 'female' ? 'Bore the recess' : 'Turn the spigot'} to ${mm(freed, 3)} (adapter.${side}.register: { diameter: ${freed.toFixed(3)} })`;
  const doubt =
    mate.zone === null
      ? `, or measure the flange with a micrometer: the doubt of ${mm(mate.diameter.doubt, 3)} counts here`
      : '';
  return [
    gender,
    judged(
      {
        code: 'register-goes-together',
        feature,
        title: `least clearance of the ${side} register`,
        unit: 'mm',
        why: `Fit at ${mm(diameter)}: ${span}.`,
        cure: `${turn}${doubt}. A tap fit of ${mm(lightTap)} is possible, a tighter one jams.`,
        source: 'ISO 286-1 limits; doubt of the reading where it was measured',
      },
      play.least,
      { limit: 0, sense: 'at least', hard: -lightTap },
    ),
    judged(
      {
        code: 'register-centres',
        feature,
        title: `greatest clearance of the ${side} register`,
        unit: 'mm',
        why: `The part can sit ${mm(eccentricityOf(play.greatest), 3)} off centre here at worst.`,
        cure:
          play.least > 0.01
            ? `${turn}${doubt}.`
            : `Choose a closer fit (adapter.${side}.fit: ${own.gender === 'female' ? 'H6' : 'h5'})${doubt}.`,
        source: 'ISO 286-1 limits; 0.1 mm as the most that still centres is common practice',
      },
      play.greatest,
      { limit: loose, sense: 'at most', hard: 3 * loose },
    ),
  ];
}

export const registers: Check = {
  id: 'registers',
  title: 'Registers',
  source: 'ISO 286-1; common practice',
  run: (joint) => (['driving', 'driven'] as const).flatMap((side) => fitFindings(joint, side)),
};
