"""How far each pad must come toward the driver so that the leg is bent enough."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.comfort import Window
from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import taken
from fitcalc.posture.cases import column, spread
from fitcalc.posture.sit import OnPedal, Sitting, on_pedal
from fitcalc.units import Bools, Deg, Mm

Targets = Mapping[str, Window]
"""The wished angle windows by name: `knee_released` and `knee_pressed` are used here."""

STRIDE = 10.0
"""Extensions are searched in strides of so many mm first, then in whole mm, which is what a saw can do."""


@dataclass(frozen=True, eq=False)
class Extension:
    """What one pedal needs, `(n,)`.

    Attributes:
        stand_off: pad brought toward the driver, square to its face.
        longer_arm: pad moved out along the arm, used when the stand-off allowed is not enough.
        enough: the leg is bent enough with it.
        too_near: the knee is bent more than wished already without it.
    """

    stand_off: Mm
    longer_arm: Mm
    enough: Bools
    too_near: Bools


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


def least_extension(
    name: str, car: Car, setup: Setup, sitting: Sitting, links: Links, targets: Targets
) -> Extension:
    """The least extension of one pedal that meets the knee targets: stand-off first, then a longer arm.

    Source: search on the posture model; the excess falls as the pad comes nearer.
    """
    pedal, count = car.fitted_pedals()[name], len(sitting.trunk.hip)

    def reached(stand_off: Mm, longer_arm: Mm) -> OnPedal:
        bars = np.broadcast_arrays(stand_off, longer_arm)
        at = np.repeat(np.arange(count), bars[0].shape[1])
        trunk, hips, body, box = taken((sitting.trunk, sitting.hips, links, column(setup.box_travel)), at)
        paths = ("box_travel", f"{name}.stand_off", f"{name}.longer_arm")
        changed = spread(setup, dict(zip(paths, (box, bars[0].ravel(), bars[1].ravel()), strict=True)))
        return on_pedal(name, car, changed, trunk, hips, body)

    def excess(stand_off: Mm, longer_arm: Mm) -> Deg:
        return leg_excess(reached(stand_off, longer_arm), targets).reshape(count, -1)

    none = np.zeros((count, 1))
    stand_off = _least(lambda bars: excess(bars, none), none[:, 0] + column(pedal.max_stand_off))
    longer_arm = _least(
        lambda bars: excess(stand_off[:, None], bars), none[:, 0] + column(pedal.max_longer_arm)
    )
    enough = excess(stand_off[:, None], longer_arm[:, None])[:, 0] <= 0.0
    too_near = leg_cramped(reached(none, none), targets) > 0.0
    return Extension(stand_off, longer_arm, enough, too_near)


def _least(excess: Callable[[Mm], Deg], most: Mm) -> Mm:
    """Least whole millimetre of 0..most at which the excess is gone; `most` where it never is."""
    strides = STRIDE * np.arange(np.ceil(most.max() / STRIDE) + 1.0)
    gone, first = _first_gone(excess, np.minimum(strides, most[:, None]))
    near = np.minimum(np.maximum(first - STRIDE, 0.0)[:, None] + np.arange(STRIDE + 1.0), most[:, None])
    return np.where(gone, _first_gone(excess, near)[1], most) if most.max() > 0.0 else most


def _first_gone(excess: Callable[[Mm], Deg], values: Mm) -> tuple[Bools, Mm]:
    """Whether the excess is gone at any of some rising values `(n, k)`, and the first of them at which it is."""
    gone = excess(values) <= 0.0
    return np.any(gone, axis=1), values[np.arange(len(values)), np.argmax(gone, axis=1)]
