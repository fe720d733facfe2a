"""Where seat and pedal box may stand, and the least bars that the knees then want."""

from collections.abc import Callable, Mapping

import numpy as np

from fitcalc.body.comfort import windows_for
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import crossed, setup_of
from fitcalc.fit.extension import leg_cramped, leg_excess
from fitcalc.fit.problem import Problem, Values, size
from fitcalc.fit.sweep import SEAT, distinct
from fitcalc.fit.variables import PEDAL_WAYS, Variable, value_at
from fitcalc.posture.cases import spread
from fitcalc.posture.sit import OnPedal, on_pedal, trunk_and_hips
from fitcalc.units import Deg, Floats, Mm

PLACEMENT = (*SEAT, "box_travel")
COARSE = {
    "seat_travel": 13,
    "seat_raise": 5,
    "recline": 5,
    "cushion_insert": 3,
    "back_insert": 3,
    "box_travel": 13,
}
"""At most so many places of each variable are tried at first."""


def coarse_places(problem: Problem) -> dict[str, Floats]:
    """Placements spread over what is allowed, the one as found among them."""
    axes = {path: problem.variable(path) for path in PLACEMENT}
    return crossed({path: thinned(each, COARSE[path]) for path, each in axes.items() if each is not None})


def near_places(
    problem: Problem, centre: Mapping[str, float], widths: Mapping[str, float]
) -> dict[str, Floats]:
    """Placements about one, within a width each way, and each variable left as found besides."""
    axes = {}
    for path in PLACEMENT:
        each = problem.variable(path)
        if each is None:
            continue
        places = each.places()
        near = places[np.abs(places - centre[path]) <= widths[path] + 1e-9]
        axes[path] = np.unique(np.append(spaced(near, COARSE[path]), 0.0))
    return crossed(axes)


def thinned(variable: Variable, most: int) -> Floats:
    """At most about `most` of a variable's places, both ends and 0 among them."""
    return np.unique(np.append(spaced(variable.places(), most), 0.0))


def spaced(places: Floats, most: int) -> Floats:
    """At most `most` of some places, evenly, with both ends."""
    if len(places) <= most:
        return places
    return places[np.round(np.linspace(0, len(places) - 1, most)).astype(int)]


def pitch(problem: Problem, path: str) -> float:
    """Distance between neighbours of the coarse places of a variable."""
    each = problem.variable(path)
    if each is None:
        return 0.0
    return float(np.max(np.diff(thinned(each, COARSE[path])), initial=each.step))


def with_least_bars(problem: Problem, places: Values) -> dict[str, Floats]:
    """The placements with the cheapest bars that bend every leg enough, or the longest where none does."""
    few, at = distinct(setup_of(places), PLACEMENT)
    at = np.broadcast_to(at, (size(places),))
    bars: dict[str, Floats] = {}
    for name in problem.car.fitted_pedals():
        bars |= {path: value[at] for path, value in _bars(Knees(problem, name, few)).items()}
    return {path: np.broadcast_to(value, (size(places),)) for path, value in places.items()} | bars


class Knees:
    """One pedal's leg at many placements, as a function of its bars alone."""

    def __init__(self, problem: Problem, name: str, places: Setup) -> None:
        self.problem, self.name, self.places = problem, name, places
        self.trunk, self.hips = trunk_and_hips(problem.car, problem.links, places)
        self.targets = windows_for(problem.driver)
        self.nothing: Mm = np.zeros(max(len(value_at(places, path)) for path in PLACEMENT))

    def variable(self, way: str) -> Variable | None:
        """Stand-off or longer arm, where this pedal may have it."""
        return self.problem.variable(f"{self.name}.{way}")

    def at(self, stand_off: Mm, longer_arm: Mm) -> OnPedal:
        """The leg with these bars."""
        bars = {f"{self.name}.stand_off": stand_off, f"{self.name}.longer_arm": longer_arm}
        changed = spread(self.places, bars)
        return on_pedal(self.name, self.problem.car, changed, self.trunk, self.hips, self.problem.links)

    def excess(self, stand_off: Mm, longer_arm: Mm) -> Deg:
        """How much too straight the leg is; it falls as the pad comes nearer."""
        return leg_excess(self.at(stand_off, longer_arm), self.targets) + self.nothing

    def lacking(self, stand_off: Mm, longer_arm: Mm) -> Deg:
        """How far the knee is from what is wished, either way."""
        at = self.at(stand_off, longer_arm)
        bent, cramped = leg_excess(at, self.targets), leg_cramped(at, self.targets)
        return np.maximum(bent, 0.0) + np.maximum(cramped, 0.0) + self.nothing

    def cost(self, stand_off: Mm, longer_arm: Mm) -> Floats:
        """Minutes that these bars take."""
        pairs = zip(PEDAL_WAYS, (stand_off, longer_arm), strict=True)
        parts = [each.cost(values) for way, values in pairs if (each := self.variable(way)) is not None]
        return sum(parts, self.nothing)


def _bars(knees: Knees) -> dict[str, Floats]:
    """Stand-off and longer arm of one pedal: either alone, or both, whichever is enough for least effort."""
    stand, arm, nothing = knees.variable("stand_off"), knees.variable("longer_arm"), knees.nothing
    ways: list[tuple[Mm, Mm]] = [(nothing, nothing)]
    if stand is not None:
        ways.append((least(lambda s: knees.excess(s, nothing), stand, nothing), nothing))
    if arm is not None:
        ways.append((nothing, least(lambda s: knees.excess(nothing, s), arm, nothing)))
    if stand is not None and arm is not None:
        full = nothing + stand.places()[-1]
        ways.append((full, least(lambda s: knees.excess(full, s), arm, nothing)))
    lack = np.stack([np.round(knees.lacking(*way), 6) for way in ways])
    best = np.lexsort((np.stack([knees.cost(*way) for way in ways]), lack), axis=0)[0]
    chosen = [np.choose(best, [way[part] for way in ways]) for part in (0, 1)]
    return {f"{knees.name}.{way}": value for way, value in zip(PEDAL_WAYS, chosen, strict=True)}


def least(excess: Callable[[Mm], Deg], variable: Variable, nothing: Mm) -> Mm:
    """The least place of a pedal's variable at which the excess is gone, else its last."""
    places = variable.places()
    low, high = np.zeros(nothing.shape, dtype=int), np.full(nothing.shape, len(places) - 1)
    for _ in range(int(np.ceil(np.log2(len(places) + 1)))):
        middle = (low + high) // 2
        gone = excess(places[middle]) <= 0.0
        low, high = np.where(gone, low, np.minimum(middle + 1, high)), np.where(gone, middle, high)
    return places[high]
