"""`fitcalc straps` as a person uses it."""

import json

import jsonschema
import pytest

from fitcalc.cli import main
from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.present.strap_record import StrapsRecord
from tests.checks.cockpits import car

WANTED = (
    "side angle", "plan angle", "spine, rear", "per mm up", "bend at slot", "edge, per kN", "shell",
    "places of the anchors that pass", "ALL TOGETHER", "BEFORE DRILLING", "90 % interval", "edge radius",
    "One slot for all", "driver seated in full kit", "Cautions",
)  # fmt: skip


def run_json(capsys, *arguments):
    status = main(["straps", *arguments, "--json"])
    return status, json.loads(capsys.readouterr().out)


@pytest.mark.parametrize("name", sample_cars())
def test_record_follows_its_schema(capsys, name):
    status, record = run_json(capsys, name, *sample_drivers())
    jsonschema.validate(record, StrapsRecord.model_json_schema())
    fails = any(check["status"] == "fail" for each in record["drivers"] for check in each["checks"])
    assert status == (1 if fails else 0)
    assert [each["driver"].split()[0].lower() for each in record["drivers"]] == list(sample_drivers())


def test_prints_what_the_bench_needs(capsys):
    main(["straps", "hillclimb", "robin", "ines"])
    text = capsys.readouterr().out
    assert [wanted for wanted in WANTED if wanted not in text] == []


def test_schema_is_printed(capsys):
    assert main(["schema", "straps"]) == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(capsys.readouterr().out))


def test_an_anchor_set_where_the_window_says_passes(capsys, tmp_path):
    """Too low by 200 mm, then raised by what the record says: exactly the shoulder's own findings turn."""
    low = tmp_path / "low.toml"
    low.write_text("format = 1\nshoulder_anchor_raise = -200.0\n", encoding="utf-8")
    status, before = run_json(capsys, "hillclimb", "robin", "--setup", str(low))
    assert status == 1
    rows = before["drivers"][0]["windows"]
    move = next(row["move"] for row in rows if row["strap"] == "shoulder_left" and not row["limit"])
    right = tmp_path / "right.toml"
    right.write_text(f"format = 1\nshoulder_anchor_raise = {-200.0 + move}\n", encoding="utf-8")
    _, after = run_json(capsys, "hillclimb", "robin", "--setup", str(right))
    flipped = failing(before) - failing(after)
    assert move > 0
    assert flipped
    assert all(id.startswith(("harness.shoulder_left", "harness.shoulder_right")) for id in flipped)
    assert not failing(after) - failing(before)


def failing(record):
    return {check["id"] for check in record["drivers"][0]["checks"] if check["status"] == "fail"}


def test_an_own_rework_holds_for_every_driver(capsys, tmp_path):
    path = tmp_path / "rework.toml"
    path.write_text("format = 1\nseat_travel = 20.0\n", encoding="utf-8")
    _, record = run_json(capsys, "hillclimb", "robin", "otto", "--setup", str(path))
    assert {each["setup"]["seat_travel"] for each in record["drivers"]} == {20.0}


def test_a_misspelt_driver_is_refused(capsys):
    assert main(["straps", "hillclimb", "robin", "inez"]) == 2
    assert "inez" in capsys.readouterr().err


def test_a_lap_slot_lies_in_the_side_of_the_shell(capsys):
    chassis = car()
    _, record = run_json(capsys, "hillclimb", "otto")
    slot = next(slot for slot in record["drivers"][0]["slots"] if slot["strap"] == "lap_left")
    assert abs(slot["y"]["value"] - chassis.seat.junction.y) == pytest.approx(chassis.seat.half_width)
