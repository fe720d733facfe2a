"""Corners and sides of outlines in side view: one after another, or all of them together.

An outline is its corners, `(..., k, 3)`, of which x and z count; leading axes broadcast. One corner is a
point, two are a line; up to four may stand in any order and count as their hull, more go round it.
"""

from collections.abc import Iterable, Iterator
from functools import reduce
from typing import NamedTuple

import numpy as np

from fitcalc.units import Floats, Points

ANY_ORDER = 4
"""So many corners may stand in any order, for every pair of them is tried as a side."""
NO_SIDE = 1e-12
"""Square of a side's length, mm2, below which it counts as a point."""


class Sides(NamedTuple):
    """Sides in side view, each `(..., sides)`: where they start, which way they go, and the square of their length."""

    x: Floats
    z: Floats
    along_x: Floats
    along_z: Floats
    size: Floats


def sides_of(outline: Points) -> Sides:
    """Every side of an outline."""
    (x, end_x), (z, end_z) = _ends(outline[..., 0]), _ends(outline[..., 2])
    return from_to(x, z, end_x, end_z)


def from_to(x: Floats, z: Floats, end_x: Floats, end_z: Floats) -> Sides:
    """Sides from where they start and where they end."""
    along_x, along_z = end_x - x, end_z - z
    return Sides(x, z, along_x, along_z, along_x * along_x + along_z * along_z)


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


def squared_gaps(x: Floats, z: Floats, sides: Sides) -> Floats:
    """Square of the distance of points from sides; a side of no length is its start."""
    x, z = x - sides.x, z - sides.z
    reach = x * sides.along_x + z * sides.along_z
    part = np.clip(reach / np.maximum(sides.size, NO_SIDE), 0.0, 1.0)
    x -= part * sides.along_x
    z -= part * sides.along_z
    return x * x + z * z


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
    onward = np.concatenate([corners[..., 1:], corners[..., :1]], axis=-1)
    if count != ANY_ORDER:
        return corners, onward
    return (
        np.concatenate([corners, corners[..., :2]], axis=-1),
        np.concatenate([onward, corners[..., 2:]], axis=-1),
    )
