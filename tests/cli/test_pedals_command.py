"""`fitcalc pedals` as a person uses it."""

import json

import jsonschema
import pytest

from fitcalc.cli import main
from fitcalc.documents.samples import sample_cars, sample_drivers, sample_path
from fitcalc.present.pedal_record import PedalsRecord

EVERY_PAIR = [(car, driver) for car in sample_cars() for driver in sample_drivers()]

WANTED = (
    "as found -> after",
    "ratio, mean",
    "cylinder stroke left",
    "line pressure",
    "length to cut",
    "governed by",
    "factor of safety",
    "Thinnest stock",
    "stand-off, square to the arm",
    "Seat mounts",
    "Cautions",
)


def run_json(capsys, *arguments):
    status = main([*arguments, "--json"])
    return status, json.loads(capsys.readouterr().out)


def setup_file(tmp_path, text):
    path = tmp_path / "rework.toml"
    path.write_text(f"format = 1\n{text}", encoding="utf-8")
    return str(path)


def car_file(tmp_path, before, after):
    text = sample_path("hillclimb").read_text(encoding="utf-8")
    assert before in text
    path = tmp_path / "car.toml"
    path.write_text(text.replace(before, after), encoding="utf-8")
    return str(path)


@pytest.mark.parametrize(("car", "driver"), EVERY_PAIR)
def test_record_follows_its_schema(capsys, car, driver):
    status, record = run_json(capsys, "pedals", car, driver)
    jsonschema.validate(record, PedalsRecord.model_json_schema())
    assert status == (1 if any(check["status"] == "fail" for check in record["checks"]) else 0)


def test_prints_what_the_bench_needs(capsys):
    main(["pedals", "hillclimb", "robin"])
    text = capsys.readouterr().out
    assert [wanted for wanted in WANTED if wanted not in text] == []


@pytest.mark.parametrize("car", sample_cars())
def test_tables_fit_a_page(capsys, monkeypatch, car):
    monkeypatch.setenv("COLUMNS", "150")
    main(["pedals", car, "ines"])
    tables = capsys.readouterr().out.split("Cautions")[0]
    assert max(map(len, tables.splitlines())) <= 150


def test_found_and_after_are_those_of_the_setup(capsys, tmp_path):
    setup = setup_file(tmp_path, "[brake]\nlonger_arm = 20.0\n")
    _, record = run_json(capsys, "pedals", "hillclimb", "robin", "--setup", setup)
    brake = record["pedals"]["brake"]
    share = (269.0 + 20.0) / 269.0
    assert brake["after"]["ratio_mean"] == pytest.approx(brake["found"]["ratio_mean"] * share)
    assert brake["after"]["foot_force"] == pytest.approx(500.0 / share)
    assert brake["after"]["stroke"] == pytest.approx(brake["found"]["stroke"])
    assert brake["bar"]["cut_longer_arm"] == pytest.approx(20.0 + 45.0 + 2 * 16.0)
    assert record["pedals"]["clutch"]["bar"] is None


def test_bar_is_the_same_in_fit_and_in_pedals(capsys):
    _, fitted = run_json(capsys, "fit", "hillclimb", "robin")
    _, pedals = run_json(capsys, "pedals", "hillclimb", "robin")
    assert {name: each["bar"] for name, each in fitted["pedals"].items()} == {
        name: each["bar"] for name, each in pedals["pedals"].items()
    }


def test_a_bar_says_what_its_design_load_rests_on(capsys):
    _, record = run_json(capsys, "pedals", "hillclimb", "robin")
    clutch, brake = ("\n".join(record["pedals"][name]["bar"]["advice"]) for name in ("clutch", "brake"))
    assert "1000 N on the clutch pedal: no published rule found" in clutch
    assert "2000 N on the brake pedal" in brake
    assert "Formula SAE Rules" in brake


def test_bar_and_check_tell_the_same_safety(capsys):
    _, record = run_json(capsys, "pedals", "hillclimb", "robin")
    checks = {check["id"]: check for check in record["checks"]}
    for name, each in record["pedals"].items():
        assert each["bar"]["safety"] == pytest.approx(checks[f"pedal.{name}.bar_safety"]["value"])


def test_mix_keeps_to_the_band_asked_for(capsys):
    _, record = run_json(capsys, "pedals", "hillclimb", "robin", "--band", "2")
    mixes = [each["mix"] for each in record["pedals"].values()]
    assert all(0.0 <= mix["ratio_change"] <= 2.0 + 1e-9 for mix in mixes)


def test_welded_alloy_is_told_to_be_bolted(capsys, tmp_path):
    welded = 'material = "6082-T6", joint = "welded"'
    car = car_file(tmp_path, 'material = "S355J2", joint = "bolted"', welded)
    main(["pedals", car, "robin"])
    assert "do not weld" in capsys.readouterr().out


def test_pedals_as_found_need_no_bar(capsys, tmp_path):
    main(["pedals", "hillclimb", "robin", "--setup", setup_file(tmp_path, "")])
    text = capsys.readouterr().out
    assert "no bar to make" in text
    assert "length to cut" not in text


def test_raised_seat_is_told_its_bracket(capsys, tmp_path):
    setup = setup_file(tmp_path, "seat_raise = 15.0\n")
    _, record = run_json(capsys, "pedals", "hillclimb", "robin", "--setup", setup)
    assert record["seat"]["bracket_reach"] == pytest.approx(15.0)
    assert main(["pedals", "hillclimb", "robin", "--setup", setup]) in (0, 1)
    assert "brackets bridge 15 mm" in capsys.readouterr().out


def test_unknown_material_is_one_sentence(capsys, tmp_path):
    car = car_file(
        tmp_path, 'material = "S355J2", joint = "bolted"', 'material = "7075-T6", joint = "welded"'
    )
    assert main(["pedals", car, "robin"]) == 2
    told = capsys.readouterr()
    assert told.err.count("\n") == 1
    assert "material" in told.err
    assert "6082-T6" in told.err


@pytest.mark.parametrize("band", ["-1", "nan", "much"])
def test_band_is_a_percentage(capsys, band):
    with pytest.raises(SystemExit) as stopped:
        main(["pedals", "hillclimb", "robin", f"--band={band}"])
    assert stopped.value.code == 2
    assert "0 to 100 %" in capsys.readouterr().err


def test_schema_can_be_asked_for(capsys):
    assert main(["schema", "pedals"]) == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(capsys.readouterr().out))


@pytest.mark.parametrize("car", ["hillclimb", "student", "upright"])
def test_says_what_each_shoe_passes_when_and_where(capsys, car):
    main(["pedals", car, "robin", "--json"])
    record = json.loads(capsys.readouterr().out)
    for shoe in record["shoes"].values():
        rooms = [near["room"] for near in shoe["near"]]
        assert rooms == sorted(rooms)
        assert all(0 <= near["travel"] <= 100 for near in shoe["near"])
        assert shoe["spacing_least"] == pytest.approx(98.0)
