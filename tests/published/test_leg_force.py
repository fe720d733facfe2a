"""Leg force against knee angle.

Sources:
    Hugh-Jones 1947, as quoted in Morgan and in Sanders & McCormick (from memory): peak near 160 deg, about
    3.7 kN for trained men, a third to a half of it at 120 deg, about a fifth at 90, less beyond 165.
    Arm of the push about the knee for links of 423 and 424 mm at 90 to 170 deg: reference table, worked by
    hand.
"""

import numpy as np
import pytest

from fitcalc.body.leg_force import knee_arm, leg_force, leg_force_share

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("knee", "least", "most"), [(90, 0.18, 0.22), (120, 1 / 3, 1 / 2), (160, 1.0, 1.0), (175, 0.5, 0.95)]
)
def test_share_of_the_peak(knee, least, most):
    assert least <= leg_force_share(np.array([float(knee)]))[0] <= most


def test_peak():
    assert leg_force().peak == pytest.approx(3700, abs=50)


@pytest.mark.parametrize(
    ("knee", "printed"), [(90, 299), (120, 212), (140, 145), (150, 110), (160, 74), (170, 37)]
)
def test_arm_about_the_knee(knee, printed):
    arm = knee_arm(np.array([423.0]), np.array([424.0]), np.array([float(knee)]))
    assert arm[0] == pytest.approx(printed, abs=0.55)
