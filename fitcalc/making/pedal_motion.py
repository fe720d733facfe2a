r"""A pedal's arm and pad in side view, from rest to the stop.

Side view: x rearward (toward the driver), z up; points are `[x, z]`. The arm's angle is measured from the
vertical, positive when the pad end leans rearward; pressing makes it smaller.

    floor-hinged:  pad            hanging:  o pivot
                   /  angle > 0              \
                  o pivot                     pad  angle > 0

Arrays over the travel have the shape `(n, k)`, points over the travel `(n, k, 2)`.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import cosd, sind
from fitcalc.units import Bools, Deg, Mm, Points


@dataclass(frozen=True, eq=False)
class Pedal:
    """Pivot, arm and pad contact of n pedals.

    Attributes:
        pivot: (n, 2), `[x, z]`.
        hanging: true where the pivot is above the pad.
        arm: pivot to pad contact, measured along the arm.
        stand_off: pad contact off the arm's line, positive toward the driver.
        rest: arm angle at rest, from the vertical, positive with the pad end rearward.
        travel: angle from rest to the stop, positive; pressing takes it away from `rest`.
    """

    pivot: Points
    hanging: Bools
    arm: Mm
    stand_off: Mm
    rest: Deg
    travel: Deg


def sweep(pedal: Pedal, samples: int) -> Deg:
    """Arm angle at evenly spaced positions from rest to the stop, `(n, samples)`."""
    return pedal.rest[:, None] - pedal.travel[:, None] * np.linspace(0.0, 1.0, samples)


def arm_direction(angle: Deg, hanging: Bools) -> Points:
    """Unit vector from the pivot along the arm; angle `(n, k)`, result `(n, k, 2)`."""
    return np.stack([sind(angle), _upward(hanging) * cosd(angle)], axis=-1)


def arm_normal(angle: Deg, hanging: Bools) -> Points:
    """Unit vector square to the arm, toward the driver; angle `(n, k)`, result `(n, k, 2)`."""
    return np.stack([cosd(angle), -_upward(hanging) * sind(angle)], axis=-1)


def pad_contact(pedal: Pedal, angle: Deg) -> Points:
    """Where the ball of the foot meets the pad; angle `(n, k)`, result `(n, k, 2)`."""
    along = pedal.arm[:, None, None] * arm_direction(angle, pedal.hanging)
    across = pedal.stand_off[:, None, None] * arm_normal(angle, pedal.hanging)
    return pedal.pivot[:, None, :] + along + across


def contact_radius(pedal: Pedal) -> Mm:
    """Straight distance from the pivot to the pad contact."""
    return np.hypot(pedal.arm, pedal.stand_off)


def pad_arc(pedal: Pedal) -> Mm:
    """Pad travel from rest to the stop, along the arc."""
    return contact_radius(pedal) * np.radians(pedal.travel)


def pad_chord(pedal: Pedal) -> Mm:
    """Pad travel from rest to the stop, straight."""
    return 2.0 * contact_radius(pedal) * sind(pedal.travel / 2.0)


def _upward(hanging: Bools) -> Mm:
    return np.where(hanging, -1.0, 1.0)[:, None]
