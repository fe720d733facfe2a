"""The trade map against `evaluate`, and its lines."""

import numpy as np
import pytest

from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.cases import setup_of
from fitcalc.fit.contours import with_good_side_left, zero_lines
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.sweep import required_room
from fitcalc.fit.trade import MapOptions, trade_map
from fitcalc.fit.trade_axes import usual_pairs
from fitcalc.fit.variables import variables_for
from fitcalc.present.usual_trade import usual_trade

CAR = load_car(sample_path("hillclimb"))
ROBIN = load_driver(sample_path("robin"))
ALLOWED = {each.path: np.linspace(each.low, each.high, 21) for each in variables_for(CAR)}
AXES = tuple((path, ALLOWED[path]) for path in ("seat_travel", "brake.stand_off"))


@pytest.fixture(scope="module")
def trade():
    return trade_map(CAR, ROBIN, Setup(), AXES, MapOptions(recommended=Setup(seat_travel=60.0)))


def test_a_point_of_the_map_has_the_least_margin_of_evaluate(trade):
    at = (15, 10)
    values = {"seat_travel": trade.x[[at[0]]], "brake.stand_off": trade.y[[at[1]]]}
    checks = {check.id: check for check in evaluate(CAR, ROBIN, setup_of(values)).checks}
    tightest = checks[trade.checks[trade.tightest[at]]]
    assert trade.room[at] == pytest.approx(required_room(tightest)[0], abs=0.05)


def test_each_limit_changes_sides_at_its_line(trade):
    line = next(each for each in trade.boundaries if each.check == "posture.knee_pressed.brake").lines[0]
    values = {"seat_travel": line[:, 0], "brake.stand_off": line[:, 1]}
    result = evaluate(CAR, ROBIN, setup_of(values))
    assert required_room(result.check("posture.knee_pressed.brake")) == pytest.approx(0.0, abs=0.2)


def test_a_limit_broken_everywhere_is_told_and_left_off_the_map(trade):
    assert trade.blocked
    assert not set(trade.blocked) & set(trade.checks)


def test_points_of_interest_are_on_the_map(trade):
    assert (trade.as_found, trade.chosen, trade.recommended) == ((0.0, 0.0), (0.0, 0.0), (60.0, 0.0))


def test_stopped_map_says_so():
    stopped = trade_map(CAR, ROBIN, Setup(), AXES, progress=lambda done: False)
    assert not stopped.complete


@pytest.mark.parametrize("pair", [("seat_raise", "recline"), ("seat_travel", "clutch.longer_arm")])
def test_any_two_changes_make_a_map(pair):
    trade = trade_map(CAR, ROBIN, Setup(), tuple((path, ALLOWED[path]) for path in pair))
    assert trade.room.shape == (21, 21)
    assert np.all(np.isfinite(trade.room))


def test_zero_line_of_a_circle_is_one_closed_line_on_it():
    x, y = np.linspace(-2.0, 2.0, 81), np.linspace(-2.0, 2.0, 61)
    lines = zero_lines(x, y, x[:, None] ** 2 + y[None] ** 2 - 1.0)
    assert len(lines) == 1
    assert np.hypot(*lines[0].T) == pytest.approx(1.0, abs=2e-3)
    assert lines[0][0] == pytest.approx(lines[0][-1])


def test_saddle_is_cut_in_two():
    grid = np.array([-1.0, 1.0])
    assert len(zero_lines(grid, grid, np.array([[1.0, -1.0], [-1.0, 1.0]]))) == 2


@pytest.mark.parametrize("sign", [1.0, -1.0])
def test_what_is_not_negative_lies_to_the_left_of_its_line(sign):
    x, y = np.linspace(-2.0, 2.0, 41), np.linspace(-2.0, 2.0, 31)
    values = sign * (x[:, None] ** 2 + y[None] ** 2 - 1.0)
    (line,) = zero_lines(x, y, values)
    turned = with_good_side_left(line, x, y, values)
    around = np.sum(turned[:-1, 0] * turned[1:, 1] - turned[1:, 0] * turned[:-1, 1])
    assert around * sign < 0.0


def test_a_map_without_the_mesh_has_the_limits_in_closed_form_alone(trade):
    bare = trade_map(CAR, ROBIN, Setup(), AXES, MapOptions(meshed=False))
    assert set(bare.checks) < set(trade.checks)
    assert not any(line.interpolated for line in bare.boundaries)
    assert np.all(bare.room >= trade.room - 1e-9)


def test_a_car_that_lets_nothing_move_has_no_map():
    rails = CAR.rails.model_copy(
        update=dict.fromkeys(
            (
                "forward_travel",
                "rearward_travel",
                "raise_travel",
                "lower_travel",
                "recline_travel",
                "upright_travel",
            ),
            0.0,
        )
    )
    pedals = CAR.pedals.model_copy(update={"box_forward": 0.0, "box_rearward": 0.0})
    fixed = CAR.model_copy(update={"rails": rails, "pedals": pedals})
    assert usual_trade(evaluate(fixed, ROBIN), None) is None


def test_a_pair_that_this_car_cannot_change_gives_way_to_the_usual_one():
    student = load_car(sample_path("student"))
    record = usual_trade(evaluate(student, ROBIN), None, pair=("seat_travel", "clutch.longer_arm"))
    assert (record.x.path, record.y.path) == usual_pairs(student)[0]
