"""Gere and Timoshenko, Mechanics of Materials: Problem 1.2-4 with its printed solution; Gere, Example 11-3.

Both read second-hand. Problem 1.2-4 measures its distances square to parallel forces: here an upright arm and
a level rod.
"""

import numpy as np
import pytest

from fitcalc.making.bars import secant_factor
from fitcalc.making.pedal_motion import Pedal
from fitcalc.making.ratio import rod_force, travel
from fitcalc.making.rod import Rod
from fitcalc.making.shapes import flat_bar, round_bar

pytestmark = pytest.mark.published


def test_brake_pedal_lever_and_rod_stress():
    upright = Pedal(np.zeros((1, 2)), np.array([False]), np.r_[275.0], np.r_[0.0], np.r_[0.0], np.r_[1.0])
    level = Rod(np.r_[50.0], np.r_[0.0], np.array([[-300.0, 50.0]]))
    push = rod_force(np.r_[40.0], travel(upright, level, 2).ratio[:, 0], np.r_[1.0])
    assert push == pytest.approx(220.0)
    assert push / round_bar(np.r_[5.0]).area == pytest.approx(11.2, abs=0.05)


def test_longest_bar_for_an_allowed_deflection():
    """Printed 10.0 in: the allowed 0.12 in lies between the deflections of 9.95 in and 10.05 in."""
    bar, lengths = flat_bar(np.r_[0.6], np.r_[1.2]), np.r_[9.95, 10.05]
    bent = 0.45 * (secant_factor(np.r_[1500.0], 16e6 * bar.inertia_depth, 2.0 * lengths) - 1.0)
    assert bent[0] < 0.12 < bent[1]
