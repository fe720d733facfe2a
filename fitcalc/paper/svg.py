"""Parts as SVG in millimetres, true scale: groups CUT, DRILL and ENGRAVE."""

import math
from collections.abc import Iterator
from itertools import pairwise
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from fitcalc.present.bench_parts import Layer, Outline, Part, Vertex
from fitcalc.present.part_drawing import part_bounds

COLOURS: dict[Layer, str] = {"CUT": "#ff0000", "DRILL": "#0000ff", "ENGRAVE": "#008000"}
LINE = 0.1
AROUND = 5.0
LETTERS = 2.5


def svg_bytes(part: Part, digest: str) -> bytes:
    """One part at 1:1; a user unit is a millimetre, y runs down as SVG has it."""
    left, bottom, right, top = part_bounds(part)
    wide, high = right - left + 2 * AROUND, top - bottom + 2 * AROUND
    root = Element("svg", xmlns="http://www.w3.org/2000/svg", version="1.1")
    root.set("width", f"{wide:g}mm")
    root.set("height", f"{high:g}mm")
    root.set("viewBox", f"{left - AROUND:g} {-top - AROUND:g} {wide:g} {high:g}")
    SubElement(root, "title").text = f"{part.title}: make {part.quantity}"
    SubElement(root, "desc").text = f"{part.id}; documents {digest}; millimetres"
    for layer in COLOURS:
        group = SubElement(
            root, "g", {"id": layer, "fill": "none", "stroke": COLOURS[layer], "stroke-width": f"{LINE:g}"}
        )
        group.extend(_shapes(part, layer))
    indent(root)
    return tostring(root, encoding="utf-8", xml_declaration=True)


def _shapes(part: Part, layer: Layer) -> Iterator[Element]:
    match layer:
        case "CUT":
            yield from (Element("path", d=path_of(outline)) for outline in part.outlines)
        case "DRILL":
            for hole in part.holes:
                (x, y) = hole.at
                yield Element("circle", cx=f"{x:g}", cy=f"{-y:g}", r=f"{hole.diameter / 2:g}")
        case "ENGRAVE":
            yield from _scribed(part)


def _scribed(part: Part) -> Iterator[Element]:
    for line in part.scribed:
        yield Element("polyline", points=" ".join(f"{x:.6g},{-y:.6g}" for x, y in line.points))
        if line.text:
            (x, y) = line.points[0]
            words = Element("text", {"x": f"{x:.6g}", "y": f"{-y - 1:.6g}", "font-size": f"{LETTERS:g}"})
            words.set("fill", COLOURS["ENGRAVE"])
            words.set("stroke", "none")
            words.text = line.text
            yield words


def path_of(outline: Outline) -> str:
    """The path of an outline, its bulges as arcs."""
    closed = (*outline.vertices, outline.vertices[0])
    edges = (_edge(start, end) for start, end in pairwise(closed))
    return " ".join((f"M {closed[0][0]:.6g} {-closed[0][1]:.6g}", *edges, "Z"))


def _edge(start: Vertex, end: Vertex) -> str:
    (x1, y1, bulge), (x2, y2, _) = start, end
    if bulge == 0.0:
        return f"L {x2:.6g} {-y2:.6g}"
    radius = math.hypot(x2 - x1, y2 - y1) * (1.0 + bulge * bulge) / (4.0 * abs(bulge))
    large, sweep = int(abs(bulge) > 1.0), int(bulge < 0.0)
    return f"A {radius:.6g} {radius:.6g} 0 {large} {sweep} {x2:.6g} {-y2:.6g}"
