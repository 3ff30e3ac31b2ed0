/** A drawing against what a cutting service can make: holes, webs, inside corners, size of the part. mm. */
import type { SheetInput } from '../job/schema-sheet.ts';
import type { Place, PlacedFinding } from '../model/preflight.ts';
import { sheetLimit, sheetRules, smallestHole } from '../standards/sheet-cutting.ts';
import { smallestPart, smallestParts, usualSheet } from '../standards/sheet-parts.ts';
import { must } from '../standards/table.ts';
import { narrowestWeb, sharpestInside } from './contour-facts.ts';
import { short } from './fault-log.ts';
import { held, told, unjudged } from './held.ts';
import { type Budget, narrowestKerf } from './limits.ts';
import { neckFindings } from './neck-limits.ts';
import type { Nested } from './nest.ts';
import { roundDiameter } from './round.ts';

/** What of a job's `sheet` a drawing is held against. */
export type ServiceProfile = Pick<SheetInput, 'hole' | 'web' | 'inside_radius' | 'part'>;

/** The limits that hold when no job is given. */
export const usualProfile: ServiceProfile = { hole: 1, web: 1, part: {} };

interface Ask {
  readonly contours: readonly Nested[];
  readonly thickness: number | null;
  readonly profile: ServiceProfile;
  /** mm in one unit of the drawing. */
  readonly unit: number;
  readonly budget: Budget;
}

/** Every limit, passes included. */
export function serviceFindings(ask: Ask): PlacedFinding[] {
  if (ask.contours.length === 0) return [];
  return [...holes(ask), ...web(ask), ...neckFindings(ask), ...corners(ask), ...partSizes(ask)];
}

const placeAt = ({ contours, unit }: Ask, contour: number, x: number, y: number): Place[] => {
  const place = contours[contour]?.loop.places[0];
  return place === undefined ? [] : [{ ...place, x: x / unit, y: y / unit }];
};

const where = (places: readonly Place[]): string =>
  places.map(({ entity, x, y }) => ` It is at (${short(x ?? 0)}, ${short(y ?? 0)}), entity ${entity}.`).join('');

/** Width of a hole: the diameter of a round one, else the narrower side of its box. */
function widthOf(nested: Nested): number {
  const { xMin, xMax, yMin, yMax } = nested.box;
  return roundDiameter(nested) ?? Math.min(xMax - xMin, yMax - yMin);
}

function holes(ask: Ask): PlacedFinding[] {
  const { contours, thickness, profile } = ask;
  const all = contours.flatMap((nested, i) => (nested.depth % 2 === 1 ? [{ i, nested, width: widthOf(nested) }] : []));
  const [first] = all;
  if (first === undefined) return [];
  const least = all.reduce((a, b) => (b.width < a.width ? b : a), first);
  const { box } = least.nested;
  const places = placeAt(ask, least.i, (box.xMin + box.xMax) / 2, (box.yMin + box.yMax) / 2);
  const words = { code: 'dxf-hole-size', title: 'smallest hole', unit: 'mm', places };
  if (thickness === null) {
    const plain = held(
      {
        ...words,
        why: `No service cuts holes under ${smallestHole} mm, however thin the sheet.${where(places)}`,
        cure: 'Have it marked and drilled; or the drawing is in another unit than it says.',
        source: sheetRules.edition,
      },
      least.width,
      { limit: smallestHole, sense: 'at least' },
    );
    return plain.verdict === 'pass'
      ? [thicknessMissing('dxf-hole-size', 'smallest hole against the sheet', 'mm')]
      : [plain];
  }
  const limit = Math.max(smallestHole, profile.hole * thickness);
  const rule = must(sheetLimit('hole', thickness));
  return [
    held(
      {
        ...words,
        why: `The service cuts holes down to ${profile.hole} times the thickness (${short(limit)} mm here).${where(places)}`,
        cure: 'Have it marked and drilled, use thinner sheet, or ask the service for less (sheet.hole).',
        source: sheetRules.edition,
      },
      least.width,
      { limit, sense: 'at least', hard: Math.min(limit, rule.loosest) },
    ),
  ];
}

function thicknessMissing(code: string, title: string, unit: string): PlacedFinding {
  return unjudged({
    code,
    title,
    unit,
    why: 'What can be cut goes by the thickness of the sheet.',
    missing: 'Give the thickness: --thickness 3, or a job with --job.',
  });
}

function web(ask: Ask): PlacedFinding[] {
  const { contours, thickness, profile } = ask;
  const found = narrowestWeb(contours, ask.budget);
  if (found === 'unknown') return [tooMuch('dxf-web', 'narrowest web between two cuts')];
  if (found === null) return [];
  const places = placeAt(ask, found.between[0], found.x, found.y);
  const words = { code: 'dxf-web', title: 'narrowest web between two cuts', unit: 'mm', places };
  if (thickness === null || found.gap < narrowestKerf) {
    const plain = held(
      {
        ...words,
        why: `Cuts nearer than the kerf are a thick line drawn as two, or an edge drawn twice a little off.${where(places)}`,
        cure: 'Delete one of the two contours, or move them apart.',
        source: 'the narrowest published laser kerf',
      },
      found.gap,
      { limit: narrowestKerf, sense: 'at least' },
    );
    return plain.verdict === 'pass' ? [thicknessMissing('dxf-web', 'narrowest web against the sheet', 'mm')] : [plain];
  }
  const limit = profile.web * thickness;
  const rule = must(sheetLimit('web', thickness));
  return [
    held(
      {
        ...words,
        why: `The service wants ${profile.web} times the thickness (${short(limit)} mm) between cuts, or the web burns.${where(places)}`,
        cure: 'Move the cuts apart, use thinner sheet, or ask the service for less (sheet.web).',
        source: sheetRules.edition,
      },
      found.gap,
      { limit, sense: 'at least', hard: Math.min(limit, rule.loosest) },
    ),
  ];
}

function corners(ask: Ask): PlacedFinding[] {
  const { contours, thickness, profile } = ask;
  const wanted = profile.inside_radius ?? (thickness === null ? null : must(sheetLimit('corner', thickness)).usual);
  if (wanted === null) return [thicknessMissing('dxf-inside-corner', 'inside corners against the sheet', 'mm')];
  const sharpest = sharpestInside(contours, wanted);
  if (sharpest === null) return [];
  const places = placeAt(ask, sharpest.contour, sharpest.x, sharpest.y);
  const isGiven = profile.inside_radius !== undefined;
  return [
    held(
      {
        code: 'dxf-inside-corner',
        title: 'smallest radius in an inside corner',
        unit: 'mm',
        places,
        why: `${isGiven ? 'The service states its smallest inside radius.' : 'Sharp inside corners burn and tear.'}${where(places)}`,
        cure: `Round inside corners with ${short(wanted)} mm or more.`,
        source: isGiven ? 'the cutting service, as given in sheet.inside_radius' : 'common practice, from memory',
      },
      sharpest.radius,
      { limit: wanted, sense: 'at least', worst: 'caution' },
    ),
  ];
}

function partSizes(ask: Ask): PlacedFinding[] {
  const { contours, thickness, profile } = ask;
  const sizes = contours.flatMap(({ depth, box }, i) => {
    if (depth !== 0) return [];
    const [w, h] = [box.xMax - box.xMin, box.yMax - box.yMin];
    return [{ i, box, short: Math.min(w, h), long: Math.max(w, h) }];
  });
  const [first] = sizes;
  if (first === undefined) return [];
  const small = sizes.reduce((a, b) => (b.short < a.short ? b : a), first);
  const large = sizes.reduce((a, b) => (b.long > a.long ? b : a), first);
  const published = thickness === null ? null : smallestPart(thickness);
  const least = profile.part.least ?? (published?.ok ? published.value : must(smallestPart(1)));
  const [mx, my] = profile.part.most ?? [usualSheet.long, usualSheet.short];
  const most = { long: Math.max(mx as number, my as number), short: Math.min(mx as number, my as number) };
  const fits = large.long <= most.long && large.short <= most.short;
  const at = ({ i, box }: { i: number; box: Nested['box'] }) => placeAt(ask, i, box.xMin, box.yMin);
  return [
    held(
      {
        code: 'dxf-part-small',
        title: 'shortest side of the part',
        unit: 'mm',
        places: at(small),
        why: `Parts under ${short(least)} mm tip or fall through the grid.`,
        cure: 'Ask for tabs or cut several on one frame; or the drawing is in another unit than it says; or give sheet.part.least.',
        source:
          profile.part.least === undefined
            ? smallestParts.edition
            : 'the cutting service, as given in sheet.part.least',
      },
      small.short,
      { limit: least, sense: 'at least', worst: 'caution' },
    ),
    told(
      {
        code: 'dxf-part-large',
        title: 'longest side of the part',
        unit: 'mm',
        places: at(large),
        why: `The part is ${short(large.long)} x ${short(large.short)} mm; the service takes ${short(most.long)} x ${short(most.short)} mm.`,
        cure: 'Send it to a service with a larger table; or the drawing is in another unit than it says; or give sheet.part.most.',
        source:
          profile.part.most === undefined
            ? 'the usual large sheet, common practice'
            : 'the cutting service, as given in sheet.part.most',
      },
      fits ? 'pass' : 'fail',
      large.long,
    ),
  ];
}

/** A check that was broken off: the drawing is too tangled. */
export function tooMuch(code: string, title: string): PlacedFinding {
  return unjudged({
    code,
    title,
    why: 'The drawing holds more lines side by side than are looked at here.',
    missing: 'Send one part a file, as lines and arcs, without copies.',
  });
}
