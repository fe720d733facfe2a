"""The steering wheel's rim: its ends lie in its plane, a diameter apart."""

import numpy as np
import pytest

from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import length
from fitcalc.posture.cases import cases_in, spread
from fitcalc.posture.wheel import foremost_rim, highest_rim, lowest_rim, rim_ends, toward_driver, wheel_centre
from tests.posture.cars import car, links

WHEEL, SPACED = car().steering_wheel, Setup(wheel_spacer=20.0)


def leaning(tilt):
    return WHEEL.model_copy(update={"rim_diameter": 320.0, "rim_thickness": 40.0, "tilt": tilt})


def test_the_rim_s_ends_lie_in_its_plane():
    low, high = rim_ends(WHEEL, SPACED)
    assert length(high - low) == pytest.approx(WHEEL.rim_diameter - WHEEL.rim_thickness)
    assert (high + low) / 2 == pytest.approx(wheel_centre(WHEEL, SPACED))
    assert np.sum((high - low) * toward_driver(WHEEL)) == pytest.approx(0.0, abs=1e-9)
    assert high[0, 2] > low[0, 2]


def test_the_outermost_points_of_a_leaning_rim_are_those_of_its_round_section():
    """Middle of the section 140 mm out, leaning 30 deg forward: 140 cos 30 up, 140 sin 30 ahead, 20 more for the section."""
    wheel = leaning(30.0)
    x, _, z = wheel_centre(wheel, Setup())[0]
    assert highest_rim(wheel, Setup())[0, 2] == pytest.approx(z + 140 * np.sqrt(3) / 2 + 20)
    assert lowest_rim(wheel, Setup())[0, 2] == pytest.approx(z - 140 * np.sqrt(3) / 2 - 20)
    assert foremost_rim(wheel, Setup())[0, 0] == pytest.approx(x - 70 - 20)


@pytest.mark.parametrize("tilt", [-20.0, 0.0, 12.0, 65.0])
def test_no_point_of_the_rim_s_surface_lies_further_out(tilt):
    """The surface walked all round: circle of 140 mm, section of 20 mm about each of its points."""
    wheel = leaning(tilt)
    turn, about = np.meshgrid(np.linspace(0, 2 * np.pi, 721), np.linspace(0, 2 * np.pi, 721))
    out = 140.0 + 20.0 * np.cos(about)
    up, axis = out * np.cos(turn), 20.0 * np.sin(about)
    c, s = np.cos(np.radians(tilt)), np.sin(np.radians(tilt))
    x, z = wheel_centre(wheel, Setup())[0, [0, 2]]
    ahead, above = -up * s + axis * c, up * c + axis * s
    assert highest_rim(wheel, Setup())[0, 2] == pytest.approx(z + above.max(), abs=0.01)
    assert lowest_rim(wheel, Setup())[0, 2] == pytest.approx(z + above.min(), abs=0.01)
    assert foremost_rim(wheel, Setup())[0, 0] == pytest.approx(x + ahead.min(), abs=0.01)


def test_a_spacer_brings_the_wheel_nearer_the_driver():
    moved = wheel_centre(WHEEL, SPACED) - wheel_centre(WHEEL, Setup())
    assert length(moved) == pytest.approx(20.0)
    assert moved[0, 0] > 0.0


def test_cases_are_counted_wherever_an_array_stands():
    assert cases_in(car()) == 1
    assert cases_in(spread(car(), {"steering_wheel.tilt": np.array([20.0, 25.0, 30.0])})) == 3
    assert cases_in(links()) == 1
    assert cases_in(np.array(20.0)) == 1


def test_foremost_point_lies_level_ahead_of_the_upper_end():
    ahead = foremost_rim(WHEEL, SPACED) - rim_ends(WHEEL, SPACED)[1]
    assert ahead == pytest.approx(np.array([[-WHEEL.rim_thickness / 2, 0.0, 0.0]]))
