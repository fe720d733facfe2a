"""Beer, Johnston and DeWolf, Mechanics of Materials.

Concept Application 4.7, Example 10.01, Sample Problems 10.1 and 10.2 (second-hand, companion collection);
inch, lbf and kip as printed.
"""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.making.bars import bending_stress, buckling_load, secant_factor, secant_stress
from fitcalc.making.shapes import flat_bar, rectangular_tube, round_bar

pytestmark = pytest.mark.published

ELASTIC = 1e6
"""A yield stress that is never reached: the book asks for Euler's load whatever the slenderness."""


def test_open_chain_link():
    bar = round_bar(np.r_[0.5])
    direct, bent = 160.0 / bar.area, bending_stress(bar, np.r_[160.0 * 0.65], np.r_[0.0])
    assert (direct[0] + bent[0], direct[0] - bent[0]) == pytest.approx((9290.0, -7660.0), abs=5.0)
    assert direct / bent * 0.25 == pytest.approx(0.024, abs=0.0005)


def test_square_column_by_euler():
    """Sides 98.3 and 116.95 mm for 100 and 200 kN, factor 2.5; load goes with the side's fourth power."""
    side = flat_bar(np.r_[98.3, 116.95], np.r_[98.3, 116.95])
    load = buckling_load(side, np.full(2, 13000.0), np.full(2, ELASTIC), np.full(2, 2000.0)) / 2.5
    assert load == pytest.approx([100e3, 200e3], rel=4 * 0.05 / 98.3)


def test_square_column_by_stress():
    side = flat_bar(np.r_[129.1], np.r_[129.1])
    assert 200e3 / side.area == pytest.approx(12.0, rel=2 * 0.05 / 129.1)


def test_bar_held_differently_in_two_planes():
    """1.62 x 0.567 in, 20 in long, K = 2 and 0.7: both planes buckle at 2.5 x 5 kip, as 0.35 asks."""
    bar = flat_bar(np.r_[1.62], np.r_[0.567])
    inertia = np.r_[bar.inertia_depth, bar.inertia_width]
    each = replace(flat_bar(np.ones(2), np.ones(2)), inertia_depth=inertia, inertia_width=inertia)
    loads = buckling_load(each, np.full(2, 10.1e6), np.full(2, 1e3 * ELASTIC), np.r_[2.0, 0.7] * 20.0)
    assert loads == pytest.approx(12500.0, rel=3 * 0.005 / 1.62 + 0.0005 / 0.567)


def column():
    """The book's section: A = 3.54 in2, I = 8.00 in4, c = 2 in."""
    tube = rectangular_tube(np.r_[4.0], np.r_[4.0], np.r_[0.25], np.r_[0.0])
    return replace(tube, area=np.r_[3.54], inertia_depth=np.r_[8.0], inertia_width=np.r_[8.0])


def test_half_the_buckling_load_of_a_column():
    load = buckling_load(column(), np.r_[29e3], np.r_[ELASTIC], np.r_[192.0])
    assert load / 2.0 == pytest.approx(31.1, abs=0.05)


def test_deflection_of_an_eccentric_column():
    bent = 0.75 * (secant_factor(np.r_[31.06], 29e3 * column().inertia_depth, np.r_[192.0]) - 1.0)
    assert bent == pytest.approx(0.939, abs=0.002), "the load is printed to three digits"


def test_greatest_stress_of_an_eccentric_column():
    """The book divides by its rounded radius of gyration, 1.50 in, hence I = 3.54 x 1.50^2."""
    section = replace(column(), inertia_depth=np.r_[3.54 * 1.5**2])
    stress = secant_stress(section, np.r_[31.06], np.r_[0.75], np.r_[29e3], np.r_[192.0])
    assert stress == pytest.approx(22.0, abs=0.05)
