"""Pedal ratio: how many times the foot's force reaches the rod."""

from dataclasses import dataclass

import numpy as np

from fitcalc.making.pedal_motion import Pedal, contact_radius, pad_arc, pad_contact, sweep
from fitcalc.making.rod import Rod, rod_to_arm, stroke, stroke_rate
from fitcalc.units import Deg, Floats, Mm, Newton, Points

LEAST_ARM = 1e-3
"""The rod's moment arm is taken as no smaller than this, mm, so that a toggle gives a large finite ratio."""


@dataclass(frozen=True, eq=False)
class Travel:
    """A pedal over its travel, rest first and stop last, each `(n, k)`.

    Attributes:
        angle: arm angle from the vertical, positive with the pad end rearward.
        pad: (n, k, 2), pad contact.
        ratio: for a foot force square to the line from pivot to pad contact.
        stroke: rod shortening since rest.
        rod_to_arm: angle between the rod and the line from the pivot to its joint.
    """

    angle: Deg
    pad: Points
    ratio: Floats
    stroke: Mm
    rod_to_arm: Deg


def travel(pedal: Pedal, rod: Rod, samples: int) -> Travel:
    """A pedal with a trunnion-mounted cylinder or a rod, from rest to the stop."""
    angle = sweep(pedal, samples)
    return Travel(
        angle,
        pad_contact(pedal, angle),
        force_ratio(contact_radius(pedal)[:, None], stroke_rate(pedal, rod, angle)),
        stroke(pedal, rod, angle),
        rod_to_arm(pedal, rod, angle),
    )


def force_ratio(foot_arm: Mm, rod_arm: Mm) -> Floats:
    """Instantaneous ratio: moment arm of the foot force over moment arm of the rod, both about the pivot."""
    return np.abs(foot_arm) / np.maximum(np.abs(rod_arm), LEAST_ARM)


def mean_ratio(pedal: Pedal, stroke_used: Mm) -> Floats:
    """Mean ratio: pad travel along the arc over the stroke used from rest to the stop."""
    return pad_arc(pedal) / np.maximum(np.abs(stroke_used), LEAST_ARM)


def rod_force(foot: Newton, ratio: Floats, efficiency: Floats) -> Newton:
    """Force in the rod.

    Args:
        foot: force on the pad.
        ratio: instantaneous ratio.
        efficiency: share that pedal and linkage pass on: 1 for strength, 0.8 to 0.95 for effort. 0.8 is the
            usual figure with Limpert's line-pressure equation (from memory).
    """
    return foot * ratio * efficiency
