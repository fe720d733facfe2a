"""`fitcalc sheets` and `fitcalc worksheet` as a person uses them."""

import csv

import pytest

from fitcalc.cli import main
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car


def test_sheets_writes_a_set_and_names_it(capsys, tmp_path):
    assert main(["sheets", "hillclimb", "robin", "--paper", "letter", "--out", str(tmp_path / "set")]) == 0
    named = capsys.readouterr().out.split()
    assert str(tmp_path / "set" / "sheets.pdf") in named
    assert str(tmp_path / "set" / "brake.stand_off.dxf") in named
    assert (tmp_path / "set" / "sheets.pdf").read_bytes().startswith(b"%PDF")


def test_sheets_of_a_rework_of_one_s_own(capsys, tmp_path):
    setup = tmp_path / "rework.toml"
    setup.write_text("wheel_spacer = 15.0\n", encoding="utf-8")
    main(["sheets", "hillclimb", "otto", "--setup", str(setup), "--out", str(tmp_path / "set")])
    assert "wheel.spacer" in (tmp_path / "set" / "cut_list.csv").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("arguments", "wanted"),
    [
        (["sheets", "hillclimb", "robin", "--out", "FILE/below"], "folder"),
        (["worksheet", "hillclimb"], "--out"),
        (["worksheet", "hillclimb", "--read", "FILE/none.csv"], "none.csv"),
    ],
)
def test_bad_input_is_one_sentence_and_status_two(capsys, tmp_path, arguments, wanted):
    file = tmp_path / "file"
    file.write_text("", encoding="utf-8")
    assert main([each.replace("FILE", str(file)) for each in arguments]) == 2
    told = capsys.readouterr().err
    assert told.count("\n") == 1
    assert wanted in told


def test_a_filled_in_worksheet_goes_into_the_file_only_when_asked(capsys, tmp_path):
    car = tmp_path / "car.toml"
    car.write_bytes(sample_path("hillclimb").read_bytes())
    assert main(["worksheet", str(car), "--all", "--out", str(tmp_path)]) == 0
    sheet = tmp_path / "worksheet.csv"
    lines = list(csv.reader(sheet.read_text(encoding="utf-8-sig").splitlines()))
    next(line for line in lines if line[1] == "pedals.brake.arm")[-1] = "271"
    with sheet.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(lines)
    main(["worksheet", str(car), "--read", str(sheet)])
    assert load_car(car).pedals.brake.arm == 269.0
    assert "271" in capsys.readouterr().out
    main(["worksheet", str(car), "--read", str(sheet), "--write"])
    assert load_car(car).pedals.brake.arm == 271.0
    assert "# INVENTED CAR" in car.read_text(encoding="utf-8")
