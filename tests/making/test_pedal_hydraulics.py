"""Pressure, balance bar, clutch, cable: own reference cases, and what must hold besides."""

from dataclasses import replace

import numpy as np
import pytest
from pedal_cases import floor_pedal, floor_rod

from fitcalc.making import hydraulics
from fitcalc.making.cable import (
    full_throttle_pad_travel,
    lever_full_angle,
    lever_pull,
    sector_full_angle,
    sector_pull,
    stop_error,
)
from fitcalc.making.hydraulics import BalanceBar
from fitcalc.making.rod import Rod, rod_length

BAR = BalanceBar(np.r_[60.0], np.r_[27.0])
PULLED = Rod(np.r_[50.0], np.r_[180.0], np.array([[-250.0, -45.0]]))


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


def test_bar_tilts_to_the_circuit_that_moves_further():
    assert hydraulics.bar_tilt(np.r_[12.0], np.r_[10.0], BAR)[0] > 0


def test_pressure_share_of_an_idle_system_is_even():
    assert hydraulics.pressure_share(np.r_[0.0, 6.0], np.r_[0.0, 4.0]) == pytest.approx([0.5, 0.6])


def test_foot_force_gives_back_its_pressure():
    foot = hydraulics.foot_for_pressure(np.r_[7.0], np.r_[17.8], np.r_[5.0], np.r_[0.8])
    assert hydraulics.line_pressure(foot * 5.0 * 0.8, np.r_[17.8]) == pytest.approx(7.0)


def test_pad_travel_for_the_fluid_of_a_stroke():
    volume = hydraulics.displaced_volume(np.r_[12.0], np.r_[17.8])
    assert hydraulics.pad_travel_for_volume(volume, np.r_[17.8], np.r_[5.0], np.r_[3.0]) == pytest.approx(
        63.0
    )


def test_cylinder_that_bottoms_first_has_no_stroke_left():
    assert hydraulics.stroke_left(np.r_[25.0, 25.0], np.r_[17.0, 28.0]) == pytest.approx([8.0, -3.0])


def test_hydraulic_clutch_reference_case():
    bores = (np.r_[15.875], np.r_[19.05])
    bearing = hydraulics.released_hydraulic(np.r_[120.0], np.r_[6.0], bores, np.r_[1.6], np.r_[10.0])
    assert bearing == pytest.approx(7.9571759, rel=1e-6)


def test_cable_clutch_takes_up_its_slack_first():
    released = hydraulics.released_cable(np.r_[22.0, 1.0], np.r_[2.0, 2.0], np.r_[2.0, 2.0])
    assert released == pytest.approx([10.0, 0.0])


def test_sector_throttle_reference_case():
    full = sector_full_angle(np.r_[60.0], np.r_[28.0], np.r_[2.0])
    assert full == pytest.approx(28.64789, rel=1e-6)
    assert full_throttle_pad_travel(floor_pedal(arm=220.0), full) == pytest.approx(110.0, rel=1e-6)
    assert sector_pull(np.r_[60.0], full) == pytest.approx(30.0)


@pytest.mark.parametrize("pull", [5.0, 12.0, 17.0])
def test_lever_full_angle_is_where_the_pull_is_reached(pull):
    full, shortfall = lever_full_angle(floor_pedal(), PULLED, np.r_[pull - 2.0], np.r_[2.0])
    assert lever_pull(floor_pedal(), PULLED, 15.0 - full[:, None]) == pytest.approx(pull)
    assert shortfall == pytest.approx(0.0)


def test_lever_that_first_slackens_must_pass_its_dead_centre():
    """Joint 30 deg before the line pivot to housing: 60 deg later it is as far away as at the start."""
    slackens = Rod(
        np.r_[50.0], np.r_[0.0], 200.0 * np.array([[-np.sin(np.radians(15)), np.cos(np.radians(15))]])
    )
    full, _ = lever_full_angle(floor_pedal(), slackens, np.r_[0.0], np.r_[0.0])
    assert full == pytest.approx(60.0)


def test_lever_reports_the_pull_it_can_never_give():
    _, shortfall = lever_full_angle(floor_pedal(), PULLED, np.r_[200.0], np.r_[0.0])
    in_line = 50.0 + np.hypot(250.0, 45.0)
    assert shortfall == pytest.approx(
        rod_length(floor_pedal(), PULLED, np.array([[15.0]]))[0] + 200.0 - in_line
    )


def test_push_rod_seen_as_a_cable_goes_slack():
    assert lever_pull(floor_pedal(), floor_rod(), np.array([[5.0]]))[0, 0] < 0


def test_stop_beyond_full_throttle_is_positive():
    assert stop_error(floor_pedal(travel=np.r_[30.0]), np.r_[28.0]) == pytest.approx(2.0)


def test_a_lever_does_not_care_where_the_car_s_origin_is():
    full, _ = lever_full_angle(floor_pedal(), PULLED, np.r_[10.0], np.r_[2.0])
    away = np.array([[300.0, -80.0]])
    moved = replace(floor_pedal(), pivot=away), replace(PULLED, anchor=PULLED.anchor + away)
    assert lever_full_angle(*moved, np.r_[10.0], np.r_[2.0])[0] == pytest.approx(full)
