"""A taut strap over round things: shortest paths in closed form.

Seen along the axis of a round thing the strap is straight runs and arcs. Rolled out flat it is straight
throughout, so that its drift along the axis is shared out over its length.

Points here are `(n, 2)`: side view (x rearward, z up), or any plane that the strap lies in. A strap lies to
the left of what it bends over, seen in its own direction: over the shoulder on its way rearward.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import acosd, atan2d, cosd, length, sind
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
        heading: from the first axis, positive toward the second: 0 = rearward and level, positive = rising.
        shortfall: how deep one roller lies inside the other, so that no such run exists; else 0.
    """

    leaves: Points
    meets: Points
    heading: Deg
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


def run_over(here: Roller, there: Roller) -> Run:
    """The straight run that touches two rollers and has both on its right.

    Source: external tangent of two circles; plane geometry.
    """
    line = there.centre - here.centre
    apart, step = length(line), here.radius - there.radius
    share = np.divide(step, apart, out=np.sign(step) * np.ones_like(apart), where=apart > np.abs(step))
    normal = atan2d(line[:, 1], line[:, 0]) + acosd(share)
    leaves, meets = _rim(here, normal), _rim(there, normal)
    return Run(leaves, meets, half_turn(normal - 90.0), np.maximum(np.abs(step) - apart, 0.0))


def taut(heading: Deg, first: Roller, end: Points, guide: Roller | None = None) -> Taut:
    """The shortest strap that arrives with a heading on the first roller and is held at `end`.

    A guide is bent over where the direct strap would cut into it, and left alone where the strap passes
    clear above. A strap that goes on more steeply than it arrives leaves the first roller at once.
    """
    onto = _path(heading, first, end, guide).heading
    at_once = half_turn(heading - onto) < 0.0
    start = _rim(first, heading + 90.0)
    touched = Roller(np.where(at_once[:, None], start, first.centre), np.where(at_once, 0.0, first.radius))
    return _path(heading, touched, end, guide)


def shared_drift(start: Floats, end: Floats, so_far: Mm, whole: Mm) -> Floats:
    """Coordinate along the rollers' axes after part of the strap: it drifts evenly over its whole length."""
    shape = np.broadcast_shapes(np.shape(so_far), np.shape(whole))
    part = np.divide(so_far, whole, out=np.zeros(shape), where=whole > 0)
    return start + (end - start) * part


def through_segment(start: Points, end: Points, low: Points, high: Points) -> Points:
    """The point of a slot low-high that the shortest line from `start` to `end` passes through, all `(n, 3)`.

    Source: both ends unfolded into one plane about the slot's line; plane geometry.
    """
    along = high - low
    size = length(along)
    axis = np.divide(along, size[:, None], out=np.zeros_like(along), where=size[:, None] > 0)
    at_start, at_end = (np.sum((each - low) * axis, axis=-1) for each in (start, end))
    off_start = length(start - low - at_start[:, None] * axis)
    off_end = length(end - low - at_end[:, None] * axis)
    crossing = shared_drift(at_start, at_end, off_start, off_start + off_end)
    return low + np.clip(crossing, 0.0, size)[:, None] * axis


def half_turn(angle: Deg) -> Deg:
    """The same direction between -180 and 180."""
    return (angle + 180.0) % 360.0 - 180.0


def _rim(roller: Roller, normal: Deg) -> Points:
    return roller.centre + roller.radius[:, None] * np.stack([cosd(normal), sind(normal)], axis=-1)


def _path(heading: Deg, first: Roller, end: Points, guide: Roller | None) -> Taut:
    held = Roller(end, np.zeros(len(end)))
    direct = run_over(first, held)
    if guide is None:
        nowhere = np.zeros(len(end), dtype=bool)
        return _joined(heading, first, _clear_of(direct, held), nowhere, held)
    onto, off = run_over(first, guide), run_over(guide, held)
    guided = (half_turn(onto.heading - off.heading) > 0.0) & (onto.shortfall + off.shortfall <= 0.0)
    clear = _clear_of(direct, guide)
    runs = _either(guided, onto, clear[0]), _either(guided, off, clear[1])
    return _joined(heading, first, runs, guided, guide)


def _joined(heading: Deg, first: Roller, runs: tuple[Run, Run], guided: Bools, guide: Roller) -> Taut:
    onto, off = runs
    wrap = np.maximum(half_turn(heading - onto.heading), 0.0)
    guide_wrap = np.where(guided, half_turn(onto.heading - off.heading), 0.0)
    arc = np.radians(wrap) * first.radius
    return Taut(
        leaves=onto.leaves,
        meets=onto.meets,
        parts=off.leaves,
        end=off.meets,
        heading=onto.heading,
        guided=guided,
        wrap=wrap,
        arc=arc,
        length=arc + onto.span + np.radians(guide_wrap) * guide.radius + off.span,
        shortfall=onto.shortfall,
    )


def _clear_of(direct: Run, guide: Roller) -> tuple[Run, Run]:
    """A direct run cut in two at its point nearest to a guide."""
    along = direct.meets - direct.leaves
    size = np.sum(along * along, axis=-1)
    reach = np.sum((guide.centre - direct.leaves) * along, axis=-1)
    share = np.clip(np.divide(reach, size, out=np.zeros_like(size), where=size > 0), 0.0, 1.0)
    cut = direct.leaves + share[:, None] * along
    none = np.zeros_like(direct.shortfall)
    return Run(direct.leaves, cut, direct.heading, direct.shortfall), Run(
        cut, direct.meets, direct.heading, none
    )


def _either(condition: Bools, yes: Run, no: Run) -> Run:
    here = condition[:, None]
    return Run(
        np.where(here, yes.leaves, no.leaves),
        np.where(here, yes.meets, no.meets),
        np.where(condition, yes.heading, no.heading),
        np.where(condition, yes.shortfall, no.shortfall),
    )
