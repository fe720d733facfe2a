"""JCGM 101:2008, Evaluation of measurement data, Supplement 1 to the GUM: propagation by a Monte Carlo method.

9.2.2 Table 2 and 9.2.3 Table 3: Y = X1 + X2 + X3 + X4, every X of mean 0 and standard deviation 1, normal and
rectangular; mean, standard uncertainty and the shortest 95 % interval. Values second-hand, from an open metrology test
suite of a national laboratory.
"""

import numpy as np
import pytest

from fitcalc.fit.propagation import spread_of, within

DRAWS = 1_000_000
SEED = 20

pytestmark = pytest.mark.published


def total(inputs):
    return inputs.sum(axis=0)


def normal(random):
    return random.standard_normal((4, DRAWS))


def rectangular(random):
    return np.stack([within(random, np.sqrt(3.0), DRAWS) for _ in range(4)])


@pytest.mark.parametrize(("draw", "high"), [(normal, 3.92), (rectangular, 3.88)])
def test_sum_of_four(draw, high):
    """Two figures are printed; a million draws scatter by 0.005 at the ends of the interval."""
    figures = total(draw(np.random.default_rng(SEED)))
    found = spread_of(figures, 0.95)
    assert (found.mean, found.u) == pytest.approx((0.0, 2.0), abs=0.01)
    assert (found.low, found.high) == pytest.approx((-high, high), abs=0.02)
