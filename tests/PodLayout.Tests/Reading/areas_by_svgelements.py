"""Areas of the shapes of the SVG files that a list names, by svgelements, in mm2.

Prints {file name: [areas, the largest first]}. Curves are cut into 2000 chords each.
"""
import json
import sys
from pathlib import Path

import svgelements

MM = 25.4 / 96
result = {}
for name in Path(sys.argv[1]).read_text().split("\n"):
    if not name:
        continue
    areas = []
    for shape in svgelements.SVG.parse(name, reify=True, ppi=96).elements():
        if not isinstance(shape, svgelements.Shape):
            continue
        path = abs(svgelements.Path(shape))
        points = []
        for segment in path:
            if isinstance(segment, (svgelements.Move, svgelements.Line, svgelements.Close)):
                points.append(segment.end)
            else:
                points.extend(segment.point(i / 2000) for i in range(1, 2001))
        points = [p for p in points if p is not None]
        total = sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:] + points[:1])) / 2
        areas.append(abs(total) * MM * MM)
    result[Path(name).name] = sorted(areas, reverse=True)
print(json.dumps(result))
