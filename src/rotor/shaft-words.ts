/** Shims and angles in plain words. */
import type { Shim } from './shaft-shims.ts';

const deg = (value: number): string => `${Number(value.toFixed(2))} ${Math.abs(value) === 1 ? 'degree' : 'degrees'}`;

/**
 * What to do for one shim, a sentence. Empty for none.
 * @param last name of the shaft that the wedge turns
 */
export function shimWords({ what, by }: Shim, last: string): string {
  if (by === 0) return '';
  const size = Math.abs(by);
  if (what === 'wedge') {
    const way = by > 0 ? 'up' : 'down';
    const thick = by > 0 ? ['away from', 'towards'] : ['towards', 'away from'];
    return `Wedge of ${deg(size)}, the near end (nose) of the ${last} ${way}: springs above the axle, its thick end ${thick[0]} the nose; springs below, ${thick[1]} it.`;
  }
  const thing = what === 'mount' ? 'gearbox mount' : 'centre bearing';
  return by > 0
    ? `Raise the ${thing} by ${Number(size.toFixed(1))} mm.`
    : `Lower the ${thing} by ${Number(size.toFixed(1))} mm.`;
}

/** Shims in a few words, for a heading: "2 degrees, nose up; mount 5 mm up". */
export function shimsInShort(shims: readonly Shim[]): string {
  const parts = shims.flatMap(({ what, by }) => {
    if (by === 0) return [];
    if (what === 'wedge') return [`${deg(Math.abs(by))}, nose ${by > 0 ? 'up' : 'down'}`];
    return [`${what} ${Number(Math.abs(by).toFixed(1))} mm ${by > 0 ? 'up' : 'down'}`];
  });
  return parts.length === 0 ? 'none needed' : parts.join('; ');
}
