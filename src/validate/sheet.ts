/** Can the cutting service cut the wheel's outline? */
import { leastGap } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { toothMeasures } from '../parts/tone-wheel.ts';
import { sheetLimit, sheetRules } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { type Check, judged } from './check.ts';
import { mm } from './words.ts';

function smallestHole(joint: Joint, thickness: number): Finding {
  const holes = (joint.wheel?.holes ?? []).flatMap((hole) => (hole.kind === 'circle' ? [2 * hole.r] : []));
  const rule = must(sheetLimit('hole', thickness));
  const limit = joint.job.sheet.hole * thickness;
  return judged(
    {
      code: 'sheet-hole',
      feature: 'wheel-screws',
      title: 'smallest hole against the sheet',
      unit: 'mm',
      why: `The service cuts holes down to ${joint.job.sheet.hole} times the thickness (${mm(limit)}); shops differ three-fold.`,
      cure: 'Use thinner sheet or larger screws, or have the hole marked and drilled; ask the service.',
      source: sheetRules.edition,
    },
    Math.min(...holes),
    { limit, sense: 'at least', hard: Math.min(limit, rule.loosest) },
  );
}

function smallestWeb(joint: Joint, thickness: number): Finding {
  const { wheel } = joint;
  if (!wheel) throw new Error('no wheel');
  const cuts = [wheel.outside, ...wheel.holes];
  let least = Number.POSITIVE_INFINITY;
  wheel.holes.forEach((hole, i) => {
    for (const other of cuts.slice(0, i + 1)) least = Math.min(least, leastGap(hole, other).gap);
  });
  const limit = joint.job.sheet.web * thickness;
  const rule = must(sheetLimit('web', thickness));
  return judged(
    {
      code: 'sheet-web',
      feature: 'wheel-outline',
      title: 'smallest web between two cuts',
      unit: 'mm',
      why: `The service wants ${joint.job.sheet.web} times the thickness (${mm(limit)}) between cuts, or the web burns.`,
      cure: 'Move the screw circle, use fewer or smaller screws, or thinner sheet.',
      source: sheetRules.edition,
    },
    least,
    { limit, sense: 'at least', hard: Math.min(limit, rule.loosest) },
  );
}

/** Teeth and valleys are slots and webs to the cutter. */
function valleys(joint: Joint, thickness: number): Finding[] {
  if (!joint.wheelSpec) return [];
  const sizes = toothMeasures(joint.wheelSpec);
  const rule = must(sheetLimit('slot', thickness));
  const narrowest = Math.min(sizes.toothRootChord, sizes.toothChord, sizes.valleyRootArc, sizes.valleyChord);
  const corner = must(sheetLimit('corner', thickness));
  const radius = joint.wheelSpec.rootRadius;
  const wanted = joint.job.sheet.inside_radius ?? corner.usual;
  return [
    judged(
      {
        code: 'sheet-slot',
        feature: 'wheel-outline',
        title: 'narrowest tooth or valley against the sheet',
        unit: 'mm',
        why: 'Narrow teeth and valleys burn and round off in thick sheet.',
        cure: 'Use fewer teeth, a larger wheel or thinner sheet.',
        source: rule.source,
      },
      narrowest,
      { limit: rule.usual, sense: 'at least', hard: rule.loosest },
    ),
    judged(
      {
        code: 'sheet-inside-radius',
        feature: 'wheel-outline',
        title: 'radius in the tooth root',
        unit: 'mm',
        why: joint.job.sheet.inside_radius === undefined ? 'Sharp inside corners burn.' : 'The service states its smallest inside radius.',
        cure: `Make wheel.root_radius at least ${mm(wanted)}.`,
        source: joint.job.sheet.inside_radius === undefined ? corner.source : 'the cutting service, as given in sheet.inside_radius',
      },
      radius,
      { limit: wanted, sense: 'at least', worst: 'caution' },
    ),
  ];
}

export const sheet: Check = {
  id: 'sheet',
  title: 'Sheet cutting',
  source: sheetRules.edition,
  run(joint) {
    if (!joint.wheel) return [];
    const { thickness } = joint.wheel;
    return [smallestHole(joint, thickness), smallestWeb(joint, thickness), ...valleys(joint, thickness)];
  },
};
