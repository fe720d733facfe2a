"""Ratio from geometry against finite differences, moments of forces, virtual work, and own reference cases.

Finite differences: central, step 0.001 deg; their own error is below 1e-8 of the value for these arms.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pedal_cases import PAIRS, floor_pedal, floor_rod

from fitcalc.making.pedal_motion import contact_radius, pad_contact, sweep
from fitcalc.making.ratio import force_ratio, mean_ratio, rod_force, travel
from fitcalc.making.rod import Rod, rod_joint, rod_length, rod_to_arm, stroke, stroke_rate

STEP = 1e-3


def per_radian_pressed(function, angle):
    """Central difference of a figure over the arm's angle, counted in the sense of pressing."""
    return (function(angle - STEP) - function(angle + STEP)) / np.radians(2.0 * STEP)


@pytest.mark.parametrize(("pedal", "rod"), PAIRS)
def test_stroke_rate_is_the_derivative_of_the_rod_length(pedal, rod):
    angle = sweep(pedal, 9)
    numeric = -per_radian_pressed(lambda at: rod_length(pedal, rod, at), angle)
    assert stroke_rate(pedal, rod, angle) == pytest.approx(numeric, rel=1e-6)


@pytest.mark.parametrize(("pedal", "rod"), PAIRS)
def test_ratio_from_geometry_equals_ratio_from_forces(pedal, rod):
    """Moment equilibrium about the pivot with plain force vectors, at every position of the travel."""
    angle = sweep(pedal, 9)
    joint, pad = rod_joint(pedal, rod, angle) - pedal.pivot, pad_contact(pedal, angle) - pedal.pivot
    along = rod.anchor - pedal.pivot - joint
    unit = along / np.linalg.norm(along, axis=-1, keepdims=True)
    rod_moment = joint[..., 0] * unit[..., 1] - joint[..., 1] * unit[..., 0]
    foot_moment = np.linalg.norm(pad, axis=-1)
    assert travel(pedal, rod, 9).ratio == pytest.approx(foot_moment / np.abs(rod_moment), rel=1e-12)


@pytest.mark.parametrize(("pedal", "rod"), PAIRS)
def test_virtual_work_over_the_whole_travel(pedal, rod):
    """Work of 1 N square to the pad's radius equals the integral of rod force over stroke (Simpson)."""
    over = travel(pedal, rod, 101)
    weight = np.r_[1.0, np.tile([4.0, 2.0], 49), 4.0, 1.0] / 300.0
    rod_work = np.sum(over.ratio * np.abs(stroke_rate(pedal, rod, over.angle)) * weight) * np.radians(
        pedal.travel
    )
    assert rod_work == pytest.approx(contact_radius(pedal) * np.radians(pedal.travel), rel=1e-9)


def test_reference_case():
    over, pedal = travel(floor_pedal(), floor_rod(), 3), floor_pedal()
    assert over.ratio[0, [0, -1]] == pytest.approx([5.1942355, 5.0114763], rel=1e-6)
    assert over.stroke[0, -1] == pytest.approx(17.272317, rel=1e-6)
    assert mean_ratio(pedal, over.stroke[:, -1]) == pytest.approx(5.052389, rel=1e-6)


def test_longer_arm_reference_case():
    over = travel(floor_pedal(arm=290.0), floor_rod(), 3)
    assert over.ratio[0, [0, -1]] == pytest.approx([6.0253131, 5.8133125], rel=1e-6)
    assert over.stroke[0, -1] == pytest.approx(17.272317, rel=1e-6)


def test_cases_are_independent():
    both = np.array([[-250.0, 45.0], [-200.0, 60.0]])
    pedal = floor_pedal(
        arm=np.r_[250.0, 250.0], stand_off=np.zeros(2), rest=np.full(2, 15.0), travel=np.full(2, 20.0)
    )
    together = stroke(pedal, Rod(np.full(2, 50.0), np.zeros(2), both), sweep(pedal, 4))
    alone = [
        stroke(floor_pedal(), Rod(np.r_[50.0], np.r_[0.0], end[None]), sweep(floor_pedal(), 4))[0]
        for end in both
    ]
    assert together == pytest.approx(np.array(alone))


def test_ratio_of_a_toggle_stays_finite():
    dead = Rod(np.r_[50.0], np.r_[0.0], np.array([[0.0, 120.0]]))
    pedal = floor_pedal(rest=10.0)
    assert np.all(np.isfinite(travel(pedal, dead, 3).ratio))


def test_friction_takes_its_share_of_the_rod_force():
    assert rod_force(np.r_[500.0], np.r_[5.0], np.r_[0.8]) == pytest.approx(2000.0)


@given(
    arm=st.floats(120, 400), longer=st.floats(1, 80), rest=st.floats(-20, 30), travel_angle=st.floats(5, 40)
)
def test_longer_arm_raises_ratio_and_pad_travel_together(arm, longer, rest, travel_angle):
    before, after = (
        travel(floor_pedal(size, 0.0, rest, travel_angle), floor_rod(), 5) for size in (arm, arm + longer)
    )
    assert after.ratio / before.ratio == pytest.approx((arm + longer) / arm, rel=1e-9)
    moved = [np.linalg.norm(over.pad[0, -1] - over.pad[0, 0]) for over in (before, after)]
    assert moved[1] / moved[0] == pytest.approx((arm + longer) / arm, rel=1e-9)


def test_a_ratio_has_no_sign_whether_the_rod_is_pushed_or_pulled():
    arms = np.array([-250.0, 250.0]), np.array([50.0, -50.0])
    assert force_ratio(*arms) == pytest.approx([5.0, 5.0])
    pulled = mean_ratio(floor_pedal(), np.r_[-17.0])
    assert pulled == pytest.approx(mean_ratio(floor_pedal(), np.r_[17.0]))


@pytest.mark.parametrize("expected", [30.0, 90.0, 119.5])
def test_rod_to_arm_by_hand(expected):
    """Arm upright, joint 50 mm above the pivot, rod ahead: angle from straight up."""
    turn = np.radians(expected)
    rod = Rod(np.r_[50.0], np.r_[0.0], np.array([[-100.0 * np.sin(turn), 50.0 + 100.0 * np.cos(turn)]]))
    assert rod_to_arm(floor_pedal(rest=0.0), rod, np.array([[0.0]])) == pytest.approx(expected)


@pytest.mark.parametrize(("pedal", "rod"), PAIRS)
@pytest.mark.parametrize("angle", [-20.0, 0.0, 35.0])
def test_rod_to_arm_agrees_with_the_cosine_rule(pedal, rod, angle):
    """Outer angle at the joint of the triangle pivot, joint, far end; the program uses sine and cosine."""
    at = np.array([[angle]])
    joint = rod_joint(pedal, rod, at)[0, 0]
    spoke, reach = np.linalg.norm(joint - pedal.pivot[0]), np.linalg.norm(rod.anchor[0] - joint)
    across = np.linalg.norm(rod.anchor[0] - pedal.pivot[0])
    inside = np.degrees(np.arccos((spoke**2 + reach**2 - across**2) / (2 * spoke * reach)))
    assert rod_to_arm(pedal, rod, at)[0, 0] == pytest.approx(180.0 - inside, abs=1e-6)
