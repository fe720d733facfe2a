"""A cylinder bolted down, with a short rod that swivels between pedal and piston (a slider-crank)."""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import cosd, sind
from fitcalc.making.pedal_motion import Pedal, arm_normal
from fitcalc.making.rod import Rod, rod_joint
from fitcalc.units import Deg, Floats, Mm, Points

STEEPEST = 0.999
"""The rod is taken as off the axis by at most this share of its length: beyond it the piston jams."""


@dataclass(frozen=True, eq=False)
class FixedCylinder:
    """The joint on the pedal, the cylinder's axis and the short rod between them.

    Attributes:
        joint: radius and phase of the joint; its anchor is any point on the cylinder's axis.
        slope: the way the piston is pushed, from straight ahead (-x), positive when it climbs.
        rod: length of the short rod, joint to piston.
    """

    joint: Rod
    slope: Deg
    rod: Mm


def piston_stroke(pedal: Pedal, cylinder: FixedCylinder, angle: Deg) -> Mm:
    """Piston travel since rest, `(n, k)`, positive into the cylinder."""
    return _piston(pedal, cylinder, angle) - _piston(pedal, cylinder, pedal.rest[:, None])


def piston_rate(pedal: Pedal, cylinder: FixedCylinder, angle: Deg) -> Mm:
    """Piston travel in mm per radian of pressing, `(n, k)`; foot arm over this is the ratio."""
    turned = angle + cylinder.joint.phase[:, None]
    swing = -cylinder.joint.radius[:, None, None] * arm_normal(turned, pedal.hanging)
    along, across = _on_axis(cylinder, swing)
    return along - across * side_share(pedal, cylinder, angle)


def side_share(pedal: Pedal, cylinder: FixedCylinder, angle: Deg) -> Floats:
    """Side load on the piston as a share of the push along the axis, `(n, k)`; its sign is the side."""
    across = _offset(pedal, cylinder, angle)[1]
    return across / _axial_run(cylinder, across)


def axis_shortfall(pedal: Pedal, cylinder: FixedCylinder, angle: Deg) -> Mm:
    """How far the joint goes off the cylinder's axis beyond what the rod can follow, `(n,)`."""
    across = np.abs(_offset(pedal, cylinder, angle)[1])
    return np.max(np.maximum(across - STEEPEST * cylinder.rod[:, None], 0.0), axis=-1)


def _piston(pedal: Pedal, cylinder: FixedCylinder, angle: Deg) -> Mm:
    along, across = _offset(pedal, cylinder, angle)
    return along + _axial_run(cylinder, across)


def _offset(pedal: Pedal, cylinder: FixedCylinder, angle: Deg) -> tuple[Mm, Mm]:
    return _on_axis(cylinder, rod_joint(pedal, cylinder.joint, angle) - cylinder.joint.anchor[:, None, :])


def _on_axis(cylinder: FixedCylinder, vector: Points) -> tuple[Mm, Mm]:
    """A side-view vector as its parts along the cylinder's axis and square to it."""
    ahead, up = cosd(cylinder.slope)[:, None], sind(cylinder.slope)[:, None]
    along = -vector[..., 0] * ahead + vector[..., 1] * up
    across = vector[..., 0] * up + vector[..., 1] * ahead
    return along, across


def _axial_run(cylinder: FixedCylinder, across: Mm) -> Mm:
    share = np.minimum(np.abs(across) / cylinder.rod[:, None], STEEPEST)
    return cylinder.rod[:, None] * np.sqrt(1.0 - share**2)
