"""R. K. Bansal, Strength of Materials: Problem 13.1 (read second-hand in a companion collection)."""

import numpy as np
import pytest

from fitcalc.making.bars import end_deflection

pytestmark = pytest.mark.published

STIFFNESS = np.r_[210000.0 * 1e8]


def test_cantilever_with_end_load():
    assert end_deflection(np.r_[25000.0], np.r_[3000.0], STIFFNESS) == pytest.approx(10.71, abs=0.005)
