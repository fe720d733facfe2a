"""Checks as arcs, dimensions and light areas between the points that they were measured at."""

from collections.abc import Collection, Iterable, Iterator

import numpy as np

from fitcalc.checks.check import Check, Status
from fitcalc.fit.result import Result
from fitcalc.posture.cases import xyz
from fitcalc.present.outlines import toward
from fitcalc.present.picture import XY, Arc, Area, Dimension, Line, Primitive, Style, Text, View, seen
from fitcalc.present.wording import MARKS, number
from fitcalc.units import Floats

ABOVE = frozenset({"wheel.side", "reach.elbow_room", "seat.hip_room", "cockpit.opening_width", "cockpit.section_width"})
"""Quantities measured across the car and drawn in plan."""
FACING = frozenset(
    {"cleat.play", "cleat.width_on_pad", "cleat.pads", "cleat.shoes", "cleat.wall", "pedal.rest_room"}
)
"""Quantities drawn looking forward at the pads."""
ANGLES = ("posture.knee_released", "posture.hip", "posture.elbow", "posture.recline", "harness.shoulder.side_angle")
"""Angles that are drawn when nobody asks for anything in particular."""
WORST = 4
"""How many findings are drawn then."""
RADIUS = 85.0
ROUND_STEPS = 24
STYLES: dict[Status, Style] = {
    "pass": "pass",
    "advise": "advise",
    "fail": "fail",
    "not assessed": "not assessed",
}


def view_of(check: Check) -> View:
    """The view in which a check is best seen."""
    quantity = check.figure.quantity
    if quantity in FACING:
        return "pads"
    across = quantity in ABOVE or quantity.endswith(("plan_angle", "spacing"))
    return "plan" if across else "side"


def worst_of(checks: Iterable[Check]) -> list[Check]:
    """One check for each thing measured: the first, when they come worst first."""
    once: dict[str, Check] = {}
    for check in checks:
        once.setdefault(check.figure.id, check)
    return list(once.values())


def chosen(result: Result, view: View, emphasis: Collection[str] | None) -> list[Check]:
    """The checks to annotate: those asked for, or else the worst findings and the key angles."""
    drawn = [check for check in result.worst_first() if check.figure.evidence and view_of(check) == view]
    if emphasis is not None:
        return worst_of(check for check in drawn if check.id in emphasis)
    every = worst_of(drawn)
    broken = [check for check in every if check.status in ("fail", "advise") and check.figure.unit == "mm"]
    key = [check for name in ANGLES for check in every if check.figure.quantity == name][: 2 * len(ANGLES)]
    return [*broken[:WORST], *_nearest_side(key)]


def _nearest_side(checks: list[Check]) -> list[Check]:
    """Of an angle that both sides of the body have, the one on the side that the drawing shows in front."""
    once: dict[str, Check] = {}
    for check in sorted(checks, key=lambda check: ("right" in check.id) or ("brake" in check.id)):
        once.setdefault(check.figure.quantity, check)
    return list(once.values())


def annotations(result: Result, view: View, emphasis: Collection[str] | None = None) -> Iterator[Primitive]:
    """Arcs, dimensions and limit areas of the chosen checks."""
    for check in chosen(result, view, emphasis):
        yield from annotation(check, view)


def limit_areas(result: Result, view: View, emphasis: Collection[str] | None = None) -> Iterator[Primitive]:
    """The space that the limits of the chosen checks allow, to lie under everything else."""
    for check in chosen(result, view, emphasis):
        yield from _allowed(check, view)


def annotation(check: Check, view: View) -> Iterator[Primitive]:
    """One check where it was measured."""
    points = [seen(point, view) for point in check.figure.evidence]
    style = STYLES[check.status]
    if check.figure.unit == "deg":
        yield from _angle(check, points, style)
    elif check.figure.unit == "mm" and len(points) == 2:
        yield Dimension(f"check.{check.id}", style, check.id, points[0], points[1], value_text(check))
    else:
        yield Text(f"check.{check.id}", style, check.id, points[0], f"{check.figure.label} {value_text(check)}")


def value_text(check: Check) -> str:
    """The value as it stands on the drawing: mm without a unit, and a mark unless it passes."""
    value = check.figure.value
    if value is None:
        return MARKS["not assessed"]
    unit = check.figure.unit
    mark = "" if check.status == "pass" else f" {MARKS[check.status]}"
    return f"{number(float(value[0]), unit)}{'°' if unit == 'deg' else ''}{mark}"


def _angle(check: Check, points: list[XY], style: Style) -> Iterator[Primitive]:
    corner, start, sweep = _opening(check, points)
    legs = [point for point in points if point != corner]
    yield Line(f"check.{check.id}.legs", "link", check.id, tuple([*legs[:1], corner, *legs[1:2]]))
    if len(points) == 2:
        far = np.radians(start)
        end = (corner[0] + 1.25 * RADIUS * float(np.cos(far)), corner[1] + 1.25 * RADIUS * float(np.sin(far)))
        yield Line(f"check.{check.id}.from", "dimension", check.id, (corner, end))
    yield Arc(f"check.{check.id}", style, check.id, corner, RADIUS, start, sweep, value_text(check))


def _opening(check: Check, points: list[XY]) -> tuple[XY, float, float]:
    """Corner, start and sweep of an angle: between two lines, or from level or the vertical to one line."""
    if len(points) > 2:
        first, corner, last = points[:3]
        start = direction(corner, first)
        return corner, start, turn(start, direction(corner, last))
    corner, end = points
    start = 90.0 if check.figure.quantity.endswith("recline") else 0.0
    return corner, start, turn(start, direction(corner, end))


def direction(start: XY, end: XY) -> float:
    """Direction from one point to another, degrees from the right, positive toward up."""
    (dx, dy), _ = toward(start, end)
    return float(np.degrees(np.arctan2(dy, dx)))


def turn(start: float, end: float) -> float:
    """The shorter way round from one direction to another, degrees."""
    return (end - start + 180.0) % 360.0 - 180.0


def _allowed(check: Check, view: View) -> Iterator[Primitive]:
    quantity = check.figure.quantity
    points = [seen(point, view) for point in check.figure.evidence]
    low, high = bounds(check)
    if quantity.endswith("side_angle") and len(points) == 2 and low is not None and high is not None:
        _, reach = toward(*points)
        yield Area(f"limit.{check.id}", "limit area", check.id, sector(points[0], 1.08 * reach, -low, -high))


def bounds(check: Check) -> tuple[float | None, float | None]:
    """The span that must hold, or else the one that should."""
    if check.low is None and check.high is None:
        return _first(check.recommended_low), _first(check.recommended_high)
    return _first(check.low), _first(check.high)


def _first(bound: Floats | None) -> float | None:
    return None if bound is None else float(np.ravel(bound)[0])


def sector(corner: XY, radius: float, start: float, end: float) -> tuple[XY, ...]:
    """A slice of a disc, from one direction to another."""
    angles = np.radians(np.linspace(start, end, ROUND_STEPS))
    rim = np.stack([corner[0] + radius * np.cos(angles), corner[1] + radius * np.sin(angles)], axis=1)
    return (corner, *((float(x), float(y)) for x, y in rim))


def hoop_line(result: Result) -> Iterator[Primitive]:
    """The line over the tops of the hoops, and below it the band that the helmet must keep out of."""
    hoops = result.car.hoops
    if hoops is None:
        return
    start, end = (seen(xyz(mark), "side") for mark in (hoops.front_top, hoops.main_top))
    needed = [bounds(check)[0] for check in result.checks if check.figure.quantity == "head.hoop_line"]
    depth = max((low for low in needed if low is not None), default=0.0)
    (dx, dz), _ = toward(start, end)
    if depth > 0.0:
        below = [(x + dz * depth, z - dx * depth) for x, z in (end, start)]
        yield Area("limit.hoop_line", "keep out area", "head.hoop_line", (start, end, *below))
    yield Line("hoop_line", "centre", "car.hoops", (start, end))
