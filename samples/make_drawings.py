#!/usr/bin/env python3
"""Writes the sample drawings, parts of our own invention, as small DXF files. Plain Python, nothing to install.

Run:  python3 samples/make_drawings.py
"""
import math
import os

HERE = os.path.dirname(os.path.abspath(__file__))


def group(code, value):
    return f"{code:>3}\n{value:.9f}\n" if isinstance(value, float) else f"{code:>3}\n{value}\n"


def entity(kind, subclass, layer, *groups):
    head = [(0, kind), (100, "AcDbEntity"), (8, layer), (100, subclass)]
    return "".join(group(*g) for g in [*head, *groups])


def xy(code, point):
    return [(code, float(point[0])), (code + 10, float(point[1]))]


def xyz(code, point):
    return [*xy(code, point), (code + 20, 0.0)]


def line(a, b, layer="OUTLINE"):
    return entity("LINE", "AcDbLine", layer, *xyz(10, a), *xyz(11, b))


def circle(centre, radius, layer="HOLE"):
    return entity("CIRCLE", "AcDbCircle", layer, *xyz(10, centre), (40, float(radius)))


def arc(centre, radius, start, end, layer="OUTLINE"):
    head = [(0, "ARC"), (100, "AcDbEntity"), (8, layer), (100, "AcDbCircle")]
    groups = [*head, *xyz(10, centre), (40, float(radius)), (100, "AcDbArc"), (50, float(start)), (51, float(end))]
    return "".join(group(*g) for g in groups)


def polyline(vertices, layer="OUTLINE"):
    """Closed; vertices are (x, y, bulge)."""
    groups = [(90, len(vertices)), (70, 1)]
    for x, y, bulge in vertices:
        groups += xy(10, (x, y)) + ([(42, float(bulge))] if bulge else [])
    return entity("LWPOLYLINE", "AcDbPolyline", layer, *groups)


def spline(controls, layer="OUTLINE"):
    """A closed cubic with even knots: the first three control points come again at the end."""
    points = controls + controls[:3]
    knots = [float(i - 3) for i in range(len(points) + 4)]
    groups = [(70, 1 | 2 | 8), (71, 3), (72, len(knots)), (73, len(points)), (74, 0)]
    groups += [(40, k) for k in knots]
    for p in points:
        groups += xyz(10, p)
    return entity("SPLINE", "AcDbSpline", layer, *groups)


def fillet(corners):
    """Vertices with bulges for a polygon whose corners (x, y, radius) are rounded."""
    result = []
    for i, (x, y, r) in enumerate(corners):
        (px, py, _), (nx, ny, _) = corners[i - 1], corners[(i + 1) % len(corners)]
        a, b = math.hypot(px - x, py - y), math.hypot(nx - x, ny - y)
        ux, uy, vx, vy = (px - x) / a, (py - y) / a, (nx - x) / b, (ny - y) / b
        turn = math.atan2(-ux * vy + uy * vx, -(ux * vx + uy * vy))
        cut = r * math.tan(abs(turn) / 2)
        result += [(x + ux * cut, y + uy * cut, math.tan(turn / 4)), (x + vx * cut, y + vy * cut, 0)]
    return result


def write(name, units, metric, *entities):
    header = [(0, "SECTION"), (2, "HEADER"), (9, "$ACADVER"), (1, "AC1024"), (9, "$INSUNITS"), (70, units),
              (9, "$MEASUREMENT"), (70, metric), (0, "ENDSEC")]
    tables = [(0, "SECTION"), (2, "TABLES"), (0, "TABLE"), (2, "LAYER"), (70, 2)]
    for layer, colour in (("OUTLINE", 7), ("HOLE", 3)):
        tables += [(0, "LAYER"), (100, "AcDbSymbolTableRecord"), (100, "AcDbLayerTableRecord"), (2, layer), (70, 0),
                   (62, colour), (6, "CONTINUOUS")]
    tables += [(0, "ENDTAB"), (0, "ENDSEC"), (0, "SECTION"), (2, "ENTITIES")]
    end = [(0, "ENDSEC"), (0, "EOF")]
    text = "".join(group(*g) for g in header + tables) + "".join(entities) + "".join(group(*g) for g in end)
    folder = os.path.join(HERE, name)
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(folder, "part.dxf"), "w", encoding="ascii", newline="\n") as file:
        file.write(text)


def kidney_table():
    """A table top, about 1000 x 600 mm, with a hole of 70 mm for cables."""
    controls = [(-480, -100), (-360, -310), (-120, -265), (60, -170), (250, -255), (450, -290), (575, -60),
                (500, 220), (260, 345), (0, 350), (-280, 340), (-500, 170)]
    write("kidney-table", 4, 1, spline(controls), circle((150, 150), 35))


def u_yoke():
    """A U of 700 x 500 mm with legs 140 mm wide; all corners rounded."""
    corners = [(0, 0, 90), (700, 0, 90), (700, 500, 30), (560, 500, 30), (560, 160, 60), (140, 160, 60),
               (140, 500, 30), (0, 500, 30)]
    write("u-yoke", 4, 1, polyline(fillet(corners)))


def crest_rail():
    """A chair's back rail, about 520 mm long: two concentric arcs 74 mm apart, ends rounded by half circles."""
    inner, outer, half = 463.0, 537.0, 26.0
    middle, end = (inner + outer) / 2, (outer - inner) / 2
    tip = [(middle * math.sin(math.radians(a)), middle * math.cos(math.radians(a))) for a in (half, -half)]
    write("crest-rail", 4, 1,
          arc((0, 0), outer, 90 - half, 90 + half), arc((0, 0), inner, 90 - half, 90 + half),
          arc(tip[0], end, 270 - half, 90 - half), arc(tip[1], end, 90 + half, 270 + half))


def chair_seat():
    """A seat of about 17.5 x 16.5 inches, drawn in inches: lines and arcs in no order, some lines the other way round."""
    # The front is the wide edge; all corners have the radius r.
    r, back, front = 1.5, 6.25, 8.75
    top = 15.75
    # Corner centres lie r inside the straight side; the side touches both corner arcs.
    low, high = (front - r, r), (back - r, top - r)
    lean = math.atan2(low[0] - high[0], high[1] - low[1])
    nx, ny = math.cos(lean), math.sin(lean)
    side = [(p[0] + r * nx, p[1] + r * ny) for p in (low, high)]
    degrees = math.degrees(lean)
    # The front: one arc that bows out by the rise and runs smoothly into both corner arcs.
    rise = 0.75
    centre = (low[0] ** 2 / rise - rise) / 2 + r
    span = math.degrees(math.atan2(low[0], centre - low[1]))
    left = [(-x, y) for x, y in side]
    write("chair-seat", 1, 0,
          arc(high, r, degrees, 90),
          line((-high[0], top), (high[0], top)),
          arc((-low[0], low[1]), r, 180 - degrees, 270 - span),
          line(side[1], side[0]),
          arc((0, centre), centre + rise, 270 - span, 270 + span),
          line(left[0], left[1]),
          arc(low, r, 270 + span, degrees),
          arc((-high[0], high[1]), r, 90, 180 - degrees))


# The wash stand's top: boxes from the lower left to the upper right, the last figure the radius of their corners.
TOP, TOP_FRONT, TOP_BACK = (0.0, 0.0, 840.0, 440.0), 130.0, 30.0
BASIN = (280.0, 63.0, 620.0, 303.0, 100.0)
DISH = (70.0, 170.0, 210.0, 260.0, 25.0)
TAP, TAP_DIAMETER = (450.0, 370.0), 35.0


def box(x1, y1, x2, y2, front, back):
    return fillet([(x1, y1, front), (x2, y1, front), (x2, y2, back), (x1, y2, back)])


def wash_stand():
    """The top of a wash stand, 840 x 440 mm, with holes for basin and tap and a dish that is cut from the face."""
    write("wash-stand", 4, 1, polyline(box(*TOP, TOP_FRONT, TOP_BACK)), polyline(box(*BASIN, BASIN[4]), "BASIN"),
          circle(TAP, TAP_DIAMETER / 2, "TAP"), polyline(box(*DISH, DISH[4]), "DISH"))


if __name__ == "__main__":
    kidney_table()
    u_yoke()
    crest_rail()
    chair_seat()
    wash_stand()
