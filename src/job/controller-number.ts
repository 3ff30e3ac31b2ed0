/** What the controller makes of this wheel, and the number to enter: all in figures, for checks and report alike. */

import { mmPerKm, mmPerMile, pulsesOver, readingError } from '../formulas/pulses.ts';
import { nearerAndNearer, type WholeRatio } from '../formulas/whole-ratio.ts';
import { pulseCount, type ToothPlaces } from '../parts/tone-wheel.ts';
import { type PulsesWanted, pulsesWanted, type Road, roadOf } from './pulses-wanted.ts';
import type { JobInput } from './schema.ts';

/** Largest number that either dial of a converter box usually takes. Common practice. */
const usualLargest = 255;
/** A ratio this near is as good as any: a tyre wears by a hundred times more. */
const nearEnough = 1e-4;
/** No more ratios than this are told of. */
const mostRatios = 4;

/** What this wheel comes to on the controller's side. Shares are plain numbers: 0.042 reads 4.2 % fast. */
export interface ControllerNumber {
  /** Pulses in a turn of this shaft: teeth that are there. */
  readonly made: number;
  readonly road: Road;
  /** Pulses in a turn of the road wheels, a km and a mile; null where the road is not known. */
  readonly perWheel: number | null;
  readonly perKm: number | null;
  readonly perMile: number | null;
  /** Null where nothing is said of what the controller expects; else it, or what is missing. */
  readonly wanted:
    | (PulsesWanted & {
        /** How far the reading is out when nothing is changed. */
        readonly error: number;
        /** The exact number in the controller's own unit, the one to enter, and how far the reading is out then. */
        readonly exact: number;
        readonly enter: { readonly number: number; readonly error: number } | null;
        /** Pulses out for pulses in, for a converter box: the simplest first, each nearer than the one before. */
        readonly ratios: readonly WholeRatio[];
        readonly largest: number;
      })
    | null;
  readonly missing: string | null;
}

/** The last ratios that are worth telling: up to the first that is near enough, no more than a few. */
function worthTelling(ratios: readonly WholeRatio[]): WholeRatio[] {
  const enough = ratios.findIndex(({ error }) => Math.abs(error) < nearEnough);
  return ratios.slice(0, enough < 0 ? ratios.length : enough + 1).slice(-mostRatios);
}

/** The part of a joint that is read here. */
export interface JointWithSensor {
  readonly job: Pick<JobInput, 'sensor' | 'duty'>;
  readonly wheelSpec?: ToothPlaces | null;
}

/** Figures for the wheel of a joint; null without one or without a sensor. */
export function controllerNumber({ job, wheelSpec }: JointWithSensor): ControllerNumber | null {
  const { sensor } = job;
  if (!wheelSpec || !sensor) return null;
  const made = pulseCount(wheelSpec);
  const road = roadOf(job);
  const { axle, rolled } = road;
  const over = (distance: number) =>
    axle === null || rolled === null ? null : pulsesOver(made, axle, rolled.value, distance);
  const wanted = pulsesWanted(job);
  const figures = {
    made,
    road,
    perWheel: axle === null ? null : made * axle,
    perKm: over(mmPerKm),
    perMile: over(mmPerMile),
  };
  if (!wanted?.ok) return { ...figures, wanted: null, missing: wanted?.missing ?? null };
  const { perTurn, perUnit } = wanted.value;
  const exact = made * perUnit;
  const { adjustable = true, whole = true } = sensor.expects ?? {};
  const number = whole ? Math.max(1, Math.round(exact)) : Number(exact.toPrecision(6));
  const largest = sensor.converter?.largest ?? usualLargest;
  return {
    ...figures,
    wanted: {
      ...wanted.value,
      error: readingError(made, perTurn),
      exact,
      enter: adjustable ? { number, error: readingError(exact, number) } : null,
      ratios: worthTelling(nearerAndNearer(perTurn / made, largest)),
      largest,
    },
    missing: null,
  };
}

/** "reads 4.2 % fast", "reads 0.35 % slow", "reads true". */
export function readsText(error: number): string {
  const percent = Math.abs(100 * error);
  if (percent < 0.005) return 'reads true';
  const digits = percent < 1 ? 2 : percent < 10 ? 1 : 0;
  return `reads ${Number(percent.toFixed(digits))} % ${error > 0 ? 'fast' : 'slow'}`;
}
