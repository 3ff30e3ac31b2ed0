/**
 * How deep the tool goes, hole by hole. Heights are those of a read-out whose zero is the face of the side that is worked: up is plus.
 * They come from the part model, so a hole that starts on a spigot, or comes out on one, has the length it really has. mm.
 */
import type { Joint } from '../job/joint.ts';
import { tan } from '../units/trig.ts';
import type { Cut, HolePlace, HoleSet, WorkFace } from './hole-table.ts';

/** Where one hole begins and ends. */
export interface HoleLevels {
  /** Metal that the tool meets first. */
  readonly surface: number;
  /** Where a through hole comes out; null for a blind one. */
  readonly exit: number | null;
}

/** Included angle of the spot drill, degrees: its depth is half of the width that it leaves. Common practice. */
export const spotAngle = 90;
/** A drill is run this far beyond the far face after its point, mm. Common practice. */
export const breakThrough = 1;
/** A reamer's lead, and the leading turns of a tap, that must leave a through hole. Common practice. */
const reamerLead = 3;
const tapLeadTurns = 3;
/** In a blind hole a tap with a short lead runs this many turns past the full thread; the drill goes three and more beyond it. */
const blindLeadTurns = 2;

/** Levels of a hole, seen from the side it is worked from. Throws an Error for a drilling that the part has not. */
export function levelsOf(joint: Joint, from: WorkFace, hole: Pick<HolePlace, 'drilling'>): HoleLevels {
  const drilling = joint.adapter.drillings.find(({ id }) => id === hole.drilling);
  const [low, high] = [drilling?.profile[0], drilling?.profile[drilling.profile.length - 1]];
  if (!low || !high) throw new Error(`the part has no drilling ${hole.drilling}`);
  const { thickness } = joint.adapterSpec;
  return from === 'driven'
    ? { surface: high.z - thickness, exit: low.r > 0 ? low.z - thickness : null }
    : { surface: 0 - low.z, exit: high.r > 0 ? 0 - high.z : null };
}

/** Highest metal over the face of a side: the top of its spigot or raised ring, or the face itself. */
export function highestOver(joint: Joint, from: WorkFace): number {
  const { outer } = joint.adapter;
  const heights = outer.map(({ z }) => (from === 'driven' ? z - joint.adapterSpec.thickness : 0 - z));
  return Math.max(0, ...heights);
}

/** Length of a drill's point. */
export const pointLength = (diameter: number, angle: number): number => diameter / 2 / tan((angle * Math.PI) / 360);

/**
 * Height of the tool's tip at the bottom of a cut.
 * @param spot width that the spot drill of this set-up has
 * @param pitch of the set's thread, where it has one
 */
export function tipOf(
  cut: Cut,
  { below }: Pick<HoleSet, 'below'>,
  { surface, exit }: HoleLevels,
  { spot, pitch }: { readonly spot: number; readonly pitch: number },
): number {
  switch (cut.op) {
    case 'spot':
      return surface - pointLength(Math.min(cut.diameter, spot), spotAngle);
    case 'drill': {
      const point = pointLength(cut.diameter, cut.point);
      // A hole drilled so deep that it comes out is a through hole, whatever it was meant to be.
      return cut.depth === null ? (exit ?? 0) - point - breakThrough : -below - cut.depth - point;
    }
    case 'counterbore':
      return -below - cut.depth;
    case 'countersink':
      return -below - pointLength(cut.diameter, cut.angle);
    case 'ream':
      return cut.depth === null ? (exit ?? 0) - reamerLead : -below - cut.depth;
    case 'tap':
      return cut.depth === null ? (exit ?? 0) - tapLeadTurns * pitch : -below - (cut.depth + blindLeadTurns * pitch);
  }
}
