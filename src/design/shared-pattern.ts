/** Are the two flanges' patterns one and the same, so that bolts can run through all three pieces? */

import type { AdapterInput } from '../job/schema.ts';
import { turned } from '../parts/adapter-holes.ts';
import { hypot } from '../units/hypot.ts';
import { atan2 } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import type { AdapterFlanges } from './layout.ts';
import type { Trouble } from './trouble.ts';

/** Holes that miss each other by more than this are not one pattern, mm. Common practice: the bolts must pass both. */
const meet = 0.3;

/**
 * Angle by which the driven pattern must turn to fall on the driving one, degrees, 0 <= angle < 360; null when it cannot, or when a
 * flange is tapped so that no bolt goes through it.
 * @param wanted clocking asked for: only that angle will do; null: the smallest that fits
 */
export function sharedPattern({ driving, driven }: AdapterFlanges, wanted: number | null = null): number | null {
  if (driving.holes.kind === 'tapped' || driven.holes.kind === 'tapped') return null;
  const fixed = driving.holes.positions;
  const moving = driven.holes.positions;
  const [first] = moving;
  if (!first || fixed.length !== moving.length) return null;
  const fits = (angle: number) => {
    const placed = moving.map((p) => turned(p, angle));
    return placed.every((p) => fixed.some((q) => hypot(p.x - q.x, p.y - q.y) <= meet));
  };
  if (wanted !== null) return fits(wanted) ? withinTurn(wanted) : null;
  const angles = fixed.map((target) =>
    tidy(withinTurn(((atan2(target.y, target.x) - atan2(first.y, first.x)) * 180) / Math.PI)),
  );
  return angles.sort((a, b) => a - b).find(fits) ?? null;
}

/** Drops binary noise: 59.99999999999999 is 60, and a whole turn is none. */
function tidy(degrees: number): number {
  const rounded = Math.round(degrees * 1e9) / 1e9;
  return rounded >= 360 ? 0 : rounded;
}

/** What the driven side's keys say when nobody typed them. */
const untouched = {
  screw: 'auto',
  class: '10.9',
  head: 'auto',
  hole: 'medium',
  washer: false,
  length: 'auto',
} as const;

/** One set of bolts serves both flanges, described under `driving`: a different wish under `driven` would be lost. */
export function sharedTroubles({ driving, driven }: Pick<AdapterInput, 'driving' | 'driven'>): Trouble[] {
  return (Object.keys(untouched) as (keyof typeof untouched)[])
    .filter((key) => driven[key] !== untouched[key] && driven[key] !== driving[key])
    .map((key) => ({
      path: `adapter.driven.${key}`,
      message: `The same bolts run through both flanges, so adapter.driving.${key} speaks for them. Write ${key}: ${String(driven[key])} there, and delete it here.`,
    }));
}
