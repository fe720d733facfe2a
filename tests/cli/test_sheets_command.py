"""`fitcalc sheets` and `fitcalc worksheet` as a person uses them."""

import csv
import json

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
        (["worksheet", "--read", "none.csv"], "car or a driver file"),
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


@pytest.fixture
def sheet(tmp_path, capsys):
    """A worksheet filled in with all that the sample car and driver say, but for paths left out or said otherwise."""

    def filled(*without, said=()):
        assert main(["worksheet", "hillclimb", "robin", "--all", "--out", str(tmp_path)]) == 0
        file = tmp_path / "worksheet.csv"
        lines = list(csv.DictReader(file.read_text(encoding="utf-8-sig").splitlines()))
        for line in lines:
            line["entered"] = "" if line["path"].startswith(without) else line["now"]
            line["entered"] = dict(said).get(line["path"], line["entered"])
        with file.open("w", encoding="utf-8", newline="") as out:
            writer = csv.DictWriter(out, lines[0].keys())
            writer.writeheader()
            writer.writerows(lines)
        capsys.readouterr()
        return str(file)

    return filled


def test_car_and_driver_are_begun_from_a_filled_in_worksheet(capsys, tmp_path, sheet):
    """All that can be measured is as on the worksheet: so the verdict of every check is the sample's."""
    car, driver = (str(tmp_path / name) for name in ("car.toml", "driver.toml"))
    read = ["worksheet", car, driver, "--read", sheet("nothing")]
    assert main(read) == 0
    assert "a new car file" in capsys.readouterr().out
    assert not (tmp_path / "car.toml").exists()
    assert main([*read, "--write"]) == 0
    capsys.readouterr()
    told = []
    for names in (("hillclimb", "robin"), (car, driver)):
        main(["check", *names, "--json"])
        told.append(json.loads(capsys.readouterr().out)["checks"])
    assert [each["status"] for each in told[0]] == [each["status"] for each in told[1]]


def test_what_a_new_file_still_lacks_is_one_sentence(capsys, tmp_path, sheet):
    car, driver = (str(tmp_path / name) for name in ("car.toml", "driver.toml"))
    filled = sheet("rails.", "seat.junction", "measurements.stature")
    assert main(["worksheet", car, driver, "--read", filled]) == 0
    told = capsys.readouterr().out
    assert "car.toml can't be begun yet: the worksheet lacks 4 of what a car file must say" in told
    assert all(path in told for path in ("(rails.kind)", "(rails.forward_travel)", "(seat.junction)"))
    assert "stature (measurements.stature)" in told
    assert main(["worksheet", car, driver, "--read", filled, "--write"]) == 2
    refused = capsys.readouterr()
    assert (refused.out, refused.err.count("\n")) == ("", 1)
    assert list(tmp_path.glob("*.toml")) == []


def test_numbers_that_do_not_go_together_begin_nothing(capsys, tmp_path, sheet):
    filled = sheet("nothing", said=(("seat.mass", "9000"),))
    assert main(["worksheet", str(tmp_path / "car.toml"), "--read", filled, "--write"]) == 2
    assert "seat.mass" in capsys.readouterr().err
    assert list(tmp_path.glob("*.toml")) == []
