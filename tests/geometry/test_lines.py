"""Profiles and distances in side view, by hand and against shapely."""

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.geometry.lines import (
    behind_on_profile,
    distance_to_line,
    extended,
    height_at,
    profile_points,
)

FLOOR = ((0.0, 0.0), (400.0, 0.0), (800.0, 100.0))


def at(x, z, y=0.0):
    return np.array([[x, y, z]])


def test_height_between_and_beyond_the_ends():
    line = profile_points(FLOOR)
    assert np.allclose(height_at(np.array([-50.0, 600.0, 2000.0]), line), [0.0, 50.0, 100.0])


def test_circle_meets_the_floor_behind_its_centre():
    point, found = behind_on_profile(at(200, 120), np.array([130.0]), profile_points(FLOOR))
    assert found[0]
    assert np.allclose(point, [[250.0, 0, 0]])


def test_circle_too_high_names_the_nearest_floor():
    point, found = behind_on_profile(at(200, 300), np.array([130.0]), profile_points(FLOOR))
    assert not found[0]
    assert np.allclose(point, [[200.0, 0, 0]])


def test_circle_beyond_the_floor_meets_it_carried_on():
    point, found = behind_on_profile(at(1000, 220), np.array([130.0]), extended(profile_points(FLOOR)))
    assert found[0]
    assert np.allclose(point, [[1050.0, 0, 100]])


def test_a_floor_elsewhere_is_met_in_the_same_way():
    away = np.array([700.0, 0.0, -50.0])
    point, found = behind_on_profile(at(200, 120) + away, np.array([130.0]), profile_points(FLOOR) + away)
    assert found[0]
    assert np.allclose(point, [[250.0, 0, 0]] + away)


@given(st.floats(-200, 1000), st.floats(0.1, 400))
def test_a_circle_that_meets_no_floor_has_the_point_nearest_to_it(x, above):
    """Shapely's distance from the centre is independent; a circle that is a point meets nothing above the floor."""
    z = above + max(height for _, height in FLOOR)
    ours, found = behind_on_profile(at(x, z), np.zeros(1), profile_points(FLOOR))
    distance = shapely.LineString(FLOOR).distance(shapely.Point(x, z))
    assert not found[0]
    assert np.hypot(ours[0, 0] - x, ours[0, 2] - z) == pytest.approx(distance, abs=1e-9)


def test_below_a_line_drawn_to_the_rear_is_positive():
    below = distance_to_line(at(500, 0), at(0, 100), at(1000, 100))
    above = distance_to_line(at(500, 150), at(0, 100), at(1000, 100))
    assert below[0] == pytest.approx(100)
    assert above[0] == pytest.approx(-50)


def test_helmet_centre_below_the_hoop_line():
    """Own reference case, x mirrored to the house frame: front hoop (-900, 720), main hoop (0, 1050), centre (-260, 800)."""
    distance = distance_to_line(at(-260, 800), at(-900, 720), at(0, 1050))
    assert distance[0] == pytest.approx(145.21287, abs=1e-5)
