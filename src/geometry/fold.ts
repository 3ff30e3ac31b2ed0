/**
 * Folds a flat blank: where each point of the sheet goes when its bends are made. For blanks whose bend lines all run along y, each
 * from edge to edge. The straight before the first bend keeps its place; y never changes.
 */
import type { BendLine, SheetPart } from '../model/sheet.ts';
import { cos, sin } from '../units/trig.ts';

/** A bend on the blank: where the bent stretch begins and ends along x, and its turn in radians, positive upwards. */
export interface BendZone {
  readonly from: number;
  readonly to: number;
  readonly turn: number;
  readonly radius: number;
}

/** Largest slant of a bend line, mm over its length, that still counts as running along y. */
const straight = 1e-6;

/** The bent stretches of a part in the order of x. @throws on bend lines that do not run along y, or that overlap */
export function bendZones({ bends = [], thickness, id }: Pick<SheetPart, 'bends' | 'thickness' | 'id'>): BendZone[] {
  const zones = bends.map(({ from, to, angle, direction, radius, k }: BendLine): BendZone => {
    if (Math.abs(from.x - to.x) > straight) throw new Error(`Part ${id}: a bend line does not run along y.`);
    const turn = (angle * Math.PI) / 180;
    const half = (turn * (radius + k * thickness)) / 2;
    return { from: from.x - half, to: from.x + half, turn: direction === 'up' ? turn : -turn, radius };
  });
  zones.sort((a, b) => a.from - b.from);
  zones.forEach((zone, i) => {
    const before = zones[i - 1];
    if (before && before.to > zone.from + 1e-9) throw new Error(`Part ${id}: two bends overlap.`);
  });
  return zones;
}

/** Moves a point of the flat sheet (x along, y across, z from 0 to thickness) to its folded place. */
export type Fold = (x: number, y: number, z: number) => readonly [number, number, number];

/** A place on the folded profile with the direction in which the sheet runs on. */
interface Course {
  readonly x: number;
  readonly z: number;
  readonly heading: number;
}

/** Along the lower face from `at`: a point `length` on, at height z over it. */
function straightOn({ x, z, heading }: Course, length: number, height: number): [number, number] {
  const [c, s] = [cos(heading), sin(heading)];
  return [x + length * c - height * s, z + length * s + height * c];
}

/** The same within a bend, a share of the turn on. */
function roundTheBend(at: Course, zone: BendZone, thickness: number, share: number, height: number): [number, number] {
  const up = zone.turn > 0;
  // The bend's axis stands off the lower face: over it by r + t when folding up, under it by r when folding down.
  const axis = up ? zone.radius + thickness : -zone.radius;
  const [ax, az] = straightOn(at, 0, axis);
  const heading = at.heading + share * zone.turn;
  const [c, s] = [cos(heading), sin(heading)];
  const off = height - axis;
  return [ax - off * s, az + off * c];
}

/** The fold of a part. Within a bend every fibre keeps its angle, so that equal steps along x are equal steps of turn. */
export function foldOf(part: Pick<SheetPart, 'bends' | 'thickness' | 'id'>): Fold {
  const zones = bendZones(part);
  const { thickness } = part;
  // Where each straight begins on the lower face.
  const starts: { from: number; at: Course }[] = [{ from: -Infinity, at: { x: 0, z: 0, heading: 0 } }];
  let [from, at] = [0, { x: 0, z: 0, heading: 0 } as Course];
  for (const zone of zones) {
    const [x, z] = straightOn(at, zone.from - from, 0);
    const entry = { x, z, heading: at.heading };
    const [nx, nz] = roundTheBend(entry, zone, thickness, 1, 0);
    from = zone.to;
    at = { x: nx, z: nz, heading: at.heading + zone.turn };
    starts.push({ from, at });
  }
  return (x, y, z) => {
    const index = zones.findLastIndex((zone) => x >= zone.from);
    const zone = zones[index];
    if (zone && x < zone.to) {
      const before = starts[index] as (typeof starts)[number];
      const begun = index === 0 ? 0 : before.from;
      const [ex, ez] = straightOn(before.at, zone.from - begun, 0);
      const share = (x - zone.from) / (zone.to - zone.from);
      const [fx, fz] = roundTheBend({ x: ex, z: ez, heading: before.at.heading }, zone, thickness, share, z);
      return [fx, y, fz];
    }
    const start = starts[index + 1] as (typeof starts)[number];
    const [fx, fz] = straightOn(start.at, x - (index < 0 ? 0 : start.from), z);
    return [fx, y, fz];
  };
}
