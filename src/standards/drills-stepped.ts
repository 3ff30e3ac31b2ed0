import type { StandardTable, TableRow } from './table.ts';

/** One metric drill, mm. */
export interface MetricDrillRow extends TableRow {
  readonly d: number;
}

/** Sizes from `from` to `to` in equal steps, both included, free of binary noise. */
function steps(from: number, to: number, step: number): readonly number[] {
  const count = Math.round((to - from) / step);
  return Array.from({ length: count + 1 }, (_, at) => Math.round((from + at * step) * 1000) / 1000);
}

/**
 * Metric drills that a shop can be expected to have or buy over the counter. Computed from the steps.
 * The standard series is finer (0.05 steps below 3 mm, 0.25 steps from 14 mm up): those are ordered, not kept.
 */
export const metricDrills: StandardTable<MetricDrillRow> = {
  id: 'metric-drills',
  edition: 'Common practice, out of the ISO 235 series',
  title: 'Metric drills usually kept',
  source:
    'common practice: tenths to 14 mm, halves to 32 mm; every size to 25 mm is in the published BS 328 series as well',
  covers: '0.5 to 32 mm',
  verified: 'memory',
  unit: 'mm',
  notes: ['From 14 mm up, a drill is often turned down at the shank to 13 mm, or has a Morse taper.'],
  rows: [...steps(0.5, 14, 0.1), ...steps(14.5, 32, 0.5)].map((d) => ({ d, memory: true as const })),
};

/** One fractional drill, inches. */
export interface FractionalDrillRow extends TableRow {
  /** In lowest terms, as it is stamped: '21/64', '3/8', '1'. */
  readonly fraction: string;
  readonly D: number;
}

function fraction(sixtyFourths: number): string {
  let above = sixtyFourths;
  let below = 64;
  while (above % 2 === 0 && below > 1) {
    above /= 2;
    below /= 2;
  }
  return below === 1 ? `${above}` : `${above}/${below}`;
}

/** Fractional drills, computed: every 64th of an inch up to one inch. */
export const fractionalDrills: StandardTable<FractionalDrillRow> = {
  id: 'asme-b94.11m-fractional',
  edition: 'ASME B94.11M',
  title: 'Fractional drills',
  source: 'computed; the jobber series is published as 1/64 to 1 in by 1/64 in',
  covers: '1/64 to 1 in',
  verified: 'secondary',
  unit: 'in',
  rows: steps(1, 64, 1).map((n) => ({ fraction: fraction(n), D: n / 64 })),
};
