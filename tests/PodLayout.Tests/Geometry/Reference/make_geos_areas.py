#!/usr/bin/env python3
"""Ten irregular shapes of our own, and areas that GEOS computes for them.

Writes shapes.json (rings in mm, first point not repeated) and geos-areas.json: for each shape the area of the places where
the centre of a 90 x 50 mm rectangle, and of a disc of radius 35 mm, can be with the whole of it inside the shape; and the
area of the shape shrunk by 8 mm. Needs shapely (Debian: python3-shapely). Run in this folder.
"""
import json
import math

import shapely
from shapely.geometry import MultiPoint, Polygon
from shapely.ops import unary_union

WIDTH, HEIGHT, RADIUS, SHRINK = 90.0, 50.0, 35.0, 8.0


def wavy(radius, waves, n=400, squash=1.0, phase=0.0):
    """A round body whose radius swings: waves are (count, share) pairs."""
    ring = []
    for i in range(n):
        t = 2 * math.pi * i / n
        r = radius * (1 + sum(share * math.cos(count * t + phase * count) for count, share in waves))
        ring.append((round(r * math.cos(t), 3), round(squash * r * math.sin(t), 3)))
    return ring


def circle(x, y, r, n=90):
    return [(round(x + r * math.cos(2 * math.pi * i / n), 3), round(y + r * math.sin(2 * math.pi * i / n), 3)) for i in range(n)]


def star(points, outer, inner):
    ring = []
    for i in range(2 * points):
        r = outer if i % 2 == 0 else inner
        t = math.pi * i / points + 0.2
        ring.append((round(r * math.cos(t), 3), round(r * math.sin(t), 3)))
    return ring


SHAPES = [
    ("bean", wavy(300, [(1, 0.2), (2, 0.25)]), []),
    ("bean-with-hole", wavy(300, [(1, 0.2), (2, 0.25)]), [circle(120, 40, 40)]),
    ("three-lobes", wavy(260, [(3, 0.3)]), [circle(0, 0, 55)]),
    ("five-lobes", wavy(320, [(5, 0.22), (2, 0.1)], squash=0.7), []),
    ("star", star(5, 400, 190), []),
    ("yoke", [(0, 0), (700, 0), (700, 500), (561, 500), (545, 152), (139, 140), (140, 487), (3, 500)], []),
    ("comb", [(0, 0), (620, 0), (620, 300), (520, 300), (520, 120), (410, 120), (410, 290), (280, 290), (280, 110),
              (150, 110), (150, 310), (0, 310)], []),
    ("leaning-l", [(10, 0), (400, 35), (390, 180), (170, 160), (150, 420), (-20, 400)], []),
    ("notched", [(0, 0), (300, 0), (310, 120), (320, 0), (640, 0), (640, 260), (330, 255), (322, 150), (314, 255), (0, 260)], []),
    ("two-holes", wavy(280, [(2, 0.3), (7, 0.03)], n=700), [circle(150, 0, 45), circle(-160, 10, 60, n=7)]),
]


def swept(ring, half_w, half_h):
    """The sweep of the rectangle along a closed line: for each edge the hull of the rectangle at both ends."""
    hulls = []
    for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1]):
        corners = [(x + sx * half_w, y + sy * half_h) for x, y in ((ax, ay), (bx, by)) for sx in (-1, 1) for sy in (-1, 1)]
        hulls.append(MultiPoint(corners).convex_hull)
    return unary_union(hulls)


def main():
    areas = {}
    for name, outline, holes in SHAPES:
        body = Polygon(outline, holes)
        assert body.is_valid, name
        band = unary_union([swept(ring, WIDTH / 2, HEIGHT / 2) for ring in [outline, *holes]])
        areas[name] = {
            "rectangle": body.difference(band).area,
            "disc": body.buffer(-RADIUS, resolution=1024).area,
            "shrunk": body.buffer(-SHRINK, resolution=1024).area,
        }
    with open("shapes.json", "w", newline="\n") as f:
        json.dump([{"name": n, "outline": o, "holes": h} for n, o, h in SHAPES], f, indent=None, separators=(",", ":"))
        f.write("\n")
    made = {"source": f"GEOS {'.'.join(map(str, shapely.geos.geos_version))} through shapely {shapely.__version__}", "areas": areas}
    with open("geos-areas.json", "w", newline="\n") as f:
        json.dump(made, f, indent=2)
        f.write("\n")


if __name__ == "__main__":
    main()
