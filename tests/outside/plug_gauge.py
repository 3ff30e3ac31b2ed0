"""Puts the finished solid on the table as a set-up sheet says, and tries a pin in every hole that the sheet lists.

Reads {"step": path, "sides": [{"up": "driven"|"driving", "thickness": t, "holes": [{"tag", "x", "y", "pin", "deep", "wide"}]}]} on stdin,
mm. For each hole: the metal that a pin of diameter `pin`, pushed from above down to `deep`, would have to displace, and the metal that
one of diameter `wide` meets. The solid is read from its STEP file; turning over is half a turn about the y axis, done by the modeller.
"""
import json
import math
import sys

import gmsh

occ = gmsh.model.occ
VOLUME = 3
ABOVE = 60.0


def common(body, x, y, diameter, bottom):
    """Volume that a pin from ABOVE down to `bottom` shares with the body."""
    pin = occ.addCylinder(x, y, ABOVE, 0, 0, bottom - ABOVE, diameter / 2)
    shared, _ = occ.intersect([(VOLUME, b) for b in body], [(VOLUME, pin)], removeObject=False, removeTool=True)
    volume = sum(occ.getMass(dim, tag) for dim, tag in shared)
    occ.remove(shared, recursive=True)
    return volume


def side(path, told):
    gmsh.clear()
    gmsh.option.setString("Geometry.OCCTargetUnit", "MM")
    shapes = occ.importShapes(path)
    body = [tag for dim, tag in shapes if dim == VOLUME]
    if told["up"] == "driving":
        occ.rotate(shapes, 0, 0, 0, 0, 1, 0, math.pi)
    else:
        occ.translate(shapes, 0, 0, -told["thickness"])
    occ.synchronize()
    top = max(occ.getBoundingBox(VOLUME, tag)[5] for tag in body)
    holes = []
    for h in told["holes"]:
        holes.append(
            {
                "tag": h["tag"],
                "pin": common(body, h["x"], h["y"], h["pin"], h["deep"]),
                "wide": common(body, h["x"], h["y"], h["wide"], h["deep"]),
            }
        )
    return {"up": told["up"], "top": top, "bodies": len(body), "holes": holes}


def main():
    told = json.load(sys.stdin)
    gmsh.initialize()
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setNumber("General.Verbosity", 2)
        print(json.dumps([side(told["step"], s) for s in told["sides"]]))
    finally:
        gmsh.finalize()


main()
