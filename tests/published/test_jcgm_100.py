"""JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM), Annex H.1: end-gauge calibration.

Second-hand: components as in the documentation of a public uncertainty library and a second open test suite.
"""

import numpy as np
import pytest

from fitcalc.fit.propagation import spread_of

pytestmark = pytest.mark.published

STANDARD, EXPANSION, OFF = 50_000_623.0, 11.5e-6, -0.1


def gauge(inputs):
    """Length of the gauge, nm: standard, difference, and what expansion and temperature differ."""
    standard, difference, expansion, warmer = inputs
    return standard + difference - standard * (expansion * OFF + EXPANSION * warmer)


def test_length_of_the_gauge_and_its_uncertainty():
    """Printed 50 000 838 nm and 32 nm; 100,000 draws leave 0.1 nm in each."""
    expected = np.array([STANDARD, 215.0, 0.0, 0.0])
    u = np.array([25.0, 9.7, 1e-6 / np.sqrt(3.0), 0.05 / np.sqrt(3.0)])
    drawn = np.random.default_rng(1).standard_normal((4, 100_000)) * u[:, None]
    found = spread_of(gauge(expected[:, None] + drawn))
    assert found.mean == pytest.approx(50_000_838.0, abs=0.5)
    assert found.u == pytest.approx(32.0, abs=0.6)


def test_difference_of_the_two_gauges():
    """Parts of 5.8, 3.9 and 6.7 nm; printed 9.7."""
    drawn = np.random.default_rng(2).standard_normal((3, 100_000)) * np.array([[5.8], [3.9], [6.7]])
    assert spread_of(drawn.sum(axis=0)).u == pytest.approx(9.7, abs=0.1)
