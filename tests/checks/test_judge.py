"""Figures against limits: what passes, what fails, under which rule."""

from dataclasses import replace

import numpy as np
import pytest
from cockpits import seated

from fitcalc.checks.check import Figure, not_measured
from fitcalc.checks.harness import harness_figures
from fitcalc.checks.judge import is_reclined, judge
from fitcalc.checks.limits import load_limit_set, workshop_limits
from fitcalc.checks.strap_heights import shoulder_heights
from fitcalc.documents.setup import Setup

UPRIGHT = np.array([False])


def figure(quantity, *values, unit="deg", id=""):
    return Figure(id or quantity, quantity, "label", unit, np.array(values, dtype=float))


def judged(figures, name, reclined=UPRIGHT):
    return judge(figures, load_limit_set(name), workshop_limits(), reclined)


def only(quantity, value, name, reclined=UPRIGHT, unit="deg"):
    return judged([figure(quantity, value, unit=unit)], name, reclined)[0]


@pytest.mark.parametrize(
    ("value", "status"),
    [(-0.1, "fail"), (0, "pass"), (10, "pass"), (10.1, "advise"), (45, "pass"), (45.1, "fail")],
)
def test_backrest_angle_by_the_fia(value, status):
    """0 to 45 deg must hold, 0 to 10 is advised (253-6.2); 45 breaks only the advice."""
    check = only("harness.shoulder.rim_angle", value, "fia_253")
    assert check.status == ("advise" if value == 45 else status)
    assert check.limit == "fia253_shoulder_down_max"
    assert check.rules == "fia_253"
    assert "253-6.2" in str(check.source)


@pytest.mark.parametrize(("value", "fails"), [(-10.1, True), (-10, False), (20, False), (20.1, True)])
def test_shoulder_angle_by_the_student_rules(value, fails):
    assert only("harness.shoulder.side_angle", value, "student").fails[0] == fails


@pytest.mark.parametrize(
    ("value", "lying", "fails"),
    [
        (44, False, True),
        (45, False, False),
        (65, False, False),
        (66, False, True),
        (59, True, True),
        (60, True, False),
        (80, True, False),
        (81, True, True),
    ],
)
def test_lap_angle_goes_by_the_seat(value, lying, fails):
    """45 to 65 deg upright, 60 to 80 deg reclined."""
    check = only("harness.lap.side_angle", value, "student", np.array([lying]))
    assert check.fails[0] == fails
    assert check.limit == ("fs_lap_reclined" if lying else "fs_lap_upright")


def test_bounds_of_a_pair_differ_by_case():
    check = judged([figure("harness.lap.side_angle", 70, 70)], "student", np.array([False, True]))[0]
    assert list(check.low) == [45, 60]
    assert list(check.fails) == [True, False]


def test_two_rows_give_two_checks_with_their_own_ids():
    """FSAE 175 to 235 mm and FS 180 to 230 mm: 232 mm passes the one and fails the other."""
    fsae, fs = judged([figure("harness.shoulder.spacing", 232, unit="mm")], "student")
    assert (fsae.id, fsae.status) == ("harness.shoulder.spacing", "pass")
    assert (fs.id, fs.status) == ("harness.shoulder.spacing@fs_shoulder_spacing", "fail")


def test_the_workshop_set_judges_beside_the_rules():
    rules, workshop = judged([figure("pedal.bulkhead", 15, unit="mm")], "student")
    assert (rules.rules, rules.status) == ("student", "fail")
    assert (workshop.rules, workshop.status) == ("workshop", "pass")


def test_a_figure_without_a_row_shows_only_when_always_shown():
    nothing = replace(workshop_limits(), limits=())
    figures = [figure("harness.slot.x", 1, unit="mm"), figure("harness.shoulder.spine_load", 90, unit="N/kN")]
    shown = judge(figures, nothing, nothing, UPRIGHT)
    assert [(check.id, check.status) for check in shown] == [("harness.shoulder.spine_load", "not assessed")]


def test_a_figure_that_no_row_limits_sends_to_the_rule_book_of_the_chosen_set():
    club, workshop = (replace(rules, limits=()) for rules in (load_limit_set("club"), workshop_limits()))
    (check,) = judge([figure("harness.shoulder.spine_load", 90, unit="N/kN")], club, workshop, UPRIGHT)
    assert (check.rules, check.limit) == ("club", "")
    assert "the set club:" in check.remedy


def test_what_was_not_measured_is_not_assessed_and_says_what_is_missing():
    missing = not_measured("head.hoop_line", "head.hoop_line", "helmet", "mm", "hoops")
    check = judged([missing], "club")[0]
    assert check.status == "not assessed"
    assert check.remedy == "measure hoops"


def test_the_remedy_says_by_how_much():
    check = only("harness.shoulder.side_angle", 32.5, "student")
    assert check.remedy == "Raise the shoulder anchors, or the guide, until the strap drops 12.5 deg less."
    assert "3.5 deg more" in only("harness.shoulder.side_angle", -13.5, "student").remedy


@pytest.mark.parametrize(("recline", "lying"), [(29.9, False), (30.0, False), (30.1, True)])
def test_thirty_degrees_is_still_upright(recline, lying):
    case = seated()
    trunk = replace(case.sitting.trunk, recline=np.array([recline]))
    assert is_reclined(replace(case, sitting=replace(case.sitting, trunk=trunk)))[0] == lying


def statuses(driver, setup, name):
    case = seated(
        {"harness.shoulder_left.z": 480.0, "harness.shoulder_right.z": 480.0}, driver=driver, setup=setup
    )
    checks = judged(harness_figures(case), name, is_reclined(case))
    return {check.id: check.status for check in checks}


@pytest.mark.parametrize(
    ("name", "flipped"),
    [
        ("student", {"harness.shoulder_left.side_angle", "harness.shoulder_right.side_angle"}),
        ("club", {"harness.shoulder_left.side_angle", "harness.shoulder_right.side_angle"}),
        ("fia_253", {"harness.shoulder_left.rim_angle", "harness.shoulder_right.rim_angle"}),
    ],
)
def test_raising_the_anchor_from_too_low_flips_only_what_hangs_on_it(name, flipped):
    """From 480 mm up by 70 mm: both angles from fail to pass, and else only what the slots do to those straps."""
    before, after = (
        statuses("robin", Setup(), name),
        statuses("robin", Setup(shoulder_anchor_raise=70.0), name),
    )
    changed = {id for id in before if before[id] != after[id]}
    assert {id for id in changed if ".slot_" not in id} == flipped
    assert all(before[id] == "fail" and after[id] != "fail" for id in flipped)
    assert all(id.startswith("harness.shoulder_") for id in changed)


def test_the_window_of_heights_is_where_the_finding_turns():
    case = seated(driver="robin")
    check = only("harness.shoulder.side_angle", 0, "student")
    window = shoulder_heights(case.car.harness, "left", check.low, check.high, case)
    found = window.present[0]
    for height, status in (
        (window.low[0] - 1, "fail"),
        (window.low[0] + 1, "pass"),
        (window.high[0] - 1, "pass"),
        (window.high[0] + 1, "fail"),
    ):
        moved = seated(driver="robin", setup=Setup(shoulder_anchor_raise=float(height - found)))
        checks = {each.id: each for each in judged(harness_figures(moved), "student", is_reclined(moved))}
        assert checks["harness.shoulder_left.side_angle"].status == status


def test_cases_without_the_part_break_nothing():
    """Rim angle of 50 deg is 5 too much, of 20 only more than advised; a car without that part has neither."""
    measured = figure("harness.shoulder.rim_angle", 50.0, 50.0, 20.0, 20.0)
    absent = np.array([False, True, False, True])
    check = judged([replace(measured, absent=absent)], "fia_253")[0]
    np.testing.assert_array_equal(check.fails, [True, False, False, False])
    np.testing.assert_array_equal(check.advises, [False, False, True, False])


@pytest.mark.parametrize(("lacking", "told"), [(0.21, "0.3 deg"), (2.0, "2.0 deg"), (14.33, "14.4 deg")])
def test_what_is_lacking_is_rounded_up(lacking, told):
    """45 deg is the most (253-6.2): a strap that drops further is told to come up by enough."""
    assert told in only("harness.shoulder.rim_angle", 45.0 + lacking, "fia_253").remedy
