"""Reads a layout's drawing with ezdxf, audits it, and prints the shapes of each layer as JSON."""
import json
import sys

import ezdxf

drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
layers = {}
for entity in drawing.modelspace():
    layer = layers.setdefault(entity.dxf.layer, {"circles": [], "rings": [], "texts": [], "lines": []})
    kind = entity.dxftype()
    if kind == "CIRCLE":
        layer["circles"].append([entity.dxf.center.x, entity.dxf.center.y, entity.dxf.radius])
    elif kind == "LWPOLYLINE":
        layer["rings"].append([[p[0], p[1]] for p in entity.get_points()])
    elif kind == "TEXT":
        layer["texts"].append(entity.dxf.text)
    elif kind == "LINE":
        layer["lines"].append([entity.dxf.start.x, entity.dxf.start.y, entity.dxf.end.x, entity.dxf.end.y])
print(json.dumps({
    "errors": len(audit.errors),
    "fixes": len(audit.fixes),
    "version": drawing.dxfversion,
    "units": drawing.units,
    "layers": layers,
}))
