"""Which heights of anchor or guide a limit on the shoulder straps' side angle lets pass."""

from dataclasses import dataclass

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.harness import rim
from fitcalc.checks.shoulder_straps import flat, guide_roller, shoulder_roller, straight_shoulder
from fitcalc.documents.car_cockpit import Harness
from fitcalc.geometry.degrees import cosd, sind, tand
from fitcalc.geometry.taut import Roller
from fitcalc.units import Bools, Deg, Floats, Mm


@dataclass(frozen=True, eq=False)
class HeightWindow:
    """Heights that pass, as z in the car.

    Attributes:
        low: lowest; None where the limit has no upper bound on the drop.
        high: highest; None where the limit has no lower bound.
        present: where the anchor, or the middle of the guide, is.
        on_guide: the heights are the guide's, because the straps bend over it.
    """

    low: Mm | None
    high: Mm | None
    present: Mm
    on_guide: Bools


def shoulder_heights(
    harness: Harness, side: str, low: Floats | None, high: Floats | None, case: Case
) -> HeightWindow:
    """The window for a limit measured at the shoulder, such as `harness.shoulder.side_angle`."""
    return _window(shoulder_roller(case), harness, side, (low, high), case)


def rim_heights(
    harness: Harness, side: str, low: Floats | None, high: Floats | None, case: Case
) -> HeightWindow:
    """The window for a limit measured from the backrest's rim, such as `harness.shoulder.rim_angle`."""
    return _window(Roller(flat(rim(case)), np.zeros(case.count)), harness, side, (low, high), case)


def _window(
    start: Roller, harness: Harness, side: str, bounds: tuple[Floats | None, Floats | None], case: Case
) -> HeightWindow:
    strap, guide = straight_shoulder(harness, side, case), guide_roller(harness, case)
    held, on_guide = Roller(flat(strap.anchor), np.zeros(case.count)), np.zeros(case.count, dtype=bool)
    if guide is not None:
        on_guide = np.any(strap.first != strap.anchor, axis=-1)
        held = Roller(
            np.where(on_guide[:, None], guide.centre, held.centre), np.where(on_guide, guide.radius, 0.0)
        )
    low, high = bounds
    return HeightWindow(
        low=None if high is None else _height_at(start, held, case.full(high)),
        high=None if low is None else _height_at(start, held, case.full(low)),
        present=held.centre[:, 1],
        on_guide=on_guide,
    )


def _height_at(start: Roller, held: Roller, drop: Deg) -> Mm:
    """Height of what holds the strap, at its present place fore and aft, for a strap that drops by an angle.

    Source: tangent of two circles; plane geometry.
    """
    x, z = start.centre[:, 0] + start.radius * sind(drop), start.centre[:, 1] + start.radius * cosd(drop)
    return z - (held.centre[:, 0] - x) * tand(drop) - held.radius / cosd(drop)
