"""A push rod, pull rod or cable from the pedal to a far end that stays where it is but may swivel.

That is a trunnion-mounted cylinder, a cylinder on a rod end, or a cable leaving a fixed housing.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import atan2d
from fitcalc.making.pedal_motion import Pedal, arm_direction, arm_normal
from fitcalc.units import Deg, Mm, Points

SHORTEST = 1e-6
"""Rods are taken as no shorter than this, mm: keeps directions finite where joint and far end coincide."""


@dataclass(frozen=True, eq=False)
class Rod:
    """Where the rod is joined to the pedal and where it ends.

    Attributes:
        radius: pivot to rod joint.
        phase: added to the arm's angle to give the angle of the joint, same sense.
        anchor: (n, 2), the far end, `[x, z]`.
    """

    radius: Mm
    phase: Deg
    anchor: Points


def rod_joint(pedal: Pedal, rod: Rod, angle: Deg) -> Points:
    """Where the rod is joined to the pedal; angle `(n, k)`, result `(n, k, 2)`."""
    return pedal.pivot[:, None, :] + _spoke(pedal, rod, angle)


def rod_length(pedal: Pedal, rod: Rod, angle: Deg) -> Mm:
    """Joint to far end; angle `(n, k)`, result `(n, k)`."""
    return _length(_reach(pedal, rod, angle))


def stroke(pedal: Pedal, rod: Rod, angle: Deg) -> Mm:
    """How far the rod has shortened since rest, `(n, k)`: cylinder stroke; negative is cable pull."""
    return rod_length(pedal, rod, pedal.rest[:, None]) - rod_length(pedal, rod, angle)


def stroke_rate(pedal: Pedal, rod: Rod, angle: Deg) -> Mm:
    """Stroke in mm per radian of pressing, `(n, k)`; its size is the rod's moment arm about the pivot."""
    reach = _reach(pedal, rod, angle)
    swing = rod.radius[:, None, None] * arm_normal(_joint_angle(rod, angle), pedal.hanging)
    return -np.sum(reach * swing, axis=-1) / _length(reach)


def rod_to_arm(pedal: Pedal, rod: Rod, angle: Deg) -> Deg:
    """Angle at the joint from the line pivot to joint to the rod, `(n, k)`: 90 square, 0 or 180 a toggle."""
    spoke, reach = _spoke(pedal, rod, angle), _reach(pedal, rod, angle)
    cross = spoke[..., 0] * reach[..., 1] - spoke[..., 1] * reach[..., 0]
    return atan2d(np.abs(cross), np.sum(spoke * reach, axis=-1))


def _joint_angle(rod: Rod, angle: Deg) -> Deg:
    return angle + rod.phase[:, None]


def _spoke(pedal: Pedal, rod: Rod, angle: Deg) -> Points:
    return rod.radius[:, None, None] * arm_direction(_joint_angle(rod, angle), pedal.hanging)


def _reach(pedal: Pedal, rod: Rod, angle: Deg) -> Points:
    return rod.anchor[:, None, :] - rod_joint(pedal, rod, angle)


def _length(reach: Points) -> Mm:
    return np.maximum(np.hypot(reach[..., 0], reach[..., 1]), SHORTEST)
