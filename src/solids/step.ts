/** Exact solids as STEP text, straight from the modeller: AP242, millimetres, a true tree of instances. */
import { type Assembly, type NamedWall, nameMark, type Place, type RawStep, type Solid } from '../model/solid.ts';
import { type Bench, buildSolid } from './exact.ts';
import { type Bound, occ, withHandles } from './occ.ts';

/** Schema by the modeller's number: 5 is AP242. */
const ap242 = 5;

/** What the modeller is told before it writes; its settings are global, so all of them are set each time. */
function settle({ oc, keep }: Bench): void {
  // The settings exist only once a writer has been made.
  keep(new oc.STEPCAFControl_Writer());
  const { Interface_Static: settings } = oc;
  settings.SetCVal('xstep.cascade.unit', 'MM');
  settings.SetCVal('write.step.unit', 'MM');
  settings.SetIVal('write.step.schema', ap242);
  settings.SetIVal('write.surfacecurve.mode', 0);
  settings.SetIVal('write.precision.mode', 0);
  settings.SetIVal('write.step.assembly', 2);
  settings.SetIVal('write.stepcaf.subshapes.name', 1);
}

/** Gives labels their names, as marks, and remembers the names. */
function namer({ oc, keep }: Bench) {
  const names: string[] = [];
  const nameLabel = (label: Bound.TDF_Label, name: string): void => {
    const mark = nameMark(names.push(name) - 1);
    keep(oc.TDataStd_Name.Set(label, keep(new oc.TCollection_ExtendedString(mark, true))));
  };
  return { names, nameLabel };
}

function locationOf({ oc, keep }: Bench, { x, y, z, turnedOver, axes }: Place): Bound.TopLoc_Location {
  const move = keep(new oc.gp_Trsf());
  if (axes) {
    const [[xx, xy, xz], [zx, zy, zz]] = [axes.x, axes.z];
    const across = [zy * xz - zz * xy, zz * xx - zx * xz, zx * xy - zy * xx] as const;
    move.SetValues(xx, across[0], zx, x, xy, across[1], zy, y, xz, across[2], zz, z);
  }
  // Half a turn about x and a shift, written out: no rounding of a cosine.
  else if (turnedOver) move.SetValues(1, 0, 0, x, 0, -1, 0, y, 0, 0, -1, z);
  else move.SetTranslation(keep(new oc.gp_Vec(x, y, z)));
  return keep(new oc.TopLoc_Location(move));
}

/** Cylindrical faces of a shape that are one of the named walls. */
function wallsOf(bench: Bench, shape: Bound.TopoDS_Shape, walls: readonly NamedWall[]) {
  const { oc, keep } = bench;
  const found: { face: Bound.TopoDS_Shape; name: string }[] = [];
  const explorer = keep(new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum.TopAbs_FACE));
  for (; explorer.More(); explorer.Next()) {
    const face = keep(explorer.Current());
    const surface = keep(new oc.BRepAdaptor_Surface(keep(oc.TopoDS.Face(face)), true));
    if (surface.GetType() !== oc.GeomAbs_SurfaceType.GeomAbs_Cylinder) continue;
    const cylinder = keep(surface.Cylinder());
    const centre = keep(keep(cylinder.Axis()).Location());
    const near = (a: number, b: number) => Math.abs(a - b) < 1e-6;
    const wall = walls.find(
      ({ x, y, radius }) => near(cylinder.Radius(), radius) && near(centre.X(), x) && near(centre.Y(), y),
    );
    if (wall) found.push({ face, name: wall.name });
  }
  return found;
}

/** What is to be written. */
export interface WantedStep {
  readonly assembly: Assembly;
  /** False for a single part alone: then there is no tree, and it stands where it was drawn. */
  readonly tree: boolean;
}

/**
 * STEP texts, in the order asked for. A solid that is in several of them is built once.
 * Names, colours, header and time are not those of a finished file: see `finishStep`. Throws an Error when a solid cannot be built or written.
 * @param begin called with the place of each before it is worked out
 */
export async function stepTexts(
  wanted: readonly WantedStep[],
  begin: (place: number) => void = () => undefined,
): Promise<RawStep[]> {
  const oc = await occ();
  return withHandles(({ keep }) => {
    const bench: Bench = { oc, keep };
    const built = new Map<Solid, Bound.TopoDS_Shape>();
    const shapeOf = (solid: Solid) => {
      const shape = built.get(solid) ?? buildSolid(bench, solid);
      built.set(solid, shape);
      return shape;
    };
    return wanted.map((one, place) => {
      begin(place);
      return stepText(bench, one, shapeOf);
    });
  });
}

function stepText(
  bench: Bench,
  { assembly, tree }: WantedStep,
  shapeOf: (solid: Solid) => Bound.TopoDS_Shape,
): RawStep {
  const { oc, keep } = bench;
  const { names, nameLabel } = namer(bench);
  settle(bench);
  const document = keep(new oc.TDocStd_Document(keep(new oc.TCollection_ExtendedString('XmlOcaf', true))));
  const main = keep(document.Main());
  const shapes = keep(oc.XCAFDoc_DocumentTool.ShapeTool(main));
  oc.XCAFDoc_ShapeTool.SetAutoNaming(false);
  const root = tree ? keep(shapes.NewShape()) : null;
  if (root) nameLabel(root, assembly.name);
  for (const { name, solid, places } of assembly.parts) {
    const shape = shapeOf(solid);
    const label = keep(shapes.AddShape(shape, false, false));
    nameLabel(label, name);
    for (const { face, name: wall } of wallsOf(bench, shape, solid.walls ?? [])) {
      nameLabel(keep(shapes.AddSubShape(label, face)), wall);
    }
    for (const place of root ? places : []) {
      nameLabel(keep(shapes.AddComponent(root as Bound.TDF_Label, label, locationOf(bench, place))), place.name);
    }
  }
  if (root) shapes.UpdateAssemblies();
  return { text: written(bench, document), names };
}

function written({ oc, keep }: Bench, document: Bound.TDocStd_Document): string {
  const session = keep(new oc.XSControl_WorkSession());
  const writer = keep(new oc.STEPCAFControl_Writer(session, false));
  writer.SetColorMode(false);
  writer.SetNameMode(true);
  const file = '/exact.step';
  if (!writer.Perform(document, file, keep(new oc.Message_ProgressRange()))) {
    throw new Error('the modeller could not write its STEP file');
  }
  const bytes = oc.FS.readFile(file) as Uint8Array;
  oc.FS.unlink(file);
  return new TextDecoder().decode(bytes);
}
