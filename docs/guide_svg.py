"""A drawing of the measuring guide as SVG: outlines wide, datum lines thin chain, tape and angle in one colour."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, cos, hypot, radians, sin
from xml.sax.saxutils import escape

from shapely import MultiLineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from fitcalc.documents.guide_drawing import Drawing, Line, Spot

SCALE = 3.4
MARGIN = 34.0
SIZE = 100 * SCALE + 2 * MARGIN
INK, ACCENT, PAPER = "#1b1e22", "#0072b2", "#ffffff"
OUTLINE, THIN, TAPE = 1.7, 0.8, 2.0
HEAD, HEAD_WIDTH = 9.0, 3.2
TEXT, LETTER, GAP = 14.0, 8.0, 5.0
"""Height of the lettering, the most that a letter is wide on the average, and its distance from a line, px."""
ALONG = (0.5, 0.35, 0.65, 0.2, 0.8, 0.0, 1.0)
"""Parts of a tape that its label may stand beside, best first."""


def svg(drawing: Drawing) -> str:
    """One drawing."""
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{SIZE:g}" height="{SIZE:g}" '
        f'viewBox="0 0 {SIZE:g} {SIZE:g}" font-family="DejaVu Sans, Arial, sans-serif" font-size="{TEXT:g}">'
    )
    paper = f'<rect width="{SIZE:g}" height="{SIZE:g}" fill="{PAPER}"/>'
    return "\n".join([head, paper, *figure(drawing), *measured(drawing), *labels(drawing), "</svg>"]) + "\n"


def figure(drawing: Drawing) -> Iterator[str]:
    """Outlines, wide; datum lines, thin chain."""
    for line in drawing.lines:
        yield run(line, INK, OUTLINE)
    for x, y, radius in drawing.circles:
        yield circle((x, y), radius * SCALE, INK, OUTLINE)
    for line in drawing.thin:
        yield run(line, INK, THIN, "12 3 2 3")


def measured(drawing: Drawing) -> Iterator[str]:
    """Tapes and arcs with their heads, and rings at what is measured."""
    for tape in drawing.tapes:
        yield run(tape.ends, ACCENT, TAPE)
        yield from heads(*tape.ends)
    for arc in drawing.arcs:
        yield run(arc.legs(), ACCENT, THIN * 1.5)
        yield run(arc.curve(), ACCENT, TAPE)
        yield head(arc.curve()[-2], arc.curve()[-1])
    for spot in drawing.spots:
        yield circle(spot, 4.5, ACCENT, TAPE)


def heads(start: Spot, end: Spot) -> Iterator[str]:
    """A head at both ends; from outside where there is no room between them."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    if length * SCALE > 2.5 * HEAD:
        yield from (head(start, end), head(end, start))
        return
    beyond = 16 / SCALE / length
    for tip, other in ((start, end), (end, start)):
        tail = (tip[0] + beyond * (tip[0] - other[0]), tip[1] + beyond * (tip[1] - other[1]))
        yield run((tail, tip), ACCENT, TAPE)
        yield head(tail, tip)


def head(tail: Spot, tip: Spot) -> str:
    """An arrowhead at a tip, pointing away from the tail."""
    (x, y), (from_x, from_y) = at(tip), at(tail)
    back = atan2(from_y - y, from_x - x)
    foot = (x + HEAD * cos(back), y + HEAD * sin(back))
    aside = (-HEAD_WIDTH * sin(back), HEAD_WIDTH * cos(back))
    spots = ((x, y), (foot[0] + aside[0], foot[1] + aside[1]), (foot[0] - aside[0], foot[1] - aside[1]))
    return f'<polygon points="{written(spots)}" fill="{ACCENT}" stroke="none"/>'


def labels(drawing: Drawing) -> Iterator[str]:
    """What is measured, in words, each where it hides least of the drawing."""
    clutter = clutter_of(drawing)
    taken: list[BaseGeometry] = []
    for words, anchors in wanted(drawing):
        place = min(places(words, anchors), key=lambda each: clutter.hidden(each, taken))
        taken.append(place)
        left, top, right, bottom = place.bounds
        yield (
            f'<rect x="{left:.1f}" y="{top:.1f}" width="{right - left:.1f}" height="{bottom - top:.1f}" '
            f'fill="{PAPER}" fill-opacity="0.8" stroke="none"/>'
        )
        yield (
            f'<text x="{(left + right) / 2:.1f}" y="{bottom - 5:.1f}" text-anchor="middle" '
            f'fill="{ACCENT}" stroke="none">{escape(words)}</text>'
        )


def wanted(drawing: Drawing) -> Iterator[tuple[str, Line]]:
    """Each label and the points that it may stand beside."""
    for tape in drawing.tapes:
        (x, y), (to_x, to_y) = tape.ends
        yield tape.label, tuple((x + (to_x - x) * part, y + (to_y - y) * part) for part in ALONG)
    if drawing.arcs:
        yield drawing.label, tuple(spot for arc in drawing.arcs for spot in arc.curve(6))
    if not drawing.tapes and not drawing.arcs:
        yield drawing.label, drawing.spots


def places(words: str, anchors: Line) -> Iterator[Polygon]:
    """Boxes for a label around each of its points, kept on the paper, px."""
    half, tall = len(words) * LETTER / 2 + 3, TEXT + 4
    for x, y in px(anchors):
        for away in (GAP, GAP + 8, GAP + 20):
            for turn in range(0, 360, 45):
                left = x - half + (half + away) * cos(radians(turn))
                top = y - tall / 2 + (tall / 2 + away) * sin(radians(turn))
                left = round(min(max(left, 2), SIZE - 2 - 2 * half), 1)
                top = round(min(max(top, 2), SIZE - 2 - tall), 1)
                yield box(left, top, left + 2 * half, top + tall)


@dataclass(frozen=True)
class Clutter:
    """What a label should not stand on, px."""

    marks: BaseGeometry
    legs: BaseGeometry
    outlines: BaseGeometry
    thin: BaseGeometry

    def hidden(self, place: Polygon, taken: list[BaseGeometry]) -> float:
        """How much a label there would hide: tapes and other labels count most, datum lines least."""
        hidden = (
            30 * place.buffer(2).intersection(self.marks).length + 3 * place.intersection(self.legs).length
        )
        hidden += 100 * sum(place.intersection(other).area for other in taken)
        hidden += place.intersection(self.outlines).length + 0.3 * place.intersection(self.thin).length
        return float(round(hidden, 1))


def clutter_of(drawing: Drawing) -> Clutter:
    """What is drawn, by how much it minds to be hidden."""
    rings = tuple(ring(x, y, radius) for x, y, radius in drawing.circles)
    tapes = tuple(tape.ends for tape in drawing.tapes)
    spots = tuple(ring(x, y, 2) for x, y in drawing.spots)
    return Clutter(
        together((*tapes, *spots, *(arc.curve() for arc in drawing.arcs))),
        together(tuple(arc.legs() for arc in drawing.arcs)),
        together((*drawing.lines, *rings)),
        together(drawing.thin),
    )


def ring(x: float, y: float, radius: float) -> Line:
    """A circle as a run of points."""
    turns = [radians(turn) for turn in range(0, 361, 20)]
    return tuple((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns)


def together(lines: tuple[Line, ...]) -> BaseGeometry:
    """Lines on the paper as one shape."""
    return MultiLineString([px(line) for line in lines])


def run(line: Line, colour: str, width: float, dash: str = "") -> str:
    """An open line."""
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return (
        f'<polyline points="{written(px(line))}" fill="none" stroke="{colour}" stroke-width="{width:g}" '
        f'stroke-linejoin="round" stroke-linecap="round"{dashed}/>'
    )


def circle(centre: Spot, radius: float, colour: str, width: float) -> str:
    """A ring; its radius in px."""
    x, y = at(centre)
    place = f'cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}"'
    return f'<circle {place} fill="none" stroke="{colour}" stroke-width="{width:g}"/>'


def at(spot: Spot) -> Spot:
    """A point of the drawing's box on the paper, px, y down."""
    return (MARGIN + spot[0] * SCALE, SIZE - MARGIN - spot[1] * SCALE)


def px(line: Line) -> Line:
    """A line on the paper."""
    return tuple(at(spot) for spot in line)


def written(spots: Line) -> str:
    """Points as an SVG attribute."""
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in spots)
