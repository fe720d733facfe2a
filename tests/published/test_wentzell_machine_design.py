"""Wentzell, Machine Design: Example 4.1 (second-hand, companion collection); inch, lbf, psi."""

import numpy as np
import pytest
from pushed_bar import greatest_stress

from fitcalc.making.shapes import round_bar

pytestmark = pytest.mark.published


def test_short_column_loaded_off_centre():
    stress = greatest_stress(round_bar(np.r_[2.0]), 10000.0, 10000.0 * 2.0)
    assert stress == pytest.approx(28648.0, abs=0.5)
