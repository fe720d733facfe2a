"""What a person waits for: evaluate, fit, solve, trade map, certainty, coverage, on the samples.

By the clock, and of the processor, which other work on the machine lengthens less; the least of some runs. With
"quick", without the solver.
"""

import sys

import numpy as np
from timing import CAR, ROBIN, spent

from fitcalc.documents.samples import sample_cars, sample_drivers, sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.certainty import certainty
from fitcalc.fit.coverage import coverage
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.rework import fit
from fitcalc.fit.robust import robust
from fitcalc.fit.shared import share
from fitcalc.fit.solve import solve
from fitcalc.fit.trade import MapOptions, trade_map
from fitcalc.fit.variables import variables_for

OTTO = load_driver(sample_path("otto"))


def row(name, goal, run, times):
    """One row of the table: what, clock and processor, goal."""
    clock, processor = spent(run, times)
    print(f"| {name} | {clock * 1e3:,.0f} ms | {processor * 1e3:,.0f} ms | {goal} |", flush=True)


def fits(quick):
    for name in sample_cars():
        car = load_car(sample_path(name))
        for person in sample_drivers() if not quick else ["robin"]:
            driver = load_driver(sample_path(person))
            row(f"fit, {name} and {person}", "100 ms", lambda c=car, d=driver: fit(c, d), 7)
            if not quick:
                row(f"solve, {name} and {person}", "-", lambda c=car, d=driver: solve(c, d), 1)


def run(quick=False):
    print("| what | clock | processor | goal |")
    print("|---|---|---|---|")
    row("evaluate, one case", "-", lambda: evaluate(CAR, ROBIN), 20)
    fits(quick)
    allowed = {each.path: np.linspace(each.low, each.high, 200) for each in variables_for(CAR)}
    axes = tuple((path, allowed[path]) for path in ("seat_travel", "brake.stand_off"))
    closed = MapOptions(meshed=False)
    row(
        "trade map 200 x 200, limits in closed form",
        "250 ms",
        lambda: trade_map(CAR, ROBIN, Setup(), axes, closed),
        5,
    )
    row("the same with the others from a mesh", "-", lambda: trade_map(CAR, ROBIN, Setup(), axes), 5)
    best = fit(CAR, ROBIN).after.setup
    row("certainty, 100,000 draws", "2,000 ms", lambda: certainty(CAR, ROBIN, best), 3)
    row("coverage, 300 bodies", "-", lambda: coverage(CAR, "male"), 1)
    if not quick:
        row("rework that passes with 0.9", "-", lambda: robust(CAR, ROBIN, 0.9), 1)
        row("one car for two drivers", "-", lambda: share(CAR, [ROBIN, OTTO]), 1)


if __name__ == "__main__":
    run("quick" in sys.argv)
