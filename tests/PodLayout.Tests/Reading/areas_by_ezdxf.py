"""Areas by layer of the drawings that a list names, by ezdxf: half the line integral of x dy - y dx over all curves of a layer.

Prints {file name: {layer: area in squared drawing units}}. Curves are flattened by ezdxf itself.
"""
import json
import sys
from pathlib import Path

import ezdxf.path
from ezdxf import recover

result = {}
for name in Path(sys.argv[1]).read_text().split("\n"):
    if not name:
        continue
    doc, _ = recover.readfile(name)
    areas = {}
    entities = []
    for entity in doc.modelspace():
        inserted = entity.virtual_entities() if entity.dxftype() == "INSERT" else [entity]
        for one in inserted:
            if entity.dxftype() == "INSERT" and one.dxf.layer == "0":
                # Layer 0 in a block stands for that of the insert; virtual entities are left on it.
                one.dxf.layer = entity.dxf.layer
            # Polylines become lines and arcs, so that bulges stay arcs.
            entities.extend(one.virtual_entities() if "POLYLINE" in one.dxftype() and one.has_arc else [one])
    for entity in entities:
        if entity.dxftype() == "TEXT":
            continue
        if entity.dxftype() in ("CIRCLE", "ARC", "ELLIPSE", "SPLINE"):
            # Their own flattening follows the curve; a path is of Bezier curves through it, which overstate areas by 2.7e-4.
            points = list(entity.flattening(1e-4))
        else:
            points = list(ezdxf.path.make_path(entity).flattening(1e-4))
        total = sum(a.x * b.y - b.x * a.y for a, b in zip(points, points[1:])) / 2
        areas[entity.dxf.layer] = areas.get(entity.dxf.layer, 0) + total
    result[Path(name).name] = areas
print(json.dumps(result))
