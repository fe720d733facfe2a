"""Seat mounts: own reference case turned into the house frame, equilibrium, load levels.

The case was made with x forward; here forward is -x, so the front pair stands at negative x.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.making.bolts import bolt
from fitcalc.making.seat_levels import directions, inertia_force, seat_levels
from fitcalc.making.seat_mounts import bolt_use, check_mounts, elastic_push, mount_shear, pivot_tension

FRONT_LEFT, FRONT_RIGHT, REAR_LEFT, REAR_RIGHT = range(4)
MOUNTS = np.array([[[-175.0, -200.0], [-175.0, 200.0], [175.0, -200.0], [175.0, 200.0]]])
AT = np.array([[0.0, 0.0, 300.0]])
MASS = np.r_[90.0]
FORWARD = inertia_force(MASS, (-20.0, 0.0, 0.0)) + inertia_force(MASS, (0.0, 0.0, -1.0))
SIDEWAYS = inertia_force(MASS, (0.0, 15.0, 0.0))
scatter = st.lists(st.tuples(st.floats(-300, 300), st.floats(-300, 300)), min_size=1, max_size=3)


def test_forward_load_presses_the_front_and_lifts_the_rear():
    push = elastic_push(MOUNTS, FORWARD, AT)[0]
    assert push[[FRONT_LEFT, FRONT_RIGHT]].sum() == pytest.approx(15571.559, rel=1e-6)
    assert push[[REAR_LEFT, REAR_RIGHT]].sum() == pytest.approx(-14688.961, rel=1e-6)


def test_load_to_the_right_presses_the_right():
    push = elastic_push(MOUNTS, SIDEWAYS, AT)[0]
    assert push[[FRONT_RIGHT, REAR_RIGHT]].sum() == pytest.approx(9929.2331, rel=1e-6)


def test_reference_shear_and_bolt_use():
    shear, push = mount_shear(MOUNTS, FORWARD, AT), elastic_push(MOUNTS, FORWARD, AT)
    assert shear == pytest.approx(np.full((1, 4), 4412.9925), rel=1e-6)
    assert push[0, REAR_LEFT] == pytest.approx(-7344.4804, rel=1e-6)
    assert bolt_use(shear, -push, bolt("M8"), "8.8")[0, REAR_LEFT] == pytest.approx(0.56283898, rel=1e-6)


def test_check_takes_the_worse_of_both_methods():
    check = check_mounts(MOUNTS, FORWARD, AT, bolt("M8"), "8.8")
    assert np.all(check.tension >= np.maximum(-check.push, pivot_tension(MOUNTS, FORWARD, AT)) - 1e-9)
    assert check.worst == pytest.approx(np.max(check.used))


@given(scatter, st.tuples(*[st.floats(-2e4, 2e4)] * 3), st.tuples(*[st.floats(-200, 400)] * 3))
def test_mounts_balance_any_load(extra, force, at):
    """Sum of forces and of moments about the frame's origin, for patterns without symmetry."""
    mounts = np.array([[*MOUNTS[0], *extra]])
    load, place = np.array([force]), np.array([at])
    push = elastic_push(mounts, load, place)[0]
    up = np.column_stack([mounts[0], np.zeros(len(push))])
    carried = np.cross(up, np.column_stack([np.zeros((len(push), 2)), push])).sum(axis=0)
    assert push.sum() == pytest.approx(-force[2], abs=1e-6)
    assert (carried + np.cross(at, force))[:2] == pytest.approx([0.0, 0.0], abs=0.01)


def test_edge_pivot_pulls_only_the_far_row():
    tension = pivot_tension(MOUNTS, inertia_force(MASS, (-20.0, 0.0, 0.0)), AT)[0]
    expected = 17651.97 * 300.0 / 350.0 / 2.0
    assert tension == pytest.approx([0.0, 0.0, expected, expected])


def test_rearward_load_pulls_the_front_row_as_hard():
    tension = pivot_tension(MOUNTS, inertia_force(MASS, (20.0, 0.0, 0.0)), AT)[0]
    expected = 17651.97 * 300.0 / 350.0 / 2.0
    assert tension == pytest.approx([expected, expected, 0.0, 0.0])


def test_mounts_in_one_line_fail_by_far():
    line = np.array([[[0.0, -200.0], [0.0, 0.0], [0.0, 200.0]]])
    assert check_mounts(line, FORWARD, AT, bolt("M8"), "8.8").worst > 10.0


def test_upward_load_pulls_every_bolt():
    tension = check_mounts(MOUNTS, inertia_force(MASS, (0.0, 0.0, 7.5)), AT, bolt("M8"), "8.8").tension
    assert tension == pytest.approx(np.full((1, 4), 90 * 9.80665 * 7.5 / 4))


def test_load_off_centre_twists_the_pattern():
    """Forward load at the right: N mm over the sum of squared radii, worst on the right-hand mounts."""
    per_mm = 150.0 * 17651.97 / (4.0 * (175.0**2 + 200.0**2))
    shear = mount_shear(MOUNTS, FORWARD, np.array([[0.0, 150.0, 300.0]]))[0]
    right, left = (np.hypot(17651.97 / 4.0 + side * 200.0 * per_mm, 175.0 * per_mm) for side in (1, -1))
    assert shear == pytest.approx([left, right, left, right], rel=1e-6)


@given(st.floats(1.0, 3.0))
def test_raised_seat_pulls_harder(factor):
    low, high = (
        check_mounts(MOUNTS, FORWARD, AT * [[1, 1, up]], bolt("M8"), "8.8").worst for up in (1.0, factor)
    )
    assert high >= low


def test_every_direction_of_a_level_is_unfolded():
    sailplane = next(level for level in seat_levels() if level.id == "sailplane")
    assert [name for name, _ in directions(sailplane)] == [
        "forward",
        "to the right",
        "to the left",
        "upward",
        "downward",
    ]
    assert dict(directions(sailplane))["forward"] == (-15.0, 0.0, 0.0)


def test_rearward_load_points_rearward():
    road = next(level for level in seat_levels() if level.id == "road seat anchorage")
    assert dict(directions(road)) == {"forward": (-20.0, 0.0, 0.0), "rearward": (20.0, 0.0, 0.0)}
