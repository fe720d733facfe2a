"""The least rework that passes with a chosen probability.

Every check is asked to hold with so much to spare as its own scatter takes from it; the spare is enlarged until all
checks together reach the probability, or it stops helping.
"""

from dataclasses import dataclass, replace

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.fit.certainty import FEW, Certainty, Sampling, certainty
from fitcalc.fit.problem import Problem, problem_of
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.solve import Solution, solved
from fitcalc.fit.sweep import NOT_THERE
from fitcalc.fit.variables import AS_GIVEN

ROUNDS = 3


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
    found = [_round(problem, problem, probability)]
    each = 1.0 - (1.0 - probability) / 2.0
    for at in range(ROUNDS):
        if found[-1].reached or not progress((at + 1) / (ROUNDS + 1)):
            break
        guards = spare(found[-1].certainty, problem, each)
        found.append(_round(problem, replace(problem, guards=guards), probability))
        each = 1.0 - (1.0 - each) / 2.0
    progress(1.0)
    return max(found, key=lambda one: (one.reached, one.probability))


def spare(scatter: Certainty, problem: Problem, probability: float) -> dict[str, float]:
    """How far each check's margin falls below its middle with this probability, mm or deg."""
    moved = {
        id: room
        for id, room in scatter.rooms.items()
        if id not in problem.settled and np.ptp(room) > 0.0 and np.max(room) < NOT_THERE
    }
    return {id: float(np.median(room) - np.quantile(room, 1.0 - probability)) for id, room in moved.items()}


def _round(problem: Problem, guarded: Problem, probability: float) -> Robust:
    solution = solved(guarded)
    scatter = certainty(problem.car, problem.driver, solution.best.setup, problem.rules, Sampling(draws=FEW))
    held = holds_together(scatter, problem)
    return Robust(solution, held, held >= probability, scatter)


def holds_together(scatter: Certainty, problem: Problem) -> float:
    """Probability that every check that a rework can move holds."""
    rooms = [room >= 0.0 for id, room in scatter.rooms.items() if id not in problem.settled]
    return float(np.mean(np.all(rooms, axis=0))) if rooms else 1.0
