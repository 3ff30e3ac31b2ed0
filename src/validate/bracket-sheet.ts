/** Can the bracket be cut and bent? */

import { bendAllowance } from '../formulas/bending.ts';
import { contourBox, leastGap } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import type { Finding } from '../model/finding.ts';
import { bendRule, bendRules, leastBendRadius } from '../standards/bend-practice.ts';
import { sheetLimit, sheetRules } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { type Check, judged } from './check.ts';
import { atLeast, mm, sourced } from './words.ts';

const feature = 'bracket-outline';

function bendRadius({ spec, material, radiusFrom }: Bracket): Finding[] {
  const radius = Math.min(...spec.bends.map((bend) => bend.radius));
  const { least, usual, source, memory } = must(leastBendRadius(material, spec.thickness));
  return [
    judged(
      {
        code: 'bracket-bend-radius',
        feature,
        title: 'inside radius of the bends',
        unit: 'mm',
        why: `Bent tighter, ${material.name} cracks outside. The radius is ${radiusFrom}.`,
        cure: `Leave the radius open (bracket.radius: auto), or make it ${atLeast(usual)} or more.`,
        source: sourced(source, memory),
      },
      radius,
      { limit: usual, sense: 'at least', hard: least },
    ),
  ];
}

/** From the middle of each bend to the end of what it bends: the die must carry the sheet there. */
function flanges({ spec, die }: Bracket): Finding[] {
  if (!die) return [];
  const halves = spec.bends.map((bend) => bendAllowance(bend, spec.thickness) / 2);
  const lengths = spec.straights.map((straight, i) => straight + (halves[i - 1] ?? 0) + (halves[i] ?? 0));
  const shortest = Math.min(...lengths);
  const which = lengths.indexOf(shortest);
  const name = which === 0 ? 'foot' : which === lengths.length - 1 ? 'arm' : 'step between the bends';
  const cure =
    name === 'foot'
      ? 'Move the bolts farther from the sensor (bracket.bolts), give more bracket.edge'
      : name === 'arm'
        ? "Give more bracket.edge, turn the sensor's ear to the end (bracket.sensor.ear.towards: end)"
        : 'Move the bolts (bracket.bolts) so that the step gets higher or leaves no step at all, give a smaller bracket.angle';
  return [
    judged(
      {
        code: 'bracket-flange',
        feature,
        title: `shortest flange of the bracket: the ${name}`,
        unit: 'mm',
        why: `The usual die for ${mm(spec.thickness, 1)} sheet is ${die.opening} mm wide; a shorter flange drops into it. Counted on the blank from the bend line.`,
        cure: `${cure}, or use thinner sheet (bracket.thickness); ask whether the shop has a narrower die.`,
        source: "a press maker's air-bending chart",
      },
      shortest,
      { limit: die.leastFlange, sense: 'at least', hard: 0.7 * die.leastFlange },
    ),
  ];
}

function holesToBends({ spec, part }: Bracket): Finding[] {
  const lines = (part.bends ?? []).map(({ from }) => from.x);
  const gaps = part.holes.flatMap((hole) => {
    const { xMin, xMax } = contourBox(hole);
    return lines.map((x) => ({ hole: hole.feature, gap: Math.max(xMin - x, x - xMax) }));
  });
  const nearest = gaps.reduce((a, b) => (b.gap < a.gap ? b : a));
  const radius = Math.max(...spec.bends.map((bend) => bend.radius));
  const rule = bendRule('hole to bend', spec.thickness, radius);
  const label = part.features.find(({ id }) => id === nearest.hole)?.label ?? nearest.hole;
  const half = bendAllowance(spec.bends[0] ?? { angle: 0, radius: 0, k: 0 }, spec.thickness) / 2;
  return [
    judged(
      {
        code: 'bracket-hole-to-bend',
        feature: nearest.hole,
        title: `${label} to the bend line`,
        unit: 'mm',
        why: 'A hole too near a bend is pulled out of round when the sheet is bent.',
        cure: `Move the bolts ${atLeast(rule.value - nearest.gap)} farther from the bend (bracket.bolts.from_axis and along), use a shorter bracket.slot, a smaller bracket.radius or thinner sheet.`,
        source: `${bendRules.edition}: ${rule.source}`,
      },
      nearest.gap,
      { limit: rule.value, sense: 'at least', hard: half + spec.thickness / 2 },
    ),
  ];
}

function webs({ spec, part }: Bracket, settings: Joint['job']['sheet']): Finding[] {
  const cuts = [part.outside, ...part.holes];
  const web = Math.min(
    ...part.holes.flatMap((hole, i) => cuts.slice(0, i + 1).map((other) => leastGap(hole, other).gap)),
  );
  const hole = Math.min(spec.foot.hole, spec.sensor.bore, spec.sensor.ear?.hole ?? Infinity);
  const t = spec.thickness;
  const rules = { web: must(sheetLimit('web', t)), hole: must(sheetLimit('hole', t)) };
  return [
    judged(
      {
        code: 'bracket-web',
        feature,
        title: 'smallest web between two cuts of the bracket',
        unit: 'mm',
        why: `The service wants ${settings.web} times the thickness between cuts.`,
        cure: 'Give more bracket.edge or bracket.width, or use thinner sheet (bracket.thickness).',
        source: sheetRules.edition,
      },
      web,
      { limit: settings.web * t, sense: 'at least', hard: Math.min(settings.web * t, rules.web.loosest) },
    ),
    judged(
      {
        code: 'bracket-hole',
        feature,
        title: 'smallest hole of the bracket against the sheet',
        unit: 'mm',
        why: `The service cuts holes down to ${settings.hole} times the thickness (${mm(settings.hole * t)}).`,
        cure: 'Use thinner sheet (bracket.thickness), or have the hole marked and drilled.',
        source: sheetRules.edition,
      },
      hole,
      { limit: settings.hole * t, sense: 'at least', hard: Math.min(settings.hole * t, rules.hole.loosest) },
    ),
  ];
}

export const bracketSheet: Check = {
  id: 'bracket-sheet',
  title: 'Bracket: cutting and bending',
  source: bendRules.edition,
  run({ bracket, job }) {
    if (!bracket) return [];
    const bent = bracket.spec.bends.length > 0;
    return [
      ...(bent ? [...bendRadius(bracket), ...flanges(bracket), ...holesToBends(bracket)] : []),
      ...webs(bracket, job.sheet),
    ];
  },
};
