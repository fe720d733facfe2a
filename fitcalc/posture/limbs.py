"""A leg to a foot, an arm to a grip: joints and true angles."""

from dataclasses import dataclass

import numpy as np

from fitcalc.body.links import Links
from fitcalc.geometry.degrees import included
from fitcalc.geometry.linkage import two_link
from fitcalc.posture.foot import Foot
from fitcalc.posture.trunk import Trunk
from fitcalc.units import Deg, Mm, Points

UP = np.array([[0.0, 0.0, 1.0]])


@dataclass(frozen=True, eq=False)
class Leg:
    """One leg at one moment.

    Attributes:
        knee_angle: thigh to shank, included, 180 = straight.
        hip_angle: torso line to thigh, included.
        ankle_angle: shank to the sole's line, included.
        shortfall: how far the foot lies beyond the straight leg; 0 when reached.
    """

    hip: Points
    knee: Points
    ankle: Points
    foot: Foot
    knee_angle: Deg
    hip_angle: Deg
    ankle_angle: Deg
    shortfall: Mm


@dataclass(frozen=True, eq=False)
class Arm:
    """One arm at one moment.

    Attributes:
        elbow_angle: upper arm to forearm, included, 180 = straight.
        shoulder_angle: upper arm to the torso line, 0 = along the trunk.
        shortfall: how far the target lies beyond (or within) reach; 0 when reached.
    """

    shoulder: Points
    elbow: Points
    grip: Points
    elbow_angle: Deg
    shoulder_angle: Deg
    shortfall: Mm


def leg_to(hip: Points, foot: Foot, trunk: Trunk, links: Links) -> Leg:
    """The leg from a hip joint to a foot, knee up.

    A foot out of reach keeps its place, and `shortfall` says by how much.
    """
    chain = two_link(hip, foot.ankle, links.thigh, links.shank, UP)
    torso_up = hip + trunk.shoulder - trunk.hip
    return Leg(
        hip=hip,
        knee=chain.middle,
        ankle=foot.ankle,
        foot=foot,
        knee_angle=chain.angle,
        hip_angle=included(torso_up, hip, chain.middle),
        ankle_angle=included(chain.middle, foot.ankle, foot.ankle + foot.sole),
        shortfall=chain.shortfall,
    )


def arm_to(shoulder: Points, target: Points, trunk: Trunk, links: Links) -> Arm:
    """The arm from a shoulder joint to a point in the fist, elbow down and out."""
    side = np.sign(shoulder[:, 1:2] - trunk.shoulder[:, 1:2])
    down_and_out = np.concatenate([np.zeros_like(side), 0.5 * side, -np.ones_like(side)], axis=1)
    chain = two_link(shoulder, target, links.upper_arm, links.forearm, down_and_out)
    torso_down = shoulder + trunk.hip - trunk.shoulder
    return Arm(
        shoulder=shoulder,
        elbow=chain.middle,
        grip=chain.end,
        elbow_angle=chain.angle,
        shoulder_angle=included(torso_down, shoulder, chain.middle),
        shortfall=chain.shortfall,
    )
