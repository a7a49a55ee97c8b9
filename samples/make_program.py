#!/usr/bin/env python3
"""Writes the programs of the samples that come with one, from a small post of our own, and the tray's drawing.

A tray of 700 x 440 mm with two handles, a slit, drilled holes, a pocket from the face, and a groove that the underside has
from an earlier clamping; and the wash stand's top of make_drawings.py. Plain Python, nothing to install.
Run:  python3 samples/make_program.py
"""
import math
import os

from make_drawings import (BASIN, DISH, HERE, TAP, TAP_DIAMETER, TOP, TOP_BACK, TOP_FRONT, circle, entity, fillet, polyline,
                           write, xyz)

NAME = "tray"
THICK, BELOW, RETRACT = 27.0, 0.8, 15.0
WIDTH, LENGTH, CORNER = 700.0, 440.0, 60.0
HANDLES = [(70.0, 220.0), (630.0, 220.0)]  # middles of slots 120 long along Y and 34 wide
SLOT_LONG, SLOT_WIDE = 120.0, 34.0
DRILLED = [(150.0, 60.0), (550.0, 60.0), (150.0, 380.0), (550.0, 380.0)]
SLIT = [(230.0, 340.0), (470.0, 340.0)]
GROOVE = [(230.0, 100.0), (470.0, 100.0)]
POCKET = (260.0, 160.0, 440.0, 270.0)


def line(a, b, layer):
    return entity("LINE", "AcDbLine", layer, *xyz(10, a), *xyz(11, b))


def drawing():
    corners = [(0, 0, CORNER), (WIDTH, 0, CORNER), (WIDTH, LENGTH, CORNER), (0, LENGTH, CORNER)]
    half, straight = SLOT_WIDE / 2, (SLOT_LONG - SLOT_WIDE) / 2
    slots = [polyline([(x - half, y + straight, 0), (x - half, y - straight, 1), (x + half, y - straight, 0),
                       (x + half, y + straight, 1)], "HANDLE") for x, y in HANDLES]
    x1, y1, x2, y2 = POCKET
    write(NAME, 4, 1, polyline(fillet(corners)), *slots, *[circle(c, 5) for c in DRILLED], line(*SLIT, "SLIT"),
          line(*GROOVE, "GROOVE"), polyline([(x1, y1, 0), (x2, y1, 0), (x2, y2, 0), (x1, y2, 0)], "POCKET"))


class Post:
    """Collects numbered lines."""

    def __init__(self):
        self.lines = []

    def put(self, *words):
        self.lines.append(f"N{10 * (len(self.lines) + 1)} " + " ".join(words))

    def tool(self, number, speed):
        self.put(f"G0 Z{RETRACT:.3f}")
        self.put(f"T{number} M6")
        self.put(f"S{speed} M3")

    def go(self, x, y):
        self.put(f"G0 X{x:.3f} Y{y:.3f}")

    def up(self):
        self.put(f"G0 Z{RETRACT:.3f}")


def outline(post, radius):
    """Clockwise around the outside, in two passes."""
    r = CORNER + radius
    for depth in (-THICK / 2, -THICK - BELOW):
        post.go(-radius, LENGTH / 2)
        post.put(f"G1 Z{depth:.3f} F2500")
        post.put(f"G1 Y{LENGTH - CORNER:.3f} F6000")
        post.put(f"G2 X{CORNER:.3f} Y{LENGTH + radius:.3f} I{r:.3f} J0")
        post.put(f"G1 X{WIDTH - CORNER:.3f}")
        post.put(f"G2 X{WIDTH + radius:.3f} Y{LENGTH - CORNER:.3f} I0 J{-r:.3f}")
        post.put(f"G1 Y{CORNER:.3f}")
        post.put(f"G2 X{WIDTH - CORNER:.3f} Y{-radius:.3f} I{-r:.3f} J0")
        post.put(f"G1 X{CORNER:.3f}")
        post.put(f"G2 X{-radius:.3f} Y{CORNER:.3f} I0 J{r:.3f}")
        post.put(f"G1 Y{LENGTH / 2:.3f}")
        post.up()


def handle(post, x, y, radius):
    """Inside, counter-clockwise, ramping down along the first side."""
    half, straight = SLOT_WIDE / 2 - radius, (SLOT_LONG - SLOT_WIDE) / 2
    post.go(x + half, y - straight)
    post.put("G1 Z0 F2500")
    depth = 0.0
    while depth > -THICK - BELOW:
        depth = max(depth - 9, -THICK - BELOW)
        contour(post, x, y, half, straight, depth)
    contour(post, x, y, half, straight, depth)
    post.up()


def contour(post, x, y, half, straight, depth):
    post.put(f"G1 Y{y + straight:.3f} Z{depth:.3f} F5000")
    post.put(f"G3 X{x - half:.3f} I{-half:.3f} J0")
    post.put(f"G1 Y{y - straight:.3f}")
    post.put(f"G3 X{x + half:.3f} I{half:.3f} J0")


def pocket(post, radius):
    x1, y1, x2, y2 = (v + s * radius for v, s in zip(POCKET, (1, 1, -1, -1)))
    post.go(x1, y1)
    post.put("G1 Z-12.000 F2500")
    y, right = y1, True
    while True:
        post.put(f"G1 X{x2 if right else x1:.3f} F6000")
        if y >= y2:
            break
        y, right = min(y + 1.5 * radius, y2), not right
        post.put(f"G1 Y{y:.3f}")
    post.up()


def save(post, name, title):
    post.put("M5")
    post.put("M30")
    with open(os.path.join(HERE, name, "part.nc"), "w", encoding="ascii", newline="\n") as file:
        file.write(f"%\n({title}, Z ZERO ON THE FACE, SAMPLE)\n" + "\n".join(post.lines) + "\n%\n")


def program():
    post = Post()
    post.put("G21 G90 G17 G40 G49 G80")
    post.tool(1, 18000)
    pocket(post, 6)
    for x, y in HANDLES:
        handle(post, x, y, 6)
    post.tool(2, 20000)
    post.go(*SLIT[0])
    post.put(f"G1 Z{-THICK - BELOW:.3f} F1500")
    post.put(f"G1 X{SLIT[1][0]:.3f} F4000")
    post.up()
    post.tool(3, 4000)
    for i, (x, y) in enumerate(DRILLED):
        post.put((f"G99 G83 Z{-THICK - 2:.3f} R2 Q10 F800 " if i == 0 else "") + f"X{x:.3f} Y{y:.3f}")
    post.put("G80")
    post.tool(1, 18000)
    outline(post, 6)
    save(post, NAME, "TRAY")


# The wash stand's top: the radius of its tool, depth of a pass, and the skin that it leaves along the outline.
TOP_THICK, TOP_RADIUS, TOP_PASS, TOP_SKIN = 30.0, 6.0, 6.0, 0.8
DISH_DEEP = 25.0


def passes(depth, step=TOP_PASS):
    count = math.ceil(depth / step - 1e-9)
    return [-depth * (i + 1) / count for i in range(count)]


def rounded(post, box, radii, depth):
    """Once around a box with rounded corners from the middle of its left side, clockwise: x and y from the lower left."""
    x1, y1, x2, y2 = box
    front, back = radii
    post.put(f"G1 Z{depth:.3f} F2500")
    post.put(f"G1 Y{y2 - back:.3f} F6000")
    post.put(f"G2 X{x1 + back:.3f} Y{y2:.3f} I{back:.3f} J0")
    post.put(f"G1 X{x2 - back:.3f}")
    post.put(f"G2 X{x2:.3f} Y{y2 - back:.3f} I0 J{-back:.3f}")
    post.put(f"G1 Y{y1 + front:.3f}")
    post.put(f"G2 X{x2 - front:.3f} Y{y1:.3f} I{-front:.3f} J0")
    post.put(f"G1 X{x1 + front:.3f}")
    post.put(f"G2 X{x1:.3f} Y{y1 + front:.3f} I0 J{front:.3f}")
    post.put(f"G1 Y{(y1 + y2) / 2:.3f}")


def grown(box, by):
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def wash_stand_program():
    post = Post()
    post.put("G21 G90 G17 G40 G49 G80")
    post.tool(1, 18000)
    dish(post)
    # The hole for the tap: a helix, then once around at its bottom.
    x, y, r = *TAP, TAP_DIAMETER / 2 - TOP_RADIUS
    post.go(x + r, y)
    post.put("G1 Z0 F2500")
    for depth in [*passes(TOP_THICK + BELOW, 4), -TOP_THICK - BELOW]:
        post.put(f"G3 X{x + r:.3f} Y{y:.3f} Z{depth:.3f} I{-r:.3f} J0 F3000")
    post.up()
    for box, radii, by, depth in ((BASIN[:4], (BASIN[4], BASIN[4]), -TOP_RADIUS, TOP_THICK + BELOW),
                                  (TOP, (TOP_FRONT, TOP_BACK), TOP_RADIUS, TOP_THICK - TOP_SKIN)):
        way = grown(box, by)
        post.go(way[0], (way[1] + way[3]) / 2)
        for z in passes(depth):
            rounded(post, way, [r + by for r in radii], z)
        post.up()
    save(post, "wash-stand", "TOP OF A WASH STAND")


def dish(post):
    """Layer by layer: to and fro within, then around the edge."""
    way = grown(DISH[:4], -TOP_RADIUS)
    corner = DISH[4] - TOP_RADIUS
    x1, y1, x2, y2 = grown(way, -1.5 * TOP_RADIUS)
    post.go(way[0], (way[1] + way[3]) / 2)
    for z in passes(DISH_DEEP):
        rounded(post, way, (corner, corner), z)
        y, right = y1, True
        post.put(f"G1 X{x1:.3f} Y{y:.3f}")
        while True:
            post.put(f"G1 X{x2 if right else x1:.3f}")
            if y >= y2:
                break
            y, right = min(y + 1.5 * TOP_RADIUS, y2), not right
            post.put(f"G1 Y{y:.3f}")
        post.put(f"G1 X{way[0]:.3f} Y{(way[1] + way[3]) / 2:.3f}")
    post.up()


if __name__ == "__main__":
    drawing()
    program()
    wash_stand_program()
