"""Gaps between convex outlines in side view, signed: positive apart, negative the depth of overlap.

Outlines are as in `sides`. One that is not convex overlaps from where its hull does, so that a gap is never overstated.
Sides and corners of the outline with more of them are worked out together, those of the other one after another:
arrays stay small enough for the processor's cache.
"""

from functools import reduce

import numpy as np

from fitcalc.geometry.sides import (
    NO_SIDE,
    corners_of,
    each_side,
    from_to,
    least,
    least_of,
    most,
    sides_of,
    squared_gaps,
)
from fitcalc.units import Bools, Floats, Mm, Points

NO_AXIS = -1e6
"""Gap along a direction that does not exist: less than any that does."""


def clearance(a: Points, b: Points) -> Mm:
    """Gap between two convex outlines, `(...)`; negative = how far one must move to come clear.

    Source: separating axes for the depth, least corner-to-side distance for the gap.
    """
    more, fewer = (a, b) if a.shape[-2] >= b.shape[-2] else (b, a)
    depth = np.maximum(_separation(more, fewer), _separation(fewer, more))
    overlaps = (depth < 0.0) & (depth > NO_AXIS)
    return np.where(overlaps, depth, _distance(more, fewer))


def path_distance(shapes: Points, other: Points) -> Mm:
    """Least distance from an outline's corners to the paths of another's corners, `(n,)`.

    Args:
        shapes: places that the moving outline takes one after another, `(n, s, k, 3)`; between two of them
            its corners count as moving straight.
        other: `(n or 1, m, 3)`.
    """
    x, z = shapes[..., 0], shapes[..., 2]
    paths = from_to(x[:, :-1], z[:, :-1], x[:, 1:], z[:, 1:])
    squared = least_of(squared_gaps(*corner, paths) for corner in corners_of(other[:, None]))
    return np.sqrt(squared.min(axis=(1, 2)))


def apart(side: Mm, low: tuple[Mm, Mm], high: tuple[Mm, Mm]) -> Mm:
    """Gap between two outlines drawn out across the car.

    Args:
        side: gap in side view.
        low: leftmost y of either.
        high: rightmost y of either.

    Returns:
        Straight distance where they are apart both ways; where only one way parts them, that way; where none
        does, the lesser depth, negative.
    """
    across = np.maximum(low[1] - high[0], low[0] - high[1])
    return np.where(
        (side > 0.0) & (across > 0.0),
        np.hypot(np.maximum(side, 0.0), np.maximum(across, 0.0)),
        np.maximum(side, across),
    )


def backed(line: Points, away: Points) -> Points:
    """A line `(..., k, 3)` filled up by `away`, one outline for each of its pieces, `(..., k - 1, 4, 3)`."""
    start, end = line[..., :-1, :], line[..., 1:, :]
    return np.stack([start, end, end + away, start + away], axis=-2)


def _separation(own: Points, other: Points) -> Mm:
    """Greatest gap between two outlines along the normals of one's sides, `(...)`."""
    x, z, exist = _axes(own)
    (low, high), (other_low, other_high) = _shadow(x, z, own), _shadow(x, z, other)
    return most(np.where(exist, np.maximum(other_low - high, low - other_high), NO_AXIS))


def _axes(outline: Points) -> tuple[Floats, Floats, Bools]:
    """Directions that may separate an outline from others: x and z, and whether each exists, `(..., directions)`."""
    sides = sides_of(outline)
    size = np.maximum(np.sqrt(sides.size), NO_SIDE)
    x, z, exist = sides.along_x / size, sides.along_z / size, sides.size > 0.0
    if outline.shape[-2] != 2:
        return z, -x, exist
    return (
        np.concatenate([z, x], axis=-1),
        np.concatenate([-x, z], axis=-1),
        np.concatenate([exist, exist], axis=-1),
    )


def _shadow(x: Floats, z: Floats, outline: Points) -> tuple[Floats, Floats]:
    """From where to where an outline falls along each direction."""
    falls = [corner_x * x + corner_z * z for corner_x, corner_z in corners_of(outline)]
    return reduce(np.minimum, falls), reduce(np.maximum, falls)


def _distance(more: Points, fewer: Points) -> Mm:
    sides = sides_of(more)
    squared = least(least_of(squared_gaps(*corner, sides) for corner in corners_of(fewer)))
    if fewer.shape[-2] == 1:
        return np.sqrt(squared)
    x, z = more[..., 0], more[..., 2]
    onto_sides = least_of(squared_gaps(x, z, side) for side in each_side(sides_of(fewer)))
    return np.sqrt(np.minimum(squared, least(onto_sides)))
