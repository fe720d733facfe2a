"""Pressure, balance bar, clutch, cable: own reference cases, and what must hold besides."""

import numpy as np
import pytest
from pedal_cases import floor_pedal

from fitcalc.making import hydraulics
from fitcalc.making.cable import (
    sector_full_angle,
    sector_pull,
    stop_error,
)
from fitcalc.making.hydraulics import BalanceBar

BAR = BalanceBar(np.r_[60.0], np.r_[27.0])


def test_balance_bar_reference_case():
    front, rear = hydraulics.bar_shares(np.r_[10000.0], BAR)
    pressures = (
        hydraulics.line_pressure(front, np.r_[17.8])[0],
        hydraulics.line_pressure(rear, np.r_[19.05])[0],
    )
    assert (front[0], rear[0]) == pytest.approx((5500.0, 4500.0))
    assert pressures == pytest.approx((22.102063, 15.788202), rel=1e-6)


def test_moving_the_bar_pivot_moves_force_by_its_share_of_the_spacing():
    moved, _ = hydraulics.bar_shares(np.r_[1000.0], BalanceBar(np.r_[60.0], np.r_[24.0]))
    assert moved - hydraulics.bar_shares(np.r_[1000.0], BAR)[0] == pytest.approx(1000.0 * 3.0 / 60.0)


def test_cylinder_that_bottoms_first_has_no_stroke_left():
    assert hydraulics.stroke_left(np.r_[25.0, 25.0], np.r_[17.0, 28.0]) == pytest.approx([8.0, -3.0])


def test_sector_throttle_reference_case():
    full = sector_full_angle(np.r_[60.0], np.r_[28.0], np.r_[2.0])
    assert full == pytest.approx(28.64789, rel=1e-6)
    assert sector_pull(np.r_[60.0], full) == pytest.approx(30.0)


def test_stop_beyond_full_throttle_is_positive():
    assert stop_error(floor_pedal(travel=np.r_[30.0]), np.r_[28.0]) == pytest.approx(2.0)
