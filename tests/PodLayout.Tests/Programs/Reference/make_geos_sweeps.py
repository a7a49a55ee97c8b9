#!/usr/bin/env python3
"""Fifty random paths of our own, and what GEOS computes for a disc swept along each.

Writes geos-sweeps.json: points in mm (three decimals, as a post writes them), the disc's radius, and area and bounds of the
line grown by it (2048 chords to the quarter). Needs shapely (Debian: python3-shapely). Run in this folder.
"""
import json
import math
import random

import shapely
from shapely import geos
from shapely.geometry import LineString


def path(rng):
    """A walk whose step, turn and number of points vary: smooth, jagged, crossing itself, going back."""
    kind = rng.choice(["smooth", "jagged", "raster"])
    x, y, t = rng.uniform(-100, 100), rng.uniform(-100, 100), rng.uniform(0, 6)
    points = [(round(x, 3), round(y, 3))]
    for i in range(rng.randint(2, 120)):
        if kind == "raster":
            x += (60 if i % 4 == 0 else -60 if i % 4 == 2 else 0) + rng.uniform(-1, 1)
            y += 7 if i % 2 else 0
        else:
            t += rng.gauss(0, 0.1 if kind == "smooth" else 1.5)
            step = rng.uniform(0.5, 12)
            x, y = x + step * math.cos(t), y + step * math.sin(t)
        points.append((round(x, 3), round(y, 3)))
    return points


def main():
    rng = random.Random(6983)
    sweeps = []
    for _ in range(50):
        points, radius = path(rng), rng.choice([1.5, 2, 3, 3.175, 5, 6, 8, 10, 12.7, 20])
        swept = LineString(points).buffer(radius, resolution=2048)
        sweeps.append({"radiusMm": radius, "points": points, "areaMm2": swept.area, "bounds": swept.bounds})
    source = f"GEOS {'.'.join(map(str, geos.geos_version))} through shapely {shapely.__version__}"
    with open("geos-sweeps.json", "w", newline="\n") as f:
        json.dump({"source": source, "sweeps": sweeps}, f, separators=(",", ":"))
        f.write("\n")


if __name__ == "__main__":
    main()
