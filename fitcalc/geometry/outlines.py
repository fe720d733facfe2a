"""Gaps between convex outlines in side view, signed: positive apart, negative the depth of overlap.

An outline is its corners, `(..., k, 3)`, of which x and z count; leading axes broadcast. One corner is a point, two
a line; up to four may stand in any order and count as their hull, more stand in order around a convex outline.
Corners that are not convex count as their hull, so that a gap is never overstated.
"""

import numpy as np

from fitcalc.geometry.degrees import length, unit
from fitcalc.geometry.lines import nearest_on_segment
from fitcalc.geometry.side import at_y, dot
from fitcalc.units import Bools, Floats, Mm, Points

NO_AXIS = -1e6
"""Gap along a direction that does not exist: less than any that does."""
ANY_ORDER = 4
"""So many corners may stand in any order, for every pair of them is tried as a side."""


def clearance(a: Points, b: Points) -> Mm:
    """Gap between two convex outlines, `(...)`; negative = how far one must move to come clear.

    Source: separating axes for the depth, least corner-to-side distance for the gap.
    """
    depth = _separation(a, b)
    overlaps = (depth < 0.0) & (depth > NO_AXIS)
    return np.where(overlaps, depth, _distance(a, b))


def path_clearance(shapes: Points, other: Points) -> Mm:
    """Least gap while an outline moves through its places `(n, s, k, 3)` past another `(n or 1, m, 3)`, `(n,)`.

    Between two places every corner counts as moving straight.
    """
    still = clearance(shapes, other[:, None])
    paths = np.stack([shapes[:, :-1], shapes[:, 1:]], axis=-2)
    moving = clearance(paths, other[:, None, None])
    return np.minimum(still.min(axis=1), moving.min(axis=(1, 2)))


def nearest_points(a: Points, b: Points) -> tuple[Points, Points]:
    """The points of two outlines nearest to each other, `(n, 3)`, on either's sides; each keeps its own y."""
    on_b, to_b = _feet(a, b)
    on_a, to_a = _feet(b, a)
    first = to_b.min(axis=(-2, -1)) <= to_a.min(axis=(-2, -1))
    corner_a, foot_b = _least(a, on_b, to_b)
    corner_b, foot_a = _least(b, on_a, to_a)
    return np.where(first[:, None], corner_a, foot_a), np.where(first[:, None], foot_b, corner_b)


def apart(side: Mm, low: tuple[Mm, Mm], high: tuple[Mm, Mm]) -> Mm:
    """Gap between two outlines drawn out across the car.

    Args:
        side: gap in side view.
        low: leftmost y of either.
        high: rightmost y of either.

    Returns:
        Straight distance where they are apart both ways; where only one way parts them, that way; where none does,
        the lesser depth, negative.
    """
    across = np.maximum(low[1] - high[0], low[0] - high[1])
    return np.where(
        (side > 0.0) & (across > 0.0),
        np.hypot(np.maximum(side, 0.0), np.maximum(across, 0.0)),
        np.maximum(side, across),
    )


def backed(line: Points, away: Points) -> Points:
    """A line `(..., k, 3)` as one outline for each of its pieces, `(..., k - 1, 4, 3)`, filled up behind it by `away`."""
    start, end = line[..., :-1, :], line[..., 1:, :]
    return np.stack([start, end, end + away, start + away], axis=-2)


def _sides(count: int) -> tuple[np.ndarray, np.ndarray]:
    if count == 1:
        return np.array([0]), np.array([0])
    if count <= ANY_ORDER:
        return np.triu_indices(count, 1)
    first = np.arange(count)
    return first, (first + 1) % count


def _axes(outline: Points) -> tuple[Points, Bools]:
    """Directions that may separate an outline from others, and whether each exists."""
    first, last = _sides(outline.shape[-2])
    along = unit(_flat(outline[..., last, :] - outline[..., first, :]))
    square = np.stack([along[..., 2], along[..., 1], -along[..., 0]], axis=-1)
    axes = np.concatenate([square, along], axis=-2) if outline.shape[-2] == 2 else square
    return axes, length(axes) > 0.0


def _separation(a: Points, b: Points) -> Mm:
    gaps = []
    for axes, exist in (_axes(a), _axes(b)):
        on_a, on_b = (np.einsum("...dc,...kc->...dk", axes, outline) for outline in (a, b))
        gap = np.maximum(on_b.min(axis=-1) - on_a.max(axis=-1), on_a.min(axis=-1) - on_b.max(axis=-1))
        gaps.append(np.where(exist, gap, NO_AXIS).max(axis=-1))
    return np.maximum(gaps[0], gaps[1])


def _distance(a: Points, b: Points) -> Mm:
    return np.minimum(_feet(a, b)[1].min(axis=(-2, -1)), _feet(b, a)[1].min(axis=(-2, -1)))


def _feet(corners: Points, outline: Points) -> tuple[Points, Floats]:
    """For every corner and every side of an outline the nearest point of the side, and how far it is."""
    first, last = _sides(outline.shape[-2])
    start, end = outline[..., None, first, :], outline[..., None, last, :]
    flat = _flat(corners)[..., :, None, :]
    foot = nearest_on_segment(flat, _flat(start), _flat(end))
    gap = length(foot - flat)
    return at_y(foot, start[..., 1]), gap


def _least(corners: Points, feet: Points, gaps: Floats) -> tuple[Points, Points]:
    sides = gaps.shape[-1]
    best = gaps.reshape(len(gaps), -1).argmin(axis=1)
    case = np.arange(len(gaps))
    corner, side = best // sides, best % sides
    return np.broadcast_to(corners, (len(gaps), *corners.shape[1:]))[case, corner], feet[case, corner, side]


def _flat(points: Points) -> Points:
    return at_y(points, np.zeros(points.shape[:-1]))
