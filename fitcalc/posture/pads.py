"""Where each pad is, at rest, pressed, and after the rework."""

from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.setup import PedalRework
from fitcalc.geometry.side import across, leaning, point, scaled
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Mm, Points


@dataclass(frozen=True, eq=False)
class Pad:
    """One pad at one moment.

    Attributes:
        pivot: the pedal's pivot, in the plane of the pad's centre.
        centre: centre of the pad's face, `(n, 3)`.
        arm: direction pivot to pad along the arm.
        up: direction of the pad's face, upward.
        normal: square to the face, toward the driver.
        theta: arm from the vertical, positive = pad end leaning rearward.
    """

    pivot: Points
    centre: Points
    arm: Points
    up: Points
    normal: Points
    theta: Deg


def travel_angle(pedal: Pedal) -> Deg:
    """Turn of the arm from rest to its stop; from the pad's straight travel where that was measured.

    Source: chord of a circle about the pivot through the pad's centre.
    """
    if pedal.travel_angle is not None:
        return column(pedal.travel_angle)
    radius = np.hypot(column(pedal.arm), column(pedal.stand_off))
    return 2.0 * np.degrees(np.arcsin(np.clip(column(pedal.pad_travel) / (2.0 * radius), 0.0, 1.0)))


def pad_at(pedal: Pedal, rework: PedalRework, box_travel: Mm, travel: float) -> Pad:
    """The pad at a part of its travel.

    Args:
        pedal: as found.
        rework: stand-off and longer arm.
        box_travel: how far the pedal box is moved rearward.
        travel: 0 = at rest, 1 = at the stop.

    Pressing lessens theta: the pad end goes forward whether the pedal hangs or stands.
    """
    theta = column(pedal.rest_angle) - travel * travel_angle(pedal)
    stands = 1.0 if pedal.hinge == "floor" else -1.0
    arm = stands * leaning(stands * theta)
    up = leaning(stands * theta + column(pedal.pad_tilt))
    normal = across(up)
    pivot = xyz(pedal.pivot) + point(box_travel, 0.0, 0.0)
    centre = (
        pivot
        + scaled(arm, column(pedal.arm) + column(rework.longer_arm))
        + scaled(stands * across(arm), column(pedal.stand_off))
        + scaled(normal, column(rework.stand_off))
    )
    y = column(pedal.pad_y)
    return Pad(_with_y(pivot, y), _with_y(centre, y), arm, up, normal, theta)


def arm_normal(pad: Pad, pedal: Pedal) -> Points:
    """Square to the arm, toward the driver."""
    return across(pad.arm) if pedal.hinge == "floor" else -across(pad.arm)


def pad_edges(pad: Pad, pedal: Pedal) -> tuple[Points, Points]:
    """Bottom and top edge of the pad in side view."""
    half = column(pedal.pad_height) / 2
    return pad.centre - scaled(pad.up, half), pad.centre + scaled(pad.up, half)


def _with_y(points: Points, y: Mm) -> Points:
    return point(points[:, 0], y, points[:, 2])
