"""How far joints move, as included angles.

Sources: Soucie et al. 2011 (CDC), ages 20 to 44 (from memory); Merck Manual table (seen); AAOS (from memory).
"""

import pytest

from fitcalc.body.comfort import motion_limits, motion_tables

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("table", "sex", "joint", "flexion", "beyond"),
    [
        ("soucie_2011", "female", "hip", 133.8, 18.1),
        ("soucie_2011", "male", "hip", 130.4, 17.4),
        ("soucie_2011", "female", "knee", 141.9, 0),
        ("soucie_2011", "male", "knee", 137.7, 0),
        ("soucie_2011", "female", "elbow", 150.0, 0),
        ("soucie_2011", "male", "elbow", 144.6, 0),
        ("merck", "male", "hip", 125, 15),
        ("merck", "female", "knee", 130, 0),
        ("aaos", "male", "hip", 120, 30),
        ("aaos", "male", "knee", 135, 0),
    ],
)
def test_bending_closes_the_included_angle(table, sex, joint, flexion, beyond):
    assert motion_limits(motion_tables()[table], sex)[joint] == pytest.approx((180 - flexion, 180 + beyond))


@pytest.mark.parametrize(
    ("table", "sex", "up", "down"),
    [("soucie_2011", "female", 13.8, 62.1), ("soucie_2011", "male", 12.7, 54.6), ("merck", "male", 20, 50)],
)
def test_ankle_moves_about_a_square_foot(table, sex, up, down):
    assert motion_limits(motion_tables()[table], sex)["ankle"] == pytest.approx((90 - up, 90 + down))
