"""Where the seat is after the rework, and where it puts the hips."""

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import atan2d, cosd, sind
from fitcalc.geometry.lines import profile_points
from fitcalc.geometry.side import point, turned
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Points


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
    return point(-along * cosd(angle), 0.0 * along, along * sind(angle) + column(setup.seat_raise))


def recline_pivot(car: Car) -> Points:
    """Axis that the seat is reclined about: the middle of its two foremost mounts, as found."""
    foremost = sorted(car.seat.mounts, key=lambda mount: float(np.mean(mount.x)))[:2]
    return np.mean(np.broadcast_arrays(*(xyz(mount) for mount in foremost)), axis=0)


def carried(points: Points, car: Car, setup: Setup) -> Points:
    """Points fixed to the seat, from as found to after the rework."""
    return turned(points, recline_pivot(car), column(setup.recline)) + travel(car, setup)


def shell(car: Car, setup: Setup) -> Points:
    """The surface sat against, from the front of the cushion to the top of the back, `(n, k, 3)`."""
    profile = profile_points(car.seat.profile) + xyz(car.seat.junction)[:, None]
    return np.stack([carried(profile[:, i], car, setup) for i in range(profile.shape[1])], axis=1)


def hip_point(car: Car, links: Links, setup: Setup) -> Points:
    """Middle between the hip joints, `(n, 3)`.

    The joint stands off the cushion and off the back, each square to its surface, by the body's own distances plus
    padding. A hip joint that the user measured in the car takes their place.

    Source: plane geometry; the distances and their source stand in `body/data/links.toml`.
    """
    if car.seat.h_point is not None:
        return carried(xyz(car.seat.h_point), car, setup)
    up = links.hip_above_cushion + column(car.seat.cushion_padding)
    ahead = links.hip_ahead_of_back + column(car.seat.back_padding)
    back, cushion = back_angle(car, setup), cushion_angle(car, setup)
    spread = cosd(back - cushion)
    x = (up * sind(back) - ahead * cosd(cushion)) / spread
    z = (up * cosd(back) + ahead * sind(cushion)) / spread
    return carried(xyz(car.seat.junction), car, setup) + point(x, 0.0 * x, z)
