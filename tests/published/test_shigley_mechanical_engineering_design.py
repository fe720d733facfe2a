"""Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed.: Examples 8-6 (inch, kip) and 8-7.

Example 8-7 (c), (d) (bearing, net section) were taken down from memory. ERRATA: printings differ in the shear
area of 8-7: 144 mm2 gives 146 MPa (the printing seen), 201 mm2 gives 104 MPa (from memory).
"""

import numpy as np
import pytest

from fitcalc.making.bars import SHEAR_YIELD
from fitcalc.making.bolts import (
    bearing_stress,
    elastic_shear,
    net_area,
    net_inertia,
    tear_out_stress,
)
from fitcalc.making.seat_mounts import mount_shear
from fitcalc.making.shapes import flat_bar, round_bar

pytestmark = pytest.mark.published

BOLTS = np.array([[[-75.0, 60.0], [75.0, 60.0], [75.0, -60.0], [-75.0, -60.0]]])
FACTOR = 1.5


def bolt_forces():
    return mount_shear(BOLTS, np.array([[0.0, -16000.0, 0.0]]), np.array([[425.0, 0.0, 0.0]]))[0]


@pytest.mark.parametrize(("strength", "kip"), [(85.0, 85.0), (54.0, 54.0)], ids=["bolts", "members"])
def test_bearing_of_a_splice(strength, kip):
    """Two of the four bolts on each side of the splice, 3/4 in bolt in 1 in plate."""
    assert FACTOR * bearing_stress(np.r_[kip / 2.0], np.r_[0.75], np.r_[1.0]) == pytest.approx(strength)


def test_shear_of_a_splice():
    planes = elastic_shear(np.r_[85.0], np.r_[round_bar(np.r_[0.75]).area[0], 0.351], np.full(2, FACTOR))
    assert 4.0 * planes == pytest.approx([57.8, 45.9], abs=0.05)


def test_edge_tear_of_a_splice():
    torn = tear_out_stress(np.r_[93.5 / 2.0], np.r_[1.125], np.r_[1.0])
    assert FACTOR * torn == pytest.approx(SHEAR_YIELD * 54.0, rel=0.05 / 93.5)


def test_net_tension_of_a_splice():
    assert net_area(np.r_[4.0], 2, np.r_[0.75], np.r_[1.0]) * 54.0 / FACTOR == pytest.approx(90.0)


def test_bolt_forces_of_an_eccentric_joint():
    far, near = bolt_forces()[[1, 0]]
    assert (far / 1000.0, near / 1000.0) == pytest.approx((21.0, 14.8), abs=0.05)


def test_stresses_of_an_eccentric_joint():
    """The book rounds the force to 21.0 kN first: 0.13 % on each stress, besides half the last digit."""
    worst = bolt_forces().max()
    assert worst / 144.0 == pytest.approx(146.0, abs=0.5)
    assert bearing_stress(worst, 16.0, 10.0) == pytest.approx(131.0, abs=0.5)


def test_net_section_of_an_eccentric_joint():
    bar = flat_bar(np.r_[200.0], np.r_[15.0])
    left = net_inertia(bar.inertia_depth, np.r_[16.0], np.r_[15.0], np.array([[60.0, -60.0]]))
    assert left == pytest.approx(8.26e6, abs=0.005e6)
    assert 16000.0 * 350.0 * 100.0 / left == pytest.approx(67.8, abs=0.05)
