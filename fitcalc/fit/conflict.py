"""Why no rework passes: which limits shut each other out, and what single change of the car would make room."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from fitcalc.checks.check import ROUNDING, Check
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, setup_of
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.problem import Problem, Values, picked
from fitcalc.fit.sweep import required_room, shortfall, sweep
from fitcalc.posture.cases import spread
from fitcalc.units import Bools, Floats

ENOUGH = 200
"""So many of the best reworks are looked at."""
AMOUNTS = np.append(0.0, np.arange(4.0, 81.0, 4.0))
"""How far a part of the car is moved to see whether that makes room, mm."""


@dataclass(frozen=True)
class Conflict:
    """What stands in the way.

    Attributes:
        broken: ids of the checks that the best rework still breaks.
        against: for each, the check that breaks most where it holds; empty where it holds nowhere.
        sentences: the same in words.
        changes: single changes of the car, each of which would let the best rework pass, in words.
    """

    broken: tuple[str, ...]
    against: tuple[str, ...]
    sentences: tuple[str, ...]
    changes: tuple[str, ...]


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
    against = [_against(id, lacks) for id in broken]
    sentences = tuple(_sentence(id, other, lacks) for id, other in zip(broken, against, strict=True))
    return Conflict(tuple(broken), tuple(against), sentences, tuple(_changes(problem, best, broken)))


def _everywhere(check: Check, at: np.ndarray, count: int) -> Floats | None:
    short = shortfall(check)
    return None if short is None else (short[at] if len(short) > 1 else np.broadcast_to(short, (count,)))


Lacks = dict[str, tuple[Check, Floats]]


def _against(id: str, lacks: Lacks) -> str:
    """The check that lacks most in the best rework at which this one holds."""
    holds = np.flatnonzero(lacks[id][1] <= 0.0)
    if len(holds) == 0:
        return ""
    others = {other: float(short[holds[0]]) for other, (_, short) in lacks.items() if other != id}
    return max(others, key=lambda other: others[other])


def _sentence(id: str, other: str, lacks: Lacks) -> str:
    check, short = lacks[id]
    if not other:
        least = float(np.min(short))
        return (
            f"Nothing allowed gives {_wanted(check)}; {least:.1f} {check.figure.unit} are lacking at least."
        )
    return f"No rework gives both {_wanted(check)} and {_wanted(lacks[other][0])}."


def _wanted(check: Check) -> str:
    """What a check asks for, as in `knee angle over 105 deg`."""
    use_comfort = required_room(check) is check.comfort_margin
    wished = use_comfort or check.margin is None
    low = check.recommended_low if wished else check.low
    high = check.recommended_high if wished else check.high
    ends = [float(np.ravel(end)[0]) for end in (low, high) if end is not None]
    asked = (
        f"of {ends[0]:g} to {ends[-1]:g}"
        if len(ends) == 2
        else f"of {ends[0]:g} or {'more' if high is None else 'less'}"
    )
    return f"{check.label} {asked} {check.figure.unit}"


def _changes(problem: Problem, best: Setup, broken: list[str]) -> Iterator[str]:
    """Single changes beyond what is allowed that make all hold.

    Where there are none: for each broken check the least that mends it and leaves no more lacking than before.
    """
    options = [*_beyond(problem, best), *_rebuilt(problem, best)]
    whole = [option for option in options if np.any(option.total <= ROUNDING)]
    for option in whole:
        yield f"{option.words} {option.amount(option.total <= ROUNDING):.0f} mm would."
    for id in broken if not whole else []:
        mended = [(option.amount(option.mends(id)), option) for option in options if np.any(option.mends(id))]
        if mended:
            amount, option = min(mended, key=lambda pair: pair[0])
            yield f"{option.labels[id]}: {option.words[0].lower()}{option.words[1:]} {amount:.0f} mm would mend this."


@dataclass(frozen=True, eq=False)
class Option:
    """One part moved beyond what is allowed, by each of `AMOUNTS`: what every check then lacks, first as it was."""

    words: str
    short: dict[str, Floats]
    labels: dict[str, str]

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
    for at, (words, _, _) in enumerate(ways):
        rows = slice(at * len(AMOUNTS), (at + 1) * len(AMOUNTS))
        yield _option(problem, words, [(check, short[rows]) for check, short in each])


def _rebuilt(problem: Problem, best: Setup) -> Iterator[Option]:
    """What would be built into another place."""
    setup = setup_of({path: np.full(len(AMOUNTS), _number(best, path)) for path in PATHS})
    for words, paths, sign in _parts(problem.car):
        car = spread(problem.car, {path: _number(problem.car, path) + sign * AMOUNTS for path in paths})
        checks = evaluate(car, problem.driver, setup, problem.rules, problem.links).checks
        each = [(check, short) for check in checks if (short := shortfall(check)) is not None]
        yield _option(problem, words, [(check, short + 0.0 * AMOUNTS) for check, short in each])


def _option(problem: Problem, words: str, each: list[tuple[Check, Floats]]) -> Option:
    kept = [(check, short) for check, short in each if check.id not in problem.settled]
    return Option(
        words, {check.id: short for check, short in kept}, {check.id: check.label for check, _ in kept}
    )


def _limits(car: Car) -> Iterator[tuple[str, str, float]]:
    """Words, number of the setup, and which way."""
    yield "Lowering the seat by another", "seat_raise", -1.0
    yield "Raising the seat by another", "seat_raise", 1.0
    yield "Letting the seat go further forward by", "seat_travel", 1.0
    yield "Letting the seat go further back by", "seat_travel", -1.0
    yield "Moving the pedal box forward by another", "box_travel", -1.0
    yield "Moving the pedal box rearward by another", "box_travel", 1.0
    for name in car.fitted_pedals():
        yield f"Standing the {name} pad off by another", f"{name}.stand_off", 1.0
        yield f"Making the {name} arm longer by another", f"{name}.longer_arm", 1.0


def _parts(car: Car) -> Iterator[tuple[str, tuple[str, ...], float]]:
    """Words, numbers of the car, and which way."""
    if car.hoops is not None:
        yield "Raising the main hoop", ("hoops.main_top.z",), 1.0
        yield "Raising the front hoop", ("hoops.front_top.z",), 1.0
    if car.steering_wheel is not None:
        yield "Raising the steering wheel", ("steering_wheel.centre.z",), 1.0
        yield "Moving the steering wheel forward", ("steering_wheel.centre.x",), -1.0
    if car.head_restraint is not None:
        yield "Moving the head restraint rearward", ("head_restraint.x",), 1.0
    if car.harness is not None:
        both = tuple(f"harness.shoulder_{side}.z" for side in ("left", "right"))
        yield "Raising the shoulder anchors by another", both, 1.0
        yield "Lowering the shoulder anchors by another", both, -1.0


def _number(document: Any, path: str) -> float:
    for step in path.split("."):
        document = getattr(document, step)
    return float(document)
