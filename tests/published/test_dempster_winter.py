"""The second published segment table, and how far it lies from the first.

Source: Dempster's fractions as in Winter, Biomechanics and Motor Control of Human Movement (second-hand).
HAT: head, arms and trunk, 0.678 of the body's mass.
"""

import pytest

from fitcalc.body.mass import table

pytestmark = pytest.mark.published
PAIRED = ("upper_arm", "forearm", "hand", "thigh", "shank", "foot")


def mass(name):
    return float(table("dempster_winter")[name]["mass"])


def test_fractions_sum_to_the_whole():
    assert sum(2 * mass(name) for name in PAIRED) + mass("trunk") + mass("head_neck") == pytest.approx(100.0)


def test_head_arms_and_trunk():
    arms = sum(2 * mass(name) for name in ("upper_arm", "forearm", "hand"))
    assert arms + mass("trunk") + mass("head_neck") == pytest.approx(67.8)


@pytest.mark.parametrize(("column", "printed"), [("men", 42), ("women", 48)])
def test_thigh_is_heavier_in_de_leva_by(column, printed):
    heavier = float(table("de_leva_1996")["thigh"][f"mass_{column}"]) / mass("thigh") - 1
    assert 100 * heavier == pytest.approx(printed, abs=0.5)
