/** Vise flats where the job leaves them open: deep enough for a jaw, clear of every hole, turned to where there is most metal. */
import type { Drilling } from '../model/part.ts';
import { cos, sin } from '../units/trig.ts';

/** Flats are cut this deep into the rim on each side, as a share of the outside diameter. Common practice: a jaw needs a land. */
const flatShare = 0.02;
/** Shallowest flat worth cutting, mm on each side. Common practice: on a 100 mm part it is a land 14 mm wide. */
const leastCut = 0.5;
/** The direction that is used unless another leaves more metal: upright, as the part is drawn. */
const usualAngle = 90;

export interface ChosenFlats {
  /** Distance across, mm. */
  readonly across: number;
  /** Direction of the flats' normals, whole degrees: it is set on a dividing head or by a square. */
  readonly angle: number;
  /** Least outside diameter on which these flats are worth cutting, mm. */
  readonly outside: number;
}

/** How far the drillings reach from the axis along a direction, either way, mm. */
function reachAlong(drillings: readonly Drilling[], degrees: number): number {
  const c = cos((degrees * Math.PI) / 180);
  const s = sin((degrees * Math.PI) / 180);
  return Math.max(
    0,
    ...drillings.map(({ x, y, profile }) => Math.abs(x * c + y * s) + Math.max(...profile.map(({ r }) => r))),
  );
}

/**
 * Two opposite flats on a part.
 * @param drillings every hole of the part, placed
 * @param outside outside diameter, mm
 * @param web least metal between a hole and a flat, mm
 */
export function flatsFor(drillings: readonly Drilling[], outside: number, web: number): ChosenFlats {
  const usual = Math.floor(outside * (1 - 2 * flatShare));
  const needed = (degrees: number) => 2 * (reachAlong(drillings, degrees) + web);
  let angle = usualAngle;
  if (needed(angle) > usual) {
    for (let degrees = 0; degrees < 180; degrees++) if (needed(degrees) < needed(angle) - 1e-9) angle = degrees;
  }
  const across = Math.max(usual, Math.ceil(needed(angle) * 2 - 1e-9) / 2);
  return { across, angle, outside: Math.ceil(across + 2 * leastCut - 1e-9) };
}

/** Flats asked for by their distance: the direction that leaves most metal, the usual one where it makes no difference. */
export function flatsAcross(drillings: readonly Drilling[], across: number, web: number): Omit<ChosenFlats, 'outside'> {
  const room = (degrees: number) => across / 2 - reachAlong(drillings, degrees);
  let angle = usualAngle;
  if (room(angle) < web) {
    for (let degrees = 0; degrees < 180; degrees++) if (room(degrees) > room(angle) + 1e-9) angle = degrees;
  }
  return { across, angle };
}
