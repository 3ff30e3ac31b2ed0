/** The area that discs cover together, within a disc with flats or without bounds, as the lines and arcs that bound it. */
import { hypot } from '../units/hypot.ts';
import { acos, atan2, cos, sin } from '../units/trig.ts';
import type { Stretch } from './contour-stretch.ts';
import type { FlatsPlane } from './turned-curves.ts';

/** mm. */
export interface Disc {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** A disc about the origin, less what two flats cut off. mm */
export interface Bounds {
  readonly r: number;
  readonly flats: FlatsPlane | null;
}

const turn = 2 * Math.PI;
/** Outlines that only touch, or cross by less than this, are taken for outlines that do not meet, mm. */
const slack = 1e-9;

const within = ({ x, y }: Disc, reach: number, px: number, py: number) =>
  reach > 0 && (px - x) ** 2 + (py - y) ** 2 < reach * reach;
/** A disc covers what lies in it and not merely on its edge... */
const covers = (disc: Disc, px: number, py: number) => within(disc, disc.r - slack, px, py);
/** ...and bounds leave what lies in them or on their edge. */
const leaves = (rim: Disc, px: number, py: number) => within(rim, rim.r + slack, px, py);

/** Angles on a circle at which another circle meets it. */
function meetingCircle(circle: Disc, other: Disc): number[] {
  const [dx, dy] = [other.x - circle.x, other.y - circle.y];
  const d = hypot(dx, dy);
  const cosine = (d * d + circle.r ** 2 - other.r ** 2) / (2 * d * circle.r);
  if (!(Math.abs(cosine) < 1)) return [];
  const [middle, half] = [atan2(dy, dx), acos(cosine)];
  return [middle - half, middle + half];
}

/** Angles on a circle at which the planes of the flats meet it. */
function meetingFlats({ x, y, r }: Disc, { half, angle, nx, ny }: FlatsPlane): number[] {
  const offset = x * nx + y * ny;
  return [half, -half].flatMap((plane) => {
    const cosine = (plane - offset) / r;
    return Math.abs(cosine) < 1 ? [angle - acos(cosine), angle + acos(cosine)] : [];
  });
}

/** The pieces of a circle, counter-clockwise, whose middle is kept. */
function arcsOf({ x, y, r }: Disc, cuts: readonly number[], keeps: (px: number, py: number) => boolean): Stretch[] {
  if (!(r > 0)) return [];
  const sorted = cuts.map((a) => ((a % turn) + turn) % turn).sort((a, b) => a - b);
  const starts = sorted.length > 0 ? sorted : [0];
  return starts.flatMap((start, i): Stretch[] => {
    const sweep = (starts[i + 1] ?? (starts[0] as number) + turn) - start;
    const middle = start + sweep / 2;
    if (!(sweep > 0) || !keeps(x + r * cos(middle), y + r * sin(middle))) return [];
    const at = (a: number) => [x + r * cos(a), y + r * sin(a)] as const;
    const [[x1, y1], [x2, y2]] = [at(start), at(start + sweep)];
    return [{ kind: 'arc', x1, y1, x2, y2, x, y, r, start, sweep }];
  });
}

/** The pieces of both flats that lie in a disc about the origin and in one of the discs, counter-clockwise about the origin. */
function flatsWithin(discs: readonly Disc[], { r, flats }: Bounds): Stretch[] {
  if (!flats || !(r > flats.half)) return [];
  const { half, nx, ny } = flats;
  const reach = Math.sqrt((r - half) * (r + half));
  return ([1, -1] as const).flatMap((side): Stretch[] => {
    // Along the flat: t from its middle, in the direction of travel.
    const at = (t: number) => [side * (half * nx - t * ny), side * (half * ny + t * nx)] as const;
    const cuts = discs.flatMap((disc) => {
      const off = disc.x * nx + disc.y * ny - side * half;
      const along = side * (disc.y * nx - disc.x * ny);
      const w = Math.sqrt(Math.max(0, disc.r ** 2 - off ** 2));
      return w > 0 ? [along - w, along + w] : [];
    });
    const stops = [-reach, ...cuts.filter((t) => Math.abs(t) < reach).sort((a, b) => a - b), reach];
    return stops.slice(1).flatMap((to, i): Stretch[] => {
      const from = stops[i] as number;
      const [px, py] = at((from + to) / 2);
      if (!(to > from) || !discs.some((disc) => covers(disc, px, py))) return [];
      const [[x1, y1], [x2, y2]] = [at(from), at(to)];
      return [{ kind: 'line', x1, y1, x2, y2 }];
    });
  });
}

/**
 * What bounds the area that the discs cover together, in no order, the area on the left of each stretch.
 * @param discs no two of them alike
 * @param bounds only what lies within these counts; null for all of it
 */
export function discUnion(discs: readonly Disc[], bounds: Bounds | null): Stretch[] {
  const flats = bounds?.flats ?? null;
  const rim = bounds ? { x: 0, y: 0, r: bounds.r } : null;
  const between = (px: number, py: number) => !flats || Math.abs(px * flats.nx + py * flats.ny) < flats.half + slack;
  const walls = discs.flatMap((disc) => {
    const others = discs.filter((other) => {
      return other !== disc && (other.x - disc.x) ** 2 + (other.y - disc.y) ** 2 < (other.r + disc.r) ** 2;
    });
    const cuts = [...others, ...(rim ? [rim] : [])].flatMap((other) => meetingCircle(disc, other));
    return arcsOf(disc, flats ? [...cuts, ...meetingFlats(disc, flats)] : cuts, (px, py) => {
      const bounded = !rim || (leaves(rim, px, py) && between(px, py));
      return bounded && !others.some((other) => covers(other, px, py));
    });
  });
  if (!bounds || !rim) return walls;
  const cuts = discs.flatMap((disc) => meetingCircle(rim, disc));
  const edge = arcsOf(rim, flats ? [...cuts, ...meetingFlats(rim, flats)] : cuts, (px, py) => {
    return between(px, py) && discs.some((disc) => covers(disc, px, py));
  });
  return [...walls, ...edge, ...flatsWithin(discs, bounds)];
}
