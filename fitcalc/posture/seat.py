"""Where the seat is after the rework, and where it puts the hips."""

from dataclasses import dataclass

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import atan2d, cosd, sind
from fitcalc.geometry.lines import profile_points
from fitcalc.geometry.side import point, row_of
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Floats, Mm, Points


def back_angle(car: Car, setup: Setup) -> Deg:
    """Back of the seat (junction to top) from the vertical; positive leaning rearward."""
    x, z = car.seat.profile[-1]
    return atan2d(column(x), column(z)) + column(setup.recline)


def cushion_angle(car: Car, setup: Setup) -> Deg:
    """Cushion (junction to front edge) from level; positive when its front edge is higher."""
    x, z = car.seat.profile[0]
    return atan2d(column(z), -column(x)) + column(setup.recline)


def travel(car: Car, setup: Setup) -> Points:
    """How far the rework carries the seat, `(n, 3)`, before it is reclined."""
    along = column(setup.seat_travel)
    angle = column(car.rails.angle)
    return point(-along * cosd(angle), 0.0, along * sind(angle) + column(setup.seat_raise))


def recline_pivot(car: Car) -> Points:
    """Axis that the seat is reclined about: the middle of its two foremost mounts, as found."""
    mounts = row_of([xyz(mount) for mount in car.seat.mounts])
    foremost = np.argsort(mounts[..., 0], axis=1, kind="stable")[:, :2]
    return np.take_along_axis(mounts, foremost[..., None], axis=1).mean(axis=1)


@dataclass(frozen=True, eq=False)
class SeatMove:
    """What the rework does to everything fixed to the seat: a turn about its front mounts, then a shift.

    Attributes:
        pivot, shift: `(n, 3)`.
        sine, cosine: of the turn; positive turns the top rearward.
    """

    pivot: Points
    sine: Floats
    cosine: Floats
    shift: Points

    def undone(self, points: Points) -> Points:
        """Points fixed to the moved seat, `(n, 3)`, to where they were as found."""
        offset = points - (self.pivot + self.shift)
        x, y, z = offset[..., 0], offset[..., 1], offset[..., 2]
        return self.pivot + point(self.cosine * x - self.sine * z, y, self.sine * x + self.cosine * z)

    def carried(self, points: Points) -> Points:
        """Points fixed to the seat, `(n, 3)` or `(n, k, 3)`, from as found to after the rework."""
        several = (slice(None), *(None,) * (points.ndim - 2))
        sine, cosine, pivot, shift = (
            part[several] for part in (self.sine, self.cosine, self.pivot, self.shift)
        )
        x, z = points[..., 0] - pivot[..., 0], points[..., 2] - pivot[..., 2]
        return point(
            cosine * x + sine * z + (pivot[..., 0] + shift[..., 0]),
            points[..., 1] + shift[..., 1],
            cosine * z - sine * x + (pivot[..., 2] + shift[..., 2]),
        )


def seat_move(car: Car, setup: Setup) -> SeatMove:
    """How the rework moves the seat."""
    recline = column(setup.recline)
    return SeatMove(recline_pivot(car), sind(recline), cosd(recline), travel(car, setup))


def carried(points: Points, car: Car, setup: Setup) -> Points:
    """Points fixed to the seat, `(n, 3)` or `(n, k, 3)`, from as found to after the rework."""
    return seat_move(car, setup).carried(points)


def shell(car: Car, setup: Setup) -> Points:
    """The surface sat against, from the front of the cushion to the top of the back, `(n, k, 3)`."""
    junction = xyz(car.seat.junction)
    return carried(row_of([junction + corner for corner in profile_points(car.seat.profile)]), car, setup)


def cushion_padding(car: Car, setup: Setup) -> Mm:
    """What lies loose on the cushion: the seat's own padding and the driver's insert, sat on."""
    return column(car.seat.cushion_padding) + column(setup.cushion_insert)


def back_padding(car: Car, setup: Setup) -> Mm:
    """What lies loose on the back: the seat's own padding and the driver's insert, leant on."""
    return column(car.seat.back_padding) + column(setup.back_insert)


def hip_point(car: Car, links: Links, setup: Setup) -> Points:
    """Middle between the hip joints, `(n, 3)`.

    The joint stands off the cushion and off the back, each square to its surface, by the body's own distances plus
    padding. A hip joint that the user measured in the car takes their place; an insert then moves it by its thickness.

    Source: plane geometry; the distances and their source stand in `body/data/links.toml`.
    """
    if car.seat.h_point is not None:
        measured = carried(xyz(car.seat.h_point), car, setup)
        return measured + _off(column(setup.cushion_insert), column(setup.back_insert), car, setup)
    up = links.hip_above_cushion + cushion_padding(car, setup)
    ahead = links.hip_ahead_of_back + back_padding(car, setup)
    return carried(xyz(car.seat.junction), car, setup) + _off(up, ahead, car, setup)


def _off(up: Mm, ahead: Mm, car: Car, setup: Setup) -> Points:
    """From the junction to what lies so far square off cushion and back."""
    back, cushion = back_angle(car, setup), cushion_angle(car, setup)
    spread = cosd(back - cushion)
    x = (up * sind(back) - ahead * cosd(cushion)) / spread
    z = (up * cosd(back) + ahead * sind(cushion)) / spread
    return point(x, 0.0, z)
