"""Stand-off and longer arm: derived bounds, and the mix that keeps a ratio."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pedal_cases import floor_pedal, floor_rod, hanging_pedal

from fitcalc.making.extension import (
    arm_band,
    effect,
    extended,
    mix_for_reach,
    slide,
    split_move,
    stand_off_bound,
)
from fitcalc.making.pedal_motion import pad_contact, sweep
from fitcalc.making.ratio import leaning_ratio
from fitcalc.making.rod import stroke

SQUARE = np.r_[0.0]


def mix(reach, band=(0.0, 30.0), longest=60.0, toward=(1.0, 0.0), pedal=None):
    limits = (np.r_[band[0]], np.r_[band[1]])
    return mix_for_reach(pedal or floor_pedal(), np.array([toward]), np.r_[reach], limits, np.r_[longest])


@given(st.floats(0, 80), st.floats(-20, 20), st.floats(120, 400))
def test_stand_off_changes_the_ratio_within_its_derived_bound(stand_off, lean, arm):
    angle, aim = sweep(floor_pedal(arm), 5), np.r_[lean]
    before, after = (
        leaning_ratio(floor_pedal(arm, off), floor_rod(), angle, aim) for off in (0.0, stand_off)
    )
    assert np.all(np.abs(after / before - 1.0) <= stand_off_bound(np.r_[arm], np.r_[stand_off], aim) + 1e-12)


def test_neither_change_alters_the_stroke():
    pedal = floor_pedal()
    longer = extended(pedal, np.r_[40.0], np.r_[30.0])
    assert stroke(longer, floor_rod(), sweep(longer, 4)) == pytest.approx(
        stroke(pedal, floor_rod(), sweep(pedal, 4))
    )


def test_longer_arm_effect():
    done = effect(floor_pedal(), floor_pedal(arm=290.0), SQUARE)
    assert done.ratio_factor == pytest.approx(1.16)
    assert done.force_factor == pytest.approx(250.0 / 290.0)
    assert done.pad_travel_gain == pytest.approx(101.2291 - 87.266463, rel=1e-5)


def test_stand_off_effect():
    done = effect(floor_pedal(), floor_pedal(stand_off=40.0), SQUARE)
    assert done.ratio_factor == pytest.approx(1.0)
    assert done.pad_rise_gain == pytest.approx(21.406209 - 7.567218, rel=1e-6)
    assert done.slide == pytest.approx(40.0 * np.radians(20.0))


def test_slide_is_nearly_the_climb_along_the_arm():
    """Travel symmetric about the vertical: the rise is 2 s sin(travel/2), 0.5 % short of s x travel."""
    pedal = floor_pedal(stand_off=40.0, rest=10.0)
    rise = effect(pedal, pedal, SQUARE).pad_rise
    assert rise == pytest.approx(slide(pedal), rel=0.006)


@pytest.mark.parametrize("pedal", [floor_pedal(), hanging_pedal()])
@given(st.floats(-50, 50), st.floats(-50, 50))
def test_split_move_puts_the_pad_where_it_is_wanted(pedal, x, z):
    wanted = np.array([[x, z]])
    after, rest = extended(pedal, *split_move(pedal, wanted)), pedal.rest[:, None]
    assert (pad_contact(after, rest) - pad_contact(pedal, rest))[:, 0] == pytest.approx(wanted, abs=1e-9)


def test_arm_band_reaches_the_ends_of_the_ratio_band():
    low, high = arm_band(floor_pedal(), np.r_[5.0], (np.r_[4.5], np.r_[6.0]))
    assert (low[0], high[0]) == pytest.approx((-25.0, 50.0))


@pytest.mark.parametrize("reach", [5.0, 20.0, 45.0])
def test_mix_gives_the_wanted_reach(reach):
    found = mix(reach)
    after = extended(floor_pedal(), found.stand_off, found.longer)
    gained = (pad_contact(after, np.array([[15.0]])) - pad_contact(floor_pedal(), np.array([[15.0]])))[
        0, 0, 0
    ]
    assert gained == pytest.approx(reach)
    assert found.shortfall == pytest.approx(0.0, abs=1e-9)


def test_mix_uses_the_arm_first_and_stays_in_its_band():
    found = mix(45.0)
    assert found.longer == pytest.approx(30.0)
    assert found.ratio_factor == pytest.approx(280.0 / 250.0)


def test_mix_reports_what_is_still_missing():
    assert mix(100.0).shortfall == pytest.approx(
        100.0 - 30.0 * np.sin(np.radians(15)) - 60.0 * np.cos(np.radians(15))
    )


def test_upright_arm_is_left_alone():
    found = mix(30.0, pedal=floor_pedal(rest=0.0))
    assert (found.longer[0], found.stand_off[0]) == pytest.approx((0.0, 30.0))


def test_a_pad_that_a_longer_arm_takes_away_is_brought_nearer_by_a_shorter_one():
    """Arm upright, hip straight below the pad's height: a longer arm moves the pad up, away from it."""
    found = mix(5.0, band=(-20.0, 30.0), toward=(0.0, -1.0), pedal=floor_pedal(rest=0.0))
    assert found.longer == pytest.approx(-5.0)
    assert found.stand_off == pytest.approx(0.0)
