"""Where a straight line crosses a profile in side view."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from fitcalc.geometry.degrees import length, unit
from fitcalc.geometry.side import at_y
from fitcalc.units import Bools, Floats, Mm, Points

PARALLEL = 1e-9
NOWHERE = 1e9
"""Stands for how far off a crossing with a parallel piece is, mm."""


@dataclass(frozen=True, eq=False)
class Crossing:
    """One crossing.

    Attributes:
        at: on the profile, y from the line.
        along: length along the profile from its first point; negative or beyond its length on the carried-
            on ends.
        line: direction of the profile there.
        miss: how far the line would have to be longer to get there; 0 where it crosses.
    """

    at: Points
    along: Mm
    line: Points
    miss: Mm


def crossing(start: Points, end: Points, profile: Points) -> Crossing:
    """The first crossing of the line start-end with a profile `(n, k, 3)` whose ends are carried straight on.

    Where the line does not get there, it is carried on too and `miss` says how far.

    Source: plane geometry.
    """
    piece = profile[:, 1:] - profile[:, :-1]
    line, offset = (end - start)[:, None], profile[:, :-1] - start[:, None]
    on_line, on_piece, parallel = _meeting(line, piece, offset)
    size = length(at_y(piece, 0.0))
    reach = length(at_y(line, 0.0))
    off_line = _outside(on_line, np.zeros(1), np.ones(1)) * reach
    low, high = _ends(piece.shape[1])
    off = off_line + _outside(on_piece, low, high) * size + np.where(parallel, NOWHERE, 0.0)
    best = np.argmin(off, axis=1)[:, None]
    share = _picked(on_piece, best)
    whole = np.cumsum(size, axis=1) - size
    along = _picked(whole, best) + share * _picked(size, best)
    corner = np.take_along_axis(profile, best[..., None], axis=1)[:, 0]
    chosen = np.take_along_axis(piece, best[..., None], axis=1)[:, 0]
    y = start[:, 1] + np.clip(_picked(on_line, best), 0.0, 1.0) * (end - start)[:, 1]
    return Crossing(
        at_y(corner + share[:, None] * chosen, y), along, unit(at_y(chosen, 0.0)), _picked(off_line, best)
    )


def _meeting(line: Points, piece: Points, offset: Points) -> tuple[Floats, Floats, Bools]:
    """Shares of line and piece at which they meet, 0 where they are parallel, and whether they are."""
    spread = _turn(line, piece)
    parallel = np.abs(spread) <= PARALLEL * np.maximum(length(line) * length(piece), PARALLEL)
    by = np.where(parallel, 1.0, spread)
    return (
        np.where(parallel, 0.0, _turn(offset, piece) / by),
        np.where(parallel, 0.0, _turn(offset, line) / by),
        parallel,
    )


def _turn(a: Points, b: Points) -> Floats:
    return a[..., 0] * b[..., 2] - a[..., 2] * b[..., 0]


def _outside(share: Floats, low: Floats, high: Floats) -> Floats:
    return np.maximum(np.maximum(low - share, share - high), 0.0)


def _ends(count: int) -> tuple[Floats, Floats]:
    """Shares that each piece spans; the outer ends are open."""
    low, high = np.zeros(count), np.ones(count)
    low[0], high[-1] = -NOWHERE, NOWHERE
    return low, high


def _picked(values: Floats, best: NDArray[np.intp]) -> Floats:
    return np.take_along_axis(values, best, axis=1)[:, 0]
