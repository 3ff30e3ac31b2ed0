/** Can the cutting service cut the wheel's outline? */
import { leastGap } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import { narrowestCut } from '../job/tooth-demands.ts';
import { toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import type { SheetPart } from '../model/sheet.ts';
import { hasWindows, type ToneWheelSpec, toothMeasures, windowsBeside } from '../parts/tone-wheel.ts';
import { sheetLimit, sheetRules, stockedSheet } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { type Check, judged } from './check.ts';
import { mm, sourced } from './words.ts';

type SheetSettings = Joint['job']['sheet'];

/** The thickest stocked sheet that is no thicker than this, as a key; the key alone where none is. */
function stockFor(most: number): string {
  const stocked = stockedSheet.findLast((thickness) => thickness <= most);
  return stocked === undefined ? ' (wheel.thickness)' : ` (wheel.thickness: ${stocked} mm)`;
}

function smallestHole(part: SheetPart, settings: SheetSettings): Finding {
  const { thickness } = part;
  const holes = part.holes.flatMap((hole) => (hole.kind === 'circle' ? [2 * hole.r] : []));
  const rule = must(sheetLimit('hole', thickness));
  const limit = settings.hole * thickness;
  const smallest = Math.min(...holes);
  return judged(
    {
      code: 'sheet-hole',
      feature: 'wheel-screws',
      title: 'smallest hole against the sheet',
      unit: 'mm',
      why: `The service cuts holes down to ${settings.hole} times the thickness (${mm(limit)}); shops differ three-fold.`,
      cure: `Use thinner sheet${stockFor(smallest / settings.hole)} or larger screws (wheel.screws.size), or have the hole marked and drilled; ask the service (sheet.hole).`,
      source: sheetRules.edition,
    },
    smallest,
    { limit, sense: 'at least', hard: Math.min(limit, rule.loosest) },
  );
}

/** A wheel that came out of several ways of holding the joint is one part, and is measured once. */
const known = new WeakMap<SheetPart, number>();

function leastWeb(part: SheetPart, spec: ToneWheelSpec): number {
  const web = known.get(part) ?? Math.min(...websOf(part, spec));
  known.set(part, web);
  return web;
}

/** Least webs between cuts. Windows are alike: two neighbours and the rim stand for all of them. */
function websOf(part: SheetPart, spec: ToneWheelSpec): number[] {
  const windows = part.holes.filter(({ kind }) => kind === 'path').slice(0, 2);
  const holes = part.holes.flatMap((hole) => (hole.kind === 'circle' ? [hole] : []));
  const cuts = [part.outside, ...holes];
  const among = holes.flatMap((hole, i) => cuts.slice(0, i + 1).map((other) => leastGap(hole, other).gap));
  if (windows.length === 0) return among;
  const others = [part.outside, ...windows.slice(1)];
  return [
    ...among,
    ...others.flatMap((other) => windows.slice(0, 1).map((window) => leastGap(window, other).gap)),
    ...holes.flatMap((hole) =>
      windowsBeside(spec, part.holes, hole.x, hole.y).map((window) => leastGap(hole, window).gap),
    ),
  ];
}

function smallestWeb(part: SheetPart, spec: ToneWheelSpec, settings: SheetSettings): Finding {
  const { thickness } = part;
  const limit = settings.web * thickness;
  const rule = must(sheetLimit('web', thickness));
  return judged(
    {
      code: 'sheet-web',
      feature: 'wheel-outline',
      title: 'smallest web between two cuts',
      unit: 'mm',
      why: `The service wants ${settings.web} times the thickness (${mm(limit)}) between cuts, or the web burns.`,
      cure: part.holes.some(({ kind }) => kind === 'path')
        ? 'Leave the screw circle on auto (wheel.screws.circle), make the rim wider (wheel.rim) or the bars (fewer windows, wheel.ratio), or use thinner sheet.'
        : 'Leave the screw circle on auto (wheel.screws.circle), use fewer or smaller screws, or thinner sheet.',
      source: sheetRules.edition,
    },
    leastWeb(part, spec),
    { limit, sense: 'at least', hard: Math.min(limit, rule.loosest) },
  );
}

/** Teeth and valleys are webs and slots to the cutter. */
function slots(spec: ToneWheelSpec): Finding {
  const sizes = toothMeasures(spec);
  const words = toothWords(spec);
  const narrowest = narrowestCut(sizes);
  const rule = must(sheetLimit('slot', spec.thickness));
  return judged(
    {
      code: 'sheet-slot',
      feature: 'wheel-outline',
      title: `narrowest ${words.tooth} or ${words.valley} against the sheet`,
      unit: 'mm',
      why: `Narrow ${words.teeth} and ${words.valleys} burn and round off in thick sheet.${(spec.extra ?? 0) > 0 ? ` Beside the extra ${words.tooth} they are narrowest.` : ''}`,
      cure: `Use sheet of at most ${mm((spec.thickness * narrowest) / rule.usual)}${stockFor((spec.thickness * narrowest) / rule.usual)}, fewer ${hasWindows(spec) ? words.valleys : words.teeth} or a larger wheel.`,
      source: rule.source,
    },
    narrowest,
    { limit: rule.usual, sense: 'at least', hard: rule.loosest },
  );
}

function insideRadius(spec: ToneWheelSpec, settings: SheetSettings): Finding {
  const corner = must(sheetLimit('corner', spec.thickness));
  const wanted = settings.inside_radius ?? corner.usual;
  return judged(
    {
      code: 'sheet-inside-radius',
      feature: 'wheel-outline',
      title: hasWindows(spec) ? 'radius in the corners of the windows' : 'radius in the tooth root',
      unit: 'mm',
      why:
        settings.inside_radius === undefined
          ? 'Sharp inside corners burn.'
          : 'The service states its smallest inside radius.',
      cure: `Make the radius at least ${mm(wanted)} (wheel.root_radius: ${mm(wanted)}).`,
      source:
        settings.inside_radius === undefined
          ? sourced(corner.source, corner.memory)
          : 'the cutting service, as given in sheet.inside_radius',
    },
    spec.rootRadius,
    { limit: wanted, sense: 'at least', worst: 'caution' },
  );
}

export const sheet: Check = {
  id: 'sheet',
  title: 'Sheet cutting',
  source: sheetRules.edition,
  run({ wheel, wheelSpec, job }) {
    if (!wheel || !wheelSpec) return [];
    return [
      smallestHole(wheel, job.sheet),
      smallestWeb(wheel, wheelSpec, job.sheet),
      slots(wheelSpec),
      insideRadius(wheelSpec, job.sheet),
    ];
  },
};
