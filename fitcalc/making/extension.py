"""What a stand-off and a longer arm do to a pedal, and which mix keeps its ratio.

A longer arm raises ratio and pad travel together; a stand-off square to the arm raises both by little, for it stands
nearly square to the line from the pivot, but slides the pad along the shoe by stand-off times angle. Neither changes
stroke or pull.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.making.pedal_motion import (
    Pedal,
    arm_direction,
    arm_normal,
    contact_radius,
)
from fitcalc.units import Floats, Mm, Points

LEAST_SHARE = 0.1
"""A longer arm that gains less reach than this share of its length is left alone: design inference."""


@dataclass(frozen=True, eq=False)
class Mix:
    """A stand-off and a longer arm that together bring the pad nearer.

    Attributes:
        stand_off: added square to the arm, toward the driver.
        longer: added along the arm.
        ratio_factor: new over old ratio, as pivot to pad contact after over before.
        shortfall: reach still missing because the ratio or what the pedal can take is used up.
    """

    stand_off: Mm
    longer: Mm
    ratio_factor: Floats
    shortfall: Mm


def slide(pedal: Pedal) -> Mm:
    """How far the pad slides along the shoe over the travel because it stands off the arm."""
    return pedal.stand_off * np.radians(pedal.travel)


def mix_for_reach(
    pedal: Pedal, toward: Points, reach: Mm, most_ratio: Floats, longest_arm: Mm, longest: Mm
) -> Mix:
    """The mix with the least stand-off that brings the pad nearer by `reach` in the given direction.

    Args:
        pedal: as it is.
        toward: (n, 2), unit vector from pad to hip in side view.
        reach: how much nearer the pad must come along it.
        most_ratio: most that the new ratio may be over the old one, 1 or more.
        longest_arm: most that the arm may be lengthened.
        longest: longest stand-off that the pedal can take.
    """
    along, across = _arm_axes(pedal)
    gain_arm = np.sum(toward * along, axis=-1)
    gain_off = np.maximum(np.sum(toward * across, axis=-1), LEAST_SHARE)
    radius = most_ratio * contact_radius(pedal)
    helps = gain_arm > LEAST_SHARE
    alone = np.divide(reach, gain_arm, out=np.zeros_like(gain_arm + reach), where=helps)
    most = np.minimum(alone, _longest_on(radius, pedal, gain_arm / gain_off, reach / gain_off))
    longer = np.where(helps, np.clip(most, 0.0, longest_arm), 0.0)
    room = np.sqrt(np.maximum(radius**2 - (pedal.arm + longer) ** 2, 0.0)) - pedal.stand_off
    left = reach - longer * gain_arm
    stand_off = np.clip(left / gain_off, 0.0, np.clip(room, 0.0, longest))
    after = np.hypot(pedal.arm + longer, pedal.stand_off + stand_off)
    return Mix(stand_off, longer, after / contact_radius(pedal), np.maximum(left - stand_off * gain_off, 0.0))


def _longest_on(radius: Mm, pedal: Pedal, spared: Floats, alone: Mm) -> Mm:
    """The most that the arm may be longer with the pad, stood off by what is then left, on a circle about the pivot.

    Where no mix stays inside the circle it is the one that comes nearest to the pivot.

    Args:
        radius: of the circle.
        pedal: as it is.
        spared: stand-off that each mm of arm spares.
        alone: stand-off that would do without a longer arm.
    """
    square, off = 1.0 + spared**2, pedal.stand_off + alone
    half = spared * off - pedal.arm
    inside = half**2 - square * (pedal.arm**2 + off**2 - radius**2)
    return (half + np.sqrt(np.maximum(inside, 0.0))) / square


def _arm_axes(pedal: Pedal) -> tuple[Points, Points]:
    rest = pedal.rest[:, None]
    return arm_direction(rest, pedal.hanging)[:, 0], arm_normal(rest, pedal.hanging)[:, 0]
