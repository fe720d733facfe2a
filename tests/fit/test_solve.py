"""The solver: passes where it can, says why where it cannot, keeps to holes, and does the same every time."""

import numpy as np
import pytest

from fitcalc.checks.check import Figure
from fitcalc.documents.effort import Change, Effort
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.influence import influences
from fitcalc.fit.problem import problem_of
from fitcalc.fit.solve import solve
from fitcalc.fit.sweep import shortfall
from fitcalc.fit.variables import variables_for
from fitcalc.present.solve_record import solve_record

HILLCLIMB = load_car(sample_path("hillclimb"))
ROBIN = load_driver(sample_path("robin"))
OTTO = load_driver(sample_path("otto"))
STILL = {
    name: Change(low=0.0, high=0.0)
    for name, field in Effort.model_fields.items()
    if field.annotation is Change
}
"""Nothing may be changed."""


@pytest.fixture(scope="module")
def robin():
    return solve(HILLCLIMB, ROBIN)


@pytest.fixture(scope="module")
def otto():
    return solve(HILLCLIMB, OTTO)


def test_what_passes_holds_every_limit_that_can_be_moved(robin):
    assert robin.passes
    checks = evaluate(HILLCLIMB, ROBIN, robin.best.setup).checks
    broken = [check.id for check in checks if (short := shortfall(check)) is not None and np.any(short > 0.0)]
    assert set(broken) <= robin.settled


def test_next_best_are_dearer_and_change_other_things(robin):
    kinds = [robin.best.changes, *(each.changes for each in robin.others)]
    assert len({frozenset(kind) for kind in kinds}) == len(kinds)
    efforts = [each.effort for each in (robin.best, *robin.others) if each.lacking == 0.0]
    assert efforts == sorted(efforts)


def test_seat_stands_in_a_hole_and_bars_are_whole_millimetres(robin):
    assert robin.best.setup.seat_travel % HILLCLIMB.rails.hole_pitch == pytest.approx(0.0)
    assert robin.best.setup.brake.stand_off % 1.0 == pytest.approx(0.0)


def test_rework_is_the_same_every_time(robin):
    assert solve(HILLCLIMB, ROBIN).best.setup == robin.best.setup


def test_every_change_stays_within_what_the_car_allows(otto):
    for each in variables_for(HILLCLIMB):
        value = otto.best.setup
        for step in each.path.split("."):
            value = getattr(value, step)
        assert each.low - 1e-9 <= value <= each.high + 1e-9


def test_where_nothing_passes_it_says_what_conflicts(otto):
    assert not otto.passes
    assert {clash.check.id for clash in otto.conflict.clashes} >= {"posture.knee_released.clutch"}
    assert any(clash.against is not None for clash in otto.conflict.clashes)


def test_single_change_is_named_that_makes_room(otto):
    """Checked by doing it: with the box so much further forward nothing that can be moved is broken."""
    way = next(way for way in otto.conflict.ways if way.part == "box_forward" and not way.mends)
    setup = otto.best.setup.model_copy(update={"box_travel": otto.best.setup.box_travel - way.amount})
    broken = {
        check.id
        for check in evaluate(HILLCLIMB, OTTO, setup).checks
        if (short := shortfall(check)) is not None and np.any(short > 0.0)
    }
    assert broken <= otto.settled


def test_leg_that_reaches_only_with_everything_moved_is_no_settled_matter():
    """As found Ines' legs are straight, and stay so while one thing at a time is moved."""
    settled = problem_of(HILLCLIMB, load_driver(sample_path("ines"))).settled
    assert not {id for id in settled if id.startswith("posture.knee_released")}


def test_own_efforts_change_the_choice(robin):
    dear = Effort(seat_travel=Change(fixed=10_000.0, per_unit=0.0))
    assert "seat_travel" in robin.best.changes
    found = solve(HILLCLIMB, ROBIN, effort=dear)
    assert "seat_travel" not in found.best.changes or found.best.lacking == 0.0


def test_stopped_at_once_hands_back_something():
    stopped = solve(HILLCLIMB, ROBIN, progress=lambda done: False)
    assert not stopped.complete
    assert stopped.best.setup is not None


def test_progress_rises_to_the_end():
    told = []
    solve(HILLCLIMB, ROBIN, progress=lambda done: told.append(done) or True)
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_a_car_that_may_not_be_changed_is_told_so():
    effort = Effort(**STILL)
    found = solve(HILLCLIMB, ROBIN, effort=effort)
    assert not found.best.changes
    assert solve_record(HILLCLIMB, ROBIN, found, None, effort).verdict.startswith(
        "Nothing may be changed on this car."
    )


def test_a_task_without_measures_lacks_nothing():
    assert (
        problem_of(HILLCLIMB, OTTO, measures=()).lacking({"seat_travel": np.zeros(3)}).tolist() == [0.0] * 3
    )


def test_a_bare_car_is_only_told_to_change_what_it_has():
    """Neither hoops nor wheel, head restraint and harness: none of them can make room."""
    bare = HILLCLIMB.model_copy(
        update=dict.fromkeys(("hoops", "steering_wheel", "head_restraint", "harness", "gear_lever"))
    )
    few = Effort(**STILL | {"seat_travel": Change(low=0.0, high=20.0)})
    found = solve(bare, load_driver(sample_path("magnus")), effort=few)
    assert not found.passes
    parts = {way.part for way in found.conflict.ways}
    assert parts
    assert not parts & {"main_hoop_up", "front_hoop_up", "wheel_up", "wheel_forward", "head_restraint_back"}


def test_a_figure_that_is_no_number_never_leaves_and_is_named():
    def broken(case):
        return [Figure("knee.room", "knee.room", "room", "mm", np.array([np.nan]))]

    with pytest.raises(ArithmeticError, match=r"knee\.room is not finite"):
        evaluate(HILLCLIMB, ROBIN, measures=(broken,))


def test_outcomes_that_nothing_moves_are_owed_to_no_measurement():
    assert influences(HILLCLIMB, ROBIN, {"mass": np.zeros(5)}, {"knee.room": np.full(5, 7.0)}) == ()
