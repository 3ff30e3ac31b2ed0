/** Registers: is there one, do the genders match, does it go together, does it still centre? */
import { eccentricityOf } from '../formulas/fit.ts';
import { asMeasuredZone } from '../inspect/as-built.ts';
import type { Joint } from '../job/joint.ts';
import type { MadeToMateInput } from '../job/schema-adapter.ts';
import type { Finding } from '../model/finding.ts';
import type { RegisterSpec } from '../parts/adapter-spec.ts';
import { isFinelyKnown, registerCure } from '../rotor/link-cures.ts';
import { type FlangeSide, registerClearance } from '../rotor/plays.ts';
import { type Check, judged, stated } from './check.ts';
import { mm } from './words.ts';

/** Greatest clearance that still centres, mm; beyond it a register only looks like one. Common practice. */
export const loose = 0.1;
/** Expansion of steel to warm a part by when its metal does not matter, 1/K: aluminium needs half as much. */
const steelExpansion = 12e-6;
/** Play that a warmed part needs to go on before it grabs, mm. Common practice. */
const assemblyPlay = 0.02;
/** Interference that a light tap still overcomes, mm. Common practice. */
export const lightTap = 0.02;

function missing(joint: Joint, side: FlangeSide): Finding {
  const mate = joint[side].register;
  const own = joint.adapterSpec.registers[side];
  const why = !mate
    ? `The ${side} flange has no register, so only the screws centre it.`
    : `The adapter has no register on the ${side} side, so only the screws centre it.`;
  const cure =
    mate && !own
      ? `Let the adapter have one (adapter.${side}.register: auto).`
      : `Turn a step on the ${side} flange, measure it and give ${side}.register; or ream two holes and dowel the joint (adapter.${side}.dowels: auto).`;
  if (joint.dowels?.[side]) {
    const centred = `${why.replace('only the screws centre it', 'its dowels centre it')} See dowel-fit-${side}.`;
    return stated(
      {
        code: 'register-missing',
        feature: 'body',
        title: `${side} register`,
        unit: '',
        why: centred,
        cure: '',
        source: 'common practice',
      },
      'pass',
    );
  }
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

/** Limits made to the mate, as the job asks for them; null for a tolerance zone. */
export function madeToMate(joint: Joint, side: FlangeSide): MadeToMateInput | null {
  const { register, fit } = joint.job.adapter[side];
  const isByZone = typeof register === 'object' && register.fit !== undefined;
  return typeof fit === 'object' && !isByZone ? fit : null;
}

/** How a shop reaches the adapter's limits, a sentence; empty where it was not worked out. */
function wayOfMaking(joint: Joint, side: FlangeSide): string {
  const own = joint.adapterSpec.registers[side];
  // What is made already needs no way of making.
  const fit = own?.limits.zone === asMeasuredZone ? null : joint.fits?.[side];
  const what = joint.adapterSpec.registers[side]?.gender === 'female' ? 'The recess' : 'The spigot';
  return fit ? ` ${what}: ${fit.method}; measured with: ${fit.gauge} (${fit.source}).` : '';
}

/** How an interference that was asked for is put together: the outer half is warmed until there is a little play. */
function warmBy(own: RegisterSpec, side: FlangeSide, least: number): string {
  const degrees = Math.ceil((-least + assemblyPlay) / (own.diameter * steelExpansion) / 10) * 10;
  return `Warm the ${own.gender === 'female' ? 'adapter' : `${side} flange`} by ${degrees} K to put it together, or ask for less (adapter.${side}.fit: { interference: ${lightTap} mm }).`;
}

function fitFindings(joint: Joint, side: FlangeSide): Finding[] {
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
    mate.zone === null && !isFinelyKnown(mate.diameter)
      ? `, or measure the flange with a micrometer: the doubt of ${mm(mate.diameter.doubt, 3)} counts here`
      : '';
  const wanted = madeToMate(joint, side);
  const closer = registerCure(joint, side);
  const improve = closer === '' ? '' : `${closer[0]?.toUpperCase()}${closer.slice(1)}.`;
  // An interference that was asked for is no fault; what goes beyond a light tap has to be warmed.
  const asked = wanted?.interference ?? 0;
  return [
    gender,
    judged(
      {
        code: 'register-goes-together',
        feature,
        title: `least clearance of the ${side} register`,
        unit: 'mm',
        why: `Fit at ${mm(diameter)}: ${span}.${wayOfMaking(joint, side)}`,
        cure:
          wanted === null
            ? `${turn}${doubt}. A tap fit of ${mm(lightTap)} is possible, a tighter one jams.`
            : warmBy(own, side, play.least),
        source: `${wanted === null ? 'ISO 286-1 limits' : 'limits made to the mate'}; doubt of the reading where it was measured`,
      },
      play.least,
      { limit: 0 - Math.min(asked, lightTap), sense: 'at least', hard: -Math.max(asked, lightTap) },
    ),
    judged(
      {
        code: 'register-centres',
        feature,
        title: `greatest clearance of the ${side} register`,
        unit: 'mm',
        why: `The part can sit ${mm(eccentricityOf(play.greatest), 3)} off centre here at worst.`,
        cure: wanted
          ? `Ask for less clearance or a finer tolerance (adapter.${side}.fit: { clearance: 0 mm })${doubt}.`
          : play.least > 0.01
            ? `${turn}${doubt}.`
            : closer.includes('closer fit')
              ? `Choose a closer fit (adapter.${side}.fit: ${own.gender === 'female' ? 'H6' : 'h5'})${doubt}.`
              : improve || 'Nothing is left to do about this fit: have the shaft balanced in place.',
        improve,
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
