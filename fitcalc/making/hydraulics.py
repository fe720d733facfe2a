"""Line pressure, cylinder stroke, balance bar and clutch release."""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import atan2d
from fitcalc.units import Floats, Mm, MPa, Newton


@dataclass(frozen=True, eq=False)
class BalanceBar:
    """Spacing of the clevises, and the pivot's distance from the front circuit's clevis."""

    spacing: Mm
    from_front: Mm


def bore_area(bore: Mm) -> Floats:
    """Piston area in mm2."""
    return np.pi * bore**2 / 4.0


def line_pressure(push: Newton, bore: Mm) -> MPa:
    """Pressure in a circuit whose piston is pushed by this force."""
    return push / bore_area(bore)


def push_for_pressure(pressure: MPa, bore: Mm) -> Newton:
    """Force on the piston that makes this pressure."""
    return pressure * bore_area(bore)


def foot_for_pressure(pressure: MPa, bore: Mm, ratio: Floats, efficiency: Floats) -> Newton:
    """Foot force that makes this pressure in one cylinder."""
    return push_for_pressure(pressure, bore) / (ratio * efficiency)


def displaced_volume(stroke: Mm, bore: Mm) -> Floats:
    """Fluid moved by a stroke, in mm3."""
    return stroke * bore_area(bore)


def driven_stroke(stroke: Mm, bore: Mm, driven_bore: Mm) -> Mm:
    """Stroke of the driven cylinder, no fluid lost."""
    return stroke * (bore / driven_bore) ** 2


def driven_force(push: Newton, bore: Mm, driven_bore: Mm) -> Newton:
    """Force of the driven cylinder, no friction."""
    return push * (driven_bore / bore) ** 2


def pad_travel_for_volume(volume: Floats, bore: Mm, ratio: Floats, lost: Mm) -> Mm:
    """Pad travel that moves this much fluid (mm3), lost motion at the pad included."""
    return ratio * volume / bore_area(bore) + lost


def stroke_left(usable: Mm, used: Mm) -> Mm:
    """Cylinder stroke still free at the stop; negative: the cylinder bottoms before the pedal stops."""
    return usable - used


def bar_shares(push: Newton, bar: BalanceBar) -> tuple[Newton, Newton]:
    """Front and rear rod force of a balance bar; holds to about 5 deg of tilt: common practice, no source."""
    rear = push * bar.from_front / bar.spacing
    return push - rear, rear


def bar_tilt(front_stroke: Mm, rear_stroke: Mm, bar: BalanceBar) -> Floats:
    """Tilt of the balance bar in degrees, positive when the front circuit's end has gone further."""
    return atan2d(front_stroke - rear_stroke, bar.spacing)


def pressure_share(front: MPa, rear: MPa) -> Floats:
    """Front circuit's share of both line pressures, 0 to 1; half when neither has any."""
    total = front + rear
    return np.where(total > 0.0, front / np.where(total > 0.0, total, 1.0), 0.5)


def released_hydraulic(pad_travel: Mm, ratio: Floats, bores: tuple[Mm, Mm], fork: Floats, lost: Mm) -> Mm:
    """Travel of the release bearing of a hydraulic clutch.

    Args:
        pad_travel: at the pedal, lost motion included.
        ratio: mean ratio of the pedal.
        bores: of the master and of the slave cylinder.
        fork: release fork ratio, cylinder end over bearing end.
        lost: pad travel before the cylinder moves.
    """
    return driven_stroke(np.maximum(pad_travel - lost, 0.0) / ratio, *bores) / fork


def released_cable(pull: Mm, fork: Floats, slack: Mm) -> Mm:
    """Travel of the release bearing of a cable clutch; slack is taken up first."""
    return np.maximum(pull - slack, 0.0) / fork
