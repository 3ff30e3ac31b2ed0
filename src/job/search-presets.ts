/** Which known pattern is it? Ranked by how near each comes to what was measured, with the differences in words. */
import type { FlangePreset } from './flange-presets.ts';

/** What was measured on the part; lengths in mm. Leave out what was not. */
export interface FlangeSearch {
  readonly circle?: number;
  readonly holes?: number;
  readonly outside?: number;
  readonly register?: number;
}

export interface PresetMatch {
  readonly preset: FlangePreset;
  /** 0 is a perfect match. About 1 for each difference that a careful caliper cannot explain. */
  readonly distance: number;
  /** One sentence fragment for each difference: "circle 84 mm, measured 83.4: 0.6 mm less". */
  readonly differences: readonly string[];
}

/** Farther than this nothing is alike: about so many differences that a careful caliper cannot explain. */
export const farthestMatch = 8;

/** Differences that still pass for one size, mm, common practice: registers are made closest, rims least so. */
const allowances = { circle: 0.5, outside: 2, register: 0.2 } as const;
/** A wrong number of holes is worse than any size. A size that the record does not give neither helps nor damns. */
const wrongCount = 20;
const unknownSize = 1;

/**
 * Patterns, nearest first, and by id among equals; at most `most` of them. A pattern that knows none of the measured sizes is
 * left out; with nothing measured, all patterns match.
 */
export function searchPresets(presets: readonly FlangePreset[], wanted: FlangeSearch, most = 10): PresetMatch[] {
  return presets
    .filter((preset) => knowsAny(preset, wanted))
    .map((preset) => match(preset, wanted))
    .sort((a, b) => a.distance - b.distance || a.preset.id.localeCompare(b.preset.id, 'en', { numeric: true }))
    .slice(0, most);
}

function knowsAny(preset: FlangePreset, { circle, holes, outside, register }: FlangeSearch): boolean {
  if (circle === undefined && holes === undefined && outside === undefined && register === undefined) return true;
  return (
    (circle !== undefined && preset.holes !== undefined) ||
    (holes !== undefined && preset.holes !== undefined) ||
    (outside !== undefined && preset.outside !== undefined) ||
    (register !== undefined && preset.register !== undefined)
  );
}

function match(preset: FlangePreset, wanted: FlangeSearch): PresetMatch {
  let distance = 0;
  const differences: string[] = [];
  const known = {
    circle: preset.holes?.circle,
    outside: preset.outside,
    register: preset.register?.diameter,
  };
  for (const key of ['circle', 'register', 'outside'] as const) {
    const measured = wanted[key];
    const size = known[key];
    if (measured === undefined) continue;
    if (size === undefined) {
      distance += unknownSize;
      differences.push(`${key} not known, measured ${measured} mm`);
      continue;
    }
    const difference = measured - size;
    distance += Math.abs(difference) / allowances[key];
    if (Math.abs(difference) >= 0.005) {
      differences.push(
        `${key} ${size} mm, measured ${measured}: ${Number(Math.abs(difference).toFixed(2))} mm ${difference > 0 ? 'more' : 'less'}`,
      );
    }
  }
  if (wanted.holes !== undefined) {
    const count = preset.holes?.count;
    if (count === undefined) {
      distance += unknownSize;
      differences.push(`number of holes not known, counted ${wanted.holes}`);
    } else if (count !== wanted.holes) {
      distance += wrongCount;
      differences.push(`${count} holes, counted ${wanted.holes}`);
    }
  }
  return { preset, distance, differences };
}
