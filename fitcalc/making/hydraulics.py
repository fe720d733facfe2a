"""Line pressure, cylinder stroke, balance bar and clutch release."""

from dataclasses import dataclass

import numpy as np

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


def driven_stroke(stroke: Mm, bore: Mm, driven_bore: Mm) -> Mm:
    """Stroke of the driven cylinder, no fluid lost."""
    return stroke * (bore / driven_bore) ** 2


def stroke_left(usable: Mm, used: Mm) -> Mm:
    """Cylinder stroke still free at the stop; negative: the cylinder bottoms before the pedal stops."""
    return usable - used


def bar_shares(push: Newton, bar: BalanceBar) -> tuple[Newton, Newton]:
    """Front and rear rod force of a balance bar; holds to about 5 deg of tilt: common practice, no source."""
    rear = push * bar.from_front / bar.spacing
    return push - rear, rear
