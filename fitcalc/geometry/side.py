"""The side view: plane x-z, x rearward to the right, z up."""

from collections.abc import Sequence

import numpy as np

from fitcalc.geometry.degrees import cosd, sind, total
from fitcalc.units import Deg, Floats, Points

LEFT, RIGHT = -1.0, 1.0


def point(x: Floats | float, y: Floats | float, z: Floats | float) -> Points:
    """Points `(n, ..., 3)` from coordinates that broadcast against each other.

    In memory the cases lie next to each other, so that one figure of many cases is worked out in one go.
    """
    points = np.empty((3, *reversed(np.broadcast(x, y, z).shape))).T
    points[..., 0], points[..., 1], points[..., 2] = x, y, z
    return points


def row_of(places: Sequence[Points]) -> Points:
    """Several points, or rows of points, of each case as one row, `(n, k, ..., 3)`, in memory as `point` has them."""
    count, *rest = np.broadcast_shapes(*(place.shape for place in places))
    row = np.empty((len(places), *reversed(rest), count))
    for at, place in enumerate(places):
        row[at] = place.T
    return row.transpose(-1, 0, *range(row.ndim - 2, 0, -1))


def leaning(angle: Deg) -> Points:
    """Direction at an angle from the upward vertical, positive leaning rearward."""
    return point(sind(angle), np.zeros_like(angle), cosd(angle))


def turned(points: Points, pivot: Points, angle: Deg) -> Points:
    """Points turned about a transverse axis through `pivot`; positive turns the top rearward."""
    offset = points - pivot
    c, s = cosd(angle), sind(angle)
    x, y, z = offset[..., 0], offset[..., 1], offset[..., 2]
    return pivot + point(c * x + s * z, y, c * z - s * x)


def at_y(points: Points, y: Floats | float) -> Points:
    """The same points in side view, at another `y`."""
    return point(points[..., 0], y, points[..., 2])


def scaled(vector: Points, size: Floats | float) -> Points:
    """Each vector times its own number."""
    return vector * np.asarray(size)[..., None]


def across(vector: Points) -> Points:
    """Side-view normal of a direction: the direction turned a quarter with its top going rearward."""
    return point(vector[..., 2], np.zeros_like(vector[..., 1]), -vector[..., 0])


def dot(a: Points, b: Points) -> Floats:
    """Scalar product of each pair."""
    return total(a * b)
