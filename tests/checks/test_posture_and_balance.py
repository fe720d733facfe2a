"""Joint angles as figures, and the front axle's share: cases worked by hand."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.checks.balance_figures import KIT_MASS, balance_figures, driver_centre, share_with_driver
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.documents.setup import Setup
from tests.checks.cockpits import at, by_id, mirrored, seated, seated_in, value, with_links

NEAR = 1e-6
CAR = {
    "reference.wheelbase": 2400.0,
    "reference.front_axle_load": 180.0,
    "reference.rear_axle_load": 270.0,
    "seat.mass": 6.0,
}


def test_angles_are_those_of_the_seated_driver():
    case = seated()
    figures, brake = [*posture_figures(case), *leg_figures(case)], case.sitting.pedals["brake"]
    assert value(figures, "posture.knee_released.brake") == brake.rest.knee_angle[0]
    assert value(figures, "posture.knee_pressed.brake") == brake.full.knee_angle[0]
    assert by_id(figures)["posture.elbow_left"].quantity == "posture.elbow"


def test_leg_left_at_full_travel():
    """Thigh 430 and shank 420; hip to ankle (600, 0, 300): 850 - 670.82."""
    case = with_links(seated(), thigh=430.0, shank=420.0)
    brake = case.sitting.pedals["brake"]
    leg = replace(brake.full, hip=at(1000.0, 200.0), ankle=at(400.0, 500.0))
    pedals = dict(case.sitting.pedals) | {"brake": replace(brake, full=leg)}
    moved = replace(case, sitting=replace(case.sitting, pedals=pedals))
    expected = 850.0 - np.hypot(600.0, 300.0)
    assert value(leg_figures(moved), "posture.leg_reach.brake") == pytest.approx(expected, abs=NEAR)


def test_heel_lift_where_the_pad_is_too_high():
    """An upright pad 320 above the floor, shoe 200 from heel to ball: 120 short."""
    values = {
        "pedals.brake.pivot": {"x": 250.0, "y": 0.0, "z": 570.0},
        "pedals.brake.arm": 250.0,
        "pedals.brake.rest_angle": 0.0,
        "footwell.floor": ((-500.0, 0.0), (1500.0, 0.0)),
    }
    case = with_links(seated(values), heel_to_ball=190.0, shoe_heel_margin=10.0)
    assert value(leg_figures(case), "posture.heel_lift.brake") == pytest.approx(120.0, abs=NEAR)


def test_front_share_with_the_driver_in():
    """450 kg at 1440 and 75 + 4.5 kg at 1200: centre at (648000 + 95400) / 529.5; share 1 - x / 2400."""
    case = with_links(seated(CAR), mass=75.0)
    share = share_with_driver(case, at(1200.0, 300.0), at(0.0, 0.0))
    assert share == pytest.approx(1 - (450 * 1440 + 79.5 * 1200) / 529.5 / 2400, abs=1e-9)
    assert KIT_MASS == 4.5


def test_front_share_follows_the_moved_seat():
    """6 kg moved 50 mm forward: 6 * 50 / 529.5 / 2400 of the share."""
    case = with_links(seated(CAR), mass=75.0)
    before, after = (share_with_driver(case, at(1200.0, 300.0), at(dx, 0.0)) for dx in (0.0, -50.0))
    assert after - before == pytest.approx(6 * 50 / 529.5 / 2400, abs=1e-9)


def test_front_shift_of_a_driver_moved_forward():
    """Trunk, head and upper arms go all the way and the rest part of it: between half and all of 60 mm by mass."""
    case = seated(CAR, setup=Setup(seat_travel=60.0))
    mass = case.links.mass[0] + KIT_MASS
    whole = 100 * (mass + 6.0) * 60 / (450 + mass) / 2400
    assert 0.5 * whole < value(balance_figures(case), "balance.front_shift") < whole


def test_as_found_shifts_nothing():
    assert value(balance_figures(seated(CAR)), "balance.front_shift") == 0.0


BATTERY = {
    "name": "battery", "mass": 8.0, "at": {"x": 2000.0, "y": 0.0, "z": 200.0}, "to": {"x": 500.0, "y": 0.0, "z": 200.0},
}  # fmt: skip


def test_a_battery_moved_forward_loads_the_front():
    """8 kg moved 1500 mm forward, 450 kg of car and 75 + 4.5 of driver on 2400 mm: 8 * 1500 / 2400 / 529.5 = 0.94429 %."""
    figures = balance_figures(with_links(seated(CAR | {"masses": (BATTERY,)}), mass=75.0))
    assert value(figures, "balance.mass.battery") == pytest.approx(100 * 8 * 1500 / 2400 / 529.5)
    assert value(figures, "balance.front_shift") == pytest.approx(value(figures, "balance.mass.battery"))


def test_a_battery_that_stays_changes_nothing():
    stays = BATTERY | {"to": None}
    figures = balance_figures(seated(CAR | {"masses": (stays,)}))
    assert [figure.id for figure in figures] == ["balance.front_share", "balance.front_shift"]
    assert value(figures, "balance.front_shift") == 0.0


def test_a_mirror_leaves_the_balance():
    chassis = seated(CAR).car
    here, there = (balance_figures(seated_in(each)) for each in (chassis, mirrored(chassis)))
    assert there[0].value == pytest.approx(here[0].value, abs=0.2)


@pytest.mark.parametrize("path", ["reference.front_axle_load", "reference.rear_axle_load", "steering_wheel"])
def test_what_was_not_measured_is_named(path):
    assert {figure.missing for figure in balance_figures(seated({path: None}))} == {path}


def test_front_share_is_the_moment_of_car_and_driver_about_the_rear_axle():
    case = with_links(seated(CAR), mass=75.0)
    found, driver = case.car.reference, 75.0 + KIT_MASS
    about_rear = found.front_axle_load * found.wheelbase
    about_rear += driver * (found.wheelbase - driver_centre(case, case.sitting)[0, 0])
    whole = found.front_axle_load + found.rear_axle_load + driver
    expected = 100 * about_rear / whole / found.wheelbase
    assert value(balance_figures(case), "balance.front_share") == pytest.approx(expected)
