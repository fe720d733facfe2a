"""A picture drawn on paper at a scale: the same primitives as on screen, with ISO 128 pens and ISO 129-1 arrows."""

import math
from collections.abc import Callable, Iterator, Mapping

from fitcalc.paper.flow import SMALL
from fitcalc.paper.lettering import ASCENT, DESCENT, printable, width
from fitcalc.paper.page import Box, Mark, Stroke, Words, circle
from fitcalc.paper.pens import FINE, pen_for
from fitcalc.present.labels import Place, lettering, places
from fitcalc.present.outlines import toward
from fitcalc.present.picture import (
    XY,
    Arc,
    Area,
    Circle,
    Dimension,
    Handle,
    Line,
    Picture,
    Primitive,
    Text,
    offset_line,
)

REDUCTIONS = (5.0, 2.0, 1.0, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100, 1 / 200)
"""Scales of ISO 5455 that a page may have."""
ARROW, HALF = 2.5, 0.33
"""Length and half width of an arrowhead, mm: 15 degrees, ISO 129-1."""
BEYOND = 1.5
ARC_STEP = 6.0

ToPaper = Callable[[XY], XY]


def scale_text(scale: float) -> str:
    """A scale as it is stated on a drawing."""
    return f"1:{round(1 / scale)}" if scale < 1.0 else f"{round(scale)}:1"


def scale_for(wide: float, high: float, room: tuple[float, float]) -> float:
    """The largest scale of ISO 5455 at which something fits, the smallest one where none does."""
    return next(
        (each for each in REDUCTIONS if wide * each <= room[0] and high * each <= room[1]), REDUCTIONS[-1]
    )


def drawn(picture: Picture, box: Box, scale: float, size: float = SMALL) -> tuple[Mark, ...]:
    """A picture with its frame in the middle of a box, words kept inside the box.

    Args:
        picture: in mm of the real thing.
        box: on the page; nothing is drawn outside it.
        scale: mm on paper for a mm of the real thing.
        size: height of the lettering, mm on paper.
    """
    left, bottom, right, top = picture.frame
    middle = ((left + right) / 2, (bottom + top) / 2)
    centre = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)

    def paper(point: XY) -> XY:
        return centre[0] + scale * (point[0] - middle[0]), centre[1] + scale * (point[1] - middle[1])

    where = places(picture, size / scale)
    lines = (
        mark for each in picture.primitives for mark in _primitive(each, where.get(each.key), paper, scale)
    )
    clipped = tuple(Stroke(m.points, m.width, m.colour, m.dash, m.closed, m.fill, box) for m in lines)
    return (*clipped, *_lettered(picture, where, paper, box, size))


def _lettered(
    picture: Picture, where: Mapping[str, Place], paper: ToPaper, box: Box, size: float
) -> Iterator[Words]:
    for each in picture.primitives:
        place, text = where.get(each.key), printable(lettering(each))
        if place is not None and text:
            yield _words(text, paper(place.at), place.turn, pen_for(each.style).colour, box, size)


def _words(text: str, at: XY, turn: float, colour: str, box: Box, size: float) -> Words:
    """Words about their middle, pushed inside the box."""
    c, s = abs(math.cos(math.radians(turn))), abs(math.sin(math.radians(turn)))
    long, high = width(text, size) / 2 + 0.3, (ASCENT + DESCENT) * size / 2
    reach_x, reach_y = c * long + s * high, s * long + c * high
    x = min(max(at[0], box[0] + reach_x), box[2] - reach_x)
    y = min(max(at[1], box[1] + reach_y), box[3] - reach_y)
    drop = (ASCENT - DESCENT) * size / 2
    down, aside = drop * math.cos(math.radians(turn)), drop * math.sin(math.radians(turn))
    return Words(text, (x + aside, y - down), size, align="centre", turn=turn, colour=colour, backed=True)


def _primitive(primitive: Primitive, place: Place | None, paper: ToPaper, scale: float) -> Iterator[Stroke]:
    pen = pen_for(primitive.style)
    match primitive:
        case Line():
            yield Stroke(_all(primitive.points, paper), pen.width, pen.colour, pen.dash)
        case Area():
            yield Stroke(_all(primitive.points, paper), pen.width, pen.colour, pen.dash, True, pen.fill)
        case Circle():
            ring = circle(paper(primitive.centre), scale * primitive.radius)
            yield Stroke(ring, pen.width, pen.colour, pen.dash, True, pen.fill)
        case Arc():
            yield from _arc(primitive, paper, scale)
        case Dimension():
            yield from _dimension(primitive, paper)
        case Handle() | Text():
            pass
    if place is not None and place.leader is not None:
        yield Stroke((paper(place.leader), paper(place.at)), FINE, pen.colour)


def _all(points: tuple[XY, ...], paper: ToPaper) -> tuple[XY, ...]:
    return tuple(paper(point) for point in points)


def _arc(arc: Arc, paper: ToPaper, scale: float) -> Iterator[Stroke]:
    pen, centre, radius = pen_for(arc.style), paper(arc.centre), scale * arc.radius
    steps = max(2, math.ceil(abs(arc.sweep) / ARC_STEP))
    turns = [math.radians(arc.start + arc.sweep * step / steps) for step in range(steps + 1)]
    points = tuple((centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turns)
    yield Stroke(points, pen.width, pen.colour, pen.dash)
    if abs(turns[-1] - turns[0]) * radius > 2.5 * ARROW:
        sense = math.copysign(math.pi / 2, arc.sweep)
        yield _head(points[0], turns[0] - sense, pen.colour)
        yield _head(points[-1], turns[-1] + sense, pen.colour)


def _dimension(dimension: Dimension, paper: ToPaper) -> Iterator[Stroke]:
    colour = pen_for(dimension.style).colour
    start, end = (paper(point) for point in offset_line(dimension))
    (dx, dy), span = toward(start, end)
    roomy = span > 2.6 * ARROW
    out = 0.0 if roomy else 2.0 * ARROW
    ends = ((start[0] - out * dx, start[1] - out * dy), (end[0] + out * dx, end[1] + out * dy))
    yield Stroke(ends, FINE, colour)
    ahead = math.atan2(dy, dx) + (0.0 if roomy else math.pi)
    yield _head(end, ahead, colour)
    yield _head(start, ahead + math.pi, colour)
    for measured, on_line in ((paper(dimension.start), start), (paper(dimension.end), end)):
        (ex, ey), gap = toward(measured, on_line)
        if gap > 0.0:
            yield Stroke((measured, (on_line[0] + BEYOND * ex, on_line[1] + BEYOND * ey)), FINE, colour)


def _head(tip: XY, heading_rad: float, colour: str) -> Stroke:
    dx, dy = math.cos(heading_rad), math.sin(heading_rad)
    back = (tip[0] - ARROW * dx, tip[1] - ARROW * dy)
    sides = ((back[0] - HALF * dy, back[1] + HALF * dx), (back[0] + HALF * dy, back[1] - HALF * dx))
    return Stroke((tip, *sides), 0.0, colour, closed=True, fill=colour)
