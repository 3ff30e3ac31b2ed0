/** Meshes of bought parts and of the sensor, to be looked at: exact modellers build the same pieces for files. */
import type { Mesh } from '../model/mesh.ts';
import type { Contour } from '../model/sheet.ts';
import type { Solid, SolidPiece, Tilt } from '../model/solid.ts';
import { cos, sin } from '../units/trig.ts';
import { meshSheet } from './sheet-mesh.ts';
import { meshTurnedDirect } from './turned-mesh.ts';

const shown = { id: 'shown', name: 'shown', density: 0 };

const isRevolved = (piece: SolidPiece) => piece.kind === 'revolved';

/** Round holes along z as circles in a sheet; a hole with steps is shown at its first radius. */
const circles = (cuts: readonly SolidPiece[]): Contour[] =>
  cuts.flatMap((cut) =>
    cut.kind === 'revolved' ? [{ kind: 'circle', feature: 'hole', x: cut.x, y: cut.y, r: cut.profile[0]?.r ?? 0 }] : [],
  );

/** Raised along z, then turned and moved in the plane of x and z. */
function moved({ positions, triangles }: Mesh, raise: number, tilt: Tilt | undefined): Mesh {
  const [c, s] = tilt ? [cos(tilt.heading), sin(tilt.heading)] : [1, 0];
  const out = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i] ?? 0, positions[i + 1] ?? 0, (positions[i + 2] ?? 0) + raise];
    out[i] = x * c - z * s + (tilt?.x ?? 0);
    out[i + 1] = y;
    out[i + 2] = x * s + z * c + (tilt?.z ?? 0);
  }
  return { positions: out, triangles };
}

function meshOf(piece: SolidPiece, { id, cuts }: Solid, chordError: number): Mesh | null {
  if (piece.kind === 'revolved') {
    const drillings = cuts.flatMap((cut, i) =>
      cut.kind === 'revolved' ? [{ id: `${id}-${i}`, feature: 'hole', x: cut.x, y: cut.y, profile: cut.profile }] : [],
    );
    const { profile: outer } = piece;
    return meshTurnedDirect(
      { kind: 'turned', id, name: id, material: shown, outer, drillings, features: [], engravings: [] },
      { chordError },
    );
  }
  if (piece.kind === 'bent') return null;
  const { outside, holes, from, to, tilt } = piece;
  const flat = meshSheet(
    {
      kind: 'sheet',
      id,
      name: id,
      material: shown,
      thickness: to - from,
      outside,
      holes: [...holes, ...circles(cuts)],
      features: [],
      engravings: [],
    },
    { chordError },
  );
  return moved(flat, from, tilt);
}

/**
 * Closed meshes of a solid's pieces, which may overlap: good to look at, no good for a file. Round holes are there; sockets of heads and
 * bends are not.
 * @param chordError mm, more than 0
 */
export function shownMeshes(solid: Solid, chordError: number): Mesh[] {
  return solid.body.flatMap((piece) => {
    // What is cut out of one piece is cut out of every piece that is turned.
    const mesh = meshOf(
      piece,
      isRevolved(piece) || solid.body.length === 1 ? solid : { ...solid, cuts: [] },
      chordError,
    );
    return mesh ? [mesh] : [];
  });
}
