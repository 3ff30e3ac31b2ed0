/** Builds exact solids: true planes, cylinders and cones, no facets. Handles of the modeller are kept by the caller's keeper. */
import { contourArea, holesStandApart } from '../geometry/contour.ts';
import type { Profile } from '../model/part.ts';
import type { Contour, ContourVertex } from '../model/sheet.ts';
import type { Solid, SolidPiece } from '../model/solid.ts';
import { cos, sin } from '../units/trig.ts';
import type { Bound, Handles, Occ } from './occ.ts';

/** Everything that building needs: the modeller, and who keeps its handles. */
export interface Bench {
  readonly oc: Occ;
  readonly keep: Handles['keep'];
}

type Corner = readonly [x: number, y: number, z: number];

const pointAt = ({ oc, keep }: Bench, [x, y, z]: Corner) => keep(new oc.gp_Pnt(x, y, z));

function wireOf(bench: Bench, edges: readonly Bound.TopoDS_Edge[]): Bound.TopoDS_Wire {
  const { oc, keep } = bench;
  const maker = keep(new oc.BRepBuilderAPI_MakeWire());
  for (const edge of edges) maker.Add(edge);
  if (!maker.IsDone()) throw new Error('the edges of an outline do not join');
  return keep(maker.Wire());
}

const lineEdge = (bench: Bench, a: Corner, b: Corner) =>
  bench.keep(
    bench.keep(new bench.oc.BRepBuilderAPI_MakeEdge(pointAt(bench, a), pointAt(bench, b))).Edge(),
  ) as Bound.TopoDS_Edge;

function polygonWire(bench: Bench, corners: readonly Corner[]): Bound.TopoDS_Wire {
  return wireOf(
    bench,
    corners.map((corner, i) => lineEdge(bench, corner, corners[(i + 1) % corners.length] as Corner)),
  );
}

/** The profile's corners without repeats, cut apart where it closes to a point between its ends. */
function closedPieces(profile: Profile): [z: number, r: number][][] {
  const pieces: [number, number][][] = [[]];
  for (const { z, r } of profile) {
    const piece = pieces.at(-1) as [number, number][];
    const last = piece.at(-1);
    if (last && last[0] === z && last[1] === r) continue;
    piece.push([z, r]);
    if (r === 0 && piece.length > 1) pieces.push([[z, r]]);
  }
  return pieces.filter((p) => p.length > 1 && p.some(([, r]) => r > 0) && (p.at(-1)?.[0] ?? 0) > (p[0]?.[0] ?? 0));
}

function revolve(bench: Bench, profile: Profile, x: number, y: number): Bound.TopoDS_Shape[] {
  const { oc, keep } = bench;
  const axis = keep(new oc.gp_Ax1(pointAt(bench, [x, y, 0]), keep(new oc.gp_Dir(0, 0, 1))));
  return closedPieces(profile).map((piece) => {
    const [[low, first], [high, last]] = [piece[0], piece.at(-1)] as [[number, number], [number, number]];
    const closed = [...(first > 0 ? [[low, 0] as const] : []), ...piece, ...(last > 0 ? [[high, 0] as const] : [])];
    const wire = polygonWire(
      bench,
      closed.map(([z, r]) => [x + r, y, z]),
    );
    const face = keep(keep(new oc.BRepBuilderAPI_MakeFace(wire, true)).Face());
    return keep(keep(new oc.BRepPrimAPI_MakeRevol(face, axis)).Shape());
  });
}

/** Half way along an arc of the given bulge. */
function middleOf(a: ContourVertex, b: ContourVertex): [number, number] {
  // The sagitta is bulge times half the chord, to the right of the way when the arc turns left.
  return [(a.x + b.x) / 2 + (a.bulge * (b.y - a.y)) / 2, (a.y + b.y) / 2 - (a.bulge * (b.x - a.x)) / 2];
}

function contourWire(bench: Bench, contour: Contour, z: number): Bound.TopoDS_Wire {
  const { oc, keep } = bench;
  if (contour.kind === 'circle') {
    const up = keep(new oc.gp_Dir(0, 0, 1));
    const axes = keep(new oc.gp_Ax2(pointAt(bench, [contour.x, contour.y, z]), up));
    const circle = keep(new oc.gp_Circ(axes, contour.r));
    return wireOf(bench, [keep(keep(new oc.BRepBuilderAPI_MakeEdge(circle)).Edge())]);
  }
  const { vertices } = contour;
  const edges = vertices.map((a, i) => {
    const b = vertices[(i + 1) % vertices.length] as ContourVertex;
    if (a.bulge === 0) return lineEdge(bench, [a.x, a.y, z], [b.x, b.y, z]);
    const [start, middle, end] = [
      pointAt(bench, [a.x, a.y, z]),
      pointAt(bench, [...middleOf(a, b), z]),
      pointAt(bench, [b.x, b.y, z]),
    ];
    const arc = keep(keep(new oc.GC_MakeArcOfCircle(start, middle, end)).Value());
    return keep(keep(new oc.BRepBuilderAPI_MakeEdge(arc)).Edge());
  });
  return wireOf(bench, edges);
}

/** A contour's area at a height less what other contours within it enclose, swept up. */
function swept(
  bench: Bench,
  { from, to }: Heights,
  outside: Contour,
  windows: readonly Contour[] = [],
): Bound.TopoDS_Shape {
  const { oc, keep } = bench;
  const maker = keep(new oc.BRepBuilderAPI_MakeFace(contourWire(bench, outside, from), true));
  for (const window of windows) {
    const wire = contourWire(bench, window, from);
    // A rim has the face on its left: a window is gone round the other way than the outside.
    maker.Add(contourArea(window) > 0 ? keep(oc.TopoDS.Wire(keep(wire.Reversed()))) : wire);
  }
  const face = keep(maker.Face());
  return keep(keep(new oc.BRepPrimAPI_MakePrism(face, keep(new oc.gp_Vec(0, 0, to - from)))).Shape());
}

interface Heights {
  readonly from: number;
  readonly to: number;
}

/** Holes nearer to each other than this are cut, which also finds where they meet: mm, a hundred times the modeller's own tolerance. */
const plainlyApart = 1e-5;

/** Beyond any part, mm. */
const far = 1e4;

function extrude(bench: Bench, piece: Extract<SolidPiece, { kind: 'extruded' }>): Bound.TopoDS_Shape {
  const { oc, keep } = bench;
  const { outside, holes, within, tilt } = piece;
  // Holes that stand free are windows of the face that is swept: cutting them out of the solid finds the same and takes many times longer.
  let shape = holesStandApart(outside, holes, plainlyApart)
    ? swept(bench, piece, outside, holes)
    : subtract(
        bench,
        swept(bench, piece, outside),
        holes.map((hole) => swept(bench, piece, hole)),
      );
  if (within) {
    const corner = (x: number, y: number): ContourVertex => ({ x, y, bulge: 0 });
    const [a, b] = within;
    const vertices = [corner(a, -far), corner(b, -far), corner(b, far), corner(a, far)];
    const block = swept(bench, piece, { kind: 'path', feature: 'within', vertices });
    shape = combined(bench, keep(new oc.BRepAlgoAPI_Common()), shape, [block]);
  }
  if (!tilt) return shape;
  const [c, s] = [cos(tilt.heading), sin(tilt.heading)];
  const move = keep(new oc.gp_Trsf());
  move.SetValues(c, 0, -s, tilt.x, 0, 1, 0, 0, s, 0, c, tilt.z);
  return keep(keep(new oc.BRepBuilderAPI_Transform(shape, move, true, false)).Shape());
}

function bend(bench: Bench, piece: Extract<SolidPiece, { kind: 'bent' }>): Bound.TopoDS_Shape {
  const { oc, keep } = bench;
  const { low, high, axis, turn, across } = piece;
  const at = ({ x, z }: { x: number; z: number }, y: number): Corner => [x, y, z];
  const wire = polygonWire(bench, [at(low, across[0]), at(high, across[0]), at(high, across[1]), at(low, across[1])]);
  const face = keep(keep(new oc.BRepBuilderAPI_MakeFace(wire, true)).Face());
  // Turning from x towards z is turning about -y.
  const line = keep(new oc.gp_Ax1(pointAt(bench, at(axis, 0)), keep(new oc.gp_Dir(0, turn > 0 ? -1 : 1, 0))));
  return keep(keep(new oc.BRepPrimAPI_MakeRevol(face, line, Math.abs(turn), true)).Shape());
}

function listOf({ oc, keep }: Bench, shapes: readonly Bound.TopoDS_Shape[]) {
  const list = keep(new oc.NCollection_List_TopoDS_Shape());
  for (const shape of shapes) list.Append(shape);
  return list;
}

/** The result of a boolean of one shape and many, in one run. */
function combined(
  bench: Bench,
  operation: Bound.BRepAlgoAPI_BooleanOperation,
  body: Bound.TopoDS_Shape,
  tools: readonly Bound.TopoDS_Shape[],
): Bound.TopoDS_Shape {
  const { oc, keep } = bench;
  operation.SetArguments(listOf(bench, [body]));
  operation.SetTools(listOf(bench, tools));
  operation.Build(keep(new oc.Message_ProgressRange()));
  if (!operation.IsDone()) throw new Error('the modeller could not combine the pieces of a solid');
  operation.SimplifyResult(true, true);
  return keep(operation.Shape());
}

const subtract = (bench: Bench, body: Bound.TopoDS_Shape, tools: readonly Bound.TopoDS_Shape[]) =>
  tools.length === 0 ? body : combined(bench, bench.keep(new bench.oc.BRepAlgoAPI_Cut()), body, tools);

function buildPiece(bench: Bench, piece: SolidPiece): Bound.TopoDS_Shape[] {
  switch (piece.kind) {
    case 'revolved':
      return revolve(bench, piece.profile, piece.x, piece.y);
    case 'extruded':
      return [extrude(bench, piece)];
    case 'bent':
      return [bend(bench, piece)];
  }
}

const piecesOf = (bench: Bench, pieces: readonly SolidPiece[]): Bound.TopoDS_Shape[] =>
  pieces.flatMap((piece) => buildPiece(bench, piece));

/**
 * A solid, exactly. A part that its cuts divide comes back as several bodies in one shape. Throws an Error when the modeller cannot
 * build it.
 */
export function buildSolid(bench: Bench, solid: Solid): Bound.TopoDS_Shape {
  const [first, ...more] = piecesOf(bench, solid.body);
  if (!first) throw new RangeError(`${solid.id}: a solid without a body`);
  const body = more.length === 0 ? first : combined(bench, bench.keep(new bench.oc.BRepAlgoAPI_Fuse()), first, more);
  return subtract(bench, body, piecesOf(bench, solid.cuts));
}
