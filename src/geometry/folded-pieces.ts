/** A folded sheet part as exact pieces: its straights as they are cut, laid where the fold puts them, and true bends between them. */
import type { Contour, SheetPart } from '../model/sheet.ts';
import type { SolidPiece, Tilt } from '../model/solid.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { type BendZone, bendZones, foldOf } from './fold.ts';

/** Beyond any blank, mm. */
const far = 1e4;
/** Edges that differ by less along y run along x, mm. */
const same = 1e-6;

/** Where the fold puts the straight that the place x of the blank lies in. */
export function tiltAt(part: SheetPart, x: number): Tilt {
  const fold = foldOf(part);
  const [[lowX, , lowZ], [highX, , highZ]] = [fold(x, 0, 0), fold(x, 0, 1)];
  const heading = atan2(lowX - highX, highZ - lowZ);
  return { heading, x: lowX - x * cos(heading), z: lowZ - x * sin(heading) };
}

/** The two straight edges of the outline that cross a bend, by their y. */
function edgesAcross(outside: Contour, { from, to }: BendZone, id: string): [number, number] {
  const vertices = outside.kind === 'path' ? outside.vertices : [];
  const ys = vertices.flatMap((a, i) => {
    const b = vertices[(i + 1) % vertices.length] as typeof a;
    const [low, high] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
    const runs = a.bulge === 0 && low <= from + same && high >= to - same && Math.abs(a.y - b.y) < same;
    return runs ? [a.y] : [];
  });
  const [first, second] = ys.sort((a, b) => a - b);
  if (ys.length !== 2 || first === undefined || second === undefined) {
    throw new Error(`Part ${id}: a bend is not crossed by two straight edges of the outline.`);
  }
  return [first, second];
}

/**
 * Pieces of a part with its bends made. Holes must lie clear of the bends. Throws an Error where the outline does not cross each bend in
 * two straight edges along x, or bends overlap.
 */
export function piecesOfFolded(part: SheetPart): SolidPiece[] {
  const zones = bendZones(part);
  const fold = foldOf(part);
  const { outside, holes, thickness } = part;
  const ends = [-far, ...zones.flatMap(({ from, to }) => [from, to]), far];
  const straights = Array.from({ length: zones.length + 1 }, (_, i): SolidPiece => {
    const within = [ends[2 * i], ends[2 * i + 1]] as [number, number];
    // A place inside the straight: its middle, or beside the only bend it has.
    const inner = within.filter((x) => Math.abs(x) < far);
    const at = inner.length === 2 ? (within[0] + within[1]) / 2 : i === 0 ? within[1] - 1 : within[0] + 1;
    const tilt = tiltAt(part, at);
    return { kind: 'extruded', outside, holes, from: 0, to: thickness, within, tilt };
  });
  const bends = zones.map((zone): SolidPiece => {
    const [[lowX, , lowZ], [highX, , highZ]] = [fold(zone.from, 0, 0), fold(zone.from, 0, thickness)];
    const share = (zone.turn > 0 ? zone.radius + thickness : -zone.radius) / thickness;
    return {
      kind: 'bent',
      low: { x: lowX, z: lowZ },
      high: { x: highX, z: highZ },
      axis: { x: lowX + share * (highX - lowX), z: lowZ + share * (highZ - lowZ) },
      turn: zone.turn,
      across: edgesAcross(outside, zone, part.id),
    };
  });
  return straights.flatMap((straight, i) => (bends[i] ? [straight, bends[i]] : [straight]));
}
