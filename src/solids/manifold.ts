/**
 * Booleans of meshes, and a second opinion on them. The only file that names the boolean kernel, which is
 * loaded when first used. No handle of the kernel leaves this file.
 */
import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Mesh } from '../model/mesh.ts';

let loading: Promise<ManifoldToplevel> | undefined;

/** The kernel, loaded once. */
function kernel(): Promise<ManifoldToplevel> {
  loading ??= import('manifold-3d').then(async (module) => {
    const top = await module.default();
    top.setup();
    return top;
  });
  return loading;
}

/**
 * What the kernel makes of a mesh. Volume in mm3; genus counts the through openings of all bodies together.
 */
export interface Judgement {
  /** `NoError` for a closed, consistently oriented mesh; else the kernel's reason. */
  readonly status: string;
  readonly genus: number;
  readonly volume: number;
  /** Separate closed shells: bodies, and voids within them. */
  readonly bodies: number;
}

/**
 * Judges a mesh: closed, how many bodies, how many openings. Never throws for a bad mesh: it says so in
 * `status`.
 */
export async function judge(mesh: Mesh): Promise<Judgement> {
  const top = await kernel();
  let solid: Manifold;
  try {
    solid = toSolid(top, mesh);
  } catch (error) {
    const status = error instanceof Error ? error.message : String(error);
    return { status, genus: 0, volume: 0, bodies: 0 };
  }
  const pieces = solid.decompose();
  const judgement = {
    status: solid.status(),
    // The kernel's own figure is 1 - euler / 2, whatever the number of bodies.
    genus: solid.genus() + pieces.length - 1,
    volume: solid.volume(),
    bodies: pieces.length,
  };
  for (const piece of pieces) piece.delete();
  solid.delete();
  return judgement;
}

/**
 * A body less a number of tools. Faces of body and tools may lie in one plane. Coordinates come back rounded
 * to single precision. Throws an Error when a mesh is not closed.
 */
export async function subtractMeshes(body: Mesh, tools: readonly Mesh[]): Promise<Mesh> {
  const top = await kernel();
  const made: Manifold[] = [];
  try {
    const keep = (solid: Manifold): Manifold => {
      made.push(solid);
      return solid;
    };
    const solids = tools.map((tool) => keep(toSolid(top, tool)));
    const rest = keep(keep(toSolid(top, body)).subtract(keep(top.Manifold.union(solids))));
    return toMesh(rest);
  } finally {
    for (const solid of made) solid.delete();
  }
}

/**
 * A tool: outlines in u and v, swept along w, then put in place point by point by a map that keeps
 * handedness.
 */
export interface Prism {
  /** Counter-clockwise outlines, mm; they may overlap, and their union is swept. */
  readonly outlines: readonly (readonly (readonly [number, number])[])[];
  readonly from: number;
  readonly to: number;
  /** Longer edges are divided before the tool is put in place, mm, so that it can bend. */
  readonly longestEdge: number;
  readonly place: (u: number, v: number, w: number) => readonly [number, number, number];
}

/**
 * A body less a number of prisms. Coordinates come back in single precision. Throws an Error when the body is
 * not closed.
 */
export async function cutPrisms(body: Mesh, prisms: readonly Prism[]): Promise<Mesh> {
  const top = await kernel();
  const made: { delete(): void }[] = [];
  try {
    const keep = <T extends { delete(): void }>(handle: T): T => {
      made.push(handle);
      return handle;
    };
    const tools = prisms.map((prism) => {
      const outlines = prism.outlines.map((o) => o.map(([u, v]): [number, number] => [u, v]));
      const section = keep(new top.CrossSection(outlines, 'Positive'));
      let solid = keep(keep(section.extrude(prism.to - prism.from)).translate(0, 0, prism.from));
      if (Number.isFinite(prism.longestEdge)) solid = keep(solid.refineToLength(prism.longestEdge));
      return keep(
        solid.warp((p) => {
          [p[0], p[1], p[2]] = prism.place(p[0], p[1], p[2]);
        }),
      );
    });
    return toMesh(keep(keep(toSolid(top, body)).subtract(keep(top.Manifold.union(tools)))));
  } finally {
    for (const handle of made) handle.delete();
  }
}

function toSolid(top: ManifoldToplevel, mesh: Mesh): Manifold {
  return new top.Manifold(
    new top.Mesh({ numProp: 3, vertProperties: Float32Array.from(mesh.positions), triVerts: mesh.triangles }),
  );
}

function toMesh(solid: Manifold): Mesh {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  if (numProp !== 3) throw new Error('the kernel returned more than positions');
  return { positions: Float64Array.from(vertProperties), triangles: Uint32Array.from(triVerts) };
}
