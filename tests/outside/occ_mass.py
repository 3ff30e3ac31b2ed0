"""Builds exact solids with gmsh's OpenCASCADE and prints their volume, centre of mass and inertia as JSON.

Reads {"parts": [...]} on stdin: turned parts (outer profile, drillings, flats) and sheet parts (contours, thickness), in mm. Nothing
is worked out here but the places of points: every solid, every cut and every integral is the modeller's.

The matrix of inertia that the modeller gives is taken to be the tensor about the centre of mass, of a body of density 1, with the
negative products beside its diagonal. "textbook" in the answer lets the caller see that it is: bodies of known inertia, turned and
shifted, so that another reference point or another sign would show.
"""
import json
import math
import sys

import gmsh

occ = gmsh.model.occ
VOLUME = 3
# Beyond any part, mm.
FAR = 1000.0


def polygon(corners, point):
    """A plane surface within the closed polygon through the corners, in order."""
    tags = [occ.addPoint(*point(*corner)) for corner in corners]
    lines = [occ.addLine(a, b) for a, b in zip(tags, tags[1:] + tags[:1])]
    return occ.addPlaneSurface([occ.addCurveLoop(lines)])


def turned_pieces(profile):
    """The profile's corners, cut apart where it closes to a point or to nothing between its ends."""
    pieces, piece = [], []
    for z, r in profile:
        if piece and piece[-1] == (z, r):
            continue
        piece.append((z, r))
        if r == 0:
            pieces.append(piece)
            piece = [(z, r)]
    pieces.append(piece)
    return [p for p in pieces if p[-1][0] > p[0][0] and max(r for _, r in p) > 0]


def revolve(profile, x=0.0, y=0.0):
    """Solids of revolution about a line parallel to z through (x, y)."""
    solids = []
    for piece in turned_pieces([tuple(corner) for corner in profile]):
        (low, first), (high, last) = piece[0], piece[-1]
        closed = ([(low, 0.0)] if first > 0 else []) + piece + ([(high, 0.0)] if last > 0 else [])
        face = polygon(closed, lambda z, r: (x + r, y, z))
        made = occ.revolve([(2, face)], x, y, 0, 0, 0, 1, 2 * math.pi)
        solids += [tag for dim, tag in made if dim == VOLUME]
    return solids


def cut(body, tools):
    """The bodies less the tools. A part that the tools divide comes back as several bodies."""
    if not tools:
        return body
    left, _ = occ.cut([(VOLUME, tag) for tag in body], [(VOLUME, tag) for tag in tools])
    return [tag for dim, tag in left if dim == VOLUME]


def flat_cuts(across, degrees):
    """Two boxes that stand on the flats and reach far outside."""
    boxes = []
    for side in (0.0, math.pi):
        box = occ.addBox(across / 2, -FAR, -FAR, FAR, 2 * FAR, 2 * FAR)
        occ.rotate([(VOLUME, box)], 0, 0, 0, 0, 0, 1, math.radians(degrees) + side)
        boxes.append(box)
    return boxes


def turned(part):
    body = revolve(part["outer"])
    if part["flats"]:
        body = cut(body, flat_cuts(part["flats"]["across"], part["flats"]["angle"]))
    for drilling in part["drillings"]:
        body = cut(body, revolve(drilling["profile"], drilling["x"], drilling["y"]))
    return body


def arcs(start, end, bulge):
    """Points between two corners at which an arc is parted so that each piece turns by less than half a circle, and its centre."""
    (x1, y1), (x2, y2) = start, end
    along = (1 - bulge * bulge) / (4 * bulge)
    cx = (x1 + x2) / 2 - along * (y2 - y1)
    cy = (y1 + y2) / 2 + along * (x2 - x1)
    sweep = 4 * math.atan(bulge)
    count = max(1, math.ceil(abs(sweep) / 3.0))
    between = []
    for i in range(1, count):
        turn = sweep * i / count
        dx, dy = x1 - cx, y1 - cy
        between.append((cx + dx * math.cos(turn) - dy * math.sin(turn), cy + dx * math.sin(turn) + dy * math.cos(turn)))
    return between, (cx, cy)


def loop(contour):
    """A closed contour of lines and true arcs in the plane z = 0."""
    if contour["kind"] == "circle":
        return occ.addCurveLoop([occ.addCircle(contour["x"], contour["y"], 0, contour["r"])])
    corners = contour["vertices"]
    tags = [occ.addPoint(v["x"], v["y"], 0) for v in corners]
    curves = []
    for i, v in enumerate(corners):
        k = (i + 1) % len(corners)
        if v["bulge"] == 0:
            curves.append(occ.addLine(tags[i], tags[k]))
            continue
        between, centre = arcs((v["x"], v["y"]), (corners[k]["x"], corners[k]["y"]), v["bulge"])
        middle = occ.addPoint(*centre, 0)
        stops = [tags[i], *(occ.addPoint(*p, 0) for p in between), tags[k]]
        curves += [occ.addCircleArc(a, middle, b) for a, b in zip(stops, stops[1:])]
    return occ.addCurveLoop(curves)


def sheet(part):
    face = occ.addPlaneSurface([loop(part["outside"]), *(loop(hole) for hole in part["holes"])])
    return [tag for dim, tag in occ.extrude([(2, face)], 0, 0, part["thickness"]) if dim == VOLUME]


def measure(bodies):
    """Volume, centre and the six components of the inertia about it, of one or several bodies together, for density 1."""
    found = [(occ.getMass(VOLUME, b), occ.getCenterOfMass(VOLUME, b), occ.getMatrixOfInertia(VOLUME, b)) for b in bodies]
    volume = sum(v for v, _, _ in found)
    centre = [sum(v * c[i] for v, c, _ in found) / volume for i in range(3)]
    tensor = [[0.0] * 3 for _ in range(3)]
    for v, c, own in found:
        off = [c[i] - centre[i] for i in range(3)]
        square = sum(o * o for o in off)
        for i in range(3):
            for k in range(3):
                tensor[i][k] += own[3 * i + k] + v * ((square if i == k else 0.0) - off[i] * off[k])
    inertia = {"xx": tensor[0][0], "yy": tensor[1][1], "zz": tensor[2][2]}
    inertia.update({"xy": -tensor[0][1], "xz": -tensor[0][2], "yz": -tensor[1][2]})
    return {"volume": volume, "centre": centre, "inertia": inertia, "bodies": len(bodies)}


def fresh(build):
    """Builds in an empty model and measures what comes of it."""
    gmsh.clear()
    gmsh.model.add("part")
    return measure(build())


def textbook():
    """Bodies whose inertia stands in every handbook, each shifted by (10, 20, 30) and turned by 30 degrees about x first."""

    def placed(tag):
        occ.rotate([(VOLUME, tag)], 0, 0, 0, 1, 0, 0, math.radians(30))
        occ.translate([(VOLUME, tag)], 10, 20, 30)
        return [tag]

    return {
        "box 2 x 4 x 6": fresh(lambda: placed(occ.addBox(-1, -2, -3, 2, 4, 6))),
        "cylinder of radius 3, 8 high": fresh(lambda: placed(occ.addCylinder(0, 0, -4, 0, 0, 8, 3))),
        "cone of radius 3, 8 high": fresh(lambda: placed(occ.addCone(0, 0, -2, 0, 0, 8, 3, 0))),
        "two cubes of side 2, 10 apart": fresh(lambda: [occ.addBox(-6, -1, -1, 2, 2, 2), occ.addBox(4, -1, -1, 2, 2, 2)]),
    }


def main():
    parts = json.load(sys.stdin)["parts"]
    gmsh.initialize()
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setNumber("General.Verbosity", 2)
        answer = {"modeller": gmsh.__version__, "textbook": textbook(), "parts": []}
        for part in parts:
            build = turned if part["kind"] == "turned" else sheet
            answer["parts"].append(fresh(lambda: build(part)))
        print(json.dumps(answer))
    finally:
        gmsh.finalize()


main()
