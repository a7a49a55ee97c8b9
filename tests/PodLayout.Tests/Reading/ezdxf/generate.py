#!/usr/bin/python3
"""Writes the drawings that the tests read, with ezdxf (an independent library; its version is in VERSION.txt).

Run with Debian's python3-ezdxf:  /usr/bin/python3 generate.py
The expected areas and perimeters in the tests come from the definitions here, by formula.
"""
import math
import os

import ezdxf

HERE = os.path.dirname(os.path.abspath(__file__))
VERSIONS = ["R12", "R2000", "R2010", "R2018"]
MODERN = VERSIONS[1:]


def new(version, units=4):
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"] = units
    doc.header["$MEASUREMENT"] = 0 if units == 1 else 1
    for name in ("OUTLINE", "HOLE"):
        doc.layers.add(name)
    return doc, doc.modelspace()


def polyline(doc, msp, points, layer, closed=True):
    """Points are (x, y, bulge). R12 has no LWPOLYLINE."""
    if doc.dxfversion == "AC1009":
        msp.add_polyline2d(points, format="xyb", close=closed, dxfattribs={"layer": layer})
    else:
        msp.add_lwpolyline(points, format="xyb", close=closed, dxfattribs={"layer": layer})


def slot(version):
    """A slot 600 x 200 mm (two half circles, radius 100, by bulge 1), and a circle of radius 30."""
    doc, msp = new(version)
    polyline(doc, msp, [(-200, -100, 0), (200, -100, 1), (200, 100, 0), (-200, 100, 1)], "OUTLINE")
    msp.add_circle((40, 10), 30, dxfattribs={"layer": "HOLE"})
    return doc


def loose(version):
    """A rectangle 300 x 200 with corners of radius 25, in unsorted lines and arcs, some lines reversed."""
    doc, msp = new(version)
    at = {"layer": "OUTLINE"}
    msp.add_line((25, 0), (275, 0), at)
    msp.add_arc((275, 175), 25, 0, 90, dxfattribs=at)
    msp.add_line((0, 25), (0, 175), at)
    msp.add_arc((25, 25), 25, 180, 270, dxfattribs=at)
    msp.add_line((300, 175), (300, 25), at)
    msp.add_arc((275, 25), 25, 270, 360, dxfattribs=at)
    msp.add_line((25, 200), (275, 200), at)
    msp.add_arc((25, 175), 25, 90, 180, dxfattribs=at)
    return doc


def inches(version):
    """A rectangle 20 x 10 inches with a hole of 2 inches diameter."""
    doc, msp = new(version, units=1)
    polyline(doc, msp, [(0, 0, 0), (20, 0, 0), (20, 10, 0), (0, 10, 0)], "OUTLINE")
    msp.add_circle((5, 5), 1, dxfattribs={"layer": "HOLE"})
    return doc


def blocks(version):
    """A square of 400 with: a unit circle inserted as an ellipse 40 x 20; a mirrored, turned, nested half disc; an array 3 x 2."""
    doc, msp = new(version)
    polyline(doc, msp, [(-50, -50, 0), (350, -50, 0), (350, 350, 0), (-50, 350, 0)], "OUTLINE")
    unit = doc.blocks.new("UNIT", base_point=(5, 5))
    unit.add_circle((5, 5), 1)
    half = doc.blocks.new("HALF")
    half.add_line((-10, 0), (10, 0))
    half.add_arc((0, 0), 10, 0, 180)
    nest = doc.blocks.new("NEST")
    nest.add_blockref("HALF", (3, 0), {"xscale": 2, "yscale": 2, "zscale": 2, "rotation": 30})
    at = {"layer": "HOLE"}
    msp.add_blockref("UNIT", (0, 0), {**at, "xscale": 40, "yscale": 20, "zscale": 1})
    msp.add_blockref("NEST", (120, 0), {**at, "xscale": -1, "yscale": 1.5, "rotation": 20})
    msp.add_blockref("UNIT", (200, 120), {**at, "xscale": 10, "yscale": 10, "zscale": 0, "rotation": 90,
                                        "column_count": 3, "row_count": 2, "column_spacing": 60, "row_spacing": 80})
    return doc


def ellipses(version):
    """An ellipse of semi-axes 300 and 180, turned by 30 degrees; half an ellipse 40 x 20 (end before start) closed by a line."""
    doc, msp = new(version)
    turn = math.radians(30)
    msp.add_ellipse((10, 20), (300 * math.cos(turn), 300 * math.sin(turn)), 0.6, dxfattribs={"layer": "OUTLINE"})
    at = {"layer": "HOLE"}
    msp.add_ellipse((0, 0), (40, 0), 0.5, 1.5 * math.pi, 0.5 * math.pi, dxfattribs=at)
    msp.add_line((0, 20), (0, -20), at)
    return doc


def splines(version):
    """A circle of radius 200 as a rational quadratic spline of nine control points; a parabola's arc closed by a line."""
    doc, msp = new(version)
    r, w = 200, math.sqrt(0.5)
    points = [(r, 0), (r, r), (0, r), (-r, r), (-r, 0), (-r, -r), (0, -r), (r, -r), (r, 0)]
    spline = msp.add_rational_spline(points, [1, w, 1, w, 1, w, 1, w, 1], degree=2,
                                     knots=[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4], dxfattribs={"layer": "OUTLINE"})
    spline.closed = True
    at = {"layer": "HOLE"}
    # Bezier quadratic: area between arc and chord = 2/3 of the triangle of its control points.
    msp.add_open_spline([(-60, 0), (0, 90), (60, 0)], degree=2, knots=[-1, -1, -1, 2, 2, 2], dxfattribs=at)
    msp.add_line((60, 0), (-60, 0), at)
    return doc


def periodic(version):
    """An unclamped, periodic cubic: 12 points on a circle of radius 100, the first three repeated."""
    doc, msp = new(version)
    ring = [(100 * math.cos(math.tau * i / 12), 100 * math.sin(math.tau * i / 12)) for i in range(12)]
    spline = msp.add_spline(degree=3, dxfattribs={"layer": "OUTLINE"})
    spline.control_points = ring + ring[:3]
    spline.knots = [float(i - 3) for i in range(19)]
    spline.dxf.flags = 1 | 2
    return doc


def fit(version):
    """A spline of fit points only: 24 points on a circle of radius 150, closed."""
    doc, msp = new(version)
    ring = [(150 * math.cos(math.tau * i / 24), 150 * math.sin(math.tau * i / 24)) for i in range(24)]
    spline = msp.add_spline(fit_points=ring + ring[:1], degree=3, dxfattribs={"layer": "OUTLINE"})
    spline.closed = True
    return doc


def mirrored(version):
    """Object coordinates with extrusion (0, 0, -1): the slot's X is mirrored, an arc and a circle too."""
    doc, msp = new(version)
    down = {"layer": "OUTLINE", "extrusion": (0, 0, -1)}
    # A half disc of radius 100 about world (50, 0), to the left: arc in mirrored coordinates about (-50, 0).
    msp.add_arc((-50, 0), 100, -90, 90, dxfattribs=down)
    msp.add_line((50, 100), (50, -100), {"layer": "OUTLINE"})
    msp.add_circle((-10, 20), 15, dxfattribs={"layer": "HOLE", "extrusion": (0, 0, -1)})
    return doc


def hidden(version):
    """A rectangle 200 x 100; everything else is in paper space, or on layers off or frozen, or text."""
    doc, msp = new(version)
    polyline(doc, msp, [(0, 0, 0), (200, 0, 0), (200, 100, 0), (0, 100, 0)], "OUTLINE")
    doc.layers.add("OFF").off()
    doc.layers.add("FROZEN").freeze()
    block = doc.blocks.new("MARK")
    block.add_circle((0, 0), 5)
    block.add_circle((0, 0), 8, dxfattribs={"layer": "HOLE"})
    msp.add_circle((50, 50), 10, dxfattribs={"layer": "OFF"})
    msp.add_circle((50, 50), 11, dxfattribs={"layer": "FROZEN"})
    msp.add_blockref("MARK", (150, 50), {"layer": "FROZEN"})
    msp.add_text("PART 7", dxfattribs={"layer": "HOLE"})
    msp.add_point((1, 1))
    doc.layout("Layout1").add_circle((50, 50), 13)
    return doc


def named(version):
    """A layer with a name outside ASCII."""
    doc, msp = new(version)
    doc.layers.add("KONTUR_Ä")
    polyline(doc, msp, [(0, 0, 0), (100, 0, 0), (100, 80, 0), (0, 80, 0)], "KONTUR_Ä")
    return doc


FIGURES = {
    slot: VERSIONS, loose: VERSIONS, inches: VERSIONS, blocks: VERSIONS, ellipses: MODERN, splines: MODERN,
    periodic: MODERN, fit: MODERN, mirrored: VERSIONS, hidden: VERSIONS, named: VERSIONS,
}
# The libraries' clocks and random ids must not show in the files.
ezdxf.options.write_fixed_meta_data_for_testing = True

for figure, versions in FIGURES.items():
    for version in versions:
        doc = figure(version)
        name = os.path.join(HERE, f"{figure.__name__}-{version}")
        doc.saveas(name + ".dxf")
        if figure in (slot, blocks, splines) and version in ("R12", "R2010"):
            doc.saveas(name + "-binary.dxf", fmt="bin")

with open(os.path.join(HERE, "VERSION.txt"), "w", encoding="utf-8") as f:
    f.write(f"ezdxf {ezdxf.__version__}\n")
