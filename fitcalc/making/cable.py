"""Throttle and clutch cables: pull, the angle of full throttle, and where the pedal's stop belongs."""

import numpy as np

from fitcalc.geometry.degrees import acosd
from fitcalc.making.pedal_motion import Pedal, contact_radius
from fitcalc.making.rod import Rod, rod_length, stroke, stroke_rate
from fitcalc.units import Deg, Mm


def sector_pull(radius: Mm, turned: Deg) -> Mm:
    """Cable pulled by a sector or pulley that turns by this angle."""
    return radius * np.radians(turned)


def lever_pull(pedal: Pedal, cable: Rod, angle: Deg) -> Mm:
    """Cable pulled by a straight lever since rest, `(n, k)`; the cable's far end is its housing."""
    return -stroke(pedal, cable, angle)


def sector_full_angle(radius: Mm, need: Mm, slack: Mm) -> Deg:
    """Pedal angle from rest to full throttle with a sector; the stop belongs exactly here."""
    return np.degrees((need + slack) / radius)


def lever_full_angle(pedal: Pedal, cable: Rod, need: Mm, slack: Mm) -> tuple[Deg, Mm]:
    """Pedal angle from rest to full throttle with a straight lever, and the pull that it can never give.

    The triangle pivot, joint, housing is closed by the law of cosines; the lever pulls until they are in
    line. One that at first lets the cable go slack has to pass the line pivot to housing before it pulls.
    """
    crank, base = cable.radius, np.hypot(*(cable.anchor - pedal.pivot).T)
    rest = pedal.rest[:, None]
    start = rod_length(pedal, cable, rest)[:, 0]
    side = np.where(stroke_rate(pedal, cable, rest)[:, 0] > 0.0, -1.0, 1.0)
    wanted = start + need + slack
    shortfall = np.maximum(wanted - (crank + base), 0.0)
    return _apex(crank, base, wanted) - side * _apex(crank, base, start), shortfall


def full_throttle_pad_travel(pedal: Pedal, full_angle: Deg) -> Mm:
    """Pad travel along the arc at full throttle; it grows with the arm, the cable pull does not."""
    return contact_radius(pedal) * np.radians(full_angle)


def stop_error(pedal: Pedal, full_angle: Deg) -> Deg:
    """Pedal stop beyond full throttle: positive strains the cable, negative never opens it fully."""
    return pedal.travel - full_angle


def _apex(crank: Mm, base: Mm, opposite: Mm) -> Deg:
    """Angle at the pivot of the triangle with these sides."""
    return acosd((crank**2 + base**2 - opposite**2) / (2.0 * crank * base))
