"""Limit sets as the command line tells them: all of them, and one beside another."""

import json

import pytest

from fitcalc.checks.limits import WORKSHOP, limit_set_names
from fitcalc.checks.quantities import quantities
from fitcalc.cli import main
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, save
from fitcalc.present.limits_tables import limits_tables
from tests.cli.printed import printed, printed_json


def test_every_quantity_and_every_set_is_told():
    status, text = printed("limits")
    assert status == 0
    assert set(limit_set_names()) <= {word.strip("():") for word in text.split()}
    told, *_ = limits_tables()
    assert [row[0] for row in told.rows if row[0]] == list(quantities())


def test_a_further_limit_of_a_quantity_stands_below_it_without_repeating_it():
    told, *_ = limits_tables()
    first = next(at for at, row in enumerate(told.rows) if row[0] == "harness.shoulder.side_angle")
    quantity, more = told.rows[first], told.rows[first + 1]
    assert all((quantity[3], more[3]))
    assert quantity[3:] != more[3:]
    assert more[:3] == ("", "", "")


def test_what_no_set_limits_is_for_information():
    told, *_ = limits_tables()
    free = next(row for row in told.rows if row[0] == "mirror.turn")
    assert free[3:] == ("-", "for information", "")


def test_rules_to_tick_and_what_was_not_found_name_their_set():
    _, *ticked, missing = limits_tables()
    assert len(ticked) == len(limit_set_names()) + 1
    assert all(rule and source for table in ticked for rule, source in table.rows)
    assert {row[0] for row in missing.rows} <= {*limit_set_names(), WORKSHOP}


def beside(car):
    """Rows of the table that sets the student rules beside the car's own, by check."""
    _, text = printed("check", car, "robin", "--beside", "student")
    table = text.split("beside student\n")[1]
    return {line.split()[0]: " ".join(line.split()) for line in table.splitlines()[2:] if line}


def test_a_second_set_stands_beside_the_first():
    rows = beside("hillclimb")
    assert "+ pass: 30.0 to 80.0 deg + pass: 60.0 to 80.0 deg" in rows["harness.lap_left.side_angle"]
    assert "no limit X fail: 180 to 230 mm" in rows["harness.shoulder.spacing"]
    assert "advised 0 to 50 mm X fail: 0 to 25 mm" in rows["head.restraint_gap"]


def test_a_check_that_could_not_be_made_is_not_assessed_in_either_set(tmp_path):
    car = tmp_path / "car.toml"
    save(load_car(sample_path("hillclimb")).model_copy(update={"hoops": None}), car)
    rows = beside(car)
    assert rows["head.hoop_line"].endswith("? not assessed ? not assessed")


def test_json_has_the_first_set_alone():
    plain, both = (
        printed_json("check", "hillclimb", "robin", *more)[1] for more in ((), ("--beside", "student"))
    )
    assert json.dumps(plain) == json.dumps(both)


@pytest.mark.parametrize("form", [(), ("--json",)])
def test_an_unknown_second_set_is_refused_in_either_form(form, capsys):
    assert main(["check", "hillclimb", "robin", "--beside", "nope", *form]) == 2
    out, error = capsys.readouterr()
    assert (out, "is nope" in error) == ("", True)
