/** Dowels: do the pins fit both holes, are they long enough and not too long, is there metal round them in the flange? */

import { eccentricityOf } from '../formulas/fit.ts';
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import type { DowelFit, DowelSet } from '../job/joint-dowels.ts';
import type { Finding, Verdict } from '../model/finding.ts';
import { hypot } from '../units/hypot.ts';
import { cos, sin } from '../units/trig.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { dowelShear } from './dowels-shear.ts';
import { atLeast, mm, plural, sourced } from './words.ts';

type Side = 'driving' | 'driven';
const sides = ['driving', 'driven'] as const;

/** Greatest clearance of a pin that still places a part, mm; beyond the second it does nothing. Common practice. */
const locates = { well: 0.05, atAll: 0.1 };
/** Interference that a light press still overcomes, mm; beyond the second the pin seizes or the part splits. Common practice. */
const press = { light: 0.03, most: 0.06 };
/** Depth of full pin in each part, in diameters: wanted, and the least that holds at all. Common practice. */
const sits = { well: 1, atAll: 0.5 };

const limitsText = ({ limits }: DowelFit) => `${limits.zone}, ${mm(limits.lower, 3)} to ${mm(limits.upper, 3)}`;
const pinText = ({ pin }: DowelSet) => `pin ${pin.d} m6, ${mm(pin.limits.lower, 3)} to ${mm(pin.limits.upper, 3)}`;
const standard = ({ pin }: DowelSet) => sourced(`${pin.standard}; ISO 286-2`, pin.memory);

/** Clearance of one half: it decides how far the part can shift. */
function fitFinding(set: DowelSet, half: 'adapter' | 'flange'): Finding {
  const { side, fits, isMeasured } = set;
  const fit = fits[half];
  const isThere = half === 'flange' && isMeasured;
  const play = `clearance ${mm(fit.least, 3)} to ${mm(fit.greatest, 3)}${fit.least < 0 ? ' (negative: interference)' : ''}`;
  const made = isThere ? '' : ` How: ${fit.method}; gauge: ${fit.gauge} (${fit.source}).`;
  const key = `adapter.${side}.dowels`;
  return judged(
    {
      code: `dowel-fit-${side}`,
      feature: `${side}-dowels`,
      title: `greatest clearance of the dowels in the ${half === 'adapter' ? 'adapter' : `${side} flange`}`,
      unit: 'mm',
      why: `Hole ${limitsText(fit)}; ${pinText(set)}: ${play}; at worst ${mm(eccentricityOf(fit.greatest), 3)} off centre.${made}`,
      cure: isThere
        ? `Ream the flange's holes to the next pin (${key}.size), or measure them with a pin of known size: their doubt counts here.`
        : half === 'adapter'
          ? `Choose a closer fit (${key}.fit: H7, or { clearance: 0 mm }).`
          : `Ream both in one go (${key}.reamed: together).`,
      source: `${standard(set)}; ${locates.well} mm as the most that still places a part is common practice`,
    },
    fit.greatest,
    { limit: locates.well, sense: 'at most', hard: locates.atAll },
  );
}

/** Interference of the tighter half: it decides whether the pin goes in. */
function pressFinding(set: DowelSet): Finding {
  const { side, fits } = set;
  const tight = Math.max(0, -fits.adapter.least, -fits.flange.least);
  const halves = (['adapter', 'flange'] as const).filter((half) => fits[half].least < 0);
  const inBoth =
    halves.length === 2 ? ' They may sit tight in both, so they go in last, with the joint bolted up.' : '';
  const key = `adapter.${side}.dowels`;
  return judged(
    {
      code: `dowel-press-${side}`,
      feature: `${side}-dowels`,
      title: `greatest interference of the ${side} dowels`,
      unit: 'mm',
      why:
        halves.length === 0
          ? 'The pins slide into both holes: something must keep them from walking out (a dab of retaining compound).'
          : `The pins are pressed into the ${halves.join(' and the ')}.${inBoth} Press them, do not hammer: hardened pins splinter.`,
      cure:
        set.isMeasured && -fits.flange.least >= tight
          ? `The flange's holes are small for this pin: ream them, or take a thinner pin (${key}.size).`
          : `Choose a freer fit (${key}.fit: H7, or { interference: ${press.light} mm }).`,
      source: `${standard(set)}; ${press.light} mm for a light press is common practice`,
    },
    tight,
    { limit: press.light, sense: 'at most', hard: press.most },
  );
}

/** Depth of full pin in the part that has less of it. */
function lengthFinding(joint: Joint, set: DowelSet): Finding {
  const { side, pin, length, isStandard, inside } = set;
  const depth = Math.min(inside.adapter, inside.flange) - pin.chamfer;
  const where = inside.adapter <= inside.flange ? 'adapter' : `${side} flange`;
  const fitting = pin.lengths.find((l) => l / 2 - pin.chamfer >= sits.well * pin.d);
  const thin = joint[side].thickness;
  const isThin = where !== 'adapter' && thin !== null && thin.value < pin.d + pin.chamfer;
  return judged(
    {
      code: `dowel-length-${side}`,
      feature: `${side}-dowels`,
      title: `depth of the dowels in the ${where}`,
      unit: 'mm',
      why: `Of ${plural(set.count, 'pin')} ${pin.d} x ${length} mm, ${mm(inside.adapter)} lie in the adapter and ${mm(inside.flange)} in the flange; the ${mm(pin.chamfer)} chamfer at each end does not count.${isStandard ? '' : ` ${length} mm is no length of ${pin.standard}: cut it from a longer one.`}`,
      cure: isThin
        ? `The flange is thin for this pin: take a thinner one (adapter.${side}.dowels.size).`
        : `Take longer pins (adapter.${side}.dowels.length: ${fitting ?? pin.lengths.at(-1)} mm), thinner ones (adapter.${side}.dowels.size), or a thicker adapter (adapter.thickness).`,
      source: `${sourced(pin.standard, pin.memory)}; one diameter in each part is common practice`,
    },
    depth,
    { limit: sits.well * pin.d, sense: 'at least', hard: sits.atAll * pin.d },
  );
}

/** What is left between the pin's ends and what they could run into. */
function roomFindings(joint: Joint, set: DowelSet): Finding[] {
  const { side, inside, depth, pin, length } = set;
  const { thickness } = joint.adapterSpec;
  const flange = joint[side].thickness;
  const key = `adapter.${side}.dowels.length`;
  /** The longest pin that is made, shorter by what sticks out; half of a pin lies in each part. */
  const shorter = (out: number): string => {
    const fitting = pin.lengths.findLast((made) => made <= length - 2 * out);
    return fitting === undefined ? ` (${key})` : ` (${key}: ${fitting} mm)`;
  };
  const common = { code: `dowel-room-${side}`, feature: `${side}-dowels`, unit: 'mm', source: 'geometry' };
  const other = side === 'driving' ? 'driven' : 'driving';
  const inAdapter = judged(
    {
      ...common,
      title: `room beyond the ${side} dowels in the adapter`,
      why:
        depth === null
          ? `The holes go right through, so the pins can be driven out; they end ${mm(thickness - inside.adapter)} below the ${other} face.`
          : `The holes are ${mm(depth)} deep and blind: take pins with an internal thread (ISO 8735) if they are to come out again.`,
      cure: `Take shorter pins${shorter(inside.adapter - (depth ?? thickness))}, or a thicker adapter (adapter.thickness: ${atLeast(thickness + inside.adapter - (depth ?? thickness))}).`,
    },
    (depth ?? thickness) - inside.adapter,
    { limit: 0, sense: 'at least' },
  );
  const title = `room beyond the ${side} dowels in the flange`;
  if (flange === null) {
    const why = `${mm(inside.flange)} of pin lie in the ${side} flange; how thick it is was not said.`;
    return [inAdapter, notAssessed({ ...common, title, why, missing: `Give ${side}.thickness.` })];
  }
  return [
    inAdapter,
    judged(
      {
        ...common,
        title,
        why: `The flange is ${mm(flange.value)} thick; ${mm(inside.flange)} of pin lie in it. What sticks out behind it may foul a head or a spanner.`,
        cure: `Take shorter pins${shorter(inside.flange - (flange.value - flange.doubt))}, or a thicker adapter to hold more of them (adapter.thickness).`,
      },
      flange.value - flange.doubt - inside.flange,
      { limit: 0, sense: 'at least', worst: 'caution' },
    ),
  ];
}

/** Metal round the holes in the flange. The adapter's own webs are judged with all its other holes. */
function webFinding(joint: Joint, set: DowelSet): Finding {
  const { side, flangeWeb, circle, pin } = set;
  const key = `adapter.${side}.dowels`;
  return judged(
    {
      code: `dowel-web-${side}`,
      feature: `${side}-dowels`,
      title: `metal round the dowel holes in the ${side} flange`,
      unit: 'mm',
      why: `The holes stand on ${mm(circle)}; nearest to them: ${flangeWeb.what}.`,
      cure: set.isMeasured
        ? `Check ${key}.circle and .first: holes that are there seldom stand so near.`
        : `Leave ${key}.circle and .first on auto, or take thinner pins (${key}.size${pin.d > 3 ? `, less than ${pin.d} mm` : ''}) or fewer (${key}.count).`,
      source: 'geometry; least web set by adapter.web',
    },
    flangeWeb.gap,
    { limit: joint.job.adapter.web, sense: 'at least', hard: Math.min(1, joint.job.adapter.web) },
  );
}

/** True where turning by one pitch of the dowels brings the flange's holes onto themselves. */
function fitsTurned(joint: Joint, { side, count }: DowelSet): boolean {
  const positions = holesThere(joint[side].holes);
  const turn = (2 * Math.PI) / count;
  return positions.every(({ x, y }) => {
    const at = { x: x * cos(turn) - y * sin(turn), y: x * sin(turn) + y * cos(turn) };
    return positions.some((p) => hypot(p.x - at.x, p.y - at.y) < 0.5);
  });
}

/** How the two halves come to lie on each other, and what to mind. */
function settingFinding(joint: Joint, set: DowelSet): Finding {
  const { side, count, reamed, fits } = set;
  const hasRegister = joint.adapterSpec.registers[side] !== null && joint[side].register !== null;
  const ways = count > 1 && fitsTurned(joint, set);
  const mark = ways
    ? ` Equal spacing lets it go on in ${count} positions: mark adapter and ${side} flange, so that it goes back as it was reamed.`
    : '';
  const true_ = hasRegister ? 'seat it in its register' : `set it true to the ${side} flange with a dial (0.02 mm)`;
  const common = {
    code: `dowel-setting-${side}`,
    feature: `${side}-dowels`,
    title: `setting of the ${side} dowels`,
    unit: '',
    source: 'common practice',
  };
  if (reamed === 'together') {
    const why = `Bolt the adapter up, ${true_}, tighten, then drill and ream through both in one go: the holes cannot miss each other.${mark}`;
    return stated({ ...common, why, cure: '' }, 'pass');
  }
  const slack = Math.max(0, fits.adapter.greatest) + Math.max(0, fits.flange.least);
  const twice = hasRegister ? ' The register centres it as well, and the two will not agree to a hundredth.' : '';
  const verdict: Verdict = count === 1 && !hasRegister ? 'pass' : 'caution';
  return stated(
    {
      ...common,
      why: `Holes made apart must agree within ${mm(slack, 3)} from hole to hole, or the last pin does not go in.${twice}${mark}`,
      cure: `Drill both by the same read-out, or ream them together (adapter.${side}.dowels.reamed: together).`,
    },
    verdict,
  );
}

/** Dowels need holes in a flange that is there already: whoever never asked for them must be told so. */
function workFinding(set: DowelSet): Finding[] {
  const { side, count, pin, circle, isMeasured } = set;
  if (isMeasured) return [];
  return [
    notAssessed({
      code: `dowel-work-${side}`,
      feature: `${side}-dowels`,
      title: `new holes for dowels in the ${side} flange`,
      why: `${plural(count, 'hole')} of ${pin.d} mm on ${mm(circle)} have to be drilled and reamed in the flange itself. Whether it can be drilled (hardened or thin metal, something behind it, a balanced part) is not known here.`,
      missing: `Look at the flange first: try it with a file, and see what is behind. Without dowels (adapter.${side}.dowels: none), a register or a dial has to centre it. Holes that are there: adapter.${side}.dowels.flange.`,
      source: 'common practice, no source',
    }),
  ];
}

function ofSide(joint: Joint, side: Side): Finding[] {
  const set = joint.dowels?.[side];
  if (!set) return [];
  return [
    fitFinding(set, 'adapter'),
    fitFinding(set, 'flange'),
    pressFinding(set),
    lengthFinding(joint, set),
    ...roomFindings(joint, set),
    webFinding(joint, set),
    settingFinding(joint, set),
    ...workFinding(set),
    dowelShear(joint, set),
  ];
}

export const dowels: Check = {
  id: 'dowels',
  title: 'Dowels',
  source: 'ISO 8734; ISO 286-2; EN 1993-1-8; common practice',
  run: (joint) => sides.flatMap((side) => ofSide(joint, side)),
};
