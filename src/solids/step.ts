/** Exact solids as STEP text, straight from the modeller: AP242, millimetres, a true tree of instances. */
import type { Assembly, NamedWall, Place } from '../model/solid.ts';
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
  settings.SetIVal('write.surfacecurve.mode', 1);
  settings.SetIVal('write.precision.mode', 0);
  settings.SetIVal('write.step.assembly', 2);
  settings.SetIVal('write.stepcaf.subshapes.name', 1);
}

/** A colour as screens show it, `#8899aa`; the modeller reckons in linear light and turns it back when it writes. */
function colourOf({ oc, keep }: Bench, colour: string): Bound.Quantity_Color {
  const made = keep(new oc.Quantity_Color());
  if (!oc.Quantity_Color.ColorFromHex(colour, made)) throw new RangeError(`no colour: ${colour}`);
  return made;
}

function nameLabel({ oc, keep }: Bench, label: Bound.TDF_Label, name: string): void {
  keep(oc.TDataStd_Name.Set(label, keep(new oc.TCollection_ExtendedString(name, true))));
}

function locationOf({ oc, keep }: Bench, { x, y, z, turnedOver }: Place): Bound.TopLoc_Location {
  const move = keep(new oc.gp_Trsf());
  // Half a turn about x and a shift, written out: no rounding of a cosine.
  if (turnedOver) move.SetValues(1, 0, 0, x, 0, -1, 0, y, 0, 0, -1, z);
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

/**
 * STEP text of an assembly; of a single part alone when `tree` is false (then there is no tree, and its place must be the origin).
 * Names must be plain ASCII: the modeller writes others raw. The header carries the modeller's own words and the time: see
 * `finishStep`. Throws an Error when a solid cannot be built or written.
 */
export async function stepOf(assembly: Assembly, tree: boolean): Promise<string> {
  const oc = await occ();
  return withHandles(({ keep }) => {
    const bench: Bench = { oc, keep };
    settle(bench);
    const document = keep(new oc.TDocStd_Document(keep(new oc.TCollection_ExtendedString('XmlOcaf', true))));
    const main = keep(document.Main());
    const shapes = keep(oc.XCAFDoc_DocumentTool.ShapeTool(main));
    const colours = keep(oc.XCAFDoc_DocumentTool.ColorTool(main));
    oc.XCAFDoc_ShapeTool.SetAutoNaming(false);
    const root = tree ? keep(shapes.NewShape()) : null;
    if (root) nameLabel(bench, root, assembly.name);
    for (const { name, solid, colour, places } of assembly.parts) {
      const shape = buildSolid(bench, solid);
      const label = keep(shapes.AddShape(shape, false, false));
      nameLabel(bench, label, name);
      colours.SetColor(label, colourOf(bench, colour), oc.XCAFDoc_ColorType.XCAFDoc_ColorSurf);
      for (const { face, name: wall } of wallsOf(bench, shape, solid.walls ?? [])) {
        nameLabel(bench, keep(shapes.AddSubShape(label, face)), wall);
      }
      for (const place of root ? places : []) {
        nameLabel(bench, keep(shapes.AddComponent(root as Bound.TDF_Label, label, locationOf(bench, place))), place.name);
      }
    }
    if (root) shapes.UpdateAssemblies();
    return written(bench, document);
  });
}

function written({ oc, keep }: Bench, document: Bound.TDocStd_Document): string {
  const session = keep(new oc.XSControl_WorkSession());
  const writer = keep(new oc.STEPCAFControl_Writer(session, false));
  writer.SetColorMode(true);
  writer.SetNameMode(true);
  const file = '/exact.step';
  if (!writer.Perform(document, file, keep(new oc.Message_ProgressRange()))) {
    throw new Error('the modeller could not write its STEP file');
  }
  const bytes = oc.FS.readFile(file) as Uint8Array;
  oc.FS.unlink(file);
  return new TextDecoder().decode(bytes);
}
