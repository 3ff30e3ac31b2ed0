/** What the job's sensor needs: its data sheet where it was typed, else the usual figures of its kind. mm, Hz, m/s, degrees C. */
import { type SensorFigure, type SensorFigures, type ToothRuleRow, toothRule } from '../standards/tooth-rules.ts';
import type { JobInput } from './schema.ts';

export type SensorInput = NonNullable<JobInput['sensor']>;

/** One figure and where it comes from. */
export interface Need {
  readonly value: number;
  /** Typed from the sensor's own data sheet: missing it is no longer a matter of opinion. */
  readonly isOwn: boolean;
  readonly memory: boolean;
  readonly source: string;
}

export interface SensorNeeds {
  readonly kind: ToothRuleRow | null;
  /** "A coil with magnet", "This sensor". */
  readonly title: string;
  readonly direction: 'radial' | 'axial';
  /** A figure, or null where nobody tells. */
  of(figure: SensorFigure | 'pitch'): Need | null;
  /** The gap that is set: as typed, else the usual one of its kind; null where neither is known. */
  readonly gap: { readonly value: number; readonly isGiven: boolean } | null;
}

/** Figures as typed. */
function typed(sensor: SensorInput): Partial<Record<keyof SensorFigures | 'pitch', number | undefined>> {
  return {
    tooth: sensor.tooth,
    toothMost: sensor.tooth_most,
    valley: sensor.valley,
    height: sensor.height,
    thickness: sensor.thickness,
    spacing: sensor.spacing,
    pitch: sensor.pitch ?? (sensor.spacing === undefined ? undefined : 2 * sensor.spacing),
    gapLeast: sensor.gap_range?.least,
    gapMost: sensor.gap_range?.most,
    frequencyLeast: sensor.frequency?.least,
    frequencyMost: sensor.frequency?.most,
    surfaceSpeed: sensor.surface_speed,
    coldest: sensor.temperature?.least,
    hottest: sensor.temperature?.most,
  };
}

/** Seen from the side, valleys go right through and the sheet may be thin (a gear-tooth sensor data sheet). */
const notFromTheSide: readonly string[] = ['thickness', 'height'];

/** What a sensor needs. A kind that no rule knows is a bug. */
export function sensorNeeds(sensor: SensorInput): SensorNeeds {
  const found = sensor.kind === undefined ? null : toothRule(sensor.kind);
  if (found && !found.ok) throw new Error(found.why);
  const kind = found?.value ?? null;
  const own = typed(sensor);
  return {
    kind,
    title: kind ? `${/^[aeiou]/.test(kind.title) ? 'An' : 'A'} ${kind.title}` : 'This sensor',
    direction: sensor.direction,
    of(figure) {
      const value = own[figure];
      if (value !== undefined) return { value, isOwn: true, memory: false, source: "the sensor's own data sheet" };
      const usual = kind?.[figure] ?? null;
      if (kind === null || usual === null) return null;
      if (sensor.direction === 'axial' && notFromTheSide.includes(figure)) return null;
      return { value: usual, isOwn: false, memory: kind.recalled.includes(figure), source: kind.source };
    },
    gap:
      sensor.gap !== undefined
        ? { value: sensor.gap, isGiven: true }
        : sensor.gap_range !== undefined
          ? { value: (sensor.gap_range.least + sensor.gap_range.most) / 2, isGiven: false }
          : kind !== null && kind.gap !== null
            ? { value: kind.gap, isGiven: false }
            : null,
  };
}
