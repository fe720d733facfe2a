"""Pedals at work as figures, and clearances about an inflated obstacle."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.checks.cleats import cleat_figures
from fitcalc.checks.judge import judge
from fitcalc.checks.limits import load_limit_set, workshop_limits
from fitcalc.checks.pedal_figures import pedal_figures
from fitcalc.documents.setup import PedalRework, Setup
from tests.checks.cockpits import by_id, seated, value


def status(case, id):
    figures = pedal_figures(case)
    checks = judge(figures, load_limit_set("club"), workshop_limits(), case.full(0.0) > 1.0)
    return next(check.status for check in checks if check.id == id)


def test_as_found_no_ratio_changes():
    figures = pedal_figures(seated())
    changes = [figure.value[0] for figure in figures if figure.quantity == "pedal.ratio_change"]
    assert changes == [0.0, 0.0, 0.0]


def test_two_circuits_have_two_pressures_and_one_has_one():
    assert {"pedal.brake.front_pressure", "pedal.brake.rear_pressure"} <= set(by_id(pedal_figures(seated())))
    single = by_id(pedal_figures(seated(name="upright")))
    assert "pedal.brake.line_pressure" in single
    assert "pedal.brake.rear_pressure" not in single


def test_student_car_has_no_clutch_figures():
    assert not any(".clutch." in figure.id for figure in pedal_figures(seated(name="student")))


@pytest.mark.parametrize(
    ("id", "values", "wanted"),
    [
        ("pedal.clutch.stroke_left", {"pedals.clutch.cylinder.stroke": 15.0}, "fail"),
        ("pedal.clutch.release_left", {"pedals.clutch.cylinder.release.needed": 9.0}, "fail"),
        ("pedal.throttle.pull_left", {"pedals.throttle.cable.needed": 30.0}, "advise"),
        ("pedal.throttle.stop_error", {"pedals.throttle.cable.needed": 15.0}, "advise"),
        ("pedal.brake.rod_angle", {"pedals.brake.cylinder.joint_phase": 130.0}, "advise"),
        ("pedal.clutch.stroke_left", {}, "pass"),
    ],
)
def test_what_runs_out_is_told(id, values, wanted):
    assert status(seated(values), id) == wanted


def test_much_longer_arm_leaves_the_ratio_band():
    case = seated(setup=Setup(brake=PedalRework(longer_arm=40.0)))
    assert value(pedal_figures(case), "pedal.brake.ratio_change") == pytest.approx(100 * 40 / 269)
    assert status(case, "pedal.brake.ratio_change") == "advise"


@pytest.mark.parametrize(
    ("pedal", "part", "missing"),
    [("brake", "cylinder", "pedals.brake.cylinder"), ("throttle", "cable", "pedals.throttle.cable")],
)
def test_what_was_not_measured_is_named(pedal, part, missing):
    figures = pedal_figures(seated({f"pedals.{pedal}.{part}": None}))
    assert by_id(figures)[f"pedal.{pedal}.ratio"].missing == missing


@given(st.floats(5.0, 50.0), st.floats(0.5, 40.0))
def test_clearance_never_grows_when_an_obstacle_is_inflated(radius, more):
    rack = {"name": "rack", "centre": {"x": 330.0, "z": 330.0}, "y_low": -250.0, "y_high": 250.0}
    thin, thick = (
        by_id(cleat_figures(seated({"footwell.obstacles": [rack | {"radius": size}]})))
        for size in (radius, radius + more)
    )
    for id, figure in thick.items():
        assert figure.value[0] <= thin[id].value[0] + 1e-9, id
