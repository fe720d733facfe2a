"""The task that a solver works on: who, where, what may change, what must hold."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from fitcalc.body.links import Links, links_for
from fitcalc.checks.catalogue import MEASURES, Measure
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.fit.cases import setup_of
from fitcalc.fit.sweep import NO_GUARDS, required_room, sweep
from fitcalc.fit.variables import AS_GIVEN, Variable, variables_for
from fitcalc.units import Floats

Values = Mapping[str, Floats]
"""Reworks over cases, by path of the setup."""
SAME = 1e-6
"""Figures that differ by less, mm or deg, count as unmoved."""
PROBES, PROBE_SEED = 60, 1
"""So many reworks anywhere within the spans are looked at; the same ones every time."""


@dataclass(frozen=True, eq=False)
class Problem:
    """One driver in one car.

    Attributes:
        settled: ids of checks that nothing in `variables` moves; they are told, and not solved for.
        measures: which figures are held against their limits.
        guards: how much each check must have to spare, by id.
    """

    car: Car
    driver: Driver
    links: Links
    rules: str | None
    variables: tuple[Variable, ...]
    settled: frozenset[str]
    measures: Sequence[Measure]
    guards: Mapping[str, float]

    def lacking(self, values: Values, measures: Sequence[Measure] | None = None) -> Floats:
        """What all that must hold lacks together, mm and deg alike, `(n,)`; 0 = passes."""
        wanted = self.measures if measures is None else [each for each in measures if each in self.measures]
        if not wanted:
            return np.zeros(size(values))
        swept = sweep(self.car, self.driver, setup_of(values), self.links, self.rules, wanted)
        return np.broadcast_to(np.round(swept.lacking(self.settled, self.guards), 6), (size(values),))

    def cost(self, values: Values) -> Floats:
        """Minutes that the reworks take, `(n,)`."""
        parts = [each.cost(values[each.path]) for each in self.variables if each.path in values]
        return np.broadcast_to(np.sum(np.broadcast_arrays(*parts, 0.0), axis=0), (size(values),))

    def variable(self, path: str) -> Variable | None:
        """The variable of this path, where it may change."""
        return next((each for each in self.variables if each.path == path), None)


def problem_of(
    car: Car,
    driver: Driver,
    rules: str | None = None,
    effort: Effort = AS_GIVEN,
    measures: Sequence[Measure] = MEASURES,
    guards: Mapping[str, float] = NO_GUARDS,
) -> Problem:
    """The task of fitting one driver to one car with everything that its file lets move."""
    links, variables = links_for(driver), variables_for(car, effort)
    bare = Problem(car, driver, links, rules, variables, frozenset(), measures, NO_GUARDS)
    return replace(bare, settled=_settled(bare), guards=guards)


def size(values: Values) -> int:
    """How many reworks there are."""
    return max((len(value) for value in values.values()), default=1)


def picked(values: Values, at: np.ndarray) -> dict[str, Floats]:
    """Some of the reworks."""
    return {path: np.broadcast_to(value, (size(values),))[at] for path, value in values.items()}


def _settled(problem: Problem) -> frozenset[str]:
    """Checks that stay as they are wherever the variables go: each to its ends, all to theirs, and all anywhere.

    A leg that does not reach its pedal stays straight until seat, box and bar all come nearer: so the ends together.
    """
    if not problem.variables:
        return frozenset()
    low = np.array([each.low for each in problem.variables])
    high = np.array([each.high for each in problem.variables])
    ends = np.concatenate([np.diag(low), np.diag(high), [low, high, low / 2, high / 2, 0.0 * low]])
    anywhere = low + (high - low) * np.random.default_rng(PROBE_SEED).random((PROBES, len(low)))
    columns = np.concatenate([ends, anywhere]).T
    probes = {each.path: column for each, column in zip(problem.variables, columns, strict=True)}
    swept = sweep(
        problem.car, problem.driver, setup_of(probes), problem.links, problem.rules, problem.measures
    )
    rooms = {check.id: required_room(check) for _, check in swept.each()}
    return frozenset(id for id, room in rooms.items() if room is None or np.ptp(room) < SAME)
