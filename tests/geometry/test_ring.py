"""Distances from a circle in space, by hand and against the circle cut into 3,600 points (independent)."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitcalc.geometry.lines import from_segment
from fitcalc.geometry.ring import Ring, to_points, to_segments

LEVEL = Ring(np.zeros((1, 3)), np.eye(3)[[0]], np.eye(3)[[1]], np.eye(3)[[2]], np.array([100.0]))
ROUND = np.radians(np.arange(0.0, 360.0, 0.1))
CUT = 100.0 * np.stack([np.cos(ROUND), np.sin(ROUND), 0.0 * ROUND], axis=-1)
places = st.tuples(*3 * [st.integers(-400, 400).map(float)])


def at(*places):
    return np.array([places], dtype=float)


@pytest.mark.parametrize(
    ("place", "expected"),
    [
        ((130.0, 0.0, 40.0), 50.0),
        ((0.0, 0.0, 0.0), 100.0),
        ((0.0, -100.0, 7.0), 7.0),
        ((60.0, 0.0, 30.0), 50.0),
    ],
)
def test_a_point_by_hand(place, expected):
    assert to_points(LEVEL, at(place))[0, 0] == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    ("start", "end", "expected"),
    [
        ((0.0, 0.0, -50.0), (0.0, 0.0, 300.0), 100.0),
        ((-500.0, 0.0, 20.0), (500.0, 0.0, 20.0), 20.0),
        ((140.0, -90.0, 0.0), (140.0, 300.0, 0.0), 40.0),
        ((130.0, 0.0, 40.0), (130.0, 0.0, 40.0), 50.0),
    ],
    ids=["along the axis", "across it", "beside it", "no length"],
)
def test_a_segment_by_hand(start, end, expected):
    assert to_segments(LEVEL, at(start), at(end))[0, 0] == pytest.approx(expected, abs=1e-3)


@given(places, places)
@settings(max_examples=200, deadline=None)
def test_a_segment_agrees_with_the_circle_cut_into_points(start, end):
    """The nearest place of the circle lies at most 0.09 mm from a point of the cut one."""
    ours = to_segments(LEVEL, at(start), at(end))[0, 0]
    cut = from_segment(CUT, at(start)[0], at(end)[0]).min()
    assert ours - 1e-3 <= cut <= np.hypot(ours, 0.09) + 1e-3


def test_segments_in_a_row_are_each_measured_alone():
    start, end = at((130.0, 0.0, 40.0), (0.0, 0.0, 0.0)), at((400.0, 0.0, 40.0), (0.0, 0.0, 9.0))
    assert to_segments(LEVEL, start, end)[0] == pytest.approx([50.0, 100.0], abs=1e-3)
