/** Gathers faults while a file is read, and turns them into one finding a code. */
import type { Place, PlacedFinding } from '../model/preflight.ts';
import { type FaultCode, type FaultKind, faultKinds } from './fault-kinds.ts';

/** Places kept for one code; the rest is counted. */
const placesKept = 20;

/** Places told in the sentence. */
const placesTold = 4;

interface Entry {
  count: number;
  readonly places: Place[];
  readonly notes: string[];
}

export interface FaultLog {
  /** One more fault of this kind. `note` is a clause about this one: "gap 0.35 mm". */
  readonly add: (code: FaultCode, place: Place | null, note?: string) => void;
  readonly has: (...codes: readonly FaultCode[]) => boolean;
  /** One finding for each code that was met, in the order of the list of kinds. */
  readonly findings: () => PlacedFinding[];
}

export function faultLog(): FaultLog {
  const entries = new Map<FaultCode, Entry>();
  return {
    add(code, place, note = '') {
      const entry = entries.get(code) ?? { count: 0, places: [], notes: [] };
      entries.set(code, entry);
      entry.count += 1;
      if (entry.count > placesKept) return;
      if (place !== null) entry.places.push(place);
      entry.notes.push([place === null ? '' : placeWords(place), note].filter((word) => word !== '').join(': '));
    },
    has: (...codes) => codes.some((code) => entries.has(code)),
    findings: () =>
      (Object.keys(faultKinds) as FaultCode[]).flatMap((code) => {
        const entry = entries.get(code);
        return entry === undefined ? [] : [findingOf(code, faultKinds[code], entry)];
      }),
  };
}

function findingOf(code: FaultCode, kind: FaultKind, { count, places, notes }: Entry): PlacedFinding {
  const told = notes.slice(0, placesTold).filter((note) => note !== '');
  const more = count - told.length;
  const rest = told.length > 0 && more > 0 ? `; and ${more} more` : '';
  return {
    code,
    feature: featureOf(places[0]),
    title: kind.title,
    verdict: kind.verdict,
    value: count,
    limit: 0,
    unit: '',
    margin: -count,
    why: told.length === 0 ? kind.why : `${kind.why} Found: ${told.join('; ')}${rest}.`,
    remedy: kind.cure,
    source: 'common practice of cutting services',
    places,
  };
}

const featureOf = (place: Place | undefined): string =>
  place === undefined || place.entity === 0 ? 'file' : `entity-${place.entity}`;

/** A number of a drawing as people read it: at most four decimals. */
export const short = (value: number): string => String(Number(value.toFixed(4)));

/** "entity 12 (LINE, line 340 of the file) at (10.5, 3.2)". */
export function placeWords({ entity, type, line, x, y }: Place): string {
  const name = entity === 0 ? `line ${line} of the file` : `entity ${entity} (${type}, line ${line} of the file)`;
  return x === null || y === null ? name : `${name} at (${short(x)}, ${short(y)})`;
}
