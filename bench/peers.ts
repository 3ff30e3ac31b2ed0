/** The same solids by the libraries that one would otherwise pick: body less holes, meshed to the same chord error. */
import jscad from '@jscad/modeling';
import manifold from 'manifold-3d';
import { polygonise } from '../src/geometry/contour.ts';
import { solidOfSheet, solidOfTurned } from '../src/geometry/solid-of-part.ts';
import type { Profile, TurnedPart } from '../src/model/part.ts';
import type { SheetPart } from '../src/model/sheet.ts';
import { buildSolid } from '../src/solids/exact.ts';
import { meshMass } from '../src/solids/mesh-mass.ts';
import { occ, withHandles } from '../src/solids/occ.ts';
import { meshSheet } from '../src/solids/sheet-mesh.ts';
import { meshTurnedDirect } from '../src/solids/turned-mesh.ts';

export const chordError = 0.01;

/** Makes a mesh and tells its volume, mm3; the measuring of the volume is not timed. */
export interface Maker {
  readonly name: string;
  readonly make: (part: TurnedPart | SheetPart) => { readonly volume: () => number; readonly end?: () => void };
}

/** Sides of a circle whose facets keep within the chord error, a multiple of four. */
const sides = (r: number): number => 4 * Math.ceil(Math.PI / Math.acos(1 - chordError / r) / 4);

/** Stretches of a profile as cylinders: [radius, from, to]. */
function cylinders(profile: Profile): (readonly [r: number, from: number, to: number])[] {
  return profile.flatMap((p, i) => {
    const next = profile[i + 1];
    return next && next.z > p.z ? [[p.r, p.z, next.z] as const] : [];
  });
}

const ours: Maker = {
  name: 'flangewright',
  make: (part) => {
    const mesh = part.kind === 'turned' ? meshTurnedDirect(part, { chordError }) : meshSheet(part, { chordError });
    if (!mesh) throw new Error('the bench part crosses itself');
    return { volume: () => meshMass(mesh, 1).mass };
  },
};

async function byManifold(): Promise<Maker> {
  const top = await manifold();
  top.setup();
  const { Manifold, CrossSection } = top;
  const cylinder = (r: number, from: number, to: number, x: number, y: number) => {
    const plain = Manifold.cylinder(to - from, r, r, sides(r));
    const moved = plain.translate(x, y, from);
    plain.delete();
    return moved;
  };
  return {
    name: 'manifold-3d booleans',
    make: (part) => {
      let body: InstanceType<typeof Manifold>;
      let tools: InstanceType<typeof Manifold>[];
      if (part.kind === 'turned') {
        const pieces = cylinders(part.outer).map(([r, from, to]) => cylinder(r, from, to, 0, 0));
        body = Manifold.union(pieces);
        tools = part.drillings.flatMap(({ profile, x, y }) =>
          cylinders(profile).map(([r, from, to]) => cylinder(r, from, to, x, y)),
        );
        for (const piece of pieces) piece.delete();
      } else {
        const section = new CrossSection([polygonise(part.outside, chordError, 'inside')]);
        body = Manifold.extrude(section, part.thickness);
        section.delete();
        tools = part.holes.map((hole) => {
          if (hole.kind !== 'circle') throw new Error('round holes only');
          return cylinder(hole.r, -1, part.thickness + 1, hole.x, hole.y);
        });
      }
      const solid = Manifold.difference([body, ...tools]);
      const mesh = solid.getMesh();
      for (const one of [body, ...tools]) one.delete();
      if (mesh.numTri === 0) throw new Error('manifold made nothing');
      return { volume: () => solid.volume(), end: () => solid.delete() };
    },
  };
}

function byJscad(): Maker {
  const { primitives, booleans, extrusions, measurements, geometries } = jscad;
  const cylinder = (radius: number, from: number, to: number, x: number, y: number) =>
    primitives.cylinder({ radius, height: to - from, center: [x, y, (from + to) / 2], segments: sides(radius) });
  return {
    name: 'JSCAD booleans',
    make: (part) => {
      let solid: jscad.geometries.geom3.Geom3;
      if (part.kind === 'turned') {
        const body = booleans.union(cylinders(part.outer).map(([r, from, to]) => cylinder(r, from, to, 0, 0)));
        const tools = part.drillings.flatMap(({ profile, x, y }) =>
          cylinders(profile).map(([r, from, to]) => cylinder(r, from, to, x, y)),
        );
        solid = booleans.subtract(body, ...tools);
      } else {
        const outline = primitives.polygon({ points: polygonise(part.outside, chordError, 'inside') });
        const body = extrusions.extrudeLinear({ height: part.thickness }, outline);
        const tools = part.holes.map((hole) => {
          if (hole.kind !== 'circle') throw new Error('round holes only');
          return cylinder(hole.r, -1, part.thickness + 1, hole.x, hole.y);
        });
        solid = booleans.subtract(body, ...tools);
      }
      geometries.geom3.toPolygons(solid);
      return { volume: () => measurements.measureVolume(solid) };
    },
  };
}

async function byOpenCascade(): Promise<Maker> {
  const oc = await occ();
  return {
    name: 'OpenCascade, build and mesh',
    make: (part) =>
      withHandles(({ keep }) => {
        const shape = buildSolid({ oc, keep }, part.kind === 'turned' ? solidOfTurned(part) : solidOfSheet(part));
        keep(new oc.BRepMesh_IncrementalMesh(shape, chordError, false, 0.5, false));
        const properties = keep(new oc.GProp_GProps());
        oc.BRepGProp.VolumeProperties(shape, properties, false, false, true);
        const volume = properties.Mass();
        return { volume: () => volume };
      }),
  };
}

/** Ours first. */
export const makers = async (): Promise<readonly Maker[]> => [
  ours,
  await byManifold(),
  byJscad(),
  await byOpenCascade(),
];
