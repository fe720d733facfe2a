"""What feet and legs may hit, as outlines in side view drawn out across the car."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.car_cockpit import Obstacle
from fitcalc.geometry.lines import profile_points
from fitcalc.geometry.outlines import backed
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.foot import floor_line
from fitcalc.units import Mm, Points

FAR = 5000.0
"""mm; further than anything in the car."""
UP, FORWARD = np.array([0.0, 0.0, FAR]), np.array([-FAR, 0.0, 0.0])


@dataclass(frozen=True, eq=False)
class Thing:
    """Something solid near the driver.

    Attributes:
        key: for ids.
        name: in words.
        outlines: convex pieces in side view, `(n or 1, r, m, 3)`.
        radius: how far it stands out round those pieces.
        low, high: its leftmost and rightmost y.
    """

    key: str
    name: str
    outlines: Points
    radius: Mm
    low: Mm
    high: Mm

    @property
    def pieces(self) -> int:
        """How many outlines it is made of."""
        return self.outlines.shape[1]


def packed(things: Sequence[Thing]) -> Points:
    """The outlines of several things one after another, `(n or 1, r, m, 3)`; last corners repeat to fill."""
    corners = max(thing.outlines.shape[2] for thing in things)
    count = max(len(thing.outlines) for thing in things)
    filled = [_filled_up(thing.outlines, corners) for thing in things]
    return np.concatenate([np.broadcast_to(each, (count, *each.shape[1:])) for each in filled], axis=1)


def _filled_up(outlines: Points, corners: int) -> Points:
    return outlines[:, :, np.minimum(np.arange(corners), outlines.shape[2] - 1)]


def slug(name: str) -> str:
    """A name as part of an id: lower case, words joined by underscores."""
    return re.sub(r"\W+", "_", name.lower()).strip("_") or "unnamed"


def roof(car: Car) -> Thing | None:
    """Scuttle or dash over feet and shins, solid above its underside; None where it was not measured."""
    profile = car.footwell.roof
    return None if profile is None else _filled("roof", "scuttle", profile_points(profile), UP)


def floor(car: Car) -> Thing:
    """The floor, solid below."""
    return _filled("floor", "floor", floor_line(car), -UP)


def bulkhead(car: Car) -> Thing | None:
    """The front bulkhead, solid ahead of its rear face; None where it was not measured."""
    if car.footwell.bulkhead is None:
        return None
    x = column(car.footwell.bulkhead)[:, None]
    face = point(x, np.zeros_like(x), np.array([[-FAR, FAR]]))
    return _across("bulkhead", "front bulkhead", backed(face, FORWARD), column(0.0))


def obstacles(car: Car) -> tuple[Thing, ...]:
    """Every obstacle of the footwell; one whose outline is not convex counts as its hull."""
    return tuple(_obstacle(each) for each in car.footwell.obstacles)


def _obstacle(obstacle: Obstacle) -> Thing:
    if obstacle.centre is not None and obstacle.radius is not None:
        corners, radius = xyz(obstacle.centre)[:, None], column(obstacle.radius)
    else:
        pairs = obstacle.outline or ()
        corners = np.stack(
            np.broadcast_arrays(*(point(column(x), column(0.0), column(z)) for x, z in pairs)), axis=1
        )
        radius = column(0.0)
    low, high = column(obstacle.y_low), column(obstacle.y_high)
    return Thing(slug(obstacle.name), obstacle.name, corners[:, None], radius, low, high)


def _filled(key: str, name: str, line: Points, away: Points) -> Thing:
    return _across(key, name, backed(line, away)[None], column(0.0))


def _across(key: str, name: str, outlines: Points, radius: Mm) -> Thing:
    return Thing(key, name, outlines, radius, column(-FAR), column(FAR))
