"""Stand-off and longer arm: derived bounds, and the mix that keeps a ratio."""

import numpy as np
import pytest
from pedal_cases import floor_pedal, floor_rod

from fitcalc.making.extension import (
    arm_band,
    mix_for_reach,
)
from fitcalc.making.pedal_motion import pad_contact, sweep
from fitcalc.making.rod import stroke


def mix(reach, band=(0.0, 30.0), longest=60.0, toward=(1.0, 0.0), pedal=None):
    limits = (np.r_[band[0]], np.r_[band[1]])
    return mix_for_reach(pedal or floor_pedal(), np.array([toward]), np.r_[reach], limits, np.r_[longest])


def test_neither_change_alters_the_stroke():
    pedal = floor_pedal()
    longer = floor_pedal(arm=280.0, stand_off=40.0)
    assert stroke(longer, floor_rod(), sweep(longer, 4)) == pytest.approx(
        stroke(pedal, floor_rod(), sweep(pedal, 4))
    )


def test_arm_band_reaches_the_ends_of_the_ratio_band():
    low, high = arm_band(floor_pedal(), np.r_[5.0], (np.r_[4.5], np.r_[6.0]))
    assert (low[0], high[0]) == pytest.approx((-25.0, 50.0))


@pytest.mark.parametrize("reach", [5.0, 20.0, 45.0])
def test_mix_gives_the_wanted_reach(reach):
    found = mix(reach)
    after = floor_pedal(arm=250.0 + found.longer[0], stand_off=found.stand_off[0])
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
