/** A turned part and a sheet part as pieces for an exact modeller. Engravings are left out: the shop stamps or marks them. */
import type { Profile, ProfilePoint, TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';
import type { NamedWall, Solid, SolidPiece } from '../model/solid.ts';
import { cos, sin } from '../units/trig.ts';
import { piecesOfFolded } from './folded-pieces.ts';
import { type Curve, curvesOf, type FlatsPlane } from './turned-curves.ts';

/** Stretches that follow each other without a gap, as profiles. */
function profilesOf(curve: Curve): Profile[] {
  const runs: ProfilePoint[][] = [];
  let end = Number.NaN;
  for (const { z0, z1, r0, r1 } of curve.stretches) {
    const run = runs.at(-1);
    if (run === undefined || z0 !== end) runs.push([{ z: z0, r: r0 }]);
    else if (run.at(-1)?.r !== r0) run.push({ z: z0, r: r0 });
    runs.at(-1)?.push({ z: z1, r: r1 });
    end = z1;
  }
  return runs;
}

const revolved = (curve: Curve): SolidPiece[] =>
  profilesOf(curve).map((profile) => ({ kind: 'revolved', x: curve.x, y: curve.y, profile }));

/** A block over one flat, wider and longer than the part. */
function blockOver({ half, angle }: FlatsPlane, turn: number, reach: number, from: number, to: number): SolidPiece {
  const [c, s] = [cos(angle + turn), sin(angle + turn)];
  const corner = (u: number, v: number) => ({ x: u * c - v * s, y: u * s + v * c, bulge: 0 });
  const vertices = [
    corner(half, -reach),
    corner(half + reach, -reach),
    corner(half + reach, reach),
    corner(half, reach),
  ];
  return { kind: 'extruded', outside: { kind: 'path', feature: 'flats', vertices }, holes: [], from, to };
}

/** Walls of tapped holes, named by their threads: the narrowest cylinder of each. */
function threadWalls(part: TurnedPart): NamedWall[] {
  return part.drillings.flatMap(({ id, feature, x, y, profile }) => {
    const thread = part.features.find((f) => f.id === feature)?.thread;
    const radii = profile.flatMap((p, i) => {
      const next = profile[i + 1];
      return next && next.z > p.z && next.r === p.r ? [p.r] : [];
    });
    return thread === undefined || radii.length === 0
      ? []
      : [{ x, y, radius: Math.min(...radii), name: `thread ${thread} ${id}` }];
  });
}

/**
 * A turned part: its outside, less its drillings (those on one centre merged), less what lies beyond its flats. Tapped holes stand at
 * the size of their drill. Throws a RangeError on a profile that is not one.
 */
export function solidOfTurned(part: TurnedPart): Solid {
  const { outer, drillings, flats, heights } = curvesOf(part);
  const reach = 1 + Math.max(...part.outer.map((p) => p.r));
  const [low, high] = [(heights[0] as number) - 1, (heights.at(-1) as number) + 1];
  const blocks =
    flats && flats.half < reach - 1 ? [0, Math.PI].map((turn) => blockOver(flats, turn, reach, low, high)) : [];
  return {
    id: part.id,
    body: revolved(outer),
    cuts: [...blocks, ...drillings.flatMap(revolved)],
    walls: threadWalls(part),
  };
}

/** A sheet part with true arcs, between z = 0 and its thickness; with its bends made where it has any. */
export function solidOfSheet(part: SheetPart): Solid {
  const { id, outside, holes, thickness } = part;
  const flat: SolidPiece = { kind: 'extruded', outside, holes, from: 0, to: thickness };
  return { id, body: part.bends?.length ? piecesOfFolded(part) : [flat], cuts: [] };
}
