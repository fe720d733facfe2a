"""Trade and general-engineering pages on brake line pressure and pedal ratio, in lbf, inch and psi.

The 1.0 in page rounds 763.9 psi to 760. The leg-force text works with the area rounded to 0.601 in2 (0.05 %);
the ratio page gives 10 in over 2 in and 12 in over 3 in.
"""

import numpy as np
import pytest

from fitcalc.making.hydraulics import bore_area, line_pressure
from fitcalc.making.ratio import force_ratio, rod_force

pytestmark = pytest.mark.published


def test_line_pressure():
    push = rod_force(np.r_[100.0], np.r_[6.0], np.r_[1.0])
    assert line_pressure(push, np.r_[1.0]) == pytest.approx(760.0, abs=5.0)


def test_piston_area():
    assert bore_area(np.r_[0.875]) == pytest.approx(0.601, abs=0.0005)


@pytest.mark.parametrize(("ratio", "force"), [(4.0, 150.2), (5.0, 120.2), (6.0, 100.2)])
def test_leg_force_for_1000_psi(ratio, force):
    pressure = line_pressure(rod_force(np.r_[force], np.r_[ratio], np.r_[1.0]), np.r_[0.875])
    assert pressure == pytest.approx(1000.0, rel=0.0005 / 0.601 + 0.05 / force)


@pytest.mark.parametrize(("pad", "rod", "ratio"), [(10.0, 2.0, 5.0), (12.0, 3.0, 4.0)])
def test_pedal_ratio(pad, rod, ratio):
    assert force_ratio(np.r_[pad], np.r_[rod]) == pytest.approx(ratio)
