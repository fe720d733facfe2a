"""What a stand-off and a longer arm do to a pedal, and which mix keeps its ratio.

A longer arm raises ratio and pad travel together; a stand-off square to the arm leaves the ratio of a square
foot force alone, but slides the pad along the shoe by stand-off times angle. Neither changes stroke or pull.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.making.pedal_motion import (
    Pedal,
    arm_direction,
    arm_normal,
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
        ratio_factor: new over old ratio, for a foot force square to the arm.
        shortfall: reach still missing because the ratio band or the longest stand-off is used up.
    """

    stand_off: Mm
    longer: Mm
    ratio_factor: Floats
    shortfall: Mm


def slide(pedal: Pedal) -> Mm:
    """How far the pad slides along the shoe over the travel because it stands off the arm."""
    return pedal.stand_off * np.radians(pedal.travel)


def arm_band(pedal: Pedal, ratio: Floats, band: tuple[Floats, Floats]) -> tuple[Mm, Mm]:
    """Least and most lengthening of the arm (negative shortens) that keeps the ratio within the band.

    Args:
        pedal: as it is.
        ratio: its ratio now, for a foot force square to the arm.
        band: lowest and highest ratio.
    """
    low, high = band
    return pedal.arm * (low / ratio - 1.0), pedal.arm * (high / ratio - 1.0)


def mix_for_reach(pedal: Pedal, toward: Points, reach: Mm, longer_band: tuple[Mm, Mm], longest: Mm) -> Mix:
    """The mix with the least stand-off that brings the pad nearer by `reach` in the given direction.

    Args:
        pedal: as it is.
        toward: (n, 2), unit vector from pad to hip in side view.
        reach: how much nearer the pad must come along it.
        longer_band: least and most lengthening of the arm, as from `arm_band`, which see for the ratio.
        longest: longest stand-off that the pedal can take.
    """
    along, across = _arm_axes(pedal)
    gain_arm, gain_off = np.sum(toward * along, axis=-1), np.sum(toward * across, axis=-1)
    worth = np.where(np.abs(gain_arm) > LEAST_SHARE, gain_arm, 1.0)
    longer = np.clip(np.where(worth == gain_arm, reach / worth, 0.0), *longer_band)
    left = reach - longer * gain_arm
    stand_off = np.clip(left / np.maximum(gain_off, LEAST_SHARE), 0.0, longest)
    return Mix(stand_off, longer, 1.0 + longer / pedal.arm, np.maximum(left - stand_off * gain_off, 0.0))


def _arm_axes(pedal: Pedal) -> tuple[Points, Points]:
    rest = pedal.rest[:, None]
    return arm_direction(rest, pedal.hanging)[:, 0], arm_normal(rest, pedal.hanging)[:, 0]
