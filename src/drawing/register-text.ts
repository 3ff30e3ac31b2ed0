/** Registers in words: a register that goes round the whole bolting face is a ring or a step, not a recess or a spigot. */
import type { Feature, TurnedPart } from '../model/part.ts';

/** Off the axis: the holes of one face's own pattern. Bolts through both flanges belong to one face only. */
function ownHoles(part: TurnedPart, side: Feature['side']): { x: number; y: number }[] {
  const ids = part.features.filter((f) => f.side === side).map((f) => f.id);
  return part.drillings.filter((d) => ids.includes(d.feature) && Math.hypot(d.x, d.y) > 1e-6);
}

/** Whether both flanges are held by the same bolts: then one of the two faces has no holes of its own. */
export const boltsAreShared = (part: TurnedPart): boolean =>
  ownHoles(part, 'driving').length === 0 || ownHoles(part, 'driven').length === 0;

/** The register of one face; undefined where there is none. */
export const registerOf = (part: TurnedPart, side: 'driving' | 'driven'): Feature | undefined =>
  part.features.find((f) => f.side === side && (f.purpose === 'spigot' || f.purpose === 'recess'));

/** Whether a register goes round the whole bolting face: every hole of its pattern lies within it. */
export function isAtRim(part: TurnedPart, register: Feature): boolean {
  const own = ownHoles(part, register.side);
  const holes = own.length > 0 ? own : ownHoles(part, register.side === 'driven' ? 'driving' : 'driven');
  const r = (register.diameter ?? 0) / 2;
  return holes.length > 0 && holes.every((h) => Math.hypot(h.x, h.y) < r);
}

/** A feature's label; a register at the rim is called what it looks like. */
export function featureText(part: TurnedPart, feature: Feature): string {
  const { purpose, side } = feature;
  if ((purpose !== 'spigot' && purpose !== 'recess') || !isAtRim(part, feature)) return feature.label;
  return `${side} register ${purpose === 'recess' ? 'ring' : 'step'}`;
}
