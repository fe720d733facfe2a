"""A rework that passes with a probability: asked for little it is reached, asked for all it is told that it is not."""

import numpy as np
import pytest

from fitcalc.documents.effort import Change, Effort
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.likelier import likelier
from fitcalc.fit.problem import problem_of
from fitcalc.fit.robust import holds_together, robust
from fitcalc.fit.solve import solved
from fitcalc.present.solve_record import robust_record

CAR, ROBIN = load_car(sample_path("hillclimb")), load_driver(sample_path("robin"))
NOTHING = Change(low=0.0, high=0.0)
FEW = Effort(
    seat_raise=NOTHING,
    recline=NOTHING,
    wheel_spacer=NOTHING,
    shoulder_anchor_raise=NOTHING,
    longer_arm=NOTHING,
)
"""Seat and stand-offs only: what keeps the search short."""


@pytest.fixture(scope="module")
def sure():
    return robust(CAR, ROBIN, 0.99, None, FEW)


def test_likelier_than_the_least_rework_that_passes(sure):
    low = robust(CAR, ROBIN, 0.01, None, FEW)
    assert low.reached
    assert sure.probability > low.probability + 0.1
    assert sure.solution.best.effort >= low.solution.best.effort


def test_what_is_out_of_reach_is_told_with_its_probability(sure):
    problem = problem_of(CAR, ROBIN, None, FEW)
    assert not sure.reached
    assert sure.probability == holds_together(sure.certainty, problem)


def test_robust_rework_passes_as_measured_and_stands_in_places_that_can_be_set(sure):
    assert sure.solution.passes
    setup = sure.solution.best.setup
    assert setup.seat_travel % CAR.rails.hole_pitch == pytest.approx(0.0)
    assert (setup.seat_raise, setup.recline) == (0.0, 0.0)


def test_where_nothing_passes_no_probability_is_looked_for():
    otto = load_driver(sample_path("otto"))
    found = robust(CAR, otto, 0.9, None, FEW)
    assert not found.reached
    assert found.solution.conflict is not None
    record = robust_record(CAR, otto, found, 0.9, None, FEW)
    assert (record.passes, record.chance.enough) == (False, False)
    assert record.conflict


def test_likelier_leaves_what_is_enough_alone():
    problem = problem_of(CAR, ROBIN, None, FEW)
    start = solved(problem).best.setup
    assert likelier(problem, start, start, wanted=0.0) == start


def test_stopped_at_once_it_hands_back_the_plain_rework():
    stopped = robust(CAR, ROBIN, 0.9, None, FEW, progress=lambda done: False)
    plain = solved(problem_of(CAR, ROBIN, None, FEW)).best.setup
    assert stopped.solution.best.setup == plain
    assert np.isfinite(stopped.probability)


def test_changes_that_do_not_help_go_back_to_the_plain_rework():
    problem = problem_of(CAR, ROBIN, None, FEW)
    plain = solved(problem).best.setup
    dearer = plain.model_copy(update={"seat_travel": plain.seat_travel - CAR.rails.hole_pitch})
    assert likelier(problem, dearer, plain, wanted=0.0) == plain
