"""Throttle and clutch cables: pull, the angle of full throttle, and where the pedal's stop belongs."""

import numpy as np

from fitcalc.making.pedal_motion import Pedal
from fitcalc.units import Deg, Mm


def sector_pull(radius: Mm, turned: Deg) -> Mm:
    """Cable pulled by a sector or pulley that turns by this angle."""
    return radius * np.radians(turned)


def sector_full_angle(radius: Mm, need: Mm, slack: Mm) -> Deg:
    """Pedal angle from rest to full throttle with a sector; the stop belongs exactly here."""
    return np.degrees((need + slack) / radius)


def stop_error(pedal: Pedal, full_angle: Deg) -> Deg:
    """Pedal stop beyond full throttle: positive strains the cable, negative never opens it fully."""
    return pedal.travel - full_angle
