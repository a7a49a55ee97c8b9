"""Reads a DXF drawing with ezdxf, audits it, and prints what each layer holds as JSON."""
import json
import math
import sys

import ezdxf

drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
layers = {}
for entity in drawing.modelspace():
    layer = layers.setdefault(entity.dxf.layer, {"circles": 0, "length": 0.0, "count": 0})
    layer["count"] += 1
    kind = entity.dxftype()
    if kind == "CIRCLE":
        layer["circles"] += 1
    elif kind == "LINE":
        layer["length"] += (entity.dxf.end - entity.dxf.start).magnitude
    elif kind == "LWPOLYLINE":
        points = [(p[0], p[1]) for p in entity.get_points()]
        pairs = zip(points, points[1:] + (points[:1] if entity.closed else []))
        layer["length"] += sum(math.dist(a, b) for a, b in pairs)
print(json.dumps({
    "errors": len(audit.errors),
    "fixes": len(audit.fixes),
    "version": drawing.dxfversion,
    "units": drawing.units,
    "layers": layers,
}))
