/** Polygons with rounded corners, as exact contours. */
import type { ContourVertex } from '../model/sheet.ts';
import { atan2, tan } from '../units/trig.ts';

/** A corner of a polygon and the radius that it is rounded to, mm; 0 leaves it sharp. */
export interface RoundedCorner {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Shorter stretches than this, mm, are left out: far below what any machine sees. */
const nothing = 1e-5;

/**
 * The polygon with its corners rounded, hollow ones too, in its own direction. A radius that has no room on one of its two edges
 * becomes the largest that has: neighbours share an edge by halves.
 */
export function roundedPolygon(corners: readonly RoundedCorner[]): ContourVertex[] {
  const out: ContourVertex[] = [];
  corners.forEach((corner, i) => {
    const before = corners.at(i - 1) as RoundedCorner;
    const after = corners[(i + 1) % corners.length] as RoundedCorner;
    const [ax, ay, al] = unit(corner, before);
    const [bx, by, bl] = unit(corner, after);
    const turn = atan2(-ax * by + ay * bx, -ax * bx - ay * by);
    const half = Math.abs(tan(turn / 2));
    // Where only one end of an edge is rounded, it may take the whole of it.
    const room = Math.min(al / (before.r > 0 ? 2 : 1), bl / (after.r > 0 ? 2 : 1));
    const r = half < 1e-9 ? 0 : Math.min(corner.r, room / half);
    const back = r * half;
    if (back < nothing) {
      out.push({ x: corner.x, y: corner.y, bulge: 0 });
      return;
    }
    out.push({ x: corner.x + back * ax, y: corner.y + back * ay, bulge: tan(turn / 4) });
    out.push({ x: corner.x + back * bx, y: corner.y + back * by, bulge: 0 });
  });
  return out.filter((v, i) => {
    const next = out[(i + 1) % out.length] as ContourVertex;
    return Math.hypot(next.x - v.x, next.y - v.y) > nothing;
  });
}

/** Unit vector from one corner to another, and its length. */
function unit(from: RoundedCorner, to: RoundedCorner): [number, number, number] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return [(to.x - from.x) / length, (to.y - from.y) / length, length];
}
