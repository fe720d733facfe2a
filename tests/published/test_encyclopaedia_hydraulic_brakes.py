"""Encyclopaedia text on hydraulic brakes (second-hand): lever 3:1, slave of twice the bore, 10 N, 120 mm."""

import numpy as np
import pytest

from fitcalc.making.hydraulics import bore_area, driven_stroke, line_pressure
from fitcalc.making.ratio import rod_force

pytestmark = pytest.mark.published


def test_force_and_stroke_through_lever_and_cylinders():
    push = rod_force(np.r_[10.0], np.r_[3.0], np.r_[1.0])
    assert push == pytest.approx(30.0)
    assert line_pressure(push, np.r_[20.0]) * bore_area(np.r_[40.0]) == pytest.approx(120.0)
    assert driven_stroke(np.r_[120.0 / 3.0], np.r_[20.0], np.r_[40.0]) == pytest.approx(10.0)
