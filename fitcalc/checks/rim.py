"""The wheel's rim and the fists on it, as points round the wheel."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.documents.car_cockpit import SteeringWheel
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.geometry.side import scaled
from fitcalc.posture.cases import column
from fitcalc.posture.wheel import ACROSS_CAR, rim_up, wheel_centre
from fitcalc.units import Deg, Points

CLOCK = np.arange(0.0, 360.0, 5.0)[None]
"""Where the rim is probed, deg: every 12 mm on a 135 mm radius, which hides at most 0.2 mm of a 90 mm gap."""
TURNS = np.linspace(-1.0, 1.0, 13)[None]
"""Parts of the turning range at which the hands are probed."""


def rim_ring(wheel: SteeringWheel, setup: Setup, clock: Deg = CLOCK) -> Points:
    """Points on the middle of the rim, `(n, q, 3)`; clock `(n or 1, q)`, 0 at the top, positive clockwise."""
    radius = (column(wheel.rim_diameter) - column(wheel.rim_thickness))[:, None] / 2
    across, up = ACROSS_CAR[:, None], rim_up(wheel)[:, None]
    sideways, upward = scaled(across, radius * sind(clock)), scaled(up, radius * cosd(clock))
    return wheel_centre(wheel, setup)[:, None] + sideways + upward


def fists(case: Case, wheel: SteeringWheel) -> Points:
    """Both fists at 9 and 3 o'clock through the turning range used, `(n, q, 3)`."""
    turns = column(wheel.lock)[:, None] * TURNS
    return rim_ring(wheel, case.setup, np.concatenate([turns - 90.0, turns + 90.0], axis=1))
