"""Rules of thumb and invariants of the rework.

Hip to ankle is about 0.49 of stature (Drillis & Contini's 0.245 + 0.246, second-hand), so 12 cm of stature is about
6 cm of seat. That a driver of 1.68 m in a car set up for a taller one gets the seat 5 to 6 cm forward and still needs
pedal bars is common practice, no source.
"""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitcalc.body.comfort import windows_for
from fitcalc.body.estimate import estimate
from fitcalc.body.links import links_for
from fitcalc.checks.posture_limits import MUST_HOLD
from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.extension import least_extension
from fitcalc.fit.rework import fit
from fitcalc.posture.sit import sit

HILLCLIMB = load_car(sample_path("hillclimb"))
ROBIN = load_driver(sample_path("robin"))


def of_stature(stature, sex="male"):
    return Driver(name="of stature", sex=sex, measurements=Measurements(stature=stature))


@pytest.mark.parametrize(("stature", "sex"), [(1756.0, "male"), (1628.0, "female")])
def test_hip_to_ankle_is_about_half_the_stature(stature, sex):
    body = links_for(of_stature(stature, sex))
    assert (body.thigh + body.shank)[0] / stature == pytest.approx(0.49, abs=0.015)


def test_twelve_centimetres_of_stature_are_six_of_seat():
    short, tall = (links_for(of_stature(stature)) for stature in (1680.0, 1800.0))
    assert (tall.thigh + tall.shank - short.thigh - short.shank)[0] == pytest.approx(60, abs=8)


def test_short_driver_gets_the_seat_forward_and_still_needs_bars():
    found = fit(HILLCLIMB, ROBIN)
    assert 50 <= found.after.setup.seat_travel <= 60
    for name in ("clutch", "brake", "throttle"):
        assert getattr(found.after.setup, name).stand_off > 10


def test_rework_meets_the_knee_targets_it_was_made_for():
    after = fit(HILLCLIMB, ROBIN).after
    knees = [check for check in after.checks if check.figure.quantity.removeprefix("posture.") in MUST_HOLD]
    assert len(knees) == 6
    assert {check.status for check in knees} == {"pass"}


def test_seat_stands_in_a_hole():
    assert fit(HILLCLIMB, ROBIN).after.setup.seat_travel % HILLCLIMB.rails.hole_pitch == pytest.approx(0)


def test_nothing_is_changed_for_a_driver_whom_the_car_fits():
    setup = fit(HILLCLIMB, load_driver(sample_path("otto"))).after.setup
    assert (setup.clutch.stand_off, setup.brake.stand_off, setup.throttle.stand_off) == (0, 0, 0)


def test_rework_is_the_same_every_time():
    assert fit(HILLCLIMB, ROBIN).after.setup == fit(HILLCLIMB, ROBIN).after.setup


def scaled(driver, factor):
    """The driver enlarged as a whole: every dimension measured, mass by the cube."""
    body = dict(zip(estimate(driver).names, estimate(driver).mean, strict=True))
    return {
        name: np.array([value * (factor**3 if name == "weightkg" else factor)])
        for name, value in body.items()
    }


@settings(max_examples=25)
@given(st.floats(0.9, 1.15), st.floats(1.0, 1.12), st.sampled_from(["clutch", "brake", "throttle"]))
def test_a_taller_scaled_driver_never_needs_a_longer_extension(size, growth, pedal):
    from fitcalc.body.links import links_of

    needs = []
    for factor in (size, size * growth):
        body = links_of(scaled(ROBIN, factor), ROBIN)
        sitting = sit(HILLCLIMB, body, Setup())
        needed = least_extension(pedal, HILLCLIMB, Setup(), sitting, body, windows_for(ROBIN))
        needs.append(needed.stand_off[0] + needed.longer_arm[0])
    assert needs[1] <= needs[0] + 1.0


def test_moving_the_shoulder_anchors_flips_only_strap_findings():
    """From too low to right: only findings on the shoulder straps may change their status."""
    good = evaluate(HILLCLIMB, ROBIN, Setup(seat_travel=60.0))
    low = evaluate(HILLCLIMB, ROBIN, Setup(seat_travel=60.0, shoulder_anchor_raise=-150.0))
    flipped = {a.id for a, b in zip(good.checks, low.checks, strict=True) if a.status != b.status}
    assert low.check("harness.shoulder_left.side_angle").status == "fail"
    assert flipped
    assert all(id.startswith(("harness.shoulder_left.", "harness.shoulder_right.")) for id in flipped)
