"""How much line lies where on a drawing, so that words can keep off it."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from fitcalc.present.picture import XY, Arc, Area, Circle, Dimension, Line, Picture, Primitive, offset_line
from fitcalc.units import Floats

QUIET = frozenset(
    {"ground", "limit area", "keep out area", "as found", "assumed", "link", "joint", "centre", "note"}
)
"""Styles that a text may lie on without harm."""


@dataclass(frozen=True, eq=False)
class Ink:
    """Cells with a line in them, summed from the lower left corner; a cell is half a letter high."""

    origin: Floats
    cell: float
    summed: NDArray[np.int32]

    @staticmethod
    def of(picture: Picture, size: float) -> "Ink":
        """The ink of a picture with lettering of a size, in mm of the car."""
        cell = 0.5 * size
        dots = _dots(picture, cell)
        origin = dots.min(axis=0) - cell
        at = ((dots - origin) / cell).astype(int)
        shape = at.max(axis=0) + 2
        counts = np.zeros(shape, dtype=np.int32)
        counts[at[:, 0], at[:, 1]] = 1
        summed = np.zeros(shape + 1, dtype=np.int32)
        summed[1:, 1:] = counts.cumsum(axis=0).cumsum(axis=1)
        return Ink(origin, cell, summed)

    def under(self, boxes: Floats) -> Floats:
        """Cells with a line in them under each box."""
        last = np.array(self.summed.shape) - 1
        low = np.clip(((boxes[:, :2] - self.origin) / self.cell).astype(int), 0, last)
        high = np.clip(((boxes[:, 2:] - self.origin) / self.cell).astype(int) + 1, 0, last)
        s = self.summed
        return (
            s[high[:, 0], high[:, 1]]
            - s[low[:, 0], high[:, 1]]
            - s[high[:, 0], low[:, 1]]
            + s[low[:, 0], low[:, 1]]
        )


def _dots(picture: Picture, step: float) -> Floats:
    """Points along every line that a text should keep off, no further apart than `step`."""
    runs = [run for each in picture.primitives for run in _runs(each)]
    starts = np.array([point for run in runs for point in run[:-1]]).reshape(-1, 2)
    ends = np.array([point for run in runs for point in run[1:]]).reshape(-1, 2)
    if len(starts) == 0:
        return np.zeros((1, 2))
    count = np.ceil(np.hypot(*(ends - starts).T) / step).astype(int) + 1
    first = np.repeat(np.cumsum(count) - count, count)
    share = (np.arange(count.sum()) - first) / np.repeat(count, count)
    return np.repeat(starts, count, axis=0) + share[:, None] * np.repeat(ends - starts, count, axis=0)


def _runs(primitive: Primitive) -> Iterator[tuple[XY, ...]]:
    if primitive.style in QUIET:
        return
    match primitive:
        case Line():
            yield primitive.points
        case Area():
            yield (*primitive.points, primitive.points[0])
        case Dimension():
            yield offset_line(primitive)
        case Circle() | Arc():
            (x, y), r = primitive.centre, primitive.radius
            yield ((x - r, y), (x, y + r), (x + r, y), (x, y - r), (x - r, y))
