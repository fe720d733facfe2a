"""Least time of several runs, and the sample everybody is timed on."""

import time
from typing import NamedTuple

import numpy as np

from fitcalc.body.links import links_for
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.cases import setup_of
from fitcalc.fit.chunks import CHUNK
from fitcalc.fit.variables import variables_for

CAR, ROBIN = load_car(sample_path("hillclimb")), load_driver(sample_path("robin"))
LINKS = links_for(ROBIN)


class Spent(NamedTuple):
    """Seconds by the clock, and of this process on all its threads, which other work on the machine lengthens less."""

    clock: float
    processor: float


def spent(run, times=3):
    """The least of several runs, each way of counting by itself."""
    found = []
    for _ in range(times):
        clock, processor = time.perf_counter(), time.process_time()
        run()
        found.append((time.perf_counter() - clock, time.process_time() - processor))
    return Spent(*map(min, zip(*found, strict=True)))


def least(run, times=3):
    """Seconds of the fastest of several runs, by the clock."""
    return spent(run, times).clock


def reworks(count, seed=1):
    """So many different reworks of the sample car."""
    random = np.random.default_rng(seed)
    return setup_of({each.path: random.uniform(each.low, each.high, count) for each in variables_for(CAR)})


def in_chunks(count):
    """The same in parts as large as `fit.chunks` takes at a time."""
    return [reworks(min(CHUNK, count - start), seed=start + 1) for start in range(0, count, CHUNK)]
