"""What may be changed: spans and steps of the car, of the user, and axes of the trade map."""

import numpy as np
import pytest

from fitcalc.documents.effort import Change, Effort, PedalChange, Work
from fitcalc.documents.samples import sample_cars, sample_path
from fitcalc.documents.store import load_car, parse
from fitcalc.fit.trade_axes import axis_values, pedals_apart, usual_pairs
from fitcalc.fit.variables import variables_for
from fitcalc.present.effort_text import effort_text

CARS = {name: load_car(sample_path(name)) for name in sample_cars()}
HILLCLIMB = CARS["hillclimb"]


def by_path(effort, car=HILLCLIMB):
    return {each.path: each for each in variables_for(car, effort)}


@pytest.mark.parametrize("car", CARS.values(), ids=CARS)
def test_printed_effort_says_what_holds_without_it(car):
    assert variables_for(car, parse(Effort, effort_text(car), "effort.toml")) == variables_for(car)


def test_general_effort_file_changes_nothing_either():
    assert variables_for(HILLCLIMB, parse(Effort, effort_text(), "effort.toml")) == variables_for(HILLCLIMB)


def test_span_of_one_s_own_narrows_the_car_s_and_never_widens_it():
    seat = by_path(Effort(seat_travel=Change(low=-20.0, high=400.0)))["seat_travel"]
    assert (seat.low, seat.high) == (-20.0, HILLCLIMB.rails.forward_travel)


def test_zero_span_forbids_a_change():
    assert "recline" not in by_path(Effort(recline=Change(low=0.0, high=0.0)))


def test_one_pedal_goes_ahead_of_all():
    effort = Effort(
        stand_off=Change(per_unit=1.0, high=50.0), brake=PedalChange(stand_off=Change(per_unit=9.0))
    )
    found = by_path(effort)
    assert [found[f"{name}.stand_off"].per_unit for name in ("clutch", "brake")] == [1.0, 9.0]
    assert found["brake.stand_off"].high == 50.0


def test_minutes_follow_the_kind_of_work():
    effort = Effort(work=Work(welding=90.0), brake=PedalChange(stand_off=Change(work="welding")))
    brake = by_path(effort)["brake.stand_off"]
    assert brake.cost(np.array([0.0, 10.0])) == pytest.approx([0.0, 90.0 + 10.0 * brake.per_unit])


def test_step_of_one_s_own_means_new_holes():
    assert by_path(Effort(seat_travel=Change(step=5.0)))["seat_travel"].step == 5.0
    assert by_path(Effort())["seat_travel"].step == HILLCLIMB.rails.hole_pitch


@pytest.mark.parametrize("car", CARS.values(), ids=CARS)
def test_axes_of_a_map_hold_ends_as_found_and_whole_millimetres(car):
    for variable in variables_for(car):
        values = axis_values(variable)
        assert (values[0], values[-1]) == (variable.low, variable.high)
        assert 0.0 in values
        assert len(values) <= 203
        assert np.all(np.diff(values) > 0.0)


@pytest.mark.parametrize(
    ("name", "pair"),
    [
        ("hillclimb", ("seat_travel", "brake.stand_off")),
        ("student", ("box_travel", "brake.stand_off")),
        ("upright", ("seat_travel", "brake.stand_off")),
    ],
)
def test_usual_map_is_the_seat_against_the_brake_or_the_box_where_the_seat_is_fixed(name, pair):
    assert usual_pairs(CARS[name])[0] == pair
    assert pedals_apart(CARS[name], pair) == tuple(
        each for each in CARS[name].fitted_pedals() if each != "brake"
    )


def test_map_without_a_bar_keeps_every_pedal():
    assert pedals_apart(HILLCLIMB, ("seat_raise", "recline")) == ()
