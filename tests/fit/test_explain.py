"""What would explain a difference: a known cause is found, the arithmetic is that of least squares."""

from functools import cache

import numpy as np
import pytest

from fitcalc.documents.edit import with_value
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.certainty import Sampling, certainty
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.explain import _slopes, explain
from fitcalc.fit.predicted import Work, interval
from fitcalc.fit.suspects import EVEN, suspects
from fitcalc.present.readings import readout

NAMES = (
    "posture.knee_released.brake",
    "posture.knee_released.clutch",
    "wheel.thigh_left",
    "head.hoop_line",
    "posture.elbow_left",
)
READ = readout(NAMES)
ERRORS = np.array([1.0, 1.0, 2.0, 2.0, 1.0])
SETUP = Setup(seat_travel=60.0, brake={"stand_off": 40.0, "longer_arm": 0.0})


@cache
def work():
    return Work(load_car(sample_path("hillclimb")), load_driver(sample_path("robin")), SETUP)


def measured_with(setup=SETUP, **off):
    """Readings on a car and a body of which these figures are off by so much."""
    known = suspects(work())
    shifts = np.array([[off.get(each.path, 0.0)] for each in known.each])
    car, links, _ = known.cases(shifts)
    return READ(evaluate(car, work().driver, setup, links=links))[:, 0]


def shift(found, path):
    return next(each for each in found.shifts if each.suspect.path == path)


@pytest.mark.parametrize(
    ("path", "off"), [("knee_height", 12.0), ("buttock_knee", -10.0), ("upper_arm", 8.0)]
)
def test_a_body_figure_that_alone_is_off_is_found_with_its_size(path, off):
    found = explain(work(), READ, measured_with(**{path: off}), ERRORS)
    cause = shift(found, path)
    assert cause.alone == pytest.approx(off, rel=0.1)  # the knee bends, so the slope is no constant
    assert cause.explains > 0.95


def test_a_setting_that_is_off_is_found_with_its_size():
    other = SETUP.model_copy(update={"seat_travel": 62.0})
    found = explain(work(), READ, measured_with(setup=other), ERRORS)
    assert shift(found, "seat_travel").alone == pytest.approx(2.0, rel=0.05)
    assert shift(found, "seat_travel").explains > 0.99


def test_readings_as_predicted_leave_nothing_to_explain():
    found = explain(work(), READ, measured_with(), ERRORS)
    assert found.surprise == pytest.approx(0.0, abs=1e-9)
    assert max(abs(each.together) for each in found.shifts) == pytest.approx(0.0, abs=1e-9)
    assert found.left == pytest.approx(np.zeros(len(NAMES)), abs=1e-9)


def test_the_shifts_together_take_most_of_a_difference_away():
    other = with_value(
        work().driver, "measurements.knee_height", work().driver.measurements.knee_height + 12.0
    )
    measured = measured_with(driver=other)
    found = explain(work(), READ, measured, ERRORS)
    assert np.all(np.abs(found.left) <= 0.3 * np.abs(measured - measured_with()) + 0.2)


def test_together_is_the_minimum_of_the_weighted_squares():
    """Independent: the normal equations solved as one stacked least-squares problem by LAPACK."""
    known = suspects(work())
    u = np.array([each.u for each in known.each])
    predicted, slopes = _slopes(work(), known, READ, u)
    difference = np.array([-4.0, -3.0, -6.0, 2.0, 1.0])
    found = explain(work(), READ, predicted + difference, ERRORS)
    values, vectors = np.linalg.eigh(known.covariance)
    root = vectors * np.sqrt(np.clip(values, 0.0, None))
    stacked = np.vstack([(slopes @ root) / (ERRORS * EVEN)[:, None], np.eye(len(u))])
    wanted = root @ np.linalg.lstsq(stacked, np.append(difference / (ERRORS * EVEN), np.zeros(len(u))))[0]
    by_path = {(each.kind, each.path): value for each, value in zip(known.each, wanted, strict=True)}
    for each in found.shifts:
        assert each.together == pytest.approx(by_path[each.suspect.kind, each.suspect.path], abs=1e-6)


def test_the_interval_is_the_one_that_certainty_tells():
    sure = certainty(work().car, work().driver, SETUP, sampling=Sampling(300, 300))
    told = {each.id: (each.low, each.high) for each in sure.figures}
    low, high = interval(work(), READ, 300)
    for name, ends in zip(NAMES, zip(low, high, strict=True), strict=True):
        assert ends == pytest.approx(told[name], abs=1e-9)


def test_the_interval_holds_the_prediction_and_widens_with_the_tape():
    low, high = interval(work(), READ, 400)
    assert np.all(low < measured_with())
    assert np.all(measured_with() < high)
    loose = Work(work().car, with_value(work().driver, "tape", 25.0), SETUP)
    low_loose, high_loose = interval(loose, READ, 400)
    assert np.all(high_loose - low_loose > high - low)
