#!/usr/bin/env python3
"""Writes nine ordinary parts of solid wood, of our own invention: a drawing and a job of each. Plain Python, nothing to install.

Run:  python3 tests/PodLayout.Tests/Ordinary/make_parts.py
"""
import json
import math
import os

HERE = os.path.dirname(os.path.abspath(__file__))


def group(code, value):
    # Nine places: beyond them sines and roots may differ from machine to machine.
    return f"{code:>3}\n{value:.9f}\n" if isinstance(value, float) else f"{code:>3}\n{value}\n"


def entity(kind, layer, groups):
    return [(0, kind), (100, "AcDbEntity"), (8, layer), *groups]


def xy(code, point):
    return [(code, float(point[0])), (code + 10, float(point[1]))]


def xyz(code, point):
    return [*xy(code, point), (code + 20, 0.0)]


def line(a, b, layer="OUTLINE"):
    return entity("LINE", layer, [(100, "AcDbLine"), *xyz(10, a), *xyz(11, b)])


def circle(centre, radius, layer="OUTLINE"):
    return entity("CIRCLE", layer, [(100, "AcDbCircle"), *xyz(10, centre), (40, float(radius))])


def arc(centre, radius, start, end, layer="OUTLINE"):
    return entity("ARC", layer, [(100, "AcDbCircle"), *xyz(10, centre), (40, float(radius)), (100, "AcDbArc"),
                                 (50, float(start)), (51, float(end))])


def polyline(vertices, layer="OUTLINE"):
    """Closed; vertices are (x, y, bulge of the way to the next)."""
    groups = [(100, "AcDbPolyline"), (90, len(vertices)), (70, 1)]
    for x, y, bulge in vertices:
        groups += xy(10, (x, y)) + ([(42, float(bulge))] if bulge else [])
    return entity("LWPOLYLINE", layer, groups)


def box(x1, y1, x2, y2, radius, layer="OUTLINE"):
    """An upright rectangle with rounded corners, from its lower side around; one with a full radius has round ends."""
    quarter = math.tan(math.pi / 8)
    vertices = [(x1 + radius, y1, 0), (x2 - radius, y1, quarter), (x2, y1 + radius, 0), (x2, y2 - radius, quarter),
                (x2 - radius, y2, 0), (x1 + radius, y2, quarter), (x1, y2 - radius, 0), (x1, y1 + radius, quarter)]
    # Where a radius takes a whole side, its ends are one point.
    return polyline([v for i, v in enumerate(vertices) if v[:2] != vertices[(i + 1) % 8][:2]], layer)


def rise(chord, height):
    """The bulge of an arc over a chord; to the right of the way where it is positive."""
    return 2 * height / chord


def write_drawing(name, entities):
    layers = sorted({value for e in entities for code, value in e if code == 8})
    groups = [(0, "SECTION"), (2, "HEADER"), (9, "$ACADVER"), (1, "AC1015"), (9, "$INSUNITS"), (70, 4),
              (9, "$MEASUREMENT"), (70, 1), (0, "ENDSEC"),
              (0, "SECTION"), (2, "TABLES"), (0, "TABLE"), (2, "LAYER"), (70, len(layers))]
    for layer in layers:
        groups += [(0, "LAYER"), (100, "AcDbSymbolTableRecord"), (100, "AcDbLayerTableRecord"), (2, layer), (70, 0),
                   (62, 7), (6, "CONTINUOUS")]
    groups += [(0, "ENDTAB"), (0, "ENDSEC"), (0, "SECTION"), (2, "ENTITIES"), *(g for e in entities for g in e),
               (0, "ENDSEC"), (0, "EOF")]
    with open(os.path.join(HERE, f"{name}.dxf"), "w", encoding="ascii", newline="\n") as file:
        file.write("".join(group(*g) for g in groups))


def write_job(name, title, note, thickness, species, grain, cuts, **more):
    job = {"$schema": "../../../src/PodLayout/Schemas/job.schema.json", "version": 1, "name": title, "note": note,
           "drawing": f"{name}.dxf", **more, "thicknessMm": thickness, "species": species, "grainDeg": grain,
           "overhangMm": 60, "interiorSpanMm": 200, "cuts": cuts, "shop": "../../../samples/shop.json",
           "placement": "search"}
    with open(os.path.join(HERE, f"{name}.json"), "w", encoding="ascii", newline="\n") as file:
        file.write(json.dumps(job, indent=2) + "\n")


def through(name, side, tool, passes, **lines):
    return {"operation": "throughProfile", "name": name, **lines, "side": side, "toolDiameterMm": tool,
            "depthBelowUndersideMm": 0.5, "cutter": {"flutes": 3, "helix": "downCut", "passDepthMm": passes}}


def outline(passes=6):
    return through("outline", "outside", 12, passes, along="outline")


def sawn_outline():
    """What a bandsaw left, 2 mm wide, is taken off."""
    cut = outline()
    cut["cutter"]["widthMm"] = 2
    return cut


def openings(tool=12, passes=6):
    return through("openings", "inside", tool, passes, along="holes")


def arm_rest():
    """A banana 520 mm long: 60 mm wide at its round ends, 75 in the middle, all arcs running smoothly into each other."""
    length, end, low, high = 463.2, 60.0, math.radians(23), math.radians(30)
    # The ends lean by the mean of the angles at which the lower and the upper arc set out.
    lean = (low + high) / 2
    dx, dy = end / 2 * math.sin(lean), end / 2 * math.cos(lean)
    cap = math.tan((math.pi - (high - low)) / 4)
    write_drawing("arm-rest", [polyline([
        (dx, -dy, -math.tan(low / 2)), (length - dx, -dy, cap),
        (length + dx, dy, math.tan(high / 2)), (-dx, dy, cap)])])
    write_job("arm-rest", "Arm rest", "Narrow and curved; sawn to shape before, the cutter cleans the edge.",
              28, "white oak", 0, [sawn_outline()])


def wreath():
    """A quarter of a ring, 65 mm wide about a radius of 250 mm."""
    inner, outer = 217.5, 282.5
    write_drawing("wreath", [
        arc((0, 0), outer, 0, 90), line((0, outer), (0, inner)), arc((0, 0), inner, 0, 90), line((inner, 0), (outer, 0))])
    write_job("wreath", "Stair wreath", "A quarter turn of a handrail, sawn to shape before.",
              45, "white oak", -45, [sawn_outline()])


def bracket():
    """A shelf bracket of 220 x 180 mm, 30 mm wide at its tips, with a hollow front and two screw holes."""
    chord = math.hypot(190, 150)
    write_drawing("bracket", [
        polyline([(0, 0, 0), (220, 0, 0), (220, 30, -rise(chord, 45)), (30, 180, 0), (0, 180, 0)]),
        circle((170, 18), 4, "SCREW"), circle((18, 135), 4, "SCREW")])
    drill = {"operation": "drill", "name": "screw holes", "layer": "SCREW", "diameterMm": 8, "depthBelowUndersideMm": 1}
    write_job("bracket", "Shelf bracket", "Small, with narrow tips.", 22, "hard maple", 0, [drill, outline()])


def arched_door():
    """A door's frame of 420 x 700 mm: stiles and rails 65 mm wide, the top one arched; its panel is let in later."""
    width, height, arch, rail = 420.0, 700.0, 100.0, 65.0
    radius = ((width / 2) ** 2 + arch ** 2) / (2 * arch)
    within = radius - rail
    half = width / 2 - rail
    spring = height - radius + math.sqrt(within ** 2 - half ** 2)
    drop = within - math.sqrt(within ** 2 - half ** 2)
    write_drawing("arched-door", [
        polyline([(0, 0, 0), (width, 0, 0), (width, height - arch, rise(width, arch)), (0, height - arch, 0)]),
        polyline([(rail, rail, 0), (width - rail, rail, 0), (width - rail, spring, rise(2 * half, drop)), (rail, spring, 0)],
                 "OPENING")])
    write_job("arched-door", "Arched door", "A glued-up frame, open in the middle.", 20, "hard maple", 90,
              [openings(), outline()])


def juice_board():
    """A cutting board of 450 x 300 mm with a groove 12 mm wide and 6 mm deep, 20 mm in from the edge."""
    middle = 20 + 12 / 2
    write_drawing("juice-board", [
        box(0, 0, 450, 300, 25), box(middle, middle, 450 - middle, 300 - middle, 15, "GROOVE")])
    # The tool runs on the line and leaves 24 of 30 mm.
    groove = {"operation": "throughProfile", "name": "juice groove", "layer": "GROOVE", "side": "on",
              "toolDiameterMm": 12, "skinMm": 24, "cutter": {"flutes": 2, "helix": "upCut", "passDepthMm": 3}}
    write_job("juice-board", "Cutting board", "With a juice groove around it.", 30, "hard maple", 0,
              [groove, outline()], layers={"GROOVE": "cut"})


def headboard():
    """A bed's headboard of 1500 x 600 mm, its top an arc, with two slots of 500 x 30 mm."""
    write_drawing("headboard", [
        polyline([(0, 0, 0), (1500, 0, 0), (1500, 400, rise(1500, 200)), (0, 400, 0)]),
        box(150, 250, 650, 280, 15, "SLOT"), box(850, 250, 1350, 280, 15, "SLOT")])
    write_job("headboard", "Headboard", "As long as the board.", 24, "white oak", 0, [openings(), outline()])


def fretwork():
    """A panel of 400 x 250 mm with twenty openings of 50..60 x 36..41 mm, square and round by turns, and bars of 17..25 mm."""
    widths, heights = (50, 58, 60, 58, 50), (36, 41, 41, 36)
    entities = [box(0, 0, 400, 250, 4)]
    y = 22.5
    for row, height in enumerate(heights):
        x = 25
        for column, width in enumerate(widths):
            radius = 5 if (row + column) % 2 == 0 else height / 2
            entities.append(box(x, y, x + width, y + height, radius, "FRET"))
            x += width + 18.5
        y += height + 17
    write_drawing("fretwork", entities)
    write_job("fretwork", "Fretwork panel", "No place for a pod between the openings.", 10, "hard maple", 0,
              [openings(6, 3), outline(5)])


def round_top():
    """A stool's or a small table's top, 600 mm across."""
    write_drawing("round-top", [circle((0, 0), 300)])
    write_job("round-top", "Round top", "The plainest of all.", 22, "white oak", 0, [outline()])


def wedge():
    """A long taper: 600 mm long, 90 mm wide at one end and 8 at the other."""
    write_drawing("wedge", [
        line((0, 0), (600, 0)), line((600, 0), (600, 8)), line((600, 8), (0, 90)), line((0, 90), (0, 0))])
    write_job("wedge", "Wedge", "Its thin end is narrower than any pod; sawn to shape before.", 30, "hard maple", 0, [sawn_outline()])


if __name__ == "__main__":
    arm_rest()
    wreath()
    bracket()
    arched_door()
    juice_board()
    headboard()
    fretwork()
    round_top()
    wedge()
