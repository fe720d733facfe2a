"""Checks as arcs, dimensions and light areas between the points that they were measured at."""

from collections.abc import Collection, Iterator

import numpy as np

from fitcalc.checks.check import Check, Status
from fitcalc.fit.result import Result
from fitcalc.present.chosen import chosen, short_text
from fitcalc.present.outlines import toward
from fitcalc.present.picture import (
    XY,
    Arc,
    Dimension,
    Line,
    Primitive,
    Style,
    Text,
    View,
    seen,
)

RADIUS = 85.0
"""Of an arc, mm."""
SAME = 1.5
"""A drawn distance or angle shows a figure when it agrees with it within this, mm or degrees."""
ALONG = frozenset({"feet.axle_line", "feet.bulkhead", "pedal.bulkhead"})
"""Quantities measured forward along the car from their one point."""
SIGHT = 900.0
"""How far ahead of the edge a sight line is drawn, mm."""
STYLES: dict[Status, Style] = {
    "pass": "pass",
    "advise": "advise",
    "fail": "fail",
    "not assessed": "not assessed",
}


def annotations(result: Result, view: View, emphasis: Collection[str] | None = None) -> Iterator[Primitive]:
    """Arcs, dimensions and words of the chosen checks."""
    for check in chosen(result, view, emphasis):
        yield from annotation(check, view, result)


def annotation(check: Check, view: View, result: Result) -> Iterator[Primitive]:
    """One check where it was measured."""
    points = [seen(point, view) for point in check.figure.evidence]
    if check.figure.quantity.startswith("sight."):
        yield from _sight_line(check, points)
    elif check.figure.unit == "deg" and len(points) in (2, 3):
        yield from _angle(check, points, _legs(check, points, result))
    elif points:
        yield from _length(check, points)


def _length(check: Check, points: list[XY]) -> Iterator[Primitive]:
    key, style, words = f"check.{check.id}", STYLES[check.status], short_text(check)
    ends = measured_between(check, points)
    if ends is None:
        yield Text(key, style, check.id, points[0], words, short_text(check, inches=True))
    else:
        yield Dimension(key, style, check.id, *ends, words, inches=short_text(check, inches=True))


def measured_between(check: Check, points: list[XY]) -> tuple[XY, XY] | None:
    """The two ends of a length in the view; None where the view doesn't show it at its true length."""
    value = 0.0 if check.figure.value is None else float(check.figure.value[0])
    start = points[0]
    if check.figure.quantity in ALONG:
        return (start[0] - value, start[1]), start
    if len(points) == 1 or value <= 0.0:
        return None
    end = points[1] if len(points) == 2 else square_on(start, points[1], points[2])
    return (start, end) if abs(toward(start, end)[1] - value) < SAME else None


def square_on(point: XY, start: XY, end: XY) -> XY:
    """Where the square from a point meets a line."""
    (dx, dy), _ = toward(start, end)
    along = (point[0] - start[0]) * dx + (point[1] - start[1]) * dy
    return start[0] + along * dx, start[1] + along * dy


def _sight_line(check: Check, points: list[XY]) -> Iterator[Primitive]:
    eye, edge = points[:2]
    (dx, dz), _ = toward(eye, edge)
    end = (edge[0] + SIGHT * dx, edge[1] + SIGHT * dz)
    yield Line(f"check.{check.id}.line", "centre", check.id, (eye, end))
    inches = short_text(check, inches=True)
    yield Text(f"check.{check.id}", STYLES[check.status], check.id, edge, short_text(check), inches)


def _angle(check: Check, points: list[XY], legs: tuple[XY, XY, XY]) -> Iterator[Primitive]:
    """An arc between the two legs; words alone where the drawing doesn't show the angle that was measured."""
    key, style, words = f"check.{check.id}", STYLES[check.status], short_text(check)
    corner, first, last = legs
    start = direction(corner, first)
    sweep = turn(start, direction(corner, last))
    if not _shows(check, sweep):
        yield Text(key, style, check.id, corner, words)
        return
    from_datum = len(points) == 2
    if from_datum:
        yield Line(f"{key}.from", "dimension", check.id, (corner, from_point(corner, start, 1.3 * RADIUS)))
    yield Line(f"{key}.legs", "link", check.id, (corner, last))
    radius = 1.1 * RADIUS if from_datum else RADIUS
    yield Arc(key, style, check.id, corner, radius, start, sweep, words)


def _shows(check: Check, sweep: float) -> bool:
    """Whether an angle on the drawing is the one that was measured; joints bend in planes of their own."""
    value = 0.0 if check.figure.value is None else float(check.figure.value[0])
    return check.figure.quantity.startswith("posture.") or abs(abs(sweep) - abs(value)) < SAME


def _legs(check: Check, points: list[XY], result: Result) -> tuple[XY, XY, XY]:
    """Corner, and a point on each leg: of two lines that meet, or of level or upright and one line."""
    quantity = check.figure.quantity
    if quantity == "posture.shoulder":
        trunk = result.sitting.trunk
        down = seen(trunk.hip - trunk.shoulder, "side")
        return points[0], (points[0][0] + down[0], points[0][1] + down[1]), points[1]
    if len(points) == 3:
        return points[1], points[0], points[2]
    upright = quantity == "posture.recline" or quantity.startswith("harness.crotch")
    away = 1.0 if points[1][1] > points[0][1] else -1.0
    reference = (0.0, away) if upright else (1.0, 0.0)
    return points[0], (points[0][0] + reference[0], points[0][1] + reference[1]), points[1]


def direction(start: XY, end: XY) -> float:
    """Direction from one point to another, degrees from the right, positive toward up."""
    (dx, dy), _ = toward(start, end)
    return float(np.degrees(np.arctan2(dy, dx)))


def turn(start: float, end: float) -> float:
    """The shorter way round from one direction to another, degrees."""
    return (end - start + 180.0) % 360.0 - 180.0


def from_point(corner: XY, angle: float, distance: float) -> XY:
    """The point at a direction, degrees, and a distance from another."""
    way = np.radians(angle)
    return corner[0] + distance * float(np.cos(way)), corner[1] + distance * float(np.sin(way))
