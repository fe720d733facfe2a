"""Gaps between convex outlines in side view, signed: positive apart, negative the depth of overlap.

An outline is its corners, `(..., k, 3)`, of which x and z count; leading axes broadcast. One corner is a
point, two are a line; up to four may stand in any order and count as their hull, more go round it.
An outline that is not convex overlaps from where its hull does, so that a gap is never overstated.

Sides and corners of the outline with more of them are worked out together, those of the other one after another:
arrays stay small enough for the processor's cache.
"""

from collections.abc import Iterable, Iterator
from functools import reduce
from typing import NamedTuple

import numpy as np

from fitcalc.geometry.lines import nearest_on_segment
from fitcalc.geometry.side import at_y
from fitcalc.units import Bools, Floats, Mm, Points

NO_AXIS = -1e6
"""Gap along a direction that does not exist: less than any that does."""
ANY_ORDER = 4
"""So many corners may stand in any order, for every pair of them is tried as a side."""
AT_ONCE = 20_000
"""Lines are worked out in runs of so many pieces times points, which the processor's cache holds."""
NO_SIDE = 1e-12
"""Square of a side's length, mm2, below which it counts as a point."""


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
    paths = _from_to(x[:, :-1], z[:, :-1], x[:, 1:], z[:, 1:])
    squared = _least_of(_squared(*corner, paths) for corner in _corners(other[:, None]))
    return np.sqrt(squared.min(axis=(1, 2)))


def surface_room(shapes: Points, line: Points, solid: float) -> Mm:
    """Least gap between outlines and a surface that runs front to rear, `(...)`; negative = how deep they stand in it.

    Args:
        shapes: `(..., k, 3)`, single points, or corners in order round an outline.
        line: the surface in side view, `(j, 3)`; beyond its ends there is none.
        solid: 1.0 for what is solid above its line, -1.0 for what is solid below.
    """
    x, z = shapes[..., 0], shapes[..., 2]
    past = (x >= line[0, 0]) & (x <= line[-1, 0]) & (solid * (z - np.interp(x, line[:, 0], line[:, 2])) > 0.0)
    gaps = np.sqrt(_least_of(_to_pieces(x, z, some) for some in _groups(line, x.size)))
    room = _least(np.where(past, -gaps, gaps))
    return room if shapes.shape[-2] == 1 else np.minimum(room, _room_to_points(shapes, _bulges(line, solid)))


def nearest_points(a: Points, b: Points) -> tuple[Points, Points]:
    """The points of two outlines `(n or 1, k, 3)` nearest to each other, `(n, 3)`; each keeps its own y."""
    count = max(len(a), len(b))
    a, b = (np.broadcast_to(each, (count, *each.shape[1:])) for each in (a, b))
    return _nearer(_nearest_corner(a, *_side_ends(b)), _nearest_corner(b, *_side_ends(a)))


def nearest_to_line(outline: Points, line: Points) -> tuple[Points, Points]:
    """The points of an outline `(n, k, 3)` and of a line of straight pieces `(j, 3)` nearest to each other."""
    every = np.broadcast_to(line, (len(outline), *line.shape))
    onto = _nearest_corner(outline, every[:, :-1], every[:, 1:])
    return _nearer(onto, _nearest_corner(every, *_side_ends(outline)))


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


class Sides(NamedTuple):
    """Sides in side view, each `(..., sides)`: where they start, which way they go, and the square of their length."""

    x: Floats
    z: Floats
    along_x: Floats
    along_z: Floats
    size: Floats


def _side_ends(outline: Points) -> tuple[Points, Points]:
    """Start and end of every side, `(..., sides, 3)`."""
    first, last = _ends(np.arange(outline.shape[-2]))
    return outline[..., first, :], outline[..., last, :]


def _sides_of(outline: Points) -> Sides:
    (x, end_x), (z, end_z) = _ends(outline[..., 0]), _ends(outline[..., 2])
    return _from_to(x, z, end_x, end_z)


def _from_to(x: Floats, z: Floats, end_x: Floats, end_z: Floats) -> Sides:
    along_x, along_z = end_x - x, end_z - z
    return Sides(x, z, along_x, along_z, along_x * along_x + along_z * along_z)


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


def _groups(line: Points, size: int) -> Iterator[Points]:
    """A line in runs of so many pieces as can be worked out at once for `size` points."""
    pieces, together = len(line) - 1, max(1, AT_ONCE // size)
    return (line[at : at + together + 1] for at in range(0, pieces, together))


def _to_pieces(x: Floats, z: Floats, line: Points) -> Floats:
    """Square of the least distance of points from the pieces of a line."""
    pieces = _from_to(line[:-1, 0], line[:-1, 2], line[1:, 0], line[1:, 2])
    if len(line) == 2:
        return _squared(x, z, pieces)
    return _squared(x[..., None], z[..., None], pieces).min(axis=-1)


def _each(sides: Sides) -> Iterator[Sides]:
    """One side after another, `(..., 1)`."""
    return (Sides(*(part[..., at : at + 1] for part in sides)) for at in range(sides.x.shape[-1]))


def _corners(outline: Points) -> Iterator[tuple[Floats, Floats]]:
    """The x and z of one corner after another, `(..., 1)`."""
    return ((outline[..., at : at + 1, 0], outline[..., at : at + 1, 2]) for at in range(outline.shape[-2]))


def _separation(own: Points, other: Points) -> Mm:
    """Greatest gap between two outlines along the normals of one's sides, `(...)`."""
    x, z, exist = _axes(own)
    (low, high), (other_low, other_high) = _shadow(x, z, own), _shadow(x, z, other)
    return _most(np.where(exist, np.maximum(other_low - high, low - other_high), NO_AXIS))


def _axes(outline: Points) -> tuple[Floats, Floats, Bools]:
    """Directions that may separate an outline from others: x and z, and whether each exists, `(..., directions)`."""
    sides = _sides_of(outline)
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
    falls = [corner_x * x + corner_z * z for corner_x, corner_z in _corners(outline)]
    return reduce(np.minimum, falls), reduce(np.maximum, falls)


def _distance(more: Points, fewer: Points) -> Mm:
    sides = _sides_of(more)
    squared = _least(_least_of(_squared(*corner, sides) for corner in _corners(fewer)))
    if fewer.shape[-2] == 1:
        return np.sqrt(squared)
    x, z = more[..., 0], more[..., 2]
    onto_sides = _least_of(_squared(x, z, side) for side in _each(_sides_of(fewer)))
    return np.sqrt(np.minimum(squared, _least(onto_sides)))


def _squared(x: Floats, z: Floats, sides: Sides) -> Floats:
    """Square of the distance of points from sides; a side of no length is its start."""
    x, z = x - sides.x, z - sides.z
    reach = x * sides.along_x + z * sides.along_z
    part = np.clip(reach / np.maximum(sides.size, NO_SIDE), 0.0, 1.0)
    x -= part * sides.along_x
    z -= part * sides.along_z
    return x * x + z * z


def _least_of(values: Iterable[Floats]) -> Floats:
    return reduce(np.minimum, values)


def _least(values: Floats) -> Floats:
    """Least along a short last axis; one by one, for `np.min` along it takes several times as long."""
    return reduce(np.minimum, (values[..., at] for at in range(values.shape[-1])))


def _most(values: Floats) -> Floats:
    """Greatest along a short last axis."""
    return reduce(np.maximum, (values[..., at] for at in range(values.shape[-1])))


def _bulges(line: Points, solid: float) -> Points:
    """The points of a surface that stand out of it, and its ends: no side of an outline comes nearest to any other."""
    step = line[1:] - line[:-1]
    turn = step[:-1, 0] * step[1:, 2] - step[:-1, 2] * step[1:, 0]
    return line[np.concatenate([[True], solid * turn > 0.0, [True]])]


def _room_to_points(shapes: Points, places: Points) -> Mm:
    """Least gap between outlines and single points `(j, 3)`, negative where one lies inside, `(...)`."""
    x, z = shapes[..., None, :, 0], shapes[..., None, :, 2]
    sides = _from_to(x, z, *(np.concatenate([each[..., 1:], each[..., :1]], axis=-1) for each in (x, z)))
    together = max(1, AT_ONCE // x.size)
    runs = (places[at : at + together] for at in range(0, len(places), together))
    return _least_of(_least_room(sides, run[:, None, 0], run[:, None, 2]) for run in runs)


def _least_room(sides: Sides, place_x: Floats, place_z: Floats) -> Mm:
    """Least gap of points `(m, 1)` from outlines of sides `(..., 1, k)`, negative where one lies inside, `(...)`."""
    turn = sides.along_x * (place_z - sides.z) - sides.along_z * (place_x - sides.x)
    inside = (_least(turn) >= 0.0) | (_most(turn) <= 0.0)
    gap = np.sqrt(_least(_squared(place_x, place_z, sides)))
    return np.where(inside, -gap, gap).min(axis=-1)


def _nearest_corner(corners: Points, start: Points, end: Points) -> tuple[Points, Points, Mm]:
    """The corner nearest to any side, the nearest point of those sides, and the square of how far it is."""
    ends = (end[:, None, :, axis] for end in (start, end) for axis in (0, 2))
    squared = _squared(corners[:, :, None, 0], corners[:, :, None, 2], _from_to(*ends))
    each, flat = np.arange(len(squared)), squared.reshape(len(squared), -1)
    best = flat.argmin(axis=1)
    side = best % squared.shape[2]
    corner, start, end = corners[each, best // squared.shape[2]], start[each, side], end[each, side]
    foot = at_y(nearest_on_segment(_flat(corner), _flat(start), _flat(end)), start[:, 1])
    return corner, foot, flat[each, best]


def _nearer(onto: tuple[Points, Points, Mm], back: tuple[Points, Points, Mm]) -> tuple[Points, Points]:
    """Of a first thing's corner with its foot on a second, and the reverse, the nearer pair, first thing first."""
    (corner, foot, gap), (other_corner, other_foot, other_gap) = onto, back
    first = (gap <= other_gap)[..., None]
    return np.where(first, corner, other_foot), np.where(first, foot, other_corner)


def _flat(points: Points) -> Points:
    return at_y(points, np.zeros(points.shape[:-1]))
