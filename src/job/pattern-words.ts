/** A known flange pattern in words. */
import type { FlangePreset, NearMissPair } from './flange-presets.ts';

export function registerWords({ register }: FlangePreset): string {
  if (!register) return 'no register known';
  const shape = register.gender === 'male' ? 'spigot' : 'recess';
  return `${shape} ${register.diameter}${register.fit ? ` ${register.fit}` : ''}${register.depth ? ` x ${register.depth}` : ''}`;
}

export function holesWords({ holes }: FlangePreset): string {
  if (!holes) return 'holes not known';
  const size = holes.thread ?? (holes.diameter === undefined ? 'size not known' : `dia ${holes.diameter}`);
  return `${holes.count} holes on ${holes.circle}, ${size}`;
}

/** How far its numbers can be trusted. */
export const trustWords = ({ memory }: FlangePreset): string =>
  memory.length > 0 ? `FROM MEMORY, measure these: ${memory.join(', ')}` : 'every value here was read in a source';

/** What looks like it and is not, a line each. Lengths in mm. */
export function alikeWords(preset: FlangePreset, nearMisses: readonly NearMissPair[]): string[] {
  const stem = preset.id.replace(/-(companion|shaft)$/, '');
  return nearMisses
    .filter(({ a, b }) => [a, b].some((id) => id === stem || id === preset.id))
    .map(
      ({ a, b, circles, mismatch }) =>
        `looks like ${a === stem || a === preset.id ? b : a} and is not: circles ${circles[0]} and ${circles[1]}, holes ${mismatch} mm out each`,
    );
}
