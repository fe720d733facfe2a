"""The command line as a person uses it: status, tables, JSON, sentences for bad input."""

import json
import os
import subprocess
import sys

import jsonschema
import pytest

from fitcalc.cli import main
from fitcalc.documents.samples import sample_cars, sample_drivers, sample_path
from fitcalc.present.record import ResultRecord

TOP_KEYS = {"car", "driver", "joints", "angles", "seat", "pedals", "checks"}
CHECK_KEYS = {"id", "label", "value", "unit", "low", "high", "margin", "status", "source", "remedy"}
EVERY_PAIR = [(car, driver) for car in sample_cars() for driver in sample_drivers()]


def run_json(capsys, *arguments):
    status = main([*arguments, "--json"])
    return status, json.loads(capsys.readouterr().out)


def test_main_job_prints_what_the_bench_needs(capsys):
    assert main(["fit", "hillclimb", "robin"]) == 0
    text = capsys.readouterr().out
    for wanted in (
        "seat travel",
        "clutch",
        "brake",
        "throttle",
        "shoulder strap, side angle",
        "play of the shoe",
        "Cautions",
    ):
        assert wanted in text


@pytest.mark.parametrize(("car", "driver"), EVERY_PAIR)
@pytest.mark.parametrize("command", ["check", "fit"])
def test_result_is_complete_and_follows_its_schema(capsys, command, car, driver):
    status, record = run_json(capsys, command, car, driver)
    assert record.keys() >= TOP_KEYS
    assert all(check.keys() >= CHECK_KEYS for check in record["checks"])
    jsonschema.validate(record, ResultRecord.model_json_schema())
    fails = any(check["status"] == "fail" for check in record["checks"])
    assert status == (1 if fails else 0)


@pytest.mark.parametrize(("car", "driver"), EVERY_PAIR)
def test_samples_leave_nothing_unassessed_for_want_of_data(capsys, car, driver):
    _, record = run_json(capsys, "check", car, driver)
    wanting = [check["id"] for check in record["checks"] if check["value"] is None]
    assert wanting == []


def test_check_ids_are_unique(capsys):
    _, record = run_json(capsys, "check", "hillclimb", "robin")
    ids = [check["id"] for check in record["checks"]]
    assert len(ids) == len(set(ids))


def test_as_found_the_hillclimb_car_fits_neither_of_its_drivers(capsys):
    for driver in ("robin", "magnus"):
        assert run_json(capsys, "check", "hillclimb", driver)[0] == 1


def test_fit_saved_as_setup_is_what_check_then_reports(capsys, tmp_path):
    setup = tmp_path / "rework.toml"
    _, fitted = run_json(capsys, "fit", "hillclimb", "robin", "--save", str(setup))
    _, checked = run_json(capsys, "check", "hillclimb", "robin", "--setup", str(setup))
    assert checked["angles"] == fitted["angles"]
    assert checked["checks"] == fitted["checks"]


@pytest.mark.parametrize("rules", ["student", "fia_253", "single_seater", "historic", "club"])
def test_every_limit_set_can_be_asked_for(capsys, rules):
    _, record = run_json(capsys, "check", "hillclimb", "robin", "--rules", rules)
    assert record["car"]["rules"] == rules


@pytest.mark.parametrize("kind", ["car", "driver", "setup", "result"])
def test_schemas_are_valid_schemas(capsys, kind):
    assert main(["schema", kind]) == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(capsys.readouterr().out))


def test_body_says_what_is_measured_and_what_is_estimated(capsys):
    assert main(["body", "robin"]) == 0
    text = capsys.readouterr().out
    assert "measured" in text
    assert "estimated" in text


@pytest.mark.parametrize(
    ("arguments", "wanted"),
    [
        (["check", "no_such_car.toml", "robin"], "no_such_car.toml"),
        (["check", "hillclimb", str(sample_path("hillclimb"))], "driver"),
        (["fit", "hillclimb", "robin", "--rules", "no_such_set"], "no_such_set"),
        (["check", "hillclimb", "robin", "--setup", "nowhere.toml"], "nowhere.toml"),
        (["check", os.sep, "robin"], "directory"),
    ],
)
def test_bad_input_is_one_sentence_and_status_two(capsys, arguments, wanted):
    assert main(arguments) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.count("\n") == 1
    assert wanted in told.err


def test_a_slip_of_unit_is_named(capsys, tmp_path):
    bad = tmp_path / "driver.toml"
    text = sample_path("robin").read_text(encoding="utf-8").replace("stature = 1680.0", "stature = 168.0")
    bad.write_text(text, encoding="utf-8")
    assert main(["check", "hillclimb", str(bad)]) == 2
    assert "cm" in capsys.readouterr().err
    assert bad.read_text(encoding="utf-8") == text


def test_runs_as_a_module_from_anywhere(tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "fitcalc", "schema", "car"],
        capture_output=True,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        check=False,
    )
    assert done.returncode == 0
    assert json.loads(done.stdout)
