/** Stretches too short to cut, and drawings too far away to trust. mm. */
import { type Stretch, stretchBox, stretchLength } from '../geometry/contour-stretch.ts';
import type { Place } from '../model/preflight.ts';
import type { Piece } from './draw.ts';
import { type FaultLog, short } from './fault-log.ts';
import { joinWithin, tinyLength } from './limits.ts';

export interface Sized {
  /** Pieces without those that are shorter than the gap that is joined anyway. */
  readonly pieces: readonly Piece[];
  readonly far: boolean;
}

/** From the origin, mm, beyond which single-precision readers lose a hundredth of a millimetre. */
const farAway = 100_000;

const startOf = (place: Place, { x1, y1 }: Stretch, unit: number): Place => ({ ...place, x: x1 / unit, y: y1 / unit });

/** Notes tiny stretches and far drawings, and takes out pieces that are nothing but a crumb. */
export function noteSmall(pieces: readonly Piece[], unit: number, log: FaultLog): Sized {
  let far = false;
  const kept = pieces.filter(({ stretches, place, isClosed }) => {
    let length = 0;
    for (const stretch of stretches) {
      const one = stretchLength(stretch);
      length += one;
      if (one < tinyLength) log.add('dxf-tiny-segments', startOf(place, stretch, unit), `${short(one)} mm long`);
      const { xMin, yMin, xMax, yMax } = stretchBox(stretch);
      const away = Math.max(-xMin, -yMin, xMax, yMax);
      if (away > farAway && !far) {
        far = true;
        log.add('dxf-far-away', startOf(place, stretch, unit), `${short(away / 1000)} m from the origin`);
      }
    }
    return isClosed || length >= joinWithin;
  });
  return { pieces: kept, far };
}
