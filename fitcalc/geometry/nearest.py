"""Where two outlines in side view come nearest to each other; outlines are as in `sides`."""

import numpy as np

from fitcalc.geometry.lines import nearest_on_segment
from fitcalc.geometry.side import at_y
from fitcalc.geometry.sides import from_to, side_ends, squared_gaps
from fitcalc.units import Mm, Points


def nearest_points(a: Points, b: Points) -> tuple[Points, Points]:
    """The points of two outlines `(n or 1, k, 3)` nearest to each other, `(n, 3)`; each keeps its own y."""
    count = max(len(a), len(b))
    a, b = (np.broadcast_to(each, (count, *each.shape[1:])) for each in (a, b))
    return _nearer(_nearest_corner(a, *side_ends(b)), _nearest_corner(b, *side_ends(a)))


def nearest_to_line(outline: Points, line: Points) -> tuple[Points, Points]:
    """The points of an outline `(n, k, 3)` and of a line of straight pieces `(j, 3)` nearest to each other."""
    every = np.broadcast_to(line, (len(outline), *line.shape))
    onto = _nearest_corner(outline, every[:, :-1], every[:, 1:])
    return _nearer(onto, _nearest_corner(every, *side_ends(outline)))


def _nearest_corner(corners: Points, start: Points, end: Points) -> tuple[Points, Points, Mm]:
    """The corner nearest to any side, the nearest point of those sides, and the square of how far it is."""
    ends = (end[:, None, :, axis] for end in (start, end) for axis in (0, 2))
    squared = squared_gaps(corners[:, :, None, 0], corners[:, :, None, 2], from_to(*ends))
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
    return at_y(points, 0.0)
