"""Stand-off and longer arm: derived bounds, and the mix that keeps a ratio."""

import numpy as np
import pytest
from pedal_cases import floor_pedal, floor_rod

from fitcalc.making.extension import mix_for_reach
from fitcalc.making.pedal_motion import contact_radius, pad_contact, sweep
from fitcalc.making.rod import stroke


def mix(reach, ratio=1.12, arm=30.0, longest=60.0, toward=(1.0, 0.0), pedal=None):
    limits = np.r_[ratio], np.r_[arm], np.r_[longest]
    return mix_for_reach(pedal or floor_pedal(), np.array([toward]), np.r_[reach], *limits)


def test_neither_change_alters_the_stroke():
    pedal = floor_pedal()
    longer = floor_pedal(arm=280.0, stand_off=40.0)
    assert stroke(longer, floor_rod(), sweep(longer, 4)) == pytest.approx(
        stroke(pedal, floor_rod(), sweep(pedal, 4))
    )


@pytest.mark.parametrize("reach", [5.0, 20.0, 45.0])
def test_mix_gives_the_wanted_reach(reach):
    found = mix(reach)
    after = floor_pedal(arm=250.0 + found.longer[0], stand_off=found.stand_off[0])
    gained = (pad_contact(after, np.array([[15.0]])) - pad_contact(floor_pedal(), np.array([[15.0]])))[
        0, 0, 0
    ]
    assert gained == pytest.approx(reach)
    assert found.shortfall == pytest.approx(0.0, abs=1e-9)


def test_mix_takes_all_the_arm_that_there_is_where_the_ratio_allows_it():
    found = mix(45.0, ratio=1.5)
    assert found.longer == pytest.approx(30.0)
    assert found.stand_off == pytest.approx((45.0 - 30.0 * np.sin(np.radians(15))) / np.cos(np.radians(15)))


@pytest.mark.parametrize("ratio", [1.02, 1.05, 1.1])
@pytest.mark.parametrize("reach", [20.0, 45.0, 70.0])
def test_the_ratio_is_that_of_the_pad_where_it_then_is_and_stays_in_its_band(ratio, reach):
    """Every other mix in steps of 0.1 mm that comes as near within the ratio takes no less stand-off."""
    found, before = mix(reach, ratio=ratio, longest=200.0), contact_radius(floor_pedal())
    after = contact_radius(floor_pedal(arm=250.0 + found.longer[0], stand_off=found.stand_off[0]))
    assert found.ratio_factor == pytest.approx(after / before)
    assert found.ratio_factor[0] <= ratio + 1e-9
    arms = np.arange(0.0, 30.05, 0.1)
    offs = np.maximum((reach - arms * np.sin(np.radians(15))) / np.cos(np.radians(15)), 0.0)
    keeps = np.hypot(250.0 + arms, offs) <= ratio * 250.0
    if found.shortfall[0] < 1e-9:
        assert found.stand_off[0] <= offs[keeps].min() + 1e-9
    else:
        assert not keeps.any()


def test_mix_reports_what_is_still_missing():
    assert mix(100.0, ratio=2.0).shortfall == pytest.approx(
        100.0 - 30.0 * np.sin(np.radians(15)) - 60.0 * np.cos(np.radians(15))
    )


def test_a_ratio_that_may_not_change_allows_nothing_on_an_arm_without_stand_off():
    """Pivot to pad is 250 mm whatever is added to it: any stand-off makes it longer."""
    found = mix(20.0, ratio=1.0)
    assert (found.longer[0], found.stand_off[0], found.shortfall[0]) == pytest.approx((0.0, 0.0, 20.0))


def test_upright_arm_is_left_alone():
    found = mix(30.0, pedal=floor_pedal(rest=0.0))
    assert (found.longer[0], found.stand_off[0]) == pytest.approx((0.0, 30.0))


def test_an_arm_that_would_take_the_pad_away_is_not_lengthened():
    """Arm upright, hip straight below the pad's height: a longer arm moves the pad up, away from it."""
    assert mix(5.0, toward=(0.0, -1.0), pedal=floor_pedal(rest=0.0)).longer == pytest.approx(0.0)
