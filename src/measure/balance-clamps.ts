/** Two band clamps for a correction: where their heads go, said for the bench. */

import { type Arrow, angleOf, sizeOf } from '../formulas/arrows.ts';
import { type ClampSetting, setClamps } from '../formulas/band-clamps.ts';
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { grams } from './balance-speeds.ts';
import { typedMass } from './balance-typed.ts';
import { pieces } from './typed.ts';
import { mm, tidy, turned } from './words.ts';

export interface PlacedClamps {
  readonly masses: readonly [number, number];
  readonly setting: ClampSetting;
  /** Angles of the two heads from the mark, degrees; null when the clamps cannot make the correction. */
  readonly angles: readonly [number, number] | null;
  readonly lines: readonly string[];
  readonly notes: readonly string[];
}

/** "14 g" for two alike, "14 g, 12.5 g" for two that are not. */
export function typedClamps(text: string): Lookup<readonly [number, number]> {
  const masses: number[] = [];
  for (const piece of pieces(text)) {
    const mass = typedMass(piece, 'Clamp');
    if (!mass.ok) return mass;
    masses.push(mass.value);
  }
  const [one, two = one] = masses;
  return one === undefined || two === undefined || masses.length > 2
    ? missing('--clamp is what the head of each of the two clamps weighs: "14 g", or "14 g, 12.5 g".')
    : found([one, two] as const);
}

/** Below this share of both clamps the correction hangs on single degrees. Common practice. */
const slight = 0.1;

/** @param radius of the shaft, mm, for distances round it; null when not given */
export function placeClamps(correction: Arrow, masses: readonly [number, number], radius: number | null): PlacedClamps {
  const wanted = sizeOf(correction);
  const way = angleOf(correction);
  const setting = setClamps(wanted, masses);
  const told = masses[0] === masses[1] ? `two of ${grams(masses[0])}` : masses.map(grams).join(' and ');
  if (setting.kind === 'too light')
    return {
      masses,
      setting,
      angles: null,
      lines: [
        `clamps: ${told} side by side make ${grams(masses[0] + masses[1])}, less than the ${grams(wanted)} wanted: each head must weigh ${grams(setting.least)} or more; about ${grams(0.7 * wanted)} leaves room to turn them`,
      ],
      notes: [],
    };
  if (setting.kind === 'too unlike')
    return {
      masses,
      setting,
      angles: null,
      lines: [
        `clamps: ${told} opposite each other still make ${grams(setting.least)}, more than the ${grams(wanted)} wanted: take two alike, or lighter ones`,
      ],
      notes: [],
    };
  const [first, second] = setting.turns;
  const angles = [turned(way + first), turned(way - second)] as const;
  const place = (angle: number) =>
    `${tidy(turned(angle), 0)} degrees${radius === null ? '' : ` (${mm((turned(angle) * Math.PI * radius) / 180, 0)} round from the mark)`}`;
  const isSlight = wanted < slight * (masses[0] + masses[1]);
  return {
    masses,
    setting,
    angles,
    lines: [
      `clamps: ${told}; heads at ${place(angles[0])} and ${place(angles[1])}, ${tidy(first, 0)}${tidy(first, 0) === tidy(second, 0) ? '' : ` and ${tidy(second, 0)}`} degrees either side of the wanted place`,
      `clamps: one degree more or less on both changes their sum by ${grams(Math.abs(setting.gramsPerDegree))}`,
    ],
    notes: [
      ...(isSlight
        ? [
            'The clamps stand almost opposite each other, where a degree counts for much: lighter ones are easier to set.',
          ]
        : []),
      'Only what a clamp head weighs more than the plain band counts: weigh the clamp, and take off the band (its weight for each mm times the way round the shaft).',
    ],
  };
}
