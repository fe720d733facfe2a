"""The wheel's rim as a circle, and the fists on it as points round the wheel."""

import numpy as np

from fitcalc.documents.car_cockpit import SteeringWheel
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.geometry.ring import Ring
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column
from fitcalc.posture.wheel import ACROSS_CAR, rim_up, toward_driver, wheel_centre
from fitcalc.units import Points

TURNS = np.linspace(-1.0, 1.0, 13)[None]
"""Parts of the turning range at which the hands are probed."""


def rim_ring(wheel: SteeringWheel, setup: Setup) -> Ring:
    """The middle of the rim."""
    radius = (column(wheel.rim_diameter) - column(wheel.rim_thickness)) / 2
    return Ring(wheel_centre(wheel, setup), ACROSS_CAR, rim_up(wheel), toward_driver(wheel), radius)


def fists(wheel: SteeringWheel, setup: Setup) -> Points:
    """Both fists at 9 and 3 o'clock through the turning range used, `(n, q, 3)`."""
    turns, ring = column(wheel.lock)[:, None] * TURNS, rim_ring(wheel, setup)
    clock = np.concatenate([turns - 90.0, turns + 90.0], axis=1)
    sideways, upward = ring.radius[:, None] * sind(clock), ring.radius[:, None] * cosd(clock)
    (x, y, z), (up_x, _, up_z) = ring.centre.T[..., None], ring.up.T[..., None]
    return point(x + upward * up_x, y + sideways, z + upward * up_z)
