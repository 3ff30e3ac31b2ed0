"""Reads a DXF file with ezdxf and prints what it found as JSON: audit, header, every entity."""
import json
import math
import sys

import ezdxf
from ezdxf import recover


def loop_area(points):
    """Signed area of a loop of (x, y, bulge): chords by cross products, arcs by their segments."""
    total = 0.0
    for i, (x, y, bulge) in enumerate(points):
        nx, ny, _ = points[(i + 1) % len(points)]
        total += (x * ny - nx * y) / 2
        if bulge:
            sweep = 4 * math.atan(bulge)
            radius = math.hypot(nx - x, ny - y) / (2 * math.sin(sweep / 2))
            total += radius * radius * (sweep - math.sin(sweep)) / 2
    return total


def loop(entity):
    """The corners of a polyline of either kind."""
    if entity.dxftype() == "LWPOLYLINE":
        return [(x, y, b) for x, y, b in entity.get_points("xyb")], entity.closed
    corners = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in entity.vertices]
    return corners, entity.is_closed


def describe(entity):
    kind = entity.dxftype()
    found = {"type": kind, "layer": entity.dxf.layer}
    if kind == "CIRCLE":
        centre = entity.dxf.center
        radius = entity.dxf.radius
        return {**found, "closed": True, "x": centre.x, "y": centre.y, "r": radius, "area": math.pi * radius**2}
    if kind in ("LWPOLYLINE", "POLYLINE"):
        points, closed = loop(entity)
        following = points[1:] + points[:1]
        repeated = sum(1 for p, n in zip(points, following) if math.hypot(p[0] - n[0], p[1] - n[1]) < 1e-6)
        return {
            **found,
            "closed": bool(closed),
            "points": points,
            "bulges": sum(1 for p in points if p[2]),
            "repeated": repeated,
            "area": loop_area(points),
        }
    return found


def main(path):
    # The plain reader must take the file as it is; the recovering one tells what it had to mend.
    ezdxf.readfile(path)
    document, audit = recover.readfile(path)
    audited = document.audit()
    print(
        json.dumps(
            {
                "reader": ezdxf.__version__,
                "release": document.dxfversion,
                "units": document.header.get("$INSUNITS"),
                "measurement": document.header.get("$MEASUREMENT"),
                "errors": [e.message for e in audit.errors + audited.errors],
                "fixes": [e.message for e in audit.fixes + audited.fixes],
                "layers": [layer.dxf.name for layer in document.layers],
                "modelspace": [describe(e) for e in document.modelspace()],
                "paperspace": sum(len(layout) for layout in document.layouts if not layout.is_modelspace),
            }
        )
    )


main(sys.argv[1])
