"""What limits allow or forbid, as light areas that lie under the drawing."""

from collections.abc import Collection, Iterator

import numpy as np

from fitcalc.checks.check import Check
from fitcalc.fit.result import Result
from fitcalc.posture.cases import xyz
from fitcalc.present.annotations import from_point
from fitcalc.present.chosen import chosen
from fitcalc.present.outlines import toward
from fitcalc.present.picture import XY, Area, Line, Primitive, View, points_of, seen
from fitcalc.units import Floats

ROUND_STEPS = 24
"""Points on the rim of a sector."""
STRAPS = ("harness.shoulder.side_angle", "harness.lap.side_angle")


def limit_areas(result: Result, view: View, emphasis: Collection[str] | None = None) -> Iterator[Primitive]:
    """The sectors that the limits of the chosen straps allow, to lie under everything else."""
    for check in chosen(result, view, emphasis):
        points = [seen(point, view) for point in check.figure.evidence]
        low, high = bounds(check)
        if check.figure.quantity in STRAPS and len(points) == 2 and low is not None and high is not None:
            reach = 1.08 * toward(*points)[1]
            yield Area(f"limit.{check.id}", "limit area", check.id, sector(points[0], reach, -low, -high))


def bounds(check: Check) -> tuple[float | None, float | None]:
    """The span that must hold, or else the one that should."""
    if check.low is None and check.high is None:
        return _first(check.recommended_low), _first(check.recommended_high)
    return _first(check.low), _first(check.high)


def _first(bound: Floats | None) -> float | None:
    return None if bound is None else float(np.ravel(bound)[0])


def sector(corner: XY, radius: float, start: float, end: float) -> tuple[XY, ...]:
    """A slice of a disc, from one direction to another."""
    angles = np.linspace(start, end, ROUND_STEPS).tolist()
    return (corner, *(from_point(corner, angle, radius) for angle in angles))


def hoop_line(result: Result) -> Iterator[Primitive]:
    """The line over the tops of the hoops."""
    hoops = result.car.hoops
    if hoops is not None:
        ends = (seen(xyz(hoops.front_top), "side"), seen(xyz(hoops.main_top), "side"))
        yield Line("hoop_line", "centre", "car.hoops", ends)


def hoop_band(result: Result) -> Iterator[Primitive]:
    """Below the line over the hoops, the band that the helmet must keep out of."""
    needed = [bounds(check)[0] for check in result.checks if check.figure.quantity == "head.hoop_line"]
    depth = max((low for low in needed if low is not None), default=0.0)
    for line in hoop_line(result) if depth > 0.0 else ():
        start, end = points_of(line)
        (dx, dz), _ = toward(start, end)
        below = [(x + dz * depth, z - dx * depth) for x, z in (end, start)]
        yield Area("limit.hoop_line", "keep out area", "head.hoop_line", (start, end, *below))
