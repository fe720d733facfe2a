"""Where a figure over a grid is not negative, as outlines to fill."""

import numpy as np
from shapely.geometry import LinearRing, Point, Polygon

from fitcalc.fit.contours import zero_lines
from fitcalc.present.picture import XY
from fitcalc.units import Floats

BEYOND = 1e-6
"""The grid is closed by a rim so far outside it, as a part of its span."""


def regions(x: Floats, y: Floats, values: Floats) -> tuple[tuple[XY, ...], ...]:
    """Closed outlines round all that is not negative; what is cut out of one is joined to its rim by a slit."""
    wide = np.concatenate([[x[0] - BEYOND * np.ptp(x)], x, [x[-1] + BEYOND * np.ptp(x)]])
    high = np.concatenate([[y[0] - BEYOND * np.ptp(y)], y, [y[-1] + BEYOND * np.ptp(y)]])
    rim = np.full((len(wide), len(high)), min(-1.0, -float(np.abs(values).max())))
    rim[1:-1, 1:-1] = np.where(values == 0.0, 1e-9, values)
    rings = [LinearRing(line) for line in zero_lines(wide, high, rim) if len(line) > 3]
    return _filled(sorted(rings, key=lambda ring: -_area(ring)))


def _area(ring: LinearRing) -> float:
    return float(ring.envelope.area)


def _filled(rings: list[LinearRing]) -> tuple[tuple[XY, ...], ...]:
    """Outer outlines with the holes that lie in them; an island in a hole is an outline of its own."""
    outlines: list[list[XY]] = []
    owner: dict[int, int] = {}
    for at, ring in enumerate(rings):
        around = [other for other in range(at) if _holds(rings[other], ring)]
        if len(around) % 2 == 0:
            owner[at] = len(outlines)
            outlines.append(_points(ring, clockwise=False))
        else:
            outer = owner[around[-1]]
            outlines[outer] = _slit(outlines[outer], _points(ring, clockwise=True))
    return tuple(tuple(outline) for outline in outlines)


def _holds(outer: LinearRing, inner: LinearRing) -> bool:
    return bool(Polygon(outer).contains(Point(inner.coords[0])))


def _points(ring: LinearRing, clockwise: bool) -> list[XY]:
    points = [(float(x), float(y)) for x, y in ring.coords[:-1]]
    return points if ring.is_ccw is not clockwise else points[::-1]


def _slit(outer: list[XY], hole: list[XY]) -> list[XY]:
    """The outer outline led to the nearest point of the hole, round it, and back."""
    gaps = np.hypot(*(np.array(outer)[:, None] - np.array(hole)[None]).transpose(2, 0, 1))
    a, b = (int(at) for at in np.unravel_index(gaps.argmin(), gaps.shape))
    return [*outer[: a + 1], *hole[b:], *hole[: b + 1], *outer[a:]]
