"""The rework: seat offset first, then what each pedal still needs.

The seat may stand in any hole of its rail (any whole millimetre of a sliding one) and the pedal box in any of its
slots. Of all places, those are kept that leave the fewest limits broken with the knees as wished; of these the one
that needs the least bar, and of those the one that moves seat and box least.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.comfort import windows_for
from fitcalc.body.links import Links, links_for
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.extension import Extension, leg_cramped, least_extension
from fitcalc.fit.result import Result
from fitcalc.posture.cases import column, spread
from fitcalc.posture.sit import sit
from fitcalc.units import Bools, Floats, Mm

SLIDING_STEP = 1.0
"""Step in which a continuous rail or box is searched, mm: what a tape can set."""


@dataclass(frozen=True, eq=False)
class Fit:
    """The car as found and after the least rework, for one driver.

    Attributes:
        found, after: the two results; `after.setup` is the rework.
        with_seat_as_found: what each pedal would need if the seat stayed where it is.
        met: by pedal, whether the knee is as wished after the rework.
    """

    found: Result
    after: Result
    with_seat_as_found: Mapping[str, Extension]
    met: Mapping[str, bool]


def fit(car: Car, driver: Driver, rules: str | None = None) -> Fit:
    """Find the least rework of seat and pedals for one driver."""
    links = links_for(driver)
    found = evaluate(car, driver, Setup(), rules, links)
    places = seat_and_box_places(car)
    extensions = extensions_at(car, driver, places, links)
    best = _best(evaluate(car, driver, _extended(places, extensions), rules, links), extensions, driver)
    setup = _one(car, _extended(places, extensions), best)
    as_found = extensions_at(car, driver, Setup(), links)
    return Fit(
        found=found,
        after=evaluate(car, driver, setup, rules, links),
        with_seat_as_found=as_found,
        met={name: bool(extension.enough[best]) for name, extension in extensions.items()},
    )


def seat_and_box_places(car: Car) -> Setup:
    """Every place of seat and pedal box, as one setup over cases."""
    rails, pedals = car.rails, car.pedals
    pitch = {"drilled": rails.hole_pitch, "continuous": SLIDING_STEP, "fixed": SLIDING_STEP}[rails.kind]
    seat = stops(-rails.rearward_travel, rails.forward_travel, pitch)
    box = stops(-pedals.box_forward, pedals.box_rearward, pedals.box_pitch or SLIDING_STEP)
    seats, boxes = (axis.ravel() for axis in np.meshgrid(seat, box, indexing="ij"))
    return spread(Setup(), {"seat_travel": seats, "box_travel": boxes})


def stops(low: float, high: float, pitch: float) -> Mm:
    """Places from low to high in steps of the pitch, counted from 0, which is where it was found."""
    first, last = math.ceil(low / pitch - 1e-9), math.floor(high / pitch + 1e-9)
    return pitch * np.arange(first, last + 1, dtype=float)


def extensions_at(car: Car, driver: Driver, places: Setup, links: Links) -> Mapping[str, Extension]:
    """What each pedal needs with seat and box in these places."""
    sitting = sit(car, links, places)
    targets = windows_for(driver)
    return {name: least_extension(name, car, places, sitting, links, targets) for name in sitting.pedals}


def _best(result: Result, extensions: Mapping[str, Extension], driver: Driver) -> int:
    """The case to choose: fewest wishes unmet, fewest limits broken, least bar, least movement, in this order."""
    count = len(result.sitting.trunk.hip)
    targets = windows_for(driver)
    unmet = _total(count, (~extension.enough for extension in extensions.values()))
    cramped = _total(count, (np.maximum(leg_cramped(at, targets), 0.0) for at in result.sitting.pedals.values()))
    broken = _total(count, (check.fails for check in result.checks))
    bar = _total(count, (extension.stand_off + extension.longer_arm for extension in extensions.values()))
    moved = _total(count, (np.abs(column(way)) for way in (result.setup.seat_travel, result.setup.box_travel)))
    return int(np.lexsort((moved, bar, broken, np.round(cramped, 6), unmet))[0])


def _total(count: int, parts: Iterable[Floats | Bools]) -> Floats:
    return np.sum([np.broadcast_to(part, (count,)).astype(float) for part in parts], axis=0)


def _extended(places: Setup, extensions: Mapping[str, Extension]) -> Setup:
    for name, extension in extensions.items():
        both = {f"{name}.stand_off": extension.stand_off, f"{name}.longer_arm": extension.longer_arm}
        places = spread(places, both)
    return places


def _one(car: Car, setup: Setup, case: int) -> Setup:
    """One case of a setup over cases, as a document."""
    pedals = {
        name: PedalRework(
            stand_off=float(getattr(setup, name).stand_off[case]), longer_arm=float(getattr(setup, name).longer_arm[case])
        )
        for name in car.fitted_pedals()
    }
    return Setup(
        seat_travel=float(column(setup.seat_travel)[case]), box_travel=float(column(setup.box_travel)[case]), **pedals
    )
