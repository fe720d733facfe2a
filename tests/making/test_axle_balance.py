"""Axle loads and centre of mass: own reference cases; one published statement with computed answers."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.making import balance
from fitcalc.units import GRAVITY


def test_driver_moved_rearward_and_down():
    mass, total, wheelbase = np.r_[80.0], np.r_[600.0], np.r_[2400.0]
    shift = balance.centre_shift(mass, np.array([[60.0, 0.0, -20.0]]), total)
    assert shift == pytest.approx(np.array([[8.0, 0.0, -2.6666667]]))
    assert balance.front_load_change(mass, np.r_[60.0], wheelbase) == pytest.approx(-2.0)
    shares = balance.front_share(np.r_[1300.0, 1308.0], wheelbase)
    assert 100 * shares == pytest.approx([45.833333, 45.5], rel=1e-6)


@given(st.floats(300, 900), st.floats(0.2, 0.8), st.floats(1800, 3000))
def test_centre_and_share_agree(total, rear_part, wheelbase):
    centre = balance.centre_behind_front(np.r_[total * rear_part], np.r_[total], np.r_[wheelbase])
    assert balance.front_share(centre, np.r_[wheelbase]) == pytest.approx(1.0 - rear_part)


def test_mass_added_and_taken_away_again():
    start, ballast = np.array([[1300.0, 0.0, 320.0]]), np.array([[200.0, 100.0, 90.0]])
    heavier, moved = balance.with_added(np.r_[600.0], start, np.r_[15.0], ballast)
    mass, back = balance.with_added(heavier, moved, np.r_[-15.0], ballast)
    assert mass == pytest.approx(600.0)
    assert back == pytest.approx(start)
    assert moved[0] == pytest.approx((600 * start[0] + 15 * ballast[0]) / 615)


def test_height_of_centre_from_lifting_the_rear():
    height = balance.centre_height(
        np.r_[10433.5237 / 19620.0], np.r_[1100.0], np.r_[2300.0], np.r_[300.0], np.r_[30.0]
    )
    assert height == pytest.approx(340.0, rel=1e-6)


def test_tilt_of_a_lifted_axle():
    tilt = balance.tilt_of_lift(np.r_[1150.0, 9999.0, -9999.0], np.full(3, 2300.0))
    assert tilt == pytest.approx([30.0, 90.0, -90.0])


@pytest.mark.parametrize(
    ("acceleration", "driven", "transfer"), [(2.8890291, "front", -1), (4.2308531, "rear", 1)]
)
def test_traction_limit_with_load_transfer(acceleration, driven, transfer):
    """Driven axle at its limit: 0.7 x its load = mass x acceleration (1800 kg, halfway, 2.6 m, 0.7 m).

    The answers were computed with g = 9.81 m/s2, the program has 9.80665: 0.03 % apart.
    """
    moved = balance.load_transfer(np.r_[1800.0], np.r_[acceleration], np.r_[700.0], np.r_[2600.0])
    grip = 0.7 * GRAVITY * (900.0 + transfer * moved)
    assert grip == pytest.approx(1800.0 * acceleration, rel=5e-4), driven
