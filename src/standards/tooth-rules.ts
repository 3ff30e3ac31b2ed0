import type { Lookup, StandardTable, TableRow } from './table.ts';
import { lookUp } from './table.ts';

/** How a speed sensor behaves, whatever its maker calls it. */
export const sensorKinds = ['coil', 'hall', 'differential_hall', 'two_channel_hall', 'active_wheel_speed'] as const;
export type SensorKind = (typeof sensorKinds)[number];

/** What may be asked of a wheel, its gap and its speed. */
export interface SensorFigures {
  /** Tooth and valley along the tip circle, radial height, sheet thickness, mm. */
  readonly tooth: number | null;
  readonly toothMost: number | null;
  readonly valley: number | null;
  readonly height: number | null;
  readonly thickness: number | null;
  /** Distance between the two sensing elements, mm; the pitch should be at least twice that. */
  readonly spacing: number | null;
  /** Least and greatest air gap at which it reads, mm. */
  readonly gapLeast: number | null;
  readonly gapMost: number | null;
  /** Slowest and fastest train of teeth that it reads, Hz. */
  readonly frequencyLeast: number | null;
  readonly frequencyMost: number | null;
  /** Least speed of the tips past the sensor, m/s. */
  readonly surfaceSpeed: number | null;
  /** Coldest and hottest it may get, degrees C. */
  readonly coldest: number | null;
  readonly hottest: number | null;
}

export type SensorFigure = keyof SensorFigures;

/** What one kind of speed sensor asks of its toothed target; null where its source is silent. */
export interface ToothRuleRow extends TableRow, SensorFigures {
  readonly sensor: SensorKind;
  readonly title: string;
  /** Least pitch along the tip circle, mm: twice the spacing of the elements. */
  readonly pitch: number | null;
  /** The usual set gap and what setting it may miss by, mm. */
  readonly gap: number | null;
  readonly gapTolerance: number | null;
  /** Tooth over pitch that the sensor's own target uses. */
  readonly ratio: number | null;
  readonly source: string;
  /** Figures of this row that no source confirms. */
  readonly recalled: readonly (SensorFigure | 'pitch' | 'gap')[];
}

/** Least tooth sizes by sensor behaviour. A stamped or cut wheel sensed from the side may be thinner than printed. */
export const toothRules: StandardTable<ToothRuleRow> = {
  id: 'tooth-rules',
  edition: 'Sensor data sheets and manuals',
  title: 'Target teeth by kind of sensor',
  source: 'row by row',
  covers: 'ferromagnetic low-carbon steel targets with straight teeth',
  verified: 'secondary',
  unit: 'mm, Hz, m/s, degrees C',
  memoryFields: ['tooth sizes and gap of the single Hall row', 'that a pitch is at least twice the element spacing'],
  notes: [
    'The target must be ferromagnetic: aluminium, 304, 316 and plastics give no signal.',
    'A steel bolt head or weld that passes the sensor counts as a tooth (common practice).',
    'All teeth for speed: missing teeth mark an angle, add false dips and unbalance.',
    'The single Hall row tells of one coarse target, from memory: many single sensors read narrower valleys. It only cautions.',
  ],
  // biome-ignore format: a table is read row by row
  rows: [
    {
      sensor: 'coil', title: 'coil with magnet (inductive)', tooth: 2.3, toothMost: null, valley: 2.8, height: 3.5,
      thickness: 5, spacing: null, pitch: null, gap: 0.8, gapTolerance: 0.3, gapLeast: 0.2, gapMost: 1.2,
      frequencyLeast: null, frequencyMost: null, surfaceSpeed: 0.381, coldest: -55, hottest: 107, ratio: 0.45, recalled: [],
      source: "crank-wheel page of an engine-control manual: 2.70 and 3.30 deg on 100 mm (2.36 and 2.88 mm, rounded down), height 3.5, thickness 5; gap 0.2 to 1.2 from a diesel workshop manual; 15 in/s from an overview of variable reluctance sensors; temperatures from a maker's list of passive sensors",
    },
    {
      sensor: 'hall', title: 'single Hall element with magnet', tooth: 2.54, toothMost: null, valley: 10.16,
      height: 5.06, thickness: 6.35, spacing: null, pitch: null, gap: 1.5, gapTolerance: 0.5, gapLeast: 1, gapMost: 2,
      frequencyLeast: 2, frequencyMost: 9000, surfaceSpeed: null, coldest: -40, hottest: 150, ratio: null,
      recalled: ['tooth', 'valley', 'height', 'thickness', 'gap', 'gapLeast', 'gapMost'],
      source: 'two gear-tooth sensor data sheets: 2 Hz to 9 kHz, -40 to 150 degrees; the target itself is one coarse wheel, from memory', memory: true,
    },
    {
      sensor: 'differential_hall', title: 'differential Hall with magnet', tooth: 2, toothMost: 4, valley: 2, height: 2,
      thickness: 3, spacing: 2.5, pitch: 5, gap: 1.5, gapTolerance: null, gapLeast: 0.5, gapMost: 2.75,
      frequencyLeast: 0, frequencyMost: 8000, surfaceSpeed: null, coldest: -40, hottest: 115, ratio: 0.5, recalled: ['pitch'],
      source: 'reference-target page of a gear-tooth sensor data sheet; gap 0.5 to 2.75 and 8000 Hz (8000 rpm on 60 teeth) from another; elements 2.5 apart and -40 to 115 degrees from two more; pitch of twice the element spacing from memory',
    },
    {
      sensor: 'two_channel_hall', title: 'two-channel Hall (speed and direction)', tooth: null, toothMost: null, valley: null,
      height: null, thickness: null, spacing: null, pitch: null, gap: 1.5, gapTolerance: null, gapLeast: null, gapMost: null,
      frequencyLeast: 0, frequencyMost: 15000, surfaceSpeed: null, coldest: -40, hottest: 125, ratio: 0.5, recalled: [],
      source: 'data sheet of a speed and direction sensor: typical gap 1.5, near zero speed to 15 kHz, -40 to 125 degrees',
    },
    {
      sensor: 'active_wheel_speed', title: 'active wheel-speed sensor', tooth: null, toothMost: null, valley: null,
      height: 3, thickness: null, spacing: 2.5, pitch: 5, gap: 0.8, gapTolerance: 0.1, gapLeast: 0.2, gapMost: 1.5,
      frequencyLeast: 1, frequencyMost: 2000, surfaceSpeed: null, coldest: -40, hottest: 120, ratio: 0.5, recalled: ['pitch'],
      source: 'encoder-wheel page of a brake-control manual; gap 0.2 to 1.5, 1 to 2000 Hz and -40 to 120 degrees from a workshop manual; elements 2.5 apart from a data sheet, pitch of twice that from memory',
    },
  ],
};

/** The rule row of a sensor kind: 'coil', 'hall', 'differential_hall', 'two_channel_hall' or 'active_wheel_speed'. */
export function toothRule(sensor: string): Lookup<ToothRuleRow> {
  return lookUp(toothRules, 'sensor', sensor);
}

/** What share of the gap tolerance the wheel's run-out may use up (TIR is twice the eccentricity); common practice. */
export const runoutShareOfGapTolerance = 1 / 3;
