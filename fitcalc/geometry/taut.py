"""A taut strap over round things: shortest paths in closed form.

Seen along the axis of a round thing the strap is straight runs and arcs. Rolled out flat it is straight
throughout, so that its drift along the axis is shared out over its length.

Points here are `(n, 2)`: side view (x rearward, z up), or any plane that the strap lies in. A strap lies to
the left of what it bends over, seen in its own direction: over the shoulder on its way rearward.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import NO_LENGTH, atan2d, cosd, length, sind, unit
from fitcalc.geometry.side import dot, scaled
from fitcalc.units import Bools, Deg, Floats, Mm, Points


@dataclass(frozen=True, eq=False)
class Roller:
    """A circle that the strap bends over; radius 0 is a point that it passes through.

    Attributes:
        centre: `(n, 2)`.
    """

    centre: Points
    radius: Mm


@dataclass(frozen=True, eq=False)
class Run:
    """A straight run from one roller to the next.

    Attributes:
        leaves, meets: its ends, `(n, 2)`.
        along: its direction, `(n, 2)`.
        shortfall: how deep one roller lies inside the other, so that no such run exists; else 0.
    """

    leaves: Points
    meets: Points
    along: Points
    shortfall: Mm

    @property
    def span(self) -> Mm:
        """Its length."""
        return length(self.meets - self.leaves)


@dataclass(frozen=True, eq=False)
class Taut:
    """A strap that comes with a heading onto one roller, may bend over a guide, and ends in a point.

    Attributes:
        leaves: where it leaves the first roller.
        meets, parts: where it meets and leaves the guide; where it passes clear, both are the point nearest
            to it.
        end: where it is held.
        heading: of the run off the first roller; 0 = level, positive = rising.
        guided: the guide is touched.
        wrap: turn over the first roller.
        arc: length on the first roller.
        length: from where it comes onto the first roller to its end.
        shortfall: how deep the end lies inside the first roller, so that no such strap exists; else 0.
    """

    leaves: Points
    meets: Points
    parts: Points
    end: Points
    heading: Deg
    guided: Bools
    wrap: Deg
    arc: Mm
    length: Mm
    shortfall: Mm

    @property
    def first(self) -> Points:
        """The first thing after the roller: the guide where it is touched, else the end."""
        return np.where(self.guided[:, None], self.meets, self.end)

    @property
    def so_far(self) -> Mm:
        """Length up to `leaves`, `meets`, `parts` and `end`, `(n, 4)`."""
        onto, off = length(self.meets - self.leaves), length(self.end - self.parts)
        return np.stack([self.arc, self.arc + onto, self.length - off, self.length], axis=-1)


def plane(first: Floats | float, second: Floats) -> Points:
    """Points `(n, 2)` of a plane from their coordinates."""
    coordinates = np.empty((2, *np.broadcast(first, second).shape))
    coordinates[0], coordinates[1] = first, second
    return coordinates.T


def run_over(here: Roller, there: Roller) -> Run:
    """The straight run that touches two rollers and has both on its right.

    Source: external tangent of two circles; plane geometry.
    """
    line = there.centre - here.centre
    apart, step = length(line), here.radius - there.radius
    share = step / np.maximum(np.maximum(apart, np.abs(step)), NO_LENGTH)
    rise = np.sqrt((1.0 - share) * (1.0 + share))
    x, z = unit(line).T
    normal = plane(x * share - z * rise, z * share + x * rise)
    leaves, meets = _rim(here, normal), _rim(there, normal)
    return Run(leaves, meets, plane(normal[:, 1], -normal[:, 0]), np.maximum(np.abs(step) - apart, 0.0))


def taut(heading: Deg, first: Roller, end: Points, guide: Roller | None = None) -> Taut:
    """The shortest strap that arrives with a heading on the first roller and is held at `end`.

    A guide is bent over where the direct strap would cut into it, and left alone where the strap passes
    clear above. A strap that goes on more steeply than it arrives leaves the first roller at once.

    Args:
        heading: from the first axis, positive toward the second: 0 = rearward and level, positive = rising.
        first: what it arrives on.
        end: `(n, 2)`.
        guide: what it may be bent over on its way.
    """
    x, z = cosd(heading), sind(heading)
    arriving = plane(x, z)
    path, leaving = _path(arriving, first, end, guide)
    at_once = _turn(leaving, arriving) < 0.0
    if not np.any(at_once):
        return path
    start = _rim(first, plane(-z, x))
    touched = Roller(np.where(at_once[:, None], start, first.centre), np.where(at_once, 0.0, first.radius))
    return _path(arriving, touched, end, guide)[0]


def shared_drift(start: Floats, end: Floats, so_far: Mm, whole: Mm) -> Floats:
    """Coordinate along the rollers' axes after part of the strap: it drifts evenly over its whole length."""
    return start + (end - start) * (so_far / np.maximum(whole, NO_LENGTH))


def through_segment(start: Points, end: Points, low: Points, high: Points) -> Points:
    """The point of a slot low-high that the shortest line from `start` to `end` passes through, all `(n, 3)`.

    Source: both ends unfolded into one plane about the slot's line; plane geometry.
    """
    along = high - low
    axis = unit(along)
    to_start, to_end = start - low, end - low
    at_start, at_end = dot(to_start, axis), dot(to_end, axis)
    off_start, off_end = length(to_start - scaled(axis, at_start)), length(to_end - scaled(axis, at_end))
    crossing = shared_drift(at_start, at_end, off_start, off_start + off_end)
    return low + scaled(axis, np.clip(crossing, 0.0, length(along)))


def _turn(start: Points, end: Points) -> Deg:
    """Turn from one direction to another, positive as from the first axis to the second."""
    return atan2d(start[:, 0] * end[:, 1] - start[:, 1] * end[:, 0], dot(start, end))


def _rim(roller: Roller, normal: Points) -> Points:
    return roller.centre + scaled(normal, roller.radius)


def _path(arriving: Points, first: Roller, end: Points, guide: Roller | None) -> tuple[Taut, Points]:
    """The strap, and its direction off the first roller."""
    held = Roller(end, np.zeros(1))
    direct = run_over(first, held)
    if guide is None:
        nowhere = np.zeros(len(direct.leaves), dtype=bool)
        return _joined(arriving, first, _clear_of(direct, held), nowhere, held), direct.along
    onto, off = run_over(first, guide), run_over(guide, held)
    guided = (_turn(off.along, onto.along) > 0.0) & (onto.shortfall + off.shortfall <= 0.0)
    clear = _clear_of(direct, guide)
    runs = _either(guided, onto, clear[0]), _either(guided, off, clear[1])
    return _joined(arriving, first, runs, guided, guide), runs[0].along


def _joined(arriving: Points, first: Roller, runs: tuple[Run, Run], guided: Bools, guide: Roller) -> Taut:
    onto, off = runs
    wrap = np.maximum(_turn(onto.along, arriving), 0.0)
    guide_wrap = np.where(guided, _turn(off.along, onto.along), 0.0)
    arc = np.radians(wrap) * first.radius
    return Taut(
        leaves=onto.leaves,
        meets=onto.meets,
        parts=off.leaves,
        end=off.meets,
        heading=atan2d(onto.along[:, 1], onto.along[:, 0]),
        guided=guided,
        wrap=wrap,
        arc=arc,
        length=arc + onto.span + np.radians(guide_wrap) * guide.radius + off.span,
        shortfall=onto.shortfall,
    )


def _clear_of(direct: Run, guide: Roller) -> tuple[Run, Run]:
    """A direct run cut in two at its point nearest to a guide."""
    run = direct.meets - direct.leaves
    share = dot(guide.centre - direct.leaves, run) / np.maximum(dot(run, run), NO_LENGTH**2)
    cut = direct.leaves + scaled(run, np.clip(share, 0.0, 1.0))
    none = np.zeros_like(direct.shortfall)
    return Run(direct.leaves, cut, direct.along, direct.shortfall), Run(cut, direct.meets, direct.along, none)


def _either(condition: Bools, yes: Run, no: Run) -> Run:
    here = condition[:, None]
    return Run(
        np.where(here, yes.leaves, no.leaves),
        np.where(here, yes.meets, no.meets),
        np.where(here, yes.along, no.along),
        np.where(condition, yes.shortfall, no.shortfall),
    )
