"""Several drivers in one car: one set of holes, bars and brackets for all, and what each changes in a minute.

What is fixed is improved one variable at a time from every driver's own best rework; at each try every driver takes the
best of the quick changes, and at the end each goes closer by with his own.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import product

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, crossed, setup_at, setup_of
from fitcalc.fit.placing import COARSE, Knees, least, spaced, thinned
from fitcalc.fit.problem import Problem, Values, problem_of, size
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.solve import rework_of, searched
from fitcalc.fit.sweep import INSERTS
from fitcalc.fit.variables import AS_GIVEN, HAIR, Variable, value_at
from fitcalc.units import Floats

QUICK = ("seat_travel", "box_travel", *INSERTS)
"""What a driver may set without the bench: a hole of the rail, a slot of the box, inserts of his own in the seat."""
PAD = ".stand_off"
ALONE = 0.4
"""Part of the work that each driver's own rework takes."""
TRIES = 9
PASSES = 3
CLOSER = 3
"""So many times every driver's quick changes are looked at closer by."""


@dataclass(frozen=True, eq=False)
class Shared:
    """One car for several drivers.

    Attributes:
        setups: what the car is set to for each driver, in the order given; they differ in the quick changes only.
        lacking: what must hold and does not, for each driver, mm and deg together.
        effort: minutes for what is fixed.
        settled: for each driver, ids of checks that nothing allowed moves; they are no part of `lacking`.
        quick: paths in which the setups may differ.
        complete: False where the search was stopped before its end.
    """

    setups: tuple[Setup, ...]
    lacking: tuple[float, ...]
    effort: float
    settled: tuple[frozenset[str], ...]
    quick: tuple[str, ...]
    complete: bool

    @property
    def fits_all(self) -> bool:
        """Whether everything that can be moved holds for every driver."""
        return max(self.lacking) <= 0.0


def share(
    car: Car,
    drivers: Sequence[Driver],
    *,
    rules: str | None = None,
    effort: Effort = AS_GIVEN,
    quick: Sequence[str] = QUICK,
    progress: Progress = unheeded,
) -> Shared:
    """Find the fixed rework that fits all drivers, or lacks least over all of them.

    Args:
        car: as found.
        drivers: whose car it is.
        rules: id of the limit set; the car's own when None.
        effort: the user's own spans, steps and minutes.
        quick: paths that each driver may set for himself; a pedal's stand-off among them is a pad of his own, bolted
            on, as long as his knee wants it.
        progress: told the part done; answers whether to go on.
    """
    crew = _Crew([problem_of(car, driver, rules, effort) for driver in drivers], quick)
    own = []
    for at, problem in enumerate(crew.problems):
        own.append(rework_of(searched(problem)[0], 0).setup)
        if not progress(ALONE * (at + 1) / len(drivers)):
            return _stopped(crew, own)
    starts = [dict.fromkeys(crew.fixed, 0.0)] + [_fixed_of(setup, crew) for setup in own]
    best, steps = min((crew.judged(start) for start in starts), key=lambda one: one.rank), list(crew.fixed)
    for done in range(PASSES * len(steps)):
        if not progress(ALONE + (1.0 - ALONE) * done / (PASSES * len(steps))):
            return _shared(crew, best, False)
        path, level = steps[done % len(steps)], done // len(steps)
        if best.lacking_anything or best.fixed[path] != 0.0:
            best = crew.improved(best, path, level, starts)
    best = crew.closer(best)
    progress(1.0)
    return _shared(crew, best, True)


def _stopped(crew: "_Crew", own: Sequence[Setup]) -> Shared:
    """What is known before everybody's own rework is: the last one's, for all."""
    return _shared(crew, crew.judged(_fixed_of(own[-1], crew)), False)


def _shared(crew: "_Crew", best: "_Try", complete: bool) -> Shared:
    settled = tuple(problem.settled for problem in crew.problems)
    return Shared(best.setups, best.lacking, best.rank[1], settled, crew.quick, complete)


@dataclass(frozen=True, eq=False)
class _Try:
    fixed: dict[str, float]
    setups: tuple[Setup, ...]
    lacking: tuple[float, ...]
    rank: tuple[float, float]

    @property
    def lacking_anything(self) -> bool:
        """Whether somebody lacks something; else only less effort is better."""
        return self.rank[0] > 0.0


class _Crew:
    """The drivers' tasks, and which variables are fixed for all."""

    def __init__(self, problems: Sequence[Problem], quick: Sequence[str]) -> None:
        self.problems = problems
        variables = {each.path: each for each in problems[0].variables}
        self.fixed: dict[str, Variable] = {
            path: each for path, each in variables.items() if path not in quick
        }
        self.quick = tuple(path for path in variables if path in quick)
        self.pads = {path: variables[path] for path in self.quick if path.endswith(PAD)}
        self.set = {path: variables[path] for path in self.quick if path not in self.pads}
        self.free = _crossed({path: thinned(each, _few(path)) for path, each in self.set.items()})

    def judged(self, fixed: Mapping[str, float]) -> _Try:
        """One fixed rework with every driver's best quick change."""
        rows = {path: np.array([value]) for path, value in fixed.items()}
        setups, lacking, ranks = self._best(rows)
        return _Try(dict(fixed), setups[0], lacking[0], ranks[0])

    def improved(self, best: _Try, path: str, level: int, starts: Sequence[Mapping[str, float]]) -> _Try:
        """The best with one variable changed, tried all over first and then closer by."""
        each = self.fixed[path]
        gap = (each.high - each.low) / 4**level
        places = each.places()
        near = places[np.abs(places - best.fixed[path]) <= gap + 1e-9]
        tries = near[np.round(np.linspace(0, len(near) - 1, min(TRIES, len(near)))).astype(int)]
        tries = np.unique([*tries, 0.0, best.fixed[path], *(start[path] for start in starts)])
        rows = {other: np.full(len(tries), value) for other, value in best.fixed.items()} | {path: tries}
        setups, lacking, ranks = self._best(rows)
        at = min(range(len(tries)), key=lambda one: ranks[one])
        if ranks[at] >= best.rank:
            return best
        return _Try(best.fixed | {path: float(tries[at])}, setups[at], lacking[at], ranks[at])

    def closer(self, best: _Try) -> _Try:
        """The same with every driver's quick changes closer by what they are."""
        rows = {path: np.array([value]) for path, value in best.fixed.items()}
        setups, lacking = list(best.setups), list(best.lacking)
        for level, at in product(range(1, CLOSER + 1), range(len(setups))):
            near = _crossed({path: _near(each, setups[at], level) for path, each in self.set.items()})
            whole = {path: np.repeat(value, size(near)) for path, value in rows.items()} | near
            own, chosen, lack = self._quickest(self.problems[at], whole, 1)
            setups[at], lacking[at] = setup_at(own, int(chosen[0])), float(lack[0])
        return _Try(best.fixed, tuple(setups), tuple(lacking), (round(sum(lacking), 6), best.rank[1]))

    def _best(
        self, rows: Values
    ) -> tuple[list[tuple[Setup, ...]], list[tuple[float, ...]], list[tuple[float, float]]]:
        """For each fixed rework every driver's setup and lack, and its rank: lack of all together, then minutes."""
        count, ways = size(rows), size(self.free)
        whole = {path: np.repeat(value, ways) for path, value in rows.items()}
        whole |= {path: np.tile(value, count) for path, value in self.free.items()}
        each = [self._quickest(problem, whole, count) for problem in self.problems]
        setups = [tuple(setup_at(own, int(at[row])) for own, at, _ in each) for row in range(count)]
        lacking = [tuple(float(lack[row]) for _, _, lack in each) for row in range(count)]
        cost = self.problems[0].cost(rows)
        ranks = [(round(sum(lack), 6), float(cost[row])) for row, lack in enumerate(lacking)]
        return setups, lacking, ranks

    def _quickest(self, problem: Problem, whole: Values, count: int) -> tuple[Setup, np.ndarray, Floats]:
        """Every way of setting the car for one driver, and which of them suits best with each fixed rework."""
        own = {**whole, **self._own_pads(problem, whole)}
        lacking = problem.lacking(own).reshape(count, -1)
        cost = problem.cost(own).reshape(count, -1)
        best = np.lexsort((np.round(cost, 6), lacking), axis=1)[:, 0]
        rows = np.arange(count)
        return setup_of(own), rows * lacking.shape[1] + best, lacking[rows, best]

    def _own_pads(self, problem: Problem, whole: Values) -> dict[str, Floats]:
        """The shortest pads of his own that bend the driver's knees enough."""
        pads, places = {}, setup_of(whole)
        for path, variable in self.pads.items():
            name = path.removesuffix(PAD)
            knees = Knees(problem, name, places)
            arm = knees.nothing + whole.get(f"{name}.longer_arm", 0.0)
            pads[path] = least(partial(knees.excess, longer_arm=arm), variable, knees.nothing)
        return pads


def _few(path: str) -> int:
    return COARSE.get(path, TRIES)


def _crossed(places: Mapping[str, Floats]) -> dict[str, Floats]:
    return crossed(places) if places else {"seat_travel": np.zeros(1)}


def _near(each: Variable, setup: Setup, level: int) -> Floats:
    """A variable's places about what a driver has it at, closer with each level; that one and as found among them."""
    now, places = float(value_at(setup, each.path)[0]), each.places()
    near = places[np.abs(places - now) <= (each.high - each.low) / 2**level + HAIR]
    return np.unique([*spaced(near, _few(each.path)), now, 0.0])


def _fixed_of(setup: Setup, crew: _Crew) -> dict[str, float]:
    return {path: float(value_at(setup, path)[0]) for path in PATHS if path in crew.fixed}
