"""Any number of cases in bounded memory: `evaluate` on so many at a time, on both cores."""

from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, setup_of, taken
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.result import Result
from fitcalc.fit.variables import value_at

CHUNK = 4_000
"""Cases at a time: their arrays still fit the processor's cache, which makes a case cheaper than in one large call."""
WORKERS = 2
"""Chunks worked out side by side: numpy lets go of the interpreter while it works on arrays as long as these."""


def evaluated(
    car: Car,
    driver: Driver,
    setup: Setup,
    links: Links,
    rules: str | None = None,
    progress: Progress = unheeded,
) -> Iterator[tuple[slice, Result]]:
    """The results of many cases, chunk by chunk, each with its place among the cases.

    Args:
        car: as found, one.
        driver: whose kit and wishes count.
        setup: numbers may be arrays over the cases.
        links: one body, or one per case.
        rules: id of the limit set; the car's own when None.
        progress: told the part done; answers whether to go on.
    """
    values = {path: value_at(setup, path) for path in PATHS}
    count = max(len(links.stature), *(len(value) for value in values.values()))
    places = [slice(start, min(start + CHUNK, count)) for start in range(0, count, CHUNK)]

    def work(place: slice) -> Result:
        at = np.arange(place.start, place.stop)
        some = {path: np.broadcast_to(value, (count,))[place] for path, value in values.items()}
        return evaluate(car, driver, setup_of(some), rules, taken(links, at))

    with ThreadPoolExecutor(WORKERS) as pool:
        for start in range(0, len(places), WORKERS):
            together = places[start : start + WORKERS]
            for place, result in zip(together, pool.map(work, together), strict=True):
                yield place, result
                if not progress(place.stop / count):
                    return
