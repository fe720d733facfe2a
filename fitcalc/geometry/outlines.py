"""Gaps between convex outlines in side view, signed: positive apart, negative the depth of overlap.

Corners are as in `sides`. An outline that is not convex overlaps from where its hull does, so that a gap is never
overstated. Sides of the outline with more of them are worked out together, those of the other one after another.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import reduce
from typing import Any

import numpy as np

from fitcalc.geometry.sides import (
    NO_SIDE,
    Sides,
    corners_of,
    each_side,
    from_to,
    in_runs,
    least,
    least_of,
    most,
    seen_from,
    sides_of,
    some_of,
    squared_gap,
    squared_gaps,
)
from fitcalc.units import Floats, Mm, Points

NO_AXIS = -1e6
"""Gap along a direction that does not exist: less than any that does."""
EVERYWHERE = 1e9
"""How far off a side of no length an outline's own corners count as lying, mm."""


@dataclass(frozen=True, eq=False)
class Outline:
    """An outline with what is worked out from its corners alone.

    Attributes:
        corners: `(..., k, 3)`.
        sides: of it.
        low, high: between which distances off each side the outline's own corners lie.
    """

    corners: Points
    sides: Sides
    low: Mm
    high: Mm

    @property
    def x(self) -> Mm:
        """Of its corners, `(..., k)`."""
        return self.corners[..., 0]

    @property
    def z(self) -> Mm:
        """Of its corners, `(..., k)`."""
        return self.corners[..., 2]

    def __getitem__(self, at: Any) -> "Outline":
        """Some of several outlines, by their leading axes."""
        return Outline(
            self.corners[at], Sides(*(part[at] for part in self.sides)), self.low[at], self.high[at]
        )

    def beside(self) -> "Outline":
        """With one more axis before that of its corners and sides, for several points to stand beside it."""
        sides = Sides(*(part[..., None, :] for part in self.sides))
        return Outline(self.corners[..., None, :, :], sides, self.low[..., None, :], self.high[..., None, :])

    def some(self, run: slice) -> "Outline":
        """Some cases; one that is the same for all stays."""
        return self if len(self.corners) == 1 else self[run]


def outlined(corners: Points) -> Outline:
    """The outline of corners `(..., k, 3)`."""
    sides = sides_of(corners)
    low, high = _ends(seen_from(*corner, sides)[1] for corner in corners_of(corners))
    is_side = sides.length >= NO_SIDE
    return Outline(corners, sides, np.where(is_side, low, -EVERYWHERE), np.where(is_side, high, EVERYWHERE))


def clearance(a: Points, b: Points) -> Mm:
    """Gap between two convex outlines by their corners, `(...)`; see `gap`."""
    return gap(outlined(a), outlined(b))


def gap(a: Outline, b: Outline) -> Mm:
    """Gap between two convex outlines, `(...)`; negative = how far one must move to come clear.

    Source: separating axes for the depth, least corner-to-side distance for the gap.
    """
    more, fewer = (a, b) if a.x.shape[-1] >= b.x.shape[-1] else (b, a)
    shape = np.broadcast_shapes(more.low[..., 0].shape, fewer.low[..., 0].shape)
    each = int(np.prod(shape[1:], dtype=int)) * more.low.shape[-1]
    return in_runs(lambda run: _gap(more.some(run), fewer.some(run)), shape[0], each)


def _gap(more: Outline, fewer: Outline) -> Mm:
    squared, depth = _seen_from_all(more, fewer)
    if fewer.x.shape[-1] > 1:
        faced = [_seen_from_one(fewer, at, side, more) for at, side in enumerate(each_side(fewer.sides))]
        squared = reduce(np.minimum, (part for part, _ in faced), squared)
        depth = reduce(np.maximum, (part for _, part in faced), depth)
    return np.where((depth < 0.0) & (depth > NO_AXIS), depth, np.sqrt(squared))


def _seen_from_all(own: Outline, other: Outline) -> tuple[Floats, Mm]:
    """From the sides of one outline to the corners of another: square of the least distance, and the gap square to them."""
    seen = [seen_from(*corner, own.sides) for corner in corners_of(other.corners)]
    squared = least_of(squared_gap(along, off, own.sides) for along, off in seen)
    low, high = _ends(off for _, off in seen)
    return least(squared), most(np.maximum(low - own.high, own.low - high))


def _ends(off: Iterable[Mm]) -> tuple[Mm, Mm]:
    """Least and greatest of several distances off the same sides."""
    every = iter(off)
    low = high = next(every)
    for each in every:
        low, high = np.minimum(low, each), np.maximum(high, each)
    return low, high


def _seen_from_one(own: Outline, at: int, side: Sides, other: Outline) -> tuple[Floats, Mm]:
    """The same from a single side of an outline, the other's corners together."""
    along, off = seen_from(other.x, other.z, side)
    beyond = np.maximum(least(off) - own.high[..., at], own.low[..., at] - most(off))
    return least(squared_gap(along, off, side)), beyond


def path_distance(shapes: Points, other: Points) -> Mm:
    """Least distance from an outline's corners to the paths of another's corners, `(n,)`.

    Args:
        shapes: places that the moving outline takes one after another, `(n, s, k, 3)`; between two of them
            its corners count as moving straight.
        other: `(n or 1, m, 3)`.
    """

    def work(run: slice) -> Mm:
        x, z = (some_of(shapes[..., axis], run) for axis in (0, 2))
        paths = from_to(x[:, :-1], z[:, :-1], x[:, 1:], z[:, 1:])
        corners = corners_of(some_of(other, run)[:, None])
        return np.sqrt(least_of(squared_gaps(*corner, paths) for corner in corners).min(axis=(1, 2)))

    return in_runs(work, max(len(shapes), len(other)), shapes[0, ..., 0].size)


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
