"""Why no rework passes: which limits shut each other out, and what single change of the car would make room."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from fitcalc.checks.check import ROUNDING, Check
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, setup_of
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.problem import Problem, Values, picked
from fitcalc.fit.sweep import shortfall, sweep
from fitcalc.posture.cases import spread
from fitcalc.units import Bools, Floats

ENOUGH = 200
"""So many of the best reworks are looked at."""
AMOUNTS = np.arange(0.0, 81.0, 2.0)
"""How far a part of the car is moved to see whether that makes room, mm."""


@dataclass(frozen=True, eq=False)
class Clash:
    """One check that the best rework breaks.

    Attributes:
        check: with its bounds.
        against: the check that breaks most where this one holds; None where it holds in no rework tried.
        least: what it lacks at least in any of them, mm or deg.
    """

    check: Check
    against: Check | None
    least: float


@dataclass(frozen=True)
class Way:
    """One change of the car beyond what it allows.

    Attributes:
        part: which, as in `main_hoop_up`.
        amount: the least that is enough, mm.
        mends: id of the broken check that it mends; empty where the rework then passes as a whole.
    """

    part: str
    amount: float
    mends: str


@dataclass(frozen=True, eq=False)
class Conflict:
    """What stands in the way, and what single change of the car would mend it."""

    clashes: tuple[Clash, ...]
    ways: tuple[Way, ...]


def conflict_of(problem: Problem, tried: Values, best: Setup) -> Conflict:
    """What shuts the best rework out; `tried` from best to worst."""
    some = picked(tried, np.arange(min(ENOUGH, max(len(value) for value in tried.values()))))
    swept = sweep(problem.car, problem.driver, setup_of(some), problem.links, problem.rules, problem.measures)
    lacks = {
        check.id: (check, short)
        for at, check in swept.each()
        if check.id not in problem.settled and (short := _everywhere(check, at, swept.count)) is not None
    }
    broken = [id for id, (_, short) in lacks.items() if short[0] > 0.0]
    clashes = tuple(_clash(id, lacks) for id in broken)
    return Conflict(clashes, tuple(_ways(problem, best, broken)))


def _everywhere(check: Check, at: np.ndarray, count: int) -> Floats | None:
    short = shortfall(check)
    return None if short is None else (short[at] if len(short) > 1 else np.broadcast_to(short, (count,)))


Lacks = Mapping[str, tuple[Check, Floats]]


def _clash(id: str, lacks: Lacks) -> Clash:
    """A broken check with the one that lacks most in the best rework at which it holds."""
    check, short = lacks[id]
    holds = np.flatnonzero(short <= 0.0)
    if len(holds) == 0:
        return Clash(check, None, float(np.min(short)))
    others = {other: float(values[holds[0]]) for other, (_, values) in lacks.items() if other != id}
    worst = max(others, key=lambda other: others[other])
    return Clash(check, lacks[worst][0], 0.0)


def _ways(problem: Problem, best: Setup, broken: list[str]) -> Iterator[Way]:
    """Single changes beyond what is allowed that make all hold.

    Where there are none: for each broken check the least that mends it and leaves no more lacking than before.
    """
    options = [*_beyond(problem, best), *_rebuilt(problem, best)]
    whole = [option for option in options if np.any(option.total <= ROUNDING)]
    for option in whole:
        yield Way(option.part, option.amount(option.total <= ROUNDING), "")
    for id in broken if not whole else []:
        mended = [(option.amount(option.mends(id)), option) for option in options if np.any(option.mends(id))]
        if mended:
            amount, option = min(mended, key=lambda pair: pair[0])
            yield Way(option.part, amount, id)


@dataclass(frozen=True, eq=False)
class Option:
    """One part moved beyond what is allowed, by each of `AMOUNTS`: what every check then lacks, first as it was."""

    part: str
    short: dict[str, Floats]

    @property
    def total(self) -> Floats:
        """What all checks lack together."""
        return np.sum(list(self.short.values()), axis=0)

    def mends(self, id: str) -> Bools:
        """Where one check comes to hold and no more is lacking in all."""
        return (self.short[id] <= ROUNDING) & (self.total <= self.total[0])

    def amount(self, where: Bools) -> float:
        """The least amount of those."""
        return float(AMOUNTS[np.flatnonzero(where)[0]])


def _beyond(problem: Problem, best: Setup) -> Iterator[Option]:
    """What the car file does not allow to move so far."""
    ways = list(_limits(problem.car))
    start = {path: np.full(len(ways) * len(AMOUNTS), _number(best, path)) for path in PATHS}
    for at, (_, path, sign) in enumerate(ways):
        start[path][at * len(AMOUNTS) : (at + 1) * len(AMOUNTS)] += sign * AMOUNTS
    swept = sweep(
        problem.car, problem.driver, setup_of(start), problem.links, problem.rules, problem.measures
    )
    each = [
        (check, short)
        for at, check in swept.each()
        if (short := _everywhere(check, at, swept.count)) is not None
    ]
    for at, (part, _, _) in enumerate(ways):
        rows = slice(at * len(AMOUNTS), (at + 1) * len(AMOUNTS))
        yield _option(problem, part, [(check, short[rows]) for check, short in each])


def _rebuilt(problem: Problem, best: Setup) -> Iterator[Option]:
    """What would be built into another place."""
    setup = setup_of({path: np.full(len(AMOUNTS), _number(best, path)) for path in PATHS})
    for part, paths, sign in _parts(problem.car):
        car = spread(problem.car, {path: _number(problem.car, path) + sign * AMOUNTS for path in paths})
        checks = evaluate(car, problem.driver, setup, problem.rules, problem.links).checks
        each = [(check, short) for check in checks if (short := shortfall(check)) is not None]
        yield _option(problem, part, [(check, short + 0.0 * AMOUNTS) for check, short in each])


def _option(problem: Problem, part: str, each: list[tuple[Check, Floats]]) -> Option:
    return Option(part, {check.id: short for check, short in each if check.id not in problem.settled})


def _limits(car: Car) -> Iterator[tuple[str, str, float]]:
    """Part, number of the setup, and which way."""
    yield "seat_down", "seat_raise", -1.0
    yield "seat_up", "seat_raise", 1.0
    yield "seat_forward", "seat_travel", 1.0
    yield "seat_back", "seat_travel", -1.0
    yield "cushion_insert", "cushion_insert", 1.0
    yield "back_insert", "back_insert", 1.0
    yield "box_forward", "box_travel", -1.0
    yield "box_back", "box_travel", 1.0
    for name in car.fitted_pedals():
        yield f"{name}.stand_off", f"{name}.stand_off", 1.0
        yield f"{name}.longer_arm", f"{name}.longer_arm", 1.0


def _parts(car: Car) -> Iterator[tuple[str, tuple[str, ...], float]]:
    """Part, numbers of the car, and which way."""
    if car.hoops is not None:
        yield "main_hoop_up", ("hoops.main_top.z",), 1.0
        yield "front_hoop_up", ("hoops.front_top.z",), 1.0
    if car.steering_wheel is not None:
        yield "wheel_up", ("steering_wheel.centre.z",), 1.0
        yield "wheel_forward", ("steering_wheel.centre.x",), -1.0
    if car.head_restraint is not None:
        yield "head_restraint_back", ("head_restraint.x",), 1.0
    if car.harness is not None:
        both = tuple(f"harness.shoulder_{side}.z" for side in ("left", "right"))
        yield "shoulder_anchors_up", both, 1.0
        yield "shoulder_anchors_down", both, -1.0


def _number(document: Any, path: str) -> float:
    for step in path.split("."):
        document = getattr(document, step)
    return float(document)
