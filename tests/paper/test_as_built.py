"""As built: readings against the prediction, and the history in its file."""

import pytest
from sheet_jobs import DATE, fitted_job

from fitcalc.documents.as_built import AsBuilt, Build, Reading
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load, save
from fitcalc.errors import InputError
from fitcalc.fit.certainty import Sampling, certainty
from fitcalc.present.as_built_rows import built_rows, built_table

JOB = fitted_job("hillclimb", "robin")
HELMET = next(check for check in JOB.after.checks if check.figure.quantity == "head.hoop_line").figure.id


def build(figure, value, **more):
    return Build(date=DATE, car="car", made=Setup(), readings=(Reading(figure=figure, value=value, **more),))


def test_difference_is_measured_less_predicted():
    predicted = float(JOB.after.check(HELMET).figure.value[0])
    (row,) = built_rows(build(HELMET, predicted + 3.0), JOB.after)
    assert row.difference == pytest.approx(3.0)
    assert row.expected is None


def test_the_verdict_is_on_what_was_measured():
    (good,) = built_rows(build(HELMET, 500.0), JOB.after)
    (bad,) = built_rows(build(HELMET, -500.0), JOB.after)
    assert (good.status, bad.status) == ("pass", "fail")


@pytest.mark.parametrize(("off", "expected"), [(0.0, True), (400.0, False)])
def test_the_interval_says_whether_a_difference_was_to_be_expected(off, expected):
    after = JOB.after
    sure = certainty(after.car, after.driver, after.setup, sampling=Sampling(200, 200))
    mean = next(each.mean for each in sure.figures if each.id == HELMET)
    (row,) = built_rows(build(HELMET, mean + off), after, sure)
    assert row.expected is expected


def test_a_joint_angle_can_be_read_by_its_name():
    (row,) = built_rows(build("recline", 40.0), JOB.after)
    assert row.predicted is not None
    assert built_table(build("recline", 40.0), (row,)).rows


def test_a_figure_that_is_not_there_has_no_prediction():
    (row,) = built_rows(build("no.such.figure", 1.0), JOB.after)
    assert (row.predicted, row.difference, row.status) == (None, None, None)


def test_the_history_keeps_its_order_on_disk(tmp_path):
    later = Build(date="2026-06-30", car="car", made=Setup(seat_travel=20.0))
    history = AsBuilt(driver="Robin").with_build(later).with_build(build(HELMET, 50.0))
    save(history, tmp_path / "built.toml")
    again = load(AsBuilt, tmp_path / "built.toml")
    assert again == history
    assert [each.date for each in again.builds] == [DATE, "2026-06-30"]


def test_a_bad_reading_is_refused_by_its_path(tmp_path):
    path = tmp_path / "built.toml"
    path.write_text('driver = "R"\n[[builds]]\ndate = "31.5.26"\ncar = "c"\nmade = {}\n', encoding="utf-8")
    with pytest.raises(InputError, match=r"builds\.0\.date"):
        load(AsBuilt, path)
