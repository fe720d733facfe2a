"""The seat's bolts and brackets as figures."""

import pytest

from fitcalc.checks.seat_mount_figures import seat_and_driver, seat_mount_figures
from fitcalc.documents.setup import Setup
from tests.checks.cockpits import by_id, seated, value


def test_seat_alone_is_checked_both_ways_and_with_its_driver_rearward():
    assert set(by_id(seat_mount_figures(seated()))) == {
        "seat.mount_safety.forward",
        "seat.mount_safety.rearward",
        "seat.mount_safety_driver",
    }


def test_driver_on_the_seat_is_worse_than_the_seat_alone():
    figures = seat_mount_figures(seated())
    assert value(figures, "seat.mount_safety_driver") < value(figures, "seat.mount_safety.rearward")


def test_heavier_seat_is_less_safe_in_proportion():
    cases = [seat_mount_figures(seated({"seat.mass": mass})) for mass in (6.0, 12.0)]
    light, heavy = (value(figures, "seat.mount_safety.forward") for figures in cases)
    assert light == pytest.approx(2.0 * heavy)


def test_driver_sits_between_the_mounts_and_above_them():
    load = seat_and_driver(seated())
    assert load.mass > 60.0
    assert 930.0 < load.centre[0, 0] < 1280.0
    assert 100.0 < load.centre[0, 2] < 400.0


@pytest.mark.parametrize(
    ("setup", "reach"), [(Setup(seat_travel=80.0), 20.0), (Setup(seat_raise=15.0), 15.0)]
)
def test_seat_beyond_its_holes_needs_a_bracket(setup, reach):
    figures = seat_mount_figures(seated(setup=setup))
    assert value(figures, "seat.bracket_reach") == pytest.approx(reach)
    assert value(figures, "seat.bracket_thickness") > 0.0


def test_two_mounts_in_one_line_hold_nothing_across():
    """Side by side they hold no tipping fore and aft."""
    pair = ({"x": 1100.0, "y": -170.0, "z": 5.0}, {"x": 1100.0, "y": 170.0, "z": 5.0})
    figures = seat_mount_figures(seated({"seat.mounts": pair}))
    assert value(figures, "seat.mount_safety_driver") < 0.1


def test_without_a_wheel_the_arms_are_not_known():
    figures = by_id(seat_mount_figures(seated({"steering_wheel": None})))
    assert figures["seat.mount_safety_driver"].missing == "steering_wheel"
    assert figures["seat.mount_safety.forward"].value is not None
