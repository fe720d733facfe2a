"""OpenStax, College Physics 2e, ch. 11.5: hydraulic brake example, and problem 11.24 for the pressure.

The text rounds 2.546e7 Pa to 2.5e7 Pa, so half its last digit is 0.05e7 Pa.
"""

import numpy as np
import pytest

from fitcalc.making.hydraulics import bore_area, line_pressure
from fitcalc.making.ratio import force_ratio

pytestmark = pytest.mark.published


def test_lever_and_cylinders():
    pressure = line_pressure(np.r_[500.0], np.r_[5.0])
    assert pressure == pytest.approx(25.0, abs=0.5)
    assert pressure * bore_area(np.r_[25.0]) == pytest.approx(12500.0)


def test_lever_of_five_to_one():
    assert 100.0 * force_ratio(np.r_[250.0], np.r_[50.0]) == pytest.approx(500.0)
