"""Wentzell, Machine Design: Examples 4.1, 5.2 and 5.3 (second-hand, companion collection); inch, lbf, psi."""

import numpy as np
import pytest

from fitcalc.making.bars import bending_stress, eccentric_stresses, goodman_safety
from fitcalc.making.shapes import round_bar

pytestmark = pytest.mark.published


def test_short_column_loaded_off_centre():
    stresses = eccentric_stresses(round_bar(np.r_[2.0]), np.r_[-10000.0], np.r_[2.0], np.r_[0.0])
    assert stresses.min() == pytest.approx(-28648.0, abs=0.5)


@pytest.mark.parametrize(
    ("diameter", "line"), [(1.82, 37000.0), (1.65, 90000.0)], ids=["Soderberg", "modified Goodman"]
)
def test_pulsating_load(diameter, line):
    """Factor 1.6 is asked for; stress goes with the cube of a diameter printed to 0.005 in."""
    half = bending_stress(round_bar(np.r_[diameter]), np.r_[12000.0], np.r_[0.0]) / 2.0
    safety = goodman_safety(half, half, np.r_[0.85 * 34000.0], np.r_[line])
    assert safety == pytest.approx(1.6, rel=3 * 0.005 / diameter)
