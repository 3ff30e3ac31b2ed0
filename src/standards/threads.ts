import type { Designation } from './designation.ts';
import { readDesignation } from './designation.ts';
import { inchesToMm, mmPerInch } from './inch.ts';
import type { MetricThreadRow } from './metric-threads.ts';
import { metricCoarse, metricFine } from './metric-threads.ts';
import type { Lookup, StandardTable } from './table.ts';
import { andThen, found, missing } from './table.ts';
import type { UnifiedThreadRow } from './unified-threads.ts';
import { unifiedThreads } from './unified-threads.ts';

/** A thread of either system in one form: lengths mm, area mm2. */
export interface Thread {
  /** As a drawing writes it: 'M10', 'M10x1.25', '3/8-16 UNC'. */
  readonly designation: string;
  /** The size word of the head, hole and washer tables: 'M10', '3/8', '#10'. */
  readonly size: string;
  readonly system: 'metric' | 'unified';
  readonly series: 'coarse' | 'fine';
  readonly d: number;
  readonly pitch: number;
  readonly d2: number;
  readonly D1: number;
  readonly d3: number;
  readonly stressArea: number;
  readonly tapDrill: number;
  /** Shop name of an inch tap drill: 'No. 7', 'F', '5/16'. */
  readonly tapDrillName?: string;
  readonly source: string;
  readonly memory: boolean;
}

/**
 * The thread that a designation names: 'M10' is coarse, 'M10x1.25' fine, '3/8-16' or '3/8-16 UNC' unified.
 * A bare inch size with UNC or UNF ('3/8 UNC') is enough. Case, spaces and a tolerance class (-6H, -2B) do not matter.
 * Misses list the threads of that size, or the sizes there are.
 */
export function findThread(designation: string): Lookup<Thread> {
  return andThen(readDesignation(designation), (read) =>
    read.system === 'metric' ? findMetric(designation, read) : findUnified(designation, read),
  );
}

/** Every thread in the tables, coarse and fine, metric first. */
export function allThreads(): readonly Thread[] {
  return [
    ...metricCoarse.rows.map((row) => fromMetric(row, metricCoarse)),
    ...metricFine.rows.map((row) => fromMetric(row, metricFine)),
    ...unifiedThreads.rows.map(fromUnified),
  ];
}

function findMetric(asked: string, { d, pitch }: Designation): Lookup<Thread> {
  const coarse = metricCoarse.rows.find((row) => row.d === d);
  if (coarse !== undefined && (pitch === undefined || pitch === coarse.P))
    return found(fromMetric(coarse, metricCoarse));
  const fine = metricFine.rows.find((row) => row.d === d && row.P === pitch);
  if (fine !== undefined) return found(fromMetric(fine, metricFine));
  const sameSize = metricFine.rows.filter((row) => row.d === d).map((row) => row.designation);
  if (coarse !== undefined) {
    return missing(
      `There is no ${asked} in ISO 261 as tabled here; M${d} is ${[`${coarse.designation}x${coarse.P}`, ...sameSize].join(', ')}.`,
    );
  }
  return missing(
    `There is no ${asked} in ISO 261 as tabled here. Listed: ${metricCoarse.rows.map((row) => row.designation).join(', ')}.`,
  );
}

function findUnified(asked: string, read: Designation): Lookup<Thread> {
  const sameSize = unifiedThreads.rows.filter((row) => row.designation.startsWith(`${read.size}-`));
  const fitting = sameSize.filter(
    (row) =>
      (read.tpi === undefined || row.n === read.tpi) && (read.series === undefined || row.series === read.series),
  );
  const [only] = fitting;
  if (only !== undefined && fitting.length === 1) return found(fromUnified(only));
  const names = sameSize.map((row) => `${row.designation} ${row.series}`).join(' or ');
  if (sameSize.length > 0 && read.tpi === undefined)
    return missing(`"${asked}" does not say the pitch; write ${names}.`);
  if (sameSize.length > 0) return missing(`There is no ${asked} in ASME B1.1 as tabled here; that size is ${names}.`);
  const sizes = [...new Set(unifiedThreads.rows.map((row) => row.designation.split('-')[0]))];
  return missing(`There is no ${asked} in ASME B1.1 as tabled here. Listed sizes: ${sizes.join(', ')}.`);
}

function fromMetric(row: MetricThreadRow, table: StandardTable<MetricThreadRow>): Thread {
  return {
    designation: row.designation,
    size: `M${row.d}`,
    system: 'metric',
    series: table === metricCoarse ? 'coarse' : 'fine',
    d: row.d,
    pitch: row.P,
    d2: row.d2,
    D1: row.D1,
    d3: row.d3,
    stressArea: row.As,
    tapDrill: row.drill,
    source: table.edition,
    memory: row.memory ?? false,
  };
}

function fromUnified(row: UnifiedThreadRow): Thread {
  return {
    designation: `${row.designation} ${row.series}`,
    size: row.designation.split('-')[0] ?? row.designation,
    system: 'unified',
    series: row.series === 'UNC' ? 'coarse' : 'fine',
    d: inchesToMm(row.D),
    pitch: mmPerInch / row.n,
    d2: inchesToMm(row.E),
    D1: inchesToMm(row.D1),
    d3: inchesToMm(row.d3),
    stressArea: row.At * mmPerInch * mmPerInch,
    tapDrill: inchesToMm(row.drill),
    tapDrillName: row.drillName,
    source: unifiedThreads.edition,
    memory: row.memory ?? false,
  };
}
