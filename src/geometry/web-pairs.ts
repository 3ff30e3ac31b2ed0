/** Every two features of a turned part with the web between them, and the thinnest of each kind. How one web is measured: `webs`. */

import type { Drilling, Profile, TurnedPart } from '../model/part.ts';
import { hypot } from '../units/hypot.ts';
import { onAxis, webBetween, webToFlats, webToOutside, webWithin, widest } from './webs.ts';

/** The least metal between two features. */
export interface Web {
  /** Drilling id. */
  readonly a: string;
  /** Drilling id, or `outside`, or `flats`. The same id as `a`: between the two recesses that one bore joins. */
  readonly b: string;
  /** mm; negative where they overlap. */
  readonly gap: number;
}

/** Two features that may leave a web between them, measured only when asked. */
export interface WebPair {
  readonly a: Drilling;
  /** The same drilling: between the two recesses that one bore joins. */
  readonly b: Drilling | 'outside' | 'flats';
  /** The web is never less than this where it is not an overlap, mm: known without measuring. */
  readonly floor: number;
  /** mm; negative where they overlap; null where there is no web. */
  readonly measure: () => number | null;
}

/** Places round the axis that differ by less are one place, mm. */
const placing = 1e-9;

/** What hangs on a shape and on how far it stands from something, measured once for all the holes that stand alike. */
function measuredOnce(): (
  shapes: readonly [Profile, Profile | null],
  apart: number,
  f: () => number | null,
) => number | null {
  const known = new Map<Profile, Map<Profile | null, Map<number, number | null>>>();
  return ([first, second], apart, f) => {
    const byFirst = known.get(first) ?? new Map<Profile | null, Map<number, number | null>>();
    const byBoth = byFirst.get(second) ?? new Map<number, number | null>();
    known.set(first, byFirst.set(second, byBoth));
    const key = Math.round(apart / placing);
    const found = byBoth.get(key);
    if (found !== undefined) return found;
    const web = f();
    byBoth.set(key, web);
    return web;
  };
}

/** Every pair of features, in the order of the part's drillings. */
export function* webPairs(part: TurnedPart): Generator<WebPair> {
  const { drillings, outer, flats } = part;
  const once = measuredOnce();
  const radii = drillings.map(({ profile }) => widest(profile));
  for (const [i, a] of drillings.entries()) {
    for (let j = i + 1; j < drillings.length; j++) {
      const b = drillings[j] as Drilling;
      const distance = hypot(a.x - b.x, a.y - b.y);
      const floor = distance - (radii[i] as number) - (radii[j] as number);
      yield { a, b, floor, measure: () => once([a.profile, b.profile], distance, () => webBetween(a, b)) };
    }
    const unknown = Number.NEGATIVE_INFINITY;
    if (onAxis(a)) yield { a, b: a, floor: unknown, measure: () => webWithin(a) };
    const toOutside = () =>
      webToOutside(
        outer,
        a,
        drillings.filter((other) => other !== a && onAxis(other)),
      );
    const offset = hypot(a.x, a.y);
    yield { a, b: 'outside', floor: unknown, measure: () => once([a.profile, null], offset, toOutside) };
    if (flats) yield { a, b: 'flats', floor: unknown, measure: () => webToFlats(flats, a, outer) };
  }
}

const webOf = ({ a, b }: WebPair, gap: number): Web => ({ a: a.id, b: typeof b === 'string' ? b : b.id, gap });

/** Every pair of features with the metal left between them, mm, in the order of the part's drillings. Pairs without a web are left out. */
export function allWebs(part: TurnedPart): Web[] {
  return [...webPairs(part)].flatMap((pair) => {
    const gap = pair.measure();
    return gap !== null && Number.isFinite(gap) ? [webOf(pair, gap)] : [];
  });
}

/** Webs that differ by less are equal, mm: those of an even pattern differ by the last bit only, and on every machine the first is named. */
const alike = 1e-9;

/**
 * The least web of each kind, first of equals in the order of the part's drillings. Pairs that stand too far apart to matter are not
 * measured.
 * @param kindOf the kind of a pair; null: not looked at
 */
export function leastWebs<Kind>(
  part: TurnedPart,
  kindOf: (a: Drilling, b: WebPair['b']) => Kind | null,
): Map<Kind, Web> {
  const least = new Map<Kind, Web>();
  for (const pair of webPairs(part)) {
    const kind = kindOf(pair.a, pair.b);
    if (kind === null) continue;
    const limit = (least.get(kind)?.gap ?? Number.POSITIVE_INFINITY) - alike;
    if (pair.floor >= Math.max(0, limit)) continue;
    const gap = pair.measure();
    if (gap !== null && Number.isFinite(gap) && gap < limit) least.set(kind, webOf(pair, gap));
  }
  return least;
}
