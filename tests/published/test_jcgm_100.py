"""JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM), Annex H.1: end-gauge calibration.

Second-hand: components as in the documentation of a public uncertainty library and a second open test suite.
nu_eff 16.7 is truncated to 16 there.
"""

import numpy as np
import pytest

from fitcalc.fit.propagation import effective_freedom, first_order

pytestmark = pytest.mark.published

DIFFERENCE = {"u": [5.8, 3.9, 6.7], "freedom": [24, 5, 8]}
STANDARD, EXPANSION, OFF = 50_000_623.0, 11.5e-6, -0.1


def gauge(inputs):
    """Length of the gauge, nm: standard, difference, and what expansion and temperature differ."""
    standard, difference, expansion, warmer = inputs
    return standard + difference - standard * (expansion * OFF + EXPANSION * warmer)


def budget():
    expected = np.array([STANDARD, 215.0, 0.0, 0.0])
    u = np.array([25.0, 9.7, 1e-6 / np.sqrt(3.0), 0.05 / np.sqrt(3.0)])
    return first_order(gauge, expected, u)


def test_difference_of_the_two_gauges():
    combined = first_order(lambda inputs: inputs.sum(axis=0), np.zeros(3), np.array(DIFFERENCE["u"]))
    assert combined.u == pytest.approx(9.7, abs=0.05)
    assert effective_freedom(combined.parts, DIFFERENCE["freedom"]) == pytest.approx(25.6, abs=0.3)


def test_length_of_the_gauge():
    assert budget().value == pytest.approx(50_000_838.0, abs=0.5)


def test_combined_uncertainty_of_the_length():
    assert budget().u == pytest.approx(32.0, abs=0.5)


def test_effective_degrees_of_freedom():
    """Printed from parts rounded to two figures; the unrounded ones give 16.75."""
    found = effective_freedom(budget().parts, [18, 25.6, 50, 2])
    assert found == pytest.approx(16.7, abs=0.1)
