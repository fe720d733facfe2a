"""Angles between lines, by hand, and at the edges where an angle has no meaning."""

import numpy as np
import pytest

from fitcalc.geometry.degrees import acosd, atan2d, included, unit

CORNER = np.array([[10.0, 20.0, 30.0]])


@pytest.mark.parametrize(
    ("first", "last", "angle"),
    [
        ((5, 0, 0), (0, 0, 2), 90),
        ((5, 0, 0), (3, 3, 0), 45),
        ((0, 1, 0), (0, -4, 0), 180),
        ((0, 0, 3), (0, 0, 7), 0),
        ((1, 2, 2), (2, -2, 1), 90),
        ((1, 2, 3), (-3, 1, 2), np.degrees(np.arccos(5 / 14))),
    ],
)
def test_angle_at_a_corner(first, last, angle):
    found = included(CORNER + np.array(first), CORNER, CORNER + np.array(last))
    assert found == pytest.approx(angle, abs=1e-6)


def test_coincident_points_give_a_right_angle():
    assert included(CORNER, CORNER, CORNER) == pytest.approx(90)


def test_direction_of_nothing_is_nothing():
    assert unit(np.array([[0.0, 0.0, 0.0], [0.0, -2.0, 0.0]])) == pytest.approx(
        np.array([[0, 0, 0], [0, -1, 0]])
    )


def test_rounding_beyond_one_is_taken_as_one():
    assert acosd(np.array([1.0 + 1e-12, -1.0 - 1e-12])) == pytest.approx([0, 180])


def test_direction_from_rise_and_run():
    assert atan2d(np.array([1.0, -1.0, 1.0]), np.array([1.0, 0.0, -1.0])) == pytest.approx([45, -90, 135])
