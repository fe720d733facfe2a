"""How far each pad must come toward the driver so that the leg is bent enough."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.comfort import Window
from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.posture.cases import column, spread
from fitcalc.posture.sit import OnPedal, Sitting, on_pedal
from fitcalc.units import Bools, Deg, Mm

Targets = Mapping[str, Window]
"""The wished angle windows by name: `knee_released` and `knee_pressed` are used here."""

WHOLE = 1.0
"""Extensions are searched and given in whole millimetres, which is what a saw can do."""


@dataclass(frozen=True, eq=False)
class Extension:
    """What one pedal needs, `(n,)`.

    Attributes:
        stand_off: pad brought toward the driver, square to its face.
        longer_arm: pad moved out along the arm, used when the stand-off allowed is not enough.
        enough: the targets are met with it.
    """

    stand_off: Mm
    longer_arm: Mm
    enough: Bools


def leg_excess(at: OnPedal, targets: Targets) -> Deg:
    """How much straighter the knee is than wished, released or pressed, whichever is worse; negative = bent enough.

    A pedal beyond the straight leg counts its shortfall in mm on top, so that nearer is always better.
    """
    released = at.rest.knee_angle - targets["knee_released"].recommended[1]
    pressed = at.full.knee_angle - targets["knee_pressed"].recommended[1]
    beyond = np.maximum(at.rest.shortfall, at.full.shortfall)
    return np.maximum(released, pressed) + beyond


def leg_cramped(at: OnPedal, targets: Targets) -> Deg:
    """How much more bent the knee is than wished, pedal released; negative = room enough."""
    return targets["knee_released"].recommended[0] - at.rest.knee_angle


def least_extension(name: str, car: Car, setup: Setup, sitting: Sitting, links: Links, targets: Targets) -> Extension:
    """The least extension of one pedal that meets the knee targets: stand-off first, then a longer arm.

    Source: bisection on the posture model; the excess falls as the pad comes nearer.
    """
    pedal = car.fitted_pedals()[name]

    def excess(stand_off: Mm, longer_arm: Mm) -> Deg:
        changed = spread(setup, {f"{name}.stand_off": stand_off, f"{name}.longer_arm": longer_arm})
        return leg_excess(on_pedal(name, car, changed, sitting.trunk, sitting.hips, links), targets)

    none = np.zeros(len(sitting.trunk.hip))
    stand_off = _least(lambda s: excess(s, none), none + column(pedal.max_stand_off))
    longer_arm = _least(lambda s: excess(stand_off, s), none + column(pedal.max_longer_arm))
    return Extension(stand_off, longer_arm, excess(stand_off, longer_arm) <= 0.0)


def _least(excess: Callable[[Mm], Deg], most: Mm) -> Mm:
    """Least whole millimetre of 0..most at which the excess is gone; `most` where it never is."""
    low, high = np.zeros_like(most), np.ceil(most / WHOLE)
    for _ in range(int(np.ceil(np.log2(high.max() + 1.0)))):
        middle = np.floor((low + high) / 2)
        gone = excess(np.minimum(middle * WHOLE, most)) <= 0.0
        low, high = np.where(gone, low, np.minimum(middle + 1.0, high)), np.where(gone, middle, high)
    already = excess(np.zeros_like(most)) <= 0.0
    return np.where(already, 0.0, np.minimum(high * WHOLE, most))
