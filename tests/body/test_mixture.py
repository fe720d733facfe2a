"""Quantiles of a mixture beside an independent library.

Independent: scipy.stats.norm and scipy.optimize.brentq on the mixture's distribution function.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from scipy.stats import norm

from fitcalc.body.mixture import Mixture

shares = st.floats(1e-6, 1 - 1e-6)
means = st.floats(-80, 80)
spreads = st.floats(0.5, 40)


def mixture(share, mean, spread):
    weights = np.array([[share, 1 - share]])
    return Mixture(weights, np.array(mean)[None, :, None], np.array(spread)[:, None])


@given(share=shares, mean=st.tuples(means, means), spread=st.tuples(spreads, spreads))
def test_interval_ends_leave_five_percent_on_each_side(share, mean, spread):
    low, high = mixture(share, mean, spread).interval()

    @np.errstate(under="ignore")
    def below(value):
        return share * norm.cdf(value, mean[0], spread[0]) + (1 - share) * norm.cdf(value, mean[1], spread[1])

    expected = [brentq(lambda at, p=p: below(at) - p, -1000, 1000, xtol=1e-9) for p in (0.05, 0.95)]
    reached = [below(low[0, 0]), below(high[0, 0])]
    near = np.abs([low[0, 0] - expected[0], high[0, 0] - expected[1]]) < 1e-2
    level = (
        np.abs(np.array(reached) - [0.05, 0.95]) < 1e-6
    )  # between far components the quantile is a plateau
    assert np.all(near | level)


def test_single_component_is_the_normal_interval():
    low, high = Mixture(np.ones((1, 1)), np.full((1, 1, 1), 10.0), np.full((1, 1), 2.0)).interval()
    assert [low[0, 0], high[0, 0]] == pytest.approx(norm.ppf([0.05, 0.95], 10, 2), abs=1e-12)


def test_mean_and_spread_are_those_of_draws():
    ours = mixture(0.3, (0.0, 20.0), (5.0, 8.0))
    random = np.random.default_rng(0)
    drawn = np.where(
        random.random(200_000) < 0.3, random.normal(0, 5, 200_000), random.normal(20, 8, 200_000)
    )
    assert ours.mean()[0, 0] == pytest.approx(drawn.mean(), abs=0.1)
    assert ours.spread()[0, 0] == pytest.approx(drawn.std(), rel=0.01)


def test_certain_value_has_no_width():
    low, high = Mixture(np.array([[0.4, 0.6]]), np.full((1, 2, 1), 7.0), np.zeros((2, 1))).interval()
    assert (low[0, 0], high[0, 0]) == (7.0, 7.0)
