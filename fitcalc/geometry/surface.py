"""Room between outlines and a floor or roof, in side view; outlines are as in `sides`."""

from collections.abc import Iterator

import numpy as np

from fitcalc.geometry.sides import Sides, from_to, least, least_of, most, squared_gaps
from fitcalc.units import Floats, Mm, Points

AT_ONCE = 20_000
"""Lines are worked out in runs of so many pieces times points, which the processor's cache holds."""


def surface_room(shapes: Points, line: Points, solid: float) -> Mm:
    """Least gap between outlines and a surface that runs front to rear, `(...)`; negative = how deep they stand in it.

    Args:
        shapes: `(..., k, 3)`, single points, or corners in order round an outline.
        line: the surface in side view, `(j, 3)`; beyond its ends there is none.
        solid: 1.0 for what is solid above its line, -1.0 for what is solid below.
    """
    x, z = shapes[..., 0], shapes[..., 2]
    past = (x >= line[0, 0]) & (x <= line[-1, 0]) & (solid * (z - np.interp(x, line[:, 0], line[:, 2])) > 0.0)
    gaps = np.sqrt(least_of(_to_pieces(x, z, some) for some in _groups(line, x.size)))
    room = least(np.where(past, -gaps, gaps))
    return room if shapes.shape[-2] == 1 else np.minimum(room, _room_to_points(shapes, _bulges(line, solid)))


def _groups(line: Points, size: int) -> Iterator[Points]:
    """A line in runs of so many pieces as can be worked out at once for `size` points."""
    pieces, together = len(line) - 1, max(1, AT_ONCE // size)
    return (line[at : at + together + 1] for at in range(0, pieces, together))


def _to_pieces(x: Floats, z: Floats, line: Points) -> Floats:
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


def _room_to_points(shapes: Points, places: Points) -> Mm:
    """Least gap between outlines and single points `(j, 3)`, negative where one lies inside, `(...)`."""
    x, z = shapes[..., None, :, 0], shapes[..., None, :, 2]
    sides = from_to(x, z, *(np.concatenate([each[..., 1:], each[..., :1]], axis=-1) for each in (x, z)))
    together = max(1, AT_ONCE // x.size)
    runs = (places[at : at + together] for at in range(0, len(places), together))
    return least_of(_least_room(sides, run[:, None, 0], run[:, None, 2]) for run in runs)


def _least_room(sides: Sides, place_x: Floats, place_z: Floats) -> Mm:
    """Least gap of points `(m, 1)` from outlines of sides `(..., 1, k)`, negative where one lies inside, `(...)`."""
    turn = sides.along_x * (place_z - sides.z) - sides.along_z * (place_x - sides.x)
    inside = (least(turn) >= 0.0) | (most(turn) <= 0.0)
    gap = np.sqrt(least(squared_gaps(place_x, place_z, sides)))
    return np.where(inside, -gap, gap).min(axis=-1)
