"""Bhandari, Design of Machine Elements: Examples 4.9, 4.12, 7.3, 7.4, 7.5, 7.8.

Read second-hand in a companion collection. Where only a rounded size is printed, the test asks that it passes
and that the next smaller one does not; bolt cores are taken as 0.8 of the nominal size, as the book does, and
first-choice sizes go 12, 16, 20.
"""

import numpy as np
import pytest
from pushed_bar import greatest_stress

from fitcalc.making.bolts import edge_pivot_tension
from fitcalc.making.seat_mounts import mount_shear
from fitcalc.making.shapes import flat_bar, round_bar

pytestmark = pytest.mark.published

CORE = round_bar(0.8 * np.r_[16.0, 20.0]).area


def test_plates_of_a_c_frame():
    """Two plates carry 20 kN, 275 mm off their middle; printed 5.26 mm for 380 / 2.5 MPa."""
    plate = flat_bar(np.r_[150.0], np.r_[5.26])
    stress = greatest_stress(plate, 10000.0, 10000.0 * 275.0)
    assert stress == pytest.approx(380.0 / 2.5, rel=0.005 / 5.26)


def test_wall_bracket_under_a_slanting_load():
    """5 kN at 60 deg from the vertical; depth twice the thickness; sizes in steps of 5 mm, printed 35 mm."""
    thickness = np.r_[30.0, 35.0]
    section = flat_bar(2.0 * thickness, thickness)
    level, down = 5000.0 * np.sin(np.radians(60)), 5000.0 * np.cos(np.radians(60))
    stress = greatest_stress(section, level, level * 150.0 + down * 300.0)
    assert stress[0] > 200.0 / 3.5 >= stress[1]


@pytest.mark.parametrize(
    ("places", "force", "arm", "allowed"),
    [
        ([(-100, -75), (-100, 75), (100, -75), (100, 75)], 10000.0, 500.0, 0.5 * 400.0 / 2.5),
        ([(-75, 0), (0, 0), (75, 0)], 5000.0, 305.0, 0.5 * 380.0 / 3.0),
    ],
    ids=["four bolts", "three in line"],
)
def test_eccentric_joint_needs_m20(places, force, arm, allowed):
    each = mount_shear(np.array([places], float), np.array([[0.0, -force, 0.0]]), np.array([[arm, 0.0, 0.0]]))
    stress = each.max() / CORE
    assert stress[0] > allowed >= stress[1]


def test_bracket_loaded_along_the_wall():
    """Four bolts in two rows, greatest-shear-stress theory, 380 / 2.5 MPa; printed core area 98.02 mm2."""
    pulled = edge_pivot_tension(np.r_[25000.0 * 100.0], np.array([[150.0, 150.0, 25.0, 25.0]])).max()
    area = np.hypot(pulled / 2.0, 25000.0 / 4.0) / (0.5 * 380.0 / 2.5)
    assert area == pytest.approx(98.02, abs=0.005)


def test_bracket_loaded_off_the_base():
    """Two bolts, direct pull and tipping; 75 MPa; ERRATA: 455.285 is cut, not rounded, to 455.28 in print."""
    pulled = edge_pivot_tension(np.r_[20000.0 * 550.0], np.array([[450.0, 50.0]])).max() + 20000.0 / 2.0
    assert pulled / 75.0 == pytest.approx(455.28, abs=0.01)
