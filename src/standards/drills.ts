import { letterDrills, numberDrills } from './drills-gauge.ts';
import { fractionalDrills, metricDrills } from './drills-stepped.ts';
import { inchesToMm, mmPerInch } from './inch.ts';
import type { Lookup } from './table.ts';
import { fold, found, missing } from './table.ts';

/** The four series of drill sizes. */
export type DrillSystem = 'metric' | 'fractional' | 'number' | 'letter';

/** Every series, in the order in which a tie between them is settled. */
export const drillSystems: readonly DrillSystem[] = ['metric', 'fractional', 'number', 'letter'];

/** A drill of any series. */
export interface Drill {
  readonly system: DrillSystem;
  /** As a drawing or a shop says it: '8.5 mm', '21/64', '1 in', 'No. 7', 'F'. */
  readonly name: string;
  /** mm */
  readonly diameter: number;
  /** in */
  readonly inches: number;
  readonly source: string;
  readonly memory: boolean;
}

/** The drills of one series around a size; null where the series ends. */
export interface DrillsAround {
  /** The largest that is thinner. */
  readonly below: Drill | null;
  /** The one that is this size, within what a printed size is rounded by. */
  readonly exact: Drill | null;
  /** The smallest that is thicker. */
  readonly above: Drill | null;
}

/** Two sizes closer than this are one size, mm: an inch size printed with four decimals and then converted loses so much. */
const same = 0.002;

const drillsBySystem: Readonly<Record<DrillSystem, readonly Drill[]>> = {
  metric: metricDrills.rows.map(({ d, memory = false }) => ({
    system: 'metric',
    name: `${d} mm`,
    diameter: d,
    inches: d / mmPerInch,
    source: metricDrills.edition,
    memory,
  })),
  fractional: fractionalDrills.rows.map(({ fraction, D }) => inchDrill('fractional', D === 1 ? '1 in' : fraction, D)),
  number: numberDrills.rows.map(({ gauge, D }) => inchDrill('number', `No. ${gauge}`, D)),
  letter: letterDrills.rows.map(({ gauge, D }) => inchDrill('letter', gauge, D)),
};

function inchDrill(system: DrillSystem, name: string, inches: number): Drill {
  return { system, name, diameter: inchesToMm(inches), inches, source: numberDrills.edition, memory: false };
}

/** Every drill of one series, thinnest first. */
export function drillsOf(system: DrillSystem): readonly Drill[] {
  return drillsBySystem[system];
}

/**
 * The drills of every series around a size: next thinner, equal, next thicker.
 * @param mm wanted diameter, mm; any number (outside a series, its far side is null)
 */
export function nearestDrills(mm: number): Readonly<Record<DrillSystem, DrillsAround>> {
  return {
    metric: around('metric', mm),
    fractional: around('fractional', mm),
    number: around('number', mm),
    letter: around('letter', mm),
  };
}

function around(system: DrillSystem, mm: number): DrillsAround {
  const drills = drillsBySystem[system];
  return {
    below: drills.findLast(({ diameter }) => diameter < mm - same) ?? null,
    exact: drills.find(({ diameter }) => Math.abs(diameter - mm) <= same) ?? null,
    above: drills.find(({ diameter }) => diameter > mm + same) ?? null,
  };
}

/** Sizes that a drill must not leave, mm. */
export interface DrillBounds {
  readonly atLeast?: number;
  readonly atMost?: number;
}

/**
 * The drill nearest to a size within bounds, over the series asked for; a tie goes to the series named first.
 * A clearance hole takes `{ atLeast }`, a hole to be reamed `{ atMost }`, a tapped hole both limits of its minor diameter.
 * Errors: a sentence when no drill lies within the bounds, with the nearest on either side of the size.
 */
export function drillFor(
  mm: number,
  { atLeast = 0, atMost = Number.POSITIVE_INFINITY }: DrillBounds = {},
  systems: readonly DrillSystem[] = drillSystems,
): Lookup<Drill> {
  if (!(mm > 0) || !Number.isFinite(mm)) return missing(`A drill is asked for by a size above 0 mm; got ${mm}.`);
  const fits = ({ diameter }: Drill) => diameter >= atLeast - same && diameter <= atMost + same;
  const candidates = systems.flatMap((system) => drillsBySystem[system].filter(fits));
  const best = nearestOf(candidates, mm);
  if (best !== null) return found(best);
  const others = systems.flatMap((system) => {
    const { below, exact, above } = around(system, mm);
    return [below, exact, above].filter((drill) => drill !== null);
  });
  const upper = Number.isFinite(atMost) ? ` to ${atMost}` : ' mm up';
  const known = others.map(({ name, diameter }) => `${name} (${diameter})`).join(', ');
  return missing(`No drill is ${atLeast}${upper}; around ${mm} mm there are: ${known === '' ? 'none' : known}.`);
}

function nearestOf(drills: readonly Drill[], mm: number): Drill | null {
  let best: Drill | null = null;
  for (const drill of drills) {
    if (best === null || Math.abs(drill.diameter - mm) < Math.abs(best.diameter - mm) - 1e-9) best = drill;
  }
  return best;
}

/**
 * The drill of a shop name: '8.5', '8.5 mm', '21/64', '1 in', 'No. 7', '#7', 'F', 'letter F'. Case and spaces do not matter; a bare
 * number is millimetres. Errors: a sentence that shows how the names are written.
 */
export function findDrill(name: string): Lookup<Drill> {
  const word = fold(name)
    .replace(/("|'')$/, 'in')
    .replace(/^(letter|size)/, '')
    .replace(/^(#|no\.?|number)(?=\d)/, 'no.');
  const all = drillSystems.flatMap((system) => drillsBySystem[system]);
  const drill = all.find((candidate) => namesOf(candidate).includes(word));
  if (drill !== undefined) return found(drill);
  return missing(`There is no drill "${name}"; write 8.5 mm, 21/64, No. 7 or F.`);
}

function namesOf({ system, name, diameter }: Drill): readonly string[] {
  const word = fold(name);
  if (system === 'metric') return [word, `${diameter}`];
  return system === 'fractional' ? [word, `${word}in`] : [word];
}
