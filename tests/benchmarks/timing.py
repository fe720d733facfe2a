"""Least time of several runs, and the sample everybody is timed on."""

import time

import numpy as np

from fitcalc.body.links import links_for
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.cases import setup_of
from fitcalc.fit.variables import variables_for

CAR, ROBIN = load_car(sample_path("hillclimb")), load_driver(sample_path("robin"))
LINKS = links_for(ROBIN)


def least(run, times=3):
    """Seconds of the fastest of several runs."""
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        run()
        spent.append(time.perf_counter() - start)
    return min(spent)


def reworks(count, seed=1):
    """So many different reworks of the sample car."""
    random = np.random.default_rng(seed)
    return setup_of({each.path: random.uniform(each.low, each.high, count) for each in variables_for(CAR)})
