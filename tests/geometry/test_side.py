"""Turning and leaning in side view, by hand: the sense of every angle as docs/frame.md has it."""

import numpy as np
import pytest

from fitcalc.geometry.side import across, leaning, turned

UP, REARWARD = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0)
PIVOT = np.array([[100.0, -20.0, 300.0]])


@pytest.mark.parametrize(
    ("point", "angle", "to"),
    [
        (UP, 90, REARWARD),
        (REARWARD, 90, (0, 0, -1)),
        (UP, -90, (-1, 0, 0)),
        (UP, 30, (0.5, 0, np.sqrt(0.75))),
        ((0, 7, 0), 50, (0, 7, 0)),
    ],
)
def test_positive_turns_the_top_rearward(point, angle, to):
    found = turned(PIVOT + np.array(point), PIVOT, np.array([float(angle)]))
    assert found - PIVOT == pytest.approx(np.array([to]), abs=1e-12)


def test_positive_leans_rearward():
    assert leaning(np.array([0.0, 90.0])) == pytest.approx(np.array([UP, REARWARD]), abs=1e-12)


def test_across_is_a_quarter_turn():
    ways = np.array([UP, REARWARD, (0.6, 0.0, 0.8)])
    assert across(ways) == pytest.approx(turned(ways, np.zeros((3, 3)), np.full(3, 90.0)), abs=1e-12)
