"""Gaps between convex outlines in side view, signed: positive apart, negative the depth of overlap.

An outline is its corners, `(..., k, 3)`, of which x and z count; leading axes broadcast. One corner is a
point, two are a line; up to four may stand in any order and count as their hull, more go round it.
An outline that is not convex overlaps from where its hull does, so that a gap is never overstated.
"""

from functools import reduce

import numpy as np

from fitcalc.geometry.degrees import length, unit
from fitcalc.geometry.lines import nearest_on_segment
from fitcalc.geometry.side import at_y
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


def path_distance(shapes: Points, other: Points) -> Mm:
    """Least distance from an outline's corners to the paths of another's corners, `(n,)`.

    Args:
        shapes: places that the moving outline takes one after another, `(n, s, k, 3)`; between two of them
            its corners count as moving straight.
        other: `(n or 1, m, 3)`.
    """
    start, end = (part.reshape(len(shapes), -1, 3) for part in (shapes[:, :-1], shapes[:, 1:]))
    return _gaps(other, start, end).min(axis=(-2, -1))


def surface_room(shapes: Points, line: Points, solid: float) -> Mm:
    """Least gap between outlines and a surface that runs front to rear, `(...)`; negative = how deep they stand in it.

    Args:
        shapes: `(..., k, 3)`, single points, or corners in order round an outline.
        line: the surface in side view, `(j, 3)`; beyond its ends there is none.
        solid: 1.0 for what is solid above its line, -1.0 for what is solid below.
    """
    x, z = shapes[..., 0], shapes[..., 2]
    past = (x >= line[0, 0]) & (x <= line[-1, 0]) & (solid * (z - np.interp(x, line[:, 0], line[:, 2])) > 0.0)
    gaps = _gaps(shapes, line[:-1], line[1:]).min(axis=-1)
    room = np.where(past, -gaps, gaps).min(axis=-1)
    return room if shapes.shape[-2] == 1 else np.minimum(room, _room_to_points(shapes, line))


def _room_to_points(shapes: Points, places: Points) -> Mm:
    """Least gap between outlines and single points, negative where one lies inside, `(...)`."""
    start, end = shapes, np.roll(shapes, -1, axis=-2)
    along, span = end - start, places[:, None] - start[..., None, :, :]
    turn = along[..., None, :, 0] * span[..., 2] - along[..., None, :, 2] * span[..., 0]
    inside = np.all(turn >= 0.0, axis=-1) | np.all(turn <= 0.0, axis=-1)
    gaps = _gaps(places, start, end).min(axis=-1)
    return np.where(inside, -gaps, gaps).min(axis=-1)


def nearest_points(a: Points, b: Points) -> tuple[Points, Points]:
    """The points of two outlines nearest to each other, `(..., 3)`, on their sides; each keeps its own y."""
    shape = np.broadcast_shapes(a.shape[:-2], b.shape[:-2])
    a, b = (np.broadcast_to(each, (*shape, *each.shape[-2:])) for each in (a, b))
    corner_a, foot_b, to_b = _nearest_corner(a, b)
    corner_b, foot_a, to_a = _nearest_corner(b, a)
    first = (to_b <= to_a)[..., None]
    return np.where(first, corner_a, foot_a), np.where(first, foot_b, corner_b)


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
        on_a, on_b = _shadow(axes, a), _shadow(axes, b)
        gap = np.maximum(_least(on_b) - _most(on_a), _least(on_a) - _most(on_b))
        gaps.append(_most(np.where(exist, gap, NO_AXIS)))
    return np.maximum(gaps[0], gaps[1])


def _shadow(axes: Points, outline: Points) -> Floats:
    """Where every corner falls along every direction, `(..., directions, corners)`."""
    x, z = (axes[..., :, None, at] * outline[..., None, :, at] for at in (0, 2))
    return x + z


def _least(values: Floats) -> Floats:
    """Least along a short last axis; one by one, for `np.min` along it takes several times as long."""
    return reduce(np.minimum, np.moveaxis(values, -1, 0))


def _most(values: Floats) -> Floats:
    """Greatest along a short last axis."""
    return reduce(np.maximum, np.moveaxis(values, -1, 0))


def _distance(a: Points, b: Points) -> Mm:
    to_b, to_a = _gaps(a, *_side_ends(b)), _gaps(b, *_side_ends(a))
    return np.minimum(_least(_least(to_b)), _least(_least(to_a)))


def _side_ends(outline: Points) -> tuple[Points, Points]:
    first, last = _sides(outline.shape[-2])
    return outline[..., first, :], outline[..., last, :]


def _gaps(corners: Points, start: Points, end: Points) -> Floats:
    """Distance of every corner from every side, `(..., corners, sides)`."""
    x, z = (corners[..., :, None, at] - start[..., None, :, at] for at in (0, 2))
    along_x, along_z = (end[..., None, :, at] - start[..., None, :, at] for at in (0, 2))
    size = along_x * along_x + along_z * along_z
    reach = x * along_x + z * along_z
    part = np.clip(np.divide(reach, size, out=np.zeros(reach.shape), where=size > 0), 0.0, 1.0)
    x, z = x - part * along_x, z - part * along_z
    return np.sqrt(x * x + z * z)


def _nearest_corner(corners: Points, outline: Points) -> tuple[Points, Points, Mm]:
    """The corner nearest to an outline's sides, the nearest point of those sides, and how far it is."""
    start, end = _side_ends(outline)
    gaps = _gaps(corners, start, end)
    best = gaps.reshape(*gaps.shape[:-2], -1).argmin(axis=-1)
    corner = _picked(corners, best // gaps.shape[-1])
    start, end = (_picked(ends, best % gaps.shape[-1]) for ends in (start, end))
    foot = at_y(nearest_on_segment(_flat(corner), _flat(start), _flat(end)), start[..., 1])
    return corner, foot, gaps.min(axis=(-2, -1))


def _picked(points: Points, at: np.ndarray) -> Points:
    return np.take_along_axis(points, at[..., None, None], axis=-2)[..., 0, :]


def _flat(points: Points) -> Points:
    return at_y(points, np.zeros(points.shape[:-1]))
