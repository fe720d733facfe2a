"""What feet and legs may hit, as outlines in side view drawn out across the car."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import chain, count

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.car_cockpit import Obstacle
from fitcalc.geometry.hull import hull
from fitcalc.geometry.lines import profile_points
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.foot import floor_line
from fitcalc.units import Mm, Points

OWN_KEYS = ("play", "wall", "roof", "floor", "bulkhead")
"""Keys that no obstacle may take."""


@dataclass(frozen=True, eq=False)
class Thing:
    """Something solid near the driver.

    Attributes:
        key: for ids.
        name: in words.
        outline: corners in side view, `(n or 1, m, 3)`.
        radius: how far it stands out round them.
        low, high: its leftmost and rightmost y.
    """

    key: str
    name: str
    outline: Points
    radius: Mm
    low: Mm
    high: Mm


@dataclass(frozen=True, eq=False)
class Surface:
    """A floor or roof, right across the car.

    Attributes:
        key: for ids.
        line: in side view, front to rear, `(j, 3)`.
        solid: 1.0 for what is solid above its line, -1.0 for what is solid below.
    """

    key: str
    line: Points
    solid: float


def slugs(names: Iterable[str], taken: Iterable[str] = ()) -> list[str]:
    """Names as parts of ids, unlike each other and those taken: lower case, words joined by underscores."""
    found: list[str] = []
    for name in names:
        plain = re.sub(r"\W+", "_", name.lower()).strip("_") or "unnamed"
        used = {*found, *taken}
        numbered = (f"{plain}_{number}" for number in count(2))
        found.append(next(key for key in chain([plain], numbered) if key not in used))
    return found


def roof(car: Car) -> Surface | None:
    """Underside of scuttle or dash over feet and shins; None where it was not measured."""
    profile = car.footwell.roof
    return None if profile is None else Surface("roof", profile_points(profile), 1.0)


def floor(car: Car) -> Surface:
    """The floor, carried on level beyond what was measured."""
    return Surface("floor", floor_line(car), -1.0)


def obstacles(car: Car) -> tuple[Thing, ...]:
    """Every obstacle of the footwell; one whose outline is not convex counts as its hull."""
    every = car.footwell.obstacles
    return tuple(map(_obstacle, every, slugs((each.name for each in every), OWN_KEYS)))


def _obstacle(obstacle: Obstacle, key: str) -> Thing:
    if obstacle.centre is not None and obstacle.radius is not None:
        corners, radius = xyz(obstacle.centre)[:, None], column(obstacle.radius)
    else:
        pairs = hull(obstacle.outline or ())
        corners = np.stack(
            np.broadcast_arrays(*(point(column(x), column(0.0), column(z)) for x, z in pairs)), axis=1
        )
        radius = column(0.0)
    low, high = column(obstacle.y_low), column(obstacle.y_high)
    return Thing(key, obstacle.name, corners, radius, low, high)
