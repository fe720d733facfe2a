"""A rework made likelier to pass: one change after another is moved a little while that helps, on the same drawn cars.

Only measures of which some check fails in some draw are looked at on the way; what comes of it is judged in full, on
other draws, by whoever asked.
"""

from collections.abc import Sequence

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.catalogue import MEASURES, Measure
from fitcalc.checks.judge import is_reclined, judge
from fitcalc.checks.limits import load_limit_set, workshop_limits
from fitcalc.checks.posture_limits import with_posture
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, setup_at, setup_of
from fitcalc.fit.problem import Problem
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.sweep import required_room
from fitcalc.fit.tolerances import drawn
from fitcalc.fit.variables import Variable, value_at
from fitcalc.posture.sit import sit
from fitcalc.units import Bools

DRAWS, SEED = 400, 7
"""A share is known within about 2 % then; the seed is not that of `certainty`, which has the last word."""
GAPS = (6.0, 18.0)
"""Steps are these parts of a variable's span, first and then."""
HARDLY = 0.005
"""A change that adds less to the share is not worth its work."""
SURE = 1.0 - 1e-9


class _Draws:
    """Cars and bodies that agree with the measurements, and in how many of them a rework passes."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.cases = drawn(problem.car, problem.driver, DRAWS, SEED)
        workshop = with_posture(workshop_limits(), problem.driver)
        self.sets = load_limit_set(problem.rules or problem.car.rules), workshop

    def holding(self, setup: Setup, measures: Sequence[Measure]) -> Bools:
        """Where everything that these measures look at and that can be moved holds, `(n,)`."""
        car, links = self.cases.car, self.cases.links
        case = Case(car, self.problem.driver, links, setup, sit(car, links, setup))
        figures = [figure for measure in measures for figure in measure(case)]
        checks = judge(figures, *self.sets, is_reclined(case))
        rooms = [required_room(check) for check in checks if check.id not in self.problem.settled]
        held = [np.ones(DRAWS, dtype=bool), *(room >= 0.0 for room in rooms if room is not None)]
        return np.asarray(np.all(np.broadcast_arrays(*held), axis=0))

    def share(self, setup: Setup, measures: Sequence[Measure]) -> float:
        """Share of the draws in which it passes."""
        return float(np.mean(self.holding(setup, measures)))

    def telling(self, setup: Setup) -> list[Measure]:
        """Measures that some draw fails."""
        return [each for each in MEASURES if self.share(setup, [each]) < SURE]


def likelier(
    problem: Problem, start: Setup, plain: Setup, wanted: float = 1.0, progress: Progress = unheeded
) -> Setup:
    """A rework near another one that passes at least as often.

    Args:
        problem: the task.
        start: where to begin.
        plain: the least rework that passes as measured; what helps next to nothing goes back to it.
        wanted: share of the draws, 0 to 1, that is enough.
        progress: told the part done; answers whether to go on.
    """
    draws = _Draws(problem)
    measures = draws.telling(start)
    best, share = start, draws.share(start, measures)
    steps = [(each, part) for part in GAPS for each in problem.variables]
    for done, (each, part) in enumerate(steps):
        if share >= wanted or not progress(done / len(steps)):
            break
        for moved in _beside(best, each, part):
            reached = draws.share(moved, measures)
            if reached > share:
                best, share = moved, reached
    return _pruned(draws, best, plain, min(share, wanted), measures)


def _pruned(draws: _Draws, best: Setup, plain: Setup, share: float, measures: Sequence[Measure]) -> Setup:
    """Without the changes that hardly help."""
    for each in draws.problem.variables:
        bare = _with(best, each.path, float(value_at(plain, each.path)[0]))
        if bare != best and draws.share(bare, measures) >= share - HARDLY:
            best = bare
    return best


def _beside(setup: Setup, each: Variable, part: float) -> list[Setup]:
    """The rework with one change a step more and a step less, in places that can be set."""
    now, places = float(value_at(setup, each.path)[0]), each.places()
    gap = max((each.high - each.low) / part, each.step)
    near = {float(places[np.argmin(np.abs(places - (now + way * gap)))]) for way in (1.0, -1.0)}
    return [_with(setup, each.path, value) for value in sorted(near - {now})]


def _with(setup: Setup, path: str, value: float) -> Setup:
    values = {other: value_at(setup, other)[:1] for other in PATHS}
    return setup_at(setup_of(values | {path: np.array([value])}), 0)
