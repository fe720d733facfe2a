"""Reach and sight: cases worked by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.checks.reach import ELBOW_RADIUS, reach_figures
from fitcalc.checks.sight import NEVER, ground_seen, sight_figures
from tests.checks.cockpits import at, by_id, mirrored, seated, seated_in, value, with_links, with_trunk

NEAR = 1e-6
LEVEL = np.array([0.0])
EYE, EDGE = at(0.0, 900.0), at(-700.0, 780.0)


def test_ground_seen_over_an_edge():
    """Eye 900 above ground, edge 700 ahead at 780: 900 * 700 / 120 = 5250 mm."""
    assert ground_seen(EYE, EDGE, LEVEL) == pytest.approx(5250.0, rel=1e-9)


def test_top_of_a_600_mm_object_seen_over_an_edge():
    """300 * 700 / 120 = 1750 mm."""
    assert ground_seen(EYE, EDGE, np.array([600.0])) == pytest.approx(1750.0, rel=1e-9)


@pytest.mark.parametrize(("eye", "edge", "expected"), [(1.0, 0.0, -37.916667), (0.0, 1.0, 43.75)])
def test_sight_by_the_height_of_eye_and_edge(eye, edge, expected):
    """Slopes worked from the formula; central difference over 0.002 mm, whose own error is below 1e-6."""
    step = np.array([0.0, 0.0, 1e-3])
    far, near = (ground_seen(EYE + sign * eye * step, EDGE + sign * edge * step, LEVEL) for sign in (1, -1))
    assert (far - near)[0] / 2e-3 == pytest.approx(expected, rel=1e-5)


@pytest.mark.parametrize("edge_z", [900.0, 950.0, 899.999])
def test_an_edge_at_eye_height_hides_the_ground_for_good(edge_z):
    assert ground_seen(EYE, at(-700.0, edge_z), LEVEL) == NEVER


def test_the_edge_that_hides_most_counts():
    """Eye (1300, 800) over a ground at -50; nose (-400, 300): 850 * 1700 / 500; scuttle (700, 600): 850 * 600 / 200."""
    values = {"sight_edges": ((-400.0, 300.0), (700.0, 600.0)), "reference.ground": -50.0}
    case = with_trunk(seated(values), eye=(1300.0, 0.0, 800.0))
    assert value(sight_figures(case), "sight.ground") == pytest.approx(max(850 * 1700 / 500, 850 * 600 / 200))


@given(st.floats(600, 1200), st.floats(0, 200))
def test_a_higher_eye_never_sees_less(height, more):
    low, high = (ground_seen(at(0.0, z), EDGE, LEVEL)[0] for z in (height, height + more))
    assert high <= low + NEAR


def test_straight_arm_beyond_the_knob():
    """Arm 280 + 350, shoulder to knob (300, 0, 400): 630 - 500."""
    knob = {"gear_lever": {"knobs": ({"x": 1100.0, "y": 190.0, "z": 300.0},)}}
    case = with_links(seated(knob), upper_arm=280.0, forearm=350.0)
    case = with_trunk(case, shoulder_right=(1400.0, 190.0, 700.0), shoulder_left=(1400.0, -190.0, 700.0))
    assert value(reach_figures(case), "reach.gear.1") == pytest.approx(130.0, abs=NEAR)


def test_a_control_is_reached_with_its_own_hand():
    """Left shoulder at y = -190, control 380 across: 600 - hypot(380, 300)."""
    values = {
        "controls": ({"name": "Fuel cut-off!", "hand": "left", "at": {"x": 1100.0, "y": 190.0, "z": 700.0}},)
    }
    case = with_links(seated(values), upper_arm=280.0, forearm=320.0)
    case = with_trunk(case, shoulder_left=(1400.0, -190.0, 700.0))
    expected = 600.0 - np.hypot(380.0, 300.0)
    assert value(reach_figures(case), "reach.control.fuel_cut_off") == pytest.approx(expected, abs=NEAR)


def test_elbow_room_falls_with_the_body_side():
    wide, narrow = (reach_figures(seated({"cockpit.side_half_width": half})) for half in (320.0, 300.0))
    assert value(wide, "reach.elbow_left") - value(narrow, "reach.elbow_left") == pytest.approx(
        20.0, abs=NEAR
    )
    elbow = np.abs(by_id(wide)["reach.elbow_left"].evidence[0][0, 1])
    assert value(wide, "reach.elbow_left") == pytest.approx(320.0 - elbow - ELBOW_RADIUS, abs=NEAR)


def test_a_mirror_swaps_the_elbows():
    chassis = seated().car
    here, there = (reach_figures(seated_in(each)) for each in (chassis, mirrored(chassis)))
    assert value(there, "reach.elbow_right") == pytest.approx(value(here, "reach.elbow_left"), abs=NEAR)


@pytest.mark.parametrize(
    ("path", "id"),
    [("gear_lever", "reach.gear.1"), ("steering_wheel", "reach.elbow_left"), ("cockpit", "reach.elbow_left")],
)
def test_what_was_not_measured_is_named(path, id):
    assert by_id(reach_figures(seated({path: None})))[id].missing == path
