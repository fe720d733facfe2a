"""Certainty: determinism, order, honest counts; and against first-order propagation and the `uncertainties` package."""

import numpy as np
import pytest
from uncertainties import ufloat, umath

from fitcalc.documents.fields import Point
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.certainty import Sampling, certainty
from fitcalc.fit.propagation import spread_of, within
from fitcalc.fit.tolerances import drawn, place_words, toleranced

CAR = load_car(sample_path("hillclimb"))
ROBIN = load_driver(sample_path("robin"))
SETUP = Setup(
    seat_travel=60.0,
    clutch=PedalRework(stand_off=46.0),
    brake=PedalRework(stand_off=41.0),
    throttle=PedalRework(stand_off=32.0),
)
TAPE = 3.0
START, ANCHOR = (1560.0, 540.0), (1735.0, 500.0)


@pytest.fixture(scope="module")
def sure():
    return certainty(CAR, ROBIN, SETUP, None, Sampling(3_000, 1_000))


def strap_angle(inputs):
    start_x, start_z, anchor_x, anchor_z = inputs
    return np.degrees(np.arctan2(start_z - anchor_z, anchor_x - start_x))


def strap_inputs():
    return np.array([*START, *ANCHOR]), np.full(4, TAPE / np.sqrt(3.0))


def test_drawn_strap_angle_agrees_with_the_uncertainties_package():
    """Independent: linear propagation by automatic differentiation.

    Near linear: 2 % is what 100,000 draws and the slight curvature leave.
    """
    expected, u = strap_inputs()
    x, z, far, low = (ufloat(value, error) for value, error in zip(expected, u, strict=True))
    angle = umath.degrees(umath.atan2(z - low, far - x))
    random = np.random.default_rng(3)
    draws = strap_angle(expected[:, None] + np.stack([within(random, TAPE, 100_000) for _ in expected]))
    assert spread_of(draws).u == pytest.approx(angle.std_dev, rel=0.02)
    assert spread_of(draws).mean == pytest.approx(angle.nominal_value, abs=0.01)


def test_ninety_percent_intervals_hold_the_truth_nine_times_in_ten():
    """The car is measured 2000 times over with tape errors; 2000 trials scatter by 0.7 %."""
    expected, _ = strap_inputs()
    random = np.random.default_rng(11)
    read = expected[:, None] + np.stack([within(random, TAPE, 2_000) for _ in expected])
    errors = np.stack([within(random, TAPE, 1_000) for _ in expected])
    angles = strap_angle(read[:, :, None] + errors[:, None, :])
    low, high = np.quantile(angles, [0.05, 0.95], axis=1)
    held = np.mean((low <= strap_angle(expected)) & (strap_angle(expected) <= high))
    assert 0.88 <= held <= 0.92


def test_same_seed_same_answer(sure):
    again = certainty(CAR, ROBIN, SETUP, None, Sampling(3_000, 1_000))
    assert [(each.id, each.passes) for each in again.odds] == [(each.id, each.passes) for each in sure.odds]


def test_lengths_to_cut_lie_about_the_ones_chosen(sure):
    lengths = {each.id: each for each in sure.lengths}
    for name in ("clutch", "brake", "throttle"):
        interval = lengths[f"{name}.stand_off"]
        assert interval.low <= getattr(SETUP, name).stand_off <= interval.high


def test_least_likely_check_comes_first(sure):
    passes = [each.passes for each in sure.odds]
    assert passes == sorted(passes)


def test_every_interval_says_how_many_draws_it_rests_on(sure):
    assert {each.draws for each in sure.figures} == {1_000, 3_000}


def test_all_together_are_no_likelier_than_the_least_likely(sure):
    assert sure.all_hold <= sure.odds[0].passes + 0.05


def test_what_to_measure_again_names_fields_of_the_files(sure):
    assert sure.again[0].share >= sure.again[-1].share
    assert all(
        each.path in toleranced(CAR) or hasattr(ROBIN.measurements, each.path) or each.path == "mass"
        for each in sure.again
    )


def test_a_better_tape_on_the_anchor_narrows_the_strap_angle():
    close = CAR.harness.shoulder_left.model_copy(update={"tolerance": 0.0})
    far = CAR.harness.shoulder_left.model_copy(update={"tolerance": 30.0})
    assert isinstance(close, Point)
    spreads = []
    for anchor in (close, far):
        harness = CAR.harness.model_copy(update={"shoulder_left": anchor})
        found = certainty(CAR.model_copy(update={"harness": harness}), ROBIN, SETUP, None, Sampling(400, 400))
        spreads.append({each.id: each for each in found.figures}["harness.shoulder_left.side_angle"].u)
    assert spreads[0] < spreads[1]


def test_points_are_drawn_within_their_tolerance():
    cases = drawn(CAR, ROBIN, 500, 1)
    for path, mark in toleranced(CAR).items():
        assert np.abs(cases.errors[path]).max() <= mark.tolerance


def test_stopped_at_once_hands_back_what_it_has():
    stopped = certainty(CAR, ROBIN, SETUP, None, Sampling(20_000, 200), progress=lambda done: False)
    assert not stopped.complete
    assert stopped.odds


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("harness.shoulder_left", "left shoulder anchor"),
        ("pedals.clutch.cylinder.rod_end", "clutch cylinder rod end"),
        ("seat.mounts.1", "seat mount 2"),
        ("gear_lever.knobs.0", "gear lever knob 1"),
        ("footwell.obstacles.0.centre", "steering rack centre"),
    ],
)
def test_what_to_measure_again_is_told_in_words(path, words):
    assert place_words(CAR, path) == words
