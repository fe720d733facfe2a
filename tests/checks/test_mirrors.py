"""Mirrors: worked by hand."""

import pytest

from fitcalc.checks.mirrors import mirror_figures
from tests.checks.cockpits import seated, value, with_trunk


def mirrors(y, z=800.0, x=1000.0):
    case = seated({"mirrors": ({"name": "outer", "at": {"x": x, "y": y, "z": z}},)})
    return mirror_figures(with_trunk(case, eye=(1400.0, 0.0, 800.0)))


@pytest.mark.parametrize("y", [-400.0, 400.0])
def test_a_mirror_45_degrees_aside(y):
    """400 ahead of and 400 beside the eye: 45 deg off the way ahead, the glass turned 22.5 deg inward, left or right."""
    figures = mirrors(y)
    assert value(figures, "mirror.outer.turn") == pytest.approx(45.0)
    assert value(figures, "mirror.outer.glass") == pytest.approx(22.5)


def test_a_mirror_straight_ahead_faces_straight_back():
    figures = mirrors(0.0)
    assert value(figures, "mirror.outer.turn") == pytest.approx(0.0, abs=1e-9)
    assert value(figures, "mirror.outer.glass") == pytest.approx(0.0, abs=1e-9)


def test_a_low_mirror_is_off_the_way_ahead_too():
    """300 below and 400 ahead: atan 0.75 = 36.8699 deg."""
    assert value(mirrors(0.0, z=500.0), "mirror.outer.turn") == pytest.approx(36.869898)


def test_a_car_without_mirrors_is_asked_nothing():
    assert mirror_figures(seated()) == []
