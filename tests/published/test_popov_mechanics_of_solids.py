"""Popov, Engineering Mechanics of Solids: Example 10.11 (second-hand, companion collection); inch and lbf."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.making.bars import skew_deflection
from fitcalc.making.shapes import flat_bar

pytestmark = pytest.mark.published


def test_cantilever_loaded_five_degrees_off():
    beam = replace(flat_bar(np.r_[12.0], np.r_[5.0]), inertia_depth=np.r_[315.0], inertia_width=np.r_[8.13])
    strong, weak = skew_deflection(np.r_[2000.0], np.r_[5.0], np.r_[100.0], np.r_[29e6], beam)[0]
    assert (weak, strong, np.hypot(weak, strong)) == pytest.approx((0.246, 0.073, 0.257), abs=0.0005)
