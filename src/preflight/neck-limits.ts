/** Thin places within one contour against what a cutting service can make: necks of metal, and slots. mm. */
import type { Place, PlacedFinding } from '../model/preflight.ts';
import { sheetLimit, sheetRules } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { short } from './fault-log.ts';
import { held, told, unjudged } from './held.ts';
import { type Budget, narrowestKerf } from './limits.ts';
import { type Neck, thinPlaces } from './necks.ts';
import type { Nested } from './nest.ts';

interface Ask {
  readonly contours: readonly Nested[];
  readonly thickness: number | null;
  /** Least web and least hole of the service, x thickness. */
  readonly profile: { readonly web: number; readonly hole: number };
  /** mm in one unit of the drawing. */
  readonly unit: number;
  readonly budget: Budget;
}

/** Places up to so many times the limit are looked for: what is wider is far from any limit. */
const lookedFor = 4;

interface Kind {
  readonly code: string;
  readonly title: string;
  readonly limit: number;
  readonly hard: number;
  readonly why: string;
  readonly cure: string;
  readonly source: string;
}

/** Both kinds, passes included. Without a thickness only what no beam can leave or enter is named. */
export function neckFindings(ask: Ask): PlacedFinding[] {
  const { contours, thickness, budget } = ask;
  if (contours.length === 0) return [];
  const kinds = thickness === null ? withoutThickness : againstSheet(ask, thickness);
  const limit = Math.max(...kinds.map((kind) => kind.limit));
  const widest = thickness === null ? limit : lookedFor * limit;
  const found = thinPlaces(contours, limit / 2, widest, budget);
  const [neck, slot] = kinds as readonly [Kind, Kind];
  return [one(ask, neck, found.metal, found.upTo), one(ask, slot, found.air, found.upTo)];
}

const kerfNotes = {
  limit: narrowestKerf,
  hard: narrowestKerf,
  source: 'the narrowest published laser kerf',
};
const withoutThickness: readonly [Kind, Kind] = [
  {
    ...kerfNotes,
    code: 'dxf-neck',
    title: 'narrowest neck of metal within one contour',
    why: 'Between two cuts nearer than the kerf no metal is left.',
    cure: 'Make the neck wider, or cut it through on purpose.',
  },
  {
    ...kerfNotes,
    code: 'dxf-slot',
    title: 'narrowest slot within one contour',
    why: 'The beam is wider than this slot: both edges are burnt.',
    cure: 'Make the slot wider, or draw it as one line on a layer that is cut once, and say so in the order.',
  },
];

function againstSheet({ profile }: Ask, thickness: number): readonly [Kind, Kind] {
  const [web, slot] = [must(sheetLimit('web', thickness)), must(sheetLimit('slot', thickness))];
  const neckLimit = profile.web * thickness;
  // A service that makes small holes can make a slot as narrow: the beam goes in either way.
  const slotLimit = Math.max(narrowestKerf, Math.min(slot.usual, profile.hole * thickness));
  return [
    {
      code: 'dxf-neck',
      title: 'narrowest neck of metal within one contour',
      limit: neckLimit,
      hard: Math.min(neckLimit, web.loosest),
      why: `The service wants ${profile.web} times the thickness (${short(neckLimit)} mm) between two stretches of one cut, or the neck burns and bends.`,
      cure: 'Make the neck wider, use thinner sheet, or ask the service for less (sheet.web).',
      source: sheetRules.edition,
    },
    {
      code: 'dxf-slot',
      title: 'narrowest slot within one contour',
      limit: slotLimit,
      hard: Math.min(slotLimit, slot.loosest),
      why: `Slots narrower than ${short(slotLimit / thickness)} times the thickness (${short(slotLimit)} mm here) burn out, and their waste does not fall.`,
      cure: 'Make the slot wider, use thinner sheet, or ask the service for less (sheet.hole).',
      source: sheetRules.edition,
    },
  ];
}

function one(ask: Ask, kind: Kind, found: Neck | null, upTo: number): PlacedFinding {
  const { code, title, limit, hard, why, cure, source } = kind;
  if (found === null || (ask.thickness === null && found.gap >= limit)) {
    if (upTo < limit) {
      return unjudged({
        code,
        title,
        unit: 'mm',
        why: 'The drawing holds more lines side by side than are looked at here.',
        missing: 'Send one part a file, as lines and arcs, without copies.',
      });
    }
    if (ask.thickness === null) {
      return unjudged({
        code,
        title: `${title}, against the sheet`,
        unit: 'mm',
        why: 'What can be cut goes by the thickness of the sheet.',
        missing: 'Give the thickness: --thickness 3, or a job with --job.',
      });
    }
    return told(
      { code, title, why: `None is narrower than ${short(upTo)} mm; the limit is ${short(limit)} mm.`, source },
      'pass',
    );
  }
  const places = placesOf(ask, found);
  const at = places.map(({ entity, x, y }) => ` It is at (${short(x ?? 0)}, ${short(y ?? 0)}), entity ${entity}.`);
  const words = { code, title, unit: 'mm', places, why: `${why}${at.join('')}`, cure, source };
  return held(words, found.gap, { limit, sense: 'at least', hard });
}

function placesOf({ contours, unit }: Ask, { contour, stretch, x, y }: Neck): Place[] {
  const { places } = (contours[contour] as Nested).loop;
  const place = places[stretch];
  return place === undefined ? [] : [{ ...place, x: x / unit, y: y / unit }];
}
