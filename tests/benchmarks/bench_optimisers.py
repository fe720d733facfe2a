"""Independent: the solver against scipy's Nelder-Mead from 20 starts on the same tasks; a minute for each task."""

import sys
from pathlib import Path

import numpy as np
from scipy.optimize import minimize

sys.path.insert(0, str(Path(__file__).parents[1] / "fit"))

from fit_tasks import random_task, score, value_of

from fitcalc.checks.head import head_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.fit.problem import problem_of
from fitcalc.fit.solve import rework_of, searched


def run(count):
    for seed in range(count):
        problem = problem_of(*random_task(seed), measures=(posture_figures, leg_figures, head_figures))
        setup = rework_of(searched(problem)[0], 0).setup
        own = score(problem, np.array([[value_of(setup, each.path)] for each in problem.variables]))[0]
        random, bounds = np.random.default_rng(seed), [(each.low, each.high) for each in problem.variables]
        starts = [[random.uniform(*span) for span in bounds] for _ in range(20)]
        scores = [
            minimize(
                lambda x, task=problem: score(task, x[:, None])[0],
                start,
                method="Nelder-Mead",
                bounds=bounds,
                options={"maxfev": 150},
            ).fun
            for start in starts
        ]
        print(
            f"task {seed}: solver {own:.2f}, best of 20 starts {min(scores):.2f}, median {np.median(scores):.2f}"
        )


if __name__ == "__main__":
    run(int(sys.argv[1]) if len(sys.argv) > 1 else 5)
