"""Writes sound drawings with ezdxf into a folder, and prints what ezdxf itself makes of each of them as JSON.

Areas come from ezdxf's own paths, flattened to 0.0005 mm and summed by the even-odd rule; none of it uses the project's code.
"""
import json
import math
import sys
from pathlib import Path

import ezdxf
from ezdxf import path as ezpath
from ezdxf import recover

folder = Path(sys.argv[1])


def new(version="R2010", units=4):
    doc = ezdxf.new(version, units=units)
    doc.units = units
    return doc, doc.modelspace()


def box(msp, x, y, w, h, **more):
    msp.add_lwpolyline([(x, y), (x + w, y), (x + w, y + h), (x, y + h)], close=True, dxfattribs=more)


def box_lines(msp, x, y, w, h, order=(0, 1, 2, 3), turned=()):
    corners = [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]
    for i in order:
        a, b = corners[i], corners[(i + 1) % 4]
        if i in turned:
            a, b = b, a
        msp.add_line(a, b)


def slot(msp, x, y, length, r, turn=0.0):
    c, s = math.cos(turn), math.sin(turn)
    at = lambda u, v: (x + c * u - s * v, y + s * u + c * v)
    points = [(*at(0, -r), 0), (*at(length, -r), 1), (*at(length, r), 0), (*at(0, r), 1)]
    msp.add_lwpolyline(points, format="xyb", close=True)


def rounded(msp, w, h, r):
    b = math.tan(math.pi / 8)
    points = [(r, 0, 0), (w - r, 0, b), (w, r, 0), (w, h - r, b), (w - r, h, 0), (r, h, b), (0, h - r, 0), (0, r, b)]
    msp.add_lwpolyline(points, format="xyb", close=True)


def drawings():
    for version in ("R2000", "R2004", "R2007", "R2010", "R2013", "R2018"):
        doc, msp = new(version)
        box(msp, 0, 0, 80, 50)
        msp.add_circle((20, 25), 5)
        msp.add_circle((60, 25), 5)
        yield f"plate-{version}", doc

    doc, msp = new("R12")
    msp.add_polyline2d([(0, 0, 0), (80, 0, 0), (80, 50, 0.3), (0, 50, 0)], format="xyb", close=True)
    msp.add_circle((40, 25), 8)
    yield "r12-polyline", doc

    doc, msp = new("R12")
    box_lines(msp, 0, 0, 120, 30, order=(2, 0, 3, 1), turned=(1, 3))
    msp.add_arc((30, 15), 5, 0, 180)
    msp.add_arc((30, 15), 5, 180, 360)
    yield "r12-lines-shuffled", doc

    doc, msp = new()
    box_lines(msp, -40, -20, 90, 60, order=(3, 1, 0, 2), turned=(0, 2))
    slot(msp, -20, 0, 30, 4, 0.4)
    slot(msp, -20, 25, 40, 3)
    yield "slots", doc

    doc, msp = new()
    rounded(msp, 100, 60, 10)
    msp.add_lwpolyline([(45, 30, 1), (55, 30, 1)], format="xyb", close=True)
    yield "bulge-circle", doc

    doc, msp = new()
    msp.add_line((-30, -20), (30, -20))
    msp.add_arc((30, 0), 20, -90, 90)
    msp.add_line((30, 20), (-30, 20))
    msp.add_arc((-30, 0), 20, 90, 270)
    msp.add_circle((0, 0), 10)
    yield "lines-and-arcs", doc

    doc, msp = new()
    msp.add_lwpolyline([(0, 0), (80, 0), (80, 50), (0, 50), (0, 0)], close=True)
    yield "first-corner-repeated", doc

    doc, msp = new()
    msp.add_lwpolyline([(0, 0), (80, 0), (80, 50), (0, 50), (0, 0)], close=False)
    msp.add_circle((10, 10), 3)
    yield "closed-by-its-ends", doc

    doc, msp = new()
    box_lines(msp, 0, 0, 80.004, 50)
    yield "four-lines", doc

    doc, msp = new()
    msp.add_line((0, 0), (80, 0))
    msp.add_line((80.003, 0.002), (80, 50))
    msp.add_line((80, 50), (0, 50.004))
    msp.add_line((0, 50), (0, 0))
    yield "gaps-under-a-hundredth", doc

    doc, msp = new()
    part = doc.blocks.new("PART")
    box(part, 0, 0, 60, 40)
    part.add_circle((30, 20), 6)
    msp.add_blockref("PART", (100, 50), dxfattribs={"rotation": 30})
    yield "block-turned", doc

    doc, msp = new()
    hole = doc.blocks.new("HOLE", base_point=(1, 1))
    hole.add_circle((1, 1), 2)
    box(msp, 0, 0, 100, 40)
    for x in (20, 50, 80):
        msp.add_blockref("HOLE", (x, 20), dxfattribs={"xscale": 1.5, "yscale": 1.5})
    yield "blocks-scaled", doc

    doc, msp = new()
    hole = doc.blocks.new("HOLE")
    hole.add_circle((0, 0), 2)
    pair = doc.blocks.new("PAIR")
    pair.add_blockref("HOLE", (0, 0))
    pair.add_blockref("HOLE", (20, 0))
    box(msp, -20, -20, 100, 40)
    msp.add_blockref("PAIR", (10, 0), dxfattribs={"rotation": 15})
    yield "blocks-nested", doc

    doc, msp = new()
    hole = doc.blocks.new("HOLE")
    hole.add_circle((0, 0), 3)
    box(msp, -20, -20, 140, 100)
    grid = {"column_count": 4, "row_count": 3, "column_spacing": 30, "row_spacing": 30}
    msp.add_blockref("HOLE", (0, 0), dxfattribs=grid)
    yield "blocks-in-rows", doc

    doc, msp = new(units=1)
    box(msp, 0, 0, 6, 4)
    msp.add_circle((2, 2), 0.5625)
    msp.add_circle((4, 2), 0.125)
    yield "inches-declared", doc

    doc, msp = new()
    doc.layers.add("CUT", color=1)
    doc.layers.add("BEND", color=3)
    box(msp, 0, 0, 80, 50, layer="CUT")
    msp.add_line((0, 20), (80, 20), dxfattribs={"layer": "BEND"})
    yield "bend-line-on-its-layer", doc

    doc, msp = new()
    points = [(40 * math.cos(i * math.pi / 90), 40 * math.sin(i * math.pi / 90)) for i in range(180)]
    msp.add_lwpolyline(points, close=True)
    msp.add_lwpolyline([(x / 4, y / 4) for x, y in points], close=True)
    yield "rings-of-lines", doc

    doc, msp = new()
    for i in range(12):
        a, b = i * math.pi / 6, (i + 1) * math.pi / 6
        r = 50 if i % 2 else 44
        q = 44 if i % 2 else 50
        msp.add_arc((0, 0), r, math.degrees(a), math.degrees(b))
        msp.add_line((r * math.cos(b), r * math.sin(b)), (q * math.cos(b), q * math.sin(b)))
    msp.add_circle((0, 0), 20)
    yield "teeth-of-lines-and-arcs", doc

    doc, msp = new()
    box(msp, 0, 0, 100, 80)
    for i in range(12):
        for k in range(9):
            msp.add_circle((10 + 7 * i, 10 + 7 * k), 2)
    yield "many-holes", doc


def entities(layout):
    for entity in layout:
        if entity.dxftype() == "INSERT":
            for copy in entity.multi_insert() if entity.mcount > 1 else [entity]:
                yield from entities(copy.virtual_entities())
        else:
            yield entity


def area_of(points):
    return abs(sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:] + points[:1]))) / 2


def inside(p, polygon):
    odd = False
    for a, b in zip(polygon, polygon[1:] + polygon[:1]):
        if (a.y <= p.y) != (b.y <= p.y) and a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) > p.x:
            odd = not odd
    return odd


def loops_of(layout):
    """Polygons of the closed contours; single lines and arcs are put together by ezdxf's own edge tools or by their ends."""
    closed, open_paths = [], []
    for entity in layout:
        if entity.dxf.layer == "BEND":
            continue
        one = ezpath.make_path(entity)
        points = list(one.flattening(0.001))
        (closed if one.is_closed or getattr(entity, "closed", False) or getattr(entity, "is_closed", False) else open_paths).append(points)
    while open_paths:
        chain = open_paths.pop()
        while chain[0].distance(chain[-1]) > 0.01:
            for i, other in enumerate(open_paths):
                if chain[-1].distance(other[0]) <= 0.01:
                    chain += other[1:]
                elif chain[-1].distance(other[-1]) <= 0.01:
                    chain += other[::-1][1:]
                else:
                    continue
                open_paths.pop(i)
                break
            else:
                raise ValueError("open")
        closed.append(chain)
    return closed


found = {}
for name, doc in drawings():
    file = folder / f"{name}.dxf"
    doc.saveas(file)
    again, audit = recover.readfile(file)
    loops = loops_of(entities(again.modelspace()))
    areas = [area_of(loop) for loop in loops]
    depth = [sum(1 for k, o in enumerate(loops) if k != i and areas[k] > areas[i] and inside(loop[0], o)) for i, loop in enumerate(loops)]
    xs = [p.x for loop in loops for p in loop]
    ys = [p.y for loop in loops for p in loop]
    scale = 25.4 if again.units == 1 else 1
    found[name] = {
        "units": again.header.get("$INSUNITS"),
        "release": again.dxfversion,
        "errors": len(audit.errors),
        "contours": len(loops),
        "area": sum(a if d % 2 == 0 else -a for a, d in zip(areas, depth)) * scale**2,
        "width": (max(xs) - min(xs)) * scale,
        "height": (max(ys) - min(ys)) * scale,
    }
print(json.dumps(found))
