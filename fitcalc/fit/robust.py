"""The least rework that passes with a chosen probability.

Every check is asked to hold with so much to spare as its own scatter takes from it in all but a part of the drawn cars and
bodies. The part is halved in on: smaller where the checks together do not reach the probability, larger where no rework
has that much to spare, or where a smaller spare may do. What is not likely enough then is made likelier step by step.
"""

from dataclasses import dataclass, replace

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS
from fitcalc.fit.certainty import FEW, Certainty, Sampling, certainty
from fitcalc.fit.likelier import likelier
from fitcalc.fit.problem import Problem, problem_of
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.solve import Rework, Solution, rework_of, searched, solved
from fitcalc.fit.sweep import NOT_THERE
from fitcalc.fit.variables import AS_GIVEN, HAIR, value_at

ROUNDS = 4
SEARCHED = 0.6
"""Part of the work that the searches take."""
LEAST, MOST = 0.5, 0.999
"""Between these the probability asked of each single check is looked for."""


@dataclass(frozen=True, eq=False)
class Robust:
    """A rework and the probability, 0 to 1, that all that can be moved holds with it.

    Attributes:
        reached: whether that is as much as was asked for.
        certainty: of that rework.
    """

    solution: Solution
    probability: float
    reached: bool
    certainty: Certainty


def robust(
    car: Car,
    driver: Driver,
    probability: float,
    rules: str | None = None,
    effort: Effort = AS_GIVEN,
    progress: Progress = unheeded,
) -> Robust:
    """Find the rework.

    Args:
        car: as measured, with tolerances.
        driver: as measured.
        probability: asked for, 0.5 to 0.99.
        rules: id of the limit set; the car's own when None.
        effort: the user's own spans, steps and minutes.
        progress: told the part done; answers whether to go on.
    """
    problem = problem_of(car, driver, rules, effort)
    plain = solved(problem)
    found = [_judged(problem, plain, probability)]
    low, high, each = LEAST, MOST, 1.0 - (1.0 - probability) / 2.0
    for done in range(ROUNDS if plain.passes and not found[0].reached else 0):
        if not progress(SEARCHED * (done + 1) / (ROUNDS + 1)):
            return min(found, key=_rank)
        guarded = replace(problem, guards=spare(found[-1].certainty, problem, each))
        tried, complete = searched(guarded)
        rework = rework_of(tried, 0)
        solution = Solution(rework, (), problem.settled, None, complete)
        found.append(_judged(problem, solution, probability))
        enough = found[-1].reached or rework.lacking > HAIR
        low, high = (low, each) if enough else (each, high)
        each = (low + high) / 2.0
    best = min(found, key=_rank)
    if plain.passes and not best.reached:
        found.append(_made_likelier(problem, (best, plain.best.setup), probability, progress))
    progress(1.0)
    return min(found, key=_rank)


def _made_likelier(
    problem: Problem, known: tuple[Robust, Setup], probability: float, progress: Progress
) -> Robust:
    """The best so far moved step by step; known besides is what passes as measured."""
    best, plain = known

    def later(done: float) -> bool:
        return progress(SEARCHED + (1.0 - SEARCHED) * done)

    setup = likelier(problem, best.solution.best.setup, plain, probability, later)
    values = {path: value_at(setup, path) for path in PATHS}
    changes = tuple(path for path in PATHS if abs(values[path][0]) > HAIR)
    rework = Rework(setup, float(problem.cost(values)[0]), float(problem.lacking(values)[0]), changes)
    return _judged(problem, replace(best.solution, best=rework), probability)


def _rank(one: Robust) -> tuple[bool, float, float]:
    """Those that reach what was asked for ahead, by least effort; then the likeliest."""
    effort = one.solution.best.effort
    return (False, effort, -one.probability) if one.reached else (True, -one.probability, effort)


def spare(scatter: Certainty, problem: Problem, probability: float) -> dict[str, float]:
    """How far each check's margin falls below its middle with this probability, mm or deg."""
    moved = {
        id: room
        for id, room in scatter.rooms.items()
        if id not in problem.settled and np.ptp(room) > 0.0 and np.max(room) < NOT_THERE
    }
    return {id: float(np.median(room) - np.quantile(room, 1.0 - probability)) for id, room in moved.items()}


def _judged(problem: Problem, solution: Solution, probability: float) -> Robust:
    setup = solution.best.setup
    scatter = certainty(problem.car, problem.driver, setup, problem.rules, Sampling(draws=FEW))
    held = holds_together(scatter, problem)
    return Robust(solution, held, held >= probability, scatter)


def holds_together(scatter: Certainty, problem: Problem) -> float:
    """Probability that every check that a rework can move holds."""
    rooms = [room >= 0.0 for id, room in scatter.rooms.items() if id not in problem.settled]
    return float(np.mean(np.all(rooms, axis=0))) if rooms else 1.0
