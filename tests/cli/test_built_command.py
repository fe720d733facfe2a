"""`fitcalc built` as a person uses it."""

import json

import pytest
from jsonschema import Draft202012Validator

from fitcalc.cli import main
from fitcalc.documents.as_built import History
from fitcalc.documents.store import load

WHO = ["built", "student", "robin"]
KNEE = "posture.knee_released.brake"


def run(capsys, *arguments):
    status = main([*WHO, *map(str, arguments)])
    return status, capsys.readouterr()


def test_without_readings_it_says_what_may_be_entered(capsys):
    status, said = run(capsys)
    assert status == 0
    assert "made.seat_travel" in said.out
    assert KNEE in said.out


def test_readings_are_shown_against_the_prediction_and_kept(capsys, tmp_path):
    history = tmp_path / "robin.toml"
    told = ["--set", f"{KNEE}=120+-1.5", "--set", "made.brake.stand_off=18", "--history", history]
    run(capsys, *told, "--date", "2026-05-31")
    assert not history.exists()
    status, said = run(capsys, *told, "--date", "2026-05-31", "--note", "first try", "--save")
    assert status == 0
    assert "What would explain the differences" in said.out
    (kept,) = load(History, history).builds
    assert (kept.date, kept.note, kept.made.brake.stand_off) == ("2026-05-31", "first try", 18.0)
    assert (kept.readings[0].value, kept.readings[0].error) == (120.0, 1.5)
    assert kept.readings[0].low < kept.readings[0].predicted < kept.readings[0].high


def test_json_fits_its_schema(capsys):
    _, said = run(capsys, "--set", f"{KNEE}=120", "--json")
    record = json.loads(said.out)
    main(["schema", "built"])
    Draft202012Validator(json.loads(capsys.readouterr().out)).validate(record)
    assert record["readings"][0]["difference"] == pytest.approx(120 - record["readings"][0]["predicted"])


def test_a_limit_that_the_reading_breaks_is_status_one(capsys):
    assert run(capsys, "--set", f"{KNEE}=175")[0] == 1


def test_readings_from_a_file_and_the_page(capsys, tmp_path):
    file = tmp_path / "readings.toml"
    file.write_text(
        'date = "2026-05-30"\n[made]\nseat_travel = 12\n[[readings]]\nfigure = "recline"\nvalue = 41\n',
        "utf-8",
    )
    run(capsys, "--read", file, "--out", tmp_path / "page", "--paper", "letter")
    record = json.loads((tmp_path / "page" / "as_built.json").read_text("utf-8"))
    assert (record["date"], record["made"]["seat_travel"]) == ("2026-05-30", 12.0)
    assert (tmp_path / "page" / "as_built.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("arguments", "wanted"),
    [
        (["--set", "recline"], "KEY=VALUE"),
        (["--set", "reclin=3"], "perhaps recline is meant"),
        (["--set", "recline=41", "--save"], "--history"),
        (["--save", "--history", "new.toml"], "nothing to add"),
        (["--set", "recline=41", "--date", "tomorrow"], "--date"),
        (["--read", "none.csv"], "none.csv"),
    ],
)
def test_bad_input_is_one_sentence_and_status_two(capsys, monkeypatch, tmp_path, arguments, wanted):
    monkeypatch.chdir(tmp_path)
    status, said = run(capsys, *arguments)
    assert status == 2
    assert wanted in said.err
    assert said.err.count("\n") == 1
    assert not list(tmp_path.glob("*.toml"))


def test_somebody_else_s_history_is_refused(capsys, tmp_path):
    history = tmp_path / "otto.toml"
    history.write_text('driver = "Otto"\n', "utf-8")
    status, said = run(capsys, "--set", "recline=41", "--history", history, "--save")
    assert status == 2
    assert "the history of Otto" in said.err
    assert history.read_text("utf-8") == 'driver = "Otto"\n'
