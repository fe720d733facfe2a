"""What the calculation expects of figures that are measured after the work: values, and their 90 % intervals."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.certainty import FEW, Sampling, chunk_seed
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.propagation import spread_of
from fitcalc.fit.result import Result
from fitcalc.fit.tolerances import drawn
from fitcalc.units import Floats

Readout: TypeAlias = Callable[[Result], Floats]
"""From a result over n cases the m figures that were read, `(m, n)`."""


@dataclass(frozen=True, eq=False)
class Work:
    """One state of a car with a driver in it."""

    car: Car
    driver: Driver
    made: Setup
    rules: str | None = None


def interval(work: Work, read: Readout, draws: int = FEW) -> tuple[Floats, Floats]:
    """Ends of the 90 % interval of each figure, `(m,)` each: what tape and estimates leave open.

    The cars and bodies are those that `certainty` draws first, so that both tell the same interval.

    Args:
        work: as made.
        read: names the m figures.
        draws: how many cars and bodies.
    """
    cases = drawn(work.car, work.driver, draws, chunk_seed(Sampling().seed, 0))
    rows = read(evaluate(cases.car, work.driver, work.made, work.rules, cases.links))
    spreads = [spread_of(np.broadcast_to(row, (draws,))) for row in rows]
    return np.array([each.low for each in spreads]), np.array([each.high for each in spreads])
