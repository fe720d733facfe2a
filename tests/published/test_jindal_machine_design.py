"""Jindal, Machine Design: Examples 6-6, 11-1, 12-3 and 12-4 (read second-hand in a companion collection).

Example 12-3 takes the throat as 0.707 of the leg, 0.015 % less than exact.
"""

import numpy as np
import pytest

from fitcalc.making.bars import bending_stress, twist_stress
from fitcalc.making.bolts import bearing_stress, net_area
from fitcalc.making.shapes import flat_bar, round_bar
from fitcalc.making.welds import WeldLine, line_force, throat

pytestmark = pytest.mark.published


def test_shaft_of_a_foot_lever():
    """700 N at 450 mm, 50 MPa in shear: whole mm, printed 32."""
    stress = twist_stress(round_bar(np.r_[31.0, 32.0]), np.r_[700.0 * 450.0])
    assert stress[0] > 50.0 >= stress[1]


def test_arm_of_a_foot_lever_at_its_boss():
    """Depth three times the width, 65 MPa at the edge of a 52 mm boss: thirds of 3 mm, printed 45 x 15."""
    arm = flat_bar(np.r_[42.0, 45.0], np.r_[14.0, 15.0])
    stress = bending_stress(arm, np.full(2, 700.0 * (450.0 - 26.0)), np.zeros(2))
    assert stress[0] > 65.0 >= stress[1]


def test_riveted_lap():
    pull = 40.0 * net_area(np.r_[100.0 * 20.0], 1, np.r_[25.0], np.r_[20.0])
    assert pull == pytest.approx(60000.0)
    assert pull / round_bar(np.r_[25.0]).area == pytest.approx(122.2, abs=0.05)
    assert bearing_stress(pull, np.r_[25.0], np.r_[20.0]) == pytest.approx(120.0)


def test_parallel_fillet_welds():
    assert throat(np.r_[12.0]) * 120.0 * 80.0 == pytest.approx(81446.0, rel=2e-4)


def test_eccentric_fillet_welds():
    """Two runs of 100 mm, 100 mm apart, 6 kN at 200 mm, 80 MPa: printed leg 3 mm, the next whole mm."""
    ends = np.array([[[50.0, 50.0], [50.0, -50.0], [-50.0, 50.0], [-50.0, -50.0]]])
    runs = WeldLine(np.r_[200.0], np.r_[100.0**3 / 6.0], np.r_[200.0 * 50.0**2], ends)
    line = line_force(runs, np.array([[0.0, 6000.0, 0.0]]), np.r_[1.2e6], np.zeros((1, 2)))
    assert throat(2.0) * 80.0 < line <= throat(3.0) * 80.0
