"""A line across a profile in side view, by hand: a floor that falls, runs level, and rises again."""

import numpy as np
import pytest

from fitcalc.geometry.crossing import crossing

PROFILE = np.array([[[0.0, 0.0, 100.0], [100.0, 0.0, 0.0], [300.0, 0.0, 0.0], [400.0, 0.0, 100.0]]])
SLOPE = np.hypot(100.0, 100.0)


def crossed(start, end):
    return crossing(np.array([start], dtype=float), np.array([end], dtype=float), PROFILE)


@pytest.mark.parametrize(
    ("x", "place", "along"),
    [(50, (50, 50), SLOPE / 2), (200, (200, 0), SLOPE + 100), (350, (350, 50), 1.5 * SLOPE + 200)],
)
def test_a_plumb_line_meets_each_piece(x, place, along):
    found = crossed((x, 10, 300), (x, 30, -100))
    assert found.at[0, [0, 2]] == pytest.approx(place)
    assert found.along == pytest.approx(along)
    assert found.miss == pytest.approx(0.0)
    assert found.at[0, 1] == pytest.approx(10 + 20 * (300 - place[1]) / 400)


@pytest.mark.parametrize(("x", "along"), [(-100, -SLOPE), (500, 3 * SLOPE + 200)])
def test_both_ends_are_carried_straight_on(x, along):
    found = crossed((x, 0, 500), (x, 0, -100))
    assert found.at[0] == pytest.approx([x, 0, 200])
    assert found.along == pytest.approx(along)


def test_a_line_that_stops_short_says_by_how_much_and_keeps_its_end_s_y():
    found = crossed((200, 10, 300), (200, 30, 60))
    assert found.miss == pytest.approx(60)
    assert found.at[0] == pytest.approx([200, 30, 0])


def test_a_line_that_starts_behind_the_profile_keeps_its_start_s_y():
    found = crossed((200, 10, -40), (200, 30, -100))
    assert found.miss == pytest.approx(40)
    assert found.at[0] == pytest.approx([200, 10, 0])


def test_a_line_along_a_piece_meets_the_next():
    found = crossed((150, 0, 0), (250, 0, 0))
    assert found.at[0, 2] == pytest.approx(0)
    assert found.miss == pytest.approx(50)
