"""The solver against every rework there is, on tasks whose whole grid can be tried.

200 seeds were run once with `tests/benchmarks/bench_brute_force.py` (table in docs/speed.md); so many take minutes, and
a few stand here.
"""

import numpy as np
import pytest
from fit_tasks import coarse_problem, whole_grid

from fitcalc.fit.solve import rework_of, searched

SEEDS = range(3)


def best_of_all(problem):
    grid = whole_grid(problem)
    lacking, cost = problem.lacking(grid), problem.cost(grid)
    best = np.lexsort((np.round(cost, 6), lacking))[0]
    return lacking[best], cost[best]


@pytest.mark.parametrize("seed", SEEDS)
def test_no_rework_of_the_whole_grid_is_better(seed):
    problem = coarse_problem(seed)
    lacking, cost = best_of_all(problem)
    found = rework_of(searched(problem)[0], 0)
    assert found.lacking <= lacking + 1e-6
    if found.lacking == pytest.approx(lacking, abs=1e-6):
        assert found.effort <= cost + 1e-6
