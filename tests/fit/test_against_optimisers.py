"""Independent: the solver against scipy's differential evolution on the same task, from 5 starting populations.

The optimiser moves everything freely, while the solver keeps to holes and whole millimetres: the optimiser's is the
easier task, so the solver may pay for half a step of every variable. Nelder-Mead from 20 starts takes a minute a task
and stands in `tests/benchmarks/bench_optimisers.py`.
"""

import numpy as np
import pytest
from fit_tasks import random_task, score, value_of
from scipy.optimize import differential_evolution

from fitcalc.checks.head import head_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.fit.problem import problem_of
from fitcalc.fit.solve import rework_of, searched


def evolved(problem, seed):
    bounds = [(each.low, each.high) for each in problem.variables]
    with np.errstate(all="ignore"):
        return differential_evolution(
            lambda x: score(problem, np.atleast_2d(x.T).T),
            bounds,
            rng=seed,
            maxiter=12,
            popsize=6,
            polish=False,
            vectorized=True,
            updating="deferred",
        ).fun


@pytest.mark.parametrize("seed", [0, 3])
def test_evolutions_find_nothing_better(seed):
    problem = problem_of(*random_task(seed), measures=(posture_figures, leg_figures, head_figures))
    setup = rework_of(searched(problem)[0], 0).setup
    own = score(problem, np.array([[value_of(setup, each.path)] for each in problem.variables]))[0]
    half_steps = 0.5 * sum(each.per_unit * each.step for each in problem.variables)
    assert own <= min(evolved(problem, start) for start in range(5)) + half_steps
