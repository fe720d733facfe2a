"""What a rework does to one pedal of a car file: worked by hand, and by virtual work."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.documents.setup import PedalRework
from fitcalc.making.actuation import EFFORT, cylinder_work
from fitcalc.making.loads import foot_loads
from fitcalc.making.pedal_motion import pad_arc, pad_contact
from fitcalc.making.pedal_work import motion, pedal_work
from tests.checks.cockpits import car

HILLCLIMB = car()
STILL = np.zeros(1)
longer = st.floats(1.0, 60.0)


def work(name="brake", chassis=HILLCLIMB, **rework):
    return pedal_work(chassis.fitted_pedals()[name], PedalRework(**rework), STILL)


@pytest.mark.parametrize("name", ["clutch", "brake"])
def test_mean_ratio_times_stroke_is_the_pads_way(name):
    rework = PedalRework(stand_off=30.0, longer_arm=15.0)
    done = work(name, stand_off=30.0, longer_arm=15.0)
    way = pad_arc(motion(HILLCLIMB.fitted_pedals()[name], rework))
    assert done.cylinder.ratio_mean * done.cylinder.stroke == pytest.approx(way)


def test_line_pressures_by_hand():
    """500 N x mean ratio x 0.8 in the rod; pivot 28 of 62 from the front clevis, so 34/62 go to the front."""
    done = work().cylinder
    rod = 500.0 * 0.8 * done.ratio_mean[0]
    assert done.pressure[0] == pytest.approx(rod * 34 / 62 / (np.pi / 4 * 17.8**2))
    assert done.rear_pressure[0] == pytest.approx(rod * 28 / 62 / (np.pi / 4 * 19.05**2))


def test_release_by_hand():
    """Stroke less 1 mm lost, times (15.9 / 19.05)^2, over a fork of 1.7; 6.5 mm frees the clutch."""
    done = work("clutch").cylinder
    bearing = (done.stroke[0] - 1.0) * (15.9 / 19.05) ** 2 / 1.7
    assert done.release[0] == pytest.approx(bearing)
    assert done.release_left[0] == pytest.approx(bearing - 6.5)


def test_throttle_stop_by_hand():
    """48 mm of chord on 267 mm turn 2 asin(24/267); 145 mm of sector must pull 24 + 1.5 mm."""
    done = work("throttle").cable
    turn = 2 * np.degrees(np.arcsin(24 / 267))
    assert done.pull_left[0] == pytest.approx(np.radians(turn) * 145.0 - 25.5)
    assert done.stop_error[0] == pytest.approx(turn - np.degrees(25.5 / 145.0))


@given(longer)
def test_longer_arm_changes_neither_stroke_nor_release_nor_pull(more):
    for name in ("clutch", "throttle"):
        found, after = work(name), work(name, longer_arm=more)
        if found.cylinder is not None:
            assert after.cylinder.stroke == pytest.approx(found.cylinder.stroke)
            assert after.cylinder.release_left == pytest.approx(found.cylinder.release_left)
        if found.cable is not None:
            assert after.cable.pull == pytest.approx(found.cable.pull)


@given(longer)
def test_longer_arm_raises_ratio_travel_and_pressure_in_proportion(more):
    found, after = work(), work(longer_arm=more)
    share = (269.0 + more) / 269.0
    assert after.ratio_change == pytest.approx(100.0 * (share - 1.0))
    assert after.pad_travel == pytest.approx(found.pad_travel * share)
    assert after.cylinder.pressure == pytest.approx(found.cylinder.pressure * share)
    assert after.force_factor == pytest.approx(1.0 / share)


def test_slide_is_stand_off_times_angle():
    upright = car({"pedals.brake.pad_tilt": 0.0})
    assert work(chassis=upright, stand_off=40.0).slide == pytest.approx(40.0 * np.radians(12.0))
    assert work().slide == pytest.approx(0.0)


def test_square_push_rod_is_square():
    """Lever plumb above a hanging pivot at half travel, rod level: it leaves square by half the travel either way."""
    values = {
        "pedals.brake.rest_angle": 6.0,
        "pedals.brake.cylinder.rod_end": {"x": 590.0, "z": 480.0},
    }
    assert work(chassis=car(values)).cylinder.off_square[0] == pytest.approx(6.0, abs=0.8)


def test_effort_is_the_tables():
    assert next(row.force for row in foot_loads() if row.use == "fatigue") == EFFORT


def test_ratio_at_the_stop_is_the_ratio_at_rest_of_a_pedal_that_rests_there():
    brake = HILLCLIMB.fitted_pedals()["brake"]
    found = motion(brake, PedalRework())
    pressed = replace(found, rest=found.rest - found.travel)
    ends = [cylinder_work(each, each, brake.cylinder) for each in (found, pressed)]
    assert ends[0].ratio_full == pytest.approx(ends[1].ratio_rest)


@pytest.mark.parametrize("name", ["hillclimb", "student"])
@pytest.mark.parametrize("tilt", [-20.0, 0.0, 20.0])
def test_the_mechanism_s_pad_goes_where_the_driver_s_foot_finds_it(name, tilt):
    chassis = car({"pedals.brake.pad_tilt": tilt}, name)
    brake, rework = chassis.pedals.brake, PedalRework(stand_off=40.0, longer_arm=10.0)
    found, after = motion(brake, PedalRework()), motion(brake, rework)
    moved = pad_contact(after, after.rest[:, None]) - pad_contact(found, found.rest[:, None])
    assert work(chassis=chassis, stand_off=40.0, longer_arm=10.0).shift[0, [0, 2]] == pytest.approx(
        moved[0, 0]
    )


def test_a_pedal_left_alone_goes_with_its_box():
    assert work().shift == pytest.approx(np.zeros((1, 3)))
    assert pedal_work(HILLCLIMB.fitted_pedals()["brake"], PedalRework(), np.array([25.0])).shift[0, 0] == 25.0
