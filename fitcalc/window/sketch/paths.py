"""Primitives as paths in the car's coordinates; arrowheads and grips keep their size on screen."""

import math

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from fitcalc.present.labels import Place
from fitcalc.present.outlines import toward
from fitcalc.present.picture import XY, Arc, Area, Circle, Dimension, Handle, Line, Primitive, offset_line

ARROW, ARROW_HALF, GRIP = 0.75, 0.13, 0.28
"""Length and half width of an arrowhead (ISO 129-1) and half size of a grip, in heights of the lettering."""
BEYOND = 0.25
"""How far an extension line runs beyond its dimension line, in heights of the lettering."""


def lines_of(primitive: Primitive, place: Place | None, size: float) -> QPainterPath:
    """Everything of a primitive but its arrowheads and words.

    Args:
        primitive: what to draw.
        place: of its words, for the leader.
        size: height of the lettering, in mm of the car.
    """
    path = QPainterPath()
    match primitive:
        case Line() | Area():
            _add_run(path, primitive.points, closed=isinstance(primitive, Area))
        case Circle():
            path.addEllipse(QPointF(*primitive.centre), primitive.radius, primitive.radius)
        case Arc():
            _add_arc(path, primitive)
        case Dimension():
            _add_dimension(path, primitive, size)
        case Handle():
            _add_grip(path, primitive, size)
    if place is not None and place.leader is not None:
        _add_run(path, (place.leader, place.at))
    return path


def heads_of(primitive: Primitive, size: float) -> QPainterPath:
    """The filled arrowheads of an arc or a dimension."""
    path = QPainterPath()
    match primitive:
        case Arc():
            _add_arc_heads(path, primitive, size)
        case Dimension():
            _add_line_heads(path, primitive, size)
    return path


def _add_arc_heads(path: QPainterPath, arc: Arc, size: float) -> None:
    if math.radians(abs(arc.sweep)) * arc.radius > 2.5 * ARROW * size:
        square, last = math.copysign(90.0, arc.sweep), arc.start + arc.sweep
        _add_head(path, _on(arc, arc.start), arc.start - square, size)
        _add_head(path, _on(arc, last), last + square, size)


def _add_line_heads(path: QPainterPath, dimension: Dimension, size: float) -> None:
    start, end = offset_line(dimension)
    (dx, dy), span = toward(start, end)
    ahead = math.degrees(math.atan2(dy, dx)) + (0.0 if _roomy(span, size) else 180.0)
    _add_head(path, end, ahead, size)
    _add_head(path, start, ahead + 180.0, size)


def _roomy(span: float, size: float) -> bool:
    """Whether both arrowheads fit between the extension lines."""
    return span > 2.6 * ARROW * size


def _add_dimension(path: QPainterPath, dimension: Dimension, size: float) -> None:
    start, end = offset_line(dimension)
    (dx, dy), span = toward(start, end)
    out = 0.0 if _roomy(span, size) else 2.0 * ARROW * size
    _add_run(path, ((start[0] - out * dx, start[1] - out * dy), (end[0] + out * dx, end[1] + out * dy)))
    for measured, on_line in ((dimension.start, start), (dimension.end, end)):
        (ex, ey), gap = toward(measured, on_line)
        if gap > 0.0:
            _add_run(path, (measured, (on_line[0] + BEYOND * size * ex, on_line[1] + BEYOND * size * ey)))


def _add_arc(path: QPainterPath, arc: Arc) -> None:
    (x, y), r = arc.centre, arc.radius
    box = QRectF(x - r, y - r, 2 * r, 2 * r)
    path.arcMoveTo(box, -arc.start)
    path.arcTo(box, -arc.start, -arc.sweep)


def _add_grip(path: QPainterPath, handle: Handle, size: float) -> None:
    half = GRIP * size
    (x, y), (dx, dy) = handle.at, handle.along or (1.0, 0.0)
    corners = ((1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0))
    square = tuple((x + half * (a * dx - b * dy), y + half * (a * dy + b * dx)) for a, b in corners)
    _add_run(path, square, closed=True)


def _add_head(path: QPainterPath, tip: XY, heading: float, size: float) -> None:
    dx, dy = math.cos(math.radians(heading)), math.sin(math.radians(heading))
    back = (tip[0] - ARROW * size * dx, tip[1] - ARROW * size * dy)
    aside, up = ARROW_HALF * size * dy, ARROW_HALF * size * dx
    _add_run(path, (tip, (back[0] - aside, back[1] + up), (back[0] + aside, back[1] - up)), closed=True)


def _on(arc: Arc, angle: float) -> XY:
    turn = math.radians(angle)
    return arc.centre[0] + arc.radius * math.cos(turn), arc.centre[1] + arc.radius * math.sin(turn)


def _add_run(path: QPainterPath, points: tuple[XY, ...], closed: bool = False) -> None:
    path.moveTo(*points[0])
    for x, y in points[1:]:
        path.lineTo(x, y)
    if closed:
        path.closeSubpath()
