"""The rework: seat offset first, then what each pedal still needs.

The seat may stand in any hole of its rail (any whole millimetre of a sliding one) and the pedal box in any of its
slots. Of all places, those are kept that leave the fewest limits broken with the knees as wished; of these the one
that needs the least bar, and of those the one that moves seat and box least.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.comfort import windows_for
from fitcalc.body.links import Links, links_for
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import joined, result_at, setup_of, taken
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.extension import Extension, leg_cramped, least_extension
from fitcalc.fit.result import Result
from fitcalc.fit.variables import PEDAL_WAYS, stops, value_at
from fitcalc.posture.cases import spread
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
    places = seat_and_box_places(car)
    count = len(value_at(places, "seat_travel"))
    last = joined([_values(places), {path: np.zeros(1) for path in ("seat_travel", "box_travel")}])
    extensions = extensions_at(car, driver, setup_of(last), links)
    bars = _bars(extensions)
    tried = setup_of(last | {path: np.where(np.arange(count + 1) < count, bar, 0.0) for path, bar in bars.items()})
    every = evaluate(car, driver, tried, rules, links)
    best = _best(every, extensions, driver, count)
    as_found = np.array([count])
    return Fit(
        found=result_at(every, count),
        after=result_at(every, best),
        with_seat_as_found=taken(dict(extensions), as_found),
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


def extensions_at(car: Car, driver: Driver, places: Setup, links: Links) -> Mapping[str, Extension]:
    """What each pedal needs with seat and box in these places."""
    sitting = sit(car, links, places)
    targets = windows_for(driver)
    return {name: least_extension(name, car, places, sitting, links, targets) for name in sitting.pedals}


def _best(result: Result, extensions: Mapping[str, Extension], driver: Driver, count: int) -> int:
    """The case to choose of the first `count`: fewest wishes unmet, fewest limits broken, least bar, least movement."""
    cases = len(result.sitting.trunk.hip)
    targets = windows_for(driver)
    unmet = _total(cases, (~extension.enough for extension in extensions.values()))
    cramped = _total(cases, (np.maximum(leg_cramped(at, targets), 0.0) for at in result.sitting.pedals.values()))
    broken = _total(cases, (check.fails for check in result.checks))
    bar = _total(cases, (extension.stand_off + extension.longer_arm for extension in extensions.values()))
    moved = _total(cases, (np.abs(value_at(result.setup, path)) for path in ("seat_travel", "box_travel")))
    order = np.lexsort((moved, bar, broken, np.round(cramped, 6), unmet))
    return int(order[order < count][0])


def _total(count: int, parts: Iterable[Floats | Bools]) -> Floats:
    return np.sum([np.broadcast_to(part, (count,)).astype(float) for part in parts], axis=0)


def _values(places: Setup) -> dict[str, Floats]:
    return {path: value_at(places, path) for path in ("seat_travel", "box_travel")}


def _bars(extensions: Mapping[str, Extension]) -> dict[str, Mm]:
    return {f"{name}.{way}": getattr(each, way) for name, each in extensions.items() for way in PEDAL_WAYS}
