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
from fitcalc.fit.cases import PATHS, joined, result_at, setup_of, taken
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.extension import Extension, least_extension, leg_cramped
from fitcalc.fit.result import Result
from fitcalc.fit.variables import PEDAL_WAYS, stops, value_at
from fitcalc.posture.cases import spread
from fitcalc.posture.sit import sit
from fitcalc.units import Bools, Floats, Mm

SLIDING_STEP = 1.0
"""Step in which a continuous rail or box is searched, mm: what a tape can set."""
PLACES = ("seat_travel", "box_travel")
BARS = tuple(path for path in PATHS if "." in path)


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
    with_found = joined([_values(places), {path: np.zeros(1) for path in PLACES}])
    extensions = extensions_at(car, driver, setup_of(with_found), links)
    kept = np.append(_as_wished(car, driver, with_found | _bars(extensions), links, extensions), count)
    bars = {path: np.append(bar[kept[:-1]], 0.0) for path, bar in _bars(extensions).items()}
    tried = setup_of({path: value[kept] for path, value in with_found.items()} | bars)
    every = evaluate(car, driver, tried, rules, links)
    best = _best(every)
    return Fit(
        found=result_at(every, len(kept) - 1),
        after=result_at(every, best),
        with_seat_as_found=taken(dict(extensions), np.array([count])),
        met={name: bool(extension.enough[kept[best]]) for name, extension in extensions.items()},
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


def _as_wished(
    car: Car, driver: Driver, places: Mapping[str, Mm], links: Links, extensions: Mapping[str, Extension]
) -> np.ndarray:
    """The places, but for the last one, that leave the fewest knees unlike what is wished, and those by the least."""
    pedals, targets = sit(car, links, setup_of(places)).pedals, windows_for(driver)
    count = len(places["seat_travel"])
    unmet = _total(count, (~extension.enough for extension in extensions.values()))[:-1]
    cramped = _total(count, (np.maximum(leg_cramped(at, targets), 0.0) for at in pedals.values()))[:-1]
    fewest = np.flatnonzero(unmet == unmet.min())
    least = np.round(cramped[fewest], 6)
    return fewest[least == least.min()]


def _best(result: Result) -> int:
    """The case to choose, but for the last one: fewest limits broken, least bar, least movement, in this order."""
    count = len(result.sitting.trunk.hip)
    broken = _total(count, (check.fails for check in result.checks))
    bar = _total(count, (value_at(result.setup, path) for path in BARS))
    moved = _total(count, (np.abs(value_at(result.setup, path)) for path in PLACES))
    return int(np.lexsort((moved[:-1], bar[:-1], broken[:-1]))[0])


def _total(count: int, parts: Iterable[Floats | Bools]) -> Floats:
    return np.sum([np.broadcast_to(part, (count,)).astype(float) for part in parts], axis=0)


def _values(places: Setup) -> dict[str, Floats]:
    return {path: value_at(places, path) for path in PLACES}


def _bars(extensions: Mapping[str, Extension]) -> dict[str, Mm]:
    return {f"{name}.{way}": getattr(each, way) for name, each in extensions.items() for way in PEDAL_WAYS}
