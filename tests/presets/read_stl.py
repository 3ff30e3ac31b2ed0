"""Reads binary STL files and prints what they weigh, as JSON: a second reader that shares no line with the program.

Volume, centre and inertia are surface integrals over the facets (divergence theorem), summed with math.fsum. Density 1.
"""
import json
import math
import struct
import sys


def facets(path):
    with open(path, "rb") as file:
        data = file.read()
    (count,) = struct.unpack_from("<I", data, 80)
    if len(data) != 84 + 50 * count:
        raise SystemExit(f"{path}: {len(data)} bytes do not hold {count} facets")
    for i in range(count):
        numbers = struct.unpack_from("<12f", data, 84 + 50 * i)
        yield numbers[3:6], numbers[6:9], numbers[9:12]


def moments(a, b, c, n):
    """Integrals over a facet of x n_x, x^2 n_x / 2, x^3 n_x / 3 and of x^2 y n_x / 2 ..., n twice the facet's area vector."""
    first = [n[0] * (a[0] + b[0] + c[0]) / 6]
    second, third, mixed = [], [], []
    for k in range(3):
        p, q, r = a[k], b[k], c[k]
        s2 = p * p + q * q + r * r + p * q + q * r + r * p
        second.append(n[k] * s2 / 24)
        s3 = p**3 + q**3 + r**3 + p * p * (q + r) + q * q * (p + r) + r * r * (p + q) + p * q * r
        third.append(n[k] * s3 / 60)
        m = (k + 1) % 3
        u, v, w = a[m], b[m], c[m]
        # Mean over a triangle of f^2 g for linear f and g.
        s21 = (
            u * (3 * p * p + q * q + r * r + 2 * p * q + 2 * p * r + q * r)
            + v * (3 * q * q + p * p + r * r + 2 * p * q + 2 * q * r + p * r)
            + w * (3 * r * r + p * p + q * q + 2 * p * r + 2 * q * r + p * q)
        )
        mixed.append(n[k] * s21 / 120)
    return first + second + third + mixed


def main(paths):
    found = {}
    for path in paths:
        sums, area, edges, count = [], [], {}, 0
        low, high = [math.inf] * 3, [-math.inf] * 3
        for a, b, c in facets(path):
            count += 1
            u = [b[k] - a[k] for k in range(3)]
            v = [c[k] - a[k] for k in range(3)]
            n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
            area.append(math.hypot(*n) / 2)
            sums.append(moments(a, b, c, n))
            for p in (a, b, c):
                low = [min(low[k], p[k]) for k in range(3)]
                high = [max(high[k], p[k]) for k in range(3)]
            for p, q in ((a, b), (b, c), (c, a)):
                edges[p, q] = edges.get((p, q), 0) + 1
                edges[q, p] = edges.get((q, p), 0) - 1
        volume, x, y, z, xx, yy, zz, xy, yz, zx = (math.fsum(column) for column in zip(*sums))
        centre = [x / volume, y / volume, z / volume]
        gx, gy, gz = centre
        xx, yy, zz = xx - volume * gx * gx, yy - volume * gy * gy, zz - volume * gz * gz
        corners = len({p for p, _ in edges})
        found[path] = {
            "facets": count,
            "open": sum(1 for balance in edges.values() if balance != 0),
            # Euler: corners - edges + facets = 2 - 2 genus, for one closed shell.
            "genus": 1 - (corners - len(edges) // 2 + count) / 2,
            "area": math.fsum(area),
            "volume": volume,
            "centre": centre,
            "inertia": {
                "xx": yy + zz,
                "yy": xx + zz,
                "zz": xx + yy,
                "xy": xy - volume * gx * gy,
                "xz": zx - volume * gx * gz,
                "yz": yz - volume * gy * gz,
            },
            "low": low,
            "high": high,
        }
    print(json.dumps(found))


main(sys.argv[1:])
