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

    Args:
        name: of the pedal.
        car: as found.
        setup: where seat and pedal box stand.
        sitting: the driver there, with the pedals as found.
        links: the driver's body.
        targets: what is wished.

    Source: search on the posture model; the excess falls as the pad comes nearer.
    """
    pedal, count = car.fitted_pedals()[name], len(sitting.trunk.hip)

    def excess(cases: np.ndarray, stand_off: Mm, longer_arm: Mm) -> Deg:
        """Of some cases with several bars each, `(cases, k)`."""
        bars = np.broadcast_arrays(stand_off, longer_arm)
        at = np.repeat(cases, bars[0].shape[1])
        trunk, hips, body, box = taken((sitting.trunk, sitting.hips, links, column(setup.box_travel)), at)
        paths = ("box_travel", f"{name}.stand_off", f"{name}.longer_arm")
        changed = spread(setup, dict(zip(paths, (box, bars[0].ravel(), bars[1].ravel()), strict=True)))
        return leg_excess(on_pedal(name, car, changed, trunk, hips, body), targets).reshape(bars[0].shape)

    stand_off, enough = _least(
        lambda cases, bars: excess(cases, bars, 0.0 * bars), np.zeros(count) + column(pedal.max_stand_off)
    )
    longer_arm, straight = np.zeros(count), np.flatnonzero(~enough)
    if straight.size:
        longer_arm[straight], enough[straight] = _least(
            lambda cases, bars: excess(straight[cases], stand_off[straight[cases], None], bars),
            np.zeros(straight.size) + column(pedal.max_longer_arm),
        )
    too_near = leg_cramped(sitting.pedals[name], targets) > 0.0
    return Extension(stand_off, longer_arm, enough, np.broadcast_to(too_near, (count,)))


def _least(excess: Callable[[np.ndarray, Mm], Deg], most: Mm) -> tuple[Mm, Bools]:
    """Least whole millimetre of 0..most at which the excess is gone; `most` where it never is. And whether it is."""
    strides = np.minimum(STRIDE * np.arange(np.ceil(most.max() / STRIDE) + 1.0), most[:, None])
    gone, first = _first_gone(excess(np.arange(len(most)), strides), strides)
    least = np.where(gone, first, most)
    between = np.flatnonzero(gone & (first > 0.0))
    if between.size:
        near = np.minimum(
            np.maximum(first[between] - STRIDE, 0.0)[:, None] + np.arange(STRIDE + 1.0), most[between, None]
        )
        least[between] = _first_gone(excess(between, near), near)[1]
    return least, gone


def _first_gone(excess: Deg, values: Mm) -> tuple[Bools, Mm]:
    """Whether the excess is gone at any of some rising values, both `(n, k)`, and the first of them at which it is."""
    gone = excess <= 0.0
    return np.any(gone, axis=1), values[np.arange(len(values)), np.argmax(gone, axis=1)]
