"""Popov, Engineering Mechanics of Solids: Example 10.11 (second-hand, companion collection); inch and lbf."""

import numpy as np
import pytest

from fitcalc.making.bars import end_deflection

pytestmark = pytest.mark.published


def test_cantilever_loaded_five_degrees_off():
    force = 2000.0 * np.r_[np.cos(np.radians(5.0)), np.sin(np.radians(5.0))]
    strong, weak = end_deflection(force, np.full(2, 100.0), 29e6 * np.r_[315.0, 8.13])
    assert (weak, strong, np.hypot(weak, strong)) == pytest.approx((0.246, 0.073, 0.257), abs=0.0005)
