"""Checks that no other file works through: each against a case worked by hand, the numbers beside it."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.checks.cleats import cleat_figures
from fitcalc.checks.feet import feet_figures
from fitcalc.checks.harness import harness_figures
from fitcalc.checks.knees import knee_figures
from fitcalc.checks.opening import opening_figures
from fitcalc.checks.pedal_figures import pedal_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.checks.shoe_sweep import half_width_turned
from fitcalc.checks.sight import sight_figures
from fitcalc.checks.template import template_figures
from fitcalc.documents.setup import PedalRework, Setup
from tests.checks.cockpits import at, seated, value, with_links, with_trunk

NEAR = 1e-6
PROBED = 0.1
"""The rim is probed every 5 deg: 3 mm beside the nearest point, 200 mm away, is 0.03 mm."""
UPRIGHT_WHEEL = {
    "steering_wheel.centre": {"x": 1000.0, "y": 0.0, "z": 500.0},
    "steering_wheel.tilt": 0.0,
    "steering_wheel.rim_diameter": 300.0,
    "steering_wheel.rim_thickness": 30.0,
}
LEVEL_FLOOR = {"footwell.floor": ((-500.0, 0.0), (1500.0, 0.0)), "footwell.heel_rest": None}


def test_knee_to_the_wheel():
    """Rim's middle 135 about (1000, 0, 500), knee at (800, -80, 400): in the rim's plane hypot(80, 100) = 128.062 out."""
    case = with_links(seated(UPRIGHT_WHEEL), knee_top=50.0)
    clutch = case.sitting.pedals["clutch"]
    leg = replace(clutch.rest, knee=at(800, 400, -80))
    pedals = dict(case.sitting.pedals) | {"clutch": replace(clutch, rest=leg, full=leg)}
    moved = replace(case, sitting=replace(case.sitting, pedals=pedals))
    expected = np.hypot(200, 135 - 128.062) - 15 - 50
    assert value(knee_figures(moved), "knee.left.wheel") == pytest.approx(expected, abs=PROBED)


def test_ground_seen_over_the_wheel():
    """Eye (1400, 800) over a ground at -50, top of the rim at (1000, 650): 850 * 400 / 150 = 2266.667."""
    case = with_trunk(seated(UPRIGHT_WHEEL | {"reference.ground": -50.0}), eye=(1400.0, 0.0, 800.0))
    assert value(sight_figures(case), "sight.ground_over_wheel") == pytest.approx(2266.6667, abs=1e-3)


def test_cockpit_opening():
    """Edges at 700 and 1500: 800 long; 560 wide as measured; drawn between its edges."""
    opening = {"opening_front": 700.0, "opening_rear": 1500.0, "opening_width": 560.0}
    figures = opening_figures(seated({f"cockpit.{key}": given for key, given in opening.items()}))
    assert value(figures, "cockpit.opening_length") == 800.0
    assert value(figures, "cockpit.opening_width") == 560.0
    assert [float(np.linalg.norm(each.evidence[1] - each.evidence[0])) for each in figures[:2]] == [
        800.0,
        560.0,
    ]


def test_template_to_a_brace_of_45_degrees():
    """Head restraint at 1560: the circle's centre 25 + 150 ahead, at x 1385; its nearest point 106.066 behind and above.

    The brace's line is x + z = 2800.
    """
    values = {
        "head_restraint": {"x": 1560.0, "z_low": 600.0, "z_high": 950.0, "width": 200.0},
        "hoops.main_top": {"x": 1700.0, "z": 1100.0},
        "hoops.brace_foot": {"x": 2200.0, "z": 600.0},
    }
    figure = next(each for each in template_figures(seated(values)) if each.id == "template.brace_line")
    nearest = figure.evidence[0][0]
    assert nearest[0] == pytest.approx(1385 + 106.06602)
    assert value([figure], "template.brace_line") == pytest.approx(
        (2800 - nearest[0] - nearest[2]) / np.sqrt(2)
    )


@pytest.mark.parametrize(
    ("driver", "id"), [("otto", "harness.shoulder.width"), ("robin", "harness.shoulder.width_restraint")]
)
def test_shoulder_webbing_by_what_is_worn(driver, id):
    """The width counts by one rule without a head-and-neck restraint (Otto) and by another with one (Robin)."""
    figures = harness_figures(seated({"harness.shoulder_width": 50.0}, driver=driver))
    assert value(figures, id) == 50.0


def test_lap_webbing():
    assert value(harness_figures(seated({"harness.lap_width": 75.0})), "harness.lap.width") == 75.0


def test_shoulder_strap_length():
    """Level to the anchor 400 mm behind the shoulder, 65 deg round a shoulder of 100 mm: 400 + 113.4464."""
    anchors = {
        f"harness.shoulder_{side}": {"x": 1800.0, "y": y, "z": 600.0}
        for side, y in (("left", -80.0), ("right", 80.0))
    }
    case = with_links(
        seated(anchors | {"seat.slots": ()}), strap_above_shoulder=100.0, strap_half_spacing=80.0
    )
    case = with_trunk(case, shoulder=(1400, 0, 500), recline=25.0)
    assert value(harness_figures(case), "harness.shoulder_left.length") == pytest.approx(513.4464, abs=1e-4)


def test_lap_strap_length():
    """Pelvis 300 wide, its flat front 100 ahead of the hip, corner of 100 mm; level to an anchor abreast, 300 behind it.

    50 on the front, a quarter of the corner 157.0796, 300 straight.
    """
    anchors = {
        f"harness.lap_{side}": {"x": 1500.0, "y": y, "z": 200.0}
        for side, y in (("left", -150.0), ("right", 150.0))
    }
    case = with_links(
        seated(anchors | {"seat.slots": (), "seat.half_width": 250.0}),
        lap_ahead_of_hip=100.0,
        lap_above_hip=50.0,
        hip_breadth=300.0,
    )
    case = with_trunk(case, hip=(1200, 0, 150), recline=0.0)
    assert value(harness_figures(case), "harness.lap_left.length") == pytest.approx(507.0796, abs=1e-3)


def test_edge_radius_is_the_slots_own():
    slot = {"strap": "shoulder_left", "x": 430.0, "y": -75.0, "z": 515.0, "length": 90.0, "edge_radius": 4.5}
    assert (
        value(harness_figures(seated({"seat.slots": (slot,)})), "harness.shoulder_left.slot_edge_radius")
        == 4.5
    )


def test_brake_ratio_is_the_pads_way_over_the_pistons():
    """A mean ratio is way over way: pad along its arc (arm 250, 12 deg: 52.36 mm) over the piston's stroke."""
    case = seated(
        {"pedals.brake.arm": 250.0, "pedals.brake.travel_angle": 12.0, "pedals.brake.cylinder.stroke": 36.0}
    )
    figures = pedal_figures(case)
    stroke = 36.0 - value(figures, "pedal.brake.stroke_left")
    assert value(figures, "pedal.brake.ratio") == pytest.approx(250 * np.radians(12) / stroke, rel=1e-6)


def test_pad_that_stands_off_slides_along_the_shoe():
    """30 mm off the arm's line, 12 deg: 30 * 12 * pi / 180 = 6.2832 mm."""
    values = {"pedals.brake.stand_off": 0.0, "pedals.brake.pad_tilt": 0.0, "pedals.brake.travel_angle": 12.0}
    case = seated(values, setup=Setup(brake=PedalRework(stand_off=30.0)))
    assert value(pedal_figures(case), "pedal.brake.slide") == pytest.approx(6.2831853)


@pytest.mark.parametrize(
    ("path", "figures", "id"),
    [
        ("footwell.bulkhead", feet_figures, "feet.bulkhead"),
        ("footwell.bulkhead", cleat_figures, "cleat.brake.bulkhead"),
    ],
)
def test_shoes_to_the_bulkhead(path, figures, id):
    """From -180 to -200: 20 mm more for the same feet."""
    near, far = (value(figures(seated({path: face})), id) for face in (-180.0, -200.0))
    assert far - near == pytest.approx(20.0, abs=NEAR)


def test_foremost_shoe_is_drawn_where_it_is():
    figure = next(
        each for each in feet_figures(seated({"footwell.bulkhead": -200.0})) if each.id == "feet.bulkhead"
    )
    assert figure.value[0] == pytest.approx(figure.evidence[0][0, 0] + 200.0, abs=NEAR)


def test_shoes_under_a_level_roof():
    """A level roof 20 mm higher leaves 20 mm more."""
    low, high = (
        value(cleat_figures(seated({"footwell.roof": ((-500.0, z), (2000.0, z))})), "cleat.brake.roof")
        for z in (420.0, 440.0)
    )
    assert high - low == pytest.approx(20.0, abs=NEAR)


def test_shoe_beside_shoe():
    """Pads alike but narrower than the shoes, 140 mm apart: 140 less half of either shoe, each turned out 5 deg."""
    alike = {"pad_width": 60.0, "cleat_height": 0.0, "cleat_spacing": None}
    values = {f"pedals.{name}.{key}": given for name in ("clutch", "brake") for key, given in alike.items()}
    values |= {"pedals.clutch.pad_y": -140.0, "pedals.brake.pad_y": 0.0}
    case = with_links(seated(values), shoe_width=100.0)
    half = half_width_turned(case.links, np.array([5.0]))[0]
    assert value(cleat_figures(case), "cleat.clutch_brake.shoes") == pytest.approx(140.0 - 2 * half, abs=NEAR)


def angle(first, corner, last):
    """Between two lines by the cosine rule; the program uses another form."""
    a, b = (end[0] - corner[0] for end in (first, last))
    return np.degrees(np.arccos(a @ b / np.linalg.norm(a) / np.linalg.norm(b)))


def test_joint_angles_agree_with_the_cosine_rule():
    case = seated()
    figures = [*posture_figures(case), *leg_figures(case)]
    brake, trunk = case.sitting.pedals["brake"].rest, case.sitting.trunk
    arm = case.sitting.hands[0]
    torso = trunk.shoulder - trunk.hip
    hand_worked = {
        "posture.hip.brake": angle(brake.hip + torso, brake.hip, brake.knee),
        "posture.ankle.brake": angle(brake.knee, brake.ankle, brake.ankle + brake.foot.sole),
        "posture.shoulder_left": angle(arm.shoulder - torso, arm.shoulder, arm.elbow),
        "posture.elbow_left": angle(arm.shoulder, arm.elbow, arm.grip),
    }
    assert {id: value(figures, id) for id in hand_worked} == pytest.approx(hand_worked, abs=1e-6)


@pytest.mark.parametrize(("back", "recline"), [((300.0, 300.0), 45.0), ((300.0, 519.6152), 30.0)])
def test_recline_is_that_of_a_straight_back(back, recline):
    """Backs of 300 to 300 and of 300 to 519.6152: 45 and 30 deg."""
    case = seated({"seat.profile": ((-400.0, 0.0), (0.0, 0.0), back), "seat.back_padding": 0.0})
    assert value(posture_figures(case), "posture.recline") == pytest.approx(recline, abs=1e-4)
