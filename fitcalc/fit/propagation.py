"""Uncertainty carried through a model by drawing.

Source: JCGM 101:2008 (Supplement 1 to the GUM) 7.5-7.7.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.units import Floats


@dataclass(frozen=True, eq=False)
class Spread:
    """What draws of a figure say.

    Attributes:
        mean, u: average and standard deviation.
        low, high: ends of the interval with equal tails.
    """

    mean: float
    u: float
    low: float
    high: float


def spread_of(draws: Floats, coverage: float = 0.90) -> Spread:
    """Average, standard deviation and interval of drawn figures.

    Source: JCGM 101:2008 7.6 and 7.7.
    """
    tail = (1.0 - coverage) / 2.0
    low, high = np.quantile(draws, [tail, 1.0 - tail])
    return Spread(float(np.mean(draws)), float(np.std(draws, ddof=1)), float(low), float(high))


def within(random: np.random.Generator, half_width: float | Floats, count: int) -> Floats:
    """Draws of an error known only to lie within plus or minus a half width, `(count,)`.

    Source: JCGM 101:2008 6.4.2, rectangular; its standard deviation is half width / sqrt(3) (JCGM 100:2008 4.3.7).
    """
    return half_width * random.uniform(-1.0, 1.0, count)
