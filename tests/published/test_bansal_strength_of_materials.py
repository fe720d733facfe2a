"""R. K. Bansal, Strength of Materials: Problem 13.1 (read second-hand in a companion collection)."""

import numpy as np
import pytest

from fitcalc.making.bars import end_deflection, end_slope

pytestmark = pytest.mark.published

STIFFNESS = np.r_[210000.0 * 1e8]


def test_cantilever_with_end_load():
    slope = np.radians(end_slope(np.r_[25000.0], np.r_[3000.0], STIFFNESS))
    assert slope == pytest.approx(0.005357, abs=5e-7)
    assert end_deflection(np.r_[25000.0], np.r_[3000.0], STIFFNESS) == pytest.approx(10.71, abs=0.005)
