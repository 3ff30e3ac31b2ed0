/** The least of a function of one or two things that may be set: a coarse grid, then ever smaller steps from its best place. */

/** What may be set, from and to. */
export interface Setting {
  readonly least: number;
  readonly most: number;
}

/** Places of the coarse grid along each setting; odd, so that the middle is one of them. */
const grid = 61;
/** Steps are halved until they are this share of the whole range. */
const finest = 1e-6;

/**
 * Settings that make `cost` least, in order. Sure to find the lowest valley where valleys are wider than a sixtieth of the range.
 * @param settings one or two
 */
export function leastOf(cost: (at: readonly number[]) => number, settings: readonly Setting[]): number[] {
  const steps = settings.map(({ least, most }) => (most - least) / (grid - 1));
  let places: number[][] = [[]];
  settings.forEach(({ least }, k) => {
    places = places.flatMap((place) =>
      Array.from({ length: grid }, (_, i) => [...place, least + i * (steps[k] as number)]),
    );
  });
  let best = places[0] as number[];
  let lowest = cost(best);
  for (const place of places) {
    const here = cost(place);
    if (here < lowest) [best, lowest] = [place, here];
  }
  for (let share = 0.5; share > finest * (grid - 1); ) {
    const around = neighbours(
      best,
      steps.map((step) => step * share),
      settings,
    );
    const here = lowest;
    for (const place of around) {
      const there = cost(place);
      if (!(there < lowest)) continue;
      [best, lowest] = [place, there];
      break;
    }
    if (lowest === here) share /= 2;
  }
  return best;
}

/** Places one step away in every direction, corners too, within the settings; not the place itself. */
function neighbours(from: readonly number[], steps: readonly number[], settings: readonly Setting[]): number[][] {
  let places: number[][] = [[]];
  from.forEach((value, k) => {
    const { least, most } = settings[k] as Setting;
    places = places.flatMap((place) =>
      [-1, 0, 1].map((way) => [...place, Math.min(most, Math.max(least, value + way * (steps[k] as number)))]),
    );
  });
  return places.filter((place) => place.some((value, k) => value !== from[k]));
}
