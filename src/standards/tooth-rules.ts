import type { Lookup, StandardTable, TableRow } from './table.ts';
import { lookUp } from './table.ts';

/** How a speed sensor behaves, whatever its maker calls it. */
export type SensorKind = 'coil' | 'hall' | 'differential_hall' | 'active_wheel_speed';

/**
 * What one kind of speed sensor asks of its toothed target, mm; null where its source is silent.
 * `gap` and `gapTolerance` are the set air gap and what it may vary in service.
 */
export interface ToothRuleRow extends TableRow {
  readonly sensor: SensorKind;
  readonly title: string;
  readonly tooth: number | null;
  readonly toothMost: number | null;
  readonly valley: number | null;
  readonly height: number | null;
  readonly thickness: number | null;
  /** Least pitch along the tip circle. */
  readonly pitch: number | null;
  readonly gap: number | null;
  readonly gapTolerance: number | null;
  /** Tooth over pitch that the sensor's own target uses. */
  readonly ratio: number | null;
  readonly source: string;
}

/** Least tooth sizes by sensor behaviour. A stamped or cut wheel sensed from the side may be thinner than printed. */
export const toothRules: StandardTable<ToothRuleRow> = {
  id: 'tooth-rules',
  edition: 'Sensor data sheets and manuals',
  title: 'Target teeth by kind of sensor',
  source: 'row by row',
  covers: 'ferromagnetic low-carbon steel targets with straight teeth',
  verified: 'secondary',
  unit: 'mm',
  memoryFields: ['the single Hall row', 'the pitch of the differential Hall row'],
  notes: [
    'The target must be ferromagnetic: aluminium, 304, 316 and plastics give no signal.',
    'A steel bolt head or weld that passes the sensor counts as a tooth (common practice).',
    'All teeth for speed: missing teeth mark an angle, add false dips and unbalance.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    {
      sensor: 'coil', title: 'coil with magnet (inductive)', tooth: 2.3, toothMost: null, valley: 2.8, height: 3.5,
      thickness: 5, pitch: null, gap: 0.8, gapTolerance: 0.3, ratio: 0.45,
      source: 'crank-wheel page of an engine-control manual: 2.70 and 3.30 deg on 100 mm (2.36 and 2.88 mm, rounded down), height 3.5, thickness 5',
    },
    {
      sensor: 'hall', title: 'single Hall element with magnet', tooth: 2.54, toothMost: null, valley: 10.16,
      height: 5.06, thickness: 6.35, pitch: null, gap: 1.5, gapTolerance: 0.5, ratio: null,
      source: 'a gear-tooth sensor data sheet, from memory', memory: true,
    },
    {
      sensor: 'differential_hall', title: 'differential Hall with magnet', tooth: 2, toothMost: 4, valley: 2, height: 2,
      thickness: 3, pitch: 5, gap: null, gapTolerance: null, ratio: 0.5,
      source: 'reference-target page of a gear-tooth sensor data sheet; pitch of twice the element spacing from memory',
    },
    {
      sensor: 'active_wheel_speed', title: 'active wheel-speed sensor', tooth: null, toothMost: null, valley: null,
      height: 3, thickness: null, pitch: null, gap: 0.8, gapTolerance: 0.1, ratio: 0.5,
      source: 'encoder-wheel page of a brake-control manual',
    },
  ],
};

/** The rule row of a sensor kind: 'coil', 'hall', 'differential_hall' or 'active_wheel_speed'. */
export function toothRule(sensor: string): Lookup<ToothRuleRow> {
  return lookUp(toothRules, 'sensor', sensor);
}

/** What share of the gap tolerance the wheel's run-out may use up (TIR is twice the eccentricity); common practice. */
export const runoutShareOfGapTolerance = 1 / 3;
