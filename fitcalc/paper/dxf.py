"""Parts as DXF R2010 in millimetres, for a cutter: layers CUT, DRILL and ENGRAVE."""

import io

from ezdxf.document import Drawing
from ezdxf.enums import TextEntityAlignment
from ezdxf.filemanagement import new
from ezdxf.units import MM

from fitcalc.present.bench_parts import Layer, Part

COLOURS: dict[Layer, int] = {"CUT": 1, "DRILL": 5, "ENGRAVE": 3}
"""AutoCAD colour index of each layer: red, blue, green, which most cutters tell apart."""
LETTERS = 2.5
VERSION = "R2010"


def dxf_bytes(part: Part, digest: str) -> bytes:
    """One part at 1:1; its id and the documents' digest stand in the file's own data."""
    document = new(VERSION, units=MM)
    for name, colour in COLOURS.items():
        document.layers.add(name, color=colour)
    document.header.custom_vars.append("part", part.id)
    document.header.custom_vars.append("documents", digest)
    _add(part, document)
    text = io.StringIO()
    document.write(text)
    return text.getvalue().encode(document.encoding, errors="replace")


def _add(part: Part, document: Drawing) -> None:
    space = document.modelspace()
    for outline in part.outlines:
        space.add_lwpolyline(outline.vertices, format="xyb", close=True, dxfattribs={"layer": "CUT"})
    for hole in part.holes:
        space.add_circle(hole.at, hole.diameter / 2, dxfattribs={"layer": "DRILL"})
    for line in part.scribed:
        space.add_lwpolyline(line.points, dxfattribs={"layer": "ENGRAVE"})
        if line.text:
            words = space.add_text(line.text, height=LETTERS, dxfattribs={"layer": "ENGRAVE"})
            words.set_placement(line.points[0], align=TextEntityAlignment.BOTTOM_LEFT)
