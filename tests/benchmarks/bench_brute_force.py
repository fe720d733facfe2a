"""The solver against the whole grid of random tasks: how often it is worse, and how long both take."""

import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "fit"))

from fit_tasks import coarse_problem, whole_grid

from fitcalc.fit.solve import rework_of, searched


def run(count):
    worse, passing, rows, spent = 0, 0, 0, np.zeros(2)
    for seed in range(count):
        problem = coarse_problem(seed)
        grid = whole_grid(problem)
        start = time.perf_counter()
        lacking, cost = problem.lacking(grid), np.round(problem.cost(grid), 6)
        best = np.lexsort((cost, lacking))[0]
        middle = time.perf_counter()
        found = rework_of(searched(problem)[0], 0)
        spent += middle - start, time.perf_counter() - middle
        is_worse = (round(found.lacking, 6), round(found.effort, 6)) > (lacking[best] + 1e-6, cost[best])
        if is_worse:
            print(
                f"seed {seed}: lacks {found.lacking - lacking[best]:.3f}, takes {found.effort - cost[best]:.1f} more"
            )
        worse, passing, rows = worse + is_worse, passing + (lacking[best] == 0), rows + len(cost)
    print(f"{count} tasks, {rows} reworks in all, {passing} can pass; solver worse in {worse}")
    print(f"whole grid {spent[0]:.0f} s, solver {spent[1]:.0f} s")


if __name__ == "__main__":
    run(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
