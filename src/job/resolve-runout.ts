/** Run-out of a flange as typed, a total indicator reading or a dial's readings, in adapter coordinates. mm, degrees. */
import { faceRunout, rimRunout } from '../measure/all.ts';
import { turned } from '../measure/words.ts';
import type { Report } from './cross-check-words.ts';
import type { FlangeInput } from './schema.ts';
import { isAround, totalOf } from './schema-readings.ts';

export interface ResolvedRunout {
  /** Total indicator readings, mm. */
  readonly rim: number | null;
  readonly face: number | null;
  /** Half-width of the doubt of a total that was read as one number, mm; left out where readings tell a direction, and of a pattern's limit. */
  readonly rimDoubt?: number;
  readonly faceDoubt?: number;
  /** How far the rim's middle stands off the axis and towards which angle, when dial readings tell; half-width of the doubt. */
  readonly rimEccentricity?: { readonly size: number; readonly angle: number; readonly doubt: number } | null;
  /** Greatest less smallest diameter, and the angle of the greatest. */
  readonly rimOvality?: { readonly size: number; readonly angle: number } | null;
  /** Tilt of the face, degrees, the angle at which it stands highest (towards the adapter), and half-width of the tilt's doubt. */
  readonly faceTilt?: { readonly degrees: number; readonly high: number; readonly doubt?: number } | null;
}

/**
 * Dial readings are typed looking at the flange's own face; those of the driven flange are mirrored, x to -x, as its holes are.
 * A face without a stated radius is taken to be read at the rim. What a pattern gives is a limit and no reading: it has no dial's doubt.
 * @param flange typed and pattern joined
 * @param typed run-out as it was typed
 */
export function resolveRunout(
  flange: FlangeInput,
  typed: FlangeInput['runout'],
  side: 'driving' | 'driven',
  report: Report,
): ResolvedRunout {
  const { rim, face } = flange.runout ?? {};
  const [rimTotal, faceTotal] = [totalOf(rim), totalOf(face)];
  const angle = (own: number) => turned(side === 'driven' ? 180 - own : own);
  let resolved: ResolvedRunout = {
    rim: rimTotal?.value ?? null,
    face: faceTotal?.value ?? null,
    ...(rimTotal && typed?.rim !== undefined ? { rimDoubt: rimTotal.doubt } : {}),
    ...(faceTotal && typed?.face !== undefined ? { faceDoubt: faceTotal.doubt } : {}),
  };
  if (isAround(rim)) {
    const read = rimRunout(rim);
    if (read.ok) {
      const { tir, eccentricity, ovality } = read.value;
      resolved = {
        ...resolved,
        rim: tir,
        // Inside a bore the dial is pushed in where the wall is near the axis: opposite the bore's middle.
        rimEccentricity: { ...eccentricity, angle: angle(eccentricity.angle + (rim.inside ? 180 : 0)) },
        rimOvality: ovality === null ? null : { size: ovality.size, angle: angle(ovality.angle) % 180 },
      };
    } else report(`${side}.runout.rim`, read.why);
  }
  if (isAround(face)) {
    if (face.inside) report(`${side}.runout.face.inside`, 'A face is not read inside a bore. Delete inside.');
    const read = faceRunout(face, face.radius ?? (flange.outside?.value ?? 0) / 2);
    if (read.ok) {
      const { tir, tilt } = read.value;
      resolved = {
        ...resolved,
        face: tir,
        faceTilt: { degrees: tilt.degrees, high: angle(tilt.high), doubt: tilt.doubt },
      };
    } else if (face.radius !== undefined || flange.outside !== undefined) report(`${side}.runout.face`, read.why);
  }
  return resolved;
}
