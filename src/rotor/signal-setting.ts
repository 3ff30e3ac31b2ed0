/** What the study of the signal starts from: the job's sensor and what the chain allows, and what is taken where nobody said. */
import { stackOf } from '../formulas/chain.ts';
import type { Joint } from '../job/joint.ts';
import { sensorNeeds } from '../job/sensor-needs.ts';
import type { ToothWords } from '../job/wheel-form.ts';
import { linksTo } from './links.ts';
import { wheelCut } from './wheel-links.ts';

/** What the study started from, and what it took where nobody said. */
export interface SignalSetting {
  /** "coil with magnet (inductive)" */
  readonly sensor: string;
  readonly isCoil: boolean;
  /** Set air gap, mm; width of pole or element; distance between two that are subtracted, or null. */
  readonly gap: number;
  readonly pole: number;
  readonly spacing: number | null;
  /** How far the teeth's middle is off the axis, mm, and what the chain would allow at worst. */
  readonly eccentricity: number;
  readonly worstEccentricity: number;
  /** How far each tooth may stand beside its place, mm. */
  readonly toothError: number;
  /** Sentences: what was taken without being told. */
  readonly taken: readonly string[];
}

/** Pole of a coil whose width nobody gave, mm; a Hall element is small. Common practice. */
const usualPole = 3;
const usualElement = 0.3;
/** Gap where none is known, mm. Common practice. */
export const usualGap = 1;
/** A wheel that would run out further than this share of its gap is drawn at it: beyond, it touches. */
export const mostOfGap = 0.9;
/** Kinds that read the difference of two elements. */
const differential: readonly string[] = ['differential_hall', 'active_wheel_speed'];

/**
 * The setting of a study.
 * @param wobble how far the face goes to and fro before a sensor that looks along the axis, mm; null where it looks at the tips
 */
export function settingOf(
  joint: Joint,
  sensor: NonNullable<Joint['job']['sensor']>,
  { tooth }: ToothWords,
  wobble: number | null,
): SignalSetting {
  const needs = sensorNeeds(sensor);
  const isCoil = sensor.kind === 'coil';
  const gap = needs.gap?.value ?? usualGap;
  const pole = sensor.pole ?? (isCoil ? usualPole : usualElement);
  const spacing = differential.includes(sensor.kind ?? '') ? (needs.of('spacing')?.value ?? null) : null;
  const worst = stackOf(linksTo(joint, 'teeth')).worst;
  // Past a face the wheel does not come nearer by what it is off centre: only the times change.
  const eccentricity = wobble === null ? Math.min(worst, mostOfGap * gap) : worst;
  const toothError = wheelCut(joint) / 2;
  const mm = (value: number) => `${Number(value.toFixed(3))} mm`;
  return {
    sensor: needs.kind?.title ?? 'sensor',
    isCoil,
    gap,
    pole,
    spacing,
    eccentricity,
    worstEccentricity: worst,
    toothError,
    taken: [
      ...(needs.gap?.isGiven ? [] : [`gap ${mm(gap)}, usual for the kind (sensor.gap)`]),
      ...(sensor.pole === undefined ? [`${isCoil ? 'pole' : 'element'} ${mm(pole)} wide (sensor.pole)`] : []),
      ...(spacing !== null && sensor.spacing === undefined ? [`elements ${mm(spacing)} apart (sensor.spacing)`] : []),
      ...(wobble !== null
        ? [
            `off centre by ${mm(eccentricity)}, the worst the links allow; the face goes to and fro by ${mm(wobble)}, nearest at ${tooth} 1`,
          ]
        : eccentricity < worst
          ? [`off centre by ${mm(eccentricity)} only: ${mm(worst)}, which the links allow, would touch`]
          : [`off centre by ${mm(eccentricity)}, the worst the links allow, narrowest at tooth 1`]),
      `each ${tooth} up to ${mm(toothError)} beside its place, by chance: half the tolerance of the cut, common practice`,
    ],
  };
}
