"""Corners and sides of outlines in side view: one after another, or all of them together.

An outline is its corners, `(..., k, 3)`, of which x and z count; leading axes broadcast. One corner is a
point, two are a line; up to four may stand in any order and count as their hull, more go round it.
"""

from collections.abc import Callable, Iterable, Iterator
from functools import reduce
from typing import NamedTuple

import numpy as np

from fitcalc.units import Floats, Mm, Points

ANY_ORDER = 4
"""So many corners may stand in any order, for every pair of them is tried as a side."""
NO_SIDE = 1e-6
"""Length, mm, below which a side counts as a point."""
AT_ONCE = 25_000
"""So many numbers are worked out at a time, which the processor's cache holds."""


class Sides(NamedTuple):
    """Sides in side view, each `(..., sides)`: where they start, their direction, and how long they are."""

    x: Floats
    z: Floats
    way_x: Floats
    way_z: Floats
    length: Mm


def sides_of(outline: Points) -> Sides:
    """Every side of an outline."""
    (x, end_x), (z, end_z) = _ends(outline[..., 0]), _ends(outline[..., 2])
    return from_to(x, z, end_x, end_z)


def from_to(x: Floats, z: Floats, end_x: Floats, end_z: Floats) -> Sides:
    """Sides from where they start and where they end; one of no length is its start and runs rearward."""
    along_x, along_z = end_x - x, end_z - z
    length = np.sqrt(along_x * along_x + along_z * along_z)
    size = np.maximum(length, NO_SIDE)
    way_x = np.where(length < NO_SIDE, 1.0, along_x / size)
    way_z = np.where(length < NO_SIDE, 0.0, along_z / size)
    return Sides(x, z, way_x, way_z, length)


def side_ends(outline: Points) -> tuple[Points, Points]:
    """Start and end of every side, `(..., sides, 3)`."""
    first, last = _ends(np.arange(outline.shape[-2]))
    return outline[..., first, :], outline[..., last, :]


def each_side(sides: Sides) -> Iterator[Sides]:
    """One side after another, `(..., 1)`."""
    return (Sides(*(part[..., at : at + 1] for part in sides)) for at in range(sides.x.shape[-1]))


def corners_of(outline: Points) -> Iterator[tuple[Floats, Floats]]:
    """The x and z of one corner after another, `(..., 1)`."""
    return ((outline[..., at : at + 1, 0], outline[..., at : at + 1, 2]) for at in range(outline.shape[-2]))


def seen_from(x: Floats, z: Floats, sides: Sides) -> tuple[Mm, Mm]:
    """Where points are to sides: how far along, from the start, and how far off, positive to the left of rearward."""
    x, z = x - sides.x, z - sides.z
    along = x * sides.way_x
    along += z * sides.way_z
    z *= sides.way_x
    x *= sides.way_z
    z -= x
    return along, z


def squared_gap(along: Mm, off: Mm, sides: Sides) -> Floats:
    """Square of the distance from sides of points seen from them so far along and off."""
    beyond = along - np.minimum(np.maximum(along, 0.0), sides.length)
    beyond *= beyond
    beyond += off * off
    return beyond


def squared_gaps(x: Floats, z: Floats, sides: Sides) -> Floats:
    """Square of the distance of points from sides."""
    return squared_gap(*seen_from(x, z, sides), sides)


def in_runs(work: Callable[[slice], Floats], cases: int, each: int) -> Floats:
    """What `work` makes of some cases, `(cases, ...)`, so many at a time as the processor's cache holds.

    Args:
        work: on the cases of a slice.
        cases: how many there are.
        each: numbers that one of them takes.
    """
    together = max(1, AT_ONCE // each)
    if cases <= together:
        return work(slice(0, cases))
    parts = [work(slice(at, at + together)) for at in range(0, cases, together)]
    return np.concatenate([part.T for part in parts], axis=-1).T


def some_of(values: Floats, run: slice) -> Floats:
    """Some cases of what has them as its leading axis; what is one case for all stays."""
    return values if len(values) == 1 else values[run]


def least_of(values: Iterable[Floats]) -> Floats:
    """Least of several figures, case by case."""
    return reduce(np.minimum, values)


def least(values: Floats) -> Floats:
    """Least along a short last axis; one by one, for `np.min` along it takes several times as long."""
    return reduce(np.minimum, (values[..., at] for at in range(values.shape[-1])))


def most(values: Floats) -> Floats:
    """Greatest along a short last axis."""
    return reduce(np.maximum, (values[..., at] for at in range(values.shape[-1])))


def _ends(corners: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """What stands for the corners, `(..., k)`, at the start and at the end of every side."""
    count = corners.shape[-1]
    if count <= 2:
        return corners[..., :1], corners[..., -1:]
    first = [*range(count), 0, 1] if count == ANY_ORDER else [*range(count)]
    last = [*range(1, count), 0, 2, 3] if count == ANY_ORDER else [*range(1, count), 0]
    return corners.T[first].T, corners.T[last].T
