"""Room about the wheel: cases worked by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.checks.rim import fists
from fitcalc.checks.wheel import FIST_RADIUS, wheel_figures
from fitcalc.documents.setup import Setup
from tests.checks.cockpits import by_id, seated, value, with_links, with_trunk

NEAR = 1e-6
UPRIGHT = {
    "steering_wheel.centre": {"x": 900.0, "y": 0.0, "z": 600.0},
    "steering_wheel.rim_diameter": 270.0,
    "steering_wheel.rim_thickness": 30.0,
    "steering_wheel.tilt": 0.0,
    "steering_wheel.lock": 180.0,
    "hoops.front_top": {"x": 700.0, "z": 760.0},
    "hoops.main_top": {"x": 1600.0, "z": 1060.0},
    "hoops.tube": 40.0,
    "cockpit.opening_front": 800.0,
    "cockpit.side_half_width": 260.0,
    "footwell.roof": ((0.0, 800.0), (2000.0, 800.0)),
}


@pytest.mark.parametrize(
    ("id", "expected"),
    [
        ("wheel.top_below_hoop", 760 - 735),
        ("wheel.hoop_distance", 885 - 720),
        ("wheel.behind_opening", 885 - 800),
        ("wheel.side", 260 - 120 - FIST_RADIUS),
        ("wheel.dash", 800 - 720 - FIST_RADIUS),
    ],
)
def test_upright_wheel(id, expected):
    """Rim from z = 465 to 735, its middle at a radius of 120; its front 15 mm ahead of its plane at 900."""
    assert value(wheel_figures(seated(UPRIGHT)), id) == pytest.approx(expected, abs=NEAR)


def test_wheel_below_the_line():
    """Middle of the rim's top (900, 720), its section 15 mm round; line rises 300 in 900 from (700, 760)."""
    expected = (760 + 200 / 3 - 720) * 900 / np.hypot(900, 300) - 15
    assert value(wheel_figures(seated(UPRIGHT)), "wheel.line") == pytest.approx(expected, abs=NEAR)


def test_wheel_to_a_chest_that_stands_upright():
    """Torso line at x = 1200, chest 250 deep of which 140 lie behind the line: 300 - 110 - 15."""
    case = with_trunk(seated(UPRIGHT), hip=(1200.0, 0.0, 200.0), shoulder=(1200.0, 0.0, 700.0))
    case = with_links(case, chest_depth=250.0, abdomen_depth=230.0, hip_ahead_of_back=140.0)
    assert value(wheel_figures(case), "wheel.chest") == pytest.approx(175.0, abs=NEAR)


def test_raising_the_wheel_gives_thighs_and_knuckles_that_much_room_at_most():
    low, high = (
        wheel_figures(seated(UPRIGHT | {"steering_wheel.centre": {"x": 900.0, "y": 0.0, "z": z}}))
        for z in (600.0, 620.0)
    )
    for id in ("wheel.thigh_left", "wheel.thigh_right", "wheel.knuckles_thigh"):
        assert 0 < value(high, id) - value(low, id) <= 20 + NEAR


@given(st.floats(0, 60))
def test_knuckles_lose_what_the_fist_adds_to_the_rim(lock):
    """With little turning the fists stay away from the thighs, so room only falls as the range grows."""
    rooms = [
        value(wheel_figures(seated(UPRIGHT | {"steering_wheel.lock": 30.0 + more})), "wheel.knuckles_thigh")
        for more in (0.0, lock)
    ]
    assert rooms[1] <= rooms[0] + 0.5


def test_without_a_wheel_everything_is_named_as_missing():
    figures = wheel_figures(seated({"steering_wheel": None}))
    assert {figure.missing for figure in figures} == {"steering_wheel"}
    assert set(by_id(figures)) == set(by_id(wheel_figures(seated())))


def test_the_thigh_s_figure_is_shown_at_the_lowest_point_of_the_rim():
    lowest = by_id(wheel_figures(seated(UPRIGHT)))["wheel.thigh_left"].evidence[0]
    assert lowest == pytest.approx(np.array([[900.0, 0.0, 465.0]]), abs=NEAR)


def test_the_front_of_a_wheel_that_leans_back_is_its_lower_end():
    """Leaning 20 deg rearward: the middle of the lower end stands 120 sin 20 ahead of 900, its section 15 more."""
    leaning = seated(UPRIGHT | {"steering_wheel.tilt": -20.0})
    expected = 900 - 120 * np.sin(np.radians(20)) - 15 - 800
    assert value(wheel_figures(leaning), "wheel.behind_opening") == pytest.approx(expected, abs=NEAR)


def test_a_leg_that_works_no_pedal_is_not_assessed_against_the_rim():
    figures = by_id(wheel_figures(seated({"pedals.clutch": None, "pedals.brake.foot": "right"})))
    assert figures["wheel.thigh_left"].value is None
    assert "left foot" in figures["wheel.thigh_left"].missing
    assert figures["wheel.thigh_right"].value is not None


def test_fists_go_round_the_rim_from_nine_and_three_o_clock():
    """Middle of the rim 120 mm about (900, 0, 600), upright; 90 deg of lock: at 9 and 3, and a quarter round from there."""
    wheel = seated(UPRIGHT | {"steering_wheel.lock": 90.0}).car.steering_wheel
    places = fists(wheel, Setup())[0] - [900.0, 0.0, 600.0]
    middle, ends = places[[6, 19]], places[[0, 12]]
    assert middle == pytest.approx(np.array([[0, -120, 0], [0, 120, 0]]), abs=NEAR)
    assert ends == pytest.approx(np.array([[0, 0, -120], [0, 0, 120]]), abs=NEAR)


def test_chest_is_shown_beside_the_part_of_the_rim_at_its_height():
    """Shoulders at 640, leant forward of the hips: 40 above the wheel's middle the rim is sqrt(120^2 - 40^2) to the right."""
    case = with_trunk(seated(UPRIGHT), hip=(1400.0, 0.0, 150.0), shoulder=(1200.0, 0.0, 640.0))
    shown = by_id(wheel_figures(case))["wheel.chest"].evidence[0][0]
    assert shown == pytest.approx([900.0, np.sqrt(120**2 - 40**2), 640.0], abs=NEAR)
