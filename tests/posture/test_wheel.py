"""The steering wheel's rim: its ends lie in its plane, a diameter apart."""

import numpy as np
import pytest

from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import length
from fitcalc.posture.cases import cases_in, spread
from fitcalc.posture.wheel import highest_rim, lowest_rim, toward_driver, wheel_centre
from tests.posture.cars import car, links

WHEEL, SPACED = car().steering_wheel, Setup(wheel_spacer=20.0)


def test_highest_and_lowest_point_are_a_rim_diameter_apart():
    high, low = highest_rim(WHEEL, SPACED), lowest_rim(WHEEL, SPACED)
    assert length(high - low) == pytest.approx(WHEEL.rim_diameter)
    assert (high + low) / 2 == pytest.approx(wheel_centre(WHEEL, SPACED))
    assert np.sum((high - low) * toward_driver(WHEEL)) == pytest.approx(0.0, abs=1e-9)
    assert high[0, 2] > low[0, 2]


def test_a_spacer_brings_the_wheel_nearer_the_driver():
    moved = wheel_centre(WHEEL, SPACED) - wheel_centre(WHEEL, Setup())
    assert length(moved) == pytest.approx(20.0)
    assert moved[0, 0] > 0.0


def test_cases_are_counted_wherever_an_array_stands():
    assert cases_in(car()) == 1
    assert cases_in(spread(car(), {"steering_wheel.tilt": np.array([20.0, 25.0, 30.0])})) == 3
    assert cases_in(links()) == 1
