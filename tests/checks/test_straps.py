"""The straps' angles, spacings and forces, against cases worked by hand; numbers stand in each test."""

from dataclasses import replace

import numpy as np
import pytest
from cockpits import by_id, car, mirrored, seated, seated_in, value, with_links, with_trunk
from scipy.optimize import minimize_scalar

from fitcalc.checks.harness import harness_figures, strap_drop
from fitcalc.checks.pelvis_straps import lap_slot_line, slotted_lap, straight_lap
from fitcalc.checks.shoulder_straps import slotted_shoulder, straight_shoulder
from fitcalc.checks.strap_forces import edge_force, spine_load
from fitcalc.checks.strap_heights import rim_heights, shoulder_heights
from fitcalc.checks.straps import lap_anchor, slot_ends, slot_for
from fitcalc.documents.car import Car
from fitcalc.documents.setup import Setup
from fitcalc.posture.cases import spread

SIN, COS = 60 / np.hypot(300, 60), 300 / np.hypot(300, 60)
LEAVES = (1500 + 100 * SIN, 500 + 100 * COS)
ANCHOR = {"x": LEAVES[0] + 300, "z": LEAVES[1] - 60}
"""Shoulder joint at 1500, 500 with the strap 100 mm above it: a strap that drops 60 mm on 300 mm leaves here."""


def by_hand(anchor=None, setup=None, half_spacing=80.0, **values):
    places = {
        f"harness.shoulder_{side}": {**ANCHOR, **(anchor or {}), "y": y}
        for side, y in (("left", -80), ("right", 80))
    }
    case = seated(
        {**places, **{key.replace("__", "."): v for key, v in values.items()}}, setup=setup or Setup()
    )
    sized = with_links(case, strap_above_shoulder=100.0, strap_half_spacing=half_spacing)
    return with_trunk(sized, shoulder=(1500, 0, 500), recline=25.0)


def top_of_back():
    seat = car().seat
    return seat.junction.x + seat.profile[-1][0], seat.junction.z + seat.profile[-1][1]


def test_shoulder_strap_by_hand():
    """60 mm down on 300 mm: 11.309932 deg, 0.18364032 deg for each mm of height."""
    figures = harness_figures(by_hand())
    assert value(figures, "harness.shoulder_left.side_angle") == pytest.approx(11.309932)
    assert value(figures, "harness.shoulder_left.sensitivity") == pytest.approx(0.18364032)


def test_sensitivity_is_what_raising_the_anchor_gains():
    low, high = (harness_figures(by_hand(setup=Setup(shoulder_anchor_raise=each))) for each in (-1.0, 1.0))
    gained = value(low, "harness.shoulder_left.side_angle") - value(high, "harness.shoulder_left.side_angle")
    assert gained / 2 == pytest.approx(0.18364032, rel=1e-4)


@pytest.mark.parametrize(
    ("end", "drop"), [((300, -60), 11.309932), ((300, 0), 0), ((300, 52.90), -10), ((200, -200), 45)]
)
def test_strap_drop_sign(end, drop):
    """Below the start is positive, above it negative."""
    start = np.zeros((1, 3))
    assert strap_drop(start, start + [[end[0], 0, end[1]]])[0] == pytest.approx(drop, abs=2e-3)


def test_rim_angle_is_taken_from_the_backrests_upper_rim():
    """Anchor 100 behind and 100 below the rim: 45 deg."""
    x, z = top_of_back()
    figures = harness_figures(by_hand({"x": x + 100, "z": z - 100}))
    assert value(figures, "harness.shoulder_left.rim_angle") == pytest.approx(45)
    assert value(figures, "harness.shoulder_left.behind_seat") == pytest.approx(100)


def test_plan_angle_is_positive_when_straps_converge():
    converging = harness_figures(by_hand(half_spacing=120.0))
    diverging = harness_figures(by_hand(half_spacing=40.0))
    for side in ("left", "right"):
        assert value(converging, f"harness.shoulder_{side}.plan_angle") > 0
        assert value(diverging, f"harness.shoulder_{side}.plan_angle") < 0


def test_plan_angle_by_hand():
    """40 mm inward over the whole strap, developed on arc and run; 300 mm of it level behind the shoulder."""
    figures = harness_figures(by_hand(half_spacing=120.0))
    run = np.hypot(300, 60)
    arc = 100 * np.radians(90 - 25 + 11.309932)
    inward = 40 * run / (run + arc)
    expected = np.degrees(np.arctan2(inward, 300))
    assert value(figures, "harness.shoulder_left.plan_angle") == pytest.approx(expected)


def test_guide_ends_the_angle_and_carries_the_spacing():
    """Level over the guide: top of the shoulder and top of the tube both at 600."""
    guide = {"x": 1700.0, "z": 580.0, "diameter": 40.0}
    case = by_hand({"x": 1900.0, "z": 300.0}, harness__guide=guide)
    assert value(harness_figures(case), "harness.shoulder_left.side_angle") == pytest.approx(0, abs=1e-9)
    strap = straight_shoulder(case.car.harness, "left", case)
    assert strap.first[0, [0, 2]] == pytest.approx([1700, 600])


def test_spacing_and_inner_gap_on_a_restraint():
    """160 mm between the middles of 75 mm straps leave 85 mm."""
    apart = {"harness.shoulder_left.y": -80.0, "harness.shoulder_right.y": 80.0}
    figures = harness_figures(seated(apart, driver="robin"))
    assert value(figures, "harness.shoulder.spacing") == 160
    assert value(figures, "harness.shoulder.inner_gap") == 85


def test_inner_gap_is_asked_for_only_with_a_restraint():
    assert "harness.shoulder.inner_gap" not in by_id(harness_figures(seated(driver="otto")))


@pytest.mark.parametrize(("recline", "rear"), [(0, 1710.1007), (25, -435.77871), (40, -1710.1007)])
def test_spine_load_by_hand(recline, rear):
    """Anchor 20 deg below, 5 kN behind and 4 kN before the shoulder; square to the spine at 20 deg of recline."""
    assert spine_load(4000.0, 5000.0, 20.0, recline) == pytest.approx(4000 + rear)


def test_edge_force_by_hand():
    """35 deg at 5 kN: 3007 N with as much beyond the edge; 2875 N with 4292 N beyond."""
    assert edge_force(5000.0, 5000.0, 35.0) == pytest.approx(3007.058)
    assert edge_force(5000.0, 4291.866, 35.0) == pytest.approx(2874.5792)
    assert edge_force(5000.0, 5000.0, 0.0) == pytest.approx(0.0, abs=1e-3)


def test_lap_strap_by_hand():
    """Contact 100 ahead of and 50 above a hip at 1200, 150, trunk upright: to 1160, 85 it drops 115 on 60."""
    case = with_links(seated(), lap_ahead_of_hip=100.0, lap_above_hip=50.0)
    case = with_trunk(case, hip=(1200, 0, 150), recline=0.0)
    case = _with_harness(case, lap_left={"x": 1160.0, "y": -215.0, "z": 85.0})
    assert value(harness_figures(case), "harness.lap_left.side_angle") == pytest.approx(62.447188)


def test_lap_junction_by_hand():
    """A strap straight down 50 mm ahead of the junction."""
    x = car().seat.junction.x - 50
    case = with_links(seated(), lap_ahead_of_hip=0.0, lap_above_hip=50.0)
    case = with_trunk(case, hip=(x, 0, 150), recline=0.0)
    case = _with_harness(case, lap_left={"x": x, "y": -215.0, "z": 5.0})
    assert value(harness_figures(case), "harness.lap_left.junction") == pytest.approx(50)


@pytest.mark.parametrize(("x", "lean"), [(1200.0, 0), (1250.0, 26.565051), (1150.0, -26.565051)])
def test_crotch_straps_lean_rearward_is_positive(x, lean):
    """Groin at 1200, 105 and anchors 100 below it."""
    case = with_links(seated(), groin_ahead_of_hip=0.0, groin_above_hip=-45.0)
    case = with_trunk(case, hip=(1200, 0, 150), recline=0.0)
    case = _with_harness(case, crotch=tuple({"x": x, "y": y, "z": 5.0} for y in (-50.0, 50.0)))
    assert value(harness_figures(case), "harness.crotch.side_angle") == pytest.approx(lean)
    assert value(harness_figures(case), "harness.crotch.spacing") == 100


def test_single_crotch_strap_in_line_with_the_chest():
    """Torso 30 deg back: an anchor 100 below and 100 tan 40 = 83.91 ahead is 10 deg ahead of the chest's line."""
    case = with_links(seated(), groin_ahead_of_hip=0.0, groin_above_hip=0.0)
    case = with_trunk(case, hip=(1200, 0, 105), recline=30.0)
    case = _with_harness(case, points=5, crotch=({"x": 1200 - 83.909963, "y": 0.0, "z": 5.0},))
    assert value(harness_figures(case), "harness.crotch.chest_line_angle") == pytest.approx(10)


@pytest.mark.parametrize("points", [4, 7])
def test_other_harnesses_are_measured(points):
    crotch = {4: (), 7: tuple({"x": 1090.0, "y": y, "z": 5.0} for y in (50.0, 0.0, -50.0))}[points]
    figures = by_id(harness_figures(_with_harness(seated(), points=points, crotch=crotch)))
    assert figures["harness.points"].value[0] == points
    assert ("harness.crotch.spacing" in figures) is (points == 7)


def test_without_a_harness_nothing_is_measured():
    chassis = car().model_copy(update={"harness": None})
    figures = harness_figures(seated_in(chassis))
    assert figures
    assert all(figure.value is None and figure.missing == "harness" for figure in figures)


def test_mirrored_car_has_the_same_straps():
    here, there = (by_id(harness_figures(seated_in(each))) for each in (car(), mirrored(car())))
    sideways = "slot_y"
    for id, figure in here.items():
        swapped = id.replace("left", "*").replace("right", "left").replace("*", "right")
        sign = -1 if id.endswith(sideways) else 1
        assert there[swapped].value == pytest.approx(sign * figure.value), id


@pytest.mark.parametrize("name", ["hillclimb", "student", "upright"])
def test_many_cases_agree_with_each_alone(name):
    heights = np.linspace(-150, 200, 7)
    many = seated(
        name=name, setup=spread(Setup(), {"shoulder_anchor_raise": heights, "recline": heights / 40})
    )
    together = by_id(harness_figures(many))
    for index, height in enumerate(heights):
        alone = harness_figures(
            seated(name=name, setup=Setup(shoulder_anchor_raise=height, recline=height / 40))
        )
        for figure in alone:
            assert together[figure.id].value[index] == pytest.approx(figure.value[0]), figure.id


@pytest.mark.parametrize("guide", [None, {"x": 1700.0, "z": 575.0, "diameter": 40.0}])
@pytest.mark.parametrize("drop", [0.0, 10.0, 20.0])
def test_heights_that_pass_are_where_the_angle_meets_its_bound(guide, drop):
    low = {"harness.shoulder_left.z": 350.0, "harness.shoulder_left.x": 1800.0}
    case = seated({"harness.guide": guide, **low})
    bound = np.array([drop])
    window = shoulder_heights(case.car.harness, "left", bound, None, case)
    assert window.on_guide[0] == (guide is not None)
    height = float(window.high[0])
    place = {"harness.guide": {**guide, "z": height}} if guide else {"harness.shoulder_left.z": height}
    moved = seated({**low, **place})
    assert value(harness_figures(moved), "harness.shoulder_left.side_angle") == pytest.approx(drop, abs=1e-6)


def test_heights_from_the_rim():
    """Anchor 38 mm behind the rim: 38 tan 45 lower at most, level at best."""
    x, z = top_of_back()
    case = seated({"harness.shoulder_left.x": x + 38})
    window = rim_heights(case.car.harness, "left", np.array([0.0]), np.array([45.0]), case)
    assert window.high == pytest.approx(z)
    assert window.low == pytest.approx(z - 38)


def test_unbounded_limits_leave_the_window_open():
    case = seated()
    window = shoulder_heights(case.car.harness, "left", None, None, case)
    assert window.low is None
    assert window.high is None
    assert window.present == pytest.approx(case.car.harness.shoulder_left.z)


def test_strap_through_its_slot_is_longer_than_the_straight_one():
    case = seated()
    harness = case.car.harness
    for straight, slotted, name in (
        (straight_shoulder, slotted_shoulder, "shoulder"),
        (straight_lap, slotted_lap, "lap"),
    ):
        slot = slot_for(f"{name}_left", case)
        assert slotted(harness, "left", slot, case).length >= straight(harness, "left", case).length


@pytest.mark.parametrize("driver", ["ines", "magnus", "otto", "robin"])
def test_lap_strap_finds_the_shortest_way_through_its_slot(driver):
    """Independent: scipy moves the gate along the slot; each gate is met by the strap in its own plane."""
    case = seated(driver=driver)
    harness = case.car.harness
    slot = slot_for("lap_left", case)
    ours = slotted_lap(harness, "left", slot, case)

    def length(share):
        anchor = ours.anchor
        return _lap_length_through(share, slot, case) + np.linalg.norm(anchor - _gate(share, slot, case))

    best = minimize_scalar(length, bounds=(0, 1), method="bounded", options={"xatol": 1e-6}).fun
    assert ours.length[0] == pytest.approx(best, abs=0.1)


GUIDE = {"x": 1700.0, "z": 575.0, "diameter": 40.0}


@pytest.mark.parametrize("guide", [None, GUIDE])
def test_drawn_shoulder_strap_drifts_evenly(guide):
    """Rolled out flat a strap is straight: the same drift for each mm, over shoulder, run and guide.

    Drawn in nine chords over the shoulder, 0.1 % short of the arc, and in one of 30 deg round the guide, 1.1 % short.
    """
    case = by_hand({"x": 1900.0, "z": 480.0}, half_spacing=120.0, harness__guide=guide)
    step = np.diff(straight_shoulder(case.car.harness, "left", case).line[0], axis=0)
    along = np.hypot(step[:, 0], step[:, 2])
    step, along = step[along > 1e-6], along[along > 1e-6]
    assert step[:, 1] / along == pytest.approx(step[:, 1].sum() / along.sum(), rel=0.02)


@pytest.mark.parametrize("guide", [None, {"x": 1780.0, "z": 530.0, "diameter": 30.0}])
@pytest.mark.parametrize("driver", ["ines", "magnus", "otto"])
def test_drawn_shoulder_strap_is_as_long_as_it_is(driver, guide):
    """From the chest on: nine chords of 65 deg over 100 mm lose 0.08 mm, one of 20 deg on a guide of 15 mm 0.03 mm."""
    low = {"harness.shoulder_left.x": 1900.0, "harness.shoulder_left.z": 470.0}
    case = seated({"harness.guide": guide, **low}, driver=driver)
    slot = slot_for("shoulder_left", case)
    for strap in (
        straight_shoulder(case.car.harness, "left", case),
        slotted_shoulder(case.car.harness, "left", slot, case),
    ):
        drawn = np.linalg.norm(np.diff(strap.line[0], axis=0), axis=1).sum()
        assert drawn == pytest.approx(strap.length[0], abs=0.3)
        assert strap.line[0, -1] == pytest.approx(strap.anchor[0])
        off = strap.first[0] - (strap.anchor[0] if guide is None else [guide["x"], 0.0, guide["z"]])
        assert np.hypot(off[0], off[2]) == pytest.approx(0.0 if guide is None else guide["diameter"] / 2)


def test_slot_shorter_than_its_strap_holds_it_in_its_middle():
    case = seated()
    slot = slot_for("shoulder_left", case).model_copy(update={"length": 75.0})
    low, high = slot_ends(slot, np.array([75.5]), np.array([[0.0, 1.0, 0.0]]), case)
    assert low == pytest.approx(high)


def _gate(share, slot, case):
    harness = case.car.harness
    along = lap_slot_line(lap_anchor(harness, "left", case), case)
    low, high = slot_ends(slot, np.array([harness.lap_width]), along, case)
    return (low + share * (high - low))[0]


def _lap_length_through(share, slot, case):
    x, y, z = (float(v) for v in _gate(share, slot, case))
    moved = _with_harness(case, lap_left={"x": x, "y": y, "z": z})
    return straight_lap(moved.car.harness, "left", moved).length[0]


def _with_harness(case, **values):
    data = case.car.model_dump()
    data["harness"] |= values
    return replace(case, car=Car.model_validate(data))
