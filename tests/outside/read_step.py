"""Reads STEP files with gmsh's OpenCASCADE and prints what it finds in them as JSON.

Takes {"files": [...], "apart": [[file, name, name], ...]} on stdin. For each file: every solid with its path in the tree, volume,
centre, inertia about the centre (density 1, products of positive sign) and box; every face with its kind, area and centre, and the
radius of a cylinder from its curvature, the normal of a plane. For the entries of "apart", file by file: the volume that the solids whose paths end with the two names share.
Lengths are turned into millimetres by the reader, whatever unit the file declares.
"""
import json
import sys

import gmsh

occ = gmsh.model.occ


def load(path):
    gmsh.clear()
    gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
    occ.importShapes(path)
    occ.synchronize()
    return [tag for _, tag in gmsh.model.getEntities(3)]


def solid(tag):
    t = occ.getMatrixOfInertia(3, tag)
    return {
        "path": gmsh.model.getEntityName(3, tag),
        "volume": occ.getMass(3, tag),
        "centre": list(occ.getCenterOfMass(3, tag)),
        "inertia": {"xx": t[0], "yy": t[4], "zz": t[8], "xy": -t[1], "xz": -t[2], "yz": -t[5]},
        "box": list(occ.getBoundingBox(3, tag)),
        "faces": [face(f) for _, f in gmsh.model.getBoundary([(3, tag)], oriented=False)],
    }


def face(tag):
    kind = gmsh.model.getType(2, tag)
    found = {"kind": kind, "area": occ.getMass(2, tag), "centre": list(occ.getCenterOfMass(2, tag))}
    low, high = gmsh.model.getParametrizationBounds(2, tag)
    middle = [(a + b) / 2 for a, b in zip(low, high)]
    if kind == "Cylinder":
        found["radius"] = 1 / gmsh.model.getCurvature(2, tag, middle)[0]
    if kind == "Plane":
        found["normal"] = list(gmsh.model.getNormal(tag, middle))
    return found


def shared(first, second):
    """Volume that the loaded solids whose paths end with these names have in common."""
    def ends(name):
        found = [t for _, t in gmsh.model.getEntities(3) if gmsh.model.getEntityName(3, t).endswith("/" + name)]
        if not found:
            raise SystemExit(f"there is no {name}")
        return [(3, t) for t in found]

    common, _ = occ.intersect(ends(first), ends(second), removeObject=False, removeTool=False)
    volume = sum(occ.getMass(3, tag) for dim, tag in common if dim == 3)
    occ.remove(common, recursive=True)
    return volume


def main():
    asked = json.load(sys.stdin)
    gmsh.initialize()
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setNumber("General.Verbosity", 2)
        files, apart = {}, {}
        for path in asked["files"]:
            files[path] = [solid(tag) for tag in load(path)]
            apart[path] = [shared(a, b) for file, a, b in asked["apart"] if file == path]
        print(json.dumps({"files": files, "apart": apart}))
    finally:
        gmsh.finalize()


main()
