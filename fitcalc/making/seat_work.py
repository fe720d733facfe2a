"""The seat's mounts after the rework: what they hold, bolt safety, and brackets where the old holes end."""

from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import length
from fitcalc.geometry.side import point, scaled, turned
from fitcalc.making.bolts import Bolt, Grade, bolt
from fitcalc.making.modes import AMPLE
from fitcalc.making.seat_levels import SeatLevel, inertia_force
from fitcalc.making.seat_mounts import MountCheck, bolt_use, check_mounts
from fitcalc.posture.cases import column, spread, xyz
from fitcalc.posture.seat import recline_pivot, shell, travel
from fitcalc.units import Bools, Floats, Kg, Mm, Points

BOLT = "M8"
"""Size of a seat bolt: the least that Motorsport UK K 2.2 and FIA Appendix J 253-16 allow (second-hand)."""

GRADE: Grade = "8.8"
"""Its property class, as those rules draw it (second-hand)."""

PRYING = 1.5
"""Most by which a thin bracket raises its bolt's tension: common practice, no source."""

BRACKET_WIDTH = 40.0
"""Width of a seat bracket, mm: common practice, no source."""

BRACKET_YIELD = 235.0
"""Yield stress of a bracket of S235 up to 16 mm, MPa: EN 10025-2 Table 7 (second-hand)."""

STEP = 1.0
"""Shorter moves are the slack of a hole, mm: design inference, no source."""


@dataclass(frozen=True, eq=False)
class Carried:
    """A mass on the mounts, `(n,)`, and its centre, `(n, 3)`, car frame."""

    mass: Kg
    centre: Points


@dataclass(frozen=True, eq=False)
class Mounts:
    """The seat's mounts after the rework, `(n, m, 3)`, car frame.

    Attributes:
        after: where the seat now has them.
        holes: the nearest places that floor or rail had for them.
        bracketed: `(n,)`, where a bracket must join the two.
    """

    after: Points
    holes: Points
    bracketed: Bools

    @property
    def offset(self) -> Points:
        """From hole to mount, `(n, m, 3)`; 0 where no bracket is needed."""
        return np.where(self.bracketed[:, None, None], self.after - self.holes, 0.0)

    @property
    def reach(self) -> Mm:
        """Longest way from hole to mount that a bracket has to bridge, `(n,)`."""
        return np.max(length(self.offset), axis=-1)


@dataclass(frozen=True, eq=False)
class SeatHold:
    """The mounts at one load.

    Attributes:
        seat: bolts where the seat is after the rework.
        holes: bolts in the holes as found, which a bracket hangs from.
        safety: least factor of safety of any bolt, `(n,)`; a bracket counts with its prying.
        thickness: that a steel bracket needs at its bend, mm, `(n,)`; 0 without one.
    """

    seat: MountCheck
    holes: MountCheck
    safety: Floats
    thickness: Mm


def empty_seat(car: Car, setup: Setup) -> Carried:
    """The seat alone; its centre of mass is taken as that of its shell's line: design inference, no source."""
    line = shell(car, setup)
    pieces = length(np.diff(line, axis=1))
    middles = (line[:, 1:] + line[:, :-1]) / 2.0
    centre = np.sum(scaled(middles, pieces), axis=1) / np.sum(pieces, axis=1)[:, None]
    return Carried(column(car.seat.mass), centre)


def with_driver(seat: Carried, mass: Kg, centre: Points) -> Carried:
    """The seat with a driver in it."""
    whole = seat.mass + mass
    return Carried(whole, seat.centre + scaled(centre - seat.centre, mass / whole))


def seat_mounts(car: Car, setup: Setup) -> Mounts:
    """Where the seat's mounts go, and which of the places they had before come nearest."""
    found = np.stack(np.broadcast_arrays(*(xyz(mount) for mount in car.seat.mounts)), axis=1)
    lean = column(setup.recline)[:, None]
    after = turned(found, recline_pivot(car)[:, None], lean) + travel(car, setup)[:, None]
    served = spread(Setup(), {"seat_travel": _nearest_hole(car, setup)})
    holes = found + travel(car, served)[:, None]
    after, holes = np.broadcast_arrays(after, holes)
    return Mounts(after, holes, np.broadcast_to(needs_bracket(car, setup), (len(after),)))


def needs_bracket(car: Car, setup: Setup) -> Bools:
    """Where the old holes do not take the moved seat: off its rail, between holes, raised or turned."""
    off_hole = np.abs(column(setup.seat_travel) - _nearest_hole(car, setup))
    off_line = np.abs(column(setup.seat_raise)) + np.abs(column(setup.recline))
    return (off_hole > STEP) | (off_line > 0.0)


def hold(mounts: Mounts, load: Carried, factor: tuple[float, float, float]) -> SeatHold:
    """What the mounts take of a mass at a multiple of weight `(x, y, z)`, in the directions of the car's frame."""
    force, size = inertia_force(load.mass, factor), bolt(BOLT)
    seat = _check(mounts.after, force, load.centre, size)
    holes = _check(mounts.holes, force, load.centre, size) if np.any(mounts.bracketed) else seat
    pried = bolt_use(holes.shear, PRYING * holes.tension, size, GRADE).max(axis=-1)
    used = np.maximum(seat.worst, np.where(mounts.bracketed, pried, 0.0))
    return SeatHold(seat, holes, 1.0 / np.maximum(used, 1.0 / AMPLE), _thickness(seat, mounts.offset))


def _nearest_hole(car: Car, setup: Setup) -> Mm:
    """Travel along the rail of the nearest place that the old holes or the rail give."""
    rails = car.rails
    if rails.kind == "fixed":
        return 0.0 * column(setup.seat_travel)
    low, high = -column(rails.rearward_travel), column(rails.forward_travel)
    along = column(setup.seat_travel)
    if rails.kind == "continuous":
        return np.clip(along, low, high)
    pitch = column(rails.hole_pitch)
    return np.clip(np.round(along / pitch), np.ceil(low / pitch), np.floor(high / pitch)) * pitch


def _check(mounts: Points, force: Points, centre: Points, size: Bolt) -> MountCheck:
    """Mounts count as one level plane at their mean height."""
    height = centre[:, 2] - mounts[..., 2].mean(axis=1)
    count = max(len(height), len(force))
    at = np.broadcast_to(point(centre[:, 0], centre[:, 1], height), (count, 3))
    every = np.broadcast_to(mounts[..., :2], (count, mounts.shape[1], 2))
    return check_mounts(every, np.broadcast_to(force, (count, 3)), at, size, GRADE)


def _thickness(check: MountCheck, offset: Points) -> Mm:
    """Thickness at which the worst bracket just does not yield in bending."""
    aside = np.hypot(offset[..., 0], offset[..., 1])
    moment = np.maximum(check.tension, np.abs(check.push)) * aside + check.shear * np.abs(offset[..., 2])
    return np.sqrt(6.0 * np.max(moment, axis=-1) / (BRACKET_WIDTH * BRACKET_YIELD))


def leans_on_seat(level: SeatLevel, way: str) -> bool:
    """Whether the mounts also hold the driver, the harness being fixed to the car.

    Forward and upward the straps do; rearward, sideways and down the seat does (design inference).
    """
    return level.carries == "seat and driver" and way not in ("forward", "upward")


def point_safety(level: SeatLevel) -> Floats:
    """Factor of safety of one bolt at a force in any direction; pure shear and pure tension, the worse."""
    ways = np.array([[level.force, 0.0]]), np.array([[0.0, level.force]])
    return 1.0 / bolt_use(*ways, bolt(BOLT), GRADE).max(axis=-1)
