"""Axle loads and centre of mass: own reference cases."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.making import balance


def test_driver_moved_rearward_and_down():
    mass, total, wheelbase = np.r_[80.0], np.r_[600.0], np.r_[2400.0]
    start, driver = np.array([[1300.0, 0.0, 320.0]]), np.array([[1500.0, 0.0, 400.0]])
    empty = balance.with_added(total, start, -mass, driver)
    _, moved = balance.with_added(*empty, mass, driver + [[60.0, 0.0, -20.0]])
    assert moved - start == pytest.approx(np.array([[8.0, 0.0, -2.6666667]]))
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
