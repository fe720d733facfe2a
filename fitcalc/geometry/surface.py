"""Room between outlines and a floor or roof, in side view; outlines are as in `sides`."""

from collections.abc import Iterator

import numpy as np

from fitcalc.geometry.outlines import Outline
from fitcalc.geometry.sides import (
    AT_ONCE,
    from_to,
    in_runs,
    least,
    least_of,
    most,
    seen_from,
    squared_gap,
    squared_gaps,
)
from fitcalc.units import Floats, Mm, Points


def room_of_points(points: Points, line: Points, solid: float) -> Mm:
    """Least gap between points `(n, ..., 3)` and a surface that runs front to rear, `(n, ...)`; negative = how deep in it.

    Args:
        points: where.
        line: the surface in side view, `(j, 3)`; beyond its ends there is none.
        solid: 1.0 for what is solid above its line, -1.0 for what is solid below.
    """
    x, z = points[..., 0], points[..., 2]
    return in_runs(lambda run: _signed(x[run], z[run], line, solid), len(x), x[0].size)


def surface_room(outline: Outline, line: Points, solid: float) -> Mm:
    """Least gap between outlines `(n, ...)` and a surface as in `room_of_points`, `(n, ...)`."""
    bulges = _bulges(line, solid)

    def work(run: slice) -> Mm:
        some = outline.some(run)
        room = least(_signed(some.x, some.z, line, solid))
        near = bulges[_beside(some.x, bulges[:, 0]) < room.max()]
        return np.minimum(room, _room_to_points(some, near)) if some.x.shape[-1] > 1 and len(near) else room

    return in_runs(work, len(outline.x), outline.low[0].size)


def _signed(x: Mm, z: Mm, line: Points, solid: float) -> Mm:
    """Gaps of points from a surface, negative where they lie in what is solid."""
    height = np.interp(x.T, line[:, 0], line[:, 2]).T
    past = (x >= line[0, 0]) & (x <= line[-1, 0]) & (solid * (z - height) > 0.0)
    gaps = np.sqrt(least_of(_to_pieces(x, z, some) for some in _groups(line, x.size)))
    return np.where(past, -gaps, gaps)


def _groups(line: Points, size: int) -> Iterator[Points]:
    """A line in runs of so many pieces as can be worked out at once for `size` points."""
    pieces, together = len(line) - 1, max(1, AT_ONCE // size)
    return (line[at : at + together + 1] for at in range(0, pieces, together))


def _to_pieces(x: Mm, z: Mm, line: Points) -> Floats:
    """Square of the least distance of points from the pieces of a line."""
    pieces = from_to(line[:-1, 0], line[:-1, 2], line[1:, 0], line[1:, 2])
    if len(line) == 2:
        return squared_gaps(x, z, pieces)
    return squared_gaps(x[..., None], z[..., None], pieces).min(axis=-1)


def _bulges(line: Points, solid: float) -> Points:
    """The points of a surface that stand out of it, and its ends: no side of an outline comes nearest to any other."""
    step = line[1:] - line[:-1]
    turn = step[:-1, 0] * step[1:, 2] - step[:-1, 2] * step[1:, 0]
    return line[np.concatenate([[True], solid * turn > 0.0, [True]])]


def _beside(x: Mm, place: Mm) -> Mm:
    """How far ahead of all of x, or behind it, each of some places lies; 0 where it is among them."""
    return np.maximum(np.maximum(x.min() - place, place - x.max()), 0.0)


def _room_to_points(outline: Outline, places: Points) -> Mm:
    """Least gap between outlines and single points `(j, 3)`, negative where one lies inside, `(...)`."""
    beside = outline.beside()
    together = max(1, AT_ONCE // outline.low.size)
    runs = (places[at : at + together] for at in range(0, len(places), together))
    return least_of(_least_room(beside, run[:, None, 0], run[:, None, 2]) for run in runs)


def _least_room(outline: Outline, place_x: Mm, place_z: Mm) -> Mm:
    """Least gap of points `(m, 1)` from outlines of sides `(..., 1, k)`, negative where one lies inside, `(...)`."""
    along, off = seen_from(place_x, place_z, outline.sides)
    outside = most(np.maximum(off - outline.high, outline.low - off)) > 0.0
    room = np.sqrt(least(squared_gap(along, off, outline.sides)))
    return np.where(outside, room, -room).min(axis=-1)
